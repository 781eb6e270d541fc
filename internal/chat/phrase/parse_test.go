package phrase

import (
	"flag"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/kitchen"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// tryNames are the names of the kitchen that the tests talk in.
// Some of the cultures are called like a command, a grain, a species.
var tryNames = Names{
	Cookers: []string{"big pot", "small pot"}, Members: []string{"Ana", "Jo"},
	Sources: []string{"plate 7", "blue lc", "oyster", "rye", "help", "Mira's best"},
}

// understood prints what was understood on one line.
func understood(p Parsed) string {
	var b strings.Builder
	if p.Bare == Loosely {
		b.WriteString("(loosely) ")
	}
	for i, in := range p.Intents {
		if i > 0 {
			b.WriteString(" | ")
		}
		fmt.Fprintf(&b, "%s: %s", strings.TrimPrefix(fmt.Sprintf("%T", in), "phrase."), in)
	}
	if p.Ask != nil {
		fmt.Fprintf(&b, "ask %d %q", p.Ask.Gap, p.Ask.About)
		for _, o := range p.Ask.Options {
			fmt.Fprintf(&b, " [%s: %s]", o.Label, o.Say)
		}
	}
	if p.Near != nil {
		fmt.Fprintf(&b, "near %d, got %q, missed %q, like %q", p.Near.Trouble, p.Near.Got, p.Near.Missed, p.Near.Example)
	}
	if p.Near != nil && p.Near.Topic != 0 {
		fmt.Fprintf(&b, " topic %d", p.Near.Topic)
	}
	if len(p.Mended) > 0 {
		fmt.Fprintf(&b, " mended %v", p.Mended)
	}
	if b.Len() == 0 {
		return "-"
	}
	return b.String()
}

// TestGolden reads files of messages and compares what was understood with the
// table beside each, which was read like prose before it was kept.
func TestGolden(t *testing.T) {
	for _, name := range []string{"messages", "kitchen", "asks", "habits", "cookday"} {
		in, err := os.ReadFile("testdata/" + name + ".txt")
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for line := range strings.Lines(string(in)) {
			line = strings.TrimSuffix(line, "\n")
			if line == "" || strings.HasPrefix(line, "# ") || strings.HasPrefix(line, "## ") {
				continue
			}
			fmt.Fprintf(&b, "%s\n\t%s\n", line, understood(Parse(strings.ReplaceAll(line, `\n`, "\n"), tryNames)))
		}
		golden := "testdata/" + name + ".golden"
		if *update {
			if err := os.WriteFile(golden, []byte(b.String()), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), b.String()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", golden, diff)
		}
	}
}

func TestExamples(t *testing.T) {
	for _, g := range registry {
		for _, text := range g.examples {
			r := readAll(read(text, tryNames))
			if len(r.kinds) != 1 || r.kinds[0] != g.kind || r.wrong > 0 || r.ask != nil || r.near != nil {
				t.Errorf("example %q of kind %d reads as %v: %s", text, g.kind, r.kinds, understood(Parse(text, tryNames)))
			}
		}
	}
}

// TestLeftOver holds that any two things in one breath with a word too much are judged
// as a near miss, a question or talk: each kind has its answer to that.
func TestLeftOver(t *testing.T) {
	for _, g := range registry {
		for _, text := range g.examples {
			for _, before := range []string{"", "heat off and ", "heat off, now "} {
				Parse(before+text+" bananas", tryNames)
			}
		}
	}
}

// TestForm holds that case, spaces and final punctuation change nothing.
func TestForm(t *testing.T) {
	for _, g := range registry {
		for _, text := range g.examples {
			want := Parse(text, tryNames).Intents
			for _, other := range []string{text + "!", text + ".", "  " + strings.ReplaceAll(text, " ", "  ") + " ", text + " please"} {
				if got := Parse(other, tryNames).Intents; !reflect.DeepEqual(got, want) {
					t.Errorf("Parse(%q) = %v, want %v as without", other, got, want)
				}
			}
			if g.kind == KindMembers || g.kind == KindChoose { // names and codes keep their capitals
				continue
			}
			if got := Parse(strings.ToUpper(text), tryNames).Intents; !reflect.DeepEqual(got, want) {
				t.Errorf("Parse(%q) = %v, want %v", strings.ToUpper(text), got, want)
			}
		}
	}
}

func TestTooLong(t *testing.T) {
	text := strings.Repeat("3 bags 5lb agar, ", 300)
	if p := Parse(text, tryNames); p.Near == nil || p.Near.Trouble != TooLong {
		t.Errorf("Parse of %d characters = %s, want near %d", len(text), understood(p), TooLong)
	}
}

// TestReadable holds that what is shown to people reads back as what was meant.
func TestReadable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Plan{Order: anyOrder(t), OutBy: anyDeadline(t)}
		shown := readable(p.String(), kitchen.US)
		if got := Parse(shown, tryNames).Intents; len(got) != 1 || got[0].String() != p.String() {
			t.Errorf("%q, shown for %q, reads as %v", shown, p, got)
		}
	})
	for text, want := range map[string]string{
		"3 5 lb bags agar":                                  "3 bags 5 lb agar",
		"1 5 lb bag + 4 0.946352946 l jars rye lc":          "1 bag 5 lb + 4 quart jars rye lc",
		"i have 8 kg rye, 5 lb bags":                        "i have 8 kg rye, 5 lb bags",
		"big pot takes 7 0.946352946 l jars or 3 5 lb bags": "big pot takes 7 quart jars or 3 bags 5 lb",
	} {
		if got := readable(text, kitchen.US); got != want {
			t.Errorf("readable(%q) = %q, want %q", text, got, want)
		}
	}
}

// TestComplete answers questions in the ways people do.
func TestComplete(t *testing.T) {
	for _, tt := range []struct{ text, reply, want string }{
		{"5 jars", "the first", "5 quart jars"},
		{"5 jars", "2", "5 pint jars"},
		{"5 jars", "quart", "5 quart jars"},
		{"5 jars", "quarts", "5 quart jars"},
		{"5 jars", "gallon", "5 gallon jars"},
		{"5 jars", "half gallon", "5 half gallon jars"},
		{"5 jars", "500 ml", "5 500ml jars"},
		{"5 jars", "500 ml ones please", "5 500ml jars"},
		{"5 jars", "pizza", ""},
		{"3 5lb", "jar 0.5", ""},
		{"3 bags 5lb rye oats agar", "oats 3 kg", ""},
		{"3 5lb", "bags please", "3 5lb bags"},
		{"#1 98 degrees", "F", "#1 98 F"},
		{"#1 98 degrees", "celsius", "#1 98 C"},
		{"can i have the big pot sun morning", "9-12", "big pot sunday from 9am to 12pm"},
		{"can i have the big pot sun afternoon", "2-5", "big pot sunday from 2pm to 5pm"},
		{"quiet 10-7", "evening", "quiet 22-7"},
		{"5 jars", "7", ""},
		{"3 bags agar", "5lb", "3 bags 5lb agar"},
		{"3 bags agar", "2 kg", "3 2kg bags agar"},
		{"3 bags agar", "quart", ""},
		{"3 5lb", "bags", "3 5lb bags"},
		{"3 5lb rye lc", "bag", "3 5lb bags rye lc"},
		{"3 bags 5lb agar lc", "lc", "3 bags 5lb lc"},
		{"3 bags 5lb agar lc", "liquid culture", "3 bags 5lb lc"},
		{"3 bags 5lb rye oats agar", "oats", "3 bags 5lb oats agar"},
		{"2 kg rye at 45%", "moisture", "2 kg rye at 45% moisture"},
		{"2 kg rye at 45%", "ratio", "2 kg rye ratio 0.45"},
		{"2 kg rye at 45%", "water per grain", "2 kg rye ratio 0.45"},
		{"2 8-ounce jars rye", "weight", "2 0.5 lb jars rye"},
		{"2 jars (about 4 cups) rye", "together", "2 pint jars rye"},
		{"2 jars (about 4 cups) rye", "each", "2 quart jars rye"},
		{"3 bags (about 15 lb) rye", "together", "3 bags 5lb rye"},
		{"3 bags (about 15 lb) rye", "each", "3 bags 15lb rye"},
		{"3 bags rye, 15 lb in total", "together", "3 bags 5lb rye"},
		{"room is 110 degrees", "f", "room 110F"},
		{"3 bags agar", "5", "3 bags 5lb agar"},
		{"3 bags agar", "3", "3 bags 3lb agar"},
		{"3 bags agar", "the third", "3 bags 10lb agar"},
		{"3 bags agar", "4", "3 bags 2.5 kg agar"},
		{"3 bags agar", "8", "3 bags 8lb agar"},
		{"3 bags agar", "2.5", "3 bags 2.5 kg agar"},
		{"i have 8 kg rye", "1", "i have 8 kg rye, 5lb bags"},
		{"i have 8 kg rye", "5", "i have 8 kg rye, 5lb bags"},
		{"altitude 1600", "m", "elevation 1600 m"},
		{"altitude 5280", "ft", "elevation 5280 ft"},
		{"jars hold 500 g", "pint", "a pint jar holds 500 g"},
		{"agar 44%", "ratio", "agar 0.44"},
		// (0.44 - 0.12) / (1 - 0.44) = 0.571
		{"agar 44%", "moisture", "agar 0.57"},
		{"room is 110 degrees", "fahrenheit", "room 110F"},
		{"big pot holds 16 quarts or 4 5lb bags", "jars", "big pot takes 16 quart jars or 4 5lb bags"},
		{"big pot holds 16 quarts or 4 5lb bags", "the pot", "big pot is a 16 quart pot, takes 4 5lb bags"},
		{"i have 8 kg rye", "quart jars", "i have 8 kg rye, quart jars"},
		{"we're at 1600 m, 5 jars", "pint", "we're at 1600 m, 5 pint jars"},
		{"cook 5 jars rye lc", "quart", "cook 5 quart jars rye lc"},
		{"the usual is 3 bags agar", "5lb", "the usual is 3 bags 5lb agar"},
		// What else a reply says counts as if it had been said at first.
		{"5 jars", "quart lc", "5 quart jars lc"},
		{"5 jars", "quart jars rye lc", "5 quart jars rye lc"},
		{"5 jars", "1 quart lc", "5 quart jars lc"},
		{"5 jars", "quart of milk please", ""},
		{"5 jars", "6 quarts", ""},
		{"5 jars", "2 kg rye", ""},
		{"5 bags", "3 lb agar", "5 bags 3lb agar"},
		{"5 bags", "3 lb, wheat", "5 bags 3lb wheat"},
		{"5 bags", "3 lb dry", "5 bags 3lb dry"},
		{"5 bags", "3 lb out by 20:00", "5 bags 3lb out by 20:00"},
		{"5 bags", "3 lb and 2 quart jars", "5 bags 3lb and 2 quart jars"},
		{"3 5lb", "bags lc", "3 5lb bags lc"},
		{"3 bags 5lb agar lc", "agar wheat", "3 bags 5lb agar wheat"},
		{"4 jars + 3 bags 5lb agar", "quart lc", "4 quart jars lc + 3 bags 5lb agar"},
		{"big pot holds 16 quarts", "pot volume, max 15 psi", "big pot pot volume 16 quarts, max 15 psi"},
		{"room is 3 degrees", "20C", "room 20C"},
		{"#12 is 60", "F", "#12 60F"},
		{"#12 is 60", "140F", "#12 140F"},
		{"2 kg rye at 45%", "50% moisture", "2 kg rye at 50% moisture"},
		{"2 kg rye at 45%", "no, moisture, agar", "2 kg rye agar at 45% moisture"},
		{"room is 110 degrees", "f please", "room 110F"},
		{"altitude 1600", "1700 m", "elevation 1700 m"},
		{"cook 5 jars", "pint lc", "cook 5 pint jars lc"},
	} {
		p := Parse(tt.text, tryNames)
		if p.Ask == nil {
			t.Errorf("Parse(%q) = %s, want a question", tt.text, understood(p))
			continue
		}
		got, ok := Complete(p.Ask, tt.text, tt.reply, tryNames)
		if ok != (tt.want != "") {
			t.Errorf("Complete(%q, %q) = %q, %v", tt.text, tt.reply, got, ok)
			continue
		}
		if !ok {
			continue
		}
		have, want := Parse(got, tryNames), Parse(tt.want, tryNames)
		if want.Intents == nil || !reflect.DeepEqual(have.Intents, want.Intents) {
			t.Errorf("Complete(%q, %q) = %q: %s, want %s", tt.text, tt.reply, got, understood(have), understood(want))
		}
	}
}
