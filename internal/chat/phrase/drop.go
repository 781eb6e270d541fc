package phrase

import "fmt"

var dropGrammar = grammar{
	kind:     KindDrop,
	examples: []string{"without the jars", "no jars", "no, only jars", "drop the bags", "just the 5lb bags"},
	match: func(c cursor) (Intent, cursor, bool) {
		if d, ok := c.maybe("no", "nope", "sorry", "ok").comma().phrase("only", "just", "keep only", "only keep", "just keep", "make it just", "make it only",
			"nothing but", "make that just", "make that only"); ok {
			return drop(c, d, Others)
		}
		d, ok := c.phrase("without", "drop", "remove", "leave out", "skip", "minus", "take out", "except", "not", "forget about", "no need for", "cancel",
			"scrap", "leave off", "lose", "ditch")
		if ok {
			return drop(c, d, Named)
		}
		d, ok = c.phrase("no", "no more")
		if _, sized := d.token().(VesselWord); !ok || !sized {
			return nil, c, false // "no 5lb bags" says what is right
		}
		return drop(c, d, Named)
	},
}

// String prints the wish so that it parses back.
func (p Drop) String() string {
	switch p.Goes {
	case Named:
		return "without the " + containerText(p.Container)
	case Others:
		return "only the " + containerText(p.Container)
	}
	panic(fmt.Sprintf("phrase: nobody said what goes: %d", p.Goes))
}

// drop reads what was named; nothing may follow it.
func drop(c, d cursor, goes Goes) (Intent, cursor, bool) {
	k, d, ok := d.over("the", "any", "all", "those", "these", "all the", "do", "make").kind()
	d = d.over("again", "please", "pls", "then", "after all", "this time")
	if !ok || !d.parted().done() {
		return nil, c, false
	}
	return Drop{Container: k, Goes: goes}, d, true
}

// comma goes past a comma if one stands here.
func (c cursor) comma() cursor {
	c, _ = c.mark(",")
	return c
}
