package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// Reading is what a thermometer showed.
type Reading struct {
	// Units are those it was taken of; none means one of the run, unsaid which.
	Units []UnitNo
	Temp  unit.Celsius
	Where Place
	At    time.Time
	By    MemberNo
	No    EntryNo
	// Limit is what it was measured against: see [Settings.CoolLimit].
	Limit unit.Celsius
}

// Skin reports whether it was taken outside, or was not said to be inside.
func (r Reading) Skin() bool { return r.Where == Skin || r.Where == 0 }

// Two skin readings count when they are this far apart and the skin did not warm
// up in between from a core that is still hot (common practice).
const (
	skinApart = 30 * time.Minute
	skinRose  = unit.Kelvins(1)
)

// A cool skin is measured again when the middle is nearly surely cool too: after an
// hour at the soonest, and four at the latest.
const (
	measureAgainAfter = time.Hour
	measureAgainBy    = 4 * time.Hour
)

// sureCool is how sure the forecast has to be of the middle for a reading from
// outside to settle it: of simulated coolings, fewer than one in a hundred are then
// told cool too early.
const sureCool unit.Fraction = 0.995

// evenOut is how long the outside has to stay cool until the middle is, whatever the
// room: more than the time in which the difference between them falls to a third.
// No source; about 3 h are computed for a bag of 5 lb.
const (
	evenOutSmall = 6 * time.Hour
	evenOutLarge = 12 * time.Hour
	largeHeft    = 3 // kg
)

func (r Run) evenOut() time.Duration {
	if r.slowest().heft() > largeHeft {
		return evenOutLarge
	}
	return evenOutSmall
}

// skinRead is the first skin reading at the limit, which asks for a second.
type skinRead struct {
	at   time.Time
	temp unit.Celsius
}

// tempRead keeps a reading. One that can't be changes nothing. The load is cool by a
// reading at the limit in the middle; by one from outside once the forecast is sure
// of the middle, and of the skin never by the first; not while another unit was over
// the limit just now.
func (f *folding) tempRead(e TempRead) {
	f.step(KindTempRead, 0)
	r := Reading{Units: e.Units, Temp: e.Temp, Where: e.Where, At: f.rec.At, By: f.rec.By, No: f.rec.No, Limit: f.rec.s.CoolLimit()}
	f.Readings = append(f.Readings, r)
	warm := r.Temp > r.Limit
	if f.Stage != StageCool {
		f.enter(StageCooling)
	}
	if warm && f.Stage == StageCooling && f.first.at.IsZero() || !warm && f.Stage == StageCool || r.Skin() && !warm && f.coolFor(r) > 0 && f.coolFor(r) < skinApart {
		return // that changes nothing, and a forecast takes its time
	}
	c, known := f.foresee(f.unlearnt(f.rec.s), f.Readings)
	switch {
	case known && c.cannotBe(r.No):
	case warm:
		f.first = skinRead{}
		f.enter(StageCooling)
	case f.warmerBeside(r, c):
	case !f.ofSlowest(r) && !(known && c.Chance(r.At) >= sureCool): // a jar is cool long before the bag beside it
	case f.settles(r, c, known), f.coolFor(r) >= f.evenOut(), known && c.Chance(r.At) >= sureCool && (!r.Skin() || f.coolFor(r) >= skinApart):
		f.cool()
	case f.first.at.IsZero() || r.Temp.Minus(f.first.temp) > skinRose:
		f.first = skinRead{at: r.At, temp: r.Temp}
	}
}

// doubtsMiddle is how far under what a forecast believes that counts it a reading in the
// middle may lie, to be the last word (no source: more than a thermometer's error).
const doubtsMiddle = unit.Kelvins(3)

// settles reports whether a reading in the middle is the last word: not where a forecast
// that counts it still doubts it, until a second one says the same.
func (f *folding) settles(r Reading, c Cooling, known bool) bool {
	return r.Where == Middle && (!known || c.Middle(r.At).Lo.Minus(r.Temp) < doubtsMiddle || f.coolFor(r) >= skinApart)
}

// warmerBeside reports whether another reading of the same breath, or of another unit
// shortly before, was over the limit. One that can't be says nothing.
func (f *folding) warmerBeside(r Reading, c Cooling) bool {
	return slices.ContainsFunc(f.Readings, func(other Reading) bool {
		elsewhere := other.At.Equal(r.At) || len(r.Units) > 0 && len(other.Units) > 0 && !slices.Equal(r.Units, other.Units)
		return other.No != r.No && elsewhere && other.Temp > other.Limit && r.At.Sub(other.At) < skinApart && !c.cannotBe(other.No)
	})
}

// ofSlowest reports whether a reading is of a container as large as the slowest, or
// unsaid of which.
func (f *folding) ofSlowest(r Reading) bool {
	slowest := f.slowest()
	return len(r.Units) == 0 || slices.ContainsFunc(r.Units, func(u UnitNo) bool {
		of := f.containerOf(u)
		return of.Vessel == slowest.Vessel && near(of.heft(), slowest.heft())
	})
}

// coolFor is how long before a reading the outside was found cool, and not warmer
// since; zero for the first such reading.
func (f *folding) coolFor(r Reading) time.Duration {
	if f.first.at.IsZero() || r.Temp.Minus(f.first.temp) > skinRose {
		return 0
	}
	return r.At.Sub(f.first.at)
}

// cannotBe reports whether a reading is wrong whatever the kitchen: one that only
// rose since the last may well be right.
func (c Cooling) cannotBe(no EntryNo) bool {
	return slices.ContainsFunc(c.Odd, func(o OddReading) bool { return o.Reading.No == no && o.Why != cooling.Rising })
}

func (f *folding) cool() {
	if f.Stage != StageCool {
		f.coolUntold, f.coolAt = f.rec.By != f.Cook, f.rec.At
	}
	f.enter(StageCool)
}

// SettlingReading is the last reading by which the load counts as cool: the newest that
// counts and is within its limit; false when none is.
func (r Run) SettlingReading() (Reading, bool) {
	c, _ := r.Cooling()
	for _, m := range slices.Backward(r.Readings) {
		if m.Temp <= m.Limit && !c.cannotBe(m.No) {
			return m, true
		}
	}
	return Reading{}, false
}

// readLately is how long a reading stands for how warm a load is (no source: an hour
// changes little near the limit).
const readLately = time.Hour

// ReadWithin is the last reading before an instant, where it was within its limit, is no
// older than an hour then, and can be; false for any other.
func (r Run) ReadWithin(at time.Time) (Reading, bool) {
	c, _ := r.Cooling()
	for _, m := range slices.Backward(r.Readings) {
		if !m.At.After(at) && !c.cannotBe(m.No) {
			return m, m.Temp <= m.Limit && at.Sub(m.At) <= readLately
		}
	}
	return Reading{}, false
}

// NewestReading is the last reading; false when none was taken.
func (r Run) NewestReading() (Reading, bool) {
	if len(r.Readings) == 0 {
		return Reading{}, false
	}
	return r.Readings[len(r.Readings)-1], true
}

// MeasureAgain is when a cool skin is to be measured again; false when none is.
func (r Run) MeasureAgain() (time.Time, bool) {
	if r.Stage != StageCooling || r.first.at.IsZero() {
		return time.Time{}, false
	}
	last, _ := r.NewestReading()
	again := last.At.Add(measureAgainAfter)
	if c, ok := r.Cooling(); ok && last.Where != Middle { // a middle that was doubted is looked at soon
		by := last.At.Add(measureAgainBy)
		if !c.Never() {
			by = latest(by, c.Alarm) // the middle is known to be warm until then
		}
		again = latest(again, earliest(c.Surely, by))
	}
	return again, true
}

// longCooling is when a load is asked about of which nobody saw enough to forecast it:
// what a bag of 5 lb takes at the most out of the pot (common practice, no source).
const longCooling = 18 * time.Hour

// ProbablyCool is when four of five such loads are cool; false while it isn't cooling.
func (r Run) ProbablyCool() (time.Time, bool) {
	if r.Stage != StageCooling {
		return time.Time{}, false
	}
	if c, ok := r.Cooling(); ok {
		return c.Alarm, true
	}
	zero, ok := r.LastStep(KindAtZero)
	return zero.At.Add(longCooling), ok
}

// AsksForReading is when a ping asks for the next reading, after the quiet hours of
// the kitchen; false when none does.
func (r Run) AsksForReading(zone *time.Location) (time.Time, bool) {
	s := r.kitchen
	if r.today != nil {
		s = *r.today
	}
	for _, p := range s.Quieted(r.Wants(s), zone) {
		if p.Kind == ProbablyCool || p.Kind == MeasureAgain {
			return p.Due, true
		}
	}
	return time.Time{}, false
}
