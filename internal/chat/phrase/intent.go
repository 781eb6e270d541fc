package phrase

import (
	"ryebell/internal/kitchen"
)

// Intent is what a message asks or tells. It says only what was said: zero
// fields were not. Every intent prints back (String) to a sentence that parses
// to the same intent. The cases are the types of this file.
//
//sumtype:decl
type Intent interface {
	String() string
	intent()
}

// Plan asks for the amounts of an order, and perhaps for the latest start or
// for the end of one that starts at a given time.
type Plan struct {
	Order kitchen.Order
	OutBy *Moment
	// StartAt is when the cooker would go on, or the day of it.
	StartAt *Moment
}

// Add puts more into the order just planned: "also 2 pints".
type Add struct {
	Order kitchen.Order
	OutBy *Moment
}

// Drop takes containers out of the order just planned: "without the jars", "only
// the bags". A Container with a Vessel alone means all of its sizes.
type Drop struct {
	Container kitchen.Container
	Goes      Goes
}

// Goes says which part of an order goes.
type Goes uint8

// What was named goes, or everything else does.
const (
	Named Goes = iota + 1
	Others
)

// Reverse asks what grain at hand makes, and perhaps when to start it.
type Reverse struct {
	Supply kitchen.Supply
	OutBy  *Moment
}

// SameAs asks for the plan of an earlier run again; of the newest when Run is 0.
type SameAs struct {
	Run   kitchen.RunNo
	OutBy *Moment
}

// Usual asks for the collective's usual order, perhaps changed: the fields of Fix
// that are set replace those of the order, as in [Correct], and so does Cooker.
type Usual struct {
	OutBy *Moment
	// StartAt is when the cooker would go on, or the day of it.
	StartAt *Moment
	Cooker  string
	Fix     kitchen.Item
	// Times is how often it is wanted; 0 where that wasn't said.
	Times int
}

// PlanIt asks for the plan just talked about: the first of what grain at hand
// makes, or the last plan again; Cooker for the one it is to be in, "in the small pot".
type PlanIt struct {
	OutBy  *Moment
	Cooker string
}

// MakeUsual says that the order just planned is the usual one from now on.
type MakeUsual struct{}

// OutBy asks when to start the order just planned.
type OutBy struct{ By Moment }

// StartAt asks when the order just planned would be done, started then.
type StartAt struct{ At Moment }

// RemindStart asks to be told at that start: "ping me then".
type RemindStart struct{}

// Cook puts an order on: the one just planned when Order is nil.
type Cook struct {
	Order  *kitchen.Order
	Cooker string
	// Load is which load of that plan is meant, from 1; 0 where none was said.
	Load int
}

// NextLoad as the load to cook is the one after those that were.
const NextLoad = -1

// Set changes the kitchen: one or more settings said in one breath.
type Set struct{ Changes []kitchen.Change }

// Kitchen asks what the settings are.
type Kitchen struct{}

// Members asks who is in the collective.
type Members struct{}

// GiveRole makes a member a steward, or a grower again.
type GiveRole struct {
	Member string
	Role   kitchen.Role
}

// Rename tells what the speaker wants to be called.
type Rename struct{ Name string }

// Claim gives a code: the operator's for a new collective, or one that a
// steward asked for so that this room joins theirs.
type Claim struct{ Code string }

// NewCode asks for a code with which another room can join.
type NewCode struct{}

// Forget asks to be forgotten. Name is what was typed to confirm it.
type Forget struct{ Name string }

// Why asks for the working of the last answer: of the number asked about ("why
// 682?"), of a part ("why the hold"), of a run ("why #12"), or of all when these are
// zero.
type Why struct {
	Which Which
	// Unit is the one that was asked about, "why #12.3"; zero for none.
	Unit   kitchen.UnitNo
	Number float64
	Part   Part
	// Of is what the hold is asked of, "how long for 5lb bags"; zero for the plan
	// talked about.
	Of kitchen.Container
}

// Part is a part of the working.
type Part uint8

// The parts: grain and water by weight, the hold, the water in the cooker, and how
// long something takes: the hold, or the cooling.
const (
	PartAmounts Part = iota + 1
	PartHold
	PartWater
	PartTime
)

// Help asks how; Topic is zero for the first page.
type Help struct{ Topic kitchen.Topic }

// Undo takes back the speaker's last entry.
type Undo struct{}

// Correct mends the last thing said: the fields of Item that are set replace
// those of the order, or Quantity the number of the setting. "no, 4 bags",
// "make it rye", "sorry 4 bags not 3", "no, 1500 g".
type Correct struct {
	Item kitchen.Item
	// Was is the count that was wrong, when said.
	Was int
	// Quantity is set when only an amount was said.
	Quantity []Sense
	OutBy    *Moment
}

// Choose answers the question just asked: by place ("the first" is 1), or by a
// word or amount that only the question gives a meaning to (Place 0).
type Choose struct {
	Place int
	Text  string
}

// Greet is a greeting.
type Greet struct{}

// Thanks is thanks.
type Thanks struct{}

// Board asks who is cooking what; Which for what one cooker or run is doing.
type Board struct{ Which Which }

func (Plan) intent()        {}
func (Add) intent()         {}
func (Drop) intent()        {}
func (StartAt) intent()     {}
func (Reverse) intent()     {}
func (SameAs) intent()      {}
func (Usual) intent()       {}
func (PlanIt) intent()      {}
func (MakeUsual) intent()   {}
func (OutBy) intent()       {}
func (RemindStart) intent() {}
func (Cook) intent()        {}
func (Set) intent()         {}
func (Kitchen) intent()     {}
func (Members) intent()     {}
func (GiveRole) intent()    {}
func (Rename) intent()      {}
func (Claim) intent()       {}
func (NewCode) intent()     {}
func (Forget) intent()      {}
func (Why) intent()         {}
func (Help) intent()        {}
func (Undo) intent()        {}
func (Correct) intent()     {}
func (Choose) intent()      {}
func (Greet) intent()       {}
func (Thanks) intent()      {}
func (Board) intent()       {}
