package wording

import (
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// readHead says when it is cool after what a thermometer showed, and how that moved;
// of a reading that can't be, why, and what it may have been.
func (v RunView) readHead(s *sheet) {
	last := v.lastRead()
	c, known := v.Run.Cooling()
	if odd, is := oddOf(c, last); is {
		v.oddHead(s, odd)
		return
	}
	if v.Run.Stage == kitchen.StageCooling {
		s.add(must, v.coolState())
	}
	s.add(must, say("**"+readingWords(v.Run, last)+"**, "+v.clock(last.At)+limitWords(last)+"."))
	s.add(must, v.instead())
	s.add(must, v.others(last))
	s.add(must, shutPot(v.Run))
	if v.Run.Stage != kitchen.StageCooling || !known {
		return
	}
	if maybeCool(v.Run, v.Now) {
		return
	}
	if last.Where == kitchen.Middle && last.Temp <= last.Limit {
		s.add(must, say("Far sooner than I thought: measure once more."))
		return
	}
	s.add(should, v.forecastMoved(c))
	if core := c.Middle(last.At); last.Skin() && core.Mid > last.Temp && v.Run.OfSlowest(last) {
		s.add(should, say("That is the outside: the middle is about "+degrees(c, last, core)+"."))
	}
}

// instead names the reading that was told wrong and is taken back.
func (v RunView) instead() chat.Para {
	if v.Instead == nil {
		return nil
	}
	return say("Instead of " + warmth(v.Instead.Temp) + ".")
}

// lastRead is the reading that was just told.
func (v RunView) lastRead() kitchen.Reading {
	told := v.Told.(kitchen.TempRead)
	last := kitchen.Reading{Units: told.Units, Temp: told.Temp, Where: told.Where, At: v.At}
	for _, r := range v.Run.Readings {
		if r.At.Equal(v.At) && r.Temp == told.Temp {
			last = r
		}
	}
	return last
}

func oddOf(c kitchen.Cooling, r kitchen.Reading) (kitchen.OddReading, bool) {
	for _, o := range c.Odd {
		if o.Reading.No == r.No {
			return o, true
		}
	}
	return kitchen.OddReading{}, false
}

// oddHead asks about a reading that can't be. It is kept, and doesn't count.
func (v RunView) oddHead(s *sheet, o kitchen.OddReading) {
	r := o.Reading
	no := kitchen.Ref{Run: v.Run.No, Units: r.Units}.String()
	s.add(must, say("**"+readingWords(v.Run, r)+"? "+oddWords(o)+"** I keep it, but don't count it."))
	s.add(must, v.instead())
	s.add(must, v.others(r))
	if o.Why != cooling.BeforeZero && o.Why != cooling.NoNumber {
		s.add(must, say("Expected then: "+expected(o)+"."))
	}
	if v.Run.Stage == kitchen.StageCooling {
		s.add(should, v.coolState())
	}
	if o.Fahrenheit != nil && !inFahrenheit(r.Temp) {
		said := no + " " + upTo(1, float64(r.Temp)) + "F"
		s.then(say("Next: was it "+upTo(1, float64(r.Temp))+nb+"°F? Then tap that."), tap(upTo(1, float64(r.Temp))+" °F", said))
		return
	}
	s.then(say("Next: look again and say it anew, like `" + no + " 41C`. Wrong time? Say it with its time."))
}

// expected is what could have been read, in the scale that the reading was said in.
func expected(o kitchen.OddReading) string {
	if inFahrenheit(o.Reading.Temp) {
		return upTo(0, o.Lo.Fahrenheit()) + " to " + upTo(0, o.Hi.Fahrenheit()) + nb + "°F"
	}
	return upTo(0, float64(o.Lo)) + " to " + upTo(0, float64(o.Hi)) + nb + "°C"
}

func oddWords(o kitchen.OddReading) string {
	switch o.Why {
	case cooling.HotterThanSteam:
		return "Hotter than steam."
	case cooling.BeforeZero:
		return "That was before zero pressure."
	case cooling.TooHot:
		return "Too hot for that time."
	case cooling.TooCold:
		return "Too cold for that time."
	case cooling.Rising:
		return "Warmer than before."
	case cooling.NoNumber:
		return "That is no number."
	}
	panic("oddity without words")
}

// movedBy is how far a forecast has to move to be worth a word.
const movedBy = 20 * time.Minute

// forecastMoved says how the reading moved the forecast.
func (v RunView) forecastMoved(c kitchen.Cooling) chat.Para {
	if v.Was == nil {
		return nil
	}
	was, known := v.Was.Cooling()
	if !known || was.Never() || c.Never() {
		return nil
	}
	text := "Was " + v.clock(round10(was.Likely)) + ": it cools "
	switch moved := c.Likely.Sub(was.Likely); {
	case moved > movedBy:
		return say(text + "slower than I thought.")
	case moved < -movedBy:
		return say(text + "faster than I thought.")
	}
	return nil
}

// maybeCool reports whether a load that reads cool outside may be cool in the middle too:
// as long as it hardly is, people ask when.
func maybeCool(r kitchen.Run, now time.Time) bool {
	c, known := r.Cooling()
	_, again := r.MeasureAgain()
	return again && known && c.Chance(now) >= 0.5
}

// coolState is when it is cool, or when to measure again.
func (v RunView) coolState() chat.Para {
	c, known := v.Run.Cooling()
	if again, ok := v.Run.MeasureAgain(); ok && again.After(v.Now) && (!known || maybeCool(v.Run, v.Now)) {
		if known {
			last, _ := c.Believed(v.Run.Readings)
			return say("**" + v.no() + " " + howCool(float64(c.Chance(v.Now))) + ": about " + degrees(c, last, c.Middle(v.Now)) + ".")
		}
		return say("**" + v.no() + ": measure again at " + v.clock(again) + "**. A cool skin can lie over a warm middle.")
	}
	return coolHead(v.Run, c, known, v.Now)
}
