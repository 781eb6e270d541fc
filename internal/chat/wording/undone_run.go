package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// UndoneEntry names an entry about a run that was taken back: at is when it had
// happened, now in the kitchen's zone.
func UndoneEntry(e kitchen.RunEntry, no kitchen.RunNo, at, now time.Time) string {
	when := ", " + near(now, at) + "."
	switch e := e.(type) {
	case kitchen.RunBegun:
		return UndoneRun(no)
	case kitchen.PrepBegun:
		return no.String() + " " + prepWord(e.What) + when
	case kitchen.PrepEnded:
		if e.What != 0 {
			return no.String() + " " + prepWord(e.What) + " done" + when
		}
	case kitchen.AtPressure:
		if e.Gauge > 0 {
			return no.String() + " at " + psi(e.Gauge) + when
		}
	case kitchen.GaugeRead:
		return no.String() + " gauge " + psi(e.Gauge) + when
	case kitchen.TempRead:
		return no.String() + " read " + warmth(e.Temp) + when
	case kitchen.WaterIn:
		return no.String() + " " + litres(e.Water) + " water in" + when
	case kitchen.WaterLeft:
		return no.String() + " " + litres(e.Water) + " left" + when
	case kitchen.HeatOn, kitchen.Steam, kitchen.VentClosed, kitchen.PressureLost, kitchen.PressureBack, kitchen.Dipped,
		kitchen.HeatOff, kitchen.AtZero, kitchen.OutOfPot, kitchen.RunGone, kitchen.CalledOff, kitchen.TookOver, kitchen.HandOffered,
		kitchen.HandAccepted, kitchen.PingAnswered:
	}
	return no.String() + " " + kindWord(kindOf(e)) + when
}

// UndoneBooking names an entry about a booking that was taken back.
func UndoneBooking(e kitchen.BookingEntry, now time.Time) string {
	switch e := e.(type) {
	case kitchen.BookingMade:
		return "the booking " + bookingSpan(now, e.Standing(0)) + "."
	case kitchen.BookingReleased:
		return "that the booking is given up. It stands again."
	case kitchen.BookingMoved:
		return "that the booking is moved to " + near(now, e.From) + "."
	}
	panic("booking without words")
}

// UndoneGear names an entry about gear that was taken back.
func UndoneGear(e kitchen.GearEntry) string {
	switch e := e.(type) {
	case kitchen.GearFailed:
		return lower(failedWord(e.Part)) + "."
	case kitchen.GearChecked:
		var parts []string
		for _, p := range e.Parts {
			parts = append(parts, partWord(p))
		}
		return listed(parts) + " looked at."
	case kitchen.GaugeReads:
		return gaugeWords(e) + "."
	}
	panic("gear without words")
}

func gaugeWords(c kitchen.GaugeReads) string {
	if c.Low < 0 {
		return "gauge " + psi(-c.Low) + " high"
	}
	return "gauge " + psi(c.Low) + " low"
}

// BroughtBack says that the correction of a time was taken back: v.At is the time that
// stands again, v.WasAt the one that was struck, v.Run the run as it is now.
func BroughtBack(v RunView) chat.Post {
	var s sheet
	if was, mended := v.Told.(kitchen.TempRead); mended && v.Instead != nil {
		s.add(must, say("**"+v.no()+" read "+warmth(v.Instead.Temp)+"** again, "+v.clock(v.At)+"; taken back: "+warmth(was.Temp)+"."))
		v.Instead = nil
	} else {
		s.add(must, say(capital(kindWord(kindOf(v.Told)))+" **"+v.clock(v.At)+"** again, was "+v.clock(v.WasAt)+"."))
	}
	if _, off := v.Told.(kitchen.HeatOff); off {
		v.offHead(&s)
	}
	v.At, v.WasAt = v.Now, time.Time{} // nothing else was said
	v.stage(&s)
	return s.post(chat.Answer)
}

// TakenBack says what was taken back of a run and how it stands now: v.Told is what
// was struck, v.Run the run without it, beside what else the same message had written.
// By names who had said it, when that was somebody else.
func TakenBack(v RunView, by string, beside ...string) chat.Post {
	var s sheet
	what := UndoneEntry(v.Told, v.Run.No, v.At, v.Now)
	for _, also := range beside {
		what = strings.TrimSuffix(what, ".") + "; " + also
	}
	if by != "" {
		s.add(must, say("Taken back, said by {}: "+what, by))
	} else {
		s.add(must, say("Taken back: "+what))
	}
	v.At = v.Now // nothing else was said
	v.stage(&s)
	return s.post(chat.Answer)
}
