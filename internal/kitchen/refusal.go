package kitchen

import (
	"fmt"
	"time"

	"ryebell/internal/calc/unit"
)

// Refusal is the answer to something that cannot be done or cannot be so. It is
// an error so that it can travel; the sentence is made elsewhere, from the
// fields. The cases are the types of this file.
//
//sumtype:decl
type Refusal interface {
	error
	refusal()
}

// The ends of what an order takes.
const (
	MaxUnits               = 1000 // units in one order
	MaxArrived             = 200  // units that arrive at once
	MaxBag     unit.Grams  = 12000
	MinBag     unit.Grams  = 50
	MaxJar     unit.Litres = 10
	MinJar     unit.Litres = 0.05
	MaxLoose   unit.Grams  = 500000
	MinLoose   unit.Grams  = 20
	MaxHeight  unit.Metres = 5000
	MinHeight  unit.Metres = -430
	MaxRatio   unit.Ratio  = 2
	MinRatio   unit.Ratio  = 0.1
	// The moistures that can be asked for are about those of the ratios. Less
	// than the grain has already is TooDry.
	MaxMoisture  unit.Fraction = 0.7
	MinMoisture  unit.Fraction = 0.15
	LongestHold                = 8 * time.Hour
	ShortestHold               = time.Minute
	CoarsestStep unit.Grams    = 100
	// MaxGaugeError is 5 psi; a dial more than 2 psi off is replaced.
	MaxGaugeError unit.GaugeKPa = 34.5
)

// Quantity names what is out of range.
type Quantity uint8

// The quantities that have limits.
const (
	CountOfUnits Quantity = iota + 1
	BagWeight
	JarVolume
	JarWeight
	LooseGrain
	HeightOfKitchen
	RoomWarmth
	HoldTime
	GaugePressure
	WaterRatio
	Moisture
	GrainMoisture
	GypsumShare
	HeadspaceShare
	ScaleStepSize
	PotVolume
	CookerWater
	CookerCapacity
	SoakedYield
	BoilOffRate
	ReadTemp
	FallTime
	DipTime
	GaugeError
	ClockTime // minutes after midnight
	LimitOfCool
	GrownShare    // of a unit, overgrown or used
	CultureVolume // put on one unit, litres
	DaysOfRest    // before inoculating
)

// OutOfRange says that a number lies outside what it can be. Got, Low and High
// are in the base unit of the quantity (grams, litres, metres, °C, minutes, kPa,
// or a share).
type OutOfRange struct {
	What           Quantity
	Got, Low, High float64
}

// NoHold says that no table knows a container so large; a hold must be said.
type NoHold struct{ Container Container }

// NoSuchRun says that the book has no run of that number.
type NoSuchRun struct{ Run RunNo }

// NoPlanYet says that there is no plan to go on from.
type NoPlanYet struct{}

// NoUsualYet says that the collective has not said what its usual order is.
type NoUsualYet struct{}

// NotSteward says that only a steward may do that.
type NotSteward struct{}

// LastSteward says that the only steward can't stop being one.
type LastSteward struct{}

// NoSuchMember says that nobody of that name is here.
type NoSuchMember struct{ Name string }

// NoSuchCooker says that no cooker has that name, and which are known.
type NoSuchCooker struct {
	Name  string
	Known []string
}

// WhichCooker says that something was said of the cooker where there are several.
type WhichCooker struct{ Known []string }

// NothingToUndo says that the speaker has said nothing that could be taken back.
type NothingToUndo struct{}

// TooDry says that a wanted moisture is below what the grain has already.
type TooDry struct{ Wanted, Stored unit.Fraction }

// WrongCode says that a code is wrong, used or too old.
type WrongCode struct{}

// TooManyTries says that no further code is taken here for an hour.
type TooManyTries struct{}

// UnknownZone says that no time zone has that name. Zones are data of the machine,
// so the caller checks them.
type UnknownZone struct{ Name string }

// NameTaken says that another member or cooker has that name.
type NameTaken struct{ Name string }

// NoRoom says that not even one of a container goes into a cooker.
type NoRoom struct {
	Container Container
	Cooker    CookerIs
}

// TooSmall says that grain at hand fills not one container.
type TooSmall struct {
	AtHand, Needs unit.Grams
	Container     Container
}

// TooLate says that the start for a deadline has gone by: of so many loads, which
// lit Now would be out at Soonest.
type TooLate struct {
	Now, OutBy, Start, Soonest time.Time
	Loads                      int
}

// NotYet says that a run is not so far: Needs would have to come first.
type NotYet struct {
	Run   RunNo
	Said  Kind
	Stage Stage
	Needs Kind
}

// Misplaced says that a step can't be moved to At, since it comes after what
// followed it. It stays where it Was.
type Misplaced struct {
	Run     RunNo
	Said    Kind
	At, Was time.Time
}

// AlreadySo says that somebody said the same before. Seen is false when nobody
// did, and it was filled in since a later step was reported.
type AlreadySo struct {
	Run  RunNo
	Said Kind
	By   MemberNo
	At   time.Time
	Seen bool
	// Told is when it happened as it was said this time; zero when no time was said.
	Told time.Time
}

// Over says that a run is past that.
type Over struct {
	Run   RunNo
	Said  Kind
	Stage Stage
}

// BeforeRun says that something would lie before its run began. Whoever is sure
// can have it written all the same: see [Run.With].
type BeforeRun struct {
	Run       RunNo
	At, Begun time.Time
}

// InFuture says that something would happen after it was told.
type InFuture struct{ At, Told time.Time }

// Contradicts says that something cannot be so at that time, because of what
// somebody else said of a later one.
type Contradicts struct {
	Run     RunNo
	Said    Kind
	At      time.Time
	Other   Kind
	OtherAt time.Time
	OtherBy MemberNo
}

// NotOffered says that nobody offered the run to who accepts it.
type NotOffered struct {
	Run  RunNo
	Cook MemberNo
}

// StillOn says that a run can't be taken back: its flame is on, or its pressure not
// down, by what was told of it since. Said at At by By is the last of that, Stage how
// far it has come.
type StillOn struct {
	Run   RunNo
	Stage Stage
	Said  Kind
	At    time.Time
	By    MemberNo
}

// NoSuchUnit says that a run has fewer units.
type NoSuchUnit struct {
	Ref Ref
	Has int
}

// Booked says that a cooker is somebody's at that time.
type Booked struct{ By Booking }

// NoSuchBooking says that there is nothing of the kind to release or move.
type NoSuchBooking struct{}

// EmptyBooking says that a booking ends before it begins.
type EmptyBooking struct{ From, To time.Time }

// KillsCulture says that a limit for inoculating is over [MaxCoolLimit].
type KillsCulture struct{ Limit unit.Celsius }

func (OutOfRange) refusal()    {}
func (KillsCulture) refusal()  {}
func (NoHold) refusal()        {}
func (NoSuchRun) refusal()     {}
func (NoPlanYet) refusal()     {}
func (NoUsualYet) refusal()    {}
func (NotSteward) refusal()    {}
func (LastSteward) refusal()   {}
func (NoSuchMember) refusal()  {}
func (NoSuchCooker) refusal()  {}
func (WhichCooker) refusal()   {}
func (NothingToUndo) refusal() {}
func (TooDry) refusal()        {}
func (WrongCode) refusal()     {}
func (TooManyTries) refusal()  {}
func (UnknownZone) refusal()   {}
func (NameTaken) refusal()     {}
func (NoRoom) refusal()        {}
func (TooSmall) refusal()      {}
func (TooLate) refusal()       {}
func (NotYet) refusal()        {}
func (Misplaced) refusal()     {}
func (AlreadySo) refusal()     {}
func (Over) refusal()          {}
func (BeforeRun) refusal()     {}
func (InFuture) refusal()      {}
func (Contradicts) refusal()   {}
func (NotOffered) refusal()    {}
func (StillOn) refusal()       {}
func (NoSuchUnit) refusal()    {}
func (Booked) refusal()        {}
func (NoSuchBooking) refusal() {}
func (EmptyBooking) refusal()  {}

func (e OutOfRange) Error() string  { return fmt.Sprintf("quantity %d out of range", e.What) }
func (KillsCulture) Error() string  { return "limit over what a culture stands" }
func (e NoHold) Error() string      { return "no hold known for a container so large" }
func (e NoSuchRun) Error() string   { return "no run " + e.Run.String() }
func (NoPlanYet) Error() string     { return "no plan yet" }
func (NoUsualYet) Error() string    { return "no usual order yet" }
func (NotSteward) Error() string    { return "not a steward" }
func (LastSteward) Error() string   { return "last steward" }
func (NoSuchMember) Error() string  { return "no such member" }
func (NoSuchCooker) Error() string  { return "no such cooker" }
func (WhichCooker) Error() string   { return "which of several cookers" }
func (NothingToUndo) Error() string { return "nothing to undo" }
func (TooDry) Error() string        { return "wanted moisture below storage moisture" }
func (WrongCode) Error() string     { return "wrong code" }
func (TooManyTries) Error() string  { return "too many tries" }
func (UnknownZone) Error() string   { return "unknown time zone" }
func (NameTaken) Error() string     { return "name taken" }
func (NoRoom) Error() string        { return "container does not fit the cooker" }
func (TooSmall) Error() string      { return "too little grain for one container" }
func (TooLate) Error() string       { return "start has gone by" }
func (NotYet) Error() string        { return "run not so far" }
func (Misplaced) Error() string     { return "moved past what followed it" }
func (AlreadySo) Error() string     { return "already said" }
func (Over) Error() string          { return "run past that" }
func (BeforeRun) Error() string     { return "before its run" }
func (InFuture) Error() string      { return "in the future" }
func (Contradicts) Error() string   { return "contradicts what was said" }
func (NotOffered) Error() string    { return "not offered" }
func (StillOn) Error() string       { return "still on" }
func (NoSuchUnit) Error() string    { return "no such unit" }
func (Booked) Error() string        { return "cooker booked" }
func (NoSuchBooking) Error() string { return "no such booking" }
func (EmptyBooking) Error() string  { return "booking ends before it begins" }
