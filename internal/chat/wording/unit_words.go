package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// shortWhy says in a few words why something can't be so of a unit.
func shortWhy(r kitchen.Refusal) string {
	switch r := r.(type) {
	case kitchen.NoSuchUnit:
		return r.Ref.Run.String() + " has " + plural(r.Has, "unit")
	case kitchen.NoSuchRun:
		return "there is no " + r.Run.String() + " in this book"
	case kitchen.NoSuchUnitName:
		return "nothing on the shelf is called so"
	case kitchen.UnitNameShared:
		return "several are called so"
	case kitchen.NoneMeant:
		return "none of them can be meant"
	case kitchen.UnitNotYet:
		if r.Blank {
			return "it is the blank"
		}
		return unitStandsWord(r.State)
	case kitchen.UnitPast:
		return "it is " + r.State.String()
	case kitchen.UnitAlready:
		return "that was told before"
	case kitchen.UnitContradicts:
		return "by then it was " + r.Other.String()
	case kitchen.OwnAncestor:
		return "it would come from itself"
	case kitchen.InFuture:
		return "that is still to come"
	case kitchen.BeforeRun:
		return "that is before it was cooked"
	case kitchen.AlreadyOn, kitchen.AlreadySo, kitchen.Booked, kitchen.Contradicts, kitchen.CultureKnown, kitchen.CultureOver,
		kitchen.EmptyBooking, kitchen.KillsCulture, kitchen.LastSteward, kitchen.Misplaced, kitchen.NameTaken, kitchen.NeverTold,
		kitchen.NoHold, kitchen.NoHour, kitchen.NoPlanYet, kitchen.NoRoom, kitchen.NoSuchBooking, kitchen.NoSuchCooker,
		kitchen.NoSuchCulture, kitchen.NoSuchMember, kitchen.NoSuchTime, kitchen.NoUsualYet, kitchen.NotCookedHere, kitchen.NotOffered,
		kitchen.NotSteward, kitchen.NotYet, kitchen.NothingToUndo, kitchen.OutOfRange, kitchen.Over, kitchen.StillOn,
		kitchen.TakenBackAlready, kitchen.TooDry, kitchen.TooLate, kitchen.TooLongHere, kitchen.TooManyTries, kitchen.TooSmall,
		kitchen.UnknownZone, kitchen.WhichCooker, kitchen.WrongCode:
		return "that can't be so"
	}
	panic(r)
}

// unitStandsWord is how far a unit is, of which something is told too soon.
func unitStandsWord(s kitchen.UnitState) string {
	if s == kitchen.InCook {
		return "it is still in the cook"
	}
	return "it is only " + s.String()
}

// LoadOption is a load that can be meant, with its units and the sentence that says
// so.
type LoadOption struct {
	Load  kitchen.Units
	Units []kitchen.UnitNo
	Say   string
}

// one is the unit that is meant where it is one alone.
func (o LoadOption) one() kitchen.Unit {
	if len(o.Units) != 1 {
		return kitchen.Unit{}
	}
	u, _ := o.Load.Unit(o.Units[0])
	return u
}

// WhichLoad asks which load is meant, of so many that can be.
func WhichLoad(options []LoadOption, of int, now time.Time) chat.Post {
	post := lines("**Which one?** Nothing is written yet.")
	for _, o := range options {
		ref := refOf(o.Load, o.Units)
		what := orderWords(o.Load.Order) + ", " + dayWord(now, o.Load.Begun)
		if one := o.one(); one.Ref != (kitchen.UnitRef{}) && len(o.Load.All) > 1 {
			what = unitStands(one)
		}
		post.Blocks = append(post.Blocks, say("**"+ref+"**: "+what))
		post.Buttons = append(post.Buttons, tap(ref, o.Say))
	}
	if of > len(options) {
		post.Blocks = append(post.Blocks, say("And "+whole(float64(of-len(options)))+" more: say the number, like `12.3`"))
	}
	return post
}
