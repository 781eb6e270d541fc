package phrase

var stepsGrammar = grammar{
	kind:     KindSteps,
	examples: []string{"what now", "next", "steps", "what do i do after venting", "what's next for 12"},
	match:    matchSteps,
}

// String prints the question so that it parses back.
func (s Steps) String() string {
	if s.Which == (Which{}) {
		return "steps"
	}
	return "steps" + s.Which.behind("for ")
}

// afters are the things after which somebody asks what to do. The step at hand says
// what comes after it.
var afters = [...]string{
	"the preparation", "soaking", "simmering", "draining", "drying", "the soak", "the simmer", "prep",
	"heat on", "lighting it", "the heat is on",
	"steam", "steam comes", "it steams", "the steam", "steaming",
	"venting", "the vent", "vent", "weight on", "the weight is on", "the venting",
	"pressure", "at pressure", "the hold", "it's at pressure", "reaching pressure",
	"heat off", "the heat is off", "turning it off",
	"zero", "it's at zero", "the zero",
	"cooling", "they're out", "out of the pot", "unloading",
	"lost pressure", "losing pressure", "it lost pressure",
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
	after := false
	if _, ok := d.phrase("after", "when", "once", "if"); ok {
		if f, ok := d.use(1).phrase(afters[:]...); ok {
			after, d = true, f
		}
	}
	if w, e, ok := d.whichOf(); ok {
		s.Which, d = w, e
	}
	if w := d.word(-1); !after && (w == "comes" || w == "happens" || w == "else" && d.word(-2) == "what") {
		return nil, c, false
	}
	d.plain = after || s != (Steps{})
	return s, d, true
}
