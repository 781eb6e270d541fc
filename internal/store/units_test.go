package store_test

import (
	"context"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"ryebell/internal/calc/grain"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func day(n int) time.Time { return morning.AddDate(0, 0, n) }

// fullUnit is a unit of which everything was said.
func fullUnit(run kitchen.RunNo, no kitchen.UnitNo) kitchen.Unit {
	return kitchen.Unit{
		Ref:       kitchen.UnitRef{Run: run, Unit: no},
		Container: kitchen.Container{Vessel: kitchen.Bag, Volume: 3.5, Weight: 2268}, Grain: grain.Millet,
		Name: "Big Bertha", Place: "tent", Spot: kitchen.InnerOnes, Tags: []string{"Fast", "best", "a \"quoted\" one"},
		Lots:  []kitchen.UnitLot{{What: kitchen.LidLot, Name: "red lids"}, {What: kitchen.GrainLot, Name: "Rye Lot 3"}},
		State: kitchen.UnitSuspect, Since: day(9), By: 2, Before: kitchen.UnitGrown,
		Blank: true, Cultured: true, Inoculated: day(3), InoculatedBy: 1, Culture: "Plate 7", Species: "blue oyster",
		From: kitchen.UnitRef{Run: 1, Unit: 1}, Route: kitchen.GrainToGrain, Volume: 0.01, Share: 0.75, Left: 0.25,
		Seen: day(6), Shook: day(4), Rested: 36 * time.Hour,
		Loss: kitchen.Loss{What: kitchen.UnitContaminated, Sign: kitchen.GreenMould, At: day(8), By: 2},
		Steps: []kitchen.UnitStep{
			{Kind: kitchen.SaidShaken, At: day(1), Seen: true}, // of a culture before
			{Kind: kitchen.SaidShaken, At: day(4), Seen: true},
			{Kind: kitchen.SaidShaken, At: day(5), Seen: true},
			{Kind: kitchen.SaidGrownThrough, At: day(7), Seen: true},
		},
	}
}

// rowOf is what is to be read of a unit.
func rowOf(us kitchen.Units, i int) store.UnitRow {
	u := us.All[i]
	u.Steps = nil
	return store.UnitRow{Unit: u, Begun: us.Begun, Cool: us.Cool, Arrived: us.Arrived, Size: len(us.All)}
}

func saveUnits(t *testing.T, db *store.DB, k kitchenOf, us kitchen.Units) {
	t.Helper()
	storetest.Update(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		if err := b.SaveRun(store.RunRow{No: us.Run, Begun: us.Begun, State: store.EndedRun, Arrived: us.Arrived}); err != nil {
			return err
		}
		return b.SaveUnits(us)
	})
}

// shelf is a book with two loads: one of a full unit and two bare ones, one that
// arrived.
func shelf(t *testing.T) (db *store.DB, k kitchenOf, made, arrived kitchen.Units) {
	t.Helper()
	db = storetest.Open(t)
	k = found(t, db, "room")
	bare := func(run kitchen.RunNo, no kitchen.UnitNo, s kitchen.UnitState) kitchen.Unit {
		return kitchen.Unit{Ref: kitchen.UnitRef{Run: run, Unit: no}, State: s, Since: morning, Left: 1}
	}
	made = kitchen.Units{Run: 2, Begun: morning, Cool: day(1), All: []kitchen.Unit{
		fullUnit(2, 1), bare(2, 2, kitchen.UnitUsed), bare(2, 3, kitchen.UnitCooked),
	}}
	arrived = kitchen.Units{Run: 1, Begun: morning, Arrived: true, All: []kitchen.Unit{bare(1, 1, kitchen.UnitGrown)}}
	saveUnits(t, db, k, made)
	saveUnits(t, db, k, arrived)
	return db, k, made, arrived
}

func TestUnitsAreFound(t *testing.T) {
	db, k, made, arrived := shelf(t)
	full, used, cooked, bought := rowOf(made, 0), rowOf(made, 1), rowOf(made, 2), rowOf(arrived, 0)
	for _, tt := range []struct {
		name string
		ask  func(*store.Book) ([]store.UnitRow, error)
		want []store.UnitRow
	}{
		{"standing", (*store.Book).StandingUnits, []store.UnitRow{bought, full, cooked}},
		{"of a load", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLoad(2) }, []store.UnitRow{full, used, cooked}},
		{"of no load", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLoad(3) }, nil},
		{"by number", func(b *store.Book) ([]store.UnitRow, error) {
			return b.UnitRows([]kitchen.UnitRef{{Run: 2, Unit: 3}, {Run: 1, Unit: 1}, {Run: 2, Unit: 3}, {Run: 7, Unit: 1}})
		}, []store.UnitRow{bought, cooked}},
		{"of cultures", func(b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsOfCultures([]string{"pink", "PLATE 7"}, 1000)
		}, []store.UnitRow{full}},
		{"of no culture", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfCultures([]string{""}, 1000) }, nil},
		{"taken of", func(b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsTakenOf([]kitchen.UnitRef{{Run: 1, Unit: 1}, {Run: 2, Unit: 1}})
		}, []store.UnitRow{full}},
		{"of a lot", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLot(kitchen.GrainLot, "rye lot 3", 1000) }, []store.UnitRow{full}},
		{"of a lot of another kind", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLot(kitchen.BagLot, "rye lot 3", 1000) }, nil},
		{"tagged", func(b *store.Book) ([]store.UnitRow, error) { return b.UnitsTagged("FAST", 1000) }, []store.UnitRow{full}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			storetest.View(t, db, func(tx *store.Tx) error {
				got, err := tt.ask(tx.Book(k.id))
				if d := cmp.Diff(tt.want, got); d != "" {
					t.Error(d)
				}
				return err
			})
		})
	}
}

// TestGrownUnitsAreThoseOfTheRecord holds that what is read back is what the kitchen
// learns of a unit: its first shake beside the mixing, no lost ones, and of a culture
// whose species nobody said its name.
func TestGrownUnitsAreThoseOfTheRecord(t *testing.T) {
	db, k, _, _ := shelf(t)
	load := kitchen.Units{Run: 3, Begun: morning}
	for no := range kitchen.UnitNo(6) {
		u := fullUnit(3, no+1)
		u.Loss, u.State = kitchen.Loss{}, kitchen.UnitGrown
		load.All = append(load.All, u)
	}
	load.All[0].Steps = load.All[0].Steps[:3] // never grown through
	load.All[1].Inoculated = time.Time{}      // nobody knows when
	load.All[2].Steps = []kitchen.UnitStep{{Kind: kitchen.SaidGrownThrough, At: day(4), Seen: true}}
	load.All[3].Loss = kitchen.Loss{What: kitchen.UnitContaminated, Sign: kitchen.GreenMould, At: day(8)}
	load.All[4].Species = ""
	saveUnits(t, db, k, load)
	var want []store.GrownRow
	for _, no := range []kitchen.UnitNo{6, 3, 5} { // the newest of each species first
		g, ok := load.All[no-1].Grown()
		if !ok {
			t.Fatalf("%d did not grow through", no)
		}
		want = append(want, store.GrownRow{
			Ref: g.Unit, Species: g.Species, Container: g.Container, Route: g.Route, Inoculated: g.Inoculated, Shaken: g.Shaken, Through: g.Through,
		})
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		for each, want := range map[int][]store.GrownRow{1: {want[0], want[2]}, 2: want} {
			got, err := tx.Book(k.id).GrownUnits(each)
			if err != nil {
				return err
			}
			if d := cmp.Diff(want, got, cmpopts.SortSlices(func(a, b store.GrownRow) bool { return a.Ref.Unit < b.Ref.Unit })); d != "" {
				t.Errorf("at most %d of each: %s", each, d)
			}
		}
		return nil
	})
}

func TestSavingReplacesTheRowsOfALoad(t *testing.T) {
	db, k, made, arrived := shelf(t)
	made.All = made.All[2:]
	made.All[0].Tags = []string{"kept"}
	saveUnits(t, db, k, made)
	storetest.View(t, db, func(tx *store.Tx) error {
		got, err := tx.Book(k.id).StandingUnits()
		if d := cmp.Diff([]store.UnitRow{rowOf(arrived, 0), rowOf(made, 0)}, got); d != "" {
			t.Error(d)
		}
		return err
	})
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(k.id).DropUnits(2) })
	storetest.View(t, db, func(tx *store.Tx) error {
		got, err := tx.Book(k.id).StandingUnits()
		if d := cmp.Diff([]store.UnitRow{rowOf(arrived, 0)}, got); d != "" {
			t.Error(d)
		}
		tagged, err2 := tx.Book(k.id).UnitsTagged("kept", 1000)
		if err2 != nil || len(tagged) != 0 {
			t.Errorf("the tags of a dropped load: %v %v", tagged, err2)
		}
		return err
	})
	if err := db.Examine(context.Background()); err != nil {
		t.Error(err)
	}
}

func TestUnitsWithoutARunAreRefused(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	err := db.Update(context.Background(), func(tx *store.Tx) error {
		return tx.Book(k.id).SaveUnits(kitchen.Units{Run: 7, Begun: morning, All: []kitchen.Unit{fullUnit(7, 1)}})
	})
	if err == nil {
		t.Error("units of a run that isn't listed were taken")
	}
}

func TestArrivedLoadsAreNoRuns(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	rows := []store.RunRow{
		{No: 1, Begun: morning, Cook: k.ana, State: store.OpenRun},
		{No: 2, Begun: morning, Cook: k.ana, State: store.OpenRun, Arrived: true},
	}
	storetest.Update(t, db, func(tx *store.Tx) error {
		for _, r := range rows {
			if err := tx.Book(k.id).SaveRun(r); err != nil {
				return err
			}
		}
		return nil
	})
	storetest.View(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		for name, list := range map[string]func() ([]store.RunRow, error){
			"open": b.OpenRuns, "last": func() ([]store.RunRow, error) { return b.LastRuns(9) },
			"last of a cook": func() ([]store.RunRow, error) { return b.LastRunsOf(k.ana, 9) },
		} {
			got, err := list()
			if d := cmp.Diff(rows[:1], got); d != "" || err != nil {
				t.Errorf("%s: %v %s", name, err, d)
			}
		}
		if r, err := b.Run(2); err != nil || !r.Arrived {
			t.Errorf("run 2 is %+v, %v", r, err)
		}
		if no, err := b.NextRun(); err != nil || no != 3 {
			t.Errorf("next is %v, %v; want 3", no, err)
		}
		return nil
	})
}

func TestUnitsBehind(t *testing.T) {
	db, k, _, _ := shelf(t)
	storetest.Update(t, db, func(tx *store.Tx) error {
		for no := kitchen.RunNo(3); no <= 6; no++ {
			r := store.RunRow{No: no, Begun: morning, State: store.OpenRun}
			if no == 5 {
				r.State = store.TakenBack
			}
			if err := tx.Book(k.id).SaveRun(r); err != nil {
				return err
			}
		}
		return tx.Book(k.id).DropUnits(6)
	})
	storetest.View(t, db, func(tx *store.Tx) error {
		for limit, want := range map[int][]kitchen.RunNo{1: {3}, 9: {3, 4}} {
			got, err := tx.Book(k.id).UnitsBehind(limit)
			if d := cmp.Diff(want, got); d != "" || err != nil {
				t.Errorf("at most %d: %v %s", limit, err, d)
			}
		}
		return nil
	})
}
