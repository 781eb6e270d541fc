package phrase

import (
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// anyMeant is units that can be named.
func anyMeant(t *rapid.T) Meant {
	ref := func(run kitchen.RunNo, units ...kitchen.UnitNo) kitchen.Ref {
		return kitchen.Ref{Run: run, Units: units}
	}
	of := func(refs ...kitchen.Ref) Meant { return Meant{Refs: refs} }
	return pick(t, "meant", of(ref(12, 3)), of(ref(12, 1, 2, 3, 4)), of(ref(12, 1, 3, 5)), of(ref(12)), of(ref(12), ref(13)), of(ref(12, 3), ref(13, 1, 2)), of(ref(7, 4, 2)),
		Meant{Refs: []kitchen.Ref{ref(12)}, Except: []kitchen.UnitNo{3, 5}}, Meant{Refs: []kitchen.Ref{ref(12)}, Vessel: kitchen.Jar}, Meant{Refs: []kitchen.Ref{ref(12)}, Vessel: kitchen.Bag, Count: 3},
		Meant{Refs: []kitchen.Ref{ref(12)}, Rest: true}, Meant{Refs: []kitchen.Ref{ref(12)}, State: kitchen.UnitSuspect}, Meant{Refs: []kitchen.Ref{ref(12)}, State: kitchen.UnitContaminated, Vessel: kitchen.Jar},
		Meant{Refs: []kitchen.Ref{ref(12)}, Vessel: kitchen.Bag, Except: []kitchen.UnitNo{2}})
}

// anyUnitEntry is one thing told of those units.
func anyUnitEntry(t *rapid.T, of Meant) kitchen.UnitEntry {
	switch rapid.IntRange(0, 14).Draw(t, "of units") {
	case 0, 1, 2:
		return anyInoculated(t)
	case 3:
		return kitchen.BlankSet{}
	case 4:
		return kitchen.GrowthSeen{Share: unit.Percent(float64(rapid.IntRange(0, 100).Draw(t, "share")))}
	case 5:
		return kitchen.Shaken{}
	case 6, 7:
		return kitchen.SignSeen{Sign: pick(t, "sign", kitchen.Signs()...)}
	case 8:
		return kitchen.GrownThrough{}
	case 9:
		return kitchen.UnitsUsed{On: pick(t, "on", "straw", "4 bags of sawdust", "the straw day"), Share: pick(t, "of it", 0, unit.Fraction(0.5), unit.Percent(30))}
	case 10:
		return kitchen.UnitsGiven{To: pick(t, "to", "", "Mira", "the neighbours")}
	case 11:
		return kitchen.UnitsDiscarded{}
	case 12:
		return kitchen.UnitsMoved{Place: pick(t, "place", "fridge", "top shelf", "shelf 2", "incubation shelf")}
	case 13:
		return pick[kitchen.UnitEntry](t, "tags or lots", kitchen.UnitsTagged{Tags: []string{"soak24"}}, kitchen.UnitsTagged{Tags: []string{"newlid", "soak-24"}}, kitchen.LotSaid{What: kitchen.GrainLot, Name: "rye 3"},
			kitchen.LotSaid{What: kitchen.GrainLot, Name: "3"}, kitchen.LotSaid{What: kitchen.BagLot, Name: "7"}, kitchen.LotSaid{What: kitchen.LidLot, Name: "synthetic filter"})
	}
	if of.units() == 1 {
		return pick[kitchen.UnitEntry](t, "one", kitchen.UnitsGone{}, kitchen.UnitNamed{Name: "bag A"}, kitchen.UnitNamed{})
	}
	return kitchen.UnitsStood{Where: pick(t, "spot", kitchen.TopLayer, kitchen.BottomLayer, kitchen.InnerOnes, kitchen.OuterOnes)}
}

func anyInoculated(t *rapid.T) kitchen.Inoculated {
	e := kitchen.Inoculated{
		Species: pick(t, "species", "", "oyster", "pink oyster", "king oyster", "lion's mane", "wine cap", "maitake"), Route: anyRoute(t), Volume: pick(t, "each", 0, unit.Millilitres(10), unit.Litres(0.25)),
	}
	switch rapid.IntRange(0, 2).Draw(t, "culture") {
	case 0:
		e.From = kitchen.UnitRef{Run: 9, Unit: 3}
	case 1:
		e.Culture = pick(t, "name", "plate 7", "lc 4", "bottle b", "master 5", "gerds stuff")
		if e.Culture == "gerds stuff" {
			e.Species, e.Route, e.Volume = "", 0, 0
		}
	case 2:
		e.Culture = e.Species
		if e.Species == "" {
			e.Route, e.Volume = 0, 0
		}
	}
	return e
}

func anyOfUnits(t *rapid.T) Intent {
	in := TellUnits{When: anyTime(t)}
	for range rapid.IntRange(1, 3).Draw(t, "parts") {
		of := anyMeant(t)
		in.Parts = append(in.Parts, UnitsPart{of, anyUnitEntry(t, of)})
	}
	return in
}

// TestUnitsPrintBack holds that what is told of units prints to a sentence that reads
// back as it.
func TestUnitsPrintBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { back(t, anyOfUnits(t)) })
}
