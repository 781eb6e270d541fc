package kitchen

import "time"

// UnitNotYet says that a unit is not so far: it is still in the cook, or it is a
// Blank, on which nothing is expected to grow.
type UnitNotYet struct {
	Unit  UnitRef
	Said  UnitKind
	State UnitState
	Blank bool
}

// UnitPast says that a unit is past that: since Since it is State, by the word of By;
// zero for nobody's.
type UnitPast struct {
	Unit  UnitRef
	Said  UnitKind
	State UnitState
	Since time.Time
	By    MemberNo
}

// UnitAlready says that the same was said of a unit before. Seen is false when nobody
// did, and it was filled in.
type UnitAlready struct {
	Unit UnitRef
	Said UnitKind
	By   MemberNo
	At   time.Time
	Seen bool
}

// UnitContradicts says that something can't be so of a unit at that time, because of
// what was said of a later one.
type UnitContradicts struct {
	Unit    UnitRef
	Said    UnitKind
	At      time.Time
	Other   UnitKind
	OtherAt time.Time
	OtherBy MemberNo
}

// OwnAncestor says that something would come from itself: a unit, or a culture by its
// name.
type OwnAncestor struct {
	Unit    UnitRef
	Culture string
}

// NoSuchCulture says that no culture has that name.
type NoSuchCulture struct{ Name string }

// CultureKnown says that a culture of that name is there since Made.
type CultureKnown struct {
	Name string
	Made time.Time
}

// CultureOver says that a culture had ended before that.
type CultureOver struct {
	Name  string
	Ended time.Time
}

func (UnitNotYet) refusal()      {}
func (UnitPast) refusal()        {}
func (UnitAlready) refusal()     {}
func (UnitContradicts) refusal() {}
func (OwnAncestor) refusal()     {}
func (NoSuchCulture) refusal()   {}
func (CultureKnown) refusal()    {}
func (CultureOver) refusal()     {}

func (UnitNotYet) Error() string      { return "unit not so far" }
func (UnitPast) Error() string        { return "unit past that" }
func (UnitAlready) Error() string     { return "already said of the unit" }
func (UnitContradicts) Error() string { return "contradicts what was said of the unit" }
func (OwnAncestor) Error() string     { return "own ancestor" }
func (NoSuchCulture) Error() string   { return "no such culture" }
func (CultureKnown) Error() string    { return "culture known already" }
func (CultureOver) Error() string     { return "culture ended" }

// NotCookedHere says that a load was not cooked here, so that there is no run to speak
// of.
type NotCookedHere struct{ Run RunNo }

func (NotCookedHere) refusal()      {}
func (NotCookedHere) Error() string { return "not cooked here" }

// NoneMeant says that no unit can be meant: of the run, or of any where Run is zero.
type NoneMeant struct{ Run RunNo }

// NoSuchUnitName says that no unit on the shelf has that name.
type NoSuchUnitName struct{ Name string }

// UnitNameShared says that several units on the shelf have that name.
type UnitNameShared struct {
	Name  string
	Units []UnitRef
}

func (NoneMeant) refusal()      {}
func (NoSuchUnitName) refusal() {}
func (UnitNameShared) refusal() {}

func (NoneMeant) Error() string      { return "no unit can be meant" }
func (NoSuchUnitName) Error() string { return "no unit of that name" }
func (UnitNameShared) Error() string { return "several units of that name" }
