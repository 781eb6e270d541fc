package phrase

import (
	"strconv"

	"ryebell/internal/kitchen"
)

var someGrammar = grammar{
	kind:     KindSome,
	examples: []string{"used 2 quarts of oyster", "used 2 of 3 on straw", "gave 2 bags of shiitake to lena", "used a jar of plate 7"},
	match:    matchSome,
}

// SomeUnits says that some units were used or given away, and not which: "used 2 quarts
// of oyster". Culture is a species or the name of a culture, Run the run or load they
// were of; one of them is set. Entry is a [kitchen.UnitsUsed] or a [kitchen.UnitsGiven].
type SomeUnits struct {
	Count     int
	Container kitchen.Container
	Culture   string
	Run       kitchen.RunNo
	Entry     kitchen.UnitEntry
}

func (SomeUnits) intent() {}

// String prints the telling so that it parses back.
func (s SomeUnits) String() string {
	what := strconv.Itoa(s.Count)
	if s.Container.Vessel != 0 {
		what += " " + containerText(s.Container)
	}
	if s.Run != 0 {
		what += " of " + s.Run.String()
	} else {
		what += " of " + s.Culture
	}
	if e, given := s.Entry.(kitchen.UnitsGiven); given {
		return "gave " + what + " to " + e.To
	}
	if e, used := s.Entry.(kitchen.UnitsUsed); used && e.On != "" {
		what += " on " + e.On
	}
	return "used " + what
}

// matchSome reads what became of some of several units.
func matchSome(c cursor) (Intent, cursor, bool) {
	d := c.over("i", "we", "i've", "we've", "just")
	d, used := d.phrase("used", "used up", "have used", "spawned with")
	gave := false
	if !used {
		d, gave = d.phrase("gave", "gave away", "sold", "handed")
	}
	if !used && !gave || c.i > 0 {
		return nil, c, false
	}
	var s SomeUnits
	d, ok := s.howMany(d)
	if !ok {
		return nil, c, false
	}
	of, led := d.phrase("of", "of the", "from", "of our", "of my")
	if run, e, ok := of.over("run").run(); ok && led && !vesselOrMeasure(e.token()) {
		s.Run, d = run, e
	} else if name, e, ok := of.shelfCulture(); ok {
		s.Culture, d = name, e
	} else {
		return nil, c, false
	}
	d = d.over("spawn", "jars", "bags")
	if used {
		on, e, said := d.usedOn()
		if said {
			d = e
		}
		s.Entry = kitchen.UnitsUsed{On: on}
	} else {
		to, e, named := d.over("away").receiver()
		if !named {
			return nil, c, false
		}
		s.Entry, d = kitchen.UnitsGiven{To: to}, e
	}
	d = d.over(tailWords...)
	d.plain = s.Culture != "" || s.Container.Vessel != 0
	return s, d, d.parted().done()
}

// howMany takes "2", "2 quarts", "a jar", "3 5lb bags".
func (s *SomeUnits) howMany(c cursor) (cursor, bool) {
	d := c.over("about")
	var it piece
	for e := d; ; e = e.use(1) {
		switch e.token().(type) {
		case Number, Quantity, VesselWord:
			it.items = append(it.items, e.i)
			continue
		}
		if it.read(c.s) {
			s.Count, s.Container = it.item.Count, it.item.Container
			return e, s.Count <= mostUnits
		}
		break
	}
	s.Count = 1
	if n, ok := d.token().(Number); ok {
		count, isWhole := whole(n.Value)
		if n.Ref != nil || n.Times || !isWhole || count < 1 || count > mostUnits {
			return c, false
		}
		s.Count, d = count, d.use(1)
	} else if w := d.word(0); w == "one" || w == "another" {
		d = d.use(1)
	} else {
		return c, false
	}
	return d, true
}
