package phrase

import (
	"strconv"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// loseVerb reads "lost 12.3", "lost 12.3 to trich": what is lost is contaminated where
// nothing else was said.
func (t unitsTelling) loseVerb(c cursor) (unitsRead, bool) {
	m, d, ok := c.meant(t.before)
	if !ok || !m.sure {
		return unitsRead{}, false
	}
	sign := kitchen.WentBad
	if e, to := d.phrase("to", "to the", "to some", "from", "because of", "due to"); to {
		s, f, named := signsInside().take(e)
		if !named {
			return unitsRead{}, false
		}
		sign, d = s, f
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, kitchen.SignSeen{Sign: sign}}}, end: d, sure: true}, true
}

// dashed reads "12.2 - 40%", which looks like a range.
func (t unitsTelling) dashed(c cursor) (unitsRead, bool) {
	if !isRange(c.token()) {
		return unitsRead{}, false
	}
	of, share, ok := strings.Cut(c.word(0), "-")
	run, no, dotted := strings.Cut(strings.Trim(of, "# "), ".")
	figure, percent := strings.CutSuffix(strings.TrimSpace(share), "%")
	if _, behind := c.ahead(1).(Percent); behind || !ok || !dotted || !percent {
		return unitsRead{}, false
	}
	n, err := strconv.ParseFloat(strings.TrimSpace(figure), 64)
	r, u := kitchen.Ref{Run: kitchen.RunNo(atoi(run))}, atoi(strings.TrimSpace(no))
	if err != nil || n < 0 || n > 100 || r.Run < 1 || r.Run > mostRuns || u < 1 || u > mostUnits || no[0] == '0' {
		return unitsRead{}, false
	}
	r.Units = []kitchen.UnitNo{kitchen.UnitNo(u)}
	return unitsRead{parts: []UnitsPart{{Meant{Refs: []kitchen.Ref{r}}, kitchen.GrowthSeen{Share: unit.Percent(n)}}}, end: c.use(1), sure: true}, true
}

// nthWords are the words for the first units of a run.
var nthWords = map[string]kitchen.UnitNo{
	"first": 1, "1st": 1, "second": 2, "2nd": 2, "third": 3, "3rd": 3, "fourth": 4, "4th": 4, "fifth": 5, "5th": 5, "sixth": 6, "6th": 6,
	"seventh": 7, "7th": 7, "eighth": 8, "8th": 8, "ninth": 9, "9th": 9, "tenth": 10, "10th": 10,
}

// inTurn reads "third jar of 12", "the first two jars of 12", "12 first two jars": the
// units of a run are counted as they are numbered.
func inTurn(c cursor, _ Meant) (meantRead, cursor, bool) {
	var m meantRead
	d := c
	run, d, led := d.over("run").run()
	if led {
		d = d.over("the", "my", "our")
	} else {
		d = c.over("the", "my", "our")
	}
	no, ok := nthWords[strings.TrimPrefix(d.word(0), "the ")] // "the 2nd" can be a day
	if !ok {
		return m, c, false
	}
	r := kitchen.Ref{Units: []kitchen.UnitNo{no}}
	d = d.use(1)
	if n, e, many := d.number(); many && no == 1 {
		count, isWhole := whole(n)
		if !isWhole || count < 1 || count > mostUnits {
			return m, c, false
		}
		for u := kitchen.UnitNo(2); int(u) <= count; u++ {
			r.Units = append(r.Units, u)
		}
		d = e
	}
	v, e, ok := d.vessel()
	if !ok {
		e, ok = d.phrase("unit", "units")
	}
	if !ok || v.Sized() {
		return m, c, false
	}
	if d = e; !led {
		if run, d, ok = d.ofRun(); !ok {
			return m, c, false
		}
	}
	r.Run = run
	m.Refs, m.sure = []kitchen.Ref{r}, true
	return m, d, true
}
