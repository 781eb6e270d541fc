package wording

import (
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// notedLate heads a step that was told after a later one; a step in its order
// needs no head, for the state says it.
func (v RunView) notedLate(s *sheet) {
	if v.overtaken() {
		s.add(must, say("Noted: **"+v.no()+" "+kindWord(kindOf(v.Told))+" "+v.clock(v.At)+"**."))
	}
}

// corrected says which time was mended.
func (v RunView) corrected() chat.Para {
	if v.WasAt.IsZero() {
		return nil
	}
	return say(capital(kindWord(kindOf(v.Told))) + " " + v.clock(v.At) + ", was " + v.clock(v.WasAt) + ".")
}

// takes makes accepting the next step of a hand-over.
func (v RunView) takes(s *sheet) {
	if _, offered := v.Told.(kitchen.HandOffered); offered {
		s.then(say("Next: take it with `"+gotIt(v.Run.No)+"`"), tap("I've got it", gotIt(v.Run.No)))
	}
}

// offeredHead asks somebody, or anybody, to take the run.
func (v RunView) offeredHead(s *sheet) {
	if v.To == nil {
		s.add(must, say("**Who takes "+v.no()+"?** Until somebody says so it stays with {}.", v.who(v.Run.Cook)))
		return
	}
	s.add(must, append(chat.Para{v.To}, say(": **do you take "+v.no()+"?** Until you say so it stays with {}.", v.who(v.Run.Cook))...))
}

// Stays reports whether who was asked to take the run leaves it with who has it.
func (v RunView) Stays() bool {
	took, ok := v.Told.(kitchen.TookOver)
	return ok && v.Was != nil && v.Was.Offered != 0 && took.Member == v.Was.Cook && v.Run.Cook == v.Was.Cook
}

// staysHead says whose the run is still.
func (v RunView) staysHead(s *sheet) {
	if v.To == nil {
		s.add(must, say("**"+v.no()+" stays with {}**, and so do its pings.", v.who(v.Run.Cook)))
		return
	}
	s.add(must, append(chat.Para{v.To}, say(": **"+v.no()+" stays with you**, and so do its pings.")...))
}

// offHead says for good what was reached when the heat went off.
func (v RunView) offHead(s *sheet) {
	off, ok := v.Run.Ended()
	if !ok || v.Run.Stage == kitchen.StageCalledOff {
		s.add(must, say("**"+v.no()+" heat off** "+v.clock(v.At)+"."))
		return
	}
	s.add(must, reached(v.Run, off, v.Now))
	if off.Outcome == kitchen.Early {
		s.add(should, say("That stays in the book. Lit again, the hold starts anew."))
	}
	if off.Credit.Broken >= time.Minute {
		how := ", broken off"
		if len(v.Run.Dips) > 0 {
			how = ", then it was lost"
		}
		s.add(should, say("Before that "+minutes(off.Credit.Broken)+how+": not part of the hold."))
	}
}

// offUnseen says what there is of a hold when nobody told of the heat off before
// zero.
func (v RunView) offUnseen(s *sheet) {
	if off, ok := v.Run.Ended(); ok && !off.Seen && off.At.Equal(v.At) {
		s.add(must, reached(v.Run, off, v.Now))
	}
}

// doubted reports whether a zero was just told that is hard to believe: so soon
// after heat off.
func (v RunView) doubted() bool {
	_, now := v.Told.(kitchen.AtZero)
	_, _, soon := v.Run.ZeroSoon()
	return now && soon && v.WasAt.IsZero()
}

// doubtHead asks for a second look before anything is opened.
func (v RunView) doubtHead(s *sheet) {
	after, usual, _ := v.Run.ZeroSoon()
	s.add(must, say("**Zero, "+minutes(after)+" after heat off?** It usually takes "+whole(usual.Minutes())+". Look at the gauge again; leave "+v.no()+" shut until it shows zero."))
}

// reached is what a hold had come to when the heat went off.
func reached(r kitchen.Run, off kitchen.HeatGoneOff, now time.Time) chat.Para {
	no, had := r.No.String(), minutes(off.Credit.Hold)
	switch off.Outcome {
	case kitchen.Held:
		from, to := heldFrom(r, off)
		return say("**" + no + " held " + had + "** at " + psi(r.Hold.At) + ", " + near(now, from) + " to " + until(now, from, to) + ".")
	case kitchen.Early:
		return say("**" + no + " heat off early: " + heldOf(off) + "** held, " + near(now, off.At) + ".")
	case kitchen.Unseen:
		if off.Credit.Hold >= time.Minute {
			return say("**" + no + " heat off, unseen.** Sure of " + had + " of " + minutes(off.Wanted) + ".")
		}
		if most, short := r.HeldShort(); short {
			return say("**" + no + " held " + whole(most.Truncate(time.Minute).Minutes()) + " of " + minutes(off.Wanted) + " at most**, from " + near(now, off.At.Add(-most)) + ": nobody told when the heat went off.")
		}
		if n := len(r.Stretches); n > 0 && r.Stretches[n-1].Seen {
			return say("**" + no + " hold not seen.** At pressure " + near(now, r.Stretches[n-1].From) + "; nobody told when the heat went off.")
		}
		return say("**" + no + " heat off " + near(now, off.At) + ".** Nobody told when pressure was reached: no hold is credited.")
	}
	panic("outcome without words")
}

// heldFrom is from when to when the hold was that the heat went off after: it may have
// ended before.
func heldFrom(r kitchen.Run, off kitchen.HeatGoneOff) (from, to time.Time) {
	for _, s := range slices.Backward(r.Stretches) {
		if !s.To.IsZero() && !s.To.After(off.At) {
			return s.From, s.To
		}
	}
	return off.At.Add(-off.Credit.Hold), off.At
}

func (v RunView) gaugeHead(s *sheet, e kitchen.GaugeRead) {
	text := "**" + psi(e.Gauge) + "** on " + v.no() + ", " + v.clock(v.At)
	for _, g := range slices.Backward(v.Run.Gauge) {
		if g.At.Equal(v.At) && g.Shown == e.Gauge && !samePressure(g.True, g.Shown) {
			text += ": " + psi(g.True) + " true, by what your gauge is off"
			break
		}
	}
	s.add(must, say(text+"."))
}

// samePressure tells pressures apart to a tenth of a psi.
func samePressure(a, b unit.GaugeKPa) bool { return (a-b).PSI() < 0.05 && (b-a).PSI() < 0.05 }

func (v RunView) dipHead(s *sheet, e kitchen.Dipped) {
	to := ""
	if e.To != nil {
		to = " to " + psi(*e.To)
	}
	switch {
	case v.Was != nil && v.Was.Stage != kitchen.StagePressureLost && len(v.Was.Dips) == len(v.Run.Dips) && e.For > 0:
		s.add(must, say("Noted: "+v.no()+to+", no loss of pressure."))
	case e.For > 0:
		s.add(must, say("Noted: "+v.no()+" fell"+to+" for "+minutes(e.For)+", from "+v.clock(v.At)+"."))
	case v.Was != nil && v.Was.Stage == kitchen.StagePressureLost && v.Run.Stage == kitchen.StagePressureLost && to != "":
		s.add(must, say("Noted: "+v.no()+" fell"+to+"; still lost."))
	case v.Run.Stage != kitchen.StagePressureLost || to != "":
		when := ""
		if n := len(v.Run.Dips); v.Run.Stage == kitchen.StageAtPressure && n > 0 {
			when = ", from " + v.clock(v.Run.Dips[n-1].From)
		}
		s.add(must, say("Noted: "+v.no()+" fell"+to+when+"."))
	}
}

func (v RunView) waterLeftHead(s *sheet, e kitchen.WaterLeft) {
	s.add(must, say("**"+litres(e.Water)+" left** in the pot of "+v.no()+"."))
	learnt, ok := v.Run.Learnt()
	switch {
	case ok && learnt.BoilOff > 0:
		s.add(must, say("So it boils off about "+upTo(1, float64(learnt.BoilOff))+nb+"L an hour: next plans count with that."))
	case v.Run.Water.Assumed:
		s.add(should, say("Nobody told how much went in, so it teaches me nothing. Next time: `4 litres in the pot`"))
	}
	if e.Water < leftAtLeast {
		s.add(must, say("**Under a litre is too near dry**: put in more next time."))
	}
}

// waterInHead says how much is in, and when that is less than the hold asks for.
func (v RunView) waterInHead(s *sheet, e kitchen.WaterIn) {
	s.add(must, say("**"+litres(v.Run.Water.In)+" water** in "+v.no()+"."))
	if v.Was == nil || !v.Was.Water.Assumed || e.Added || v.Run.Stage.Hot() {
		return
	}
	if asked := v.Was.Water.In; e.Water < asked-0.05 {
		s.add(must, say("**Less than the "+litres(asked)+"** that this hold asks for: put in more, as far as the maker's line allows."))
	}
}

// leftAtLeast is the water that must be left in a pot (common practice).
const leftAtLeast unit.Litres = 1

func (v RunView) calledOffHead(s *sheet) {
	s.add(must, say("**"+v.no()+" called off** "+v.clock(v.At)+". It stays in the log."))
}

// answeredHead says what an answer to a ping means.
func (v RunView) answeredHead(s *sheet, e kitchen.PingAnswered) {
	again := ""
	if due, ok := v.askedAgain(e.Key); ok {
		again = " I ask again at **" + v.clock(due) + "**."
	}
	switch e.How {
	case kitchen.AnswerSeen:
		s.add(must, say(v.no()+": seen."+again))
	case kitchen.AnswerNotYet:
		s.add(must, say(v.no()+": not yet."+again))
	case kitchen.AnswerGotIt:
		s.add(must, say("**"+v.no()+" is {}'s now.**"+again, v.who(v.Run.Cook)))
	case kitchen.AnswerDone:
		s.add(must, say(v.no()+": done, "+v.clock(v.At)+"."))
	}
}

// askedAgain is when the next ping of the same chain is due.
func (v RunView) askedAgain(key string) (time.Time, bool) {
	chain := kitchen.Ping{Key: key}.Chain()
	var next time.Time
	for _, p := range v.Run.Wants(kitchen.Settings{}) {
		if p.Chain() == chain && p.Due.After(v.Now) && (next.IsZero() || p.Due.Before(next)) {
			next = p.Due
		}
	}
	return next, !next.IsZero()
}

// others names the readings told in the same breath as the last.
func (v RunView) others(last kitchen.Reading) chat.Para {
	if v.Was == nil {
		return nil
	}
	var also []string
	for _, r := range v.Run.Readings {
		known := slices.ContainsFunc(v.Was.Readings, func(w kitchen.Reading) bool { return w.No == r.No })
		if !known && r.No != last.No {
			words := readingWords(v.Run, r)
			if len(r.Units) == 0 {
				words = strings.TrimPrefix(words, v.no()+" at ")
			}
			also = append(also, words)
		}
	}
	if len(also) == 0 {
		return nil
	}
	return say("And " + listed(also) + ".")
}

// readingWords is a reading with what was measured: #12.3 at 31 °C, between.
func readingWords(r kitchen.Run, m kitchen.Reading) string {
	text := kitchen.Ref{Run: r.No, Units: m.Units}.String() + " at " + warmth(m.Temp)
	switch m.Where {
	case kitchen.Skin:
		return text + " outside"
	case kitchen.Between:
		return text + " between"
	case kitchen.Middle:
		return text + " in the middle"
	case 0:
		return text
	}
	panic("place without words")
}

func limitWords(m kitchen.Reading) string {
	if m.Limit == 0 {
		return ""
	}
	if m.Temp > m.Limit {
		return ", over the limit of " + likewise(m.Temp, m.Limit)
	}
	return ", within the limit of " + likewise(m.Temp, m.Limit)
}

// likewise is a temperature in the unit that another was said in.
func likewise(said, c unit.Celsius) string {
	if inFahrenheit(said) {
		return upTo(1, c.Fahrenheit()) + nb + "°F"
	}
	return warmth(c)
}

// estimated is a temperature that was worked out, in the unit that another was said in.
func estimated(said, c unit.Celsius) string {
	if inFahrenheit(said) {
		return upTo(0, c.Fahrenheit()) + nb + "°F"
	}
	return upTo(0, float64(c)) + nb + "°C"
}
