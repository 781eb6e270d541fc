package kitchen

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

// shelfMachine is a shelf of which anybody says anything: late, twice, of units that
// don't exist, taken back.
type shelfMachine struct {
	run     Run
	records []Record
	no      EntryNo
	now     time.Time
	units   Units
}

func sameUnits() cmp.Option {
	return cmp.Options{
		cmpopts.IgnoreUnexported(Units{}), cmpopts.IgnoreFields(UnitStray{}, "seq"), cmpopts.EquateEmpty(),
	}
}

// unlike says where two shelves differ. The walk through all of it is for those that do.
func unlike(a, b Units) string {
	if reflect.DeepEqual(a.All, b.All) && len(a.Strays) == 0 && len(b.Strays) == 0 && a.Heard.Equal(b.Heard) {
		return ""
	}
	return cmp.Diff(a, b, sameUnits())
}

func unitEntryGen() *rapid.Generator[UnitEntry] {
	return rapid.Custom(func(t *rapid.T) UnitEntry {
		of := rapid.SliceOfN(rapid.Map(rapid.IntRange(0, 4), func(i int) UnitNo { return UnitNo(i) }), 1, 4).Draw(t, "units")
		share := unit.Fraction(rapid.SampledFrom([]float64{0, 0.3, 0.5, 1}).Draw(t, "share"))
		return rapid.SampledFrom([]UnitEntry{
			Inoculated{Units: of, Culture: "oyster"},
			Inoculated{Units: of},
			Inoculated{Units: of, From: UnitRef{12, rapid.Map(rapid.IntRange(1, 3), func(i int) UnitNo { return UnitNo(i) }).Draw(t, "from")}},
			BlankSet{of},
			GrowthSeen{of, share},
			Shaken{of},
			SignSeen{of, rapid.SampledFrom(Signs()).Draw(t, "sign")},
			GrownThrough{of},
			UnitsUsed{Units: of, Share: share},
			UnitsGiven{Units: of},
			UnitsDiscarded{of},
			UnitsGone{of},
			UnitsMoved{of, "fridge"},
			UnitNamed{of[0], "bag A"},
			UnitsTagged{of, []string{"soak24"}},
			UnitsStood{of, InnerOnes},
			LotSaid{What: GrainLot, Name: "rye lot 3"},
		}).Draw(t, "entry")
	})
}

func (m *shelfMachine) fold(records []Record) Units { return FoldUnits(m.run, records) }

// tell says something that happened up to some days ago.
func (m *shelfMachine) tell(t *rapid.T) {
	m.now = m.now.Add(time.Duration(rapid.IntRange(0, 72).Draw(t, "later")) * time.Hour)
	ago := time.Duration(rapid.SampledFrom([]int{0, 0, 0, 1, 24, 200}).Draw(t, "ago")) * time.Hour
	m.no++
	// Entries of one instant have no order of their own, so each has its second.
	rec := Record{
		No: m.no, By: rapid.SampledFrom([]MemberNo{ana, jo, mik}).Draw(t, "by"), At: m.now.Add(-ago).Add(time.Duration(m.no) * time.Second),
		Entry: unitEntryGen().Draw(t, "said"),
	}
	rec.Written = rec.At.Add(ago)
	before := m.units
	next, took, err := before.Apply(rec)
	if err != nil {
		var why Refusal
		if !errors.As(err, &why) || unlike(before, next) != "" {
			t.Fatalf("%+v: %v, and changed %s", rec, err, unlike(before, next))
		}
		return
	}
	if len(took.Taken) == 0 || !slices.Equal(took.Taken, next.meant(took.Record.Entry.(UnitEntry))) {
		t.Fatalf("%+v: took %v, writes %+v", rec, took.Taken, took.Record.Entry)
	}
	for _, s := range next.Strays {
		if _, twice := s.Why.(UnitAlready); !twice && !before.strayed(s) {
			t.Fatalf("%+v: what was told before can't be so any more: %+v", rec, next.Strays)
		}
	}
	for _, not := range took.Not {
		if slices.Contains(took.Taken, not.Unit) || not.Why == nil {
			t.Fatalf("%+v: took %v and not %+v", rec, took.Taken, not)
		}
	}
	m.units, m.records = next, append(m.records, took.Record)
	if diff := unlike(before, m.fold(m.records[:len(m.records)-1])); diff != "" {
		t.Fatalf("undo of %+v (-before +after):\n%s", rec, diff)
	}
}

// undo takes back any entry, if there is one.
func (m *shelfMachine) undo(t *rapid.T) {
	if len(m.records) == 0 {
		return
	}
	i := rapid.IntRange(0, len(m.records)-1).Draw(t, "which")
	m.records = slices.Delete(slices.Clone(m.records), i, i+1)
	m.units = m.fold(m.records)
}

func TestAnythingOfUnits(t *testing.T) {
	// Three jars, so that much is told of each.
	l := begun(Item{Count: 3, Container: jar(1)}).say("09:10", ana, HeatOn{}).say("12:15", ana, AtZero{})
	run := l.run(t, pot())
	rapid.Check(t, func(t *rapid.T) {
		m := &shelfMachine{run: run, now: clock("21:00"), no: EntryNo(len(l.records))}
		m.units = m.fold(nil)
		t.Repeat(map[string]func(*rapid.T){"tell": m.tell, "told": m.tell, "tells": m.tell, "undo": m.undo, "": m.invariants})
	})
}

func (m *shelfMachine) invariants(t *rapid.T) {
	shuffled := rapid.Permutation(m.records).Draw(t, "order")
	if diff := unlike(m.units, m.fold(shuffled)); diff != "" {
		t.Fatalf("in another order (-first +second):\n%s", diff)
	}
	n := 0
	for _, s := range UnitStates() {
		n += len(m.units.In(s))
	}
	if n != len(m.units.All) || n != m.run.Units() {
		t.Fatalf("%d units in states, of %d", n, m.run.Units())
	}
	for _, u := range m.units.All {
		m.oneUnit(t, u)
	}
	keys := map[string]bool{}
	for _, p := range m.units.Wants(Settings{RestDays: 3}, nil) {
		if keys[p.Key] || !strings.HasPrefix(p.Key, m.run.No.Prefix()) || len(p.Units) == 0 {
			t.Fatalf("ping %+v", p)
		}
		keys[p.Key] = true
	}
}

// oneUnit holds that the steps of a unit lead from one state to the next by the table,
// and that what is said of it fits where it is.
func (m *shelfMachine) oneUnit(t *rapid.T, u Unit) {
	at, when := InCook, time.Time{}
	for _, s := range u.Steps {
		if s.From != at || s.At.Before(when) {
			t.Fatalf("%v jumps to %+v", at, s)
		}
		at, when = s.To, s.At
	}
	switch {
	case at != u.State:
		t.Fatalf("%v after steps to %v", u.State, at)
	case (u.State == UnitInoculated || u.State == UnitGrowing || u.State == UnitGrown || u.State == UnitDead) && !u.Cultured:
		t.Fatalf("%v without a culture", u.State)
	case u.Blank && u.Cultured:
		t.Fatalf("a blank with a culture: %+v", u)
	case (u.State == UnitSuspect) != (u.Before != 0):
		t.Fatalf("%v, before that %v", u.State, u.Before)
	case u.State.Lives() && u.Loss.What != 0, u.State == UnitCooked && u.Loss.What != 0:
		t.Fatalf("%v and lost as %+v", u.State, u.Loss)
	case (u.State == UnitContaminated || u.State == UnitDead) && u.Loss.What != u.State:
		t.Fatalf("%v and lost as %+v", u.State, u.Loss)
	case u.Left < 0 || u.Left > 1 || (u.State == UnitUsed) != (u.Left == 0):
		t.Fatalf("%v with %v left", u.State, u.Left)
	case u.State.Stands() && u.State != u.Before && u.Since.IsZero():
		t.Fatalf("%v since nobody knows", u.State)
	}
	for _, from := range u.ancestors(m.units) {
		if from == u.Ref {
			t.Fatalf("%v is its own ancestor", u.Ref)
		}
	}
}

func (u Unit) ancestors(of Units) []UnitRef {
	var out []UnitRef
	for from := u.From; from.Run == of.Run && len(out) <= len(of.All); {
		out = append(out, from)
		parent, _ := of.Unit(from.Unit)
		from = parent.From
	}
	return out
}

// Every state can be reached, and every kind has its words and its place.
func TestUnitTable(t *testing.T) {
	reached := map[UnitState]bool{InCook: true}
	for _, s := range UnitStates() {
		for _, m := range unitFollows[s] {
			reached[m.to] = true
			if to, ok := s.leads(m.kind); !ok || to != m.to {
				t.Errorf("%v from %v: %v, %v", m.kind, s, to, ok)
			}
		}
	}
	for _, s := range UnitStates() {
		if !reached[s] || s.String() == "" || strings.Contains(s.String(), "not said") {
			t.Errorf("state %d, %q, is never reached", s, s)
		}
		s.Stands()
		for k := SaidArrived; k <= SaidGone; k++ {
			k.is(s)
			if k.String() == "" {
				t.Errorf("kind %d has no words", k)
			}
		}
	}
	if d := UnitDiagram(); !strings.Contains(d, "    suspect --> growing: fine after all\n") || strings.Contains(d, "not said") {
		t.Error(d)
	}
}

// What signs point to: Bacillus and Trichoderma by a growers' FAQ on contaminants, the
// others common practice, no source.
func TestSigns(t *testing.T) {
	for _, tt := range []struct {
		sign   Sign
		says   UnitKind
		likely string
		first  Cause
		do     Act
	}{
		{GreenMould, SaidContaminated, "Trichoderma", TransferAir, OutUnopened},
		{PinkFluff, SaidContaminated, "Neurospora", TransferAir, OutAlarm},
		{LooksWet, SaidSuspect, "Bacillus and other bacteria", TooWet, KeepWatching},
		{YeastySmell, SaidContaminated, "yeast", BadCulture, OutAndRetire},
		{YellowDrops, SaidSuspect, "", Age, KeepWatching},
		{NothingGrew, SaidDead, "", WarmGrain, OnceMore},
	} {
		f := tt.sign.Means()
		if tt.sign.says() != tt.says || f.Likely != tt.likely || f.PointsTo[0] != tt.first || f.Do != tt.do {
			t.Errorf("%v: %v, %+v", tt.sign, tt.sign.says(), f)
		}
	}
	for i, s := range Signs() {
		f := s.Means()
		if int(s) != i+1 || s.String() == "" || f.Do == 0 || f.Known == 0 || (f.Known == Sourced) != (f.Source != "") || f.From > f.To {
			t.Errorf("%d %v: %+v", i, s, f)
		}
		if s.says() == SaidContaminated && f.Do == KeepWatching {
			t.Errorf("%v is watched on", s)
		}
		for _, c := range f.PointsTo {
			if c.String() == "" || c.String() == "cause not said" {
				t.Errorf("cause %d has no words", c)
			}
		}
	}
	f := GreenMould.Means()
	if f.PointsTo[0] = Age; GreenMould.Means().PointsTo[0] != TransferAir {
		t.Error("what a sign means can be written to")
	}
	if len(signs) != len(Signs())+1 {
		t.Error("a sign is not listed")
	}
}
