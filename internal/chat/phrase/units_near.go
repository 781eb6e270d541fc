package phrase

import (
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// mostAhead is how far behind the units a word is looked for that tells what was meant.
const mostAhead = 6

// nearly takes a text that names units and goes on with words of the trade which fit
// nowhere: the example has the units of the text.
func (t unitsTelling) nearly(c, d cursor) (Intent, cursor, bool) {
	m, e, ok := d.meant(Meant{})
	if !ok || !m.sure || e.done() {
		return nil, c, false
	}
	switch e.token().(type) {
	case Number, Quantity, Range, Mark, When, Period:
		return nil, c, false // what a thermometer shows, or talk
	}
	var like kitchen.UnitEntry
	end := e
	for range mostAhead {
		if _, mark := end.token().(Mark); mark || end.done() {
			break
		}
		if like == nil {
			like = end.hint()
		}
		end = end.use(1)
	}
	if like == nil || !end.settled() {
		return nil, c, false
	}
	end.near = &Near{Trouble: LeftOver, Missed: e.s.typed(e.i, end.i), Example: TellUnits{Parts: []UnitsPart{{m.Meant, like}}}.String()}
	if s, f, colour := weakSpecies().take(e.over("is", "are")); colour && f.i == end.i {
		end.near.Cooked = TellUnits{Parts: []UnitsPart{{m.Meant, kitchen.Inoculated{Culture: s, Species: s}}}}
	}
	end.plain = true
	return TellUnits{Parts: []UnitsPart{{m.Meant, like}}}, end, true
}

// hint is what the word at hand is usually said for.
func (c cursor) hint() kitchen.UnitEntry {
	switch t := c.token().(type) {
	case Percent:
		return kitchen.GrowthSeen{Share: unit.Percent(30)}
	case RouteWord:
		return kitchen.Inoculated{Culture: "oyster", Species: "oyster", Route: t.Route}
	case Word:
		switch t.Text {
		case "fell", "fallen", "dropped", "cracked", "slipped":
			return kitchen.UnitsDiscarded{}
		case "percent", "pct", "white", "colonised", "colonized", "grown", "growth", "growing":
			return kitchen.GrowthSeen{Share: unit.Percent(30)}
		}
		if s, _, ok := c.species(); ok {
			return kitchen.Inoculated{Culture: s, Species: s}
		}
		if s, _, ok := signsInside().take(c); ok {
			return kitchen.SignSeen{Sign: s}
		}
	case nil:
	}
	return nil
}
