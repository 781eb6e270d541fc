package ordeal

import (
	"context"
	"fmt"
	"sync/atomic"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/answer"
	"ryebell/internal/kitchen"
	"ryebell/internal/ordeal/tenyears"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// years is a book of a busy collective, and what is asked of it.
type years struct {
	tenyears.Book
	db       *store.DB
	answerer *answer.Answerer
	said     *atomic.Int64 // messages
}

func spring() time.Time { return time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC) }

func lived(tb testing.TB, size tenyears.Size) years {
	tb.Helper()
	db := storetest.Open(tb)
	b, err := tenyears.Write(context.Background(), db, size)
	if err != nil {
		tb.Fatal(err)
	}
	return years{b, db, answer.New(db, answer.Config{Weekly: weekly}), new(atomic.Int64)}
}

// question is one that is asked of the book, or an entry that is written.
type question struct {
	name string
	ask  func(y years, b *store.Book) error
}

func asked[T any](f func(y years, b *store.Book) ([]T, error)) func(years, *store.Book) error {
	return func(y years, b *store.Book) error {
		_, err := f(y, b)
		return err
	}
}

// questions are what answers read, and what grows with the years by its nature: all
// that was ever said of cultures, bookings, starts, gear and the kitchen.
func questions() []question {
	subject := func(s string) func(years, *store.Book) error {
		return asked(func(_ years, b *store.Book) ([]kitchen.Record, error) { return b.Standing(s) })
	}
	return []question{
		{"standing units", asked(func(_ years, b *store.Book) ([]store.UnitRow, error) { return b.StandingUnits() })},
		{"units of a load", asked(func(y years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsOfLoad(y.Run) })},
		{"units of a culture", asked(func(y years, b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsOfCultures([]string{y.Culture}, 1000)
		})},
		{"units of a lot", asked(func(y years, b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsOfLot(kitchen.GrainLot, y.Lot, 1000)
		})},
		{"units taken of one", asked(func(y years, b *store.Book) ([]store.UnitRow, error) {
			return b.UnitsTakenOf([]kitchen.UnitRef{y.Parent})
		})},
		{"units tagged", asked(func(_ years, b *store.Book) ([]store.UnitRow, error) { return b.UnitsTagged("test", 1000) })},
		{"grown units", asked(func(_ years, b *store.Book) ([]store.GrownRow, error) { return b.GrownUnits(60) })},
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
func foldOfLoad(y years, b *store.Book) error {
	changes, err := b.Standing("kitchen")
	if err != nil {
		return err
	}
	records, err := b.Standing(y.Run.Subject())
	if err != nil {
		return err
	}
	run, err := kitchen.FoldRun(records, kitchen.SettingsAt(changes))
	kitchen.FoldUnits(run, records)
	return err
}

// BenchmarkYears asks the same of a book of three months and of one of ten years, in
// turns, and reports the quickest of each, which what else the machine does changes
// least. Nothing is to take more than half as long again on the old book, but what
// reads all there is, and what takes less than a tenth of a second.
func BenchmarkYears(b *testing.B) {
	both := [2]years{lived(b, tenyears.Young(spring())), lived(b, tenyears.Old(spring()))}
	for _, y := range both {
		b.Logf("%d loads, %d units of which %d stand, %d entries", y.Loads, y.Units, y.Standing, y.Entries)
	}
	yearsOf(b, both)
}

func yearsOf(b *testing.B, both [2]years) {
	for _, q := range questions() {
		b.Run(q.name, func(b *testing.B) {
			alternate(b, both, func(y years) error {
				return y.db.View(b.Context(), func(tx *store.Tx) error { return q.ask(y, tx.Book(y.Collective)) })
			})
		})
	}
	b.Run("append", func(b *testing.B) { alternate(b, both, years.appends) })
	b.Run("save units", func(b *testing.B) { alternate(b, both, years.saves) })
	for i := range both[0].texts() {
		text := both[0].texts()[i]
		b.Run("turn "+text, func(b *testing.B) {
			alternate(b, both, func(y years) error { return y.turn(b, y.texts()[i]) })
		})
	}
}

// alternate does the same with both books, and reports the quickest of each in
// microseconds.
func alternate(b *testing.B, both [2]years, do func(years) error) {
	var best [2]time.Duration
	for b.Loop() {
		for i, y := range both {
			start := time.Now()
			if err := do(y); err != nil {
				b.Fatal(err)
			}
			if took := time.Since(start); best[i] == 0 || took < best[i] {
				best[i] = took
			}
		}
	}
	b.ReportMetric(float64(best[0].Microseconds()), "young-us")
	b.ReportMetric(float64(best[1].Microseconds()), "old-us")
	b.ReportMetric(float64(best[1])/float64(best[0]), "old/young")
}

// appends writes one entry in a transaction.
func (y years) appends() error {
	return y.db.Update(context.Background(), func(tx *store.Tx) error {
		line := store.Line{By: 1, Room: y.Room, At: spring(), Written: spring(), Subject: "bench", Entry: kitchen.StepIs{Step: 10}, Said: "round to 10 g"}
		_, err := tx.Book(y.Collective).Append(line)
		return err
	})
}

// saves replaces the rows of a load by the same.
func (y years) saves() error {
	return y.db.Update(context.Background(), func(tx *store.Tx) error {
		b := tx.Book(y.Collective)
		rows, err := b.UnitsOfLoad(y.Run)
		if err != nil {
			return err
		}
		us := kitchen.Units{Run: y.Run, Begun: spring()}
		for _, r := range rows {
			us.All = append(us.All, r.Unit)
		}
		return b.SaveUnits(us)
	})
}

// texts are messages whose answers read or write of what there is much of.
func (y years) texts() []string {
	run := y.Run.String()
	return []string{
		"anyone want pizza", "3 bags 5lb agar", "who's cooking", "my runs", "log " + run, "round to 10 g", run + ".1 is 21",
		"shelf", "what's ready", "cultures", "shook " + run, run + ".1 looks odd", "log " + run + ".1", "trace " + y.Culture, "trace " + y.Lot,
		"trace oyster", "trace #test", "trace " + run + ".1", "where is " + run + ".1", "how many oysters", "what's oldest", "when is " + run + ".1 grown through",
		run + ".2 green", "undo",
		"room 14C", "rest 3 days before inoculating", "no rest before inoculating", "4 quarts rye oyster on the shelf since 20 feb", "book the big pot tomorrow 9-13",
	}
}

// turn is from the message to the committed answer.
func (y years) turn(b *testing.B, text string) error {
	y.said.Add(1)
	return y.answerer.Turn(b.Context(), chat.Message{
		Event: fmt.Sprint("asked ", y.said.Load()), Room: chat.Room{Door: chat.Console, ID: "kitchen"}, Text: text, At: spring(), Arrived: spring(),
		From: chat.Person{Door: chat.Console, ID: "robin", Name: "Robin"}, Audience: chat.Group, Address: chat.Addressed,
	})
}
