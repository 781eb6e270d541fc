package kitchen

import (
	"slices"
	"strconv"
	"time"

	"ryebell/internal/calc/unit"
)

// suspectAgain is after how long a suspect unit is looked at again.
const suspectAgain = 48 * time.Hour

// UnitsDue is a ping of a load with the units that it is about.
type UnitsDue struct {
	Ping
	Units []UnitNo
	// Growth is what is expected of the first of them, where they grow; where they are
	// grown through, only its Species, Known and Named.
	Growth Growth
	// Keeps is until when they keep as they stand, for those that are grown through.
	Keeps time.Time
}

// DueAs is the ping of a key; false when nothing wants it any more.
func DueAs(key string, of []UnitsDue) (UnitsDue, bool) {
	i := slices.IndexFunc(of, func(d UnitsDue) bool { return d.Key == key })
	if i < 0 {
		return UnitsDue{}, false
	}
	return of[i], true
}

// Wants are the pings that the units want: a look at those that are suspect, to who
// said so; the end of their rest and the ages that cooked grain reaches; when those
// that grow are to be shaken, looked at and expected grown through; and when those
// that are have kept as long as they do. All but the first come once a day, to the
// room. Past is what grew through before. Units that are used, given away, lost or
// left blank want nothing.
func (u Units) Wants(s Settings, past []Grown) []UnitsDue {
	all := slices.Concat(u.looks(), u.rest(s), u.shelf(), u.grow(s, past), u.keep())
	for i := range all {
		if u.Arrived {
			all[i].Due = afresh(all[i].Due, u.Told)
		}
	}
	return all
}

// lookTogether is within what time units that look suspect are looked at again
// together.
const lookTogether = time.Hour

func (u Units) looks() []UnitsDue {
	var doubts []UnitStep
	suspect := u.In(UnitSuspect)
	slices.SortStableFunc(suspect, func(a, b UnitNo) int { return u.doubt(a).At.Compare(u.doubt(b).At) })
	var out []UnitsDue
	for _, n := range suspect {
		d := u.doubt(n)
		i := slices.IndexFunc(doubts, func(first UnitStep) bool { return first.By == d.By && d.At.Sub(first.At) <= lookTogether })
		if i < 0 {
			doubts, out = append(doubts, d), append(out, u.look(d.By, d.At, n))
			continue
		}
		out[i].Units = append(out[i].Units, n)
	}
	return out
}

// doubt is when a unit was last said to look suspect.
func (u Units) doubt(n UnitNo) UnitStep {
	s, _ := u.All[n-1].LastStep(SaidSuspect)
	return s
}

// look is keyed by the first unit of those that are looked at together and by when it
// was said, so that another doubt asks anew.
func (u Units) look(by MemberNo, at time.Time, of UnitNo) UnitsDue {
	key := u.Run.Prefix() + "look/" + strconv.Itoa(int(of)) + "/" + strconv.FormatInt(at.Unix(), 10)
	return UnitsDue{
		Ping:  Ping{Key: key, Due: at.Add(suspectAgain), Kind: LookAgain, Loudness: DuePing, To: by, Room: u.Room, About: u.Run.Subject()},
		Units: []UnitNo{of},
	}
}

// shelf notes the age of the cooked grain that stands, under the keys of
// [Run.Wants], whose place these take.
func (u Units) shelf() []UnitsDue {
	var out []UnitsDue
	for i, l := range shelfLimits {
		units := u.where(func(x Unit) bool { return x.waits() && (!l.bagsAlone || x.Container.Vessel == Bag) })
		if len(units) == 0 || u.Cool.IsZero() {
			continue
		}
		due := u.Cool.AddDate(0, l.months, l.days)
		out = append(out, u.daily("shelf", i+1, l.kind, due, units))
	}
	return out
}

// rest says when the cooked grain has rested as long as they want it to.
func (u Units) rest(s Settings) []UnitsDue {
	units := u.where(Unit.waits)
	if s.RestDays == 0 || len(units) == 0 || u.Cool.IsZero() || u.Arrived {
		return nil
	}
	return []UnitsDue{u.daily("rest", 1, RestOver, u.Cool.AddDate(0, 0, s.RestDays), units)}
}

// RestsUntil is when it is told that the cooked grain of a run has rested as long as
// the kitchen of today wants it to; false for one that isn't cool, and where no rest is
// wanted or it is over. Now is in the kitchen's zone.
func (r Run) RestsUntil(now time.Time) (time.Time, bool) {
	today := r.kitchen
	if r.today != nil {
		today = *r.today
	}
	zero, down := r.cooked()
	if r.Stage != StageCool || !down || today.RestDays == 0 {
		return time.Time{}, false
	}
	told := shelfTime.On(r.countsCool(zero).AddDate(0, 0, today.RestDays).In(now.Location()))
	return told, told.After(now)
}

// MovesUnits reports whether pings of units may be due at another time than with other
// settings, or the units count as cool from another: see [Unit.Heeds].
func (s Settings) MovesUnits(others Settings) bool {
	return s.RestDays != others.RestDays || !sameRoom(s.Room, others.Room) || s.CoolLimit() != others.CoolLimit() ||
		s.Zone != others.Zone || !slices.Equal(s.Quiet, others.Quiet)
}

func sameRoom(a, b *unit.Celsius) bool { return a == b || a != nil && b != nil && *a == *b }

// Heeds reports whether what the unit asks for depends on settings: how long cooked grain
// rests, how warm the room is.
func (u Unit) Heeds() bool {
	return u.waits() || u.State == UnitInoculated || u.State == UnitGrowing
}

// daily is a ping of those that come once a day. Its key names the matter and a number
// that stays whatever becomes of single units.
func (u Units) daily(matter string, n int, k PingKind, due time.Time, units []UnitNo) UnitsDue {
	return UnitsDue{
		Ping:  Ping{Key: u.Run.Prefix() + matter + "/" + strconv.Itoa(n), Due: due, Kind: k, Loudness: NotePing, About: u.Run.Subject()},
		Units: units,
	}
}

// waits reports whether the unit is cooked grain that waits for a culture. A blank
// waits for none.
func (u Unit) waits() bool { return u.State == UnitCooked && !u.Blank }

// fewLeft is the share of a load that is few, so that nobody is asked to see to it any
// more (common practice, no source).
const fewLeft = 0.5

// Settled reports whether nothing of the load waits for it to be cool any more: each
// unit has its culture, is left blank, or is away; or somebody has begun to see to them,
// and less than half is left.
func (u Units) Settled() bool {
	waiting, begun := 0, false
	for _, x := range u.All {
		if x.State == InCook {
			return false
		}
		begun = begun || x.Cultured || x.Blank
		if x.waits() {
			waiting++
		}
	}
	return len(u.All) > 0 && (waiting == 0 || begun && float64(waiting) < fewLeft*float64(len(u.All)))
}

// Hushes reports whether a ping of their run has nothing to ask any more: once they
// are settled nobody measures whether they are cool.
func (u Units) Hushes(p Ping) bool {
	return u.Settled() && (p.Kind == ProbablyCool || p.Kind == MeasureAgain || p.Kind == CoolNow)
}
