package wording

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// stock is the load of a tale.
func (l *tale) stock() kitchen.Stock {
	if l.run.No == 0 {
		units, err := kitchen.FoldArrived(l.records)
		if err != nil {
			panic(err)
		}
		return kitchen.Stock{Units: units}
	}
	return kitchen.Stock{Run: l.run, Units: kitchen.FoldUnits(l.run, l.records)}
}

// A digest as it reads: what needs a decision, and nothing else.
func TestDigest(t *testing.T) {
	three := func() *tale { return &tale{run: standing(t, 9, bags())} }
	unseen := newDay(t, jars(), ana)
	unseen.at("13:30").say(ana, kitchen.AtZero{}, 0)
	bad := quarts(t).oysters(3).on(8, jo, kitchen.SignSeen{Units: numbered(1, 4), Sign: kitchen.GreenMould}).
		on(8, jo, kitchen.SignSeen{Units: numbered(2), Sign: kitchen.SourSmell}).on(8, jo, kitchen.UnitsDiscarded{Units: numbered(1)}).
		on(9, jo, kitchen.SignSeen{Units: numbered(3), Sign: kitchen.LooksWet}).on(13, jo, kitchen.GrownThrough{Units: numbered(5, 6, 7)})
	for _, tt := range []struct {
		name  string
		stock []kitchen.Stock
		day   int // of March
		want  string
	}{
		{
			"lost, suspect and ageing",
			[]kitchen.Stock{bad.stock(), three().stock()},
			21,
			"The week, 14 Mar to 21 Mar.\nBad, still on the shelf: #12.2,4.\nSuspect: #12.3 (wet).\nTo be used: #12.5-7 oyster, to about 27 Mar.\n" +
				"Ahead: #9 three weeks old on Mon 23 Mar.\nDecide: #12.2,4, out unopened? It is still with the others.",
		},
		{
			"in the week it was lost",
			[]kitchen.Stock{quarts(t).oysters(3).on(8, jo, kitchen.SignSeen{Units: numbered(1, 4), Sign: kitchen.GreenMould}).
				on(8, jo, kitchen.SignSeen{Units: numbered(2), Sign: kitchen.NothingGrew}).on(8, jo, kitchen.UnitsDiscarded{Units: numbered(1, 2, 4)}).stock()},
			10,
			"The week, 3 Mar to 10 Mar.\nLost: #12.1,2,4 (green and nothing grew).",
		},
		{
			"after three months",
			[]kitchen.Stock{three().stock(), quarts(t).stock()},
			100,
			"The week, 1 Jun to 8 Jun.\nCooked over three months ago: #9 and #12.\nDecide: #9, use or throw? It is over three months old.",
		},
		{
			"nobody saw the hold",
			[]kitchen.Stock{(&tale{run: unseen.run}).stock()},
			9,
			"The week, 2 Mar to 9 Mar.\nHold not seen whole: #12.\nDecide: #12, throw it out? Nobody saw the hold whole: no culture on it.",
		},
	} {
		now := time.Date(2026, 3, tt.day, 9, 0, 0, 0, time.UTC)
		post := Digest(DigestView{Digest: kitchen.DigestOf(tt.stock, now.AddDate(0, 0, -7), now), Now: now})
		fitsPhone(t, post)
		understood(t, post)
		if got := wide(post); got != tt.want || post.Loudness != chat.Digest {
			t.Errorf("%s: %v\n got %s\nwant %s", tt.name, post.Loudness, got, tt.want)
		}
	}
}

// However much waits for a decision, it fits a phone.
func TestDigestFitsAPhone(t *testing.T) {
	runs := []kitchen.Run{standing(t, 9, bags()), standing(t, 12, jars()), standing(t, 1239, jars()), standing(t, 1240, jars())}
	rapid.Check(t, func(t *rapid.T) {
		var stock []kitchen.Stock
		for _, run := range runs[:rapid.IntRange(1, len(runs)).Draw(t, "loads")] {
			l := &tale{run: run}
			for range rapid.IntRange(0, 8).Draw(t, "told") {
				units := rapid.SliceOfNDistinct(rapid.SampledFrom(sevenJars[:run.Units()]), 1, run.Units(), rapid.ID).Draw(t, "units")
				l.on(rapid.IntRange(3, 60).Draw(t, "on"), jo, rapid.SampledFrom([]kitchen.UnitEntry{
					kitchen.Inoculated{Units: units, Culture: "the oldest culture of the whole collective, plate 1234"},
					kitchen.GrownThrough{Units: units},
					kitchen.SignSeen{Units: units, Sign: rapid.SampledFrom(kitchen.Signs()).Draw(t, "sign")},
					kitchen.UnitsMoved{Units: units, Place: "fridge"},
				}).Draw(t, "entry"))
			}
			stock = append(stock, l.stock())
		}
		now := time.Date(2026, 3, rapid.IntRange(5, 120).Draw(t, "day"), 9, 0, 0, 0, time.UTC)
		d := kitchen.DigestOf(stock, now.AddDate(0, 0, -rapid.IntRange(1, 60).Draw(t, "since")), now)
		post := Digest(DigestView{Digest: d, Now: now, Late: time.Duration(rapid.IntRange(0, 500).Draw(t, "late")) * time.Hour})
		fitsPhone(t, post)
		promisesNothing(t, post)
	})
}

// promisesNothing holds that a post vouches for no grain.
func promisesNothing(t interface{ Errorf(string, ...any) }, p chat.Post) {
	text := strings.ToLower(wide(p))
	for _, never := range []string{"safe", "sterile"} {
		if strings.Contains(text, never) {
			t.Errorf("%q in:\n%s", never, text)
		}
	}
}
