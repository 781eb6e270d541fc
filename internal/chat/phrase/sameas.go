package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

var sameAsGrammar = grammar{
	kind:     KindSameAs,
	examples: []string{"same as 12", "same again as #12", "same as 12 out by 20:30", "same again"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.over("the", "do", "make", "cook").phrase("same as", "same again as", "same thing as", "same order as", "again like",
			"like", "repeat", "redo", "plan like", "same plan as")
		if e, again := c.over("do", "make", "cook", "and", "once more", "all").phrase("same again", "the same again", "same as last time", "the same as last time", "same as before", "the same as before",
			"same thing again", "the same thing again", "once more the same", "same as the last", "same order again", "same as last"); again && (!ok || e.ends()) {
			by, e := e.over("please", "pls").maybeOutBy()
			return SameAs{OutBy: by}, e, true
		}
		if !ok {
			return nil, c, false
		}
		run, d, ok := d.over("run", "in", "number", "no", "last").run()
		if !ok {
			return nil, c, false
		}
		d = d.over("again", "please", "pls")
		by, d := d.maybeOutBy()
		return SameAs{Run: run, OutBy: by}, d, true
	},
}

// String prints the wish so that it parses back.
func (s SameAs) String() string {
	if s.Run == 0 {
		return "same again" + outByText(s.OutBy)
	}
	return "same as " + s.Run.String() + outByText(s.OutBy)
}

// run takes #12 or a bare 12.
func (c cursor) run() (kitchen.RunNo, cursor, bool) {
	switch t := c.token().(type) {
	case RunRef:
		return t.Ref.Run, c.use(1), len(t.Ref.Units) == 0
	case Number:
		if n, ok := whole(t.Value); ok && n > 0 && n <= mostRuns && t.Whole && !t.Word && !pointed(c.word(0)) {
			return kitchen.RunNo(n), c.use(1), true
		}
	}
	return 0, c, false
}

// pointed reports whether a number was written with a decimal point or comma: 12.0 may
// be meant for a unit that nobody counts, and is no run.
func pointed(said string) bool { return strings.ContainsAny(said, ".,") }
