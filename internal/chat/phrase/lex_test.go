package phrase

import (
	"strings"
	"testing"

	"ryebell/internal/kitchen"
)

// The phrases are our own, in the words of the trade; each says in [show]'s short
// form what must be read.
func TestLex(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		// Numbers.
		{".5 kg", "q0.5 500=kg"},
		{"two and a half kilos", "q2.5 2500=kg"},
		{"2 and three quarters lb", "q2.75 1247.379=lb+"},
		{"half a dozen bags", "n6 | bag"},
		{"a couple of quarts", "q2 1.8927=quart"},
		{"twenty-five 5lb bags", "n25 | q5 2267.9619=lb | bag"},
		{"one hundred and twenty g", "q120 120=g"},
		{"two thousand feet", "q2000 609.6=ft"},
		{"12,345.6 g", "q12345.6 12345.6=g"},
		{"18,50 €", "q18.5 18.5=EUR"},
		{"1.500,5 kg", "unclear"},
		{"1/0 kg", "unclear"},
		{"3 x 5 lb", "n3x | q5 2267.9619=lb"},
		{"500 x 3", "n500x | n3"},
		{"-3 bags", "n-3 | bag"},
		{"3 1/2 gal jars", "q3.5 13.2489=gal+ | jar"},
		{"1 1/2-pint jar", "n1 | q0.5 0.2366=pint | jar"},
		{"1½-pint jar", "q1.5 0.7098=pint | jar"},
		{"three quarter pound bags", "n3 | q0.25 113.3981=lb | bag"},
		{"1 2 3", "n1 | n2 | n3"},
		{"1,2,3", "unclear"},
		{"14:60", "unclear"},
		{"15:30am", "unclear"},
		{"out by 03/04 14:00", "out | by | unclear"},
		{"at half 8", "at | unclear"},
		{"at half 8 bags", "at | half | n8 | bag"},
		{"tonight", "at(today)"},
		{"3² bags", "unclear | bag"},
		{"２½ kg", "q2.5 2500=kg"},
		{"٣ bags", "n3 | bag"},
		{"88 F on the one in the middle", "q88 31.1111=°F | on | the | one | in | the | middle"},
		// Quantities.
		{"3 5 lb bgs for agar pls", "n3 | q5 2267.9619=lb | bag | for | route:agar | pls"},
		{"two 10# bags of whole oats agar, what water", "n2 | q10 4535.9237=lb | bag | of | grain:oats | route:agar | , | what | water"},
		{"5# and #5", "q5 2267.9619=lb | and | #5"},
		{"8 fluid ounce jars", "q8 0.2366=fl oz | jar"},
		{"2 8 oz jars", "n2 | q8 226.7962=oz/0.2366=fl oz | jar"},
		{"3 lb. bags of oats", "q3 1360.7771=lb | bag | of | grain:oats"},
		{"2 lb 4 oz", "q2.25 1020.5828=lb"},
		{"1kg 500g", "q1.5 1500=kg"},
		{"a pound and a half of rye", "q1.5 680.3886=lb | of | grain:rye"},
		{"we're at 5,280 ft", "we're | at | q5280 1609.344=ft"},
		{"0.8 bar", "q0.8 80=bar"},
		{"7 tonne jars", "q7 7000000=t | jar"},
		{"3 bags 5 km", "n3 | bag | q5 5000=km"},
		{"3 bags 5 mph", "n3 | bag | q5 5=speed"},
		{"20 deg. c", "q20 20=°C"},
		{"46.5c", "q46.5 46.5=°C/11.0014=cup"},
		{"room 68 °F", "room | q68 20=°F"},
		{"5000' high", "q5000 1524=ft | high"},
		{"6' high", "unclear | high"},
		// Ranges and bounds.
		{"between 2 and 3 kg", "between | 2..3 1000=kg"},
		{"at least 2 kg wet", "2..+Inf 1000=kg | wet"},
		{"no more than 5 bags", "-Inf..5  | bag"},
		{"no less than 3 bags", "3..+Inf  | bag"},
		{"over four ounces", "4..+Inf 28.3495=oz/0.0296=fl oz"},
		{"less than 6 lb", "-Inf..6 453.5924=lb"},
		{"3 or 4 bags", "3..4  | bag"},
		{"7 quarts or 3 5lb bags", "q7 6.6245=quart | or | n3 | q5 2267.9619=lb | bag"},
		{"20-30%", "20..30 "},
		{"10 kg to 12 kg", "10..12 1000=kg"},
		{"ten to four", "10..4 "},
		{"from 10 to 12", "from | 10..12 "},
		{"quiet 22-7", "quiet | 22..7 "},
		// Containers.
		{"4 quart jars rye LC + 2 3-lb bags", "q4 3.7854=quart | jar | grain:rye | route:liquid culture | + | n2 | q3 1360.7771=lb | bag"},
		{"ten half pints millet g2g", "n10 | jar 236.5882 ml | grain:millet | route:grain to grain"},
		{"half gal jars x4 popcorn", "jar 1892.7059 ml | jar | n4x | grain:maize"},
		{"can 4 five pounders go in one load", "can | n4 | q5 2267.9619=pounder | go | in | n1 | load"},
		{"a half gallon", "n1 | jar 1892.7059 ml"},
		{"2 quarts and a half pint", "q2 1.8927=quart | and | n1 | jar 236.5882 ml"},
		{"only pints", "only | jar 473.1765 ml"},
		// Money.
		{"bought 25 kg rye lot 3 32 eur", "bought | q25 25000=kg | grain:rye | lot | n3 | q32 32=EUR"},
		{"rye lot 3 eur 125", "grain:rye | lot | n3 | q125 125=EUR"},
		{"lot 3 $ 8.50", "lot | n3 | q8.5 8.5=$"},
		{"€18,50", "q18.5 18.5=EUR"},
		{"$1,200", "q1200 1200=$"},
		{"usd3.14", "q3.14 3.14=USD"},
		{"twenty dollar and 43", "unclear"},
		// References.
		{"12.1-4 oyster lc 10ml", "#12.1-4 | oyster | route:liquid culture | q10 0.01=ml"},
		{"12.1-12.5 used", "#12.1-5 | used"},
		{"12.1,3,5 green", "#12.1,3,5 | green"},
		{"2.1-2.5 kg", "2.1..2.5 1000=kg"},
		{"2.5-3", "2.5..3 "},
		{"run 12.3", "#12.3"},
		{"run 3 bags", "run | n3 | bag"},
		{"12.1 12.2 shiitake", "n12.1#12.1 | n12.2#12.2 | shiitake"},
		{"12.3 is 31 outside", "n12.3#12.3 | is | n31 | outside"},
		// Times.
		{"at 15 since 14:05", "at | n15 | since | at(at 14:05)"},
		{"see you at 5 then", "see | you | at | n5 | then"},
		{"we are at 1600 m", "we | are | at | q1600 1600=m/96000=min"},
		{"15h20", "at(at 15:20)"},
		{"1h20 ago", "at(1 h 20 min ago)"},
		{"1:30 h", "1h30m0s"},
		{"2 h 15", "2h15m0s"},
		{"since 2h", "since | 2h0m0s"},
		{"at 16h", "at(at 16:00)"},
		{"930am", "at(at 09:30)"},
		{"at ten to four", "at(at 3:50)"},
		{"20 minutes to 2pm tomorrow", "at(tomorrow at 13:40)"},
		{"12 noon", "at(at 12:00 pm)"},
		{"11 P.M.", "at(at 23:00)"},
		{"the 3rd at 10", "at(the 3rd at 10:00)"},
		{"12 may", "at(may 12)"},
		{"12 may be ready", "n12 | may | be | ready"},
		{"i may 3 bags", "i | may | n3 | bag"},
		{"i sat by the pot", "i | sat | by | the | pot"},
		{"sun is out", "sun | is | out"},
		{"sat.", "at(saturday)"},
		{"fri, sep 20", "at(friday september 20)"},
		{"big pot saturday 10-14", "name:big pot | over(saturday from 10:00 am to 14:00)"},
		{"saturday 10am-2pm", "over(saturday from 10:00 am to 14:00)"},
		{"5 min", "5m0s"},
		{"lol 3 bags", "lol | n3 | bag"},
		{"a few minutes ago", "a | few | minutes | ago"},
		{"day after tomorrow at 9", "at(in 2 days at 9:00)"},
		// Names, grains, routes.
		{"ana’s 3 bags", "name:Ana | n3 | bag"},
		{"Röhre 2 and big-pot", "name:Röhre 2 | and | name:big pot"},
		{"will 3 bags fit", "will | n3 | bag | fit"},
		{"Will they fit", "will | they | fit"},
		{"and Will takes 12", "and | name:Will | takes | n12"},
		{"3 bags 5lb cracked corn", "n3 | bag | q5 2267.9619=lb | unsuited:cracked corn"},
		{"grain-to-grain", "route:grain to grain"},
		{"w/ gypsum w/o lime", "with | gypsum | without | lime"},
		{"barely 3 bags", "barely | n3 | bag"},
		// Slips.
		{"3 bgas 5lb agra", "n3 | bag | q5 2267.9619=lb | route:agar"},
		{"2 qaurts milllet", "q2 1.8927=quart | grain:millet"},
		{"wendesday", "at(wednesday)"},
		{"5 lbz", "q5 2267.9619=lb"},
		{"thre bags", "n3 | bag"}, // and not threw, which must be spelt right
		{"seveen bags", "n7 | bag"},
		{"fife bags", "fife?file/fine/fire/five/life/rife/wife | bag"},
		{"cooll", "cooll"},
	} {
		if got := show(Lex(c.text, collective)); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// Case, width, quotes and marks that don't show make no difference.
func TestLexFolds(t *testing.T) {
	const plain = "how much for 3 bags 5lb rye at 45%? i've 2 1/2 kg, big pot's max 15 psi, sat 10-14"
	want := show(Lex(plain, collective))
	for name, text := range map[string]string{
		"upper case": strings.ToUpper(plain),
		"curly":      strings.ReplaceAll(plain, "'", "\u2019"),
		"spaces":     strings.ReplaceAll(plain, " ", "\u00a0\u2009"),
		"nul":        strings.ReplaceAll(plain, " ", " \x00"),
		"bidi":       "\u202b" + strings.ReplaceAll(plain, "bags", "ba\u200bgs\u200f") + "\u202c",
		"dash":       strings.ReplaceAll(plain, "-", "\u2013"),
		"slash":      strings.ReplaceAll(plain, "/", "\u2044"),
		"emoji":      strings.ReplaceAll(plain, ",", " \U0001F344,"),
		"wide": strings.Map(func(r rune) rune {
			if r > ' ' && r <= '~' {
				return r + 0xFEE0
			}
			return r
		}, plain),
	} {
		if got := show(Lex(text, collective)); got != want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, want)
		}
	}
}

// Extents lead back to the text as typed, whatever folding did to it.
func TestExtentsAreOfTheTextAsTyped(t *testing.T) {
	const text = "\u200f３ bags… 2½ ㎏ “rye” Röhre 2"
	want := []string{"３", "bags", "2½ ㎏", "rye", "Röhre 2"}
	tokens := Lex(text, collective)
	if len(tokens) != len(want) {
		t.Fatalf("got %s", show(tokens))
	}
	for i, tok := range tokens {
		if e := tok.Extent(); text[e.Start:e.End] != want[i] {
			t.Errorf("token %d is %q, want %q", i, text[e.Start:e.End], want[i])
		}
	}
}

func TestQuartsAreWhoseTheCollectiveSays(t *testing.T) {
	for text, want := range map[string]string{
		"6 quarts":   "q6 6.8191=quart",
		"half pints": "jar 284.1306 ml",
		"10 fl oz":   "q10 0.2841=fl oz",
		"1 gal":      "q1 4.5461=gal",
	} {
		if got := show(Lex(text, Names{Quarts: kitchen.Imperial})); got != want {
			t.Errorf("%q: got %s, want %s", text, got, want)
		}
	}
}

// A word spelt right is never taken for another: none of the vocabulary, and none
// of the pairs of trade words that lie one letter apart.
func TestKnownWordsAreNotMended(t *testing.T) {
	for w := range vocabulary() {
		for _, tok := range Lex("3 "+w, Names{}) {
			if as := tok.TakenFor(); as != "" {
				t.Errorf("%q taken for %q", w, as)
			}
		}
	}
	for _, w := range strings.Fields("cook cool cooking cooling heat wheat bag bad log lot lost what oat sat min mon") {
		if k := vocabulary()[w]; k == nil {
			t.Errorf("%q is not known", w)
		}
	}
}

// Words that do harm when guessed count only when spelt right.
func TestFirmWordsWantTheirSpelling(t *testing.T) {
	for _, w := range strings.Fields("coool zeroo offf threww losst") {
		for _, tok := range Lex("3 "+w, Names{}) {
			switch as := tok.TakenFor(); as {
			case "cool", "zero", "off", "threw", "lost":
				t.Errorf("%q taken for %q", w, as)
			}
		}
	}
}

// Names are mended to, and never mended themselves.
func TestNamesAreMended(t *testing.T) {
	names := Names{Cookers: []string{"Kettle Bertha"}, Members: []string{"Steem"}}
	for text, want := range map[string]string{
		"kettle bertah": "name:Kettle Bertha",
		"steem":         "name:Steem",
	} {
		if got := show(Lex(text, names)); got != want {
			t.Errorf("%q: got %s, want %s", text, got, want)
		}
	}
}
