package wording

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// RunView is a run of which something was just said.
type RunView struct {
	Run kitchen.Run
	// Told is what was just said, At when it happened, No its entry in the book.
	Told kitchen.RunEntry
	At   time.Time
	No   kitchen.EntryNo
	// Was is the run before it was said; nil when that is not known.
	Was *kitchen.Run
	// WasAt is when what was said stood in the book before its time was corrected;
	// zero when nothing was.
	WasAt time.Time
	// Instead is the reading that was told wrong and that this one stands for; nil
	// for none.
	Instead *kitchen.TempRead
	// To names who is asked to take over, or with whom the run stays, so that it
	// rings; nil for anybody.
	To chat.Span
	// Grows is what is expected of its units, once none waits for a culture any more; nil
	// before.
	Grows *ReadyLoad
	// More is the next load of the same plan, when there is one still to be cooked.
	More *kitchen.Order
	// Now is when it was said, in the kitchen's zone.
	Now time.Time
	// Who is what a member is called.
	Who func(kitchen.MemberNo) string
	// First tells whether a caution is New to this run. It is asked once for each
	// caution that is given.
	First func(caution string) Newness
}

// Run answers what was said of a run: what is due when, what to watch for, what
// to say next.
func Run(v RunView) chat.Post {
	if post, far := v.farOver(); far {
		return post
	}
	var s sheet
	v.over(&s)
	v.told(&s)
	v.stage(&s)
	v.takes(&s)
	v.ask(&s)
	v.caution(&s)
	s.undoable()
	return s.post(chat.Answer)
}

// told heads the answer with what was said, where the state alone doesn't tell
// it.
func (v RunView) told(s *sheet) {
	if !v.WasAt.IsZero() {
		if _, off := v.Told.(kitchen.HeatOff); off {
			v.offHead(s)
		}
		return // of all else the state says what follows from it
	}
	switch e := v.Told.(type) {
	case kitchen.RunBegun:
		s.add(must, say("**"+v.no()+"** is in the book."))
	case kitchen.HeatOn:
		if v.Run.Stage == kitchen.StagePressureLost && !v.overtaken() {
			s.add(must, say("**"+v.no()+" lit again** "+v.clock(v.At)+"."))
		}
		if v.Was != nil && v.Was.Stage == kitchen.StageCooling && v.Run.Stage == kitchen.StageHeating {
			s.add(must, say("**"+v.no()+" lit again** "+v.clock(v.At)+". Air came in: vent it again. The hold starts anew."))
			s.add(should, askWords(kitchen.HowMuchWater, v.Run))
		}
		v.notedLate(s)
	case kitchen.PrepBegun, kitchen.PrepEnded, kitchen.Steam, kitchen.VentClosed, kitchen.AtPressure,
		kitchen.PressureBack, kitchen.PressureLost:
		v.notedLate(s)
	case kitchen.AtZero, kitchen.OutOfPot:
		if v.doubted() {
			v.doubtHead(s)
			return
		}
		v.notedLate(s)
		v.offUnseen(s)
	case kitchen.GaugeRead:
		v.gaugeHead(s, e)
	case kitchen.Dipped:
		v.dipHead(s, e)
	case kitchen.HeatOff:
		v.offHead(s)
	case kitchen.TempRead:
		v.readHead(s)
	case kitchen.WaterLeft:
		v.waterLeftHead(s, e)
	case kitchen.WaterIn:
		v.waterInHead(s, e)
	case kitchen.RunGone:
		s.add(must, say("**"+v.no()+" is gone from the shelf**, "+v.clock(v.At)+". I ask no more about it."))
	case kitchen.CalledOff:
		v.calledOffHead(s)
	case kitchen.TookOver, kitchen.HandAccepted:
		if v.Stays() {
			v.staysHead(s)
			return
		}
		s.add(must, say("**"+v.no()+" is {}'s now**, and so are its pings.", v.who(v.Run.Cook)))
	case kitchen.HandOffered:
		v.offeredHead(s)
	case kitchen.PingAnswered:
		v.answeredHead(s, e)
	}
}

func (v RunView) no() string { return v.Run.No.String() }

// who is what a member is called; nobody for zero.
func (v RunView) who(m kitchen.MemberNo) string { return called(v.Who, m) }

func called(who func(kitchen.MemberNo) string, m kitchen.MemberNo) string {
	if m == 0 {
		return "nobody named"
	}
	if who == nil {
		return "somebody"
	}
	if name := who(m); name != "" {
		return name
	}
	return "somebody"
}

// clock is a time of day, with the day when it isn't today's.
func (v RunView) clock(t time.Time) string { return near(v.Now, t) }

// overtaken reports whether something later is known of the run already.
func (v RunView) overtaken() bool { return v.Run.Newest.After(v.At) }

// filledIn names the steps that nobody reported and that must have happened.
func (v RunView) filledIn() chat.Para {
	var missed []string
	for _, st := range v.Run.Steps {
		known := v.Was != nil && slices.Contains(v.Was.Steps, st)
		if !st.Seen && !known && st.At.Equal(v.At) && !v.endsOf(st) {
			missed = append(missed, stepWord(st))
		}
	}
	if len(missed) == 0 || !v.WasAt.IsZero() {
		return nil
	}
	return say("Not seen: " + listed(missed) + ".")
}

// endsOf reports whether what was told is the end of a step, so that it needs no
// beginning of its own: "drained".
func (v RunView) endsOf(st kitchen.Step) bool {
	ended, ok := v.Told.(kitchen.PrepEnded)
	return ok && st.Kind == kitchen.KindPrepBegun && st.Prep == ended.What
}

// button is a tap that says something of this run and no other.
func (v RunView) button(label, what string) chat.Button { return runTap(v.Run.No, label, what) }

// The sentences that speak of one run, beside what happens to it.
func gotIt(no kitchen.RunNo) string { return "i've got " + no.String() }
func logOf(no kitchen.RunNo) string { return "log " + no.String() }

// chartOf and whyCoolOf are the sentences that ask for the picture of a run, and for
// the working of its forecast.
func chartOf(no kitchen.RunNo) string {
	return phrase.Chart{Which: phrase.Which{Run: no}}.String()
}

func whyCoolOf(no kitchen.RunNo) string {
	return phrase.Why{Which: phrase.Which{Run: no}}.String()
}

func runTap(no kitchen.RunNo, label, what string) chat.Button {
	return tap(label, no.String()+" "+what)
}
