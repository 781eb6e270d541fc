package wording

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// fits holds what every post must be on a phone of 40 columns: few lines, none
// too wide, no mark left over, no label longer than a button.
func fits(t interface{ Errorf(string, ...any) }, p chat.Post, maxLines int) {
	text := chat.Plain(p, 40)
	rows := strings.Split(text, "\n")
	if len(rows) > maxLines {
		t.Errorf("%d lines, want at most %d:\n%s", len(rows), maxLines, text)
	}
	for _, row := range rows {
		if n := len([]rune(row)); n > 40 {
			t.Errorf("line of %d columns: %q", n, row)
		}
	}
	for _, mark := range []string{"**", "`", "{}", "  \n", "%!"} {
		if strings.Contains(text, mark) {
			t.Errorf("mark %q left over:\n%s", mark, text)
		}
	}
	if len(p.Buttons) > 4 {
		t.Errorf("%d buttons:\n%s", len(p.Buttons), text)
	}
	for _, b := range p.Buttons {
		if n := len([]rune(b.Label)); n > 16 {
			t.Errorf("button of %d characters: %q", n, b.Label)
		}
	}
}

func drawContainer(t *rapid.T) kitchen.Container {
	if rapid.Bool().Draw(t, "bag") {
		return kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(float64(rapid.IntRange(1, 10).Draw(t, "lb")))}
	}
	pints := rapid.SampledFrom([]float64{0.5, 1, 2, 4}).Draw(t, "pints")
	return kitchen.Container{Vessel: kitchen.Jar, Volume: unit.USPints(pints)}
}

func drawOrder(t *rapid.T) kitchen.Order {
	var o kitchen.Order
	for range rapid.IntRange(1, 3).Draw(t, "items") {
		o.Items = append(o.Items, kitchen.Item{
			Count: rapid.IntRange(1, 12).Draw(t, "count"), Container: drawContainer(t),
			Grain: rapid.SampledFrom(append(grain.All(), 0)).Draw(t, "grain"),
			Route: rapid.SampledFrom(append(kitchen.Routes(), 0)).Draw(t, "route"),
		})
	}
	return o
}

func drawKitchen(t *rapid.T) kitchen.Settings {
	var s kitchen.Settings
	if rapid.Bool().Draw(t, "high") {
		s = s.With(kitchen.Elevation{Height: unit.Metres(rapid.IntRange(0, 4000).Draw(t, "m"))})
	}
	if rapid.Bool().Draw(t, "soaks") {
		s = s.With(kitchen.MethodIs{Vessel: kitchen.Jar, Method: kitchen.Soaked})
	}
	if rapid.Bool().Draw(t, "gypsum") {
		s = s.With(kitchen.GypsumIs{Share: 0.01})
	}
	if rapid.Bool().Draw(t, "capacity") {
		s = s.With(kitchen.CookerIs{Name: "big pot", Takes: []kitchen.Capacity{
			{Count: 7, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}},
			{Count: 3, Container: kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb}},
		}})
	}
	return s
}

// Whatever is planned in whatever kitchen, the answer fits a phone, the amounts
// stand in its first lines, and one next step stands last.
func TestPlanFitsAPhone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, o := drawKitchen(t), drawOrder(t)
		p, err := s.Work(o)
		if err != nil {
			return // refusals have their own test
		}
		post := Plan(PlanView{Plan: p, Settings: s, Now: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)})
		fits(t, post, 34)
		lines := strings.Split(chat.Plain(post, 40), "\n")
		first := kilos(p.All.Dry)
		if len(o.Items) == 1 {
			first = weighed(p.Lines[0].Each.Dry)
		}
		if p.Hold.TooLong {
			first = "Not with this cooker"
		}
		if !strings.Contains(lines[0], plain(first)) {
			t.Errorf("no %s in the first line: %q", first, lines[0])
		}
		if len(o.Items) == 1 && len(lines) > 15 && !p.Hold.TooLong && len(p.Loads.Each) == 1 {
			t.Errorf("%d lines for one item:\n%s", len(lines), strings.Join(lines, "\n"))
		}
		if p.Hold.TooLong {
			return
		}
		last := post.Blocks[len(post.Blocks)-1].(chat.Para)
		if first, ok := last[0].(chat.Text); !ok || !strings.HasPrefix(string(first), "Next:") {
			t.Errorf("the last line is no next step: %v", last)
		}
		fits(t, Why(p, s, phrase.Why{}), 20*len(o.Items))
		fits(t, Why(p, s, phrase.Why{Number: p.Hold.Time.Minutes()}), 32*len(o.Items))
	})
}

// Every member of every closed set has its words: a case that was forgotten
// panics here and not in a kitchen.
func TestEverythingHasWords(t *testing.T) {
	for topic := range kitchen.Topics() {
		fits(t, Help(kitchen.Topics()[topic], kitchen.Settings{}), 18)
	}
	fits(t, Help(0, kitchen.Settings{}), 16)
	for q := kitchen.CountOfUnits; q <= kitchen.BoilOffRate; q++ {
		fits(t, Refused(kitchen.OutOfRange{What: q, Got: 12000, Low: 0.05, High: 100}), 8)
	}
	for g := phrase.WhichSize; g <= phrase.WhichLength; g++ {
		fits(t, Ask(phrase.Question{Gap: g, About: "2 kg at 45%", Options: []phrase.Option{{Label: "moisture", Say: "x"}}}), 6)
	}
	for n := phrase.LeftOver; n <= phrase.TooMany; n++ {
		fits(t, Near(phrase.Near{Trouble: n, Got: "3 bags", Missed: "5 km", Example: "3 bags 5 lb"}), 6)
	}
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	for _, r := range []kitchen.Refusal{
		kitchen.NoHold{Container: kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(20)}},
		kitchen.NoSuchRun{Run: 12},
		kitchen.NoPlanYet{},
		kitchen.NoUsualYet{},
		kitchen.NotSteward{},
		kitchen.KillsCulture{Limit: 35},
		kitchen.LastSteward{},
		kitchen.NoSuchMember{Name: "Ana"},
		kitchen.NoSuchCooker{Name: "x", Known: []string{"big pot"}},
		kitchen.WhichCooker{Known: []string{"big pot", "small pot"}},
		kitchen.NothingToUndo{},
		kitchen.TooDry{Wanted: 0.1, Stored: 0.12},
		kitchen.WrongCode{},
		kitchen.TooManyTries{},
		kitchen.UnknownZone{Name: "Mars"},
		kitchen.NameTaken{Name: "Ana"},
		kitchen.NoRoom{},
		kitchen.TooSmall{AtHand: 500, Needs: 970},
		kitchen.TooLate{Now: at, OutBy: at, Start: at, Soonest: at},
	} {
		fits(t, Refused(r), 8)
	}
}

// What was said in round numbers of a unit is said back in that unit.
func TestSaidBack(t *testing.T) {
	tests := []struct{ got, want string }{
		{massAsSaid(unit.Pounds(5)), "5 lb"},
		{massAsSaid(unit.Kilograms(2.5)), "2.5 kg"},
		{massAsSaid(unit.Ounces(11)), "11 oz"},
		{massAsSaid(unit.Grams(480)), "480 g"},
		{jarSize(unit.USQuarts(1)), "quart"},
		{jarSize(unit.USPints(0.5)), "half pint"},
		{jarSize(unit.Millilitres(500)), "500 ml"},
		{jarSize(unit.Litres(1)), "1 L"},
		{height(unit.Feet(5280)), "5,280 ft"},
		{height(unit.Metres(1600)), "1,600 m"},
		{warmth(unit.Fahrenheit(66)), "66 °F"},
		{warmth(unit.Celsius(19)), "19 °C"},
		{many(8, kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Millilitres(500)}), "8 jars of 500 ml"},
		{many(1, kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(3)}), "1 bag of 3 lb"},
		{many(4, kitchen.Container{Vessel: kitchen.Jar, Volume: unit.USQuarts(1)}), "4 quart jars"},
		{whole(1234567), "1,234,567"},
		{upTo(1, 2267.96), "2,268"},
		{upTo(1, 999.96), "1,000"},
		{upTo(1, 2267.94), "2,267.9"},
		{exact(0.5172413793), "0.5172"},
		{exact(1.925), "1.925"},
		{exact(0.6), "0.60"},
		{weighed(14.5), "14.5 g"},
		{weighed(1555), "1,555 g"},
		{whole(-430), "-430"},
		{span(155 * time.Minute), "2 h 35 min"},
	}
	for _, tt := range tests {
		if got := plain(tt.got); got != tt.want {
			t.Errorf("said back as %q, want %q", got, tt.want)
		}
	}
}

// Names that people give can't become marks, lines or placeholders.
func TestNamesStayNames(t *testing.T) {
	for _, name := range []string{"**Ana**", "`rm`", "{}", "a\nb", "<b>x</b>"} {
		text := chat.Plain(Renamed(name), 40)
		if want := "You are " + chat.Clean(name) + " from now on."; text != want {
			t.Errorf("name %q is shown as %q, want %q", name, text, want)
		}
	}
}
