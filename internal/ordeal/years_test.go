package ordeal

import (
	"context"
	"fmt"
	"testing"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/ordeal/tenyears"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// years is a book of a busy collective, and what is asked of it.
type years struct {
	tenyears.Book
	db *store.DB
}

func spring() time.Time { return time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC) }

func lived(tb testing.TB, size tenyears.Size) years {
	tb.Helper()
	db := storetest.Open(tb)
	b, err := tenyears.Write(context.Background(), db, size)
	if err != nil {
		tb.Fatal(err)
	}
	return years{b, db}
}

// question is one that is asked of the book, or an entry that is written.
type question struct {
	name string
	ask  func(y years, b *store.Book) (rows int, err error)
}

func asked[T any](f func(y years, b *store.Book) ([]T, error)) func(years, *store.Book) (int, error) {
	return func(y years, b *store.Book) (int, error) {
		all, err := f(y, b)
		return len(all), err
	}
}

// questions are what answers read, and what grows with the years by its nature: all
// that was ever said of cultures, bookings, starts, gear and the kitchen.
func questions() []question {
	subject := func(s string) func(years, *store.Book) (int, error) {
		return asked(func(_ years, b *store.Book) ([]kitchen.Record, error) { return b.Standing(s) })
	}
	return []question{
		{"standing units", asked(func(_ years, b *store.Book) ([]store.UnitRow, error) { return b.StandingUnits() })},
		{"units of a load", asked(func(y years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLoad(y.Run) })},
		{"units of a culture", asked(func(y years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfCultures([]string{y.Culture}) })},
		{"units of a lot", asked(func(y years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLot(kitchen.GrainLot, y.Lot) })},
		{"units taken of one", asked(func(y years, b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsTakenOf([]kitchen.UnitRef{y.Parent})
		})},
		{"units tagged", asked(func(_ years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsTagged("test") })},
		{"grown units", asked(func(_ years, b *store.Book) ([]store.GrownRow, error) { return b.GrownUnits(200) })},
		{"units behind", asked(func(_ years, b *store.Book) ([]kitchen.RunNo, error) { return b.UnitsBehind(10) })},
		{"open runs", asked(func(_ years, b *store.Book) ([]store.RunRow, error) { return b.OpenRuns() })},
		{"last runs", asked(func(_ years, b *store.Book) ([]store.RunRow, error) { return b.LastRuns(10) })},
		{"fold of a load", foldOfLoad},
		{"cultures", subject(kitchen.CulturesSubject)},
		{"bookings", subject(kitchen.BookingsSubject)},
		{"starts", subject("start")},
		{"gear", subject(kitchen.GearSubject)},
		{"kitchen", subject("kitchen")},
	}
}

// foldOfLoad is a load from its entries, as an answer folds it.
func foldOfLoad(y years, b *store.Book) (int, error) {
	changes, err := b.Standing("kitchen")
	if err != nil {
		return 0, err
	}
	records, err := b.Standing(y.Run.Subject())
	if err != nil {
		return 0, err
	}
	run, err := kitchen.FoldRun(records, kitchen.SettingsAt(changes))
	return len(kitchen.FoldUnits(run, records).All), err
}

// BenchmarkYears asks the same of a book of three months and of one of ten years.
// Nothing is to take more than half as long again, but what reads all there is.
func BenchmarkYears(b *testing.B) {
	for _, book := range []struct {
		name string
		size tenyears.Size
	}{{"young", tenyears.Young(spring())}, {"old", tenyears.Old(spring())}} {
		y := lived(b, book.size)
		b.Logf("%s: %d loads, %d units of which %d stand, %d entries", book.name, y.Loads, y.Units, y.Standing, y.Entries)
		for _, q := range questions() {
			b.Run(fmt.Sprintf("%s/%s", q.name, book.name), func(b *testing.B) { y.measure(b, q) })
		}
		b.Run("append/"+book.name, y.appends)
		b.Run("save units/"+book.name, y.saves)
	}
}

func (y years) measure(b *testing.B, q question) {
	rows := 0
	for b.Loop() {
		err := y.db.View(b.Context(), func(tx *store.Tx) (err error) {
			rows, err = q.ask(y, tx.Book(y.Collective))
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(rows), "rows")
}

// appends writes one entry a transaction.
func (y years) appends(b *testing.B) {
	for b.Loop() {
		err := y.db.Update(b.Context(), func(tx *store.Tx) error {
			line := store.Line{By: 1, Room: y.Room, At: spring(), Written: spring(), Subject: "bench", Entry: kitchen.StepIs{Step: 10}, Said: "round to 10 g"}
			_, err := tx.Book(y.Collective).Append(line)
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// saves replaces the rows of a load by the same.
func (y years) saves(b *testing.B) {
	us := kitchen.Units{Run: y.Run, Begun: spring()}
	storetest.View(b, y.db, func(tx *store.Tx) error {
		rows, err := tx.Book(y.Collective).UnitsOfLoad(y.Run)
		for _, r := range rows {
			us.All = append(us.All, r.Unit)
		}
		return err
	})
	for b.Loop() {
		err := y.db.Update(b.Context(), func(tx *store.Tx) error { return tx.Book(y.Collective).SaveUnits(us) })
		if err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(us.All)), "rows")
}
