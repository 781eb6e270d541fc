package wording

import (
	"math"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// LogView is the story of a run to be told.
type LogView struct {
	Run kitchen.Run
	// Now is in the kitchen's zone.
	Now time.Time
	Who func(kitchen.MemberNo) string
}

// Log tells the story of a run: what was reached, then who said what when, and
// what nobody saw.
func Log(v LogView) chat.Post {
	r := v.Run
	var s sheet
	s.add(must, say("**"+r.No.String()+"** {}, {}: "+stageWord(r.Stage)+". "+capital(orderWords(r.Order))+".", called(v.Who, r.Cook), cookerShort(r.Cooker)))
	s.add(must, v.reached())
	s.add(must, v.story())
	s.add(should, v.dips())
	s.add(should, v.lethality())
	s.add(should, v.readings())
	s.add(may, v.water())
	if n := len(r.Strays); n > 0 {
		s.add(may, say(plural(n, "entry")+" more in the book can't be so beside these."))
	}
	return s.post(chat.Answer)
}

// reached is what became of the hold: of the last one that ended, else of the one
// that runs.
func (v LogView) reached() chat.Para {
	r := v.Run
	if off, ok := r.Ended(); ok {
		return reached(r, off, v.Now)
	}
	if end, ok := r.HoldEnd(); ok {
		had := r.CreditAt(v.Now).Hold
		return say("**" + whole(had.Truncate(time.Minute).Minutes()) + " of " + minutes(r.Hold.Time) + "** held so far, heat off " + clock(v.Now, end) + ".")
	}
	return nil
}

// maxStory is how many steps a story tells; the last ones matter most.
const maxStory = 14

// story is who said what when: 09:45 heat on, 10:25 steam (Jo), weight on (not
// seen).
func (v LogView) story() chat.Para {
	steps := v.Run.Steps
	left := max(0, len(steps)-maxStory)
	var names []string
	var b strings.Builder
	if left > 0 {
		b.WriteString(strconv.Itoa(left) + " earlier; ")
	}
	day := v.Now
	for i, st := range steps[left:] {
		if i > 0 {
			b.WriteString(", ")
		}
		at := clock(day, st.At)
		day = st.At.In(v.Now.Location())
		b.WriteString(at + nb + stepWord(st))
		switch {
		case !st.Seen:
			b.WriteString(" (not seen)")
		case st.By != 0 && st.By != v.Run.Cook:
			b.WriteString(" ({})")
			names = append(names, called(v.Who, st.By))
		}
	}
	return say(b.String()+".", names...)
}

// stepWord is a step in the story of a run.
func stepWord(st kitchen.Step) string {
	switch st.Kind {
	case kitchen.KindPrepBegun:
		return prepWord(st.Prep)
	case kitchen.KindPrepEnded:
		return prepWord(st.Prep) + " done"
	}
	return kindWord(st.Kind)
}

// dips tells of the times when pressure was lost.
func (v LogView) dips() chat.Para {
	var out []string
	for _, d := range v.Run.Dips {
		text := clock(v.Now, d.From)
		if !d.To.IsZero() {
			text += " to " + clock(v.Now, d.To)
		}
		if d.Low != nil {
			text += ", down to " + psi(*d.Low)
		} else {
			text += ", depth not told"
		}
		out = append(out, text)
	}
	if len(out) == 0 {
		return nil
	}
	return say("Pressure lost " + strings.Join(out, "; ") + ".")
}

// lethality is F0 of the steam around the containers, no pass mark, with the
// minutes held before a loss beside it.
func (v LogView) lethality() chat.Para {
	c := v.Run.CreditAt(v.Now)
	if c.F0 < 6*time.Second {
		return nil
	}
	text := "F0 about " + twoFigures(c.F0.Minutes()) + nb + "min: of the steam around them, not of their middle; no pass mark."
	if c.Broken >= time.Minute {
		text += " " + capital(minutes(c.Broken)) + " at pressure before the last loss."
	}
	return say(text)
}

// twoFigures prints a number with at most two figures that mean something.
func twoFigures(v float64) string {
	if v <= 0 {
		return "0"
	}
	digits := 1 - int(math.Floor(math.Log10(v)))
	if digits > 0 {
		return upTo(digits, v)
	}
	step := math.Pow(10, float64(-digits))
	return whole(math.Round(v/step) * step)
}

// maxReadings is how many readings a story tells.
const maxReadings = 4

func (v LogView) readings() chat.Para {
	all := v.Run.Readings
	var out []string
	for _, m := range all[max(0, len(all)-maxReadings):] {
		out = append(out, warmth(m.Temp)+placeWord(m.Where)+" "+clock(v.Now, m.At))
	}
	if len(out) == 0 {
		return nil
	}
	return say("Read: " + strings.Join(out, ", ") + ".")
}

func placeWord(p kitchen.Place) string {
	switch p {
	case kitchen.Skin:
		return " outside"
	case kitchen.Between:
		return " between"
	case kitchen.Middle:
		return " in the middle"
	case 0:
		return ""
	}
	panic("place without words")
}

func (v LogView) water() chat.Para {
	w := v.Run.Water
	text := "Water: " + litres(w.In) + " in"
	if w.Assumed {
		text = "Water: " + litres(w.In) + " taken, nobody told"
	}
	if w.Left != nil {
		text += ", " + litres(*w.Left) + " left"
	}
	return say(text + ".")
}

// RunsView is a list of runs, the newest first.
type RunsView struct {
	Runs []kitchen.Run
	Now  time.Time
	Who  func(kitchen.MemberNo) string
}

// maxRuns is how many runs a list shows.
const maxRuns = 6

// Runs lists the last runs and what was reached.
func Runs(v RunsView) chat.Post {
	var s sheet
	if len(v.Runs) == 0 {
		return lines("No run in the book yet.", "Next: ask for a plan, then `cook it`.")
	}
	s.add(must, say("**Last runs**, newest first"))
	for i, r := range v.Runs {
		if i == maxRuns {
			break
		}
		s.add(should, say("**"+r.No.String()+"** "+r.Begun.In(v.Now.Location()).Format("2 Jan")+" {}, "+ending(r), called(v.Who, r.Cook)))
	}
	no := v.Runs[0].No
	s.then(say("Next: one of them, like `log "+strconv.Itoa(int(no))+"`"), tap("Log "+no.String(), "log "+strconv.Itoa(int(no))))
	return s.post(chat.Answer)
}

// ending is what became of a run, in a few words.
func ending(r kitchen.Run) string {
	if r.Stage == kitchen.StageCalledOff {
		return "called off"
	}
	off, ok := r.Ended()
	if !ok {
		return stageWord(r.Stage)
	}
	switch off.Outcome {
	case kitchen.Held:
		return "held " + minutes(off.Credit.Hold)
	case kitchen.Early:
		return "early, " + whole(off.Credit.Hold.Truncate(time.Minute).Minutes()) + " of " + minutes(off.Wanted)
	case kitchen.Unseen:
		return "hold not seen"
	}
	panic("outcome without words")
}
