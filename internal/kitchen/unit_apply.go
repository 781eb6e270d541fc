package kitchen

import (
	"reflect"
	"slices"
	"time"
)

// Taking is what came of telling something of several units: what was taken, what
// was not, and what is worth saying of what was.
type Taking struct {
	// Record is what is to be written: about those that were taken alone.
	Record Record
	Taken  []UnitNo
	Not    []UnitStray
	// Early are those used or given away that nobody has called grown through.
	Early []UnitNo
	// Filled are those whose inoculation nobody had reported.
	Filled []UnitNo
	// Warm is set when a culture was put on before the load counted as cool.
	Warm bool
}

// Apply are the units once a record more is in the book. Units stand apart: what can
// be so of some is taken of those, and the [Taking] says of which not, and why. When
// nothing was taken the units are as they were, and the error is a [Refusal].
func (u Units) Apply(rec Record) (Units, Taking, error) {
	e, ok := rec.Entry.(UnitEntry)
	if !ok {
		panic("entry of something else than units")
	}
	if err := u.check(rec, e); err != nil {
		return u, Taking{}, err
	}
	next := u.With(rec)
	t := u.sort(rec, next)
	// What is refused of one unit can change what another may come from.
	for left := t; len(left.Not) > 0 && len(left.Taken) > 0; {
		rec.Entry = ofUnits(e, left.Taken)
		next = u.With(rec)
		left = u.sort(rec, next)
		t.Taken, t.Not = left.Taken, append(t.Not, left.Not...)
	}
	if len(t.Taken) == 0 {
		if len(t.Not) == 0 {
			return u, t, NoSuchUnit{Ref: Ref{Run: u.Run}, Has: len(u.All)}
		}
		return u, t, t.Not[0].Why
	}
	t.Record = rec
	u.remark(&t, next)
	return next, t, nil
}

// sort tells the units that a record can be so of from those of which it can't, or of
// which it would make untrue what was said of a later time. What it makes untrue of
// a unit that it is not about stands in the way of all.
func (u Units) sort(rec Record, next Units) Taking {
	var t Taking
	meant := u.meant(rec.Entry.(UnitEntry))
	why := make(map[UnitNo]Refusal, len(meant))
	for _, s := range next.Strays {
		_, twice := s.Why.(UnitAlready)
		twice = twice && !otherCulture(rec.Entry, s.Record.Entry)
		switch {
		case s.seq == len(u.told):
			why[s.Unit] = s.Why
		case twice || u.strayed(s):
		case slices.Contains(meant, s.Unit):
			why[s.Unit] = u.contradicts(s.Unit, rec, s)
		default:
			for _, n := range meant {
				why[n] = u.contradicts(n, rec, s)
			}
		}
	}
	for _, n := range meant {
		if why[n] != nil {
			t.Not = append(t.Not, UnitStray{Unit: n, Record: rec, Why: why[n]})
		} else {
			t.Taken = append(t.Taken, n)
		}
	}
	return t
}

// otherCulture reports whether two entries put different things on a unit.
func otherCulture(a, b Entry) bool {
	x, is := a.(Inoculated)
	y, too := b.(Inoculated)
	return is && too && (!sameName(x.Culture, y.Culture) || x.From != y.From)
}

func (u Units) contradicts(n UnitNo, rec Record, s UnitStray) Refusal {
	return UnitContradicts{
		Unit: UnitRef{Run: u.Run, Unit: n}, Said: rec.Entry.(UnitEntry).told(), At: rec.At,
		Other: s.Record.Entry.(UnitEntry).told(), OtherAt: s.Record.At, OtherBy: s.Record.By,
	}
}

func (u Units) strayed(s UnitStray) bool {
	return slices.ContainsFunc(u.Strays, func(o UnitStray) bool { return o.seq == s.seq && o.Unit == s.Unit })
}

// remark notes what is worth saying of what was taken.
func (u Units) remark(t *Taking, next Units) {
	e := t.Record.Entry.(UnitEntry)
	_, inoculates := e.(Inoculated)
	t.Warm = inoculates && (u.Cool.IsZero() || t.Record.At.Before(u.Cool))
	for _, n := range t.Taken {
		steps := next.All[n-1].Steps
		i := slices.IndexFunc(steps, func(s UnitStep) bool {
			return s.Seen && s.Kind == e.told() && s.At.Equal(t.Record.At) && s.No == t.Record.No
		})
		if i < 0 {
			continue
		}
		was := steps[i].From
		if (leaves(e.told()) || e.told() == SaidPartUsed) && was != UnitGrown && was != UnitGiven && was != UnitGone {
			t.Early = append(t.Early, n)
		}
		if i > 0 && steps[i-1].Kind == SaidInoculated && !steps[i-1].Seen && steps[i-1].At.Equal(t.Record.At) {
			t.Filled = append(t.Filled, n)
		}
	}
}

func leaves(k UnitKind) bool { return k == SaidUsed || k == SaidGiven }

// check refuses what is wrong whatever else was said: times and figures.
func (u Units) check(rec Record, e UnitEntry) error {
	if rec.At.After(rec.Written.Add(clockSkew)) {
		return InFuture{At: rec.At, Told: rec.Written}
	}
	if rec.At.Before(u.Begun) {
		return BeforeRun{Run: u.Run, At: rec.At, Begun: u.Begun}
	}
	switch e := e.(type) {
	case Arrived:
		return UnitAlready{Unit: UnitRef{Run: u.Run, Unit: 1}, Said: SaidArrived, By: u.start.By, At: u.Begun, Seen: true}
	case Inoculated:
		return checkRange(CultureVolume, float64(e.Volume), 0, 1)
	case GrowthSeen:
		return checkRange(GrownShare, float64(e.Share), 0, 1)
	case UnitsUsed:
		return checkRange(GrownShare, float64(e.Share), 0, 1)
	case BlankSet, Shaken, SignSeen, GrownThrough, UnitsGiven, UnitsDiscarded, UnitsGone, UnitsMoved, UnitNamed, UnitsTagged, UnitsStood, LotSaid:
		return nil
	}
	panic("entry of units without a check")
}

// After is when something is taken to have happened that is told as it does: a moment
// later where it would otherwise come before what was told of that very instant.
func (u Units) After(at time.Time) time.Time {
	for _, t := range u.told {
		if !t.At.Before(at) && t.At.Sub(at) < Breath {
			at = t.At.Add(time.Millisecond)
		}
	}
	return at
}

// toldTwice is how soon the same of the same units is taken for said a second time.
const toldTwice = 10 * time.Minute

// Again refuses what its teller has just told of all these units, and nothing since:
// how they look, how far they have grown, that they were shaken. Nil for anything else.
func (u Units) Again(rec Record) Refusal {
	e := rec.Entry.(UnitEntry)
	if k := e.told(); k != SaidShaken && k != SaidGrowth && k != SaidSuspect && k != SaidContaminated {
		return nil
	}
	var why Refusal
	for _, n := range u.meant(e) {
		x, ok := u.Unit(n)
		if !ok || len(x.Steps) == 0 {
			return nil
		}
		last := x.Steps[len(x.Steps)-1]
		if last.Entry == nil || last.By != rec.By || rec.At.Sub(last.At).Abs() > toldTwice || !reflect.DeepEqual(ofUnits(last.Entry, []UnitNo{n}), ofUnits(e, []UnitNo{n})) {
			return nil
		}
		if why == nil {
			why = UnitAlready{Unit: x.Ref, Said: e.told(), By: last.By, At: last.At, Seen: true}
		}
	}
	return why
}
