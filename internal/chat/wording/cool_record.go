package wording

import (
	"strconv"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// TimesRecord says how often the ranges held in which a run was to be cool, of the
// runs that were measured until they were.
func TimesRecord(runs []kitchen.Cooled) chat.Post {
	if len(runs) == 0 {
		return lines("**No run has been measured to its end yet**, so nobody knows.", "Say what a thermometer shows while one cools, like `46C`, until it is cool.")
	}
	var s sheet
	blind := tally(runs, func(c kitchen.Cooled) kitchen.Verdict { return c.Blind })
	after := tally(runs, func(c kitchen.Cooled) kitchen.Verdict { return c.Measured })
	s.add(must, blind.words("before a reading"))
	s.add(must, after.words("after the first reading"))
	s.add(must, say("They are meant to hold 4 times of 5. Measured to the end: "+plural(len(runs), "run")+"; few say little."))
	s.then(say("Next: measure more than once a run; each one makes the next time surer."))
	return s.post(chat.Answer)
}

// tallied counts verdicts.
type tallied struct{ held, judged int }

func tally(runs []kitchen.Cooled, of func(kitchen.Cooled) kitchen.Verdict) (t tallied) {
	for _, r := range runs {
		switch of(r) {
		case kitchen.RangeHeld:
			t.held++
			t.judged++
		case kitchen.RangeMissed:
			t.judged++
		case 0:
		}
	}
	return t
}

func (t tallied) words(when string) chat.Para {
	if t.judged == 0 {
		return nil
	}
	return say("Ranges " + when + ": **" + strconv.Itoa(t.held) + " of " + strconv.Itoa(t.judged) + " held**.")
}
