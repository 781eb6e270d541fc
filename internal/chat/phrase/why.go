package phrase

import (
	"fmt"

	"ryebell/internal/kitchen"
)

var whyGrammar = grammar{
	kind:     KindWhy,
	examples: []string{"why", "why 682?", "show the working", "how did you get 682", "why the hold", "why 40%", "why #12", "why #12.3", "why so late", "why 20:50?"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("why", "why is that", "why that", "why so", "how come", "show the working", "show me the working", "show working", "the working",
			"show your working", "show me your working", "working", "how did you get", "how did you get that", "how do you get", "how do you get that",
			"where does", "where do", "explain", "explain that", "show the formula", "show the maths", "show the math", "why is it", "why does it say",
			"how is that worked out", "where does that come from", "figures", "the figures", "show figures", "show the figures", "show me the figures")
		if !ok {
			return howMuchOf(c)
		}
		if part, e, ok := whyPart(d); ok {
			return Why{Part: part}, e, true
		}
		if w, e, ok := whyTime(d); ok {
			return w, e, true
		}
		d = d.over("that", "the", "is it", "it", "only")
		if n, e, ok := d.anyNumber(); ok {
			return Why{Number: n}, e.over("come from", "from"), true
		}
		if w := d.word(-1); w == "where" || w == "does" || w == "do" || w == "get" {
			return nil, c, false
		}
		return Why{}, d, true
	},
}

// String prints the question so that it parses back.
func (w Why) String() string {
	switch w.Part {
	case PartAmounts:
		return "why the amounts"
	case PartHold:
		if w.Of != (kitchen.Container{}) {
			return "how long for " + heldText(w.Of)
		}
		return "why the hold"
	case PartWater:
		if w.Which != (Which{}) {
			return "how much water" + w.Which.behind("in ")
		}
		return "why the water"
	case PartTime:
		if w.Which == (Which{}) {
			return "why so late"
		}
		return "why is" + w.asked() + " so late"
	case 0:
		if w.Number == 0 {
			return "why" + w.asked()
		}
		return "why " + plain(w.Number)
	}
	panic(fmt.Sprintf("phrase: no part %d", w.Part))
}

// asked prints of what the working is asked for.
func (w Why) asked() string {
	if w.Unit != 0 {
		return " " + kitchen.Ref{Run: w.Which.Run, Units: []kitchen.UnitNo{w.Unit}}.String()
	}
	return w.Which.behind("")
}

// howMuchOf reads "how much water in 12", "how long for 5lb bags": the same working,
// asked of something else than the plan talked about.
func howMuchOf(c cursor) (Intent, cursor, bool) {
	if d, ok := c.phrase("how much water", "how much water do i need", "how much water do we need", "how much water goes in", "how much water goes", "how much water is in", "how much water to put", "how much water do i put"); ok {
		w, e, named := d.whichOf()
		if !named {
			e = d
		}
		e = e.over("please", "pls", "then", "now")
		e.bare = w == (Which{}) // people ask each other that
		return Why{Part: PartWater, Which: w}, e, e.parted().ends()
	}
	d, ok := c.phrase("how long for", "how long do", "how long does", "how long to cook", "how long must", "how long should", "how long at pressure for", "hold for", "what hold for", "which hold for", "how long is the hold for", "how long are")
	if !ok {
		return nil, c, false
	}
	k, d, ok := heldKind(d.over("a", "the", "my", "our"))
	d = d.over("take", "need", "cook", "be cooked", "go", "hold", "cooked", "in the cooker", "in the pot", "at pressure", "please", "pls", "then")
	return Why{Part: PartHold, Of: k}, d, ok && k.Sized() && d.parted().ends()
}

// anyNumber takes a positive number with or without a unit.
func (c cursor) anyNumber() (float64, cursor, bool) {
	n := 0.0
	switch t := c.token().(type) {
	case Number:
		n = t.Value
	case Percent:
		n = t.Value
	case Period:
		n = t.Length.Minutes()
	case Quantity:
		n = t.Number
	}
	return n, c.use(1), n > 0
}

// whyPart reads what of the working is asked for; nothing may follow it.
func whyPart(c cursor) (Part, cursor, bool) {
	part := PartHold
	d := c.over("the", "that", "this", "is", "such a", "a", "so", "does it", "it", "take", "takes")
	e, ok := d.phrase("hold", "hold time", "holding time", "long hold", "hold so long", "time", "cook so long")
	if !ok && d.word(-1) == "so" || d.word(-1) == "take" {
		part = PartTime
		e, ok = d.phrase("long", "so long", "that long")
		e.bare = true // people ask each other that
	}
	if !ok {
		part = PartWater
		e, ok = d.phrase("water", "much water", "water in the pot", "pot water", "litres", "water in the cooker")
	}
	if !ok {
		part = PartAmounts
		e, ok = d.phrase("amounts", "amount", "grain", "ratio", "moisture", "dry", "wetted", "numbers", "weights")
	}
	return part, e, ok && e.over("please", "pls", "then", "exactly", "bot").parted().done()
}

// whyTime reads "why so late", "why is 12 so slow", "why 20:50?" and "why #12", of
// which the rest can be said of nothing but how long something takes.
func whyTime(c cursor) (Why, cursor, bool) {
	d := c.over("is", "does", "are", "will", "at", "only at", "not before", "until")
	var w Why
	named := false
	if r, ok := d.token().(RunRef); ok && len(r.Ref.Units) > 0 {
		w.Which.Run, d, named = r.Ref.Run, d.use(1), true
		if len(r.Ref.Units) == 1 {
			w.Unit = r.Ref.Units[0]
		}
	} else if _, number := d.token().(Number); !number || d.i > c.i {
		var e cursor
		if w.Which, e, named = d.whichOf(); named {
			d = e
		}
	}
	if !named {
		d = d.over("it", "the bags", "the jars", "they", "that")
	}
	d = d.over("be", "take", "takes", "taking", "cooling", "cool", "still")
	e, late := d.phrase("so late", "that late", "so slow", "so slowly", "so long", "that long", "late", "not earlier", "not sooner", "so early", "that time", "not today", "not tonight", "not yet", "slow")
	_, clock := d.token().(When)
	switch {
	case late:
		w.Part, d = PartTime, e
	case clock && !named:
		w.Part, d = PartTime, d.use(1)
	case w.Which == (Which{}):
		return Why{}, c, false
	}
	d.bare = w.Which == (Which{}) // people ask each other that
	return w, d, d.over("then", "please", "pls", "cool", "cooling").parted().ends()
}
