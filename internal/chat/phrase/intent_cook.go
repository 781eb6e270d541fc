package phrase

import "ryebell/internal/kitchen"

// Which says which run is meant. All zero means that none was said.
type Which struct {
	Run kitchen.RunNo
	// Cooker is the name of the cooker it is in: "eta on the big pot".
	Cooker string
	// Mine is set when it is the speaker's own: "mine is at 15".
	Mine bool
	// Both is set when two runs are meant, of which the same is told: "both at 15".
	Both bool
}

// Tell says what happened to a run, or to several things of it in one breath:
// "steam", "at 15 since 14:05", "vent done, weight on", "12.3 is 31 outside".
type Tell struct {
	Which Which
	// When it happened; nil means now.
	When *Moment
	// Entries hold what was said; never empty. None of them is a hand-over or an
	// answer to a ping: those have intents of their own.
	Entries []kitchen.RunEntry
}

// ShiftTime corrects when the last thing said happened: "at pressure was 10 min
// earlier". Kind is the thing named, 0 for the last one said.
type ShiftTime struct {
	Which Which
	Kind  kitchen.Kind
	To    Moment
	// FromThere is true when the Shift of To counts from the time told before
	// ("10 min earlier") and not from the message ("10 min ago").
	FromThere bool
}

// TakeOver says that somebody watches a run from now on: the speaker when Who is
// empty ("i've got 12"), else the one named ("ana takes 12").
type TakeOver struct {
	Which Which
	Who   string
}

// HandOver asks somebody to take a run: the one named, or anybody when To is
// empty ("can someone take over the pot").
type HandOver struct {
	Which Which
	To    string
	When  *Moment
}

// AnswerPing answers a ping in words that only it gives a meaning to: "not yet",
// "done", "I've got it", "seen", "still at 15 psi". Burning is set for "the flame is
// still on", which gainsays a heat off; Which is the run that was named.
type AnswerPing struct {
	How     kitchen.Answered
	Burning bool
	Which   Which
}

// CoolYet asks whether or when a run is cool; By is set for "cool by 8?", For for
// "cool enough for enoki".
type CoolYet struct {
	Which Which
	// Unit is the one that was asked about: "when can i use 12.3"; zero for the load.
	Unit kitchen.UnitNo
	By   *Moment
	For  string
	// Warm is set for "how warm is it", which people ask of much else.
	Warm bool
}

// Log asks for the story of a run, or for the last runs; Mine for the speaker's.
type Log struct {
	Which Which
	Mine  bool
}

// Steps asks what to do now: "what now", "what do i do after venting".
type Steps struct {
	Which Which
}

// Book books a cooker.
type Book struct {
	Cooker string
	When   Interval
	// Soak is true when the evening before belongs to it.
	Soak bool
}

// Unbook gives a booking up; When is nil for the next one of the speaker.
type Unbook struct{ When *Moment }

// Bookings asks who has which cooker when.
type Bookings struct{}

// GearTold says that a part of a cooker failed or was looked at. When is when it
// failed, nil where that wasn't said.
type GearTold struct {
	Entry kitchen.GearEntry
	When  *Moment
}

// Quiet sets the speaker's or, with Everybody, the collective's quiet hours.
type Quiet struct {
	From, To  kitchen.TimeOfDay
	Everybody bool
}

// PingsWhere says where the speaker wants pings.
type PingsWhere struct{ Where kitchen.Audience }

// WhyPing asks why a ping came, or why none did.
type WhyPing struct{ None bool }

func (Tell) intent()       {}
func (ShiftTime) intent()  {}
func (TakeOver) intent()   {}
func (HandOver) intent()   {}
func (AnswerPing) intent() {}
func (CoolYet) intent()    {}
func (Log) intent()        {}
func (Steps) intent()      {}
func (Book) intent()       {}
func (Unbook) intent()     {}
func (Bookings) intent()   {}
func (GearTold) intent()   {}
func (Quiet) intent()      {}
func (PingsWhere) intent() {}
func (WhyPing) intent()    {}
