package kitchen

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// farm is a lineage of three loads of what arrived, so that no cook is told: plate 7
// from plate 3 went on 1.1 and 1.2, 1.1 on 2.1 to 2.3, 2.1 on 3.1; oyster is but a name.
func farm(t testing.TB, more ...func(run RunNo, l *teller)) (loads []Units, cultures Cultures) {
	t.Helper()
	told := map[RunNo]*teller{}
	for run := RunNo(1); run <= 3; run++ {
		told[run] = (&teller{}).day(3, "09:00", ana, Arrived{Run: run, Order: Order{Items: []Item{{Count: 4, Container: jar(1)}}}})
	}
	told[1].day(4, "09:00", ana, Inoculated{Units: ones(1, 2), Culture: "Plate 7"}).day(4, "10:00", ana, Inoculated{Units: ones(3), Culture: "Oyster"})
	told[2].day(15, "09:00", ana, Inoculated{Units: ones(1, 2, 3), From: UnitRef{1, 1}}).day(15, "10:00", ana, Inoculated{Units: ones(4), Culture: "oyster"})
	told[3].day(25, "09:00", ana, Inoculated{Units: ones(1), From: UnitRef{2, 1}})
	for run := RunNo(1); run <= 3; run++ {
		for _, f := range more {
			f(run, told[run])
		}
		u, err := FoldArrived(told[run].records)
		if err != nil || len(u.Strays) > 0 {
			t.Fatalf("%v: %v, %+v", run, err, u.Strays)
		}
		loads = append(loads, u)
	}
	return loads, FoldCultures((&teller{}).
		day(2, "09:00", ana, CultureMade{Name: "plate 3", Kind: Plate}).
		day(5, "09:00", ana, CultureMade{Name: "plate 7", Kind: Plate, From: "plate 3"}). // told after it was put on
		day(26, "09:00", ana, CultureMade{Name: "lc 5", Kind: LiquidBottle, FromUnit: UnitRef{3, 1}}).records)
}

// drawn prints a tree on one line: plate 3(plate 7(#1.1(#2.1)))
func drawn(l Lineage, tr Tree) string {
	name := tr.Node.Name
	if c, ok := l.Culture(tr.Node); ok {
		name = c.Name
	} else if tr.Node.IsUnit() {
		name = tr.Node.Unit.String()
	}
	var below []string
	for _, b := range tr.Branches {
		below = append(below, drawn(l, b))
	}
	if len(below) > 0 {
		name += "(" + strings.Join(below, " ") + ")"
	}
	return name
}

func TestTrace(t *testing.T) {
	l := NewLineage(farm(t))
	plate3, ok := l.Find("PLATE 3")
	if !ok {
		t.Fatal("plate 3 is not found")
	}
	const whole = "plate 3(plate 7(#1.1(#2.1(#3.1(lc 5)) #2.2 #2.3) #1.2))"
	if got := drawn(l, l.Tree(plate3)); got != whole {
		t.Errorf("%s, want %s", got, whole)
	}
	unit := func(run RunNo, n UnitNo) Node { return UnitNode(UnitRef{run, n}) }
	if got := drawn(l, l.Tree(l.Root(unit(3, 1)))); got != whole {
		t.Errorf("the whole tree of 3.1: %s", got)
	}
	if got := l.Tree(plate3).Size(); got != 9 {
		t.Errorf("size %d, want 9", got)
	}
	if diff := cmp.Diff([]UnitRef{{1, 1}, {1, 2}, {2, 1}, {2, 2}, {2, 3}, {3, 1}}, l.Tree(plate3).Units()); diff != "" {
		t.Error(diff)
	}
	oyster, ok := l.Find("Oyster")
	if diff := cmp.Diff([]Node{unit(1, 3), unit(2, 4)}, l.Forward(oyster)); !ok || diff != "" {
		t.Errorf("what only a name is known of: %v %s", ok, diff)
	}
	if _, ok := l.Find("nobody's"); ok {
		t.Error("a name that nobody used is found")
	}
	if up, ok := l.Back(unit(2, 2)); !ok || up != unit(1, 1) {
		t.Errorf("2.2 comes from %+v", up)
	}
	if diff := cmp.Diff([]Node{unit(2, 1), unit(2, 3)}, l.Siblings(unit(2, 2))); diff != "" {
		t.Error(diff)
	}
	if l.Siblings(plate3) != nil || l.Root(plate3) != plate3 || l.Root(unit(1, 4)) != unit(1, 4) {
		t.Error("what comes from nothing has no kin")
	}
}

// G1 is the first on grain, each step from grain to grain adds one (P. Stamets, Growing
// Gourmet and Medicinal Mushrooms, 3rd ed., pp. 123, 126-127, by quotation).
func TestGenerations(t *testing.T) {
	loads, cultures := farm(t)
	l := NewLineage(loads, cultures)
	for _, tt := range []struct {
		ref  UnitRef
		want int
	}{{UnitRef{1, 1}, 1}, {UnitRef{1, 3}, 1}, {UnitRef{1, 4}, 0}, {UnitRef{2, 1}, 2}, {UnitRef{3, 1}, 3}, {UnitRef{2, 4}, 1}} {
		if got := l.Generation(UnitNode(tt.ref)); got != tt.want {
			t.Errorf("%v is of generation %d, want %d", tt.ref, got, tt.want)
		}
	}
	at := clock("09:00").AddDate(0, 0, 26)
	for _, tt := range []struct {
		e    Inoculated
		want int
	}{
		{Inoculated{Units: ones(2), From: UnitRef{3, 1}}, OldGeneration},
		{Inoculated{Units: ones(2), Culture: "lc 5"}, OldGeneration},
		{Inoculated{Units: ones(2), Culture: "plate 7"}, 1},
		{Inoculated{Units: ones(2), Culture: "who knows"}, 1},
		{Inoculated{Units: ones(2)}, 1},
	} {
		p, err := l.Inoculating(3, tt.e, at)
		if err != nil || p.Generation != tt.want {
			t.Errorf("%+v: %+v, %v, want %d", tt.e, p, err, tt.want)
		}
	}
	bought := FoldCultures((&teller{}).say("09:00", ana, CultureMade{Name: "master", Kind: GrainMaster}).say("09:01", ana, CultureMade{Name: "spawn", Generation: 3}).records)
	l = NewLineage(loads, bought)
	for name, want := range map[string]int{"master": 2, "spawn": 4} {
		if p, err := l.Inoculating(3, Inoculated{Units: ones(2), Culture: name}, at); err != nil || p.Generation != want {
			t.Errorf("%s: %+v, %v, want %d", name, p, err, want)
		}
	}
}

// A bad parent endangers what came from it and what came with it, as far as it stands.
func TestEndangered(t *testing.T) {
	loads, cultures := farm(t, func(run RunNo, l *teller) {
		if run == 2 {
			l.day(26, "09:00", jo, UnitsUsed{Units: ones(2)}).day(26, "10:00", jo, SignSeen{ones(3), GreenMould})
		}
	})
	l := NewLineage(loads, cultures)
	lc5, _ := l.Find("lc 5")
	want := Kin{Below: []UnitRef{{2, 1}, {3, 1}}, Beside: []UnitRef{{1, 2}}, Used: []UnitRef{{2, 2}}, Cultures: []Node{lc5}}
	if diff := cmp.Diff(want, l.Endangered(UnitNode(UnitRef{1, 1}))); diff != "" {
		t.Error(diff)
	}
	want = Kin{Beside: []UnitRef{{2, 1}, {3, 1}}}
	if diff := cmp.Diff(want, l.Endangered(UnitNode(UnitRef{2, 3}))); diff != "" {
		t.Error(diff)
	}
	p, err := l.Inoculating(3, Inoculated{Units: ones(2), From: UnitRef{2, 3}}, clock("09:00").AddDate(0, 0, 26))
	if err != nil || !p.Bad {
		t.Errorf("from a green one: %+v, %v", p, err)
	}
	p, err = l.Inoculating(3, Inoculated{Units: ones(2), From: UnitRef{2, 2}}, clock("09:00").AddDate(0, 0, 26))
	if err != nil || p.Bad || p.Ended.IsZero() {
		t.Errorf("from a used one: %+v, %v", p, err)
	}
	p, err = l.Inoculating(3, Inoculated{Units: ones(2), From: UnitRef{3, 1}}, clock("09:00").AddDate(0, 0, 27))
	if err != nil || !p.Young {
		t.Errorf("from one that is not grown through: %+v, %v", p, err)
	}
}

func TestLineageRefuses(t *testing.T) {
	l := NewLineage(farm(t))
	at := clock("09:00").AddDate(0, 0, 26)
	for _, tt := range []struct {
		name string
		run  RunNo
		e    Inoculated
		at   time.Time
		want error
	}{
		{"no such run", 3, Inoculated{Units: ones(2), From: UnitRef{8, 1}}, at, NoSuchRun{Run: 8}},
		{"no such unit", 3, Inoculated{Units: ones(2), From: UnitRef{2, 9}}, at, NoSuchUnit{Ref: UnitRef{2, 9}.Ref(), Has: 4}},
		{"nothing on it", 3, Inoculated{Units: ones(2), From: UnitRef{1, 4}}, at, UnitNotYet{Unit: UnitRef{1, 4}, Said: SaidInoculated, State: UnitCooked}},
		{
			"nothing on it then", 3,
			Inoculated{Units: ones(2), From: UnitRef{2, 1}},
			clock("09:00").AddDate(0, 0, 5),
			UnitNotYet{Unit: UnitRef{2, 1}, Said: SaidInoculated, State: UnitInoculated},
		},
		{"from its own grandchild", 1, Inoculated{Units: ones(4, 1), From: UnitRef{3, 1}}, at, OwnAncestor{Unit: UnitRef{1, 1}}},
	} {
		if _, err := l.Inoculating(tt.run, tt.e, tt.at); cmp.Diff(tt.want, err) != "" {
			t.Errorf("%s: %v, want %v", tt.name, err, tt.want)
		}
	}
	for _, tt := range []struct {
		e    CultureMade
		want error
	}{
		{CultureMade{Name: "oyster", FromUnit: UnitRef{2, 4}}, OwnAncestor{Culture: "oyster"}},
		{CultureMade{Name: "lc 6", FromUnit: UnitRef{7, 4}}, NoSuchRun{Run: 7}},
		{CultureMade{Name: "lc 6", FromUnit: UnitRef{2, 4}}, nil},
		{CultureMade{Name: "lc 6"}, nil},
	} {
		if err := l.Making(tt.e, at); cmp.Diff(tt.want, err) != "" {
			t.Errorf("%+v: %v, want %v", tt.e, err, tt.want)
		}
	}
}

func TestLotsAreTraced(t *testing.T) {
	loads, cultures := farm(t, func(run RunNo, l *teller) {
		if run == 2 {
			l.day(26, "09:00", jo, LotSaid{Units: ones(2, 4), What: GrainLot, Name: "rye lot 3"})
		}
	})
	l := NewLineage(loads, cultures)
	if diff := cmp.Diff([]UnitRef{{2, 2}, {2, 4}}, l.OfLot(GrainLot, "Rye lot 3")); diff != "" || l.OfLot(BagLot, "rye lot 3") != nil {
		t.Error(diff)
	}
}

// Whatever came from whatever, said in whatever order, it is trees: nothing is its own
// ancestor, and each tree holds what its root leads to, once.
func TestLineageIsTrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var loads []Units
		var made []Record
		ref := func() UnitRef {
			return UnitRef{RunNo(rapid.IntRange(1, 3).Draw(t, "run")), UnitNo(rapid.IntRange(1, 3).Draw(t, "unit"))}
		}
		for run := RunNo(1); run <= 3; run++ {
			l := (&teller{}).day(3, "09:00", ana, Arrived{Run: run, Order: Order{Items: []Item{{Count: 3, Container: jar(1)}}}})
			for n := UnitNo(1); n <= 3; n++ {
				e := Inoculated{Units: ones(n), Culture: fmt.Sprint("lc ", rapid.IntRange(1, 3).Draw(t, "lc"))}
				if rapid.Bool().Draw(t, "grain to grain") {
					e = Inoculated{Units: ones(n), From: ref()}
				}
				l.day(rapid.IntRange(4, 20).Draw(t, "day"), "09:00", ana, e)
			}
			u, err := FoldArrived(l.records)
			if err != nil {
				t.Fatal(err)
			}
			loads = append(loads, u)
		}
		for i := range EntryNo(3) {
			e := CultureMade{Name: fmt.Sprint("lc ", i+1), FromUnit: ref()}
			made = append(made, Record{No: i + 1, At: clock("09:00").AddDate(0, 0, rapid.IntRange(0, 20).Draw(t, "made")), Entry: e})
		}
		l := NewLineage(loads, FoldCultures(made))
		roots := map[Node]bool{}
		for n := range l.parent {
			if line := l.Line(n); len(line) > 12 {
				t.Fatalf("%+v comes from itself: %+v", n, line)
			}
			roots[l.Root(n)] = true
			l.Generation(n)
		}
		size := 0
		for r := range roots {
			size += l.Tree(r).Size()
		}
		if size != len(l.parent)+len(roots) {
			t.Fatalf("%d in trees, of %d and %d roots", size, len(l.parent), len(roots))
		}
	})
}

// BenchmarkLineage links ten years of a busy collective: 5,000 loads of eight.
func BenchmarkLineage(b *testing.B) {
	var loads []Units
	for run := RunNo(1); run <= 5000; run++ {
		l := (&teller{}).day(3, "09:00", ana, Arrived{Run: run, Order: Order{Items: []Item{{Count: 8, Container: jar(1)}}}})
		e := Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7, 8), Culture: fmt.Sprint("lc ", int(run)%300)}
		if run%4 > 0 {
			e.Culture, e.From = "", UnitRef{run - 1, 1}
		}
		u, err := FoldArrived(l.day(4, "09:00", ana, e).records)
		if err != nil {
			b.Fatal(err)
		}
		loads = append(loads, u)
	}
	for b.Loop() {
		l := NewLineage(loads, Cultures{})
		if n, ok := l.Find("lc 4"); !ok || len(l.Tree(n).Units()) == 0 {
			b.Fatal("nothing came of it")
		}
	}
}

// BenchmarkFoldUnits folds a load of eight with some sixty entries.
func BenchmarkFoldUnits(b *testing.B) {
	l := sealed()
	run := l.run(b, pot())
	for d := 3; d < 33; d++ {
		l.day(d, "21:00", ana, Shaken{ones(1, 2, 3)}).day(d, "22:00", ana, GrowthSeen{ones(1, 2), 0.3})
	}
	for b.Loop() {
		FoldUnits(run, l.records)
	}
}

// What the book keeps of units is enough to say what came from what, whatever part of
// them is read.
func TestLineageOfKeptUnits(t *testing.T) {
	loads, cultures := farm(t)
	var kept []KeptUnit
	for _, load := range loads {
		for _, u := range load.All {
			u.Steps = nil
			kept = append(kept, KeptUnit{Unit: u, Size: len(load.All)})
		}
	}
	whole, again := NewLineage(loads, cultures), NewLineageOf(append(kept, kept...), cultures)
	plate3, _ := whole.Find("plate 3")
	if got, want := drawn(again, again.Tree(plate3)), drawn(whole, whole.Tree(plate3)); got != want {
		t.Errorf("%s, want %s", got, want)
	}
	some := NewLineageOf(kept[1:2], cultures)
	if got := drawn(some, some.Tree(plate3)); got != "plate 3(plate 7(#1.2))" {
		t.Errorf("of one unit: %s", got)
	}
	_, err := some.Inoculating(3, Inoculated{Units: ones(1), From: UnitRef{1, 4}}, clock("09:00"))
	if diff := cmp.Diff(NoSuchUnit{Ref: UnitRef{1, 4}.Ref(), Has: 4}, err); diff != "" {
		t.Error(diff)
	}
}
