package wording

import (
	"testing"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// arrivedLoad are four quarts of rye with oyster on them that came from Mira on 3 October,
// after what else is told of them in November.
func arrivedLoad(t *testing.T, told ...kitchen.UnitEntry) kitchen.Units {
	t.Helper()
	since := time.Date(2026, 10, 3, 0, 0, 0, 0, time.UTC)
	e := kitchen.Arrived{Run: 13, Since: since, Culture: "oyster", Species: "oyster", From: "Mira"}
	e.Order.Items = []kitchen.Item{{Count: 4, Container: quartJar, Grain: grain.Rye}}
	at := shelfNow.AddDate(0, 0, -20)
	records := []kitchen.Record{{No: 1, By: ana, At: at, Written: at, Entry: e}}
	for n, told := range told {
		at = at.AddDate(0, 0, 1)
		records = append(records, kitchen.Record{No: kitchen.EntryNo(n + 2), By: jo, At: at, Written: at, Entry: told})
	}
	load, err := kitchen.FoldArrived(records)
	if err != nil || len(load.Strays) > 0 {
		t.Fatalf("fold: %v, %v", err, load.Strays)
	}
	return load
}

func first(units ...kitchen.UnitNo) []kitchen.UnitNo { return units }

// What is said of where units are, as it reads.
func TestWhere(t *testing.T) {
	for _, tt := range []struct {
		name string
		told []kitchen.UnitEntry
		want string
	}{
		{
			"a place that nobody told", nil,
			"#13.1-4: nobody said where. Inoculated since 3 Oct.\n" +
				"Know it? Say 13.1 is in the fridge\n" +
				"[In the fridge] [Shelf]",
		},
		{
			"moved by Jo",
			[]kitchen.UnitEntry{kitchen.UnitsMoved{Units: first(1, 2, 3, 4), Place: "fridge"}},
			"#13.1-4: in the fridge, since 6 Nov, by Jo. Inoculated since 3 Oct.\n" +
				"[Shelf]",
		},
		{
			"three places",
			[]kitchen.UnitEntry{
				kitchen.UnitsMoved{Units: first(1), Place: "shelf 2"}, kitchen.UnitsMoved{Units: first(2), Place: "Ana's"}, kitchen.UnitsMoved{Units: first(3, 4), Place: "top shelf"},
			},
			"#13.1: on shelf 2, since 6 Nov, by Jo. Inoculated since 3 Oct.\n" +
				"#13.2: at Ana's, since 7 Nov, by Jo. Inoculated since 3 Oct.\n" +
				"#13.3,4: on the top shelf, since 8 Nov, by Jo. Inoculated since 3 Oct.\n" +
				"[Shelf]",
		},
		{
			"what became of them",
			[]kitchen.UnitEntry{
				kitchen.UnitsUsed{Units: first(1), On: "straw"}, kitchen.UnitsGiven{Units: first(2), To: "Tom"}, kitchen.UnitsDiscarded{Units: first(3)}, kitchen.UnitNamed{Unit: 4, Name: "grandma"},
			},
			"#13.1: used on straw, 6 Nov, by Jo.\n" +
				"#13.2: given away to Tom, 7 Nov, by Jo.\n" +
				"#13.3: thrown out, 8 Nov, by Jo.\n" +
				"#13.4 (grandma): nobody said where. Inoculated since 3 Oct.\n" +
				"Know it? Say 13.4 is in the fridge\n" +
				"[In the fridge] [Shelf]",
		},
		{
			"thrown out, for it was green",
			[]kitchen.UnitEntry{kitchen.SignSeen{Units: first(1, 2, 3, 4), Sign: kitchen.GreenMould}, kitchen.UnitsDiscarded{Units: first(1, 2, 3, 4)}},
			"#13.1-4: thrown out, contaminated, 7 Nov, by Jo.\n" +
				"[Shelf]",
		},
	} {
		got := plainly(Where(WhereView{Units: arrivedLoad(t, tt.told...).All, Now: shelfNow, Who: name}))
		if got != tt.want {
			t.Errorf("%s:\n%s\nwant:\n%s", tt.name, got, tt.want)
		}
	}
}

// What is said of what arrived, as it reads.
func TestArrived(t *testing.T) {
	loadOf := func(load kitchen.Units, place string, undated bool) ArrivedLoad {
		return ArrivedLoad{Units: load, Place: place, Undated: undated, First: kitchen.ShelfUnit{Unit: load.All[0], Begun: load.Begun, Cool: load.Cool, Arrived: true}}
	}
	plain := arrivedLoad(t)
	for _, tt := range []struct {
		name string
		post chat.Post
		want string
	}{
		{
			"four quarts since 3 october", Arrived(ArrivedView{Loads: []ArrivedLoad{loadOf(plain, "", false)}, Now: shelfNow}),
			"#13.1-4: 4 quart jars, rye, oyster, inoculated, counted from 3 Oct, from Mira.\n" +
				"Likely grown through: look.\n" +
				"Nobody here saw them cooked: marked so.\n" +
				"Where? Say 13 is in the fridge\n" +
				"[Shelf] [Undo]",
		},
		{
			"undated, in the fridge", Arrived(ArrivedView{Loads: []ArrivedLoad{loadOf(plain, "fridge", true)}, Now: shelfNow}),
			"#13.1-4: 4 quart jars, rye, oyster, inoculated, counted from today, from Mira, in the fridge.\n" +
				"Likely grown through: look.\n" +
				"Nobody here saw them cooked: marked so.\n" +
				"Older? Undo, and say it with since 3 oct\n" +
				"[Shelf] [Undo]",
		},
		{
			"too many", NotArrived(kitchen.OutOfRange{What: kitchen.CountOfUnits, Got: 250, Low: 1, High: 200}, shelfNow),
			"250 units at once are more than I number: 200. Nothing was written.\n" +
				"Say them in several messages, by kind, or by age.",
		},
		{
			"not here yet", NotArrived(kitchen.InFuture{At: shelfNow.AddDate(0, 0, 9), Told: shelfNow}, shelfNow),
			"4 Dec is still to come, and what is on the shelf is here. Nothing was written.\n" +
				"Say since when, like 4 quarts rye oyster on the shelf since 3 oct",
		},
		{
			"taken back", UndoneArrived([]kitchen.RunNo{13, 14}, ""),
			"Taken back: #13 and #14 on the shelf. Their numbers are not used again.",
		},
	} {
		if got := plainly(tt.post); got != tt.want {
			t.Errorf("%s:\n%s\nwant:\n%s", tt.name, got, tt.want)
		}
	}
}
