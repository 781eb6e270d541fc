package phrase

import (
	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// someCultures are names of cultures that are there, or that can be nothing else.
var someCultures = []string{"plate 7", "plate 31", "lc 4", "bottle 3", "master 5", "syringe 2", "blue lc", "oyster", "rye", "help", "Mira's best", "king plate 4", "plate 7b", "lc syringe 2"}

// anyOfCultures is something told or asked of cultures.
func anyOfCultures(t *rapid.T) Intent {
	name := pick(t, "culture", someCultures...)
	switch rapid.IntRange(0, 3).Draw(t, "of cultures") {
	case 0:
		return anyMadeCulture(t)
	case 1:
		e := EndCulture{
			Ended: kitchen.CultureEnded{Name: name, How: pick(t, "how", kitchen.CultureUsedUp, kitchen.CultureThrownOut, kitchen.CultureWentBad)}, When: anyTime(t),
		}
		if rapid.Bool().Draw(t, "two") {
			e.Ended.Name, e.Also = "plate 7", []string{"plate 8", "lc 4"}
		}
		return e
	case 2:
		return pick[Intent](t, "asked", Cultures{}, Cultures{Name: name}, Cultures{Kind: kitchen.Plate}, Cultures{Kind: kitchen.LiquidBottle}, Cultures{Kind: kitchen.GrainMaster}, Cultures{Kind: kitchen.Syringe})
	}
	return pick[Intent](t, "traced", Trace{Culture: name}, Trace{Culture: "blue oyster"}, Trace{Culture: "strainless"}, Trace{Tag: "soak24"}, Trace{Tag: "no-soak"}, Trace{Of: Meant{Refs: []kitchen.Ref{{Run: 12}}}},
		Trace{Of: Meant{Refs: []kitchen.Ref{{Run: 12, Units: []kitchen.UnitNo{3}}}}}, Trace{Of: Meant{Refs: []kitchen.Ref{{Run: 12, Units: []kitchen.UnitNo{1, 2, 5}}}}},
		Trace{Lot: kitchen.LotSaid{What: kitchen.GrainLot, Name: "3"}}, Trace{Lot: kitchen.LotSaid{What: kitchen.GrainLot, Name: "rye 3"}}, Trace{Lot: kitchen.LotSaid{What: kitchen.BagLot, Name: "b2"}},
		Trace{Lot: kitchen.LotSaid{What: kitchen.LidLot, Name: "red ones"}})
}

func anyMadeCulture(t *rapid.T) Intent {
	m := MakeCulture{When: anyTime(t), Owner: pick(t, "owner", "", "me", "Jo")}
	m.Made.Name = pick(t, "new", "plate 7", "lc 4", "bottle 3", "syringe 2", "blue lc", "help", "oyster", "my best", "king plate 4")
	m.Made.Kind = kindOfName(m.Made.Name)
	if m.Made.Kind == 0 {
		m.Made.Kind = pick(t, "kind", 0, kitchen.Plate, kitchen.GrainMaster)
	}
	m.Made.Species = pick(t, "species", "shiitake", "lion's mane", "blue oyster", "")
	if of, ok := speciesOf(m.Made.Name); ok && m.Made.Species == "" {
		m.Made.Species = of
	}
	switch rapid.IntRange(0, 3).Draw(t, "from") {
	case 0:
		m.Made.FromUnit = kitchen.UnitRef{Run: 9, Unit: 2}
	case 1:
		m.Made.From = pick(t, "parent", append(someCultures, "Mira", "Jo", "a friend's plate")...)
	case 2:
		m.Made.Volume = pick(t, "ml", unit.Litres(0.5), 0.3, 1, 0.25)
		m.Made.Generation = rapid.IntRange(0, 6).Draw(t, "generation")
	case 3:
		m.Made.Name, m.Made.Kind, m.Made.Species = "plate 7", kitchen.Plate, ""
		m.Also = []string{"plate 8", "plate 12"}
	}
	return m
}
