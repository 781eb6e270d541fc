package phrase

import (
	"strings"
	"testing"
)

// cultureTalk is talk with the words of cultures in it: none of it is for the bot.
var cultureTalk = []string{
	"threw the plates in the dishwasher", "what is in the bottle", "new plates are in the cupboard", "trace amounts of nuts", "family of 5 is coming", "where did the key go", "what came from the shop",
	"where did ana go", "where did 12 people go", "what became of jo", "finished the bottle", "used up the milk", "i made 12 plates of pasta", "got 3 bottles of wine from mira", "bottle of wine from mira", "ran out of plates",
	"got a plate from mum", "poured a bottle of wine", "4 dishes from ana", "the dish is from jo", "what's that from", "show me the family", "culture shock", "the culture here is great", "pop culture is dead",
	"he is a master of disguise", "a new dish", "plates are out", "made it", "got it from jo", "threw it out", "the oyster went bad on me", "help is gone", "rye is out", "oyster is from france", "my best is not enough", "trace the wire",
	"i got a new plate for the car", "license plate 7", "dish 2 is very tasty", "the blue one went bad", "more like syringe than needle", "cultures clash", "what is that", "who has it", "whose is that", "track and trace",
	"i have 3 plates of pasta", "got 3 plates of oysters please", "new plate", "we have 2 bottles of wine", "i have 2 plates from ana", "pl8 is not a word", "i have 12 bottles from the shop",
}

func TestCultureTalk(t *testing.T) {
	for _, text := range cultureTalk {
		p := Parse(text, tryNames)
		if p.Bare == Loosely {
			continue
		}
		if len(p.Intents) > 0 || p.Ask != nil || p.Near != nil {
			t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
		}
	}
}

// A culture can be called like anything: what its name means otherwise stays as it was.
func TestCulturesCalledLikeWords(t *testing.T) {
	nameless := tryNames
	nameless.Sources = nil
	for _, text := range []string{
		"help", "help cooling", "3 bags 5lb rye agar", "rye", "4 quarts oyster lc", "make it rye", "usual grain is rye", "what is lc", "i have 8 kg rye, 3lb bags", "limit for oyster 24C", "is 12 cool enough for oyster", "rye 0.42",
		"12 is gone", "bottle is empty", "help me", "who's cooking",
	} {
		if got, want := understood(Parse(text, tryNames)), understood(Parse(text, nameless)); got != want {
			t.Errorf("Parse(%q) = %s, want %s as without the names", text, got, want)
		}
	}
}

func TestReadCultures(t *testing.T) {
	for text, want := range map[string]string{
		"plates 7, 8 and 9 from plate 3":                   "new plates 7, 8, 9, from plate 3",
		"poured plates 7-9 yesterday":                      "new plates 7, 8, 9, made yesterday",
		"plate 7 poured 2 days ago":                        "new plate 7, made 2 days ago",
		"made a new plate 12, it's from #9.2":              "new plate 12, from #9.2",
		"plate 12 from jar 9.2":                            "new plate 12, from #9.2",
		"plate #8 from plate no 3":                         "new plate 8, from plate 3",
		"lc 4, 1 L, made on 3 oct from plate 7":            "new lc 4, from plate 7, 1 l, made october 3",
		"bottle 3 is lion's mane lc, 300ml, belongs to jo": "new bottle 3, of lion's mane, 0.3 l, belongs to Jo",
		"jo's plate 9 from plate 7":                        "new culture called jo's plate 9, from plate 7",
		"new lc called rye, 300 ml":                        "new lc called rye, 0.3 l",
		"new culture oyster":                               "new culture called oyster, of oyster",
		"new plate 9 from the blue lc, g3":                 "new plate 9, from blue lc, generation 3",
		"plate 9, second generation, from Mira's best":     "new plate 9, from Mira's best, generation 2",
		"got a syringe 4, pink oyster, from the club":      "new syringe 4, of pink oyster, from the club",
		"master 5 from 9.2, mine":                          "new master 5, from #9.2, mine",
		"threw plates 7 and 8":                             "threw out plate 7 and plate 8",
		"threw out plate 7, contaminated":                  "plate 7 went bad",
		"threw the blue lc out":                            "threw out blue lc",
		"bottle 3 is all used up":                          "used up bottle 3",
		"plate 7 has mould":                                "plate 7 went bad",
		"plate 7 and lc 4 went bad 2 days ago":             "plate 7 and lc 4 went bad, 2 days ago",
		"oyster is contaminated":                           "oyster went bad",
		"emptied bottle 3 yesterday":                       "used up bottle 3, yesterday",
		"what plates are there?":                           "which plates do we have",
		"any syringes left?":                               "which syringes do we have",
		"who has plate 7":                                  "what is plate 7",
		"whats help":                                       "what is help",
		"trace help":                                       "trace help",
		"trace king oyster":                                "trace king oyster",
		"TRACE LOT 3":                                      "trace grain lot 3",
		"trace bag lot b2":                                 "trace bag lot b2",
		"where did grain lot oak go?":                      "trace grain lot oak",
		"what did plate 7 touch":                           "trace plate 7",
		"family tree of #12.3":                             "trace #12.3",
		"trace run 12":                                     "trace #12",
		"what was made from lc 4":                          "trace lc 4",
		"trace 12.1-4":                                     "trace #12.1-4",
		"1.2 from 1.1":                                     "inoculated #1.2 from #1.1",
		"plate 9 is a week old":                            "new plate 9, made 7 days ago",
		"plate 9, 3 weeks old":                             "new plate 9, made 21 days ago",
		"which plate spoiled 1.4":                          "trace #1.4",
		"which jars got plate 7":                           "trace plate 7",
		"whose is 12.3":                                    "log #12.3",
		"lc5 from pl8 2":                                   "new lc 5, from plate 2",
		"pl 21 from plat 7":                                "new plate 21, from plate 7",
		"pl8 9 from pl8 7":                                 "new plate 9, from plate 7",
		"lc 5 from pl8":                                    "new lc 5, from plate 8",
		"new culture called big blue, from plate 3":        "new culture called big blue, from plate 3",
		"new culture called big oyster":                    "new culture called big oyster, of oyster",
		"new blue plate 4 from plate 7":                    "new culture called blue plate 4, of blue oyster, from plate 7",
		"got a syringe of enoki from a friend":             "new culture called enoki syringe, of enoki, from a friend",
		"bought an lc of shiitake":                         "new culture called shiitake lc, of shiitake",
		"trace tag soak24":                                 "trace #soak24",
	} {
		p := Parse(text, tryNames)
		if len(p.Intents) != 1 || p.Intents[0].String() != want {
			t.Errorf("Parse(%q) = %s, want %s", text, understood(p), want)
		}
	}
}

// TestNumberless holds that what is told of new cultures without a number is asked for
// it, and that the example makes just those, under the numbers that come next.
func TestNumberless(t *testing.T) {
	for text, want := range map[string]string{
		"i have 3 plates of blue oyster":       "new plates 8, 9, 10, of blue oyster",
		"new lc from plate 2":                  "new lc 1, from plate 2",
		"made 2 plates from 12.3":              "new plates 8, 9, from #12.3",
		"got 2 bottles of lion's mane from jo": "new bottles 1, 2, of lion's mane, from Jo",
		"poured a plate from plate 7":          "new plate 8, from plate 7",
	} {
		p := Parse(text, tryNames)
		if p.Near == nil || p.Near.Trouble != Numberless || p.Near.Example != want {
			t.Errorf("Parse(%q) = %s, want a number asked for, like %q", text, understood(p), want)
			continue
		}
		if like := Parse(want, tryNames); len(like.Intents) != 1 || like.Intents[0].String() != want {
			t.Errorf("the example %q is read as %s", want, understood(like))
		}
	}
}

// TestNearest holds which example is near to words that nothing could be made of, and
// that what was read in pieces is never put together to something that writes.
func TestNearest(t *testing.T) {
	for text, want := range map[string]string{
		"2 old jars, dont know what":     "4 quarts rye oyster on the shelf since 3 oct",
		"some oyster bags or other":      "4 quarts rye oyster on the shelf since 3 oct",
		"that plate of mine":             "new plate 8, blue oyster",
		"my best syringe goes somewhere": "new syringe 1, blue oyster",
	} {
		if got, ok := Nearest(text, tryNames); !ok || got != want {
			t.Errorf("Nearest(%q) = %q, want %q", text, got, want)
		}
	}
	if got, ok := Nearest("see you at eight", tryNames); ok {
		t.Errorf("talk has an example: %q", got)
	}
	for _, text := range []string{"3 quarts oyster frobbed plate 7 on the shelf since 20 feb", "lc 5 from plate 2 zork 12.3 green"} {
		if p := Parse(text, tryNames); p.Near != nil && strings.Contains(p.Near.Example, ";") {
			t.Errorf("%q is offered %q", text, p.Near.Example)
		}
	}
}
