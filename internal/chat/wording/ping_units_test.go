package wording

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// dueAt are the things that units ask for until nine in the morning of a day of March.
func (l *tale) dueAt(t interface{ Fatal(...any) }, day int, s kitchen.Settings, past ...kitchen.Grown) UnitsPingView {
	units, err := kitchen.FoldArrived(l.records)
	if l.run.No != 0 {
		units, err = kitchen.FoldUnits(l.run, l.records), nil
	}
	if err != nil {
		t.Fatal(err)
	}
	v := UnitsPingView{Now: time.Date(2026, 3, day, 9, 0, 0, 0, time.UTC)}
	for _, d := range units.Wants(s, past) {
		if shifted := kitchen.Shift(d.Ping, kitchen.QuietHours{}, time.UTC).Due; shifted.YearDay() == v.Now.YearDay() {
			v.Asks = append(v.Asks, UnitsAsk{Load: units, Run: l.run, Due: d})
		}
	}
	return v
}

func quarts(t *testing.T) *tale { return &tale{run: standing(t, 12, jars())} }

var sevenJars = numbered(1, 2, 3, 4, 5, 6, 7)

func (l *tale) oysters(day int) *tale {
	return l.on(day, ana, kitchen.Inoculated{Units: sevenJars, Culture: "blue lc", Species: "oyster", Route: kitchen.LiquidCulture})
}

// What units ask for, as it reads.
func TestUnitsPing(t *testing.T) {
	slow := kitchen.Grown{
		Unit: kitchen.UnitRef{Run: 3, Unit: 1}, Species: "oyster", Route: kitchen.LiquidCulture, Container: jars().Items[0].Container,
		Inoculated: time.Date(2026, 1, 1, 9, 0, 0, 0, time.UTC), Shaken: time.Date(2026, 1, 6, 9, 0, 0, 0, time.UTC), Through: time.Date(2026, 1, 17, 9, 0, 0, 0, time.UTC),
	}
	for _, tt := range []struct {
		name, want string
		view       UnitsPingView
	}{
		{
			"shake", "#12: shake. Oyster, day 4.\nFirst shake by estimate 6 Mar to 9 Mar, as is usual.\nThen say shook #12. Green or wet? #12.1 green",
			quarts(t).oysters(3).dueAt(t, 7, kitchen.Settings{}),
		},
		{
			"some are shaken", "#12.3,5: shake. Oyster, day 4.\nFirst shake by estimate 6 Mar to 9 Mar, as is usual.\nThen say shook #12.3,5. Green or wet? #12.3 green",
			quarts(t).oysters(3).on(6, jo, kitchen.Shaken{Units: numbered(1, 2, 4, 6, 7)}).dueAt(t, 7, kitchen.Settings{}),
		},
		{
			"nothing seen", "#12: any growth? Oyster, day 10, none told.\nNone by now usually means grain too warm, an old culture or dry grain.\nWhite anywhere? Say #12.1 20%",
			quarts(t).oysters(3).dueAt(t, 13, kitchen.Settings{}),
		},
		{
			"through", "#12: look. Oyster, day 10: likely grown through.\nThrough by estimate 11 Mar to 17 Mar, as is usual.\n" +
				"Oyster pins when it is left: take it in time.\nNot yet? Say how far: #12.1 80%",
			quarts(t).oysters(3).on(7, jo, kitchen.Shaken{Units: sevenJars}).dueAt(t, 13, kitchen.Settings{}),
		},
		{
			"through, by their own record", "#12: look. Oyster, day 14: likely grown through.\nThrough by estimate 14 Mar to 20 Mar, from 1 run of your own.\n" +
				"Oyster pins when it is left: take it in time.\nNot yet? Say how far: #12.1 80%",
			quarts(t).oysters(3).on(7, jo, kitchen.Shaken{Units: sevenJars}).dueAt(t, 17, kitchen.Settings{}, slow),
		},
		{
			"late", "#12: look. Oyster, day 24: later than usual.\nThrough by estimate 11 Mar to 17 Mar, as is usual.\n" +
				"Oyster pins when it is left: take it in time.\nNot yet? Say how far: #12.1 80%",
			quarts(t).oysters(3).on(7, jo, kitchen.Shaken{Units: sevenJars}).on(20, jo, kitchen.GrowthSeen{Units: sevenJars}).dueAt(t, 27, kitchen.Settings{}),
		},
		{
			"by how far it was", "#12: look. Oyster, day 19: likely grown through.\nThrough by estimate 21 Mar to 24 Mar, by how far it was.\n" +
				"Oyster pins when it is left: take it in time.\nNot yet? Say how far: #12.1 80%",
			quarts(t).oysters(3).on(7, jo, kitchen.Shaken{Units: sevenJars}).on(20, jo, kitchen.GrowthSeen{Units: sevenJars, Share: 0.8}).dueAt(t, 22, kitchen.Settings{}),
		},
		{
			"kept", "#12.1-3: use or chill. Oyster, grown through, usually keeps to about 27 Mar in the room.\nUsed it? used #12.1-3 on straw",
			quarts(t).oysters(3).on(13, jo, kitchen.GrownThrough{Units: numbered(1, 2, 3)}).dueAt(t, 20, kitchen.Settings{}),
		},
		{
			"kept chilled", "#12.1-3: use. Oyster, grown through, usually keeps to about 9 May chilled.\nUsed it? used #12.1-3 on straw",
			quarts(t).oysters(3).on(13, jo, kitchen.GrownThrough{Units: numbered(1, 2, 3)}).
				on(14, jo, kitchen.UnitsMoved{Units: numbered(1, 2, 3), Place: "fridge"}).dueAt(t, 42, kitchen.Settings{}),
		},
		{
			"never chilled", "#12.1: use. Pink oyster, grown through, usually keeps to about 12 Apr in the room.\nPink oyster must not be chilled.\nUsed it? used #12.1 on straw",
			quarts(t).on(3, ana, kitchen.Inoculated{Units: sevenJars, Species: "pink oyster"}).on(13, jo, kitchen.GrownThrough{Units: numbered(1)}).dueAt(t, 43, kitchen.Settings{}),
		},
		{
			"rested", "#12: inoculate. Rested 3 days. Look first: what soured by now, the cook spoilt.\nThen say #12 oyster lc",
			quarts(t).dueAt(t, 5, kitchen.Settings{RestDays: 3}),
		},
		{
			"a month", "#12.4-7: use before newer ones. A month on the shelf, 4 quart jars.\nUsed it, or threw it out? threw #12.4",
			quarts(t).on(3, ana, kitchen.Inoculated{Units: numbered(1, 2, 3), Culture: "oyster"}).dueAt(t, 33, kitchen.Settings{}),
		},
		{
			"a name that nobody knows", "#12: shake. Our own, day 7.\nFirst shake by estimate 8 Mar to 12 Mar: I don't know that species, so as most do.\n" +
				"Then say shook #12. Green or wet? #12.1 green",
			quarts(t).on(3, ana, kitchen.Inoculated{Units: sevenJars, Culture: "our own"}).dueAt(t, 10, kitchen.Settings{}),
		},
		{
			"suspect", "#12.1,3: look again. On 9 Mar: wet.\nWorse: out, unopened. As it was: it can stand.\nOnly one of them? #12.1 looks fine",
			quarts(t).oysters(3).on(9, jo, kitchen.SignSeen{Units: numbered(3, 1), Sign: kitchen.LooksWet}).dueAt(t, 11, kitchen.Settings{}),
		},
	} {
		if len(tt.view.Asks) != 1 {
			t.Errorf("%s: %d things asked", tt.name, len(tt.view.Asks))
			continue
		}
		post := UnitsPing(tt.view)
		fitsPhone(t, post)
		understood(t, post)
		if got := wide(post); got != tt.want {
			t.Errorf("%s:\n got %s\nwant %s", tt.name, got, tt.want)
		}
	}
}

// All of one day is one post, what presses first; a load and a matter is one line.
func TestUnitsPingTogether(t *testing.T) {
	v := quarts(t).oysters(3).on(6, jo, kitchen.Shaken{Units: numbered(1, 2)}).dueAt(t, 7, kitchen.Settings{RestDays: 3})
	older := &tale{run: standing(t, 9, bags())}
	ages := older.dueAt(t, 23, kitchen.Settings{})
	bread := quarts(t)
	bread.run.No = 11
	shelved := bread.dueAt(t, 33, kitchen.Settings{})
	v.Asks = append(append(v.Asks, ages.Asks...), shelved.Asks...)
	v.Late = 3 * time.Hour
	post := UnitsPing(v)
	fitsPhone(t, post)
	want := "Today on the shelf:\n#12.3-7: shake. Oyster, day 4.\n#11: use before newer ones. A month on the shelf, 7 quart jars.\n" +
		"#9: weigh one, it dries out. Three weeks on the shelf, 3 bags of 5 lb.\n3 h late: I was down.\nThen say shook #12.3-7. Green or wet? #12.3 green"
	if got := wide(post); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
	if post.Loudness != chat.Note || len(post.Buttons) != 1 || post.Buttons[0].Say != "shook #12.3-7" || post.Buttons[0].Label != "#12.3-7 shook" {
		t.Errorf("%v %+v", post.Loudness, post.Buttons)
	}
}

// A hold that nobody saw whole gets no culture.
func TestUnitsPingUnseenHold(t *testing.T) {
	d := newDay(t, jars(), ana)
	d.at("13:30").say(ana, kitchen.AtZero{}, 0)
	d.at("20:00").say(ana, kitchen.TempRead{Temp: 26, Where: kitchen.Middle}, 0)
	l := &tale{run: d.run}
	for day, want := range map[int]string{5: "#12: out, unopened. Nobody saw the hold whole.", 33: "#12: no culture on it, throw out."} {
		if got := wide(UnitsPing(l.dueAt(t, day, kitchen.Settings{RestDays: 3}))); !strings.HasPrefix(got, want) || strings.Contains(got, "inoculate") {
			t.Errorf("day %d: %s", day, got)
		}
	}
}

// However much is asked on one day, it fits a phone.
func TestUnitsPingFitsAPhone(t *testing.T) {
	runs := []kitchen.Run{standing(t, 9, bags()), standing(t, 12, jars()), standing(t, 1239, jars())}
	rapid.Check(t, func(t *rapid.T) {
		v := UnitsPingView{Now: time.Date(2026, 3, rapid.IntRange(5, 50).Draw(t, "day"), 9, 0, 0, 0, time.UTC)}
		v.Late = time.Duration(rapid.IntRange(0, 100).Draw(t, "late")) * time.Hour
		if rapid.Bool().Draw(t, "to") {
			v.To = chat.Mention{Name: "Ana"}
		}
		for _, run := range rapid.Permutation(runs).Draw(t, "runs")[:rapid.IntRange(1, 3).Draw(t, "loads")] {
			l := &tale{run: run}
			for range rapid.IntRange(1, 8).Draw(t, "told") {
				units := rapid.SliceOfNDistinct(rapid.SampledFrom(sevenJars[:run.Units()]), 1, run.Units(), rapid.ID).Draw(t, "units")
				l.on(rapid.IntRange(3, 40).Draw(t, "on"), jo, rapid.SampledFrom([]kitchen.UnitEntry{
					kitchen.Inoculated{Units: units, Culture: "the oldest culture of the whole collective, plate 1234"},
					kitchen.Inoculated{Units: units, Species: rapid.SampledFrom(kitchen.SpeciesNames()).Draw(t, "species")},
					kitchen.Inoculated{Units: units},
					kitchen.Shaken{Units: units},
					kitchen.GrowthSeen{Units: units, Share: 0.6},
					kitchen.GrownThrough{Units: units},
					kitchen.SignSeen{Units: units, Sign: kitchen.YellowDrops},
					kitchen.UnitsMoved{Units: units, Place: "fridge"},
				}).Draw(t, "entry"))
			}
			load := kitchen.FoldUnits(run, l.records)
			for _, d := range load.Wants(kitchen.Settings{RestDays: 3}, nil) {
				v.Asks = append(v.Asks, UnitsAsk{Load: load, Run: run, Due: d})
			}
		}
		if len(v.Asks) == 0 {
			return
		}
		fitsPhone(t, UnitsPing(v))
		promisesNothing(t, UnitsPing(v))
		v.Asks = v.Asks[:1]
		fitsPhone(t, UnitsPing(v))
	})
}
