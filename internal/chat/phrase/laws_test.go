package phrase

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// FuzzParse holds the laws that need no meaning: no panic, and whatever was
// understood prints back to a sentence that is understood the same.
func FuzzParse(f *testing.F) {
	for _, g := range registry {
		for _, text := range g.examples {
			f.Add(text)
		}
	}
	for _, text := range []string{"3 bags 5lb agar lc", "5 jars", "2 jars (about 4 cups)", "room is 110 degrees", "2.5 bags", "-3 bags 5lb", "\x00\xff３", "7 tonne jars", "1#hAve1rYA Bgs", "digest monday 0", "hAAt of00m AAo", "1%0:00", "An1 oyster# ", "CAnge1 to oAt"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p := Parse(text, tryNames)
		if set := count(p.Intents != nil, p.Ask != nil, p.Near != nil); set > 1 {
			t.Fatalf("Parse(%q) sets %d fields: %s", text, set, understood(p))
		}
		for _, in := range p.Intents {
			back(t, in)
		}
		if p.Ask == nil {
			return
		}
		for _, o := range p.Ask.Options {
			q := Parse(o.Say, tryNames)
			if q.Intents == nil && q.Ask == nil || q.Ask != nil && q.Ask.Gap == p.Ask.Gap && q.Ask.About == p.Ask.About {
				t.Errorf("Parse(%q) offers %q, which reads as %s", text, o.Say, understood(q))
			}
		}
	})
}

func count(set ...bool) int {
	n := 0
	for _, s := range set {
		if s {
			n++
		}
	}
	return n
}

// back holds that an intent prints to a sentence that reads back as itself.
func back(t interface{ Errorf(string, ...any) }, in Intent) {
	imperial := tryNames
	imperial.Quarts = kitchen.Imperial
	for _, names := range []Names{tryNames, imperial} {
		p := Parse(in.String(), names)
		if len(p.Intents) != 1 || !reflect.DeepEqual(p.Intents[0], in) {
			t.Errorf("%#v prints as %q, which reads as %s\n%s", in, in.String(), understood(p), cmp.Diff([]Intent{in}, p.Intents))
		}
	}
}

func TestPrintsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { back(t, anyIntent(t)) })
}

func pick[T any](t *rapid.T, name string, of ...T) T { return rapid.SampledFrom(of).Draw(t, name) }

// tenths is a number with one decimal.
func tenths(t *rapid.T, name string, lo, hi int) float64 {
	return float64(rapid.IntRange(lo, hi).Draw(t, name)) / 10
}

func anyGrain(t *rapid.T) grain.Kind {
	return pick(t, "grain", append(grain.All(), 0)...)
}

func anyRoute(t *rapid.T) kitchen.Route {
	return pick(t, "route", append(kitchen.Routes(), 0)...)
}

func anyMass(t *rapid.T) unit.Grams {
	n := tenths(t, "mass", 5, 200)
	return pick(t, "mass of", unit.Pounds(n), unit.Kilograms(n), unit.Grams(n*100))
}

func anyVolume(t *rapid.T) unit.Litres {
	return pick(t, "volume", unit.USQuarts(1), unit.USPints(1), unit.USPints(0.5), unit.USGallons(0.5), unit.USGallons(1), 0.5, 1, 0.25,
		unit.ImperialQuarts(1), unit.Millilitres(720))
}

func anyContainer(t *rapid.T) kitchen.Container {
	if rapid.Bool().Draw(t, "bag") {
		return kitchen.Container{Vessel: kitchen.Bag, Weight: anyMass(t)}
	}
	return kitchen.Container{Vessel: kitchen.Jar, Volume: anyVolume(t)}
}

func anyItem(t *rapid.T, g grain.Kind, r kitchen.Route) kitchen.Item {
	it := kitchen.Item{Count: rapid.IntRange(1, 40).Draw(t, "count"), Container: anyContainer(t), Grain: g, Route: r}
	if rapid.Bool().Draw(t, "each") {
		it.Mass, it.Basis = anyMass(t), pick(t, "basis", kitchen.Wetted, kitchen.DryBasis)
		if it.Container.Vessel == kitchen.Bag {
			it.Container.Weight = 0
		}
	}
	return it
}

func anyOrder(t *rapid.T) kitchen.Order {
	g, r := anyGrain(t), anyRoute(t)
	var o kitchen.Order
	moist, ratio, gyp := unit.Fraction(0), unit.Ratio(0), unit.Fraction(0)
	switch rapid.IntRange(0, 3).Draw(t, "water") {
	case 1:
		moist = unit.Percent(tenths(t, "moisture", 300, 600))
	case 2:
		ratio = unit.Ratio(tenths(t, "ratio", 3, 9))
	case 3:
		gyp = unit.Percent(tenths(t, "gypsum", 5, 30))
	}
	for range rapid.IntRange(1, 4).Draw(t, "items") {
		it := anyItem(t, g, r)
		it.Moisture, it.Ratio, it.Gypsum = moist, ratio, gyp
		if other := pick(t, "another grain", grain.Oats, 0); g != 0 && other != 0 {
			it.Grain, it.Route = other, anyRoute(t) // one that says either keeps what it says
		}
		o.Items = append(o.Items, it)
	}
	if rapid.Bool().Draw(t, "in a cooker") {
		o.Cooker = pick(t, "cooker", "big pot", "small pot", "old canner")
	}
	if rapid.Bool().Draw(t, "held") {
		o.Hold = time.Duration(rapid.IntRange(10, 400).Draw(t, "hold")) * time.Minute
	}
	return o.Merged() // as every order that is read
}

func anyDeadline(t *rapid.T) *Moment {
	if rapid.Bool().Draw(t, "no moment") {
		return nil
	}
	m := &Moment{Clock: &ClockTime{Hour: rapid.IntRange(0, 23).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute"), Half: true}}
	switch rapid.IntRange(0, 3).Draw(t, "day") {
	case 1:
		m.Day = Day{Said: true, Shift: rapid.IntRange(0, 1).Draw(t, "shift")}
	case 2:
		m.Day = Day{Said: true, HasWeekday: true, Weekday: time.Weekday(rapid.IntRange(0, 6).Draw(t, "weekday"))}
	}
	return m
}

func anyChange(t *rapid.T) kitchen.Change {
	share := unit.Percent(tenths(t, "share", 5, 400))
	g := pick(t, "grain said", grain.All()...)
	switch rapid.IntRange(0, 18).Draw(t, "change") {
	case 0:
		return kitchen.Elevation{Height: pick(t, "height", unit.Metres(1600), unit.Feet(5280), unit.Metres(12))}
	case 1:
		return kitchen.RoomTemperature{Temp: pick(t, "temp", unit.Celsius(19), unit.Fahrenheit(66), unit.Celsius(21.5))}
	case 2, 3, 4:
		return anyCooker(t)
	case 5:
		return kitchen.HoldIs{Container: pick(t, "held", anyContainer(t), kitchen.Container{}, kitchen.Container{Vessel: kitchen.Jar}), Hold: 2 * time.Hour}
	case 6:
		return kitchen.MethodIs{Vessel: pick(t, "vessel", 0, kitchen.Jar, kitchen.Bag), Method: pick(t, "method", kitchen.Measured, kitchen.Soaked)}
	case 7:
		return kitchen.StepIs{Step: anyMass(t)}
	case 8:
		return kitchen.JarFill{Container: kitchen.Container{Vessel: kitchen.Jar, Volume: anyVolume(t)}, Wetted: anyMass(t)}
	case 9:
		return kitchen.YieldIs{Grain: anyGrain(t), Dry: anyMass(t), Drained: anyMass(t)}
	case 10:
		return kitchen.RatioIs{
			Route: anyRoute(t), Grain: anyGrain(t), Vessel: pick(t, "vessel", 0, kitchen.Jar, kitchen.Bag),
			Ratio: unit.Ratio(tenths(t, "ratio", 2, 9)),
		}
	case 11:
		return kitchen.UsualGrain{Grain: g}
	case 12:
		return kitchen.UsualOrder{Order: anyOrder(t)}
	case 13:
		return kitchen.GypsumIs{Share: pick(t, "gypsum", share, 0)}
	case 14:
		return kitchen.BagMeans{Basis: pick(t, "basis", kitchen.Wetted, kitchen.DryBasis)}
	case 15:
		return kitchen.HeadspaceIs{Share: share}
	case 16:
		return kitchen.StorageMoisture{Grain: anyGrain(t), Moisture: share}
	case 17:
		return pick[kitchen.Change](t, "place", kitchen.ZoneIs{Zone: "Europe/Berlin"}, kitchen.ZoneIs{Zone: "America/Port_of_Spain"},
			kitchen.ZoneIs{Zone: "UTC"}, kitchen.MeasureIs{Measure: kitchen.US}, kitchen.MeasureIs{Measure: kitchen.Imperial}, kitchen.PressureIs{Gauge: unit.PSI(13)},
			kitchen.GaugeReads{Low: unit.PSI(1)}, kitchen.GaugeReads{Cooker: "big pot", Low: -unit.PSI(0.5)}, kitchen.GaugeReads{Cooker: "big pot"},
			kitchen.RestIs{}, kitchen.RestIs{Days: rapid.IntRange(1, 14).Draw(t, "rest")},
			kitchen.DigestIs{}, kitchen.DigestIs{Day: time.Weekday(rapid.IntRange(0, 6).Draw(t, "day")), At: kitchen.TimeOfDay(rapid.IntRange(240, 1439).Draw(t, "at"))})
	case 18:
		return kitchen.CoolLimitIs{Temp: pick(t, "limit", unit.Celsius(24), unit.Fahrenheit(75), unit.Celsius(31.5)), Culture: pick(t, "culture", "", "", "enoki", "lion's mane", "blue oyster")}
	}
	panic("no such change")
}

func anyCooker(t *rapid.T) kitchen.CookerIs {
	k := kitchen.CookerIs{Name: pick(t, "cooker", "big pot", "old canner", "first autoclave", "23 quart pot")}
	for range rapid.IntRange(0, 2).Draw(t, "kinds") {
		k.Takes = append(k.Takes, kitchen.Capacity{Count: rapid.IntRange(1, 20).Draw(t, "takes"), Container: anyContainer(t)})
	}
	said := func(name string) bool { return rapid.Bool().Draw(t, name) }
	if said("max") || len(k.Takes) == 0 {
		k.MaxGauge = pick(t, "gauge", unit.PSI(15), unit.Bar(1), unit.KPa(103))
	}
	if said("gauge") {
		k.Gauge = pick(t, "kind", kitchen.Dial, kitchen.Weight)
	}
	if said("pot") || k.Name == "23 quart pot" { // such a name says it
		k.Pot = pick(t, "pot", unit.USQuarts(23), 21.5)
	}
	if said("water") {
		k.MinWater, k.MaxWater, k.BoilOff = 3, 5.5, 0.6
	}
	return k
}

func anyIntent(t *rapid.T) Intent {
	switch rapid.IntRange(0, 21).Draw(t, "intent") {
	case 0, 1, 2:
		return Plan{Order: anyOrder(t), OutBy: anyDeadline(t), StartAt: anyDeadline(t)}
	case 3:
		return Plan{Order: kitchen.Order{Items: []kitchen.Item{{
			Count: 1, Mass: anyMass(t), Basis: pick(t, "basis", kitchen.Wetted, kitchen.DryBasis), Grain: anyGrain(t), Route: anyRoute(t),
		}}}}
	case 4:
		return Reverse{
			Supply: kitchen.Supply{Dry: anyMass(t), Containers: []kitchen.Container{anyContainer(t), anyContainer(t)}, Grain: anyGrain(t), Route: anyRoute(t)},
			OutBy:  anyDeadline(t),
		}
	case 5, 6, 7:
		var s Set
		for range rapid.IntRange(1, 3).Draw(t, "changes") {
			s.Changes = append(s.Changes, anyChange(t))
		}
		return s
	case 8:
		o := anyOrder(t)
		return Cook{Order: &o}
	case 9:
		return pick[Intent](t, "run", SameAs{Run: 12, OutBy: anyDeadline(t)}, Usual{OutBy: anyDeadline(t)}, Cook{}, Cook{Cooker: "big pot"}, MakeUsual{})
	case 10:
		return pick[Intent](t, "people", GiveRole{"Ana", kitchen.Steward}, GiveRole{"zed", kitchen.Grower}, Rename{"Jo Ann"}, Claim{"AB12-CD34"}, NewCode{},
			Forget{}, Forget{"Ana"}, Members{})
	case 11:
		return pick[Intent](t, "small", Why{}, Why{Part: PartTime}, Why{Which: Which{Run: 12}}, Why{Which: Which{Run: 12}, Unit: 3}, Why{Which: Which{Run: 12}, Unit: 3, Part: PartTime}, Why{Which: Which{Cooker: "big pot"}, Part: PartTime}, Why{Which: Which{Run: 3}, Part: PartTime}, TimesRecord{}, Chart{}, Chart{Which{Run: 12}},
			Chart{Which{Cooker: "big pot"}}, Why{Number: 682}, Why{Number: 0.4}, Help{}, Help{pick(t, "topic", kitchen.Topics()...)}, Undo{}, Greet{}, Thanks{}, Board{}, Kitchen{},
			RemindStart{}, Choose{Place: 2}, Choose{Place: 3, Text: "3"}, Choose{Text: "rye"}, OutBy{Moment{Clock: &ClockTime{20, 30, true}}})
	case 20, 21:
		return anyOfUnits(t)
	case 13, 14, 15:
		return anyTelling(t)
	case 16:
		return pick(t, "of the shelf", anyOfCultures, anyOfShelf)(t)
	case 17, 18, 19:
		return anyOfCookDay(t)
	case 12:
		return pick[Intent](t, "correction",
			Correct{Item: kitchen.Item{Count: 4, Container: kitchen.Container{Vessel: kitchen.Bag}}, Was: 3},
			Correct{Item: kitchen.Item{Grain: grain.Oats}}, Correct{Item: kitchen.Item{Route: kitchen.LiquidCulture}},
			Correct{Item: kitchen.Item{Count: 6, Container: anyContainer(t)}}, Correct{Item: kitchen.Item{Container: anyContainer(t)}},
			Correct{Quantity: []Sense{{Mass, 1500, "g"}}}, Correct{Quantity: []Sense{{Duration, 6000, "s"}}}, Correct{OutBy: &Moment{Clock: &ClockTime{21, 0, true}}},
			Correct{Item: kitchen.Item{Count: 4}})
	}
	return anyFollowing(t)
}

// TestPermute holds that the order of items only changes the order of items.
func TestPermute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := anyOrder(t)
		o.Cooker, o.Hold = "", 0
		n := rapid.IntRange(0, len(o.Items)-1).Draw(t, "turn")
		turned := append(append([]kitchen.Item(nil), o.Items[n:]...), o.Items[:n]...)
		said := make([]string, len(turned))
		for i, it := range turned {
			said[i] = itemText(it)
		}
		text := strings.Join(said, pick(t, "joined by", ", ", " + ", " and ", "\n", " plus "))
		want := []Intent{Plan{Order: kitchen.Order{Items: turned}}}
		if got := Parse(text, tryNames).Intents; !reflect.DeepEqual(got, want) {
			t.Errorf("Parse(%q) = %v, want %v", text, got, want)
		}
	})
}

// TestShare holds who lends attributes to whom.
func TestShare(t *testing.T) {
	for text, want := range map[string]string{
		"3 bags 5lb, 4 quarts, all for lc":            "3 5 lb bags lc + 4 0.946352946 l jars lc",
		"3 bags 5lb rye agar + 4 quarts":              "3 5 lb bags rye agar + 4 0.946352946 l jars rye agar",
		"3 bags 5lb, 4 quarts rye, 2 pints oats":      "3 5 lb bags rye + 4 0.946352946 l jars rye + 2 0.473176473 l jars oats",
		"3 bags 5lb rye, 4 quarts, 2 pints oats g2g":  "3 5 lb bags rye + 4 0.946352946 l jars oats g2g + 2 0.473176473 l jars oats g2g",
		"3 bags 5lb, 4 quarts rye, 2 pints":           "3 5 lb bags rye + 4 0.946352946 l jars rye + 2 0.473176473 l jars rye",
		"2 bags 5lb agar + 4 quart jars millet lc":    "2 5 lb bags agar + 4 0.946352946 l jars millet lc",
		"2 bags 5lb agar + 4 quart jars millet":       "2 5 lb bags agar + 4 0.946352946 l jars millet",
		"3 bags 5lb, 4 quarts, everything millet":     "3 5 lb bags millet + 4 0.946352946 l jars millet",
		"3 bags 5lb lc, 4 quarts, all agar":           "3 5 lb bags lc + 4 0.946352946 l jars agar",
		"3 bags 5lb lc, 4 quarts, all rye":            "3 5 lb bags rye lc + 4 0.946352946 l jars rye lc",
		"3 bags 5lb agar, 4 quarts oats, both for lc": "3 5 lb bags agar + 4 0.946352946 l jars oats lc",
		"12 pints + 3 quarts w/ 1% gypsum, milo g2g":  "12 0.473176473 l jars sorghum g2g gypsum 1% + 3 0.946352946 l jars sorghum g2g gypsum 1%",
		"rye, 3 bags 5lb and 2 bags 3lb, agar please": "3 5 lb bags rye agar + 2 3 lb bags rye agar",
	} {
		p := Parse(text, tryNames)
		if len(p.Intents) != 1 || p.Intents[0].String() != want {
			t.Errorf("Parse(%q) = %s, want %s", text, understood(p), want)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	for name, text := range map[string]string{
		"usual":   "3 bags 5lb agar",
		"two":     "4 quart jars rye LC + 2 3-lb bags",
		"cooker":  "big pot takes 7 quarts or 3 5lb bags, max 15 psi, dial gauge",
		"stage":   "#12 heat off 20 min ago",
		"reading": "12.3 is 31 outside",
		"chatter": "did anyone see where my keys went this morning, i think i left them",
		"4096":    strings.Repeat("3 bags 5lb agar, ", 241)[:4096],
		"4096w":   strings.Repeat("word and 3 other bags ", 200)[:4096],
		"4096i":   strings.Repeat("i have a ", 500)[:4096],
		"4096n":   strings.Repeat("3 ", 2048),
		"4096c":   strings.Repeat("no, 4 ", 800)[:4096],
		"4096m":   strings.Repeat(",", 4096),
		"4096u":   strings.Repeat("12.1 ", 820)[:4096],
		"4096g":   strings.Repeat("green and ", 410)[:4096],
		"4096s":   strings.Repeat("shook 12.3, ", 342)[:4096],
		"4096v":   strings.Repeat("shook the ", 410)[:4096],
		"units":   "12.1-2 oyster, 12.3 shiitake, 12.4 blank",
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Parse(text, tryNames)
			}
		})
	}
}
