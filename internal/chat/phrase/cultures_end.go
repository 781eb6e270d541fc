package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

// String prints the telling so that it parses back.
func (e EndCulture) String() string {
	names := strings.Join(append([]string{e.Ended.Name}, e.Also...), " and ")
	s := ""
	switch e.Ended.How {
	case kitchen.CultureUsedUp:
		s = "used up " + names
	case kitchen.CultureThrownOut:
		s = "threw out " + names
	case kitchen.CultureWentBad:
		s = names + " went bad"
	}
	if e.When != nil {
		s += ", " + e.When.String()
	}
	return s
}

// String prints the question so that it parses back.
func (q Cultures) String() string {
	switch {
	case q.Name != "":
		return "what is " + q.Name
	case q.Kind != 0:
		return "which " + nounOf(q.Kind) + "s do we have"
	}
	return "cultures"
}

// The words by which a culture is told to be no more: before its name, and behind it.
var (
	endsBefore = [...]struct {
		how   kitchen.CultureEnd
		words []string
	}{
		{kitchen.CultureThrownOut, []string{"threw", "threw out", "threw away", "i threw", "we threw", "i threw out", "tossed", "binned", "chucked", "discarded", "dumped", "thrown out", "throwing out", "got rid of", "threw out the"}},
		{kitchen.CultureUsedUp, []string{"used up", "finished", "emptied", "i used up", "we used up", "used the last of", "used all of", "used the rest of", "no more", "ran out of"}},
	}
	endsBehind = [...]struct {
		how   kitchen.CultureEnd
		words []string
	}{
		{kitchen.CultureUsedUp, []string{"empty", "used up", "finished", "gone", "all gone", "all used", "used", "all used up", "over", "up"}},
		{kitchen.CultureThrownOut, []string{"thrown out", "thrown away", "discarded", "binned", "tossed", "in the bin", "out"}},
		{kitchen.CultureWentBad, []string{
			"bad", "contaminated", "contam", "contamed", "went bad", "gone bad", "has gone bad", "mould", "mold", "some mould", "mouldy", "moldy", "green", "went green", "got contaminated", "trich", "spoiled", "spoilt",
			"sour", "went sour", "bacteria", "bacterial", "dead", "died", "turned green", "turned out bad",
		}},
	}
)

// matchEndCulture reads "threw plate 7", "bottle 3 is empty", "plate 7 went bad".
func matchEndCulture(c cursor) (Intent, cursor, bool) {
	for _, end := range endsBefore {
		d, ok := c.over("i've", "we've", "just", "we", "i").phrase(end.words...)
		if !ok {
			continue
		}
		if in, e, ok := ended(d, end.how); ok {
			return in, e, true
		}
	}
	what, d, ok := c.culturesHere()
	if !ok {
		return nil, c, false
	}
	e := d.over("is", "are", "was", "were", "'s", "has", "have", "looks", "now", "all", "it", "it's", ":", "got", "just")
	for _, end := range endsBehind {
		f, ok := e.phrase(end.words...)
		if !ok {
			continue
		}
		sure := what.kind != 0 || f.word(-1) == "contaminated"
		in, f, ok := endOf(what, end.how, f.over("now", "already", "again", "too", "sadly"))
		f.plain = sure // "oyster went bad" is said of a dinner, too
		return in, f, ok
	}
	return nil, c, false
}

// culturesHere takes one culture or more: "plate 7 and plate 8".
func (c cursor) culturesHere() (aCulture, cursor, bool) {
	what, d, ok := c.cultureHere()
	for ok && what.when == nil && len(what.more) < mostTogether {
		e, joined := d.phrase("and", "plus")
		if f, comma := d.mark(",+&"); !joined && comma {
			e, joined = f.over("and"), true
		}
		next, f, another := e.cultureHere()
		if !joined || !another || next.known != what.known && next.kind == 0 {
			break
		}
		what.more = append(append(what.more, next.name), next.more...)
		what.when, d = next.when, f
	}
	return what, d, ok
}

func ended(c cursor, how kitchen.CultureEnd) (Intent, cursor, bool) {
	what, d, ok := c.culturesHere()
	if !ok {
		return nil, c, false
	}
	return endOf(what, how, d.over("out", "away", "completely", "today"))
}

// endOf reads why and when behind the end of a culture.
func endOf(what aCulture, how kitchen.CultureEnd, c cursor) (Intent, cursor, bool) {
	in := EndCulture{Ended: kitchen.CultureEnded{Name: what.name, How: how}, Also: what.more, When: what.when}
	e, _ := c.mark(",:;")
	if f, ok := e.phrase("contaminated", "it was contaminated", "it was bad", "went bad", "was contaminated", "it went bad", "because it was contaminated", "contam", "was bad", "it's contaminated", "it was green"); ok {
		in.Ended.How, c = kitchen.CultureWentBad, f
		e, _ = c.mark(",:;")
	}
	if m, f, ok := e.over("on").when(); ok && in.When == nil && m.Shift <= 0 {
		in.When, c = &m, f
	}
	c.plain = true
	return in, c, true
}

// matchCultures reads "cultures", "which plates do we have", "whats plate 7".
func matchCultures(c cursor) (Intent, cursor, bool) {
	if d, ok := c.phrase("cultures", "list cultures", "show cultures", "our cultures", "my cultures", "the cultures", "all cultures", "culture list", "list of cultures", "culture library", "show me the cultures", "list our cultures"); ok {
		d.plain = true
		return Cultures{}, d, d.ends()
	}
	if in, d, ok := whichCultures(c); ok {
		return in, d, true
	}
	d, ok := c.phrase("what is", "whats", "what's", "who has", "whose is", "how old is", "show", "show me", "tell me about", "what about", "how much is in", "how much is left in", "how much is left of", "what was", "who made", "where is", "wheres",
		"where's", "info on", "about", "is there still", "do we still have", "what do we know of", "what do we know about")
	if !ok {
		return nil, c, false
	}
	what, e, ok := d.cultureHere()
	if !ok || len(what.more) > 0 || what.when != nil {
		return nil, c, false
	}
	e = e.over("again", "like", "now", "from", "there", "still", "doing", "for", "made of", "of", "left", "please")
	e.plain = !what.known || what.kind != 0
	return Cultures{Name: what.name}, e, e.ends()
}

// whichCultures reads "which plates do we have", "what lcs are there", "any syringes left?".
func whichCultures(c cursor) (Cultures, cursor, bool) {
	d, ok := c.phrase("which", "what", "any", "how many", "do we have", "list", "show", "do we have any", "what other", "our", "have we", "list the", "show the", "list all", "show all", "have we any", "who has", "are there any", "are there")
	if !ok {
		return Cultures{}, c, false
	}
	_, kind, plural, d, ok := d.cultureNoun()
	e := d.over("do we have", "have we", "are there", "have we got", "we have", "are left", "left", "do we still have", "still", "exist", "there are", "now", "do i have", "right now", "at the moment", "of mine", "got", "do we have left", "are alive", "live")
	e.plain = kind != kitchen.Plate || d.word(-1) != "plates" && d.word(-1) != "dishes" // people have plates and dishes in their kitchen, too
	return Cultures{Kind: kind}, e, ok && plural && e.ends()
}
