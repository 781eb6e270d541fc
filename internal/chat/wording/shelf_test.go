package wording

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// standing is a run of some order that was cool by a reading on the day it was put
// on.
func standing(t *testing.T, no kitchen.RunNo, o kitchen.Order) kitchen.Run {
	d := newDay(t, o, ana)
	d.at("10:45").say(ana, kitchen.AtPressure{}, 0)
	d.at("12:15").say(ana, kitchen.HeatOff{}, 0)
	d.at("13:30").say(ana, kitchen.AtZero{}, 0)
	d.at("20:00").say(ana, kitchen.TempRead{Temp: 26, Where: kitchen.Middle}, 0)
	d.run.No = no
	return d.run
}

func noteOf(r kitchen.Run, k kitchen.PingKind, now time.Time) PingView {
	return PingView{Ping: kitchen.Ping{Kind: k, Key: r.No.Prefix() + "shelf/1", Loudness: kitchen.NotePing, Due: now}, Run: r, Now: now}
}

// What is said of the shelf, as it reads.
func TestShelfNotes(t *testing.T) {
	now := time.Date(2026, 4, 2, 9, 0, 0, 0, time.UTC)
	three, seven := standing(t, 12, bags()), standing(t, 9, jars())
	unseen := newDay(t, jars(), ana)
	unseen.at("13:30").say(ana, kitchen.AtZero{}, 0)
	unseen.at("20:00").say(ana, kitchen.TempRead{Temp: 26, Where: kitchen.Middle}, 0)
	for _, tt := range []struct {
		name  string
		views []PingView
		want  string
	}{
		{
			"bags of three weeks",
			[]PingView{noteOf(three, kitchen.BagsThreeWeeks, now)},
			"#12, three weeks on the shelf: 3 bags of 5 lb, agar, cooked 2 Mar.\n" +
				"Bags dry out: weigh one, or look for loose grain. Then use it, or throw it out.\n" +
				"Used, given or thrown? Say #12 is gone",
		},
		{
			"jars of a month",
			[]PingView{noteOf(seven, kitchen.ShelvedMonth, now)},
			"#9, a month on the shelf: 7 quart jars, LC, cooked 2 Mar.\nUse it before newer ones, or throw it out.\nUsed, given or thrown? Say #9 is gone",
		},
		{
			"a hold that nobody saw",
			[]PingView{noteOf(unseen.run, kitchen.ShelvedMonth, now)},
			"#12, a month on the shelf: 7 quart jars, LC, cooked 2 Mar, hold not seen.\nNo culture on it: nobody saw the hold whole. Throw it out unopened.\n" +
				"Used, given or thrown? Say #12 is gone",
		},
		{
			"both on one day, and one of them twice",
			[]PingView{
				noteOf(three, kitchen.BagsThreeWeeks, now), noteOf(seven, kitchen.ShelvedThreeMonths, now), noteOf(three, kitchen.ShelvedMonth, now),
			},
			"On the shelf, time to look:\n#9, three months: 7 quart jars, LC, cooked 2 Mar.\n#12, a month: 3 bags of 5 lb, agar, cooked 2 Mar.\n" +
				"Bags dry out: weigh one, or look for loose grain.\nThree months: use now or throw out. Bulging, leaking or foul: out unopened.\n" +
				"Next: use the oldest first. Gone? #9 is gone",
		},
	} {
		post := Pings(tt.views)
		fitsPhone(t, post)
		if post.Loudness != chat.Note {
			t.Errorf("%s: a %v post", tt.name, post.Loudness)
		}
		if got := wide(post); got != tt.want {
			t.Errorf("%s:\n got %s\nwant %s", tt.name, got, tt.want)
		}
	}
}

// wide is a post without its buttons, a paragraph in a line.
func wide(p chat.Post) string {
	p.Buttons = nil
	return plain(chat.Plain(p, 1000))
}

// However much stands and happened, notes and digests fit a phone and promise
// nothing.
func TestShelfFitsAPhone(t *testing.T) {
	orders := []kitchen.Order{bags(), jars(), {Items: append(bags().Items, jars().Items...)}}
	var stand []kitchen.Run
	for i, no := range []kitchen.RunNo{1, 12, 123, 1234, 1235, 1236, 1237, 1238, 1239} {
		stand = append(stand, standing(t, no, orders[i%len(orders)]))
	}
	rapid.Check(t, func(t *rapid.T) {
		now := time.Date(2026, 3, 3, 9, 0, 0, 0, time.UTC).AddDate(0, 0, rapid.IntRange(0, 400).Draw(t, "days"))
		runs := stand[:rapid.IntRange(1, len(stand)).Draw(t, "runs")]
		kinds := []kitchen.PingKind{kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths}
		var notes []PingView
		for _, r := range runs {
			v := noteOf(r, rapid.SampledFrom(kinds).Draw(t, "kind"), now)
			v.Late = time.Duration(rapid.IntRange(0, 500).Draw(t, "late")) * time.Hour
			notes = append(notes, v)
		}
		since := now.AddDate(0, 0, -rapid.IntRange(1, 60).Draw(t, "since"))
		var stock []kitchen.Stock
		for _, r := range runs {
			stock = append(stock, kitchen.Stock{Run: r, Units: kitchen.FoldUnits(r, nil)})
		}
		digest := Digest(DigestView{Digest: kitchen.DigestOf(stock, since, now), Now: now})
		for _, p := range []chat.Post{Pings(notes), digest} {
			fitsPhone(t, p)
			text := strings.ToLower(wide(p))
			for _, never := range []string{"safe", "sterile"} {
				if strings.Contains(text, never) {
					t.Errorf("%q in:\n%s", never, text)
				}
			}
		}
	})
}
