package phrase

import (
	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// Meant says which units are meant, as far as it was said. All zero means that none
// were: the post answered or what was said last decides.
type Meant struct {
	// Refs are the units named, in the order of the sentence: #12.1-4, or all of #12
	// where Units is empty.
	Refs []kitchen.Ref
	// Units are units of a run that wasn't named: "bag 2", ".3".
	Units []kitchen.UnitNo
	// Names are the own names of units, as typed: "bag a".
	Names []string
	// Vessel narrows it to the jars or the bags: "the jars of 12". Count is how many
	// they are said to be, "the three bags"; 0 where that wasn't said.
	Vessel kitchen.Vessel
	Count  int
	// Except are units of the one run named that are not meant.
	Except []kitchen.UnitNo
	// Rest is "the rest": what of the run hasn't been named in the same breath.
	Rest bool
	// State narrows it to units in a state: "the suspect ones"; 0 for any.
	State kitchen.UnitState
}

// TellUnits says what happened to units, several things in one breath: "12.1-2
// oyster, 12.3 shiitake, 12.4 blank", "shook 12", "12.3 green".
type TellUnits struct {
	// Parts hold what was said of which units; never empty.
	Parts []UnitsPart
	// When it happened; nil means now.
	When *Moment
}

// UnitsPart is one thing told of some units. The entry itself names none, but for the
// new name of one ([kitchen.UnitNamed]), whose Unit is 0.
type UnitsPart struct {
	Of    Meant
	Entry kitchen.UnitEntry
}

// Arrive says that units which no run made stand on the shelf: "4 quarts rye oyster
// on the shelf since 3 oct".
type Arrive struct {
	// Loads are those that differ in culture, state, age or where they came from;
	// never empty.
	Loads []Arriving
}

// Arriving is a load that no run made. Its entry has neither number, nor room, nor
// Since, which is settled from When.
type Arriving struct {
	Entry kitchen.Arrived
	// Place is where it stands, as typed; empty where that wasn't said.
	Place string
	// When its age counts from; nil where that wasn't said.
	When *Moment
	// Share is how much of those that grow is overgrown; 0 where that wasn't said.
	Share unit.Fraction
}

// MakeCulture says that a culture was made or came here: "plate 7 from plate 3".
// Owner is the member who owns it, as typed, or "me"; empty where that wasn't said.
// Also are the names of others that were made in the same way, "plates 7-9".
type MakeCulture struct {
	Made  kitchen.CultureMade
	Also  []string
	Owner string
	When  *Moment
}

// EndCulture says that a culture is no more: "threw plate 7", "bottle 3 is empty".
// Also are the names of others that ended with it.
type EndCulture struct {
	Ended kitchen.CultureEnded
	Also  []string
	When  *Moment
}

// Cultures asks which cultures there are; Name for one of them, Kind for those of one.
type Cultures struct {
	Name string
	Kind kitchen.CultureKind
}

// Shelf asks what stands on the shelf, or how much of it there is.
type Shelf struct {
	Ask ShelfAsk
	// State, Container, Culture, Grain and Place narrow it; zero for all. Culture is a
	// species or a name of a culture, Place a place, as typed.
	State     kitchen.UnitState
	Container kitchen.Container
	Culture   string
	Grain     grain.Kind
	Place     string
}

// ShelfAsk is what is asked of the shelf.
type ShelfAsk uint8

// The zero ShelfAsk lists what is there; Oldest what is to be used first, HowMany
// counts, AnythingBad lists what is suspect or lost.
const (
	WhatThere ShelfAsk = iota
	Oldest
	HowMany
	AnythingBad
)

// WhereIs asks where units stand: "where is 12.3".
type WhereIs struct{ Of Meant }

// ReadyWhen asks when units are to be shaken, or expected grown through: "when is
// 12.3 ready".
type ReadyWhen struct{ Of Meant }

// Trace asks what came from what. One of its fields is set.
type Trace struct {
	Of Meant
	// Culture is the name of a culture, as typed, or a species.
	Culture string
	// Lot is a lot, by its kind and name; a grain lot can be said with the grain.
	Lot kitchen.LotSaid
	// Tag is a free tag, without its #.
	Tag string
}

// LogUnit asks for the story of units: "log 12.3".
type LogUnit struct{ Of Meant }

func (TellUnits) intent()   {}
func (Arrive) intent()      {}
func (MakeCulture) intent() {}
func (EndCulture) intent()  {}
func (Cultures) intent()    {}
func (Shelf) intent()       {}
func (WhereIs) intent()     {}
func (ReadyWhen) intent()   {}
func (Trace) intent()       {}
func (LogUnit) intent()     {}
