package kitchen

import (
	"fmt"
	"slices"
	"strings"
)

// UnitState is how far a unit has come, or what became of it.
type UnitState uint8

// The states. The numbers stand in the book: new ones go to the end. InCook is
// before its run is at zero; UnitGone is what left with its whole run, called off or
// off the shelf, and nobody said how.
const (
	InCook UnitState = iota + 1
	UnitCooked
	UnitInoculated
	UnitGrowing
	UnitGrown
	UnitUsed
	UnitSuspect
	UnitContaminated
	UnitDead
	UnitDiscarded
	UnitGiven
	UnitGone
)

// UnitStates lists them all.
func UnitStates() []UnitState {
	return []UnitState{
		InCook, UnitCooked, UnitInoculated, UnitGrowing, UnitGrown, UnitUsed, UnitSuspect, UnitContaminated, UnitDead,
		UnitDiscarded, UnitGiven, UnitGone,
	}
}

// String returns the word for logs and the state diagram.
func (s UnitState) String() string {
	if s > 0 && int(s) < len(unitStateWords) {
		return unitStateWords[s]
	}
	return "state not said"
}

var unitStateWords = [...]string{
	InCook: "in the cook", UnitCooked: "cooked", UnitInoculated: "inoculated", UnitGrowing: "growing", UnitGrown: "grown through",
	UnitUsed: "used", UnitSuspect: "suspect", UnitContaminated: "contaminated", UnitDead: "dead", UnitDiscarded: "discarded",
	UnitGiven: "given away", UnitGone: "gone",
}

// Stands reports whether a unit is still there to be looked at, good or bad.
func (s UnitState) Stands() bool {
	switch s {
	case UnitCooked, UnitInoculated, UnitGrowing, UnitGrown, UnitSuspect, UnitContaminated, UnitDead:
		return true
	case InCook, UnitUsed, UnitDiscarded, UnitGiven, UnitGone:
		return false
	}
	panic("state " + s.String())
}

// Lives reports whether a culture is on it and nobody has called it lost.
func (s UnitState) Lives() bool {
	return s == UnitInoculated || s == UnitGrowing || s == UnitGrown || s == UnitSuspect
}

// UnitKind is what an entry says of a unit, without its figures.
type UnitKind uint8

// The kinds, in the order of the trade.
const (
	SaidArrived UnitKind = iota + 1
	SaidLot
	SaidStood
	SaidNamed
	SaidTagged
	SaidMoved
	SaidBlank
	SaidInoculated
	SaidShaken
	SaidGrowth
	SaidSuspect
	SaidFine
	SaidGrownThrough
	SaidContaminated
	SaidDead
	SaidPartUsed
	SaidUsed
	SaidGiven
	SaidDiscarded
	// SaidCooked and SaidGone are told of the whole run.
	SaidCooked
	SaidGone
)

// String returns the words for logs and the state diagram.
func (k UnitKind) String() string {
	if k > 0 && int(k) < len(unitKindWords) {
		return unitKindWords[k]
	}
	return "kind not said"
}

var unitKindWords = [...]string{
	SaidArrived: "arrived", SaidLot: "lot said", SaidStood: "spot said", SaidNamed: "named", SaidTagged: "tagged", SaidMoved: "moved",
	SaidBlank: "left blank", SaidInoculated: "inoculated", SaidShaken: "shaken", SaidGrowth: "growth seen", SaidSuspect: "looks suspect",
	SaidFine: "fine after all", SaidGrownThrough: "grown through", SaidContaminated: "contaminated", SaidDead: "nothing grew",
	SaidPartUsed: "partly used", SaidUsed: "used", SaidGiven: "given away", SaidDiscarded: "thrown out", SaidCooked: "run at zero", SaidGone: "run gone",
}

// unitMove is what may be said of a unit in a state, and the state it leads to.
type unitMove struct {
	kind UnitKind
	to   UnitState
}

// unitCourse is the way of a unit that nothing goes wrong with, while it stands.
var unitCourse = []UnitState{UnitCooked, UnitInoculated, UnitGrowing, UnitGrown}

// asBefore is the state that a suspect unit was in before.
const asBefore = 0

// unitFollows says what may follow what, the likeliest first. Refusals and the state
// diagram are made from it. What became of a unit that is away can still be told: it
// stays away, and counts as lost.
var unitFollows = map[UnitState][]unitMove{
	InCook: {{SaidCooked, UnitCooked}, {SaidGone, UnitGone}},
	UnitCooked: {
		{SaidInoculated, UnitInoculated},
		{SaidBlank, UnitCooked},
		{SaidShaken, UnitCooked},
		{SaidMoved, UnitCooked},
		{SaidSuspect, UnitSuspect},
		{SaidContaminated, UnitContaminated},
		{SaidFine, UnitCooked},
		{SaidPartUsed, UnitCooked},
		{SaidUsed, UnitUsed},
		{SaidGiven, UnitGiven},
		{SaidDiscarded, UnitDiscarded},
		{SaidGone, UnitGone},
	},
	UnitInoculated: {
		{SaidGrowth, UnitGrowing},
		{SaidShaken, UnitInoculated},
		{SaidGrownThrough, UnitGrown},
		{SaidMoved, UnitInoculated},
		{SaidSuspect, UnitSuspect},
		{SaidContaminated, UnitContaminated},
		{SaidDead, UnitDead},
		{SaidFine, UnitInoculated},
		{SaidPartUsed, UnitInoculated},
		{SaidUsed, UnitUsed},
		{SaidGiven, UnitGiven},
		{SaidDiscarded, UnitDiscarded},
		{SaidGone, UnitGone},
	},
	UnitGrowing: {
		{SaidGrowth, UnitGrowing},
		{SaidShaken, UnitGrowing},
		{SaidGrownThrough, UnitGrown},
		{SaidMoved, UnitGrowing},
		{SaidSuspect, UnitSuspect},
		{SaidContaminated, UnitContaminated},
		{SaidDead, UnitDead},
		{SaidFine, UnitGrowing},
		{SaidPartUsed, UnitGrowing},
		{SaidUsed, UnitUsed},
		{SaidGiven, UnitGiven},
		{SaidDiscarded, UnitDiscarded},
		{SaidGone, UnitGone},
	},
	UnitGrown: {
		{SaidUsed, UnitUsed},
		{SaidPartUsed, UnitGrown},
		{SaidShaken, UnitGrown},
		{SaidGrowth, UnitGrowing}, // shaken, it shows less than it did
		{SaidMoved, UnitGrown},
		{SaidGiven, UnitGiven},
		{SaidSuspect, UnitSuspect},
		{SaidContaminated, UnitContaminated},
		{SaidFine, UnitGrown},
		{SaidDiscarded, UnitDiscarded},
		{SaidGone, UnitGone},
	},
	UnitSuspect: {
		{SaidFine, asBefore},
		{SaidContaminated, UnitContaminated},
		{SaidSuspect, UnitSuspect},
		{SaidGrowth, UnitSuspect},
		{SaidShaken, UnitSuspect},
		{SaidGrownThrough, UnitGrown},
		{SaidMoved, UnitSuspect},
		{SaidDead, UnitDead},
		{SaidBlank, UnitSuspect},
		{SaidPartUsed, UnitSuspect},
		{SaidUsed, UnitUsed},
		{SaidGiven, UnitGiven},
		{SaidDiscarded, UnitDiscarded},
		{SaidGone, UnitGone},
	},
	UnitContaminated: {
		{SaidDiscarded, UnitDiscarded},
		{SaidContaminated, UnitContaminated},
		{SaidMoved, UnitContaminated},
		{SaidGone, UnitGone},
		{SaidSuspect, UnitContaminated}, // another sign of it
		{SaidBlank, UnitContaminated},   // which says who is to blame
	},
	UnitDead: {
		{SaidInoculated, UnitInoculated}, // once more
		{SaidDiscarded, UnitDiscarded},
		{SaidGrowth, UnitGrowing}, // it lived after all
		{SaidContaminated, UnitContaminated},
		{SaidMoved, UnitDead},
		{SaidGone, UnitGone},
	},
	UnitUsed:      {{SaidContaminated, UnitUsed}},
	UnitGiven:     {{SaidContaminated, UnitGiven}, {SaidDead, UnitGiven}, {SaidUsed, UnitUsed}},
	UnitDiscarded: {{SaidContaminated, UnitDiscarded}, {SaidDead, UnitDiscarded}},
	UnitGone:      {{SaidContaminated, UnitGone}, {SaidUsed, UnitUsed}, {SaidGiven, UnitGiven}, {SaidDiscarded, UnitDiscarded}},
}

// unitAnytime lists what changes no state and may be said in each.
var unitAnytime = []UnitKind{SaidLot, SaidStood, SaidNamed, SaidTagged}

// leads is where a kind leads from a state; false when it may not follow.
func (s UnitState) leads(k UnitKind) (UnitState, bool) {
	if slices.Contains(unitAnytime, k) {
		return s, true
	}
	i := slices.IndexFunc(unitFollows[s], func(m unitMove) bool { return m.kind == k })
	if i < 0 {
		return s, false
	}
	return unitFollows[s][i].to, true
}

// fills reports whether a kind told of cooked grain stands for an inoculation too
// that nobody reported.
func (k UnitKind) fills() bool {
	return k == SaidGrowth || k == SaidGrownThrough || k == SaidDead
}

// is reports whether a unit in a state is already what a kind says.
func (k UnitKind) is(s UnitState) bool {
	switch k {
	case SaidInoculated:
		return s == UnitInoculated || s == UnitGrowing || s == UnitGrown
	case SaidGrownThrough:
		return s == UnitGrown
	case SaidDead:
		return s == UnitDead
	case SaidUsed, SaidPartUsed:
		return s == UnitUsed
	case SaidGiven:
		return s == UnitGiven
	case SaidDiscarded:
		return s == UnitDiscarded
	case SaidArrived, SaidLot, SaidStood, SaidNamed, SaidTagged, SaidMoved, SaidBlank, SaidShaken, SaidGrowth, SaidSuspect,
		SaidFine, SaidContaminated, SaidCooked, SaidGone:
		return false
	}
	panic("kind " + k.String())
}

// UnitDiagram is the state diagram of a unit in Mermaid's language, from the table
// that the code itself uses. Moves that stay in their state are left out.
func UnitDiagram() string {
	var b strings.Builder
	id := func(s UnitState) string { return strings.ReplaceAll(s.String(), " ", "_") }
	b.WriteString("stateDiagram-v2\n")
	for _, s := range UnitStates() {
		fmt.Fprintf(&b, "    state %q as %s\n", s.String(), id(s))
	}
	fmt.Fprintf(&b, "    [*] --> %s\n", id(InCook))
	for _, s := range unitCourse {
		fmt.Fprintf(&b, "    [*] --> %s: %s\n", id(s), SaidArrived)
	}
	for _, s := range UnitStates() {
		for _, m := range unitFollows[s] {
			if m.to == asBefore {
				for _, back := range unitCourse {
					fmt.Fprintf(&b, "    %s --> %s: %s\n", id(s), id(back), m.kind)
				}
			} else if m.to != s {
				fmt.Fprintf(&b, "    %s --> %s: %s\n", id(s), id(m.to), m.kind)
			}
		}
	}
	return b.String()
}
