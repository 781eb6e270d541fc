package phrase

import (
	"slices"

	"ryebell/internal/kitchen"
)

var coolYetGrammar = grammar{
	kind: KindCoolYet,
	examples: []string{
		"is 12 cool yet", "how long", "when can i inoculate", "eta on the big pot?", "cool by 8?", "how long for #12", "when can i use 12",
		"is 12 cool enough for enoki", "when can i put enoki on 12", "can i inoculate tonight", "when can i use 12.3",
	},
	match: matchCoolYet,
}

// String prints the question so that it parses back.
func (q CoolYet) String() string {
	s := "is it cool"
	if q.Warm {
		return "how warm is it"
	}
	switch {
	case q.Which.Run != 0:
		s = "is " + q.of().String() + " cool"
	case q.Which.Cooker != "":
		s = "is the " + q.Which.Cooker + " cool"
	case q.Which.Mine:
		s = "is mine cool"
	}
	if q.For != "" {
		s += " enough for " + q.For
	}
	if q.By == nil {
		return s + " yet"
	}
	return s + " by " + momentText(*q.By) + "?"
}

// of is the run that is asked about, or a unit of it.
func (q CoolYet) of() kitchen.Ref {
	if q.Unit == 0 {
		return kitchen.Ref{Run: q.Which.Run}
	}
	return kitchen.Ref{Run: q.Which.Run, Units: []kitchen.UnitNo{q.Unit}}
}

// asked takes the run, cooker or unit that a question is about: 12, 12.3, the big pot.
func (q *CoolYet) asked(c cursor) (cursor, bool) {
	d := c.over("on", "of", "with", "in", "for", "the", "run", "number", "our")
	var ref kitchen.Ref
	switch t := d.token().(type) {
	case RunRef:
		ref = t.Ref
	case Number:
		if t.Ref != nil {
			ref = *t.Ref
		}
	}
	if len(ref.Units) == 1 {
		q.Which, q.Unit = Which{Run: ref.Run}, ref.Units[0]
		return d.use(1), true
	}
	w, e, ok := c.whichOf()
	if ok {
		q.Which = w
	}
	return e, ok
}

// coolThings are what people ask of without naming a run.
var coolThings = []string{
	"it", "they", "the bags", "the jars", "bags", "jars", "that", "the bag", "everything", "them", "it all", "my bags", "my jars", "the grain", "the load",
}

var coolWords = []string{
	"cool", "cool yet", "cool enough", "cool now", "cooled", "cooled down", "cooled yet", "ready", "ready yet", "done", "done yet", "cold enough", "cold", "cold yet",
	"cool enough yet", "ready to inoculate", "ready for inoculation", "cool enough to inoculate", "usable", "still warm", "still hot", "still too warm", "too warm still",
	"too hot", "too warm", "cooled down yet", "ready now", "cool already", "at room temperature",
}

// matchCoolYet reads the ways to ask when a run is cool.
func matchCoolYet(c cursor) (Intent, cursor, bool) {
	if !coolStarts[c.word(0)] && !isNumber(c.token()) {
		return nil, c, false
	}
	if q, d, ok := howWarm(c); ok {
		return q, d, true
	}
	if q, d, ok := doItBy(c); ok {
		return q, d, true
	}
	for _, read := range [...]func(cursor) (CoolYet, cursor, bool){canPut, isCool, whenCool, howLong} {
		q, d, ok := read(c)
		if !ok {
			continue
		}
		d = d.over("yet", "now", "already", "then", "please", "pls", "again", "do you think", "roughly", "about")
		if q.Which == (Which{}) {
			if e, ok := q.asked(d); ok {
				d = e
			}
		}
		if name, e, ok := forCulture(d, q.Which); ok && q.For == "" {
			q.For, d = name, e.over("yet", "now", "already")
		}
		if by, e, ok := coolBy(d); ok && q.By == nil {
			q.By, d = &by, e
		}
		d.plain = q.For != "" || q.Which != (Which{}) || q.By != nil || d.used > 2
		return q, d, true
	}
	return nil, c, false
}

// coolBy reads "by 8", "by tomorrow 9:00", "at 20:00".
func coolBy(c cursor) (Moment, cursor, bool) {
	d, ok := c.phrase("by", "before", "until", "at", "for", "tonight", "tomorrow")
	if ok && (d.word(-1) == "tonight" || d.word(-1) == "tomorrow") {
		d = c
	}
	if !ok {
		d = c
	}
	if m, e, ok := d.when(); ok && m.Shift >= 0 && !m.Now {
		return e.byEnd(m), e, true
	}
	if e, ok := d.phrase("morning", "the morning", "in the morning", "noon"); ok {
		return Moment{Clock: &ClockTime{Hour: 12, Half: true}}, e, true
	}
	if !ok || c.word(0) == "for" {
		return Moment{}, c, false
	}
	return d.bareHour()
}

// isCool reads "is 12 cool yet", "12 cool?", "cool yet?", "cool by 8?".
func isCool(c cursor) (CoolYet, cursor, bool) {
	var q CoolYet
	d, asked := c.phrase("is", "are", "will", "isn't", "aren't", "would", "should")
	named := false
	if e, ok := q.asked(d); ok {
		d, named = e, true
	} else if e, ok := d.phrase(coolThings...); ok && asked {
		d, named = e, true
	}
	d = d.over("be", "is", "are", "going to be", "ever", "still")
	e, ok := d.phrase(coolWords...)
	if !ok || asked && !named {
		return q, c, false
	}
	if asked {
		return q, e, true
	}
	// Without "is" it must ask in another way: "cool yet", "12 cool?", "cool by 8?".
	_, question := e.mark("?")
	yet := e.word(-1) == "yet" || e.word(-1) == "already"
	if name, f, ok := forCulture(e, q.Which); ok {
		q.For, e = name, f
		return q, e, true
	}
	by, f, ok := coolBy(e)
	if ok {
		_, question = f.mark("?")
		q.By, e = &by, f
	}
	w := d.word(0)
	return q, e, question && (named || w == "cool" || w == "cooled") || yet && (w == "cool" || w == "cooled" || named)
}

// whenCool reads "when can i inoculate", "when is 12 ready", "eta on the big pot".
func whenCool(c cursor) (CoolYet, cursor, bool) {
	var q CoolYet
	if d, ok := c.over("what's the", "whats the", "what is the", "any").phrase("eta", "estimate", "forecast", "eta on", "eta for", "eta of"); ok {
		w, e, named := d.over("please").whichOf()
		q.Which = w
		return q, e, named || e.done() || e.ends() || e.asks()
	}
	if d, ok := c.phrase(whenOff...); ok {
		d.plain = true
		return q, d, true
	}
	d, ok := c.phrase("when can i inoculate", "when can we inoculate", "when can i noc", "when can i use", "when can we use", "when can i open", "when is", "when's", "when are", "when will", "when do",
		"when does", "can i inoculate", "can we inoculate", "when to inoculate", "time to inoculate", "when can i knock up", "when can i start inoculating", "when do i inoculate", "when do we inoculate",
		"can i inoculate yet", "can i use", "can we use", "when can", "when could i inoculate", "can i noc", "when should i inoculate", "can i open")
	if !ok {
		return q, c, false
	}
	whole := d.word(-1) == "inoculate" || d.word(-1) == "noc" || d.word(-1) == "inoculating" || d.word(-1) == "yet" || d.word(-1) == "up"
	named := false
	if e, ok := q.asked(d); ok {
		d, named = e, q.Which != (Which{}) || e.word(-2) == "the"
	} else if e, ok := d.phrase(coolThings...); ok {
		d, named = e, true
	}
	d = d.over("be", "get", "gets", "become", "then")
	if e, ok := d.phrase(coolWords...); ok && named {
		return q, e, true
	}
	if e, ok := d.phrase("inoculated", "be inoculated", "used", "opened"); ok && named {
		return q, e, true
	}
	verb := d.word(-1)
	use := c.length("when can i use") > 0 || c.length("when can we use") > 0 || c.length("can i use") > 0 || c.length("can we use") > 0 || c.length("when can i open") > 0 || c.length("can i open") > 0
	return q, d, whole || use && named && verb != "use"
}

// whenOff are ways to ask how long the hold still takes.
var whenOff = []string{
	"heat off when", "when is heat off", "when's heat off", "when heat off", "when is the heat off", "when do i turn it off", "when do we turn it off", "when can i turn it off", "when do i turn off the heat",
	"when can i turn off the heat", "when do i turn the heat off", "when can i turn the heat off", "when should i turn it off", "when to turn it off", "when does it go off", "when is it over", "when's it over",
	"when does the hold end", "when is the hold over", "when do i switch it off", "when can i switch it off",
}

// howWarm reads "how warm is it", "how hot is 12 now".
func howWarm(c cursor) (CoolYet, cursor, bool) {
	d, ok := c.phrase("how warm is", "how hot is", "how warm are", "how hot are")
	if !ok {
		return CoolYet{}, c, false
	}
	var q CoolYet
	named := false
	if e, of := q.asked(d); of {
		d, named = e, true
	} else if e, fits := d.phrase(coolThings...); fits {
		d, named = e, true
	}
	q.Warm = q.Which == (Which{})
	d = d.over("now", "inside", "in the middle", "still", "by now")
	d.plain = !q.Warm
	return q, d, named && d.parted().ends()
}

// howLong reads "how long", "how much longer for 12", "how long until cool".
func howLong(c cursor) (CoolYet, cursor, bool) {
	d, ok := c.phrase("how long", "how much longer", "how long still", "how long yet", "how long to go", "how long is left", "time left", "how much time left", "how long left", "how long more",
		"how much time is left", "how much longer now", "how long now", "how many minutes", "how many minutes left", "how long does it take", "how much time", "how long does it still take")
	if !ok {
		return CoolYet{}, c, false
	}
	var q CoolYet
	d = d.over("does", "will", "it", "still", "take", "to", "go", "left")
	if e, ok := q.asked(d); ok {
		d = e
	}
	d = d.over("take", "takes", "does it", "still", "to go")
	if e, ok := d.phrase("until", "till", "to", "til", "before"); ok {
		e = e.over(coolThings...).over("its", "is", "are", "they're", "it's", "i can", "we can", "can", "i", "we")
		if f, ok := e.phrase(coolEnds...); ok {
			d = f
		}
	}
	return q, d, true
}

// asks reports whether a question mark stands here.
func (c cursor) asks() bool {
	_, ok := c.mark("?")
	return ok
}

// coolEnds are what somebody waits for.
var coolEnds = slices.Concat(coolWords, []string{"inoculate", "it's over", "the end", "heat off", "zero", "inoculation", "use it"})

// coolStarts are the words that such a question can begin with, beside the number
// or cooker it asks of.
var coolStarts = set(`is are will isn't aren't would should the our run cool cooled what's whats what any eta estimate forecast when when's can time how heat
	pot cooker canner mine my big small large little old new on of with in for number cold ready done`)

// isNumber reports whether a token can name a run or cooker.
func isNumber(t Token) bool {
	switch t.(type) {
	case Number, RunRef, Name:
		return true
	}
	return false
}
