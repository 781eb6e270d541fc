package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/load"
)

// Choice is something that may be said next of a run.
type Choice struct {
	Kind Kind
	// Prep is the step of the preparation that begins or ends; zero for all else.
	Prep Prep
}

// Next lists what may be said next, the likeliest first: the buttons.
func (r Run) Next() []Choice {
	var out []Choice
	for _, m := range follows[r.Stage] {
		c, ok := Choice{Kind: m.kind}, !r.had(m.kind)
		if m.kind == KindPrepBegun {
			c.Prep, ok = r.nextPrep()
		}
		if m.kind == KindPrepEnded {
			var p Preparation
			p, _, ok = r.PrepDue()
			c.Prep = p.What
		}
		if ok {
			out = append(out, c)
		}
	}
	return out
}

// had reports whether a kind that happens once has happened.
func (r Run) had(k Kind) bool {
	_, done := r.LastStep(k)
	switch {
	case k == KindWaterIn && r.Stage == StageCooling:
		return !r.Relightable()
	case k == KindOutOfPot || k == KindWaterLeft || k == KindWaterIn:
		return done
	case k == KindHeatOn && r.Stage == StagePressureLost:
		return true // no next step: it is said when the flame had gone out
	case k == KindHeatOn && r.Stage == StageCooling:
		return !r.Relightable()
	case r.Stage == StageCalledOff:
		return done
	case k == KindDipped:
		return !r.Stage.Hot() && len(r.unfinished()) == 0
	}
	return false
}

// nextPrep is the step of the preparation that comes after the last; only grain
// that is soaked is prepared in steps, unless somebody began to.
func (r Run) nextPrep() (Prep, bool) {
	if n := len(r.Preps); n > 0 {
		p := r.Preps[n-1].What + 1
		return p, p <= Drying
	}
	for _, part := range containersOf(r.Order) {
		if r.kitchen.MethodFor(part.Container.Vessel) == Soaked {
			return Soaking, true
		}
	}
	return 0, false
}

// Question is something the bot asks of a run, once.
type Question uint8

// The questions: how deep the pressure fell, how much water is in the pot, who
// watches the run.
const (
	HowDeep Question = iota + 1
	HowMuchWater
	WhoCooks
)

// Ask is an open question and the entry that raised it. It is put when that entry
// is answered, and not again.
type Ask struct {
	What  Question
	Since EntryNo
}

// Asks lists the open questions.
func (r Run) Asks() []Ask {
	var asks []Ask
	for _, d := range r.unfinished() {
		if d.Seen {
			asks = append(asks, Ask{HowDeep, d.No})
		}
	}
	if n := len(r.Dips); n > 0 && r.Stage == StagePressureLost && r.Water.Assumed {
		asks = append(asks, Ask{HowMuchWater, r.Dips[n-1].No})
	}
	if r.Follows != 0 && r.Water.Assumed && r.Stage <= StageHeating {
		asks = append(asks, Ask{HowMuchWater, r.Steps[0].No})
	}
	if r.Cook == 0 && !r.Stage.Over() {
		asks = append(asks, Ask{WhoCooks, r.Steps[0].No})
	}
	return asks
}

// Until is when what goes on in this stage is over, as far as that is known: the
// hold by the clock, the rest by usual times. False for a stage that waits for
// people.
func (r Run) Until() (time.Time, bool) {
	switch r.Stage {
	case StagePlanned, StagePressureLost, StageCool, StageGone, StageCalledOff:
		return time.Time{}, false
	case StagePreparing:
		_, due, ok := r.PrepDue()
		return due, ok
	case StageHeating:
		return r.Since.Add(r.course().Heat), true
	case StageVenting:
		return r.Since.Add(ventFor), true
	case StageRising:
		return r.Since.Add(r.course().ToPressure), true
	case StageAtPressure:
		return r.HoldEnd()
	case StageFalling:
		return r.Since.Add(r.fallTime(r.pot)), true
	case StageCooling:
		c, ok := r.Cooling()
		return c.Likely, ok
	}
	panic("stage " + r.Stage.String())
}

func (r Run) course() load.Durations { return r.pot.course(r.boxes, r.Hold.Time) }

// FreesCooker is about when the cooker can be opened: never before now, and once it
// was, when that happened. False for a run that isn't on the stove yet.
func (r Run) FreesCooker(now time.Time) (time.Time, bool) {
	c := r.course()
	left := map[Stage]time.Duration{
		StageHeating: c.Vent + c.ToPressure + c.Hold + c.Fall, StageVenting: c.ToPressure + c.Hold + c.Fall,
		StageRising: c.Hold + c.Fall, StageAtPressure: c.Fall, StagePressureLost: c.ToPressure + c.Hold + c.Fall, StageFalling: 0,
	}
	after, on := left[r.Stage]
	if !on {
		zero, ok := r.LastStep(KindAtZero)
		return zero.At, ok
	}
	until, ok := r.Until()
	if !ok || until.Before(now) {
		until = now
	}
	return until.Add(after), true
}

// Row is a run on the board.
type Row struct {
	Run    RunNo
	Cook   MemberNo // zero for nobody named
	Cooker string
	Stage  Stage
	Since  time.Time
	// Until is when what goes on is over and Left how long that is; zero when that
	// is not known, Left less than nothing when it is overdue.
	Until  time.Time
	Left   time.Duration
	Newest *Reading
}

// Board lists the runs that are not over or long left to cool, or were called off and
// may still burn:
// what is hot first, then what is due first.
func Board(runs []Run, now time.Time) []Row {
	var rows []Row
	for _, r := range runs {
		if r.Stage.Over() && !r.MayBurn() || r.NeverSeenCool(now) {
			continue
		}
		row := Row{Run: r.No, Cook: r.Cook, Cooker: firstSet(r.pot.Name, r.Cooker), Stage: r.Stage, Since: r.Since}
		if until, ok := r.Until(); ok {
			row.Until, row.Left = until, until.Sub(now)
		}
		if last, ok := r.NewestReading(); ok {
			row.Newest = &last
		}
		rows = append(rows, row)
	}
	slices.SortStableFunc(rows, compareRows)
	return rows
}

func compareRows(a, b Row) int {
	if hot := b.rank() - a.rank(); hot != 0 {
		return hot
	}
	if a.Until.IsZero() != b.Until.IsZero() {
		if a.Until.IsZero() {
			return 1
		}
		return -1
	}
	if c := a.Until.Compare(b.Until); c != 0 {
		return c
	}
	return int(a.Run - b.Run)
}

// rank puts a hot cooker before all else.
func (r Row) rank() int {
	if r.Stage.Hot() || r.Stage == StageFalling || r.Stage == StageCalledOff {
		return 1
	}
	return 0
}
