package phrase

import (
	"strings"
	"testing"
)

// shelfNames are the names of a collective that has cultures, units and places.
var shelfNames = Names{
	Cookers: []string{"big pot", "small pot"}, Members: []string{"Ana", "Jo"}, Sources: []string{"plate 7", "bottle 3", "Old Faithful", "oyster", "rye", "help", "blue lc"},
	Units: []string{"bag A", "Grandma"}, Places: []string{"fridge", "top shelf", "Jo's shed"},
}

// TestTellUnits has messages as people type them, invented, and how they must print.
func TestTellUnits(t *testing.T) {
	for text, want := range map[string]string{
		// Which units.
		"12.1-4 shaken":                           "shook #12.1-4",
		"12.1, 3 and 5 shaken":                    "shook #12.1,3,5",
		"12.1 and .2 shaken":                      "shook #12.1,2",
		"12.1 12.4 shaken":                        "shook #12.1,4",
		"12.1-12.5 shaken":                        "shook #12.1-5",
		"12.1 to 12.5 shaken":                     "shook #12.1-5",
		"12.1 to 4 shaken":                        "shook #12.1-4",
		"12.1 - 12.4 shaken":                      "shook #12.1-4",
		"12.1-3, 5-7 shaken":                      "shook #12.1-3,5-7",
		"12.1/2 shaken":                           "shook #12.1,2",
		"12.1 & 3 shaken":                         "shook #12.1,3",
		"#12.3 shaken":                            "shook #12.3",
		"12.3 13.1 shaken":                        "shook #12.3 #13.1",
		"12.3, 13.1-2 and .4 shaken":              "shook #12.3 #13.1,2,4",
		"12.10 shaken":                            "shook #12.10",
		"all of 12 shaken":                        "shook #12",
		"everything in 12 shaken":                 "shook #12",
		"12 shaken":                               "shook #12",
		"12 and 13 shaken":                        "shook #12 #13",
		"run 12 shaken":                           "shook #12",
		"shook the rest of 12":                    "shook the rest of #12",
		"the jars of 12 are shaken":               "shook the jars of #12",
		"shook the jars of 12":                    "shook the jars of #12",
		"shook the three bags of 12":              "shook the 3 bags of #12",
		"shook 12 except .3":                      "shook #12 except 3",
		"shook 12 all but 3 and 5":                "shook #12 except 3, 5",
		"shook all of 12 but not 12.3":            "shook #12 except 3",
		"shook the bags of 12 except 2":           "shook the bags of #12 except 2",
		"bag 2 of 12 green":                       "#12.2 is green",
		"bags 2-4 of 12 are green":                "#12.2-4 is green",
		"bag A green":                             "bag A is green",
		"shook bag a and 12.3":                    "shook #12.3 bag A",
		"shook grandma":                           "shook Grandma",
		"shook the suspect ones of 12":            "shook the suspect ones of #12",
		"threw all contaminated jars of 12":       "threw the contaminated jars of #12 out",
		"12.1-2 oyster, the rest blank":           "inoculated #12.1,2 with oyster; left the rest of #12 blank",
		"12.1 oyster, .2 shiitake, the rest king": "inoculated #12.1 with oyster; inoculated #12.2 with shiitake; inoculated the rest of #12 with king oyster",
		// What was put on.
		"12.1-4 oyster lc 10ml":                                "inoculated #12.1-4 with oyster, lc, 10 ml each",
		"inoculated 12 with blue plate 7":                      "inoculated #12 with plate 7, blue oyster",
		"knocked up 12.1 and .2 w LM, quarter plate each":      "inoculated #12.1,2 with lion's mane, agar",
		"g2g: 1 quart of 9.3 into 12.1-12.5":                   "inoculated #12.1-5 from #9.3, g2g, 0.189270589 l each",
		"g2g 9.3 into 12.1-5":                                  "inoculated #12.1-5 from #9.3, g2g",
		"g2g 12.1-5 from 9.3":                                  "inoculated #12.1-5 from #9.3, g2g",
		"9.3 into 12.1-5":                                      "inoculated #12.1-5 from #9.3",
		"9.3 went into 12.1-5":                                 "inoculated #12.1-5 from #9.3",
		"12.1-5 from 9.3":                                      "inoculated #12.1-5 from #9.3",
		"12.1-5 oyster from 9.3":                               "inoculated #12.1-5 from #9.3, oyster",
		"all of 12 pink oyster 5cc":                            "inoculated #12 with pink oyster, 5 ml each",
		"all of 12 pink 5cc":                                   "inoculated #12 with pink oyster, 5 ml each",
		"12.1 12.2 shitake 12.3 reishi 12.4 leave blank":       "inoculated #12.1,2 with shiitake; inoculated #12.3 with reishi; left #12.4 blank",
		"did the jars yesterday evening w bottle 3, 3 ml each": "yesterday: inoculated the jars with bottle 3, 3 ml each",
		"noc'd the three bags, king, plate 11":                 "inoculated the 3 bags with plate 11, king oyster",
		"#12 plate 7":                                          "inoculated #12 with plate 7",
		"12.1 plate 12":                                        "inoculated #12.1 with plate 12",
		"12.1-3 with lc 4":                                     "inoculated #12.1-3 with lc 4",
		"12.1-3 syringe 2, 2 ml each":                          "inoculated #12.1-3 with syringe 2, 2 ml each",
		"12.1 master 5":                                        "inoculated #12.1 with master 5",
		"inoculated 12.1-3 with gerds stuff":                   "inoculated #12.1-3 with gerds stuff",
		"inoculated 12.1-3 with Old Faithful":                  "inoculated #12.1-3 with Old Faithful",
		"12.1 help":                                            "inoculated #12.1 with help",
		"12.2 with rye":                                        "inoculated #12.2 with rye",
		"12.1 rye, 12.2 help":                                  "inoculated #12.1 with rye; inoculated #12.2 with help",
		"12.1 blue lc 5 ml":                                    "inoculated #12.1 with blue lc, 5 ml each",
		"inoculated 12":                                        "inoculated #12",
		"inoculated 12.1-4":                                    "inoculated #12.1-4",
		"12.1-4 inoculated with oyster":                        "inoculated #12.1-4 with oyster",
		"yesterday inoculated 12.1-4 with oyster":              "yesterday: inoculated #12.1-4 with oyster",
		"inoculated 12.1-4 with oyster at 14:05":               "at 14:05: inoculated #12.1-4 with oyster",
		"12.1-2 oyster yesterday, 12.3 shiitake":               "yesterday: inoculated #12.1,2 with oyster; inoculated #12.3 with shiitake",
		"10 ml oyster lc into 12.1-4":                          "inoculated #12.1-4 with oyster, lc, 10 ml each",
		"plate 7 on 12.1-3":                                    "inoculated #12.1-3 with plate 7",
		"put plate 7 on 12.1-3":                                "inoculated #12.1-3 with plate 7",
		"12.1 shitake\n12.2 reishi\n12.3 blank":                "inoculated #12.1 with shiitake; inoculated #12.2 with reishi; left #12.3 blank",
		"12.1 spores 2cc":                                      "inoculated #12.1 with spores, 2 ml each",
		"12.1 lions main":                                      "inoculated #12.1 with lion's mane",
		"12.1 hen of the woods":                                "inoculated #12.1 with maitake",
		"12.1-2 oyster, 12.3 shiitake, 12.4 blank":             "inoculated #12.1,2 with oyster; inoculated #12.3 with shiitake; left #12.4 blank",
		"12.4 blank":                                           "left #12.4 blank",
		"left 12.4 blank":                                      "left #12.4 blank",
		"12.4 is the control":                                  "left #12.4 blank",
		// What they look like.
		"12.2 30%":                                   "#12.2 is 30% white",
		"12.1 70%, 12.2 60, nothing on 12.3":         "#12.1 is 70% white; #12.2 is 60% white; #12.3 is not growing",
		"12.4 looks cloudy and smells sour":          "#12.4 is wet; #12.4 is sour",
		"12.2 about 30 percent":                      "#12.2 is 30% white",
		"12.2 nothing yet":                           "#12.2 is 0% white",
		"12.2 still nothing after 4 days":            "#12.2 is 0% white",
		"12.2 is half white":                         "#12.2 is 50% white",
		"12.2 a third grown":                         "#12.2 is 33.33333333333333% white",
		"12 all white except .3 abt 60":              "#12 except 3 is grown through; #12.3 is 60% white",
		"12 all white except .3, which is green":     "#12 except 3 is grown through; #12.3 is green",
		"12 is all white except .3":                  "#12 except 3 is grown through",
		"shook 12":                                   "shook #12",
		"shaken 12.1-3":                              "shook #12.1-3",
		"gave 12.3 a shake":                          "shook #12.3",
		"12.1 done":                                  "#12.1 is grown through",
		"12.1 fully colonised":                       "#12.1 is grown through",
		"12.1 grown through":                         "#12.1 is grown through",
		"12.1 all white":                             "#12.1 is grown through",
		"12.1 is ready":                              "#12.1 is grown through",
		"12.3 green":                                 "#12.3 is green",
		"ugh trich in 12.3":                          "#12.3 is green",
		"12.4 smells sour, wet at the bottom":        "#12.4 is sour; #12.4 is wet",
		"1.3 rye":                                    "inoculated #1.3 with rye",
		"1.1-2 agar plate 7, 1.3 lc 2":               "inoculated #1.1,2 with plate 7; inoculated #1.3 with lc 2",
		"12.2-3 top shelf":                           "moved #12.2,3 to top shelf",
		"12.1 fridge, 12.2-3 top shelf":              "moved #12.1 to fridge; moved #12.2,3 to top shelf",
		"12.2 looks wet":                             "#12.2 is wet",
		"nothing on 12.4":                            "#12.4 is not growing",
		"nothing happening in 12.2 after 9 days":     "#12.2 is not growing",
		"no growth in 12.2 on day 9":                 "#12.2 is not growing",
		"a bit of yellow liquid in 14.1 is that bad": "#14.1 has yellow drops",
		"12.3 mouldy":                                "#12.3 is contaminated",
		"12.3 contaminated":                          "#12.3 is contaminated",
		"12.3 bad":                                   "#12.3 is contaminated",
		"12.2 looks fine after all":                  "#12.2 is fine",
		"12.4 stalled":                               "#12.4 is stalled",
		"12.4 is bulging":                            "#12.4 is bulging",
		"12.4 leaking":                               "#12.4 is leaking",
		"12.4 pink":                                  "#12.4 is pink",
		"12.4 cobweb":                                "#12.4 has cobweb",
		"12.4 black pin mould":                       "#12.4 has black heads",
		"12.4 blue-green":                            "#12.4 is blue-green",
		"12.4 blue/green dust":                       "#12.4 is blue-green",
		"12.4 smells like beer":                      "#12.4 is yeasty",
		"12.4 slimy":                                 "#12.4 is slimy",
		"12.4 looks weird":                           "#12.4 is odd",
		"12.3 green, binned it":                      "#12.3 is green; threw #12.3 out",
		"shook 12.2, about 30%":                      "shook #12.2; #12.2 is 30% white",
		"12.3 green and 12.4 smells sour":            "#12.3 is green; #12.4 is sour",
		"12.3 has trich :(":                          "#12.3 is green",
		"12.3 got contaminated, threw it out":        "#12.3 is contaminated; threw #12.3 out",
		"12.1-4 LM from plate 7":                     "inoculated #12.1-4 with plate 7, lion's mane",
		// What became of them.
		"used 12.1 12.4 on straw":            "used #12.1,4 on straw",
		"used half of 12.3":                  "used 50% of #12.3",
		"used half of 12.3 on straw":         "used 50% of #12.3 on straw",
		"12.1 went into 4 bags of sawdust":   "used #12.1 on 4 bags of sawdust",
		"used 12 on straw":                   "used #12 on straw",
		"used 12.1":                          "used #12.1",
		"12.1 used":                          "used #12.1",
		"gave 2 bags to Mira, 12.1 and 12.2": "gave #12.1,2 to Mira",
		"12.3 given to mira":                 "gave #12.3 to Mira",
		"gave 12.3 to the neighbours":        "gave #12.3 to the neighbours",
		"gave mira 12.3":                     "gave #12.3 to Mira",
		"gave 12.3 away":                     "gave #12.3 away",
		"threw 12.3":                         "threw #12.3 out",
		"binned 12.1-2":                      "threw #12.1,2 out",
		"tossed 12.1-2":                      "threw #12.1,2 out",
		"chucked out 12.1-2":                 "threw #12.1,2 out",
		"chucked 12.1 out":                   "threw #12.1 out",
		"12.3 is gone":                       "#12.3 is gone",
		"12.1-3 in the fridge":               "moved #12.1-3 to fridge",
		"moved 12.3 to the top shelf":        "moved #12.3 to top shelf",
		"put 12 on the incubation shelf":     "moved #12 to incubation shelf",
		"12.3 is on shelf 2 now":             "moved #12.3 to shelf 2",
		"moved 12.3 to jo's shed":            "moved #12.3 to Jo's shed",
		"12.3 is bag B":                      "call #12.3 bag B",
		"call 12.3 bag A":                    "call #12.3 bag A",
		"12.3 is called Old Lady":            "call #12.3 Old Lady",
		"#soak24 on 12":                      "tag #12 #soak24",
		"tag 12 #soak24":                     "tag #12 #soak24",
		"12.1 #newlid #soak-24":              "tag #12.1 #newlid #soak-24",
		"12 is rye lot 3":                    "#12 has grain lot rye 3",
		"rye lot 3 in 12":                    "#12 has grain lot rye 3",
		"bag lot 7 on 12.1-3":                "#12.1-3 has bag lot 7",
		"12 lids synthetic filter":           "#12 has lids synthetic filter",
		"12.1-2 top layer":                   "#12.1,2 stood top layer",
		"12.3 was in the middle":             "#12.3 stood in the middle",
		"12.3 bottom":                        "#12.3 stood bottom layer",
		"12.3 inner":                         "#12.3 stood in the middle",
	} {
		p := Parse(text, shelfNames)
		if len(p.Intents) != 1 || p.Bare == Loosely {
			t.Errorf("Parse(%q) = %s, want %s", text, understood(p), want)
			continue
		}
		if _, ok := p.Intents[0].(TellUnits); !ok || p.Intents[0].String() != want {
			t.Errorf("Parse(%q) = %s, want %s", text, understood(p), want)
			continue
		}
		if again := Parse(want, shelfNames); len(again.Intents) != 1 || again.Intents[0].String() != want {
			t.Errorf("%q prints as %q, which reads as %s", text, want, understood(again))
		}
	}
}

// TestLooselyOfUnits holds that what names no unit of a run counts only where it fits.
func TestLooselyOfUnits(t *testing.T) {
	for text, want := range map[string]string{
		"smells sour": "it is sour", "green": "it is green", "looks wet": "it is wet", "looks fine": "it is fine", "shook them": "shook it", "threw it out": "threw it out",
		"used it on straw": "used it on straw", "bag 2 green": ".2 is green", "the suspect ones are fine": "the suspect ones is fine", "the rest is green": "the rest is green",
		"the jars look wet": "the jars is wet", "smells sour, wet at the bottom": "it is sour; it is wet", "shook the rest": "shook the rest", "shook the three bags": "shook the 3 bags",
	} {
		p := Parse(text, shelfNames)
		if len(p.Intents) != 1 || p.Bare != Loosely || p.Intents[0].String() != want {
			t.Errorf("Parse(%q) = %s, want (loosely) %s", text, understood(p), want)
		}
	}
}

// TestNotOfUnits holds that readings and stages of runs stay what they were.
func TestNotOfUnits(t *testing.T) {
	for text, want := range map[string]string{
		"12.3 is 31": "*phrase.Tell", "12.3 is 31 outside": "Tell", "12 at 24,5": "Tell", "#12 115f": "Tell", "12 is gone": "Tell", "#12 is gone": "Tell", "used up 12": "Tell", "12 is all used": "Tell",
		"31 on 12.3": "Tell", "#12 heat off": "Tell", "#12 at 15": "Tell", "12 zero": "Tell", "is 12 cool yet": "CoolYet", "when can i inoculate": "CoolYet", "log 12": "Log", "log 12.3": "LogUnit",
		"trace 12.3": "Trace", "trace plate 7": "Trace", "plate 7 from plate 3": "MakeCulture", "threw plate 7": "EndCulture", "1.1 41, 1.2 43": "Tell", "46C": "Tell", "i've got 12": "TakeOver", "bags are out on the rack": "Tell",
	} {
		p := Parse(text, shelfNames)
		got := understood(p)
		want = strings.TrimPrefix(want, "*phrase.")
		if !strings.HasPrefix(strings.TrimPrefix(got, "(loosely) "), want+": ") {
			t.Errorf("Parse(%q) = %s, want %s", text, got, want)
		}
	}
}

// TestNearlyOfUnits holds that an example is made of what was said.
func TestNearlyOfUnits(t *testing.T) {
	for text, want := range map[string]string{
		"12.2 firty percent": "#12.2 is 30% white", "12.4 zzz trich qqq": "#12.4 is green", "12.1-3 brrm oyster": "inoculated #12.1-3 with oyster",
	} {
		if p := Parse(text, tryNames); p.Near == nil || p.Near.Example != want {
			t.Errorf("Parse(%q) = %s, want near, like %q", text, understood(p), want)
		}
	}
}

// unitChatter is talk with the words of the shelf in it.
var unitChatter = []string{
	"used the car", "threw the ball", "gave mira the keys", "i'm done", "green light", "12 oysters please", "shook hands with the mayor", "threw a party", "threw up twice", "used to live there", "moved to berlin",
	"moved the car to the garage", "put it on the table", "put the kettle on", "gave up smoking", "gave jo 5 euros", "gave my bike away", "left my keys at home", "left the door open", "call me later", "call jo bag lady",
	"call 112", "the king is dead", "the king lives in london", "pink looks good on you", "my thumb is green", "green beans for dinner", "blue jeans and a white shirt", "nothing to do today", "nothing on tv", "nothing happening here",
	"no growth in the economy", "black friday deals", "black coffee please", "12 green apples", "3 red balls", "2 yellow lemons", "trich is a disease too", "i need yeast for the bread", "the bread smells good", "that smells like beer to me, cheers",
	"the milk is sour", "the milk has gone bad", "my phone is dead", "the battery is dead again", "the roof is leaking", "the tap leaks", "the fridge is empty", "the shelf is full of books", "bottle 3 beers", "a bottle of wine", "plate of pasta",
	"lion king is on tv", "i did the dishes with jo", "did the shopping with ana", "did 12 push ups", "did 12 km today", "done with the jars for today, going home", "half of them came", "half the town was there", "30% off at the shop", "100% agree",
	"used 12 eggs for the cake", "12 people came", "12 is my lucky number", "12.5 km run", "1.5 litres of milk", "3.5 stars", "it's all white outside", "all done for today", "the rest is history", "the rest of us", "the other bags are in the car",
	"tag you're it", "tag me in the photo", "#party", "#blessed day", "#throwback to last year", "threw 12 darts", "tossed a coin", "the jars of honey", "hen party on saturday", "hens lay eggs", "king size bed", "button fell off my coat",
	"chestnut trees are in bloom", "golden hour", "pearl earrings", "reishi tea is bitter", "enoki in my soup", "mixed feelings", "went into town", "gone fishing", "is gone with the wind on tv", "leave blank what you don't know", "keep the change", "mark said hi",
}

func TestUnitChatter(t *testing.T) {
	for _, text := range unitChatter {
		for _, names := range []Names{tryNames, shelfNames} {
			p := Parse(text, names)
			if p.Bare == Loosely {
				continue
			}
			if len(p.Intents) > 0 || p.Ask != nil || p.Near != nil {
				t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
			}
		}
	}
}
