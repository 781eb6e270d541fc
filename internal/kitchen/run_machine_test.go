package kitchen

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

// machine is a kitchen in which anybody says anything of a run: late, twice, taken
// back.
type machine struct {
	records  []Record
	settings []Record
	no       EntryNo
	now      time.Time
	run      Run
}

func (m *machine) settingsAt(at time.Time) Settings {
	var in []Record
	for _, r := range m.settings {
		if !r.At.After(at) {
			in = append(in, r)
		}
	}
	return FoldSettings(in)
}

func sameRun() cmp.Option {
	return cmp.Options{
		cmp.AllowUnexported(Run{}, box{}, Stray{}, Stretch{}, Dip{}, Water{}, skinRead{}),
		cmpopts.IgnoreFields(Run{}, "told"), cmpopts.IgnoreFields(Stray{}, "seq"), cmpopts.EquateEmpty(),
	}
}

func entryGen() *rapid.Generator[RunEntry] {
	gauge := rapid.Map(rapid.IntRange(0, 20), func(p int) unit.GaugeKPa { return unit.PSI(float64(p)) })
	return rapid.Custom(func(t *rapid.T) RunEntry {
		g := gauge.Draw(t, "psi")
		said := rapid.Ptr(gauge, true).Draw(t, "said")
		plain := []RunEntry{
			HeatOn{},
			Steam{},
			VentClosed{},
			AtPressure{},
			AtPressure{},
			AtPressure{Gauge: g},
			GaugeRead{g},
			GaugeRead{unit.PSI(15)},
			PressureLost{said},
			PressureBack{},
			PressureBack{Gauge: g},
			Dipped{To: said},
			Dipped{To: said, For: time.Duration(rapid.IntRange(1, 20).Draw(t, "min")) * time.Minute},
			HeatOff{},
			AtZero{},
			OutOfPot{},
			TempRead{Temp: 26},
			TempRead{Temp: 40, Where: Skin},
			TempRead{Temp: 26, Where: Between},
			WaterLeft{1},
			WaterIn{Water: 3},
			WaterIn{Water: 1, Added: true},
			RunGone{},
			CalledOff{},
			TookOver{},
			HandOffered{To: jo},
			HandAccepted{},
			PrepBegun{Soaking},
			PrepBegun{Simmering},
			PrepEnded{},
		}
		return rapid.SampledFrom(plain).Draw(t, "entry")
	})
}

// tell says something that happened up to three hours ago, or answers a ping.
func (m *machine) tell(t *rapid.T) {
	m.now = m.now.Add(time.Duration(rapid.IntRange(0, 90).Draw(t, "later")) * time.Minute)
	ago := time.Duration(rapid.SampledFrom([]int{0, 0, 0, 1, 5, 30, 180}).Draw(t, "ago")) * time.Minute
	var e RunEntry = entryGen().Draw(t, "said")
	if pings := m.run.Wants(m.settingsAt(m.now)); len(pings) > 0 && rapid.IntRange(0, 4).Draw(t, "answers") == 0 {
		p := rapid.SampledFrom(pings).Draw(t, "ping")
		e = PingAnswered{Key: p.Key, How: rapid.SampledFrom([]Answered{AnswerSeen, AnswerDone, AnswerNotYet, AnswerGotIt}).Draw(t, "how")}
	}
	m.no++
	// Entries of one instant have no order of their own, so each has its second.
	rec := Record{
		No: m.no, By: rapid.SampledFrom([]MemberNo{ana, jo, mik}).Draw(t, "by"),
		At: m.now.Add(-ago).Add(time.Duration(m.no) * time.Second), Entry: e,
	}
	rec.Written = rec.At.Add(ago)
	before := m.run
	next, err := m.run.Apply(rec, m.settingsAt(rec.At))
	var why Refusal
	if err != nil {
		if !errors.As(err, &why) {
			t.Fatalf("%+v: %v is no refusal", rec, err)
		}
		if diff := cmp.Diff(before, next, sameRun()); diff != "" {
			t.Fatalf("refused %+v and changed all the same:\n%s", rec, diff)
		}
		return
	}
	m.run, m.records = next, append(m.records, rec)
	// Undo of the last entry restores the state.
	if diff := cmp.Diff(before, m.fold(t, m.records[:len(m.records)-1]), sameRun()); diff != "" {
		t.Fatalf("undo of %+v (-before +after):\n%s", rec, diff)
	}
}

func (m *machine) fold(t *rapid.T, records []Record) Run {
	r, err := FoldRun(records, m.settingsAt)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// undo takes back any entry but the first, if there is one.
func (m *machine) undo(t *rapid.T) {
	if len(m.records) < 2 {
		return
	}
	i := rapid.IntRange(1, len(m.records)-1).Draw(t, "which")
	m.records = slices.Delete(slices.Clone(m.records), i, i+1)
	m.run = m.fold(t, m.records)
}

// change changes the kitchen, from now on.
func (m *machine) change(t *rapid.T) {
	c := rapid.SampledFrom([]Change{
		HoldIs{jar(1), 2 * time.Hour},
		GaugeReads{Cooker: "big pot", Low: unit.PSI(1)},
		GaugeReads{Cooker: "big pot", Low: unit.PSI(-2)},
		Elevation{1600},
		CookerIs{Name: "big pot", BoilOff: 1.5},
		RoomTemperature{28},
		PressureIs{unit.PSI(12)},
	}).Draw(t, "change")
	past := m.run
	m.settings = append(m.settings, Record{At: m.now.Add(time.Hour), Entry: c})
	m.now = m.now.Add(time.Hour)
	if diff := cmp.Diff(past, m.fold(t, m.records), sameRun()); diff != "" {
		t.Fatalf("%+v changed the past:\n%s", c, diff)
	}
}

func TestAnythingAnybodySays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first := begun().records[0]
		m := &machine{records: []Record{first}, no: 1, now: first.At}
		m.settings = []Record{{At: first.At.Add(-time.Hour), Entry: bigPot()}}
		m.run = m.fold(t, m.records)
		t.Repeat(map[string]func(*rapid.T){"tell": m.tell, "told": m.tell, "tells": m.tell, "undo": m.undo, "change": m.change, "": m.invariants})
	})
}

func (m *machine) invariants(t *rapid.T) {
	m.sameInAnyOrder(t)
	m.nothingSkipped(t)
	m.oneHold(t)
	m.pings(t)
}

// Whatever order the entries were written in, the run is the same: what counts is
// when things happened.
func (m *machine) sameInAnyOrder(t *rapid.T) {
	shuffled := rapid.Permutation(m.records).Draw(t, "order")
	if diff := cmp.Diff(m.run, m.fold(t, shuffled), sameRun()); diff != "" {
		t.Fatalf("in another order (-first +second):\n%s", diff)
	}
	for i := range shuffled {
		shuffled[i].No = EntryNo(i + 1)
	}
	s := m.settingsAt(m.now)
	if diff := cmp.Diff(story(m.run, s), story(m.fold(t, shuffled), s)); diff != "" {
		t.Fatalf("written in another order (-first +second):\n%s", diff)
	}
}

// nothingSkipped holds that each step of the path stands after the one before it,
// seen or not.
func (m *machine) nothingSkipped(t *rapid.T) {
	at, when := -1, time.Time{}
	for _, s := range m.run.Steps {
		if s.At.Before(when) {
			t.Fatalf("steps run backwards: %+v", m.run.Steps)
		}
		when = s.At
		if m.run.Stage == StageCalledOff && s.Kind == KindCalledOff {
			return
		}
		i := onPath(s.Kind)
		if s.Kind == KindPressureBack {
			i = onPath(KindAtPressure)
		}
		if s.Kind == KindHeatOn && at == onPath(KindAtPressure) {
			continue // the flame had gone out: the same hold's is lit again
		}
		if i > at+1 {
			t.Fatalf("%v skips %v: %+v", s.Kind, path[at+1].kind, m.run.Steps)
		}
		if i >= 0 {
			at = i
		}
	}
	if m.run.Stage == StageFalling && m.run.saidNotYet(m.run.key("zero", len(m.run.Off))) {
		return // the zero was denied
	}
	if want := m.run.Stage.passed() - 1; !m.run.Stage.Over() && at != want && m.run.Stage != StagePressureLost && m.run.Stage != StageAtPressure {
		t.Fatalf("%v after step %d, want %d", m.run.Stage, at, want)
	}
}

// oneHold holds that a hold runs at pressure and nowhere else, and that nothing is
// called held that was not.
func (m *machine) oneHold(t *rapid.T) {
	live := 0
	for _, s := range m.run.Stretches {
		if s.To.IsZero() {
			live++
		} else if s.To.Before(s.From) {
			t.Fatalf("stretch runs backwards: %+v", s)
		}
	}
	want := 0
	if m.run.Stage == StageAtPressure {
		want = 1
	}
	if live != want {
		t.Fatalf("%d holds run while %v", live, m.run.Stage)
	}
	for _, o := range m.run.Off {
		if o.Outcome == Held && o.Credit.Hold <= o.Wanted-early {
			t.Fatalf("held: %+v", o)
		}
	}
	c := m.run.CreditAt(m.now)
	if c.Hold < 0 || c.F0 < 0 || c.Hold+c.Broken > m.now.Add(time.Minute*3).Sub(m.run.Begun) {
		t.Fatalf("credit %+v", c)
	}
}

// pings holds that keys are unique and under the run's prefix, and that nothing is
// due before what it waits for.
func (m *machine) pings(t *rapid.T) {
	seen := map[string]Ping{}
	for _, p := range m.run.Wants(m.settingsAt(m.now)) {
		if _, twice := seen[p.Key]; twice || !strings.HasPrefix(p.Key, m.run.No.Prefix()) {
			t.Fatalf("key %s", p.Key)
		}
		seen[p.Key] = p
		since := m.run.Since
		if n := len(m.run.Off); p.Kind == CheckZero {
			since = m.run.Off[n-1].At // it may have been called off since
		}
		if n := len(m.run.Preps); p.Kind == PrepOver || p.Kind == WetGrainStands {
			since = m.run.Preps[n-1].From
		}
		if p.Due.Before(since) {
			t.Fatalf("%+v is due before %v, since %v", p, m.run.Stage, since)
		}
		if first, ok := seen[p.Chain()]; ok && p.Key != p.Chain() && !p.Due.After(first.Due) {
			t.Fatalf("%+v is not after %+v", p, first)
		}
		if end, holds := m.run.HoldEnd(); p.Kind == HoldOver && (!holds || p.Due.Before(end)) {
			t.Fatalf("%+v before the end of the hold %v", p, end)
		}
	}
	if m.run.Stage == StageAtPressure && len(m.run.Answers) == 0 && seen[m.run.key("hold-over", m.run.Attempt())].Key == "" {
		t.Fatalf("no ping for a hold that runs: %v", seen)
	}
}

// A whole cook reported after the fact, in whatever order people remember it: every
// step is taken, and the run is the same.
func TestLateReportsInAnyOrder(t *testing.T) {
	told := begun().say("09:10", ana, HeatOn{}).say("09:40", jo, Steam{}).say("09:50", ana, VentClosed{}).say("10:00", jo, AtPressure{}).
		say("10:30", ana, PressureLost{Gauge: psi(9)}).say("10:40", mik, PressureBack{}).say("11:00", mik, TookOver{}).
		say("12:10", ana, HeatOff{}).say("13:00", jo, AtZero{}).say("13:10", jo, OutOfPot{}).records
	for i := range told[1:] {
		told[i+1].Written = clock("13:30")
	}
	want, err := FoldRun(told, always(pot()))
	if err != nil || len(want.Strays) > 0 || slices.ContainsFunc(want.Steps, func(s Step) bool { return !s.Seen }) {
		t.Fatalf("in order: %v, %+v", err, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		r, err := FoldRun(told[:1], always(pot()))
		for _, rec := range rapid.Permutation(told[1:]).Draw(t, "order") {
			if err == nil {
				r, err = r.Apply(rec, pot())
			}
		}
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, r, sameRun()); diff != "" {
			t.Fatalf("(-in order +as remembered):\n%s", diff)
		}
	})
}
