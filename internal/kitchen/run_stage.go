package kitchen

import (
	"fmt"
	"slices"
	"strings"
)

// Stage is how far a run has come.
type Stage uint8

// The stages. Rising is between closing the vent and pressure; Gone is after the
// shelf.
const (
	StagePlanned Stage = iota + 1
	StagePreparing
	StageHeating
	StageVenting
	StageRising
	StageAtPressure
	StagePressureLost
	StageFalling
	StageCooling
	StageCool
	StageGone
	StageCalledOff
)

// Stages lists them all.
func Stages() []Stage {
	return []Stage{
		StagePlanned, StagePreparing, StageHeating, StageVenting, StageRising, StageAtPressure,
		StagePressureLost, StageFalling, StageCooling, StageCool, StageGone, StageCalledOff,
	}
}

// String returns the word for logs and the state diagram.
func (s Stage) String() string {
	switch s {
	case StagePlanned:
		return "planned"
	case StagePreparing:
		return "preparing"
	case StageHeating:
		return "heating"
	case StageVenting:
		return "venting"
	case StageRising:
		return "rising"
	case StageAtPressure:
		return "at pressure"
	case StagePressureLost:
		return "pressure lost"
	case StageFalling:
		return "falling"
	case StageCooling:
		return "cooling"
	case StageCool:
		return "cool"
	case StageGone:
		return "gone"
	case StageCalledOff:
		return "called off"
	}
	return "stage not said"
}

// Hot reports whether the flame is on as far as anybody said.
func (s Stage) Hot() bool { return s >= StageHeating && s <= StagePressureLost }

// Over reports whether nothing more is waited for.
func (s Stage) Over() bool { return s == StageCool || s == StageGone || s == StageCalledOff }

// Kind is what an entry about a run says, without its figures.
type Kind uint8

// The kinds, one for each case of [RunEntry].
const (
	KindRunBegun Kind = iota + 1
	KindPrepBegun
	KindPrepEnded
	KindHeatOn
	KindSteam
	KindVentClosed
	KindAtPressure
	KindPressureLost
	KindPressureBack
	KindDipped
	KindGaugeRead
	KindHeatOff
	KindAtZero
	KindOutOfPot
	KindTempRead
	KindWaterIn
	KindWaterLeft
	KindRunGone
	KindCalledOff
	KindTookOver
	KindHandOffered
	KindHandAccepted
	KindPingAnswered
)

// String returns the words for logs and the state diagram.
func (k Kind) String() string {
	if int(k) < len(kindWords) && k > 0 {
		return kindWords[k]
	}
	return "kind not said"
}

var kindWords = [...]string{
	KindRunBegun: "begun", KindPrepBegun: "preparation begun", KindPrepEnded: "preparation ended",
	KindHeatOn: "heat on", KindSteam: "steam", KindVentClosed: "vent closed", KindAtPressure: "at pressure",
	KindPressureLost: "lost pressure", KindPressureBack: "back at pressure", KindDipped: "dipped",
	KindGaugeRead: "gauge read", KindHeatOff: "heat off", KindAtZero: "zero", KindOutOfPot: "out of the pot",
	KindTempRead: "temperature read", KindWaterIn: "water put in", KindWaterLeft: "water left",
	KindRunGone: "gone", KindCalledOff: "called off", KindTookOver: "took over", KindHandOffered: "hand-over offered",
	KindHandAccepted: "hand-over accepted", KindPingAnswered: "ping answered",
}

// move is a kind of entry that may follow in a stage, and the stage it leads to.
type move struct {
	kind Kind
	to   Stage
}

// follows says what may follow what, the likeliest first. Refusals, buttons and
// the state diagram are all made from it. Beside these moves a step further down
// the path may be said in any stage: those between are filled in as not seen.
var follows = map[Stage][]move{
	StagePlanned: {
		{KindHeatOn, StageHeating},
		{KindPrepBegun, StagePreparing},
		{KindPrepEnded, StagePreparing},
		{KindWaterIn, StagePlanned},
		{KindCalledOff, StageCalledOff},
	},
	StagePreparing: {
		{KindPrepEnded, StagePreparing},
		{KindPrepBegun, StagePreparing},
		{KindHeatOn, StageHeating},
		{KindWaterIn, StagePreparing},
		{KindCalledOff, StageCalledOff},
	},
	StageHeating: {
		{KindSteam, StageVenting}, {KindWaterIn, StageHeating}, {KindGaugeRead, StageHeating}, {KindCalledOff, StageCalledOff},
	},
	StageVenting: {
		{KindVentClosed, StageRising}, {KindGaugeRead, StageVenting}, {KindWaterIn, StageVenting}, {KindCalledOff, StageCalledOff},
	},
	StageRising: {
		{KindAtPressure, StageAtPressure},
		{KindGaugeRead, StageRising},
		{KindSteam, StageVenting},
		{KindPressureBack, StageAtPressure},
		{KindCalledOff, StageCalledOff},
	},
	StageAtPressure: {
		{KindHeatOff, StageFalling},
		{KindPressureLost, StagePressureLost},
		{KindDipped, StageAtPressure},
		{KindGaugeRead, StageAtPressure},
		{KindCalledOff, StageCalledOff},
		{KindPressureBack, StageAtPressure}, // lost before, and nobody said so
	},
	StagePressureLost: {
		{KindPressureBack, StageAtPressure},
		{KindHeatOff, StageFalling},
		{KindSteam, StageVenting},
		{KindAtPressure, StageAtPressure},
		{KindDipped, StagePressureLost},
		{KindGaugeRead, StagePressureLost},
		{KindWaterIn, StagePressureLost},
		{KindHeatOn, StagePressureLost}, // the flame had gone out
		{KindCalledOff, StageCalledOff},
	},
	StageFalling: {
		{KindAtZero, StageCooling},
		{KindGaugeRead, StageFalling},
		{KindDipped, StageFalling},
		{KindHeatOn, StageHeating},
		{KindCalledOff, StageCalledOff},
	},
	StageCooling: {
		{KindOutOfPot, StageCooling},
		{KindTempRead, StageCooling},
		{KindWaterLeft, StageCooling},
		{KindDipped, StageCooling},
		{KindRunGone, StageGone},
		{KindCalledOff, StageCalledOff},
		{KindHeatOn, StageHeating},  // down before the hold was over: see Run.Relightable
		{KindWaterIn, StageCooling}, // topped up for that
	},
	StageCool: {
		{KindTempRead, StageCool},
		{KindOutOfPot, StageCool},
		{KindWaterLeft, StageCool},
		{KindDipped, StageCool},
		{KindRunGone, StageGone},
	},
	StageGone: nil,
	// What was hot when it was called off must still come down.
	StageCalledOff: {
		{KindHeatOff, StageCalledOff},
		{KindAtZero, StageCalledOff},
		{KindOutOfPot, StageCalledOff},
		{KindWaterLeft, StageCalledOff},
	},
}

// anytime lists what changes no stage and may be said in each.
var anytime = []Kind{KindTookOver, KindHandOffered, KindHandAccepted, KindPingAnswered}

// path is the way of a run that nothing interrupts.
var path = []move{
	{KindHeatOn, StageHeating},
	{KindSteam, StageVenting},
	{KindVentClosed, StageRising},
	{KindAtPressure, StageAtPressure},
	{KindHeatOff, StageFalling},
	{KindAtZero, StageCooling},
}

// onPath is the place of a kind on the path; -1 for one beside it.
func onPath(k Kind) int { return slices.IndexFunc(path, func(m move) bool { return m.kind == k }) }

// passed is how many steps of the path lie behind a stage.
func (s Stage) passed() int {
	switch s {
	case StagePlanned, StagePreparing:
		return 0
	case StageHeating:
		return 1
	case StageVenting:
		return 2
	case StageRising:
		return 3
	case StageAtPressure, StagePressureLost:
		return 4
	case StageFalling:
		return 5
	case StageCooling, StageCool, StageGone, StageCalledOff:
		return len(path)
	}
	panic("stage " + s.String())
}

// presumes is how many steps of the path lie behind a kind of entry, and from
// which stage on those not reported are filled in; false for one that never
// stands for another.
func (k Kind) presumes() (int, Stage, bool) {
	if i := onPath(k); i >= 0 {
		return i, StagePlanned, true
	}
	switch k {
	case KindPressureBack:
		return onPath(KindAtPressure), StagePlanned, true
	case KindPressureLost, KindDipped:
		return onPath(KindHeatOff), StagePlanned, true
	case KindOutOfPot:
		return len(path), StagePlanned, true
	case KindTempRead, KindWaterLeft, KindRunGone:
		// Before the heat is off a thermometer in a bag is a slip of the tongue.
		return len(path), StageFalling, true
	case KindRunBegun, KindPrepBegun, KindPrepEnded, KindHeatOn, KindSteam, KindVentClosed, KindAtPressure, KindGaugeRead,
		KindHeatOff, KindAtZero, KindWaterIn, KindCalledOff, KindTookOver, KindHandOffered, KindHandAccepted, KindPingAnswered:
		return 0, 0, false
	}
	panic("kind " + k.String())
}

// Diagram is the state diagram of a run in Mermaid's language, from the table
// that the code itself uses. Moves that stay in their stage are left out.
func Diagram() string {
	var b strings.Builder
	b.WriteString("stateDiagram-v2\n")
	for _, s := range Stages() {
		fmt.Fprintf(&b, "    state %q as %s\n", s.String(), s.id())
	}
	fmt.Fprintf(&b, "    [*] --> %s\n", StagePlanned.id())
	for _, s := range Stages() {
		for _, m := range follows[s] {
			if m.to != s {
				fmt.Fprintf(&b, "    %s --> %s: %s\n", s.id(), m.to.id(), m.kind)
			}
		}
	}
	fmt.Fprintf(&b, "    %s --> %s: limit reached\n", StageCooling.id(), StageCool.id())
	fmt.Fprintf(&b, "    %s --> %s: warmer again\n", StageCool.id(), StageCooling.id())
	fmt.Fprintf(&b, "    %s --> [*]\n    %s --> [*]\n    %s --> [*]\n", StageCool.id(), StageGone.id(), StageCalledOff.id())
	return b.String()
}

func (s Stage) id() string { return strings.ReplaceAll(s.String(), " ", "_") }
