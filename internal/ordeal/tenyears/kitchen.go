package tenyears

import (
	"fmt"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// The subjects under which the kitchen and its people are told of.
const (
	kitchenSubject = "kitchen"
	startSubject   = "start"
)

func cookers() []string { return []string{"big pot", "old pot", "blue one", "tall pot"} }

func jar(l unit.Litres) kitchen.Container { return kitchen.Container{Vessel: kitchen.Jar, Volume: l} }

func bag(g unit.Grams) kitchen.Container { return kitchen.Container{Vessel: kitchen.Bag, Weight: g} }

// containers are those that the kitchen fills: a quart, a pint, bags of 5 and 3 lb.
func containers() []kitchen.Container {
	return []kitchen.Container{jar(0.946), bag(2268), jar(0.473), bag(1361)}
}

// furnish tells of the kitchen at the beginning, and what changes in it: the room
// with the seasons, the gauges once a year.
func (l *life) furnish() {
	at := l.begun.Add(5 * time.Hour)
	say := func(c kitchen.Change) {
		at = at.Add(time.Minute)
		l.tell(kitchenSubject, at, 1, "the kitchen", c)
	}
	say(kitchen.Elevation{Height: 150})
	for _, name := range cookers() {
		say(kitchen.CookerIs{Name: name, Takes: []kitchen.Capacity{{Count: 14, Container: jar(0.946)}, {Count: 8, Container: bag(2268)}}})
	}
	for d := 0; d < l.size.Days; d += 91 {
		at = l.begun.Add(time.Duration(d)*day + 9*time.Hour)
		say(kitchen.RoomTemperature{Temp: unit.Celsius(17 + d/91%4)})
	}
	for d := 300; d < l.size.Days; d += 365 {
		at = l.begun.Add(time.Duration(d)*day + 10*time.Hour)
		for _, name := range cookers() {
			say(kitchen.GaugeReads{Cooker: name, Low: unit.GaugeKPa(d % 7)})
		}
	}
}

// culture is a culture with the time that it is used in.
type culture struct {
	kitchen.CultureMade
	made, ended time.Time
	units       int
}

// kinds are the kinds of cultures with the words they are named by.
func kinds() []struct {
	kind kitchen.CultureKind
	word string
} {
	return []struct {
		kind kitchen.CultureKind
		word string
	}{{kitchen.Plate, "plate"}, {kitchen.LiquidBottle, "bottle"}, {kitchen.Plate, "plate"}, {kitchen.GrainMaster, "master"}}
}

// species is one with how long it grows, in days.
type species struct {
	name string
	days int
}

func grown() []species {
	return []species{
		{"oyster", 8}, {"oyster", 7}, {"blue oyster", 8}, {"pink oyster", 6}, {"king oyster", 10}, {"lion's mane", 11}, {"shiitake", 14}, {"reishi", 12},
	}
}

func growsIn(name string) int {
	for _, s := range grown() {
		if s.name == name {
			return s.days
		}
	}
	panic("species " + name)
}

// firstCultures are there from the beginning.
const firstCultures = 5

// culturesUntil makes the cultures that are made by a time.
func (l *life) culturesUntil(at time.Time) {
	for {
		n := len(l.cultures)
		made := l.begun.Add(6*time.Hour + time.Duration(n)*time.Minute)
		if n >= firstCultures {
			made = l.begun.Add(time.Duration(float64(n-firstCultures+1) / culturesADay * float64(day))).Add(20 * time.Hour)
		}
		if made.After(at) {
			return
		}
		l.make(n, made)
	}
}

func (l *life) make(n int, at time.Time) {
	kind := kinds()[n%len(kinds())]
	by := l.somebody()
	c := &culture{made: at, ended: at.Add(time.Duration(l.between(90, 150)) * day)}
	c.CultureMade = kitchen.CultureMade{
		Name: fmt.Sprint(kind.word, " ", n+1), Kind: kind.kind, Species: grown()[l.chance.IntN(len(grown()))].name, Owner: by,
	}
	if kind.kind == kitchen.LiquidBottle {
		c.Volume = 0.5
	}
	if from := l.grownAt(at); kind.kind == kitchen.GrainMaster && from != nil {
		c.FromUnit, c.Species = from.ref, from.species
	} else if parent := l.cultureAt(at); parent != nil && l.likely(0.6) {
		c.From, c.Species = parent.Name, parent.Species
	}
	l.cultures = append(l.cultures, c)
	l.tell(kitchen.CulturesSubject, at, by, c.Name, c.CultureMade)
	if c.ended.Before(l.size.End) {
		l.tell(kitchen.CulturesSubject, c.ended, by, "used up "+c.Name, kitchen.CultureEnded{Name: c.Name, How: kitchen.CultureEnd(l.between(1, 3))})
	}
}

// cultureAt is one of those that are in use at a time; nil for none.
func (l *life) cultureAt(at time.Time) *culture {
	var there []*culture
	for i := max(0, len(l.cultures)-20); i < len(l.cultures); i++ {
		if c := l.cultures[i]; c.made.Before(at) && c.ended.After(at) {
			there = append(there, c)
		}
	}
	if len(there) == 0 {
		return nil
	}
	return there[l.chance.IntN(len(there))]
}

// ahead books the cooker of a run ahead, checks its parts, or has waited for its start.
func (l *life) ahead(ld *load) {
	if l.likely(0.25) {
		at := ld.begun.Add(-time.Duration(l.between(20, 70)) * time.Hour)
		made := l.tell(kitchen.BookingsSubject, at, ld.cook, "book the "+ld.cooker, kitchen.BookingMade{
			Cooker: ld.cooker, From: ld.begun, To: ld.begun.Add(5 * time.Hour), For: ld.cook, Room: int64(l.room),
		})
		if l.likely(0.1) {
			l.tell(kitchen.BookingsSubject, at.Add(time.Hour), ld.cook, "not after all", kitchen.BookingReleased{}).about = made
		}
	}
	if l.likely(0.05) {
		start := kitchen.StartWanted{Order: ld.order, Start: ld.begun, OutBy: ld.begun.Add(6 * time.Hour), For: ld.cook, Room: int64(l.room)}
		wanted := l.tell(startSubject, ld.begun.Add(-9*time.Hour), ld.cook, "out by the evening", start)
		l.tell(startSubject, ld.begun.Add(time.Minute), ld.cook, "", kitchen.StartMet{}).about = wanted
	}
	if l.likely(0.1) {
		l.tell(kitchen.GearSubject, ld.begun.Add(-10*time.Minute), ld.cook, "gasket is fine",
			kitchen.GearChecked{Cooker: ld.cooker, Parts: []kitchen.Part{kitchen.Gasket, kitchen.Vent}})
	}
}
