package phrase

import "strings"

// forCulture reads "for enoki" behind a question about how warm a run is. Words that
// nobody knows are a culture only where a run was named.
func forCulture(c cursor, w Which) (string, cursor, bool) {
	d, ok := c.phrase("for", "for the", "for my", "for our", "to put on", "to take")
	if !ok {
		return "", c, false
	}
	return cultureOf(d, w)
}

func cultureOf(c cursor, w Which) (string, cursor, bool) {
	name, d, ok := c.culture()
	if !ok && w != (Which{}) {
		name, d, ok = c.newCulture()
	}
	if ok {
		d.quoted = [2]int{c.i, d.i}
	}
	return name, d, ok
}

// canPut reads "when can i put enoki on 12", "can the enoki go on 12 yet".
func canPut(c cursor) (CoolYet, cursor, bool) {
	d := c.over("when", "and", "so")
	d, ok := d.phrase("can i put", "can we put", "can i add", "can we add", "may i put", "should i put", "could i put", "could we put", "do i put", "do we put", "can", "does", "could", "may", "will", "is it ok to put",
		"is it cool enough to put", "is it safe to put")
	if !ok {
		return CoolYet{}, c, false
	}
	puts := d.word(-1) == "put" || d.word(-1) == "add"
	start := d.over("the", "my", "our", "some")
	name, e, known := start.culture()
	if !known {
		name, e, ok = start.newCulture()
	}
	if !ok {
		return CoolYet{}, c, false
	}
	e.quoted = [2]int{start.i, e.i}
	e = e.over("plate", "lc", "culture", "agar", "wedges")
	verbs := []string{"go on", "be put on", "go onto", "go in", "go into"}
	if puts {
		verbs = []string{"on", "onto", "in", "into", "to"}
	}
	e, ok = e.phrase(verbs...)
	q := CoolYet{For: name}
	w, f, named := e.whichOf()
	if named {
		q.Which, e = w, f
	} else {
		e = e.maybe("it", "them", "the bags", "the jars", "the grain")
	}
	return q, e, ok && (known || w != (Which{})) && name != ""
}

// doItBy reads "can we do it tomorrow morning", which people say of everything.
func doItBy(c cursor) (CoolYet, cursor, bool) {
	d, ok := c.over("so", "and").phrase("can we do it", "can i do it", "could we do it", "could i do it", "can we do them", "do we do it", "shall we do it", "will it do")
	if !ok {
		return CoolYet{}, c, false
	}
	by, d, ok := coolBy(d)
	return CoolYet{By: &by}, d, ok
}

// ends of the parts of a day, by which something asked for that part must be so.
var partEnds = []struct {
	word string
	end  ClockTime
}{
	{"morning", ClockTime{Hour: 12, Half: true}},
	{"afternoon", ClockTime{Hour: 18, Half: true}},
	{"", ClockTime{Hour: 24, Half: true}}, // evening, night, or the whole day
}

// byEnd gives a day that was said without a time the end of it, or of its part: by
// "tonight" is by midnight.
func (c cursor) byEnd(m Moment) Moment {
	if !m.WholeDay() {
		return m
	}
	for _, p := range partEnds {
		if strings.HasSuffix(c.word(-1), p.word) {
			end := p.end
			m.Clock = &end
			return m
		}
	}
	return m
}
