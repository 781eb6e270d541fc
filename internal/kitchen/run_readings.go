package kitchen

import (
	"slices"
	"time"

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

// measureAgainAfter is when a cool skin is measured again.
const measureAgainAfter = time.Hour

// skinRead is the first skin reading at the limit, which asks for a second.
type skinRead struct {
	at   time.Time
	temp unit.Celsius
}

// tempRead keeps a reading. The load is cool by a reading at the limit from
// between or the middle, or by a second one of the skin that has not risen; not while
// another of its units was over the limit just now.
func (f *folding) tempRead(e TempRead) {
	f.step(KindTempRead, 0)
	r := Reading{Units: e.Units, Temp: e.Temp, Where: e.Where, At: f.rec.At, By: f.rec.By, No: f.rec.No, Limit: f.rec.s.CoolLimit()}
	f.Readings = append(f.Readings, r)
	switch {
	case r.Temp > r.Limit:
		f.first = skinRead{}
		f.enter(StageCooling)
	case f.warmerBeside(r):
	case !r.Skin():
		f.cool()
	case f.first.at.IsZero() || r.Temp.Minus(f.first.temp) > skinRose:
		f.first = skinRead{at: r.At, temp: r.Temp}
	case r.At.Sub(f.first.at) >= skinApart:
		f.cool()
	}
}

// warmerBeside reports whether another reading of the same breath, or of another unit
// shortly before, was over the limit.
func (f *folding) warmerBeside(r Reading) bool {
	return slices.ContainsFunc(f.Readings, func(other Reading) bool {
		elsewhere := other.At.Equal(r.At) || len(r.Units) > 0 && len(other.Units) > 0 && !slices.Equal(r.Units, other.Units)
		return other.No != r.No && elsewhere && other.Temp > other.Limit && r.At.Sub(other.At) < skinApart
	})
}

func (f *folding) cool() {
	if f.Stage != StageCool {
		f.coolUntold = f.rec.By != f.Cook
	}
	f.enter(StageCool)
}

// NewestReading is the last reading; false when none was taken.
func (r Run) NewestReading() (Reading, bool) {
	if len(r.Readings) == 0 {
		return Reading{}, false
	}
	return r.Readings[len(r.Readings)-1], true
}

// MeasureAgain is when a second skin reading is due; false when none is.
func (r Run) MeasureAgain() (time.Time, bool) {
	if r.Stage != StageCooling || r.first.at.IsZero() {
		return time.Time{}, false
	}
	return r.first.at.Add(measureAgainAfter), true
}

// cooledBy is how long the largest containers take from zero to 27 °C out of the
// pot, the late end of what is usual (common practice), each row up to a size.
var cooledBy = []struct {
	upTo Container
	time time.Duration
}{
	{Container{Vessel: Jar, Volume: 0.6}, 5 * time.Hour},
	{Container{Vessel: Jar, Volume: 1.2}, 8 * time.Hour},
	{Container{Vessel: Jar, Volume: 2.5}, 12 * time.Hour},
	{Container{Vessel: Jar, Volume: MaxJar}, 18 * time.Hour},
	{Container{Vessel: Bag, Weight: 1500}, 12 * time.Hour},
	{Container{Vessel: Bag, Weight: 2600}, 18 * time.Hour},
	{Container{Vessel: Bag, Weight: MaxBag}, 30 * time.Hour},
}

// closedPotSlower is how much longer it takes in the closed pot.
const closedPotSlower = 1.5

// ProbablyCool is when the load is roughly cool, on the late side, by its largest
// containers alone; false while it isn't cooling. A forecast from readings is to
// take its place.
func (r Run) ProbablyCool() (time.Time, bool) {
	zero, ok := r.LastStep(KindAtZero)
	if r.Stage != StageCooling || !ok {
		return time.Time{}, false
	}
	var open time.Duration
	for _, b := range r.boxes {
		open = max(open, coolTime(b.heated()))
	}
	closed := time.Duration(closedPotSlower * float64(open))
	out, isOut := r.LastStep(KindOutOfPot)
	inside := closed
	if isOut {
		inside = min(closed, max(0, out.At.Sub(zero.At)))
	}
	share := 1 - float64(inside)/float64(closed)
	return zero.At.Add(inside + time.Duration(share*float64(open))), true
}

func coolTime(c Container) time.Duration {
	for _, row := range cooledBy {
		if row.upTo.Vessel == c.Vessel && c.size() <= row.upTo.size() {
			return row.time
		}
	}
	return cooledBy[len(cooledBy)-1].time
}
