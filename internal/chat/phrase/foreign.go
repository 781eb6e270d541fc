package phrase

import "slices"

// foreignness says how surely a word that fits nowhere names what is talked of:
// then the bags are of that, and none of the kitchen's.
type foreignness uint8

// A word of the street may be anything (aside); what bags are of, or euros, tell
// (stuff).
const (
	aside foreignness = iota + 1
	stuff
)

// foreign weighs the word at hand.
func (c cursor) foreign() foreignness {
	switch t := c.token().(type) {
	case Quantity:
		if _, money := t.sense(Money); money {
			return stuff
		}
	case Unsuited:
		return stuff
	case Word:
		if t.Class != Everyday && t.Class != Unknown || len(t.Mended) > 0 {
			return 0
		}
		switch c.word(-1) {
		case "of":
			return stuff
		case "the", "a", "an", "my", "your", "his", "her", "their":
			return aside
		}
		if t.Class == Everyday {
			return aside
		}
	}
	return 0
}

// ofOther reports whether the talk is rather of something else than spawn: a word
// that fits nowhere says of what, and nothing said speaks for spawn.
func (r reading) ofOther() bool {
	if deadlines(r.intents) {
		return true // "get out by noon"
	}
	var grain, size bool
	for _, t := range r.s.toks {
		switch t := t.(type) {
		case RouteWord:
			return false
		case GrainWord:
			grain = true
		case Quantity:
			size = size || measurable(t)
		case VesselWord:
			size = size || t.Container.Sized()
		}
	}
	return r.ordersOnly() && (r.foreign == stuff || r.foreign == aside && !(grain && size))
}

// deadlines reports whether nothing was read but when something must be out.
func deadlines(intents []Intent) bool {
	return len(intents) > 0 && !slices.ContainsFunc(intents, func(in Intent) bool {
		_, out := in.(OutBy)
		_, at := in.(StartAt)
		return !out && !at
	})
}

// ordersOnly reports whether nothing was read but orders, with deadlines or not.
func (r reading) ordersOnly() bool {
	orders := []Kind{KindPlan, KindReverse, KindOutBy, KindStartAt, KindAdd}
	return !slices.ContainsFunc(r.kinds, func(k Kind) bool { return !slices.Contains(orders, k) })
}
