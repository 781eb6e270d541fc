package wording

import (
	"cmp"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// ShelfView is what stands on the shelf, and what of it was asked for.
type ShelfView struct {
	Asked phrase.Shelf
	// Found is what was asked for, All the whole shelf.
	Found, All kitchen.Shelf
	// Now is in the kitchen's zone.
	Now time.Time
}

// Shelf says what stands on the shelf.
func Shelf(v ShelfView) chat.Post {
	switch {
	case v.All.Count() == 0:
		return emptyShelf()
	case v.Found.Count() == 0 && v.Asked.Ask == phrase.AnythingBad:
		return v.nothingBad()
	case v.Found.Count() == 0:
		return v.noneOf()
	}
	switch v.Asked.Ask {
	case phrase.WhatThere, phrase.AnythingBad:
		return v.list()
	case phrase.Oldest:
		return v.oldest()
	case phrase.HowMany:
		return v.howMany()
	}
	panic("shelf asked nothing")
}

// emptyShelf says how units come onto it.
func emptyShelf() chat.Post {
	var s sheet
	s.add(must, say("**Nothing on the shelf** that I know of."))
	s.add(must, say("Cooked loads come here once they are at zero."))
	s.then(say("Is there any? Say `on the shelf: 4 quarts rye oyster since 3 oct`"), tap("Log", "log"))
	return s.post(chat.Answer)
}

// noneOf says that nothing is there of what was asked for, and what is.
func (v ShelfView) noneOf() chat.Post {
	var s sheet
	s.add(must, say("**0 {}** on the shelf.", v.asked(0)))
	if there := v.ofCulture(); v.Asked.Culture != "" && there != nil {
		s.add(must, there)
	} else if v.Asked.Culture != "" {
		s.add(must, v.otherSpecies())
	} else {
		s.add(must, v.instead())
	}
	s.then(nil, tap("Shelf", "shelf"))
	return s.post(chat.Answer)
}

func (v ShelfView) nothingBad() chat.Post {
	var s sheet
	s.add(must, say("**0 bad, 0 suspect** of "+plural(v.All.Count(), "unit")+", as far as anybody said."))
	s.then(say("Seen something? Say `12.3 green` or `12.2 looks wet`"), tap("Shelf", "shelf"))
	return s.post(chat.Answer)
}

// instead is the whole shelf in a sentence.
func (v ShelfView) instead() chat.Para {
	var parts []string
	for _, p := range kitchen.ShelfParts() {
		if n := v.All.Count(p); n > 0 {
			parts = append(parts, whole(float64(n))+nb+shelfWord(p))
		}
	}
	return say("There: " + listed(parts) + ".")
}

// ofCulture is how those of the culture that was asked for stand that are not as they
// were asked for; nil where there are none.
func (v ShelfView) ofCulture() chat.Para {
	of := kitchen.ShelfOf(kitchen.ShelfOnly{Culture: v.Asked.Culture}.Of(v.All.Units()), v.Now)
	var parts []string
	for _, p := range kitchen.ShelfParts() {
		if units := of.Units(p); len(units) > 0 {
			parts = append(parts, whole(float64(len(units)))+nb+shelfWord(p)+" ("+shelfRefs(units)+")")
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return say("Of {}: "+listed(parts)+".", v.Asked.Culture)
}

// otherSpecies is what grows on the shelf, and what has no culture.
func (v ShelfView) otherSpecies() chat.Para {
	var parts, theirs []string
	counts, without := map[string]int{}, 0
	for _, u := range v.All.Units() {
		name := cmp.Or(u.Species, u.Culture)
		if !u.Cultured || name == "" {
			without++
			continue
		}
		if counts[name] == 0 {
			theirs = append(theirs, name)
		}
		counts[name]++
	}
	for _, name := range theirs {
		parts = append(parts, whole(float64(counts[name]))+nb+"{}")
	}
	if without > 0 {
		parts = append(parts, whole(float64(without))+" without a culture")
	}
	return say("There: "+listed(parts)+".", theirs...)
}

// How much is said of each part of the shelf: its units by number, only what grows on
// them, or nothing but how many.
type detail uint8

const (
	byNumber detail = iota + 1
	bySpecies
	byCount
)

// list is a line for each part, then what wants a decision and what to use first. It
// says as much as a screen has room for.
func (v ShelfView) list() chat.Post {
	for d := byNumber; ; d++ {
		if s := v.listed(d); d == byCount || s.whole() {
			return s.post(chat.Answer)
		}
	}
}

func (v ShelfView) listed(d detail) *sheet {
	var s sheet
	s.add(must, say("**"+whole(float64(v.Found.Count()))+" {}**", v.asked(v.Found.Count())+v.whereAsked()))
	for _, p := range kitchen.ShelfParts() {
		if groups := v.Found.In(p); len(groups) > 0 {
			s.add(must, partLine(p, groups, d))
		}
	}
	due, taps := v.decide()
	s.add(must, due)
	s.add(should, v.useFirst())
	if len(taps) == 0 {
		taps = []chat.Button{tap("What's oldest", "what's oldest")}
	}
	s.then(nil, taps...)
	return &s
}

// mostGroups is how many species or sizes a part of the shelf is told in.
const mostGroups = 4

// partLine is a part of the shelf: 7 growing: 4 oyster #12.1-4, 3 reishi #13.1-3.
func partLine(p kitchen.ShelfPart, groups []kitchen.ShelfGroup, d detail) chat.Para {
	n := 0
	for _, g := range groups {
		n += len(g.Units)
	}
	head := "**" + whole(float64(n)) + nb + shelfWord(p) + "**"
	if d == byCount {
		return say(head + ", the oldest " + groups[0].Units[0].Ref.String())
	}
	var parts, theirs []string
	var rest []kitchen.ShelfUnit
	told := kinds(p, groups)
	for i, g := range told {
		if i >= mostGroups {
			rest = append(rest, g.units...)
			continue
		}
		if g.name == "" {
			g.name = unsaidOn(g.units[0])
		}
		part := whole(float64(len(g.units))) + nb + "{}"
		if len(told) == 1 || g.counted {
			part = "{}"
		}
		if d == byNumber {
			part += " " + shelfRefs(g.units)
		}
		parts, theirs = append(parts, strings.TrimSpace(part)), append(theirs, g.name)
	}
	if len(rest) > 0 {
		others := whole(float64(len(rest))) + nb + "others"
		if d == byNumber {
			others += " " + shelfRefs(rest)
		}
		parts = append(parts, others)
	}
	return say(head+": "+strings.Join(parts, ", "), theirs...)
}

// unsaidOn is what is said of a unit of which nobody said what grows on it.
func unsaidOn(u kitchen.ShelfUnit) string {
	if u.Cultured {
		return "culture not said"
	}
	return "no culture"
}

// kindOfUnits are units of a part that are told together.
type kindOfUnits struct {
	name  string
	units []kitchen.ShelfUnit
	// counted is set when the name has their number in it.
	counted bool
}

// kinds tells what has a culture by its species, and other grain by its container.
func kinds(p kitchen.ShelfPart, groups []kitchen.ShelfGroup) []kindOfUnits {
	var out []kindOfUnits
	sizes := p == kitchen.ShelfCooked || p == kitchen.ShelfCooling || p == kitchen.ShelfBlank
	for _, g := range groups {
		name := g.Species
		if sizes && len(groups) == 1 {
			name = sizeWord(g.Container, len(g.Units))
		} else if sizes {
			out = append(out, kindOfUnits{name: many(len(g.Units), g.Container), units: g.Units, counted: true})
			continue
		}
		at := -1
		for i := range out {
			if out[i].name == name {
				at = i
			}
		}
		if at < 0 {
			out, at = append(out, kindOfUnits{name: name}), len(out)
		}
		out[at].units = append(out[at].units, g.Units...)
	}
	return out
}

// sizeWord names so many containers of a size without their number: 5 lb bags.
func sizeWord(c kitchen.Container, n int) string {
	if n == 1 {
		return one(c)
	}
	if c.Vessel == kitchen.Jar && c.Volume == 0 && c.Weight > 0 {
		return "jars of " + massAsSaid(c.Weight)
	}
	return one(c) + "s"
}

// shelfRefs names units by their numbers, those of one run together; more than three runs
// by the first.
func shelfRefs(units []kitchen.ShelfUnit) string {
	byRun := map[kitchen.RunNo][]kitchen.UnitNo{}
	var runs []kitchen.RunNo
	for _, u := range units {
		if byRun[u.Ref.Run] == nil {
			runs = append(runs, u.Ref.Run)
		}
		byRun[u.Ref.Run] = insertUnit(byRun[u.Ref.Run], u.Ref.Unit)
	}
	var out []string
	for i, no := range runs {
		if i == 3 {
			out = append(out, "…")
			break
		}
		out = append(out, kitchen.Ref{Run: no, Units: byRun[no]}.String())
	}
	return strings.Join(out, " ")
}

// insertUnit puts a number in its place.
func insertUnit(units []kitchen.UnitNo, n kitchen.UnitNo) []kitchen.UnitNo {
	i := len(units)
	for i > 0 && units[i-1] > n {
		i--
	}
	out := append(units[:i:i], n)
	return append(out, units[i:]...)
}

// shelfWord is what units of a part are.
func shelfWord(p kitchen.ShelfPart) string {
	switch p {
	case kitchen.ShelfReady:
		return "grown through"
	case kitchen.ShelfGrowing:
		return "growing"
	case kitchen.ShelfInoculated:
		return "inoculated"
	case kitchen.ShelfCooked:
		return "cooked"
	case kitchen.ShelfCooling:
		return "still cooling"
	case kitchen.ShelfBlank:
		return "blank"
	case kitchen.ShelfSuspect:
		return "suspect"
	case kitchen.ShelfLost:
		return "bad, still there"
	}
	panic("part of the shelf without words")
}

// asked names what was asked for, behind its number: bags of oyster, units on the shelf.
func (v ShelfView) asked(n int) string {
	a := v.Asked
	noun := "units"
	switch {
	case a.Container.Sized():
		noun = sizeWord(a.Container, n)
	case a.Container.Vessel != 0:
		noun = a.Container.Vessel.String() + "s"
	}
	if n == 1 {
		noun = strings.TrimSuffix(noun, "s")
	}
	if a.State != 0 {
		noun = askedState(a.State) + " " + noun
	}
	if a.Grain != 0 {
		noun += " of " + a.Grain.String()
	}
	if a.Culture != "" {
		noun += " of " + a.Culture
	}
	return noun
}

// whereAsked is the place that was asked for, else the shelf.
func (v ShelfView) whereAsked() string {
	switch {
	case v.Asked.Place != "":
		return ", " + atPlace(v.Asked.Place)
	case v.Asked.Ask == phrase.AnythingBad:
		return " to look at"
	}
	return " on the shelf"
}

func askedState(s kitchen.UnitState) string {
	switch s {
	case kitchen.UnitGrown:
		return "ready"
	case kitchen.UnitCooked, kitchen.UnitInoculated, kitchen.UnitGrowing, kitchen.UnitSuspect, kitchen.UnitContaminated, kitchen.UnitDead,
		kitchen.InCook, kitchen.UnitUsed, kitchen.UnitDiscarded, kitchen.UnitGiven, kitchen.UnitGone:
		return s.String()
	}
	panic("state without words")
}

// atPlace is a place in a sentence: in the fridge, on shelf 2, at Ana's.
func atPlace(place string) string {
	p := strings.TrimSpace(place)
	first, _, _ := strings.Cut(strings.ToLower(p), " ")
	switch {
	case first == "in" || first == "on" || first == "at" || first == "under" || first == "behind":
		return p
	case strings.HasPrefix(strings.ToLower(p), "shelf ") || strings.HasPrefix(strings.ToLower(p), "rack "):
		return "on " + p
	case first == "the" || first == "our" || strings.Contains(p, "'s ") || strings.Contains(p, "’s "):
		return "in " + p
	case strings.HasSuffix(p, "'s") || strings.HasSuffix(p, "’s"):
		return "at " + p
	case strings.HasSuffix(strings.ToLower(p), "shelf") || strings.HasSuffix(strings.ToLower(p), "rack") || strings.HasSuffix(strings.ToLower(p), "table"):
		return "on the " + p
	}
	return "in the " + p
}
