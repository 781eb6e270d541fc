package kitchen

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"time"

	"ryebell/internal/calc/unit"
)

// Run is one load in one cooker, as far as its entries tell. It is a value: what
// changes it gives another one.
type Run struct {
	No     RunNo
	Cooker string
	// Order is what is in the load, Room the room it was begun in, Follows the load
	// before it: see [RunBegun].
	Order   Order
	Room    int64
	Follows RunNo
	// Turn, Load and Loads say from which plan it was put on: see [RunBegun].
	Turn        int64
	Load, Loads int
	// Begun is when it was put on, or when the first of it happened, where that was
	// told later: at most a day before.
	Begun time.Time
	// Cook is who watches it now, zero for nobody named. Offered is who was asked
	// to take over and has not accepted.
	Cook, Offered MemberNo
	Stage         Stage
	// Since is when the stage began.
	Since time.Time
	// Steps is what happened, in its order, with what nobody reported.
	Steps []Step
	Preps []Preparation
	// Hold is what the load needs: the longest of its containers, by the settings
	// in force when the hold began, for the pressure that was reached.
	Hold Hold
	// Stretches are the times at pressure without a break, Dips the breaks.
	Stretches []Stretch
	Dips      []Dip
	Gauge     []GaugePoint
	Off       []HeatGoneOff
	Readings  []Reading
	Water     Water
	Answers   []Answer
	// Newest is when the last of it happened, Heard when the last of it was told or
	// taken back; a thumb tells nothing.
	Newest, Heard time.Time
	// Strays are the records that cannot be so beside the others, with why; they
	// change nothing.
	Strays []Stray

	pot     CookerIs
	boxes   []box    // what is in it, by the settings of the newest entry
	kitchen Settings // in force at the newest entry
	first   skinRead
	// coolAt is when the reading was taken that settled it; zero until then.
	coolAt time.Time
	// coolUntold is set when somebody else than the cook found it cool.
	coolUntold bool
	told       []telling
	// today, past and foreseen are what [Run.Knowing] was given, and the forecast.
	today    *Settings
	past     []Cooled
	foreseen *Cooling
}

// Step is a thing that happened to a run. A step that nobody reported is not Seen:
// it was filled in when a later one was, and At is when it must have happened at
// the latest.
type Step struct {
	Kind Kind
	At   time.Time
	By   MemberNo
	No   EntryNo
	Seen bool
	// Prep is the step of the preparation; zero for all other kinds.
	Prep Prep
	// To is who watches the run since the step; zero where that stays as it was.
	To MemberNo
}

// Stray is a record that cannot be so beside the others.
type Stray struct {
	Record Record
	Why    Refusal

	seq int
}

// Answer is what somebody answered to a ping.
type Answer struct {
	Key string
	How Answered
	By  MemberNo
	At  time.Time
}

// telling is a record with the settings in force when it happened.
type telling struct {
	Record
	s   Settings
	seq int
}

// RunPrefix begins the keys of the pings of all runs.
const RunPrefix = "run/"

// Prefix begins the keys of all pings of a run, and, without the last stroke, is
// the subject of its entries: run/12/.
func (n RunNo) Prefix() string { return n.Subject() + "/" }

// Subject is what the entries of a run are about: run/12.
func (n RunNo) Subject() string { return RunPrefix + strconv.Itoa(int(n)) }

// FoldRun is the run that these records tell of, each with the settings in force
// when it happened. They may come in any order and twice; struck ones must not
// be among them, and those that are not about a run are passed over. What can't
// be so beside the rest becomes a [Stray]. An error is [NoSuchRun]: none of them
// begins a run.
func FoldRun(records []Record, settingsAt func(time.Time) Settings) (Run, error) {
	var told []telling
	var struck time.Time
	for _, r := range records {
		if _, ok := r.Entry.(RunEntry); ok {
			told = append(told, telling{Record: r, s: settingsAt(r.At), seq: len(told)})
		} else if _, ok := r.Entry.(Struck); ok {
			struck = latest(struck, r.Written)
		}
	}
	run, err := fold(told)
	run.Heard = latest(run.Heard, struck)
	return run, err
}

// Apply is the run once a record more is in the book; s are the settings in force
// when it happened. A [Refusal] says why it can't be so; the run is then as it
// was.
func (r Run) Apply(rec Record, s Settings) (Run, error) {
	if err := r.check(rec, s); err != nil {
		return r, err
	}
	next := r.With(rec, s)
	for _, stray := range next.Strays {
		if stray.seq == len(r.told) {
			return r, stray.Why
		}
	}
	for _, stray := range next.Strays {
		if _, twice := stray.Why.(AlreadySo); !twice && !r.strayed(stray.seq) {
			other := stray.Record
			return r, Contradicts{
				Run: r.No, Said: rec.Entry.(RunEntry).kind(), At: rec.At,
				Other: other.Entry.(RunEntry).kind(), OtherAt: other.At, OtherBy: other.By,
			}
		}
	}
	return next, nil
}

func (r Run) strayed(seq int) bool {
	return slices.ContainsFunc(r.Strays, func(s Stray) bool { return s.seq == seq })
}

// With is the run with a record more, whether or not it can be so.
func (r Run) With(rec Record, s Settings) Run {
	next, err := fold(append(slices.Clone(r.told), telling{Record: rec, s: s, seq: len(r.told)}))
	if err != nil {
		panic("run without a beginning")
	}
	if r.today != nil {
		return next.Knowing(*r.today, r.past)
	}
	return next
}

// clockSkew is how far ahead a phone's clock may be.
const clockSkew = 2 * time.Minute

// check refuses what is wrong whatever else was said: times and figures.
func (r Run) check(rec Record, s Settings) error {
	e, ok := rec.Entry.(RunEntry)
	if !ok {
		panic("entry of something else than a run")
	}
	if _, again := e.(RunBegun); again {
		return AlreadySo{Run: r.No, Said: KindRunBegun, By: r.Steps[0].By, At: r.Begun, Seen: true}
	}
	over := rec.At
	if d, ok := e.(Dipped); ok {
		over = over.Add(d.For)
	}
	if over.After(rec.Written.Add(clockSkew)) {
		return InFuture{At: over, Told: rec.Written}
	}
	if rec.At.Before(r.Begun) && (r.PutOn().Sub(rec.At) > bookedLate || !slices.Contains(begins, e.kind())) {
		return BeforeRun{Run: r.No, At: rec.At, Begun: r.Begun}
	}
	return r.checkFigures(e, s)
}

// MaxDip is the longest time that a pressure is taken to be down and back by
// itself.
const MaxDip = 3 * time.Hour

// checkFigures refuses figures that no cooker or thermometer shows.
func (r Run) checkFigures(e RunEntry, s Settings) error {
	gauge := func(g unit.GaugeKPa) error {
		return checkRange(GaugePressure, float64(g), 0, float64(unit.PSI(40)))
	}
	switch e := e.(type) {
	case AtPressure:
		return gauge(e.Gauge)
	case GaugeRead:
		return gauge(e.Gauge)
	case PressureLost:
		return gauge(orElse(e.Gauge, 0))
	case PressureBack:
		return gauge(e.Gauge)
	case Dipped:
		if err := checkRange(DipTime, e.For.Minutes(), 0, MaxDip.Minutes()); err != nil {
			return err
		}
		return gauge(orElse(e.To, 0))
	case TempRead:
		return r.checkReading(e)
	case WaterIn:
		return checkRange(CookerWater, float64(e.Water), 0, 60)
	case WaterLeft:
		return checkRange(CookerWater, float64(e.Water), 0, 60)
	case RunBegun, PrepBegun, PrepEnded, HeatOn, Steam, VentClosed, HeatOff, AtZero, OutOfPot, RunGone, CalledOff,
		TookOver, HandOffered, HandAccepted, PingAnswered:
		return nil
	}
	panic("entry of a run without a check")
}

func (r Run) checkReading(e TempRead) error {
	for _, u := range e.Units {
		if u < 1 || int(u) > r.Units() {
			return NoSuchUnit{Ref: Ref{Run: r.No, Units: []UnitNo{u}}, Has: r.Units()}
		}
	}
	return checkRange(ReadTemp, float64(e.Temp), -20, 130)
}

// Units is how many containers are in the load.
func (r Run) Units() int {
	n := 0
	for _, part := range containersOf(r.Order) {
		n += part.Count
	}
	return n
}

// Has reports whether somebody is in the run: watches it, or has told of it.
func (r Run) Has(m MemberNo) bool {
	return m != 0 && (r.Cook == m || slices.ContainsFunc(r.Steps, func(s Step) bool { return s.Seen && s.By == m }))
}

// LastStep is the newest step of a kind.
func (r Run) LastStep(k Kind) (Step, bool) {
	for _, s := range slices.Backward(r.Steps) {
		if s.Kind == k {
			return s, true
		}
	}
	return Step{}, false
}

// fold takes the records in the order in which things happened.
func fold(told []telling) (Run, error) {
	slices.SortStableFunc(told, inOrder)
	first := -1
	for i, t := range told {
		if _, ok := t.Entry.(RunBegun); ok {
			first = i
		}
	}
	if first < 0 {
		return Run{}, NoSuchRun{}
	}
	f := folding{}
	f.begin(told[first], earliestOf(told, told[first]))
	for i, t := range told {
		if t.At.Before(told[first].At) {
			t.s = told[first].s // what was named by putting it on
		}
		if i != first {
			f.take(t)
		}
	}
	f.told = told
	for _, t := range told {
		if a, ok := t.Entry.(PingAnswered); !ok || a.How != AnswerSeen {
			f.Heard = latest(f.Heard, t.Written)
		}
	}
	return f.Run, nil
}

// bookedLate is how long before it was put on the book a run can have begun: people
// tell of a cook, or of a soak overnight, when it is under way.
const bookedLate = 24 * time.Hour

// hotLate is how long before a run was put on the book its flame can have been on
// without anybody asking: heating up, venting and a long hold. Beyond it an hour is
// rather mistyped (common practice, no source).
const hotLate = 4 * time.Hour

// LongBefore reports whether something told of the flame or the pressure would lie so
// long before its run was put on that the hour is rather mistyped.
func LongBefore(e RunEntry, at, putOn time.Time) bool {
	return putOn.Sub(at) > hotLate && onPath(e.kind()) >= 0
}

// begins lists what a run can have begun with before it was put on.
var begins = []Kind{KindPrepBegun, KindPrepEnded, KindWaterIn, KindHeatOn, KindSteam, KindVentClosed, KindAtPressure}

// earliestOf is when the first of a run happened that lies no more than [bookedLate]
// before it was put on.
func earliestOf(told []telling, begun telling) time.Time {
	first := begun.At
	for _, t := range told {
		if t.At.Before(first) && begun.At.Sub(t.At) <= bookedLate {
			first = t.At
		}
	}
	return first
}

// PutOn is when the run was put on the book.
func (r Run) PutOn() time.Time {
	for _, t := range r.told {
		if _, ok := t.Entry.(RunBegun); ok {
			return t.At
		}
	}
	return r.Begun
}

// inOrder puts records in the order of when they happened; of two at once the one
// that comes first in the trade.
func inOrder(a, b telling) int {
	return cmp.Or(
		a.At.Compare(b.At),
		InTrade(a.Entry.(RunEntry).kind(), b.Entry.(RunEntry).kind()),
		cmp.Compare(a.place(), b.place()),
		cmp.Compare(a.seq, b.seq),
	)
}

// InTrade compares two kinds by which comes first in the trade: their order, but
// that water goes in before the flame.
func InTrade(a, b Kind) int {
	wet := func(k Kind) int {
		if k == KindWaterIn {
			return int(KindHeatOn)*2 - 1
		}
		return int(k) * 2
	}
	return cmp.Compare(wet(a), wet(b))
}

// place is the number of an entry, which one that is not written yet has still
// to get.
func (t telling) place() EntryNo {
	if t.No == 0 {
		return math.MaxInt
	}
	return t.No
}
