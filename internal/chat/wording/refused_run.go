package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Asked is when and among whom something was refused, and the sentence that asked
// for it.
type Asked struct {
	// Now is in the kitchen's zone.
	Now time.Time
	Who func(kitchen.MemberNo) string
	// Said is the sentence, empty when it is not to be offered again.
	Said string
}

// notYet says what has to be told first.
func notYet(r kitchen.NotYet) chat.Post {
	if r.Said == kitchen.KindWaterLeft && r.Stage.Hot() {
		return with(lines("**Water low in "+r.Run.String()+"? Heat off now**, and leave it shut until it is cold.",
			"Never put cold water into a hot dry pot. Nothing was written.",
			"Next: say `heat off`; what is left, once it is open."), runTap(r.Run, "Heat is off", "heat off"))
	}
	if r.Said == kitchen.KindTempRead && (r.Needs == kitchen.KindHeatOff || r.Needs == kitchen.KindAtZero) {
		next, button, say := "when it shows zero, say `zero`", "It's at zero", "zero"
		if r.Needs == kitchen.KindHeatOff {
			next, button, say = "flame off? Say `heat off`, with when it was", "Heat is off", "heat off"
		}
		return with(lines("**Leave "+r.Run.String()+" shut until it shows zero.** Nobody told that it was down by then. Nothing was written.",
			"Next: "+next+". Wrong time? Say the reading again, with its time."), runTap(r.Run, button, say))
	}
	if r.Needs == kitchen.KindHeatOff {
		return with(lines("**Leave "+r.Run.String()+" shut.** Nobody said heat off, and it can't be down yet. Nothing was written.",
			"Next: flame off? Say `heat off`, with when it was."), runTap(r.Run, "Heat is off", "heat off"))
	}
	if r.Needs == kitchen.KindAtZero {
		return with(lines("**Leave "+r.Run.String()+" shut until it shows zero.** Nobody said zero, and it can't be down so soon. Nothing was written.",
			"Next: when it shows zero, say `zero`."), runTap(r.Run, "It's at zero", "zero"))
	}
	return with(lines("**"+r.Run.String()+"** is "+stageWord(r.Stage)+": "+kindWord(r.Needs)+" comes first. Nothing was written.",
		"Next: say `"+kindSaid(r.Needs)+"`, with when it was."), runTap(r.Run, capital(kindWord(r.Needs)), kindSaid(r.Needs)))
}

// neverTold says that there is no time to correct.
func neverTold(r kitchen.NeverTold) chat.Post {
	what := "anything"
	said := "heat off"
	if r.Said != 0 {
		what, said = kindWord(r.Said), kindSaid(r.Said)
	}
	return lines("**Nobody has told "+what+" of "+r.Run.String()+"** yet. Nothing was changed.", "Tell it with its time, like `"+said+" 5 min ago`")
}

// misplaced says where the step stays, since what followed it was told.
func misplaced(r kitchen.Misplaced, a Asked) chat.Post {
	return lines("**"+r.Run.String()+" "+kindWord(r.Said)+" stays at "+near(a.Now, r.Was)+".** At "+near(a.Now, r.At)+" it would come after what followed it.",
		"What was told when: `log "+r.Run.String()+"`")
}

// fewMinutes is by how much the example of a corrected time is off the one that stands.
const fewMinutes = 10 * time.Minute

// alreadySo says who said it before, so that a second tap is no second entry.
func alreadySo(r kitchen.AlreadySo, a Asked) chat.Post {
	no, when := r.Run.String(), near(a.Now, r.At)
	if r.Said == kitchen.KindTookOver {
		return theirs(say("**"+no+" is with {}** already, since "+when+". No second entry.", called(a.Who, r.By)))
	}
	if !r.Seen {
		return lines("**"+no+" "+kindWord(r.Said)+"** was filled in for "+when+", since what follows was told.",
			"Another time? `"+kindSaid(r.Said)+" was 10 min earlier`")
	}
	why := say("**"+no+" "+kindWord(r.Said)+"**: {} said so, "+when+". No second entry.", called(a.Who, r.By))
	if kindSaid(r.Said) != kindWord(r.Said) {
		return theirs(why)
	}
	if other := r.Told.In(a.Now.Location()); otherTime(r, a.Now) {
		return with(theirs(why, say("Next: "+clock(a.Now, other)+" instead? Tap it.")),
			runTap(r.Run, "It was "+other.Format("15:04"), kindSaid(r.Said)+" was "+other.Format("15:04")))
	}
	return theirs(why, say("Another time? `"+kindSaid(r.Said)+" was "+r.At.Add(-fewMinutes).In(a.Now.Location()).Format("15:04")+"`"))
}

// otherTime reports whether what was said twice was said with another time of its own.
func otherTime(r kitchen.AlreadySo, now time.Time) bool {
	off := r.Told.Sub(r.At).Abs()
	return !r.Told.IsZero() && off >= time.Minute && now.Sub(r.Told) < 24*time.Hour
}

// past says that the run is beyond what was said.
func past(r kitchen.Over) chat.Post {
	return with(lines("**"+r.Run.String()+"** is "+stageWord(r.Stage)+": "+kindWord(r.Said)+" comes too late. Nothing was written.",
		"Did it happen earlier? Say when, like `"+kindSaid(r.Said)+" 20 min ago`"), tap("Log", logOf(r.Run)))
}

func contradicts(r kitchen.Contradicts, a Asked) chat.Post {
	why := say("**"+r.Run.String()+" "+kindWord(r.Said)+" "+near(a.Now, r.At)+"** can't be: {} said "+kindWord(r.Other)+" "+near(a.Now, r.OtherAt)+". Nothing was written.",
		called(a.Who, r.OtherBy))
	if kindSaid(r.Other) != kindWord(r.Other) {
		return theirs(why, say("Say it with another time."))
	}
	return theirs(why, say("Another time, or mend the other: `"+kindSaid(r.Other)+" was 10 min earlier`"))
}

func beforeRun(r kitchen.BeforeRun, a Asked) chat.Post {
	return with(lines("**"+dated(r.At, a.Now)+"** is before "+r.Run.String()+" began, "+dated(r.Begun, a.Now)+". Nothing was written.",
		"Which is it? Say it with the day and the time."), tap("Log", logOf(r.Run)))
}

// LongBefore asks whether something was so many hours before its run was put on, or,
// where it would begin one, before now; no is zero then. Sure is the sentence that
// says so without a doubt.
func LongBefore(no kitchen.RunNo, at, now time.Time, sure string) chat.Post {
	of := "is long gone by"
	if no != 0 {
		of = "is long before " + no.String() + " was put on"
	}
	return with(lines("**"+dated(at, now)+"** "+of+". Nothing is written yet.", "Next: mistyped? Say it with the right hour."),
		tap("It was "+at.Format("15:04"), sure))
}

// dated is an instant with its date, for where two days are told apart.
func dated(t, now time.Time) string { return t.In(now.Location()).Format("Mon 2 Jan 15:04") }

func inFuture(r kitchen.InFuture, a Asked) chat.Post {
	return lines("**"+dated(r.At, a.Now)+"** is still to come; now is "+dated(r.Told, a.Now)+". Nothing was written.",
		"Say when it was, like `at 14:05`, `10 min ago` or `yesterday`.")
}

func notOffered(r kitchen.NotOffered, a Asked) chat.Post {
	return with(theirs(say(r.Run.String()+" was not offered to you; it is with {}.", called(a.Who, r.Cook)), say("Next: take it all the same.")),
		tap("I've got it", gotIt(r.Run)))
}

func stillOn(r kitchen.StillOn, a Asked) chat.Post {
	no := r.Run.String()
	why := say("**"+no+" is hot**: {} said "+kindWord(r.Said)+" "+near(a.Now, r.At)+". Nothing was taken back.", called(a.Who, r.By))
	if r.Stage == kitchen.StageCalledOff {
		return theirs(why, say("Next: heat off and zero. Say both, then undo."))
	}
	return theirs(why, say("If it comes to nothing: `call off "+no+"`"))
}

func noSuchUnit(r kitchen.NoSuchUnit) chat.Post {
	run := r.Ref.Run.String()
	return lines("**"+r.Ref.String()+"**: "+run+" has "+plural(r.Has, "unit")+". Nothing was written.", "They are `"+run+".1` to `"+run+"."+whole(float64(r.Has))+"`.")
}

// booked says whose the cooker is then.
func booked(r kitchen.Booked, a Asked) chat.Post {
	return with(theirs(say("{} is **{}'s** "+bookingSpan(a.Now, r.By)+". Nothing was written.", capital(cookerOf(r.By.Cooker)), called(a.Who, r.By.For)),
		say("Next: another time, or ask.")), tap("Bookings", "bookings"))
}

func emptyBooking(r kitchen.EmptyBooking, a Asked) chat.Post {
	return lines("**"+near(a.Now, r.From)+" to "+near(a.Now, r.To)+"** ends before it begins. Nothing was written.", "Like: `big pot saturday 10-14`")
}

// StillRising asks whether a pressure well under the one of the hold is only on the
// way.
func StillRising(r kitchen.Run, e kitchen.AtPressure) chat.Post {
	var s sheet
	shown := e.Gauge
	s.add(must, say("**Still coming up?** "+psi(shown)+" is under the "+onGauge(r)+" of "+r.No.String()+"'s hold. Nothing is written yet."))
	s.add(must, say("A hold at "+psi(shown)+" takes far longer."))
	figure := upTo(1, shown.PSI())
	s.then(nil, runTap(r.No, "Still coming up", "gauge says "+figure), runTap(r.No, "Hold at "+figure, "at "+figure+" psi"))
	return s.post(chat.Answer)
}

// NoRunOn says that nothing is on the stove that this could be about.
func NoRunOn() chat.Post {
	return lines("Nothing is on the stove that this could be about. Nothing was written.", "Next: ask for a plan, like `3 bags 5lb agar`, then `cook it`.")
}

// WhichRun asks which run is meant; Said is the sentence that didn't tell.
func WhichRun(rows []kitchen.Row, said string, now time.Time, who func(kitchen.MemberNo) string) chat.Post {
	var s sheet
	s.add(must, say("**Which run?** Nothing is written yet."))
	for i, r := range rows {
		if i < 3 {
			s.buttons = append(s.buttons, runTap(r.Run, runLabel(r), said))
		}
		s.add(should, boardRow(r, now, who))
	}
	if len(rows) > 3 {
		s.add(must, say("Another: say it with the number, like `"+rows[3].Run.String()+" "+said+"`"))
	}
	return s.post(chat.Answer)
}

// longestLabel is how long a name on a button is, in characters.
const longestLabel = 16

// runLabel is a run on a button: its number, and the cooker where that fits.
func runLabel(r kitchen.Row) string {
	label := r.Run.String() + " " + r.Cooker
	if len([]rune(label)) > longestLabel || r.Cooker == "" {
		return r.Run.String()
	}
	return label
}
