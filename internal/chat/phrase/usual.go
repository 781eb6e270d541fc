package phrase

var usualGrammar = grammar{
	kind:     KindUsual,
	examples: []string{"the usual", "the usual out by 8pm", "make that the usual"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("make that the usual", "make that our usual", "make it the usual", "make this the usual", "make it our usual",
			"that is the usual", "that's the usual", "thats the usual", "that's our usual", "thats our usual", "save that as the usual",
			"that's the usual from now on", "let that be the usual", "make that usual", "call that the usual")
		if ok {
			return MakeUsual{}, d.maybe("order", "from now on", "one"), true
		}
		d, ok = c.over("we", "do", "i", "i'll", "want", "have", "let's", "lets", "make", "can").phrase("the usual", "usual", "our usual", "usual order",
			"the usual order", "our usual order", "my usual", "the usual one", "the usual please")
		if !ok {
			return nil, c, false
		}
		by, d := d.over("please", "pls", "again", "order").maybeOutBy()
		return Usual{OutBy: by}, d, true
	},
}

// String prints the wish so that it parses back.
func (u Usual) String() string { return "the usual" + outByText(u.OutBy) }

// String prints the wish so that it parses back.
func (MakeUsual) String() string { return "make that the usual" }
