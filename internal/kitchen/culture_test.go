package kitchen

import (
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestCultures(t *testing.T) {
	l := (&teller{}).
		day(2, "09:00", ana, CultureMade{Name: "plate 3", Kind: Plate, Species: "oyster", Owner: ana}).
		day(4, "09:00", jo, CultureMade{Name: "plate 7", Kind: Plate, From: "Plate 3", Made: clock("09:00").AddDate(0, 0, 1)}).
		day(5, "09:00", jo, CultureMade{Name: "lc 1", Kind: LiquidBottle, From: "plate 7", Volume: 0.5}).
		day(6, "09:00", jo, CultureMade{Name: "king lc", Kind: LiquidBottle, From: "a friend's plate"}).
		day(7, "09:00", mik, CultureEnded{Name: "lc 1", How: CultureWentBad}).
		day(8, "09:00", jo, CultureMade{Name: "LC 1", From: "lc 1"})
	c := FoldCultures(l.records)
	if len(c.Strays) > 0 || len(c.All) != 5 {
		t.Fatalf("%+v", c)
	}
	for i, want := range []struct {
		parent    EntryNo
		transfers int
		species   string
	}{{0, 0, "oyster"}, {1, 1, "oyster"}, {2, 2, "oyster"}, {0, 1, ""}, {3, 3, "oyster"}} {
		if x := c.All[i]; x.Parent != want.parent || x.Transfers != want.transfers || x.Species != want.species {
			t.Errorf("%s: %+v, want %+v", x.Name, x, want)
		}
	}
	bad, _ := c.Numbered(3)
	if bad.How != CultureWentBad || bad.EndedBy != mik || bad.At(clock("09:00").AddDate(0, 0, 6)) || !bad.At(clock("09:00").AddDate(0, 0, 4)) {
		t.Errorf("%+v", bad)
	}
	now := clock("09:00").AddDate(0, 1, 0)
	if x, ok := c.Named("lc 1", now); !ok || x.No != 6 {
		t.Errorf("the newest of the name: %+v", x)
	}
	if x, ok := c.Named("lc 1", clock("12:00").AddDate(0, 0, 4)); !ok || x.No != 3 {
		t.Errorf("the one of that day: %+v", x)
	}
}

func TestCulturesRefuse(t *testing.T) {
	on := func(d int) time.Time { return clock("09:00").AddDate(0, 0, d-2) }
	c := FoldCultures((&teller{}).
		day(2, "09:00", ana, CultureMade{Name: "plate 3"}).
		day(3, "09:00", ana, CultureMade{Name: "plate 7", From: "the old one"}).
		day(4, "09:00", ana, CultureMade{Name: "plate 8", From: "plate 7"}).
		day(5, "09:00", ana, CultureEnded{Name: "plate 8"}).records)
	for _, tt := range []struct {
		name string
		e    CultureEntry
		want error
	}{
		{"there already", CultureMade{Name: "Plate 3"}, CultureKnown{Name: "plate 3", Made: on(2)}},
		{"from itself", CultureMade{Name: "plate 9", From: "plate 9"}, OwnAncestor{Culture: "plate 9"}},
		{"from its grandchild", CultureMade{Name: "the old one", From: "plate 8"}, OwnAncestor{Culture: "the old one"}},
		{"no such", CultureEnded{Name: "plate 1"}, NoSuchCulture{Name: "plate 1"}},
		{"over already", CultureEnded{Name: "plate 8"}, CultureOver{Name: "plate 8", Ended: on(5)}},
		{"tomorrow", CultureMade{Name: "plate 9", Made: on(12)}, InFuture{At: on(12), Told: on(9)}},
		{"a barrel", CultureMade{Name: "lc", Volume: 200}, OutOfRange{What: CultureVolume, Got: 200, High: 20}},
		{"before the one that has its name", CultureMade{Name: "plate 7", Made: on(2)}, CultureKnown{Name: "plate 7", Made: on(2)}},
	} {
		next, err := c.Apply(Record{No: 9, By: jo, At: on(9), Written: on(9), Entry: tt.e})
		if diff := cmp.Diff(tt.want, err); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
		if len(next.All) != len(c.All) {
			t.Errorf("%s: refused and changed all the same", tt.name)
		}
	}
	next, err := c.Apply(Record{No: 9, By: jo, At: on(9), Written: on(9), Entry: CultureMade{Name: "plate 9", From: "plate 3"}})
	if x, ok := next.Numbered(9); err != nil || !ok || x.Parent != 1 {
		t.Errorf("%+v, %v", x, err)
	}
}

// Whatever is said of cultures and in whatever order: none is its own ancestor, and
// what was taken back leaves no trace.
func TestAnythingOfCultures(t *testing.T) {
	names := []string{"a", "b", "c", "d", ""}
	rapid.Check(t, func(t *rapid.T) {
		var c Cultures
		var records []Record
		for i := range rapid.IntRange(1, 25).Draw(t, "entries") {
			at := clock("09:00").Add(time.Duration(rapid.IntRange(0, 50).Draw(t, "at"))*time.Hour + time.Duration(i)*time.Second)
			name := rapid.SampledFrom(names[:4]).Draw(t, "name")
			var e Entry = CultureMade{Name: name, From: rapid.SampledFrom(names).Draw(t, "from")}
			if rapid.IntRange(0, 2).Draw(t, "ends") == 0 {
				e = CultureEnded{Name: name}
			}
			rec := Record{No: EntryNo(i + 1), By: ana, At: at, Written: clock("09:00").AddDate(0, 1, 0), Entry: e}
			next, err := c.Apply(rec)
			if err != nil {
				continue
			}
			if diff := cmp.Diff(c.All, FoldCultures(records).All); diff != "" {
				t.Fatalf("undo of %+v:\n%s", rec, diff)
			}
			c, records = next, append(records, rec)
		}
		if diff := cmp.Diff(c.All, FoldCultures(rapid.Permutation(records).Draw(t, "order")).All); diff != "" {
			t.Fatalf("in another order:\n%s", diff)
		}
		l := NewLineage(nil, c)
		for _, x := range c.All {
			n := Node{Culture: x.No}
			for i, up := range l.Line(n) {
				if up == n || i > len(c.All) {
					t.Fatalf("%s is its own ancestor", x.Name)
				}
			}
			if x.Parent != 0 && x.Parent == x.No {
				t.Fatalf("%+v is its own parent", x)
			}
		}
	})
}

// TestLongLine holds that a line of cultures, each from the one before, is folded in the
// time that it takes to read it: ten years of plates are thousands.
func TestLongLine(t *testing.T) {
	var records []Record
	for i := range 3000 {
		made := CultureMade{Name: fmt.Sprintf("plate %d", i+1), Species: "oyster"}
		if i > 0 {
			made.From = fmt.Sprintf("Plate %d", i)
		}
		at := clock("09:00").Add(time.Duration(i) * time.Hour)
		records = append(records, Record{No: EntryNo(2*i + 1), By: ana, At: at, Written: at, Entry: made})
		at = at.Add(40 * time.Hour)
		records = append(records, Record{No: EntryNo(2*i + 2), By: ana, At: at, Written: at, Entry: CultureEnded{Name: made.Name, How: CultureUsedUp}})
	}
	begun := time.Now()
	c := FoldCultures(records)
	if took := time.Since(begun); took > 2*time.Second {
		t.Errorf("%d entries took %s", len(records), took)
	}
	if last := c.All[len(c.All)-1]; len(c.Strays) > 0 || last.Transfers != 2999 || last.Ended.IsZero() {
		t.Errorf("%d strays; the last is %+v", len(c.Strays), last)
	}
}
