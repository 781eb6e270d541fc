package phrase

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// Sizes by hand: a US quart is 57.75 cubic inches of 16.387064 ml, a pint half of
// it, a gallon four; a pound is 453.59237 g (NIST Handbook 44, appendix C).
const (
	quart unit.Litres = 0.946352946
	pint  unit.Litres = 0.473176473
	lbs   unit.Grams  = 453.59237
)

func jarsOf(n int, v unit.Litres) kitchen.Item {
	return kitchen.Item{Count: n, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: v}}
}

func bagsOf(n int, g unit.Grams) kitchen.Item {
	return kitchen.Item{Count: n, Container: kitchen.Container{Vessel: kitchen.Bag, Weight: g}}
}

func loose(g unit.Grams, k grain.Kind) kitchen.Item {
	return kitchen.Item{Count: 1, Mass: g, Basis: kitchen.DryBasis, Grain: k}
}

// with sets grain and route.
func with(it kitchen.Item, g grain.Kind, r kitchen.Route) kitchen.Item {
	it.Grain, it.Route = g, r
	return it
}

// without is an item that takes no gypsum.
func without(it kitchen.Item) kitchen.Item {
	it.NoGypsum = true
	return it
}

func TestOrders(t *testing.T) {
	for _, tt := range []struct {
		text string
		want []kitchen.Item
	}{
		// An ounce beside a jar that holds about as many is one of fluid.
		{"4 16 oz pint jars rye lc", []kitchen.Item{with(jarsOf(4, pint), grain.Rye, kitchen.LiquidCulture)}},
		{"4 jars, 32 oz quart each, rye lc", []kitchen.Item{with(jarsOf(4, quart), grain.Rye, kitchen.LiquidCulture)}},
		{"4 jars, 1 qt (32 oz) each", []kitchen.Item{jarsOf(4, quart)}},
		// A sum that agrees says nothing new.
		{"3 bags, 5 lb each (15 lb total), agar", []kitchen.Item{with(bagsOf(3, 5*lbs), 0, kitchen.Agar)}},
		{"3 bags 5lb, 15 lb in all, agar", []kitchen.Item{with(bagsOf(3, 5*lbs), 0, kitchen.Agar)}},
		{"4 quart jars, 4 quarts in all, lc", []kitchen.Item{with(jarsOf(4, quart), 0, kitchen.LiquidCulture)}},
		{"1 bag, 5 lb total, agar", []kitchen.Item{with(bagsOf(1, 5*lbs), 0, kitchen.Agar)}},
		{"1 jar (about 4 cups) rye", []kitchen.Item{with(jarsOf(1, quart), grain.Rye, 0)}},
		// The numbers of a list count nothing.
		{"2. 2 quarts lc", []kitchen.Item{with(jarsOf(2, quart), 0, kitchen.LiquidCulture)}},
		{"1) 3 bags 5lb agar\n2) 2 quarts lc", []kitchen.Item{with(bagsOf(3, 5*lbs), 0, kitchen.Agar), with(jarsOf(2, quart), 0, kitchen.LiquidCulture)}},
		{"2 quart jars x 3 rye", []kitchen.Item{with(jarsOf(3, 2*quart), grain.Rye, 0)}},
		{"3 bags 5lb and 2 kg rye", []kitchen.Item{with(bagsOf(3, 5*lbs), grain.Rye, 0), loose(2000, grain.Rye)}},
		{"3 bags 5lb agar without gypsum", []kitchen.Item{without(with(bagsOf(3, 5*lbs), 0, kitchen.Agar))}},
		{"3 bags 5lb agar, no gypsum", []kitchen.Item{without(with(bagsOf(3, 5*lbs), 0, kitchen.Agar))}},
		// A cup is 236.588 ml, an imperial quart 1,136.5225 ml, a fluid ounce a 32nd of a quart.
		{"6 32 fl oz jars", []kitchen.Item{jarsOf(6, quart)}},
		{"2 2-cup jars", []kitchen.Item{jarsOf(2, pint)}},
		{"4 imperial quarts rye lc", []kitchen.Item{with(jarsOf(4, 1.1365225), grain.Rye, kitchen.LiquidCulture)}},
		{"4 jars, 1 imperial quart each, rye lc", []kitchen.Item{with(jarsOf(4, 1.1365225), grain.Rye, kitchen.LiquidCulture)}},
		{"4 us pints lc + 3 bags 5lb agar", []kitchen.Item{with(jarsOf(4, pint), 0, kitchen.LiquidCulture), with(bagsOf(3, 5*lbs), 0, kitchen.Agar)}},
		{"4 jars, 1 half gallon each, rye lc", []kitchen.Item{with(jarsOf(4, 2*quart), grain.Rye, kitchen.LiquidCulture)}},
		{"4 quarts (about 1 l each) lc", []kitchen.Item{with(jarsOf(4, quart), 0, kitchen.LiquidCulture)}},
		{"4 quart jars (946 ml) lc", []kitchen.Item{with(jarsOf(4, quart), 0, kitchen.LiquidCulture)}},
		{"4 2-quart jars lc", []kitchen.Item{with(jarsOf(4, 2*quart), 0, kitchen.LiquidCulture)}},
		{"4 2l rye lc", []kitchen.Item{with(jarsOf(4, 2), grain.Rye, kitchen.LiquidCulture)}},
		{"2 kg + 1 kg rye", []kitchen.Item{loose(3000, grain.Rye)}},
		{"2 kg rye and 2 kg rye", []kitchen.Item{loose(4000, grain.Rye)}},
		{"3 bags 5lb agar, 3 bags 5lb agar", []kitchen.Item{with(bagsOf(6, 5*lbs), 0, kitchen.Agar)}},
		{"can i cook 3 bags 5lb agar?", []kitchen.Item{with(bagsOf(3, 5*lbs), 0, kitchen.Agar)}},
		{"cook 3 bags 5lb agar?", []kitchen.Item{with(bagsOf(3, 5*lbs), 0, kitchen.Agar)}},
	} {
		p := Parse(tt.text, tryNames)
		plan, ok := Plan{}, len(p.Intents) == 1
		if ok {
			plan, ok = p.Intents[0].(Plan)
		}
		if !ok {
			t.Errorf("Parse(%q) = %s, want one plan", tt.text, understood(p))
			continue
		}
		if diff := cmp.Diff(tt.want, plan.Order.Items, approximately); diff != "" {
			t.Errorf("Parse(%q) (-want +got):\n%s", tt.text, diff)
		}
	}
}

// approximately compares amounts to nine figures.
var approximately = cmp.Options{
	cmp.Comparer(func(a, b unit.Grams) bool { return near9(float64(a), float64(b)) }),
	cmp.Comparer(func(a, b unit.Litres) bool { return near9(float64(a), float64(b)) }),
}

func near9(a, b float64) bool { return a-b <= 1e-9*a && b-a <= 1e-9*b }

// What can be meant in several ways is asked; the sizes are those of all options.
func TestAsksOfOrders(t *testing.T) {
	for _, tt := range []struct {
		text string
		gap  Gap
		want []kitchen.Item
	}{
		{"3 jars, 3 quarts in all", EachOrTogether, []kitchen.Item{jarsOf(3, 3*quart), jarsOf(3, quart)}},
		{"3 jars, 3 quarts in total", EachOrTogether, []kitchen.Item{jarsOf(3, 3*quart), jarsOf(3, quart)}},
		{"3 jars, 1.5 l in all", EachOrTogether, []kitchen.Item{jarsOf(3, 1.5), jarsOf(3, 0.5)}},
		{"6 lb in 2 bags", EachOrTogether, []kitchen.Item{bagsOf(2, 6*lbs), bagsOf(2, 3*lbs)}},
		{"10 lb rye in 2 bags", EachOrTogether, []kitchen.Item{with(bagsOf(2, 10*lbs), grain.Rye, 0), with(bagsOf(2, 5*lbs), grain.Rye, 0)}},
		{"10 lb for 2 bags agar", EachOrTogether, []kitchen.Item{with(bagsOf(2, 10*lbs), 0, kitchen.Agar), with(bagsOf(2, 5*lbs), 0, kitchen.Agar)}},
		{"2 quarts lc at 45% water", MoistureOrRatio, []kitchen.Item{
			{Count: 2, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}, Route: kitchen.LiquidCulture, Moisture: 0.45},
			{Count: 2, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}, Route: kitchen.LiquidCulture, Ratio: 0.45},
		}},
	} {
		p := Parse(tt.text, tryNames)
		if p.Ask == nil || p.Ask.Gap != tt.gap || len(p.Ask.Options) != len(tt.want) {
			t.Errorf("Parse(%q) = %s, want question %d", tt.text, understood(p), tt.gap)
			continue
		}
		for i, o := range p.Ask.Options {
			got := Parse(o.Say, tryNames)
			want := []Intent{Plan{Order: kitchen.Order{Items: tt.want[i : i+1]}}}
			if diff := cmp.Diff(want, got.Intents, approximately); diff != "" {
				t.Errorf("%q, %s (-want +got):\n%s", tt.text, o.Label, diff)
			}
		}
	}
}

// No number is left out or added up in silence.
func TestNearOrders(t *testing.T) {
	for _, tt := range []struct {
		text    string
		trouble Trouble
		missed  string
	}{
		{"2 bags 5lb 3 lb agar", LeftOver, "3 lb"},
		{"3 bags 5 lb 2 kg rye", LeftOver, "2 kg"},
		{"3 bags 5lb, 12 lb in all, agar", LeftOver, "12 lb"},
		{"4 quart jars, 3 quarts in all, lc", LeftOver, "3 quarts"},
		{"3 quarts lc in 5", LeftOver, "5"},
		{"3 quarts lc, 2", LeftOver, "2"},
		{"2 quarts lc 45", LeftOver, "45"},
		{"3 quarts\n5", LeftOver, "5"},
		{"6 7 pints lc", LeftOver, "7 pints"},
		{"five six pints lc", LeftOver, "six pints"},
		{"7 quarts lc x 2", LeftOver, "x 2"},
		{"2x7 quarts lc", LeftOver, "7 quarts"},
		{"7+1 quarts lc", LeftOver, "1 quarts"},
		{"7 quarts + 1 lc", LeftOver, "1"},
		{"4 jars, a pint or a quart each", Bound, "or a quart"},
		{"4 jars, 1 l or 1 qt each, rye lc", Bound, "or 1 qt"},
		{"how much for 2 kg or 3 lb rye at 45%?", Bound, "or 3 lb"},
		{"2 kg+ rye", Bound, "2 kg+"},
		{"10+ pints rye lc", Bound, "10+ pints"},
		{"3 bags 5lb+ agar", Bound, "5lb+"},
		{"cook 3 quarts lc in the undo", LeftOver, "undo"},
		{"4 jars, 1 pint 4 oz each, rye lc", LeftOver, "4 oz"},
		{"4 quart jars (500 ml) lc", LeftOver, "500 ml"},
		{"2-quart jars lc", Incomplete, ""},
		{"3 bags 5 agar", LeftOver, "5"},
		{"3 bags 5lb agar 45", LeftOver, "45"},
		{"3 bags 5lb agar at 15 psi", LeftOver, "15 psi"},
		{"3 bags 5lb agar 20C", LeftOver, "20C"},
		{"i have 8 kg rye for 5 quarts", LeftOver, "5 quarts"},
		{"i have 8 kg rye, 5 bags", LeftOver, "5 bags"},
		{"no, 0", NotWhole, "0"},
		{"no, -4 bags", NotWhole, "-4 bags"},
		{"no, half", NotWhole, "half"},
	} {
		p := Parse(tt.text, tryNames)
		if p.Near == nil || p.Near.Trouble != tt.trouble || p.Near.Missed != tt.missed {
			t.Errorf("Parse(%q) = %s, want near %d, missed %q", tt.text, understood(p), tt.trouble, tt.missed)
		}
	}
}

// An example is there to be read: three digits, or as many as keep it within a
// thousandth.
func TestLegible(t *testing.T) {
	for text, want := range map[string]string{
		"3 4.0220000205 l jars":                 "3 4.02 l jars",
		"pot volume 15.141647136 l":             "pot volume 15.14 l", // 15.1 is 0.3 % less
		"3 bags 5 lb, 2.5 kg, 0.938 lb":         "3 bags 5 lb, 2.5 kg, 0.938 lb",
		"3 100.00000000000001 g jars + 2 pints": "3 100 g jars + 2 pints",
	} {
		if got := legible(text); got != want {
			t.Errorf("legible(%q) = %q, want %q", text, got, want)
		}
	}
}

// One order holds 20 kinds of things; what is said again adds to its kind.
func TestManyItems(t *testing.T) {
	p := Parse(strings.Repeat("3 bags 5lb agar + ", 200), tryNames)
	want := []Intent{Plan{Order: kitchen.Order{Items: []kitchen.Item{with(bagsOf(600, 5*lbs), 0, kitchen.Agar)}}}}
	if diff := cmp.Diff(want, p.Intents, approximately); diff != "" {
		t.Errorf("the same 200 times (-want +got):\n%s", diff)
	}
	all := make([]string, 21)
	for i := range all {
		all[i] = fmt.Sprintf("2 bags %d00 g", i+5)
	}
	if p := Parse(strings.Join(all[:20], " + "), tryNames); len(p.Intents) != 1 {
		t.Errorf("20 kinds: %s, want a plan", understood(p))
	}
	p = Parse(strings.Join(all, " + "), tryNames)
	if p.Near == nil || p.Near.Trouble != TooMany || utf8.RuneCountInString(p.Near.Got) > maxQuoted {
		t.Errorf("21 kinds: %s, want near %d", understood(p), TooMany)
	}
}

// A name that is no name, or a part that is missed, is quoted in part.
func TestClipped(t *testing.T) {
	long := strings.Repeat("x", 300)
	for _, text := range []string{"3 bags 5lb agar lc " + long, "3 bags 5lb agar in the " + long + " pot", long + " pot takes 7 quarts or 3 5lb bags"} {
		p := Parse(text, tryNames)
		if p.Near == nil || utf8.RuneCountInString(p.Near.Missed) > maxQuoted || utf8.RuneCountInString(p.Near.Got) > maxQuoted {
			t.Errorf("Parse(%q) = %s, want near with at most %d characters quoted", text, understood(p), maxQuoted)
		}
	}
}
