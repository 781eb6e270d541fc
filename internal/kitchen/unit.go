package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// Units are the jars and bags of a load as far as its entries tell: of a run, or of
// what arrived. They are a value: what changes them gives others.
type Units struct {
	Run   RunNo
	Order Order
	// Begun is when the run began; of what arrived, from when its age counts.
	Begun time.Time
	// Arrived is set for units that no run made, which nobody has seen cooked. From is
	// who they came from.
	Arrived bool
	From    string
	// Told is when it was told that they arrived; zero for those of a run.
	Told time.Time
	Room int64
	// Cool is from when the load counts as cool, which may lie ahead; zero for one that
	// isn't so far.
	Cool time.Time
	// All are the units in the order of their numbers: the first is 1.
	All []Unit
	// Strays are what can't be so beside the rest, unit by unit; it changes nothing.
	Strays []UnitStray
	// Heard is when the last of it was told or taken back.
	Heard time.Time

	first UnitStep   // what the load itself says of each at the beginning
	start Unit       // how each begins
	turns []unitTold // what the run says of all of them
	told  []unitTold
}

// Unit is one jar or bag.
type Unit struct {
	Ref       UnitRef
	Container Container
	// Grain is what is in it; zero for the collective's usual.
	Grain grain.Kind
	Name  string
	Place string
	Spot  Spot
	Tags  []string
	Lots  []UnitLot
	// State since Since by the word of By; zero for nobody's.
	State UnitState
	Since time.Time
	By    MemberNo
	// Before is what a suspect unit was until then; zero for any other.
	Before UnitState
	// Blank is set for one left without a culture.
	Blank bool
	// Cultured is set once a culture is on it. Inoculated is when, zero where nobody
	// said; Culture the name, From the unit that it was taken of, both empty when
	// unsaid; Species what grows. Volume is how much; zero for unsaid.
	Cultured     bool
	Inoculated   time.Time
	InoculatedBy MemberNo
	Culture      string
	Species      string
	From         UnitRef
	Route        Route
	Volume       unit.Litres
	// Share is how much is overgrown as last seen, at Seen; Left how much is not used yet.
	// Shook is when it was first shaken since it was inoculated, beside the mixing; both
	// times are zero for never. Rested is how long it has stood in the cold since then,
	// before it was taken out.
	Share  unit.Fraction
	Seen   time.Time
	Shook  time.Time
	Rested time.Duration
	Left   unit.Fraction
	// Loss is what it was lost as, whatever was done with it then.
	Loss  Loss
	Steps []UnitStep
}

// Loss is a unit that went bad; the zero Loss is none. One that was thrown out for
// another reason has none.
type Loss struct {
	What UnitState // UnitContaminated or UnitDead
	Sign Sign
	At   time.Time
	By   MemberNo
}

// UnitLot is a lot that went into a unit.
type UnitLot struct {
	What LotKind
	Name string
}

// UnitStep is a thing that happened to a unit. One that nobody reported is not Seen.
type UnitStep struct {
	Kind     UnitKind
	At       time.Time
	By       MemberNo
	No       EntryNo
	Seen     bool
	From, To UnitState
	// Entry is what was said; nil for what nobody said of units.
	Entry UnitEntry
}

// UnitStray is what can't be so of a unit, and why.
type UnitStray struct {
	Unit   UnitNo
	Record Record
	Why    Refusal

	seq int
}

// unitTold is a record, or a step of the run, on its way into the fold.
type unitTold struct {
	Record
	kind UnitKind // of a step of the run; else zero
	// unseen is set for what nobody reported.
	unseen bool
	seq    int
}

// LastStep is the newest step of a kind.
func (u Unit) LastStep(k UnitKind) (UnitStep, bool) {
	for _, s := range slices.Backward(u.Steps) {
		if s.Kind == k {
			return s, true
		}
	}
	return UnitStep{}, false
}

// Tagged reports whether a tag is on the unit.
func (u Unit) Tagged(tag string) bool {
	return slices.ContainsFunc(u.Tags, func(t string) bool { return sameName(t, tag) })
}

// heardOf is since when the book knows of the load: what arrived is older.
func (u Units) heardOf() time.Time {
	if u.Arrived {
		return u.Told
	}
	return u.Begun
}

// Unit is the unit of a number; false when there is none.
func (u Units) Unit(n UnitNo) (Unit, bool) {
	if n < 1 || int(n) > len(u.All) {
		return Unit{}, false
	}
	return u.All[n-1], true
}

// In lists the numbers of the units in a state.
func (u Units) In(s UnitState) []UnitNo {
	return u.where(func(x Unit) bool { return x.State == s })
}

// Standing lists the numbers of the units that are still there.
func (u Units) Standing() []UnitNo {
	return u.where(func(x Unit) bool { return x.State.Stands() })
}

func (u Units) where(is func(Unit) bool) []UnitNo {
	var out []UnitNo
	for _, x := range u.All {
		if is(x) {
			out = append(out, x.Ref.Unit)
		}
	}
	return out
}

// FoldUnits are the units of a run after what these records say of them. They may
// come in any order and twice; struck ones must not be among them, and those that
// are not about units are passed over. What can't be so becomes a [UnitStray].
func FoldUnits(run Run, records []Record) Units {
	u := Units{Run: run.No, Order: run.Order, Begun: run.Begun, Room: run.Room, start: Unit{State: InCook, Since: run.Begun, Left: 1}}
	cooked, done := run.cooked()
	if done {
		u.Cool = run.countsCool(cooked)
		u.turns = append(u.turns, turnOf(SaidCooked, cooked))
	}
	for _, k := range []Kind{KindRunGone, KindCalledOff} {
		if s, ok := run.LastStep(k); ok {
			u.turns = append(u.turns, turnOf(SaidGone, s))
		}
	}
	return u.with(records)
}

func turnOf(k UnitKind, s Step) unitTold {
	return unitTold{Record: Record{No: s.No, By: s.By, At: s.At}, kind: k, unseen: !s.Seen}
}

// cooked is the step at which the units of a run came to be cooked: zero. False while
// it is under pressure or lit anew, and for one called off before.
func (r Run) cooked() (Step, bool) {
	zero, down := r.LastStep(KindAtZero)
	switch r.Stage {
	case StageCooling, StageCool, StageGone:
		return zero, down
	case StageCalledOff:
		off, _ := r.LastStep(KindCalledOff)
		return zero, down && zero.At.Before(off.At)
	case StagePlanned, StagePreparing, StageHeating, StageVenting, StageRising, StageAtPressure, StagePressureLost, StageFalling:
		return Step{}, false
	}
	panic("stage " + r.Stage.String())
}

// countsCool is from when a load that is cooked counts as cool: see [Run.Shelved].
func (r Run) countsCool(cooked Step) time.Time {
	if since, ok := r.Shelved(); ok {
		return since
	}
	if !r.coolAt.IsZero() {
		return r.coolAt
	}
	return cooked.At.Add(unsaidCool)
}

// FoldArrived are the units that no run made, as these records tell of them: see
// [FoldUnits]. An error is [NoSuchRun]: none of them says that units arrived.
func FoldArrived(records []Record) (Units, error) {
	i := firstArrived(records)
	if i < 0 {
		return Units{}, NoSuchRun{}
	}
	e := records[i].Entry.(Arrived)
	u := Units{Run: e.Run, Order: e.Order, Arrived: true, From: e.From, Room: e.Room, Told: records[i].Written}
	u.Begun = records[i].At
	if !e.Since.IsZero() {
		u.Begun = e.Since
	}
	u.Cool = u.Begun
	u.start = Unit{State: e.state(), Since: u.Begun, By: records[i].By, Left: 1, Culture: e.Culture, Species: e.Species}
	if u.start.State != UnitCooked {
		u.start.Cultured, u.start.Inoculated = true, e.Since
	}
	u.first = UnitStep{Kind: SaidArrived, At: u.Begun, By: records[i].By, No: records[i].No, Seen: true, From: e.state(), To: e.state(), Entry: e}
	return u.with(records), nil
}

// firstArrived is the record that the units stand by: the one written first.
func firstArrived(records []Record) int {
	first := -1
	for i, r := range records {
		if _, ok := r.Entry.(Arrived); ok && (first < 0 || r.No < records[first].No) {
			first = i
		}
	}
	return first
}

// state is how far what arrived was.
func (e Arrived) state() UnitState {
	switch {
	case e.State == UnitGrowing || e.State == UnitGrown || e.State == UnitInoculated:
		return e.State
	case e.Culture != "":
		return UnitInoculated
	}
	return UnitCooked
}

// CheckArrived refuses what can't have arrived: nothing, too many, or a date ahead.
func CheckArrived(rec Record) error {
	e := rec.Entry.(Arrived)
	if e.Since.After(rec.Written.Add(clockSkew)) {
		return InFuture{At: e.Since, Told: rec.Written}
	}
	return checkRange(CountOfUnits, float64(len(unitsOf(e.Run, e.Order))), 1, MaxArrived)
}

// unitsOf are the units of an order by their numbers, in the order of its items.
func unitsOf(no RunNo, o Order) []Unit {
	var out []Unit
	for _, it := range o.Items {
		if it = it.sized(); it.Container.Vessel == 0 {
			continue
		}
		for range it.Count {
			ref := UnitRef{Run: no, Unit: UnitNo(len(out) + 1)}
			out = append(out, Unit{Ref: ref, Container: it.Container, Grain: it.Grain})
		}
	}
	return out
}
