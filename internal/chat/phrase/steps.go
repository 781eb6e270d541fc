package phrase

import "ryebell/internal/kitchen"

var stepsGrammar = grammar{
	kind:     KindSteps,
	examples: []string{"what now", "next", "steps", "what do i do after venting", "what's next for 12"},
	match:    matchSteps,
}

// String prints the question so that it parses back.
func (s Steps) String() string {
	if s.After != 0 {
		for _, a := range afters {
			if a.kind == s.After {
				return "what now after " + a.words[0] + s.Which.behind("for ")
			}
		}
	}
	if s.Which == (Which{}) {
		return "steps"
	}
	return "steps" + s.Which.behind("for ")
}

// afters are the things after which somebody asks what to do.
var afters = [...]struct {
	kind  kitchen.Kind
	words []string
}{
	{kitchen.KindPrepEnded, []string{"the preparation", "soaking", "simmering", "draining", "drying", "the soak", "the simmer", "prep"}},
	{kitchen.KindHeatOn, []string{"heat on", "lighting it", "the heat is on"}},
	{kitchen.KindSteam, []string{"steam", "steam comes", "it steams", "the steam", "steaming"}},
	{kitchen.KindVentClosed, []string{"venting", "the vent", "vent", "weight on", "the weight is on", "the venting"}},
	{kitchen.KindAtPressure, []string{"pressure", "at pressure", "the hold", "it's at pressure", "reaching pressure"}},
	{kitchen.KindHeatOff, []string{"heat off", "the heat is off", "turning it off"}},
	{kitchen.KindAtZero, []string{"zero", "it's at zero", "the zero"}},
	{kitchen.KindOutOfPot, []string{"cooling", "they're out", "out of the pot", "unloading"}},
	{kitchen.KindPressureLost, []string{"lost pressure", "losing pressure", "it lost pressure"}},
}

// matchSteps reads "what now", "next", "what do i do after venting".
func matchSteps(c cursor) (Intent, cursor, bool) {
	d, ok := c.over("ok", "and", "so").phrase("what now", "next", "steps", "what's next", "whats next", "what is next", "what next", "next step", "now what", "the next step", "what's the next step",
		"whats the next step", "what do i do", "what do i do now", "what do we do", "what do we do now", "what should i do", "what should i do now", "what to do", "what to do now",
		"what to do next", "what do i do next", "what comes next", "what comes", "then what", "and now", "show steps", "show the steps", "the steps", "what's to do", "what else",
		"what must i do", "what must i do now", "what have i to do", "show me the steps", "sealed", "bags are sealed", "bags sealed", "sealed them", "sealed the bags", "step", "loaded",
		"bags are in", "jars are in", "what happens next", "what happens")
	if !ok {
		return nil, c, false
	}
	var s Steps
	d = d.over("please", "pls", "then", "with it")
	if _, ok := d.phrase("after", "when", "once", "if"); ok {
		for _, a := range afters {
			if f, ok := d.use(1).phrase(a.words...); ok {
				s.After, d = a.kind, f
				break
			}
		}
	}
	if w, e, ok := d.whichOf(); ok {
		s.Which, d = w, e
	}
	if w := d.word(-1); s.After == 0 && (w == "comes" || w == "happens" || w == "else" && d.word(-2) == "what") {
		return nil, c, false
	}
	d.plain = s != (Steps{})
	return s, d, true
}
