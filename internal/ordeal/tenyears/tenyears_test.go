package tenyears

import (
	"context"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func spring() time.Time { return time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC) }

func written(t *testing.T, db *store.DB, size Size) Book {
	t.Helper()
	b, err := Write(context.Background(), db, size)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A young book has a fortieth of what one of ten years has, and as much on the shelf.
func TestYoungBook(t *testing.T) {
	db := storetest.Open(t)
	b := written(t, db, Young(spring()))
	for name, n := range map[string][3]int{
		"loads": {b.Loads, 120, 135}, "units": {b.Units, 900, 1100}, "entries": {b.Entries, 6500, 8000},
		"standing": {b.Standing, 120, 190}, "strays": {b.Strays, 0, 0},
	} {
		if n[0] < n[1] || n[0] > n[2] {
			t.Errorf("%d %s, want %d to %d", n[0], name, n[1], n[2])
		}
	}
	if err := db.Examine(context.Background()); err != nil {
		t.Error(err)
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		book := tx.Book(b.Collective)
		for name, ask := range map[string]func() ([]store.UnitRow, error){
			"of the culture": func() ([]store.UnitRow, error) { return book.UnitsOfCultures([]string{b.Culture}, 1000) },
			"of the lot":     func() ([]store.UnitRow, error) { return book.UnitsOfLot(kitchen.GrainLot, b.Lot, 1000) },
			"taken of":       func() ([]store.UnitRow, error) { return book.UnitsTakenOf([]kitchen.UnitRef{b.Parent}) },
			"of the load":    func() ([]store.UnitRow, error) { return book.UnitsOfLoad(b.Run) },
		} {
			rows, err := ask()
			if err != nil || len(rows) == 0 {
				t.Errorf("units %s: %d, %v", name, len(rows), err)
			}
		}
		return agrees(t, book, b.Loads)
	})
}

// agrees holds the rows of every load against the entries in the book, and what came
// of what against the trade.
func agrees(t *testing.T, book *store.Book, loads int) error {
	t.Helper()
	changes, err := book.Standing("kitchen")
	if err != nil {
		return err
	}
	var all []kitchen.Units
	for no := kitchen.RunNo(1); int(no) <= loads; no++ {
		records, err := book.Standing(no.Subject())
		if err != nil {
			return err
		}
		ld := load{no: no, records: records}
		if e, ok := records[0].Entry.(kitchen.Arrived); ok {
			ld.arrived = &e
		}
		f := ld.fold(kitchen.SettingsAt(changes))
		rows, err := book.UnitsOfLoad(no)
		if err != nil || f.err != nil {
			t.Fatalf("load %d: %v, %v", no, err, f.err)
		}
		if len(f.run.Strays)+len(f.units.Strays) > 0 {
			t.Errorf("load %d has strays: %+v %+v", no, f.run.Strays, f.units.Strays)
		}
		var want []store.UnitRow
		for _, u := range f.units.All {
			u.Steps = nil
			want = append(want, store.UnitRow{Unit: u, Begun: f.units.Begun, Cool: f.units.Cool, Arrived: f.units.Arrived, Size: len(f.units.All)})
		}
		if d := cmp.Diff(want, rows); d != "" {
			t.Fatalf("load %d: %s", no, d)
		}
		all = append(all, f.units)
	}
	records, err := book.Standing(kitchen.CulturesSubject)
	if err != nil {
		return err
	}
	carriedOn(t, all, records)
	return nil
}

// carriedOn looks for grain that was carried on to grain three times, and no more.
func carriedOn(t *testing.T, all []kitchen.Units, records []kitchen.Record) {
	t.Helper()
	cultures := kitchen.FoldCultures(records)
	if len(cultures.Strays) > 0 {
		t.Errorf("cultures have strays: %+v", cultures.Strays)
	}
	line := kitchen.NewLineage(all, cultures)
	seen := map[int]int{}
	for _, us := range all {
		for _, u := range us.All {
			seen[line.Generation(kitchen.UnitNode(u.Ref))]++
		}
	}
	for g := range lastGeneration + 1 {
		if seen[g] == 0 {
			t.Errorf("no unit of generation %d: %v", g, seen)
		}
	}
}

func TestTheSameSizeGivesTheSameBook(t *testing.T) {
	var sums [3]any
	for i, seed := range []uint64{7, 7, 8} {
		folder := t.TempDir()
		db := storetest.OpenIn(t, folder)
		written(t, db, Size{End: spring(), Days: 20, Seed: seed})
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
		c, err := storetest.Alike(folder)
		if err != nil {
			t.Fatal(err)
		}
		sums[i] = c.Sum()
	}
	if sums[0] != sums[1] || sums[1] == sums[2] {
		t.Errorf("the first two are to be equal, the last another: %x", sums)
	}
}
