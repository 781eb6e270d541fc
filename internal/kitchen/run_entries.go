package kitchen

import (
	"time"

	"ryebell/internal/calc/unit"
)

// RunEntry is an entry about one run: [RunBegun] and what was said of it since.
// The cases are the types of this file.
//
//sumtype:decl
type RunEntry interface {
	Entry
	kind() Kind
}

// RunBegun says that a load was put on, or that its preparation started: an
// order became a run.
type RunBegun struct {
	Run    RunNo  `json:"run"`
	Cooker string `json:"cooker"`
	// Order is what goes into the cooker at once: see [Plan.Orders].
	Order Order `json:"order"`
	// Cook is who watches it; zero when nobody was named.
	Cook MemberNo `json:"cook,omitzero"`
	// Room is where it was begun and where its pings go, as in [RoomJoined].
	Room int64 `json:"room,omitzero"`
	// Follows is the load of the same plan before it in the same cooker, whose
	// water is topped up; zero for a first load.
	Follows RunNo `json:"follows,omitzero"`
	// Turn is the turn of the plan that it was put on from, so that a second tap
	// is known; zero for none. Load of Loads is its place in that plan.
	Turn  int64 `json:"turn,omitzero"`
	Load  int   `json:"load,omitzero"`
	Loads int   `json:"loads,omitzero"`
}

// Prep is a step of wetting grain before the cook.
type Prep uint8

// The steps, in the order of the trade.
const (
	Soaking Prep = iota + 1
	Simmering
	Draining
	Drying
)

// String returns the word for logs and the book.
func (p Prep) String() string {
	switch p {
	case Soaking:
		return "soaking"
	case Simmering:
		return "simmering"
	case Draining:
		return "draining"
	case Drying:
		return "drying"
	}
	return "preparation not said"
}

// PrepBegun says that a step of the preparation began. It ends the one before.
type PrepBegun struct {
	What Prep `json:"what"`
}

// PrepEnded says that a step of the preparation is over; a zero What is the one
// that goes on.
type PrepEnded struct {
	What Prep `json:"what,omitzero"`
}

// HeatOn says that the flame is on.
type HeatOn struct{}

// Steam says that a steady plume comes out of the vent: the venting begins.
type Steam struct{}

// VentClosed says that the weight is on.
type VentClosed struct{}

// AtPressure says that the cooker has come up: the hold begins. Gauge is what it
// shows; zero when that was not said.
type AtPressure struct {
	Gauge unit.GaugeKPa `json:"kpa,omitzero"`
}

// GaugeRead is what the gauge showed.
type GaugeRead struct {
	Gauge unit.GaugeKPa `json:"kpa"`
}

// PressureLost says that the pressure fell below what the hold needs. Gauge is
// what it showed then; nil when that was not said.
type PressureLost struct {
	Gauge *unit.GaugeKPa `json:"kpa,omitempty"`
}

// PressureBack says that the pressure is back: the hold starts again. A zero
// Gauge was not said.
type PressureBack struct {
	Gauge unit.GaugeKPa `json:"kpa,omitzero"`
}

// Dipped says that the pressure fell and came back by itself. The record's At is
// when it began to fall. A zero For was not said: then To is how deep the last
// loss of pressure went, or, while none is known, the pressure is still down. A
// nil To was not said.
type Dipped struct {
	To  *unit.GaugeKPa `json:"kpa,omitempty"`
	For time.Duration  `json:"for,omitzero"`
}

// HeatOff says that the flame is off. Only a person's words or tap say so.
type HeatOff struct{}

// AtZero says that the gauge shows no pressure any more.
type AtZero struct{}

// OutOfPot says that the containers stand outside the cooker.
type OutOfPot struct{}

// Place is where a temperature was taken.
type Place uint8

// The places. A zero Place was not said and counts as the skin, for nobody
// pierces a closed bag.
const (
	Skin Place = iota + 1
	Between
	Middle
)

// String returns the word for logs and the book.
func (p Place) String() string {
	switch p {
	case Skin:
		return "skin"
	case Between:
		return "between"
	case Middle:
		return "middle"
	}
	return "place not said"
}

// TempRead is what a thermometer showed. No Units means one of the run, unsaid
// which.
type TempRead struct {
	Units []UnitNo     `json:"units,omitempty"`
	Temp  unit.Celsius `json:"c"`
	Where Place        `json:"where,omitzero"`
}

// WaterLeft says how much water was found in the pot after the cook.
type WaterLeft struct {
	Water unit.Litres `json:"l"`
}

// WaterIn says how much water is in the pot now, or, with Added, how much was put
// to what was there.
type WaterIn struct {
	Water unit.Litres `json:"l"`
	Added bool        `json:"added,omitzero"`
}

// CalledOff says that the run comes to nothing. It leaves its trace.
type CalledOff struct{}

// RunGone says that all of a run has left the shelf: used, given away or thrown
// out. Its cooked grain is waited for no longer.
type RunGone struct{}

// TookOver says that a member watches the run from now on; zero means who said
// it.
type TookOver struct {
	Member MemberNo `json:"member,omitzero"`
}

// HandOffered says that the cook wants a member to take over. It changes nothing
// until that one accepts.
type HandOffered struct {
	To MemberNo `json:"to"`
}

// HandAccepted says that who was offered the run has it now.
type HandAccepted struct{}

// Answered is what somebody answered to a ping.
type Answered uint8

// AnswerSeen is a thumb: it says nothing of the flame, and a guard ping asks again.
// AnswerDone says that what was asked for has been done, AnswerNotYet that it has
// not, AnswerGotIt that the one who answers sees to it.
const (
	AnswerSeen Answered = iota + 1
	AnswerDone
	AnswerNotYet
	AnswerGotIt
)

// String returns the word for logs and the book.
func (a Answered) String() string {
	switch a {
	case AnswerSeen:
		return "seen"
	case AnswerDone:
		return "done"
	case AnswerNotYet:
		return "not yet"
	case AnswerGotIt:
		return "got it"
	}
	return "answer not said"
}

// PingAnswered says what was answered to a ping of the run.
type PingAnswered struct {
	Key string   `json:"key"`
	How Answered `json:"how"`
}

func (RunBegun) entry()     {}
func (PrepBegun) entry()    {}
func (PrepEnded) entry()    {}
func (HeatOn) entry()       {}
func (Steam) entry()        {}
func (VentClosed) entry()   {}
func (AtPressure) entry()   {}
func (GaugeRead) entry()    {}
func (PressureLost) entry() {}
func (PressureBack) entry() {}
func (Dipped) entry()       {}
func (HeatOff) entry()      {}
func (AtZero) entry()       {}
func (OutOfPot) entry()     {}
func (TempRead) entry()     {}
func (WaterLeft) entry()    {}
func (WaterIn) entry()      {}
func (CalledOff) entry()    {}
func (RunGone) entry()      {}
func (TookOver) entry()     {}
func (HandOffered) entry()  {}
func (HandAccepted) entry() {}
func (PingAnswered) entry() {}

func (RunBegun) kind() Kind     { return KindRunBegun }
func (PrepBegun) kind() Kind    { return KindPrepBegun }
func (PrepEnded) kind() Kind    { return KindPrepEnded }
func (HeatOn) kind() Kind       { return KindHeatOn }
func (Steam) kind() Kind        { return KindSteam }
func (VentClosed) kind() Kind   { return KindVentClosed }
func (AtPressure) kind() Kind   { return KindAtPressure }
func (GaugeRead) kind() Kind    { return KindGaugeRead }
func (PressureLost) kind() Kind { return KindPressureLost }
func (PressureBack) kind() Kind { return KindPressureBack }
func (Dipped) kind() Kind       { return KindDipped }
func (HeatOff) kind() Kind      { return KindHeatOff }
func (AtZero) kind() Kind       { return KindAtZero }
func (OutOfPot) kind() Kind     { return KindOutOfPot }
func (TempRead) kind() Kind     { return KindTempRead }
func (WaterLeft) kind() Kind    { return KindWaterLeft }
func (WaterIn) kind() Kind      { return KindWaterIn }
func (CalledOff) kind() Kind    { return KindCalledOff }
func (RunGone) kind() Kind      { return KindRunGone }
func (TookOver) kind() Kind     { return KindTookOver }
func (HandOffered) kind() Kind  { return KindHandOffered }
func (HandAccepted) kind() Kind { return KindHandAccepted }
func (PingAnswered) kind() Kind { return KindPingAnswered }
