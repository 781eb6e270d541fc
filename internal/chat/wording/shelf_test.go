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
		var book []kitchen.Booking
		for i := range rapid.IntRange(0, 4).Draw(t, "bookings") {
			from := now.AddDate(0, 0, i)
			book = append(book, kitchen.Booking{Cooker: "big pot", From: from, To: from.Add(4 * time.Hour), For: mika})
		}
		since := now.AddDate(0, 0, -rapid.IntRange(1, 60).Draw(t, "since"))
		digest := Digest(DigestView{Digest: kitchen.DigestOf(runs, book, since, now), Now: now, Who: name})
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

// A digest as it reads.
func TestDigest(t *testing.T) {
	now := time.Date(2026, 6, 8, 9, 0, 0, 0, time.UTC)
	three, seven := standing(t, 12, bags()), standing(t, 9, jars())
	book := []kitchen.Booking{{Cooker: "big pot", From: now.Add(5 * 24 * time.Hour), To: now.Add(5*24*time.Hour + 4*time.Hour), For: mika}}
	for _, tt := range []struct {
		name  string
		runs  []kitchen.Run
		since time.Time
		now   time.Time
		want  string
	}{
		{
			"the first week",
			[]kitchen.Run{three, seven},
			time.Time{},
			time.Date(2026, 3, 9, 9, 0, 0, 0, time.UTC),
			"The week, 2 Mar to 9 Mar.\nCooked: 3 bags and 7 jars, #12 and #9.\nOn the shelf, oldest first:\n" +
				"#9 7 quart jars, 2 Mar\n#12 3 bags of 5 lb, 2 Mar\nNext: use #9 first.",
		},
		{
			"after three months",
			[]kitchen.Run{three, seven},
			now.AddDate(0, 0, -7), now,
			"The week, 1 Jun to 8 Jun.\nNothing was cooked.\nOn the shelf, oldest first:\n#9 7 quart jars, 2 Mar\n#12 3 bags of 5 lb, 2 Mar\n" +
				"Booked: big pot, Sat 09:00 to 13:00, Mika.\nDecide: #9, use or throw? It is over three months old.",
		},
		{
			"bags come of age",
			[]kitchen.Run{three},
			time.Date(2026, 3, 10, 9, 0, 0, 0, time.UTC), time.Date(2026, 3, 17, 9, 0, 0, 0, time.UTC),
			"The week, 10 Mar to 17 Mar.\nNothing was cooked.\nOn the shelf:\n#12 3 bags of 5 lb, 2 Mar\n" +
				"Ahead: #12 three weeks old on Mon 23 Mar.\nNext: use #12 first.",
		},
	} {
		b := book
		if tt.now != now {
			b = nil
		}
		post := Digest(DigestView{Digest: kitchen.DigestOf(tt.runs, b, tt.since, tt.now), Now: tt.now, Who: name})
		fitsPhone(t, post)
		if got := wide(post); got != tt.want || post.Loudness != chat.Digest {
			t.Errorf("%s: %v\n got %s\nwant %s", tt.name, post.Loudness, got, tt.want)
		}
	}
}
