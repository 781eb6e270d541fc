package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"

	"ryebell/internal/kitchen"
)

// decide says what wants a decision, the most pressing two, with a tap for the first.
func (v ShelfView) decide() (chat.Para, []chat.Button) {
	dues := v.Found.Dues()
	var what []string
	var taps []chat.Button
	for _, d := range []kitchen.ShelfDue{kitchen.DueThrowOut, kitchen.DueLookAgain, kitchen.DueUse, kitchen.DueGrown, kitchen.DueCheck} {
		units := dues[d]
		if len(units) == 0 || len(taps) == 2 {
			continue
		}
		what = append(what, dueWords(d, units))
		taps = append(taps, dueTap(d, units))
	}
	if len(what) == 0 {
		return nil, nil
	}
	return say("Decide: " + strings.Join(what, "; ") + "."), taps
}

// dueWords is what to do with units.
func dueWords(d kitchen.ShelfDue, units []kitchen.ShelfUnit) string {
	which := shelfRefs(units[:min(len(units), 4)])
	if more := len(units) - 4; more > 0 {
		which += " and " + whole(float64(more)) + nb + "more"
	}
	switch d {
	case kitchen.DueThrowOut:
		return "throw out, unopened: " + which
	case kitchen.DueLookAgain:
		return "look again at " + which
	case kitchen.DueUse:
		return "use or throw out, past its time: " + which
	case kitchen.DueGrown:
		return "look, likely grown through: " + which
	case kitchen.DueCheck:
		if units[0].Container.Vessel == kitchen.Bag {
			return "look, bags dry out: " + which
		}
		return "use next, a month old: " + which
	}
	panic("due without words")
}

// togetherDue names the units that are due with the first of them, of one load, where a
// button has room for them.
func togetherDue(units []kitchen.ShelfUnit, room int) string {
	first := units[0].Ref
	var all []kitchen.UnitNo
	for _, u := range units {
		if u.Ref.Run == first.Run {
			all = insertUnit(all, u.Ref.Unit)
		}
	}
	if ref := (kitchen.Ref{Run: first.Run, Units: all}).String(); len(ref) <= room {
		return ref
	}
	return first.String()
}

func dueTap(d kitchen.ShelfDue, units []kitchen.ShelfUnit) chat.Button {
	no, all := units[0].Ref.String(), togetherDue(units, widestTap-len(" through"))
	switch d {
	case kitchen.DueThrowOut:
		return tap("Threw "+all, "threw "+all)
	case kitchen.DueLookAgain:
		return tap(all+" fine", all+" looks fine")
	case kitchen.DueUse, kitchen.DueCheck:
		return tap("Used "+no, "used "+no)
	case kitchen.DueGrown:
		return tap(all+" through", all+" done")
	}
	panic("due without a tap")
}

// useFirst names what to use before the rest.
func (v ShelfView) useFirst() chat.Para {
	if len(v.Found.Dues()[kitchen.DueUse]) > 0 {
		return nil // that is what to decide
	}
	first := v.Found.First(kitchen.ShelfReady)
	if len(first) == 0 {
		first = v.Found.First(kitchen.ShelfCooked)
	}
	if len(first) == 0 {
		return nil
	}
	return say("Use first: **"+first[0].Ref.String()+"**, {}, "+ageOf(first[0], v.Now)+", "+leftOf(first[0], v.Now)+".", v.contents(first[0]))
}

// contents is what is in a unit: oyster, a quart jar of rye.
func (v ShelfView) contents(u kitchen.ShelfUnit) string {
	switch {
	case u.Species != "":
		return u.Species
	case u.Culture != "":
		return u.Culture
	}
	return one(u.Container)
}

// oldest names what should be used first, with its age, its place and the days left.
func (v ShelfView) oldest() chat.Post {
	ready, cooked := v.Found.First(kitchen.ShelfReady), v.Found.First(kitchen.ShelfCooked)
	var s sheet
	var taps []chat.Button
	head := "**%s: use it first.** "
	for _, units := range [][]kitchen.ShelfUnit{ready, cooked} {
		if len(units) == 0 {
			continue
		}
		s.add(must, v.oldestUnit(units[0], head))
		taps = append(taps, tap("Used "+units[0].Ref.String(), "used "+units[0].Ref.String()))
		if len(units) > 1 {
			next := units[1:min(len(units), 4)]
			s.add(should, say("Then "+shelfRefs(next)+", "+leftOf(next[0], v.Now)+"."))
		}
		head = "**%s: the oldest cooked.** "
	}
	if len(taps) == 0 {
		return v.oldestGrowing()
	}
	s.then(nil, append(taps, tap("Shelf", "shelf"))...)
	return s.post(chat.Answer)
}

// oldestGrowing says that nothing can be used yet, and what comes first.
func (v ShelfView) oldestGrowing() chat.Post {
	var s sheet
	units := v.Found.First(kitchen.ShelfGrowing)
	if len(units) == 0 {
		units = v.Found.First(kitchen.ShelfInoculated)
	}
	if len(units) == 0 {
		u := v.Found.Units()[0]
		s.add(must, say("**"+u.Ref.String()+"** is the oldest, and none to use: "+stateOf(u)+"."))
		s.then(nil, tap("Shelf", "shelf"))
		return s.post(chat.Answer)
	}
	s.add(must, say("**Nothing to use yet.**"))
	s.add(must, v.oldestUnit(units[0], "First comes **%s**: "))
	s.then(nil, tap("Shelf", "shelf"))
	return s.post(chat.Answer)
}

// oldestUnit tells of one unit. The head holds %s for its number.
func (v ShelfView) oldestUnit(u kitchen.ShelfUnit, head string) chat.Para {
	text := strings.Replace(head, "%s", u.Ref.String(), 1) + capital(one(u.Container)) + ", {}, " + ageOf(u, v.Now)
	theirs := []string{v.grown(u)}
	if u.Place != "" {
		text += ", {}"
		theirs = append(theirs, atPlace(u.Place))
	} else {
		text += ", place not said"
	}
	return say(text+". "+capital(leftOf(u, v.Now))+".", theirs...)
}

// grown is what grows on a unit, or its grain.
func (v ShelfView) grown(u kitchen.ShelfUnit) string {
	switch {
	case u.Species != "":
		return u.Species
	case u.Culture != "":
		return u.Culture
	case u.Grain != 0:
		return u.Grain.String()
	}
	return "no culture"
}

// stateOf is how a unit stands, in a word or two.
func stateOf(u kitchen.ShelfUnit) string { return u.State.String() }

// ageOf is how long a unit has been what it is: grown through 16 days ago.
func ageOf(u kitchen.ShelfUnit, now time.Time) string {
	if u.State == kitchen.UnitGrowing {
		return "inoculated " + daysAgo(now, u.Aged())
	}
	return stateOf(u) + " " + daysAgo(now, u.Aged())
}

// daysAgo says how many days lie between, as people count them.
func daysAgo(now, t time.Time) string {
	switch n := daysBetween(t, now); {
	case n <= 0:
		return "today"
	case n == 1:
		return "yesterday"
	case n < 60:
		return plural(n, "day") + " ago"
	default:
		return plural(n/30, "month") + " ago"
	}
}

// daysBetween counts the nights between two instants, by the clock of the second.
func daysBetween(from, to time.Time) int {
	a, b := from.In(to.Location()), to
	day := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC) }
	return int(day(b).Sub(day(a)) / (24 * time.Hour))
}

// leftOf is what is left of the time of a unit, by estimate.
func leftOf(u kitchen.ShelfUnit, now time.Time) string {
	if u.Rests() {
		return "in the cold: no estimate"
	}
	e := u.Expected()
	days := daysBetween(now, e.By.In(now.Location()))
	if u.State == kitchen.UnitGrowing || u.State == kitchen.UnitInoculated {
		if days < 0 {
			return "likely grown through: look"
		}
		return "likely through " + dateOf(now, e.Look) + " to " + dateOf(now, e.By)
	}
	switch {
	case days < 0:
		return "past its time: look, use it or throw it out"
	case days == 0:
		return "last day, by estimate"
	case days < 21:
		return "about " + plural(days, "day") + " left"
	}
	return "about " + plural((days+3)/7, "week") + " left"
}

// howMany begins with the number, and splits it in what is ready, what grows, and what
// is neither.
func (v ShelfView) howMany() chat.Post {
	var s sheet
	n := v.Found.Count()
	ready := v.Found.Units(kitchen.ShelfReady)
	growing := v.Found.Units(kitchen.ShelfGrowing, kitchen.ShelfInoculated)
	cooked := v.Found.Units(kitchen.ShelfCooked, kitchen.ShelfCooling)
	other := v.Found.Units(kitchen.ShelfBlank, kitchen.ShelfSuspect, kitchen.ShelfLost)
	head := "**" + whole(float64(n)) + " {}**"
	if v.Asked.State == 0 {
		head += ": " + whole(float64(len(ready))) + nb + "ready, " + whole(float64(len(growing))) + nb + "growing"
		if neither := n - len(ready) - len(growing); neither > 0 {
			head += ", " + whole(float64(neither)) + nb + "not"
		}
	}
	s.add(must, say(head+".", v.asked(n)))
	if len(ready) > 0 {
		s.add(must, say("Ready: "+shelfRefs(ready)+", first "+ready[0].Ref.String()+": "+leftOf(v.Found.First(kitchen.ShelfReady)[0], v.Now)+"."))
	}
	if len(growing) > 0 {
		s.add(must, say("Growing: "+shelfRefs(growing)+", "+leftOf(growing[0], v.Now)+"."))
	}
	if len(cooked) > 0 {
		s.add(must, say("Cooked, no culture on them: "+shelfRefs(cooked)+"."))
	}
	if len(other) > 0 {
		s.add(must, say("Not to use: "+shelfRefs(other)+", "+stateOf(other[0])+"."))
	}
	s.add(should, v.besides())
	s.then(nil, tap("What's oldest", "what's oldest"), tap("Shelf", "shelf"))
	return s.post(chat.Answer)
}

// besides is what else there is where only one state was asked for.
func (v ShelfView) besides() chat.Para {
	var parts []string
	all := v.All
	if v.Asked.Culture != "" {
		all = kitchen.ShelfOf(kitchen.ShelfOnly{Culture: v.Asked.Culture}.Of(all.Units()), v.Now)
	}
	for _, p := range kitchen.ShelfParts() {
		if n := all.Count(p) - v.Found.Count(p); n > 0 {
			parts = append(parts, whole(float64(n))+nb+shelfWord(p))
		}
	}
	if v.Asked.State == 0 || len(parts) == 0 {
		return nil
	}
	return say("Else: " + listed(parts) + ".")
}
