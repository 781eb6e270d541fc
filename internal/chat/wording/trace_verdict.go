package wording

import (
	"strconv"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// verdict says in a line what stood beside those that went bad, and what that points to:
// to a culture by its name, where one is traced.
func (v TraceView) verdict(culture string) chat.Para {
	c := v.Contrast
	if c == nil {
		return nil
	}
	var clean []string
	switch c.Blanks {
	case 0:
	case 1:
		clean = append(clean, "the blank")
	default:
		clean = append(clean, strconv.Itoa(c.Blanks)+" blanks")
	}
	switch {
	case len(c.BadBlanks) == 1:
		return say("**The blank " + c.BadBlanks[0].String() + " went bad: look at the cook first.**")
	case len(c.BadBlanks) > 1:
		return say("**Blanks went bad, " + refsOf(c.BadBlanks, traceLoads) + ": look at the cook first.**")
	case culture != "" && c.BadOthers > 0:
		return say("Beside it "+strconv.Itoa(c.BadOthers)+" of "+strconv.Itoa(c.Others)+" with something else on went bad, too: likely not {} alone.", culture)
	case culture != "" && c.Others > 0:
		clean = append(clean, plural(c.Others, "unit")+" of another culture")
		return say("Beside it "+listed(clean)+" stayed clean: likely **{}**, or how it was put on.", culture)
	case c.Blanks > 0:
		return say("Beside it " + listed(clean) + " stayed clean: likely not the cook.")
	}
	return nil
}

// nextLook is the one next step: where something went bad, to look at what still lives,
// and at what some were used on.
func (v TraceView) nextLook(s *sheet, units []kitchen.UnitRef) {
	l := v.Lineage
	var living, used []kitchen.UnitRef
	for _, ref := range units {
		u, ok := l.Unit(kitchen.UnitNode(ref))
		switch {
		case ok && u.State.Lives():
			living = append(living, ref)
		case ok && u.State == kitchen.UnitUsed && u.Loss.What == 0:
			used = append(used, ref)
		}
	}
	text := ""
	if len(living) > 0 {
		text = refsOf(living, traceLoads)
	}
	if c, is := l.Culture(v.Of); is && c.How == kitchen.CultureWentBad && len(used) > 0 {
		if text != "" {
			text += ", and "
		}
		text += "where " + refsOf(used, traceLoads) + " went"
	}
	buttons := v.buttons(units)
	switch {
	case v.anyLost(units) && text != "":
		s.then(say("Next: look at "+text+"."), buttons...)
	case len(buttons) > 0:
		s.then(nil, buttons...)
	case len(units) > 0:
		s.then(say("Next: one of them, like `trace " + units[0].String() + "`"))
	}
}

// anyLost reports whether some of the units were lost, or what is traced went bad.
func (v TraceView) anyLost(units []kitchen.UnitRef) bool {
	u, ok := v.Lineage.Unit(v.Of)
	c, is := v.Lineage.Culture(v.Of)
	return lostOf(v.Lineage, units) > 0 || ok && u.Loss.What != 0 || is && c.How == kitchen.CultureWentBad
}
