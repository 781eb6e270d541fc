package wording

import (
	"cmp"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// UnitsAsk is one thing that units of a load ask for.
type UnitsAsk struct {
	Load kitchen.Units
	// Run is what the load comes of; zero for one that arrived.
	Run kitchen.Run
	Due kitchen.UnitsDue
}

// UnitsPingView is what units ask for on one day, or a look at suspect ones.
type UnitsPingView struct {
	// Asks has one at least.
	Asks []UnitsAsk
	// To names whom it rings for; nil when it is for the whole room.
	To chat.Span
	// Now is when it is sent, in the kitchen's zone; Late how long after it could have been.
	Now  time.Time
	Late time.Duration
}

// UnitsPing says what units ask for, the most pressing first, a line for each load and
// matter. What the screen has no room for is counted.
func UnitsPing(v UnitsPingView) chat.Post {
	v.Asks = pressing(v.Asks)
	for n := len(v.Asks); ; n-- {
		if s := v.sheet(n); n == 1 || s.whole() {
			return s.post(v.loudness())
		}
	}
}

// loudness is that of the loudest.
func (v UnitsPingView) loudness() chat.Loudness {
	loudest := kitchen.DigestPing
	for _, a := range v.Asks {
		loudest = min(loudest, a.Due.Loudness)
	}
	return loudness(loudest)
}

// pressing sorts what is asked, the oldest load of each matter first, and makes one of
// what is asked of one load twice. Of the ages of cooked grain the highest is said, and
// of what is asked of growth the last.
func pressing(asks []UnitsAsk) []UnitsAsk {
	asks = lastOfGrowth(asks)
	slices.SortStableFunc(asks, func(a, b UnitsAsk) int {
		return cmp.Or(cmp.Compare(a.urgency(), b.urgency()), a.Load.Begun.Compare(b.Load.Begun), cmp.Compare(a.Load.Run, b.Load.Run))
	})
	var out []UnitsAsk
	for _, a := range asks {
		a.Due.Units = slices.DeleteFunc(slices.Clone(a.Due.Units), func(n kitchen.UnitNo) bool {
			return slices.ContainsFunc(out, func(o UnitsAsk) bool {
				return o.Load.Run == a.Load.Run && (o.Due.Kind == a.Due.Kind || o.ofCooked() && a.ofCooked()) && slices.Contains(o.Due.Units, n)
			})
		})
		i := slices.IndexFunc(out, func(o UnitsAsk) bool { return o.alike(a) })
		switch {
		case len(a.Due.Units) == 0:
		case i < 0:
			out = append(out, a)
		default:
			out[i].Due.Units = append(out[i].Due.Units, a.Due.Units...)
			slices.Sort(out[i].Due.Units)
		}
	}
	return out
}

// ofGrowth are what is asked of units that grow, in the order in which it is.
var ofGrowth = []kitchen.PingKind{kitchen.ShakeDue, kitchen.NothingSeen, kitchen.ThroughDue}

// lastOfGrowth leaves out of what is asked of growth the units of which something later
// is asked: what is likely grown through isn't shaken first.
func lastOfGrowth(asks []UnitsAsk) []UnitsAsk {
	out := slices.Clone(asks)
	for i := range out {
		a := &out[i]
		a.Due.Units = slices.DeleteFunc(slices.Clone(a.Due.Units), func(n kitchen.UnitNo) bool {
			return slices.ContainsFunc(asks, func(o UnitsAsk) bool {
				earlier := slices.Index(ofGrowth, a.Due.Kind)
				return earlier >= 0 && slices.Index(ofGrowth, o.Due.Kind) > earlier && o.Load.Run == a.Load.Run && slices.Contains(o.Due.Units, n)
			})
		})
	}
	return slices.DeleteFunc(out, func(a UnitsAsk) bool { return len(a.Due.Units) == 0 })
}

// alike reports whether two can be said in one line.
func (a UnitsAsk) alike(b UnitsAsk) bool {
	return a.Load.Run == b.Load.Run && a.Due.Kind == b.Due.Kind && a.Due.Growth.Named == b.Due.Growth.Named &&
		a.first().Culture == b.first().Culture && (a.Due.Kind != kitchen.SpawnKept || a.chilled() == b.chilled())
}

// ofCooked reports whether it is about the age of cooked grain.
func (a UnitsAsk) ofCooked() bool {
	return a.Due.Kind == kitchen.BagsThreeWeeks || a.Due.Kind == kitchen.ShelvedMonth || a.Due.Kind == kitchen.ShelvedThreeMonths
}

// urgency is the place of a matter among those of one post.
func (a UnitsAsk) urgency() int {
	return slices.Index([]kitchen.PingKind{
		kitchen.LookAgain, kitchen.ShakeDue, kitchen.ThroughDue, kitchen.NothingSeen, kitchen.SpawnKept, kitchen.RestOver,
		kitchen.ShelvedThreeMonths, kitchen.ShelvedMonth, kitchen.BagsThreeWeeks,
	}, a.Due.Kind)
}

func (v UnitsPingView) sheet(n int) *sheet {
	var s sheet
	if len(v.Asks) > 1 {
		s.add(must, PingView{To: v.To}.addressed(say("**Today on the shelf:**")))
	}
	var taps []chat.Button
	for i, a := range v.Asks {
		if i < n {
			line := v.line(a)
			if len(v.Asks) == 1 {
				line = PingView{To: v.To}.addressed(line)
			}
			s.add(must, line)
		}
		if b := a.taps(); len(b) > 0 && len(taps) < maxButtons {
			taps = append(taps, b[0])
		}
	}
	if n < len(v.Asks) {
		s.add(must, say("And "+whole(float64(len(v.Asks)-n))+" more: `shelf`"))
	}
	if len(v.Asks) == 1 {
		s.add(should, v.ground(v.Asks[0]))
		taps = v.Asks[0].taps()
	}
	v.minded(&s)
	s.add(must, v.lateness())
	s.then(v.Asks[0].then(), taps...)
	return &s
}

func (v UnitsPingView) lateness() chat.Para {
	if v.Late < time.Minute {
		return nil
	}
	return say(capital(lateBy(v.Late)) + " late: I was down.")
}

// minded says what to mind about the species that are asked about, once each.
func (v UnitsPingView) minded(s *sheet) {
	var said []string
	for _, a := range v.Asks {
		text := a.mind()
		if text != "" && !slices.Contains(said, text) {
			said = append(said, text)
			s.add(may, say(text))
		}
	}
}

// mind is what to mind about a species in what is asked.
func (a UnitsAsk) mind() string {
	sp := a.Due.Growth.Species
	name := capital(sp.Name)
	switch {
	case a.Due.Kind == kitchen.ShakeDue && sp.Has(kitchen.SetsHard):
		return name + " sets hard: shake it early."
	case a.Due.Kind == kitchen.ThroughDue && sp.Has(kitchen.PinsInBag):
		return name + " pins when it is left: take it in time."
	case a.Due.Kind == kitchen.ThroughDue && sp.Has(kitchen.LooksUnfinished):
		return name + " stays thin: it can be through and not look it."
	case a.Due.Kind == kitchen.ThroughDue && sp.Has(kitchen.Browns):
		return name + " browns: by itself that is no mould."
	case a.Due.Kind == kitchen.SpawnKept && sp.Has(kitchen.NeverChill):
		return name + " must not be chilled."
	}
	return ""
}

// ref names the units as they can be typed.
func (a UnitsAsk) ref() string { return unitsRef(a.Load, a.Due.Units) }

func (a UnitsAsk) named() string { return namedUnits(a.Load, a.Due.Units) }

// unitsRef names units of a load as they can be typed: #12.1-4, or #12 for all of it.
func unitsRef(load kitchen.Units, these []kitchen.UnitNo) string {
	if len(these) == len(load.All) {
		return load.Run.String()
	}
	return spelledOut(load, these)
}

// spelledOut names each unit, for what can't be said of a whole run: used #12 would be
// its grain.
func spelledOut(load kitchen.Units, these []kitchen.UnitNo) string {
	return kitchen.Ref{Run: load.Run, Units: slices.Sorted(slices.Values(these))}.String()
}

// namedUnits is the same for the eye: many scattered ones are counted.
func namedUnits(load kitchen.Units, these []kitchen.UnitNo) string {
	if ref := unitsRef(load, these); len(ref) <= longestLabel {
		return ref
	}
	return whole(float64(len(these))) + " of " + load.Run.String()
}

// first is the unit with the lowest number.
func (a UnitsAsk) first() kitchen.Unit {
	u, _ := a.Load.Unit(slices.Min(a.Due.Units))
	return u
}

func (a UnitsAsk) chilled() bool { return kitchen.Chilled(a.first().Place) }

// heldWhole reports whether nothing speaks against a culture on the grain: of a run,
// that its hold was seen whole.
func (a UnitsAsk) heldWhole() bool { return a.Load.Arrived || heldWhole(a.Run) }

// taps are the buttons of what is asked, the likely one first. Each says its load.
func (a UnitsAsk) taps() []chat.Button {
	ref := a.ref()
	of := func(label, what string) chat.Button { return tap(a.labelled(label), what) }
	switch a.Due.Kind {
	case kitchen.LookAgain:
		return []chat.Button{of("fine", ref+" looks fine"), of("bad", ref+" contaminated")}
	case kitchen.ShakeDue:
		return []chat.Button{of("shook", "shook "+ref)}
	case kitchen.ThroughDue:
		return []chat.Button{of("through", ref+" grown through")}
	case kitchen.NothingSeen:
		return []chat.Button{of("nothing", "nothing on "+ref)}
	case kitchen.SpawnKept:
		if a.Due.Growth.Species.Has(kitchen.NeverChill) || a.chilled() {
			return []chat.Button{of("used", "used "+spelledOut(a.Load, a.Due.Units))}
		}
		return []chat.Button{of("used", "used "+spelledOut(a.Load, a.Due.Units)), of("chilled", "moved "+ref+" to the fridge")}
	case kitchen.RestOver, kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		if !a.heldWhole() || a.Due.Kind == kitchen.ShelvedThreeMonths {
			return []chat.Button{of("thrown", "threw "+ref)}
		}
		return nil // what is good is not offered to be thrown out
	case kitchen.StartNow, kitchen.PrepOver, kitchen.WetGrainStands, kitchen.VentOver, kitchen.HoldNearlyOver, kitchen.WaterShort,
		kitchen.HoldOver, kitchen.WhoIsThere, kitchen.CheckZero, kitchen.StillHot, kitchen.ProbablyCool, kitchen.MeasureAgain,
		kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue, kitchen.WeeklyDigest,
		kitchen.SteamYet, kitchen.PressureYet:
	}
	panic("no ping of units: " + a.Due.Kind.String())
}

// labelled puts the units before a word on a button, or else their run.
func (a UnitsAsk) labelled(word string) string {
	if label := a.ref() + " " + word; len(label) <= longestLabel {
		return label
	}
	return a.Load.Run.String() + " " + word
}

// then is how to answer what is most pressing.
func (a UnitsAsk) then() chat.Para {
	ref, one := a.ref(), a.first().Ref.String()
	switch a.Due.Kind {
	case kitchen.LookAgain:
		return say("Only one of them? `" + one + " looks fine`")
	case kitchen.ShakeDue:
		return say("Then say `shook " + ref + "`. Green or wet? `" + one + " green`")
	case kitchen.ThroughDue:
		return say("Not yet? Say how far: `" + one + " 80%`")
	case kitchen.NothingSeen:
		return say("White anywhere? Say `" + one + " 20%`")
	case kitchen.SpawnKept:
		return say("Used it? `used " + spelledOut(a.Load, a.Due.Units) + " on straw`")
	case kitchen.RestOver:
		if a.heldWhole() {
			return say("Then say `" + ref + " oyster lc`")
		}
		return say("Then say `threw " + ref + "`")
	case kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		return say("Used it, or threw it out? `threw " + one + "`")
	case kitchen.StartNow, kitchen.PrepOver, kitchen.WetGrainStands, kitchen.VentOver, kitchen.HoldNearlyOver, kitchen.WaterShort,
		kitchen.HoldOver, kitchen.WhoIsThere, kitchen.CheckZero, kitchen.StillHot, kitchen.ProbablyCool, kitchen.MeasureAgain,
		kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue, kitchen.WeeklyDigest,
		kitchen.SteamYet, kitchen.PressureYet:
	}
	panic("no ping of units: " + a.Due.Kind.String())
}

// UnitsStillAsked answers words to a ping about units that say nothing of them: what it
// still asks, and how to answer.
func UnitsStillAsked(v UnitsPingView) chat.Post {
	if len(v.Asks) == 0 {
		return lines("**That is answered.** It asks nothing more.")
	}
	post := UnitsPing(v)
	post.Loudness = chat.Answer
	post.Blocks = append([]chat.Block{say("**Nothing was written.** What it asks, in words of the thing:")}, post.Blocks...)
	return post
}
