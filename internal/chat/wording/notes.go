package wording

import (
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// notes says the reservations of a plan, and what a first plan took for granted.
func notes(v PlanView) []chat.Block {
	var out []chat.Block
	for _, n := range v.Plan.Notes {
		if text := note(n, v); text != "" {
			out = append(out, say(text))
		}
	}
	if as := countedAs(v.Plan); as != "" {
		out = append(out, say("In the pot "+as+"."))
	}
	if v.First == New && v.Settings.Elevation == nil {
		out = append(out, say("Higher than the sea? `we're at 1600 m`"))
	}
	return out
}

// countedAs says which containers count like which larger ones.
func countedAs(p kitchen.Plan) string {
	var parts []string
	last := ""
	for _, n := range p.Notes {
		n, ok := n.(kitchen.CountedAsNote)
		if !ok {
			continue
		}
		as := short(n.As)
		if as == last {
			parts[len(parts)-1] = "a " + short(n.Container) + " or " + strings.TrimPrefix(parts[len(parts)-1], "a ")
			continue
		}
		parts, last = append(parts, "a "+short(n.Container)+" counts as a "+as), as
	}
	return listed(parts)
}

// note is one reservation in a sentence or two; empty when it needn't be said
// again.
func note(n kitchen.Reservation, v PlanView) string {
	switch n := n.(type) {
	case kitchen.BagsDifferNote:
		if v.FirstBags != New {
			return ""
		}
		return "Sources hold bags this big 90 to 240" + nb + "min at sea level. Longer: `hold " + typed(n.Container) + "s " + whole(n.Suggest.Minutes()) + "`"
	case kitchen.ShortHoldNote:
		return "" // said with the hold
	case kitchen.NoCapacityNote:
		if v.FirstFit != New {
			return ""
		}
		return "Does it fit? Tell me once, like `big pot takes 7 quarts or 3 5lb bags`"
	case kitchen.CountedAsNote:
		return "" // said together
	case kitchen.WaterOverNote:
		return "**" + litres(n.Needed) + " is over the " + litres(n.Max) + "** the cooker takes: cook a smaller load, not a shorter hold."
	case kitchen.LowPressureNote:
		if v.Plan.Hold.Origin != kitchen.Default {
			return ""
		}
		return "At " + psi(n.At) + " steam is colder than at 15: hence the time."
	case kitchen.MeasuredNote:
		return "Measured, not soaked, since you named the moisture."
	}
	panic("note without words")
}

// typed names a container the way it is typed.
func typed(c kitchen.Container) string {
	switch c.Vessel {
	case kitchen.Jar:
		if c.Volume > 0 {
			return plain(jarSize(c.Volume)) + " jar"
		}
		return plain(massAsSaid(c.Weight)) + " jar"
	case kitchen.Bag:
		return plain(massAsSaid(c.Weight)) + " bag"
	case 0:
		return "grain"
	}
	panic("vessel " + c.Vessel.String())
}
