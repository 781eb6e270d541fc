package kitchen

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

// What was seen moves what is expected: of an oyster jar that is usually a quarter grown
// after 4 days and through after 10, between 8 and 13.
func TestPaced(t *testing.T) {
	from := clock("09:00")
	day := func(d float64) time.Time { return from.Add(time.Duration(d * 24 * float64(time.Hour))) }
	usual := Expected{About: day(10), From: day(8), To: day(13), Runs: 2}
	for _, tt := range []struct {
		name  string
		share unit.Fraction
		seen  float64
		want  float64 // about, in days
	}{
		{"never seen", 0, 0, 10},
		{"as usual", 0.25, 4, 10},
		{"as usual, further on", 0.625, 7, 10},
		{"half of it late: four times as long so far, twice as long from now", 0.25, 16, 28},
		{"late by a half", 0.625, 10.5, 14.174},
		{"early: the rest as usual", 0.625, 3, 6},
		{"hardly anything, early", 0.05, 2, 10},
		{"hardly anything, late", 0.05, 12.8, 26.4},
		{"through", 1, 14, 10},
	} {
		u := Unit{Share: tt.share}
		if tt.seen > 0 {
			u.Seen = day(tt.seen)
		}
		got := u.paced(usual, from, day(4))
		if d := got.About.Sub(day(tt.want)).Abs(); d > 5*time.Minute || got.Runs != 2 || got.From.After(got.About) || got.To.Before(got.About) {
			t.Errorf("%s: %v to %v to %v, want day %v", tt.name, got.From.Sub(from), got.About.Sub(from), got.To.Sub(from), tt.want)
		}
	}
}

// Nothing is expected through before it was seen not to be.
func TestPacedIsAhead(t *testing.T) {
	from := clock("09:00")
	rapid.Check(t, func(t *rapid.T) {
		hours := func(name string, lo, hi int) time.Time {
			return from.Add(time.Duration(rapid.IntRange(lo, hi).Draw(t, name)) * time.Hour)
		}
		shake := hours("shake", 1, 300)
		usual := Expected{From: hours("from", 100, 300), About: hours("about", 301, 400), To: hours("to", 401, 900)}
		u := Unit{Share: unit.Fraction(rapid.Float64Range(0.01, 0.99).Draw(t, "share")), Seen: hours("seen", 0, 2000)}
		got := u.paced(usual, from, shake)
		if got.About.Before(u.Seen) || got.From.After(got.About) || got.To.Before(got.About) {
			t.Fatalf("seen %v: %v %v %v", u.Seen, got.From, got.About, got.To)
		}
	})
}

// What stood in the cold grows on from where it was put there.
func TestRested(t *testing.T) {
	all := ones(1, 2, 3, 4, 5, 6, 7)
	for _, tt := range []struct {
		name string
		l    *teller
		want time.Duration
	}{
		{"never", oysters().day(8, "09:00", jo, UnitsMoved{all, "shelf 2"}), 0},
		{"still there", oysters().day(8, "09:00", jo, UnitsMoved{all, "fridge"}), 0},
		{"twenty days", oysters().day(8, "09:00", jo, UnitsMoved{all, "fridge"}).day(28, "09:00", jo, UnitsMoved{all, "shelf"}), 20 * 24 * time.Hour},
		{"two fridges", oysters().day(8, "09:00", jo, UnitsMoved{all, "fridge"}).day(9, "09:00", jo, UnitsMoved{all, "cold room"}).day(10, "09:00", jo, UnitsMoved{all, "shelf"}), 48 * time.Hour},
		{"the grain, before it was put on", sealed().say("20:10", jo, UnitsMoved{all, "fridge"}).say("21:00", ana, Inoculated{Units: all, Species: "oyster"}).day(3, "21:00", jo, UnitsMoved{all, "shelf"}), 24 * time.Hour},
	} {
		if x := tt.l.units(t).All[0]; x.Rested != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, x.Rested, tt.want)
		}
	}
	since := clock("09:00").AddDate(0, 0, -40)
	l := (&teller{}).day(3, "09:00", ana, Arrived{Run: 13, Order: order(Item{Count: 1, Container: jar(1)}), Culture: "oyster", Since: since}).
		day(3, "09:00", ana, UnitsMoved{ones(1), "fridge"}).day(5, "09:00", ana, UnitsMoved{ones(1), "shelf"})
	u, err := FoldArrived(l.records)
	if err != nil || u.All[0].Rested != 43*24*time.Hour {
		t.Errorf("arrived in the fridge: rested %v, %v", u.All[0].Rested, err)
	}
}
