package wording

import (
	"strings"
	"testing"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// shelfNow is the day on which the shelves of these tests are looked at.
var shelfNow = time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)

var (
	quartJar = kitchen.Container{Vessel: kitchen.Jar, Volume: quart}
	fiveBag  = kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb}
)

// stood are units of a run that came to a state so many days ago.
func stood(run kitchen.RunNo, from, to kitchen.UnitNo, s kitchen.UnitState, species string, days int) []kitchen.ShelfUnit {
	var out []kitchen.ShelfUnit
	for n := from; n <= to; n++ {
		since := shelfNow.AddDate(0, 0, -days)
		u := kitchen.ShelfUnit{Begun: since, Cool: since}
		u.Ref, u.State, u.Since, u.Container, u.Grain = kitchen.UnitRef{Run: run, Unit: n}, s, since, quartJar, grain.Rye
		u.Cultured, u.Species, u.Inoculated, u.Left = species != "", species, since, 1
		out = append(out, u)
	}
	return out
}

// in puts units into a place.
func in(place string, units []kitchen.ShelfUnit) []kitchen.ShelfUnit {
	for i := range units {
		units[i].Place = place
	}
	return units
}

func bagged(units []kitchen.ShelfUnit) []kitchen.ShelfUnit {
	for i := range units {
		units[i].Container = fiveBag
	}
	return units
}

func joined(all ...[]kitchen.ShelfUnit) []kitchen.ShelfUnit {
	var out []kitchen.ShelfUnit
	for _, us := range all {
		out = append(out, us...)
	}
	return out
}

// asks is the answer to a question of a shelf.
func asks(q phrase.Shelf, only kitchen.ShelfOnly, units []kitchen.ShelfUnit) chat.Post {
	return Shelf(ShelfView{Asked: q, Found: kitchen.ShelfOf(only.Of(units), shelfNow), All: kitchen.ShelfOf(units, shelfNow), Now: shelfNow})
}

// plainly is a post as a phone without formatting shows it, on lines of any length.
func plainly(p chat.Post) string {
	return strings.ReplaceAll(chat.Plain(p, 200), nb, " ")
}

func usualShelf() []kitchen.ShelfUnit {
	return joined(
		in("fridge", stood(9, 1, 3, kitchen.UnitGrown, "oyster", 16)),
		stood(12, 1, 4, kitchen.UnitGrowing, "oyster", 6),
		stood(13, 1, 3, kitchen.UnitGrowing, "reishi", 4),
		bagged(stood(14, 1, 3, kitchen.UnitCooked, "", 5)),
		stood(15, 1, 2, kitchen.UnitCooked, "", 5),
		stood(12, 5, 5, kitchen.UnitSuspect, "oyster", 1),
	)
}

// What is said of a shelf, as it reads.
func TestShelf(t *testing.T) {
	for _, tt := range []struct {
		name  string
		asked phrase.Shelf
		only  kitchen.ShelfOnly
		units []kitchen.ShelfUnit
		want  string
	}{
		{
			"nothing there",
			phrase.Shelf{},
			kitchen.ShelfOnly{},
			nil,
			"Nothing on the shelf that I know of.\n" +
				"Cooked loads come here once they are at zero.\n" +
				"Is there any? Say on the shelf: 4 quarts rye oyster since 3 oct\n" +
				"[Log]",
		},
		{
			"the shelf",
			phrase.Shelf{},
			kitchen.ShelfOnly{},
			usualShelf(),
			"16 units on the shelf\n" +
				"3 grown through: oyster #9.1-3\n" +
				"7 growing: 4 oyster #12.1-4, 3 reishi #13.1-3\n" +
				"5 cooked: 3 bags of 5 lb #14.1-3, 2 quart jars #15.1,2\n" +
				"1 suspect: oyster #12.5\n" +
				"Decide: look again at #12.5.\n" +
				"Use first: #9.1, oyster, grown through 16 days ago, about 6 weeks left.\n" +
				"[#12.5 fine]",
		},
		{
			"whats oldest",
			phrase.Shelf{Ask: phrase.Oldest},
			kitchen.ShelfOnly{},
			usualShelf(),
			"#9.1: use it first. Quart jar, oyster, grown through 16 days ago, in the fridge. About 6 weeks left.\n" +
				"Then #9.2,3, about 6 weeks left.\n" +
				"#14.1: the oldest cooked. 5 lb bag, rye, cooked 5 days ago, place not said. About 12 weeks left.\n" +
				"Then #14.2,3 #15.1, about 12 weeks left.\n" +
				"[Used #9.1] [Used #14.1] [Shelf]",
		},
		{
			"how many oysters",
			phrase.Shelf{Ask: phrase.HowMany, Culture: "oyster"},
			kitchen.ShelfOnly{Culture: "oyster"},
			usualShelf(),
			"8 units of oyster: 3 ready, 4 growing, 1 not.\n" +
				"Ready: #9.1-3, first #9.1: about 6 weeks left.\n" +
				"Growing: #12.1-4, likely through 27 Nov to 3 Dec.\n" +
				"Not to use: #12.5, suspect.\n" +
				"[What's oldest] [Shelf]",
		},
		{
			"how many ready bags do we have",
			phrase.Shelf{Ask: phrase.HowMany, State: kitchen.UnitGrown, Container: kitchen.Container{Vessel: kitchen.Bag}},
			kitchen.ShelfOnly{State: kitchen.UnitGrown, Container: kitchen.Container{Vessel: kitchen.Bag}},
			usualShelf(),
			"0 ready bags on the shelf.\n" +
				"There: 3 grown through, 7 growing, 5 cooked and 1 suspect.\n" +
				"[Shelf]",
		},
		{
			"any shiitake spawn left",
			phrase.Shelf{Ask: phrase.HowMany, Culture: "shiitake"},
			kitchen.ShelfOnly{Culture: "shiitake"},
			usualShelf(),
			"0 units of shiitake on the shelf.\n" +
				"There: 8 oyster, 3 reishi and 5 without a culture.\n" +
				"[Shelf]",
		},
		{
			"anything bad",
			phrase.Shelf{Ask: phrase.AnythingBad},
			kitchen.ShelfOnly{Bad: true},
			usualShelf(),
			"1 unit to look at\n" +
				"1 suspect: oyster #12.5\n" +
				"Decide: look again at #12.5.\n" +
				"[#12.5 fine]",
		},
		{
			"anything bad, and nothing is",
			phrase.Shelf{Ask: phrase.AnythingBad},
			kitchen.ShelfOnly{Bad: true},
			usualShelf()[:10],
			"0 bad, 0 suspect of 10 units, as far as anybody said.\n" +
				"Seen something? Say 12.3 green or 12.2 looks wet\n" +
				"[Shelf]",
		},
		{
			"shelf fridge",
			phrase.Shelf{Place: "fridge"},
			kitchen.ShelfOnly{Place: "fridge"},
			usualShelf(),
			"3 units, in the fridge\n" +
				"3 grown through: oyster #9.1-3\n" +
				"Use first: #9.1, oyster, grown through 16 days ago, about 6 weeks left.\n" +
				"[What's oldest]",
		},
		{
			"cooked bags",
			phrase.Shelf{State: kitchen.UnitCooked, Container: kitchen.Container{Vessel: kitchen.Bag}},
			kitchen.ShelfOnly{State: kitchen.UnitCooked, Container: kitchen.Container{Vessel: kitchen.Bag}},
			usualShelf(),
			"3 cooked bags on the shelf\n" +
				"3 cooked: 5 lb bags #14.1-3\n" +
				"Use first: #14.1, 5 lb bag, cooked 5 days ago, about 12 weeks left.\n" +
				"[What's oldest]",
		},
		{
			"whats oldest, while all grows",
			phrase.Shelf{Ask: phrase.Oldest},
			kitchen.ShelfOnly{},
			stood(12, 1, 4, kitchen.UnitGrowing, "oyster", 6),
			"Nothing to use yet.\n" +
				"First comes #12.1: Quart jar, oyster, inoculated 6 days ago, place not said. Likely through 27 Nov to 3 Dec.\n" +
				"[Shelf]",
		},
		{
			"a shelf that was forgotten",
			phrase.Shelf{},
			kitchen.ShelfOnly{},
			joined(stood(3, 1, 2, kitchen.UnitGrown, "oyster", 40),
				bagged(stood(4, 1, 1, kitchen.UnitCooked, "", 30)), stood(5, 1, 2, kitchen.UnitContaminated, "king oyster", 3)),
			"5 units on the shelf\n" +
				"2 grown through: oyster #3.1,2\n" +
				"1 cooked: 5 lb bag #4.1\n" +
				"2 bad, still there: king oyster #5.1,2\n" +
				"Decide: throw out, unopened: #5.1,2; use or throw out, past its time: #3.1,2.\n" +
				"[Threw #5.1,2] [Used #3.1]",
		},
	} {
		if got := plainly(asks(tt.asked, tt.only, tt.units)); got != tt.want {
			t.Errorf("%s:\n%s\nwant:\n%s", tt.name, got, tt.want)
		}
	}
}

// TestShelfFits holds that a shelf fits a phone, however full it is, and tells of
// every part of it.
func TestShelfFits(t *testing.T) {
	var units []kitchen.ShelfUnit
	states := []kitchen.UnitState{
		kitchen.UnitGrown, kitchen.UnitGrowing, kitchen.UnitInoculated, kitchen.UnitCooked, kitchen.UnitSuspect, kitchen.UnitContaminated,
	}
	species := []string{"oyster", "king oyster", "lion's mane", "shiitake", "wine cap", "turkey tail", "golden oyster"}
	for i := range 150 {
		s, grows := states[i%len(states)], species[i%len(species)]
		if s == kitchen.UnitCooked {
			grows = ""
		}
		units = append(units, stood(kitchen.RunNo(900+i/3), kitchen.UnitNo(i%3+1), kitchen.UnitNo(i%3+1), s, grows, i)...)
	}
	for _, q := range []phrase.Shelf{{}, {Ask: phrase.Oldest}, {Ask: phrase.HowMany}, {Ask: phrase.AnythingBad}} {
		for n := range len(units) + 1 {
			p := asks(q, kitchen.ShelfOnly{Bad: q.Ask == phrase.AnythingBad}, units[:n])
			if tall(p) > screen {
				t.Fatalf("%d units, asked %v: %d lines\n%s", n, q.Ask, tall(p), chat.Plain(p, phone))
			}
		}
	}
	all := plainly(asks(phrase.Shelf{}, kitchen.ShelfOnly{}, units))
	for _, want := range []string{"150 units", "25 grown through", "25 growing", "25 inoculated", "25 cooked", "25 suspect", "25 bad"} {
		if !strings.Contains(all, want) {
			t.Errorf("150 units don't say %q:\n%s", want, all)
		}
	}
}
