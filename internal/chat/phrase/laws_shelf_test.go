package phrase

import (
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// anyOfShelf is a question of the shelf, or what arrived there.
func anyOfShelf(t *rapid.T) Intent {
	switch rapid.IntRange(0, 3).Draw(t, "shelf") {
	case 3:
		s := SomeUnits{Count: rapid.IntRange(1, 40).Draw(t, "some"), Container: pick(t, "container", kitchen.Container{}, kitchen.Container{Vessel: kitchen.Jar}, anyContainer(t))}
		s.Entry = pick[kitchen.UnitEntry](t, "told", kitchen.UnitsUsed{}, kitchen.UnitsUsed{On: "straw"}, kitchen.UnitsGiven{To: "Lena"})
		if s.Culture = pick(t, "culture", "", "oyster", "shiitake", "plate 7"); s.Culture == "" {
			s.Run = 12
		}
		return s
	case 0:
		return anyShelf(t)
	case 1:
		return WhereIs{Of: Meant{Refs: []kitchen.Ref{{Run: 12, Units: pick(t, "units", []kitchen.UnitNo{7}, []kitchen.UnitNo{3}, []kitchen.UnitNo{1, 2, 3}, []kitchen.UnitNo{2, 5})}}}}
	}
	var a Arrive
	for range rapid.IntRange(1, 3).Draw(t, "loads") {
		l := anyArriving(t)
		if n := len(a.Loads); n > 0 && alikeLoad(a.Loads[n-1], l) {
			continue // those would be one
		}
		a.Loads = append(a.Loads, l)
	}
	return a
}

func alikeLoad(a, b Arriving) bool {
	return a.Entry.Culture == b.Entry.Culture && a.Entry.Species == b.Entry.Species && a.Entry.State == b.Entry.State && a.Entry.From == b.Entry.From && a.Place == b.Place && a.Share == b.Share && alikeMoment(a.When, b.When)
}

func anyShelf(t *rapid.T) Shelf {
	q := Shelf{
		Ask:       pick(t, "ask", WhatThere, Oldest, HowMany, AnythingBad),
		State:     pick(t, "state", 0, kitchen.UnitGrown, kitchen.UnitGrowing, kitchen.UnitInoculated, kitchen.UnitCooked, kitchen.UnitSuspect),
		Container: pick(t, "container", kitchen.Container{}, kitchen.Container{Vessel: kitchen.Jar}, kitchen.Container{Vessel: kitchen.Bag}, anyContainer(t)),
		Culture:   pick(t, "culture", "", "oyster", "shiitake", "plate 7"),
		Place:     pick(t, "place", "", "fridge", "shelf 2"),
	}
	q.Grain = pick(t, "grain", 0, 0, grain.Oats, grain.Millet)
	return q
}

func anyArriving(t *rapid.T) Arriving {
	var l Arriving
	g := pick(t, "grain", 0, grain.Rye, grain.Oats)
	for range rapid.IntRange(1, 2).Draw(t, "items") {
		l.Entry.Order.Items = append(l.Entry.Order.Items, kitchen.Item{Count: rapid.IntRange(1, 40).Draw(t, "count"), Container: anyContainer(t), Grain: g})
	}
	l.Entry.Order = l.Entry.Order.Merged()
	l.Entry.Culture = pick(t, "culture", "", "oyster", "shiitake", "plate 7")
	if l.Entry.Culture != "" {
		if l.Entry.Culture == "plate 7" {
			l.Entry.Species = pick(t, "species", "", "oyster", "lion's mane")
		}
		l.Entry.State = pick(t, "state", 0, kitchen.UnitGrown, kitchen.UnitGrowing, kitchen.UnitInoculated)
		if l.Entry.State == kitchen.UnitGrowing {
			l.Share = pick[unit.Fraction](t, "share", 0, 0.3, 0.75)
		}
	} else {
		l.Entry.State = pick(t, "state", 0, kitchen.UnitCooked)
	}
	l.Entry.From = pick(t, "from", "", "Mira", "the market")
	l.Place = pick(t, "place", "", "fridge", "shelf 2")
	l.When = pick(t, "when", nil, &Moment{Day: Day{Said: true, Shift: -1}}, &Moment{Day: Day{Said: true, Month: 10, Date: 3}}, &Moment{Day: Day{Said: true, Shift: -21}})
	return l
}
