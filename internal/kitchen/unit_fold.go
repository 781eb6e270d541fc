package kitchen

import (
	"cmp"
	"slices"
	"time"
)

// unitFolding are units while what was told of them is taken one after the other.
type unitFolding struct {
	Units
	rec unitTold // the one being taken
}

// with is the fold of these records over how the units begin.
func (u Units) with(records []Record) Units {
	u.told, u.Heard = nil, time.Time{}
	for _, r := range records {
		_, begins := r.Entry.(Arrived)
		if _, ok := r.Entry.(UnitEntry); ok && !begins {
			u.told = append(u.told, unitTold{Record: r, seq: len(u.told)})
		} else if _, struck := r.Entry.(Struck); struck || begins {
			u.Heard = latest(u.Heard, r.Written)
		}
	}
	return u.fold()
}

// With are the units with a record more, whether or not it can be so.
func (u Units) With(rec Record) Units {
	u.told = append(slices.Clone(u.told), unitTold{Record: rec, seq: len(u.told)})
	return u.fold()
}

func (u Units) fold() Units {
	f := unitFolding{Units: u}
	f.Strays, f.All = nil, unitsOf(u.Run, u.Order)
	for i, x := range f.All {
		f.All[i] = u.start
		f.All[i].Ref, f.All[i].Container, f.All[i].Grain = x.Ref, x.Container, x.Grain
		if u.first.Kind != 0 {
			f.All[i].Steps = []UnitStep{u.first}
		}
	}
	all := slices.Concat(u.turns, u.told)
	slices.SortStableFunc(all, unitsInOrder)
	for _, t := range all {
		f.rec = t
		if t.kind != 0 {
			f.turn()
			continue
		}
		f.Heard = latest(f.Heard, t.Written)
		f.take(t.Entry.(UnitEntry))
	}
	return f.Units
}

// unitsInOrder puts what was told in the order in which it happened; of two at once
// the one that comes first in the trade.
func unitsInOrder(a, b unitTold) int {
	rank := func(t unitTold) int {
		switch {
		case t.kind == SaidCooked:
			return 0
		case t.kind != 0:
			return int(t.kind)
		}
		return int(t.Entry.(UnitEntry).told())
	}
	place := func(t unitTold) int { return int(telling{Record: t.Record}.place()) }
	return cmp.Or(a.At.Compare(b.At), cmp.Compare(rank(a), rank(b)), cmp.Compare(place(a), place(b)), cmp.Compare(a.seq, b.seq))
}

// turn takes a step of the run for all units that it can be so of.
func (f *unitFolding) turn() {
	for i := range f.All {
		u := &f.All[i]
		if to, ok := u.State.leads(f.rec.kind); ok {
			f.step(u, f.rec.kind, nil, to)
		}
	}
}

// take adds one record. What can't be so of a unit is laid aside for that unit.
func (f *unitFolding) take(e UnitEntry) {
	for _, n := range f.meant(e) {
		if why := f.takeOf(n, e); why != nil {
			f.Strays = append(f.Strays, UnitStray{Unit: n, Record: f.rec.Record, Why: why, seq: f.rec.seq})
		}
	}
}

// meant are the units an entry is about, each once.
func (u Units) meant(e UnitEntry) []UnitNo {
	said := e.of()
	if len(said) == 0 {
		return u.where(func(Unit) bool { return true })
	}
	var out []UnitNo
	for _, n := range said {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

func (f *unitFolding) takeOf(n UnitNo, e UnitEntry) Refusal {
	if n < 1 || int(n) > len(f.All) {
		return NoSuchUnit{Ref: UnitRef{Run: f.Run, Unit: n}.Ref(), Has: len(f.All)}
	}
	u := &f.All[n-1]
	if why := f.refuse(u, e); why != nil {
		return why
	}
	f.fill(u, e.told())
	to, _ := u.next(e.told())
	f.learn(u, e)
	if e.told() == SaidPartUsed && u.Left == 0 {
		to = UnitUsed
	}
	f.step(u, e.told(), e, to)
	return nil
}

// refuse says why an entry can't be so of a unit, nil if it can.
func (f *unitFolding) refuse(u *Unit, e UnitEntry) Refusal {
	k := e.told()
	_, may := u.next(k)
	switch {
	case u.Blank && k.fills():
		return UnitNotYet{Unit: u.Ref, Said: k, State: u.State, Blank: true}
	case u.Blank && k == SaidBlank:
		return f.already(u, k)
	case may:
		if i, ok := e.(Inoculated); ok && f.comesFrom(i.From, u.Ref) {
			return OwnAncestor{Unit: u.Ref}
		}
		return nil
	case k.is(u.State):
		return f.already(u, k)
	case u.State == InCook:
		return UnitNotYet{Unit: u.Ref, Said: k, State: u.State}
	}
	return UnitPast{Unit: u.Ref, Said: k, State: u.State, Since: u.Since, By: u.By}
}

func (f *unitFolding) already(u *Unit, k UnitKind) Refusal {
	if s, ok := u.LastStep(k); ok {
		return UnitAlready{Unit: u.Ref, Said: k, By: s.By, At: s.At, Seen: s.Seen}
	}
	return UnitAlready{Unit: u.Ref, Said: k, By: u.By, At: u.Since, Seen: u.By != 0}
}

// comesFrom reports whether a unit of this load is, or was inoculated from, another.
func (f *unitFolding) comesFrom(from, ancestor UnitRef) bool {
	for range len(f.All) + 1 {
		if from == ancestor {
			return true
		}
		parent, ok := f.Unit(from.Unit)
		if from.Run != f.Run || !ok {
			return false
		}
		from = parent.From
	}
	return true
}

// next is where a kind leads the unit; false when it may not follow.
func (u *Unit) next(k UnitKind) (UnitState, bool) {
	if k == SaidInoculated && u.Cultured && u.Culture == "" && u.From == (UnitRef{}) && u.State.Lives() {
		return u.State, true // which culture it is, told at last
	}
	if k == SaidBlank && u.Cultured {
		return u.State, false
	}
	to, ok := u.State.leads(k)
	if !ok && u.State == UnitCooked && k.fills() {
		to, ok = UnitInoculated.leads(k)
	}
	if ok && to == asBefore {
		to = u.Before
	}
	return to, ok
}

// fill takes the inoculation that nobody reported and that what was told presumes.
func (f *unitFolding) fill(u *Unit, k UnitKind) {
	if u.Cultured || !k.fills() {
		return
	}
	u.Cultured = true
	to := u.State
	switch {
	case u.State == UnitCooked:
		to = UnitInoculated
	case u.State == UnitSuspect:
		u.Before = UnitInoculated
	}
	seen := f.rec
	f.rec.By, f.rec.No, f.rec.unseen = 0, 0, true
	f.step(u, SaidInoculated, nil, to)
	f.rec = seen
}

// step writes down what happened, and enters the state that it leads to.
func (f *unitFolding) step(u *Unit, k UnitKind, e UnitEntry, to UnitState) {
	u.Steps = append(u.Steps, UnitStep{
		Kind: k, At: f.rec.At, By: f.rec.By, No: f.rec.No, Seen: !f.rec.unseen, From: u.State, To: to, Entry: e,
	})
	if to == u.State {
		return
	}
	switch {
	case to == UnitSuspect:
		u.Before = u.State
	case u.State == UnitSuspect:
		u.Before = 0
	}
	if to.Lives() {
		u.Loss = Loss{}
	}
	u.State, u.Since, u.By = to, f.rec.At, f.rec.By
}

// learn takes the figures and names of an entry.
func (f *unitFolding) learn(u *Unit, e UnitEntry) {
	switch e := e.(type) {
	case Arrived:
		panic("arrived twice")
	case Inoculated:
		f.inoculated(u, e)
	case BlankSet:
		u.Blank = true
	case GrowthSeen:
		f.grew(u, e)
	case Shaken:
		f.shook(u)
	case UnitsGiven, UnitsDiscarded, UnitsGone:
	case SignSeen:
		f.sign(u, e.Sign)
	case GrownThrough:
		u.Share = 1
	case UnitsUsed:
		u.used(e)
	case UnitsMoved:
		u.Rested += f.restedUntil(*u)
		u.Place = e.Place
	case UnitNamed:
		u.Name = e.Name
	case UnitsTagged:
		u.tag(e.Tags)
	case UnitsStood:
		u.Spot = e.Where
	case LotSaid:
		u.Lots = append(slices.DeleteFunc(slices.Clone(u.Lots), func(l UnitLot) bool { return l.What == e.What }), UnitLot{What: e.What, Name: e.Name})
	}
}

func (f *unitFolding) inoculated(u *Unit, e Inoculated) {
	if !u.State.Lives() || !u.Cultured { // else it only says which culture it is
		u.Inoculated, u.InoculatedBy, u.Share = f.rec.At, f.rec.By, 0
		u.Seen, u.Shook, u.Rested = time.Time{}, time.Time{}, 0
	}
	u.Blank, u.Cultured = false, true
	u.Culture, u.Species, u.From, u.Route, u.Volume = e.Culture, e.Species, e.From, e.Route, e.Volume
	if e.From != (UnitRef{}) {
		u.Route = firstSet(e.Route, GrainToGrain)
	}
}

func (f *unitFolding) grew(u *Unit, e GrowthSeen) {
	u.Share, u.Seen = e.Share, f.rec.At
	if u.State == UnitSuspect {
		u.Before = UnitGrowing
	}
}

func (f *unitFolding) shook(u *Unit) {
	if u.Shook.IsZero() && f.rec.At.Sub(u.Inoculated) > mixedWithin {
		u.Shook = f.rec.At
	}
}

// restedUntil is how long a unit that is now moved has stood in the cold since it was
// inoculated. What arrived and was said to stand there has stood there all the time.
func (f *unitFolding) restedUntil(u Unit) time.Duration {
	if !Chilled(u.Place) || u.Inoculated.IsZero() {
		return 0
	}
	moved, _ := u.LastStep(SaidMoved)
	since := latest(moved.At, u.Inoculated)
	if f.Arrived && moved.At.Sub(f.Told).Abs() < time.Minute {
		since = u.Inoculated
	}
	return max(0, f.rec.At.Sub(since))
}

// sign notes what a unit is lost as. The first contamination stands, for a second
// mould grows on the first.
func (f *unitFolding) sign(u *Unit, s Sign) {
	lost, is := map[UnitKind]UnitState{SaidContaminated: UnitContaminated, SaidDead: UnitDead}[s.says()]
	if is && u.Loss.What != UnitContaminated {
		u.Loss = Loss{What: lost, Sign: s, At: f.rec.At, By: f.rec.By}
	}
}

// crumbs are what is left of a unit that shares used up to a rounding.
const crumbs = 0.005

func (u *Unit) used(e UnitsUsed) {
	if e.told() == SaidUsed || u.Left-e.Share <= crumbs {
		u.Left = 0
		return
	}
	u.Left -= e.Share
}

func (u *Unit) tag(tags []string) {
	u.Tags = slices.Clone(u.Tags)
	for _, t := range tags {
		if !u.Tagged(t) {
			u.Tags = append(u.Tags, t)
		}
	}
}
