package phrase

import (
	"slices"
	"strings"

	"ryebell/internal/kitchen"
)

// talk reports whether nothing was read but what people say to each other.
func (r reading) talk() bool {
	for _, k := range r.kinds {
		switch k {
		case KindManners, KindChoose, KindCorrect, KindBoard:
		case KindTell, KindShift, KindTakeOver, KindHandOver, KindAnswerPing, KindCoolYet, KindLog, KindSteps, KindBooking, KindGear, KindQuiet,
			KindPings, KindWhyPing, KindChart, KindTimes, KindLogUnit, KindTellUnits, KindReadyWhen:
			if r.plain {
				return false
			}
		case KindPlan, KindReverse, KindSameAs, KindUsual, KindOutBy, KindCook, KindKitchen, KindMembers, KindWhy, KindHelp, KindUndo,
			KindAdd, KindDrop, KindStartAt, KindPlanIt:
			return false
		case KindMakeCulture, KindEndCulture, KindCultures, KindTrace, KindArrive, KindShelf, KindWhereIs, KindSome:
			if r.plain {
				return false
			}
		}
	}
	return true
}

// vague reports whether nothing was read but words of the cook day that name no
// run, time or figure: with a word too much they are rather talk.
func (r reading) vague() bool {
	for _, in := range r.intents {
		if !vague(in) {
			return false
		}
	}
	return true
}

// vague reports whether one thing read names no run, time or figure.
func vague(in Intent) bool {
	switch in := in.(type) {
	case Tell:
		return in.Which == (Which{}) && in.When == nil && !slices.ContainsFunc(in.Entries, figured)
	case TakeOver:
		return in.Which == (Which{})
	case HandOver:
		return in.Which == (Which{})
	case CoolYet:
		return in.Which == (Which{})
	case Chart:
		return in.Which == (Which{})
	case TimesRecord, Log, Steps, AnswerPing, WhyPing, Bookings, Board, GearTold, PingsWhere:
		return true
	case TellUnits:
		return !slices.ContainsFunc(in.Parts, func(p UnitsPart) bool { return len(p.Of.Refs)+len(p.Of.Names) > 0 })
	case LogUnit:
		return len(in.Of.Refs) == 0
	case ReadyWhen:
		return len(in.Of.Refs)+len(in.Of.Names) == 0
	case ShiftTime, Book, Unbook, Quiet, Plan, Reverse, Add, Drop, StartAt, PlanIt, SameAs, Set, GiveRole, Rename, Claim, MakeUsual, Help, Usual, OutBy, Kitchen, Members,
		NewCode, Forget, Undo, RemindStart, Why, Cook, Correct, Choose, Greet, Thanks:
		return false
	case Shelf:
		return in == Shelf{Ask: in.Ask}
	case MakeCulture, EndCulture, Cultures, Trace, Arrive, WhereIs, SomeUnits:
		return false
	}
	panic(in)
}

// bareness marks what people also say to each other.
func (r reading) bareness() Bareness {
	if _, mends := r.intents[0].(Correct); r.near != nil && mends && len(r.intents) == 1 {
		return Loosely // "no, half"
	}
	if r.ask != nil || r.near != nil {
		return Plainly // nearly all of it is kitchen talk: an answer is better than a riddle
	}
	for i, in := range r.intents {
		if !r.bare[i] && !r.loose(in) {
			return Plainly
		}
	}
	return Loosely
}

// loose reports whether people say such a thing to each other, too: a word or
// two that name nothing of the kitchen.
func (r reading) loose(in Intent) bool {
	words := r.used + r.filler
	switch in := in.(type) {
	case PlanIt:
		return in.Cooker != ""
	case Plan, Add, StartAt, Reverse, Set, GiveRole, Rename, Claim, MakeUsual, Help, Usual, OutBy, Kitchen, Members, NewCode, Forget,
		Undo, RemindStart:
		return false
	case SameAs:
		return in.Run == 0
	case Why:
		return words <= 2 && in.Number == 0 && in.Part == 0 && in.Which == (Which{})
	case Cook:
		return words <= 2 && in.Order == nil
	case Board:
		return in.Which == (Which{}) && (words <= 1 || words <= 3 && !r.plain && r.s.said[0] == "status")
	case Tell, ShiftTime, TakeOver, HandOver, AnswerPing, CoolYet, Log, Steps, Book, Unbook, Bookings, GearTold, Quiet, PingsWhere, WhyPing, Chart, TimesRecord, LogUnit, TellUnits, ReadyWhen:
		return !r.plain
	case Correct, Choose, Greet, Thanks, Drop:
		return true
	case MakeCulture, EndCulture, Cultures, Trace, SomeUnits:
		return !r.plain
	case Arrive, Shelf, WhereIs:
		return false // which of them are, their grammars say
	}
	panic(in)
}

func figured(e kitchen.RunEntry) bool { return strings.ContainsAny(toldText(e), "0123456789") }

// carryRun gives what is told in one breath behind something told of a run the
// same run: "#12 heat off 20 min ago, zero now".
func (r *reading) carryRun() {
	var of Which
	for i, in := range r.intents {
		t, ok := in.(Tell)
		if !ok {
			continue
		}
		if t.Which == (Which{}) {
			t.Which = of
			r.intents[i] = t
		}
		of = t.Which
	}
}
