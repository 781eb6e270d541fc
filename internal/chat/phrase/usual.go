package phrase

import (
	"strconv"

	"ryebell/internal/kitchen"
)

var usualGrammar = grammar{
	kind: KindUsual,
	examples: []string{
		"the usual", "the usual out by 8pm", "make that the usual", "the usual but 6", "usual x2", "the usual, millet", "the usual with lc, out by 20:30", "the usual in the big pot tomorrow",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("make that the usual", "make that our usual", "make it the usual", "make this the usual", "make it our usual",
			"that is the usual", "that's the usual", "thats the usual", "that's our usual", "thats our usual", "save that as the usual",
			"that's the usual from now on", "let that be the usual", "make that usual", "call that the usual")
		if ok {
			return MakeUsual{}, d.maybe("order", "from now on", "one"), true
		}
		return matchUsual(c)
	},
}

// String prints the wish so that it parses back.
func (u Usual) String() string {
	s := "the usual"
	if u.Times != 0 {
		s += " x" + strconv.Itoa(u.Times)
	}
	if u.Fix != (kitchen.Item{}) {
		s += " but" + fixText(u.Fix)
	}
	return s + orderText(kitchen.Order{Cooker: u.Cooker}) + outByText(u.OutBy) + startText(u.StartAt)
}

// String prints the wish so that it parses back.
func (MakeUsual) String() string { return "make that the usual" }

// matchUsual reads the usual order and what is to be other than usual.
func matchUsual(c cursor) (Intent, cursor, bool) {
	var u Usual
	d := c.over("we", "do", "i", "i'll", "want", "have", "let's", "lets", "make", "can")
	if n, e, ok := d.times(); ok {
		u.Times, d = n, e
	}
	d, ok := d.phrase("the usual", "usual", "our usual", "usual order", "the usual order", "our usual order", "my usual", "the usual one", "the usual please")
	if !ok {
		return nil, c, false
	}
	d = d.over("please", "pls", "again", "order")
	if n, e, ok := d.times(); ok && u.Times == 0 {
		u.Times, d = n, e
	}
	w := wish{s: c.s}
	d = w.whereAndWhen(d)
	if fix, e, ok := unusual(d); ok {
		u.Fix, d = fix, e
	}
	d = w.whereAndWhen(d)
	u.Cooker, u.OutBy, u.StartAt = w.cooker, w.outBy, w.startAt
	return u, d, true
}

// whereAndWhen reads the cooker wanted, and the day or the deadline.
func (w *wish) whereAndWhen(c cursor) cursor {
	before := *w
	d := w.extras(c)
	if w.hold != 0 || w.near != nil {
		*w = before // the usual has its own hold
		return c
	}
	return d
}

// times reads "x2", "twice", "double".
func (c cursor) times() (int, cursor, bool) {
	if d, ok := c.phrase("twice", "double", "two times"); ok {
		return 2, d, true
	}
	if d, ok := c.phrase("three times", "triple"); ok {
		return 3, d, true
	}
	d := c.maybe("x", "times")
	n, ok := d.token().(Number)
	if !ok || !n.Whole || n.Value < 1 || n.Value > 99 || !n.Times && d.i == c.i && c.word(1) != "times" {
		return 0, c, false
	}
	return int(n.Value), d.use(1).maybe("times"), true
}

// unusual reads what takes the place of the usual: "but 6", ", millet", "with lc".
func unusual(c cursor) (kitchen.Item, cursor, bool) {
	switch c.comma().word(0) {
	case "and", "also", "plus", "+", "&", "grain", "is", "means":
		return kitchen.Item{}, c, false // one more thing, or what is usual
	}
	d := c.comma().over("but", "with", "only", "just", "make it", "in", "for", "as", "on", "using", "of", "w", "w/", "this time")
	it := gatherOne(d)
	if len(it.drafts) != 1 || it.trouble != nil {
		return kitchen.Item{}, c, false
	}
	dr := it.drafts[0]
	settled := len(dr.routes) <= 1 && len(dr.grains) <= 1 && dr.share == nil && dr.behind == nil && !dr.ounces()
	if !settled || dr.counted && dr.item.Count <= 0 || dr.amount != nil && !dr.counted && dr.item.Container.Vessel == 0 {
		return kitchen.Item{}, c, false
	}
	fix := dr.finished()
	return fix, it.c.over("this time", "instead", "please", "pls"), fix != (kitchen.Item{})
}
