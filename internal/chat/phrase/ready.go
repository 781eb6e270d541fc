package phrase

var readyGrammar = grammar{
	kind: KindReadyWhen,
	examples: []string{
		"when do i shake 12", "when will #12.1-4 be grown through", "how long till 12.3 is colonised", "is 12.3 grown through yet",
	},
	match: matchReady,
}

// matchReady reads when units are to be shaken or expected grown through. Of a whole
// run "ready" is asked for the pot: see [CoolYet].
func matchReady(c cursor) (Intent, cursor, bool) {
	d := c.over("and", "so", "hey", "btw", "ok")
	if e, ok := d.phrase("when do i shake", "when to shake", "when do we shake", "when should i shake", "when should we shake", "when shall i shake", "shall i shake", "should i shake"); ok {
		of, e, ok := e.over("the", "up").meant(Meant{})
		e.plain = true
		return ReadyWhen{Of: of.Meant}, e, ok
	}
	if e, ok := d.phrase("when can i use", "when can we use", "can i use", "can we use", "when may i use"); ok {
		of, e, ok := e.over("the").meant(Meant{})
		e = e.over("yet", "already", "now")
		e.plain = true
		return ReadyWhen{Of: of.Meant}, e, ok && of.unitsOnly()
	}
	d, ok := d.phrase("when is", "when are", "when will", "when's", "how long till", "how long until", "how long before", "how long for", "is", "are", "how much longer for")
	if !ok {
		return nil, c, false
	}
	of, d, ok := d.over("the").meant(Meant{})
	if !ok {
		return nil, c, false
	}
	d = d.over("is", "are", "be", "will be", "to be", "likely", "going to be")
	sure, grown := d.phrase("grown through", "grown", "colonised", "colonized", "fully colonised", "fully colonized", "all white", "done growing", "through", "full", "grown out")
	if grown {
		sure = sure.over("yet", "now", "already")
		sure.plain = true
		return ReadyWhen{Of: of.Meant}, sure, true
	}
	d, ok = d.phrase("ready", "done", "finished", "good to go", "usable", "ready to use", "ready for straw")
	d = d.over("yet", "now", "already")
	d.plain = true
	return ReadyWhen{Of: of.Meant}, d, ok && of.unitsOnly() && !of.isZero()
}

// String prints the question so that it parses back.
func (r ReadyWhen) String() string { return "when is " + r.Of.String() + " grown through" }
