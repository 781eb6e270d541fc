package kitchen

import (
	"slices"
	"strings"

	"ryebell/internal/calc/unit"
)

// Species is what growers know of how a mushroom grows through grain. A culture's own
// record beats all of it.
type Species struct {
	// Name is the canonical one; empty for the row of all others.
	Name string
	// Coldest and Warmest bound the temperatures of the grain at which it grows well.
	Coldest, Warmest unit.Celsius
	// Optima are where its mycelium grew quickest in growth trials ([OptimaSource]): more than one where
	// strains differ, none where they have not been tried.
	Optima []unit.Celsius
	// FirstShake is how many days after inoculating it is shaken for the first time, at
	// 20 to 30 % visible growth.
	FirstShake Days
	// Jar and Bag are how many days it takes through a quart jar and a 5 lb bag, shaken
	// once. Zero in Bag means that there is no figure of its own: it is taken as [bagTakes] times the jar.
	Jar, Bag Days
	// Fridge is how many days it keeps chilled once it is grown through, Warm how many in
	// the room. A zero Fridge is one that must not be chilled.
	Fridge, Warm Days
	Cautions     []Caution
	// Known is where the figures are known from.
	Known Known
}

// Days is from how many days to how many, both inclusive.
type Days struct{ From, To int }

// Caution is what to mind about a species.
type Caution uint8

// The cautions.
const (
	// HeatsItself: a bag that grows is warmer than its room.
	HeatsItself Caution = iota + 1
	PinsInBag
	NeverChill
	// SpreadsOutdoors: it has escaped into woods.
	SpreadsOutdoors
	// SharesItsName: another mushroom is called so too.
	SharesItsName
	Browns
	// NoRoughShaking: not once most of it is overgrown.
	NoRoughShaking
	LooksUnfinished
	FruitsInJar
	SetsHard
	HeatShy
	// WeakAgainstMould: slow, so that moulds get ahead of it.
	WeakAgainstMould
	NeverOver30
	// SporesHarmLungs: lung disease is reported of those who grow it.
	SporesHarmLungs
)

// String returns the words for logs.
func (c Caution) String() string {
	if c > 0 && int(c) < len(cautionWords) {
		return cautionWords[c]
	}
	return "caution not said"
}

var cautionWords = [...]string{
	HeatsItself: "heats itself", PinsInBag: "pins in the bag", NeverChill: "never chill", SpreadsOutdoors: "spreads outdoors",
	SharesItsName: "shares its name", Browns: "browns", NoRoughShaking: "no rough shaking late", LooksUnfinished: "looks unfinished",
	FruitsInJar: "fruits in the jar", SetsHard: "sets hard", HeatShy: "heat-shy", WeakAgainstMould: "weak against moulds",
	NeverOver30: "never over 30 °C", SporesHarmLungs: "spores harm lungs",
}

// Known is where a caution is known from, and the printed source where there is one.
func (c Caution) Known() (Known, string) {
	switch c {
	case FruitsInJar:
		return Sourced, "P. Stamets, Growing Gourmet and Medicinal Mushrooms, ch. 21"
	case SpreadsOutdoors:
		return Sourced, "state and US Forest Service notes on Pleurotus citrinopileatus"
	case NeverOver30:
		return Sourced, "a trade page on compost temperature for Agaricus"
	case HeatsItself, PinsInBag, NeverChill, SharesItsName, Browns, NoRoughShaking, LooksUnfinished, SetsHard, HeatShy,
		WeakAgainstMould, SporesHarmLungs:
		return CommonPractice, ""
	}
	panic("caution " + c.String())
}

// Has reports whether a caution goes with the species.
func (s Species) Has(c Caution) bool { return slices.Contains(s.Cautions, c) }

// OptimaSource is the printed source of [Species.Optima].
const OptimaSource = "G. Zervakis et al., Folia Microbiologica 46:231-234, 2001"

// roomKeeps is how long grain that is grown through keeps in the room (common practice,
// no source).
var roomKeeps = Days{7, 14}

// weeks and months are days (a month of 30).
func weeks(from, to int) Days  { return Days{7 * from, 7 * to} }
func months(from, to int) Days { return Days{30 * from, 30 * to} }

// speciesFacts are common practice, no source, but for the optima and what
// [Caution.Known] names.
var speciesFacts = []Species{
	{
		Name: "oyster", Coldest: 22, Warmest: 26, Optima: []unit.Celsius{30}, FirstShake: Days{3, 6}, Jar: Days{8, 14}, Bag: Days{12, 18},
		Fridge: weeks(4, 8), Cautions: []Caution{HeatsItself, PinsInBag},
	},
	{
		Name: "pink oyster", Coldest: 24, Warmest: 28, FirstShake: Days{3, 5}, Jar: Days{7, 12}, Bag: Days{10, 15},
		Warm: Days{30, 30}, Cautions: []Caution{NeverChill},
	},
	{
		Name: "golden oyster", Coldest: 22, Warmest: 27, FirstShake: Days{3, 6}, Jar: Days{8, 14},
		Fridge: weeks(4, 6), Cautions: []Caution{SpreadsOutdoors},
	},
	{
		Name: "king oyster", Coldest: 22, Warmest: 25, Optima: []unit.Celsius{25}, FirstShake: Days{5, 8}, Jar: Days{12, 18}, Bag: Days{16, 24},
		Fridge: weeks(6, 8), Cautions: []Caution{SharesItsName},
	},
	{
		Name: "shiitake", Coldest: 21, Warmest: 25, Optima: []unit.Celsius{20, 30}, FirstShake: Days{6, 10}, Jar: Days{16, 25}, Bag: Days{20, 35},
		Fridge: months(2, 4), Cautions: []Caution{Browns, NoRoughShaking},
	},
	{
		Name: "lion's mane", Coldest: 21, Warmest: 24, FirstShake: Days{5, 9}, Jar: Days{14, 21}, Bag: Days{18, 28},
		Fridge: weeks(4, 8), Cautions: []Caution{LooksUnfinished, FruitsInJar},
	},
	{
		Name: "reishi", Coldest: 24, Warmest: 28, FirstShake: Days{5, 8}, Jar: Days{12, 20}, Bag: Days{16, 25},
		Fridge: months(2, 4), Cautions: []Caution{SetsHard},
	},
	{
		Name: "enoki", Coldest: 18, Warmest: 22, FirstShake: Days{5, 8}, Jar: Days{14, 20}, Bag: Days{18, 25},
		Fridge: weeks(4, 8), Cautions: []Caution{HeatShy},
	},
	{
		Name: "maitake", Coldest: 21, Warmest: 24, FirstShake: Days{8, 12}, Jar: Days{20, 35}, Bag: Days{30, 45},
		Fridge: weeks(4, 8), Cautions: []Caution{WeakAgainstMould},
	},
	{
		Name: "button", Coldest: 23, Warmest: 25, FirstShake: Days{6, 10}, Jar: Days{14, 24}, Bag: Days{18, 28},
		Fridge: months(3, 6), Cautions: []Caution{NeverOver30},
	},
	{
		Name: "wine cap", Coldest: 21, Warmest: 26, FirstShake: Days{6, 10}, Jar: Days{18, 28}, Bag: Days{25, 35},
		Fridge: months(1, 2), Cautions: []Caution{SharesItsName},
	},
	{
		Name: "chestnut", Coldest: 20, Warmest: 24, FirstShake: Days{6, 9}, Jar: Days{14, 21}, Bag: Days{20, 28}, Fridge: weeks(4, 8),
	},
	{
		Name: "nameko", Coldest: 20, Warmest: 24, FirstShake: Days{6, 9}, Jar: Days{14, 21}, Bag: Days{20, 28},
		Fridge: weeks(4, 8), Cautions: []Caution{SporesHarmLungs},
	},
	{Name: "turkey tail", Coldest: 22, Warmest: 25, FirstShake: Days{5, 9}, Jar: Days{12, 21}, Fridge: weeks(4, 8)},
	{Name: "pioppino", Coldest: 22, Warmest: 25, FirstShake: Days{5, 9}, Jar: Days{12, 21}, Fridge: weeks(4, 8)},
}

// otherSpecies is what is taken of a species that the table doesn't know (common
// practice, no source).
var otherSpecies = Species{Coldest: 22, Warmest: 25, FirstShake: Days{5, 9}, Jar: Days{12, 21}, Fridge: weeks(4, 8)}

// varieties grow like their species.
var varieties = map[string]string{"blue oyster": "oyster", "pearl oyster": "oyster", "grey oyster": "oyster"}

// SpeciesNamed is how a species grows, by its canonical name, case aside; a variety
// grows like its species. False for a name that the table doesn't know: that gets
// the row of all others, whose Name is empty.
func SpeciesNamed(name string) (Species, bool) {
	name = strings.ToLower(strings.TrimSpace(name))
	if of, is := varieties[name]; is {
		name = of
	}
	s, known := otherSpecies, false
	for _, f := range speciesFacts {
		if f.Name == name {
			s, known = f, true
		}
	}
	s.Known = CommonPractice
	if s.Warm == (Days{}) {
		s.Warm = roomKeeps
	}
	s.Cautions, s.Optima = slices.Clone(s.Cautions), slices.Clone(s.Optima)
	return s, known
}

// SpeciesNames lists the canonical names of the table, without the varieties.
func SpeciesNames() []string {
	var out []string
	for _, f := range speciesFacts {
		out = append(out, f.Name)
	}
	return out
}

// growsAs is the name under which a unit's growth is recorded: that of its species, or
// what was typed where the table doesn't know it.
func growsAs(species string) string {
	if s, ok := SpeciesNamed(species); ok {
		return s.Name
	}
	return strings.ToLower(strings.TrimSpace(species))
}
