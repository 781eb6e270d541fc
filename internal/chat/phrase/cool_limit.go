package phrase

import (
	"math"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// coolLimit reads "we inoculate below 25C", "cool means 25", "limit for enoki 24C",
// "enoki not over 24C".
func coolLimit(c cursor) (kitchen.Change, cursor, bool) {
	start := c.over("our", "the", "we", "i", "always", "only", "my")
	if culture, d, ok := start.culture(); ok {
		d, ok = d.phrase("not", "max", "at most", "limit", "limit is", "no more than", "cool limit", "never", "below", "under", "only below", "only under", "is not", "maximum", "not hotter than",
			"not warmer than", "cool means", "wants", "stays", "goes on", "goes on at", "goes in", "up to")
		if !ok && !isRange(d.token()) {
			return nil, c, false
		}
		t, d, ok := d.limitTemp()
		d.quoted = [2]int{start.i, start.i + strings.Count(culture, " ") + 1}
		return kitchen.CoolLimitIs{Temp: t, Culture: culture}, d, ok
	}
	d, ok := start.phrase("inoculate", "cool means", "cool limit", "cool limit is", "cool is", "limit", "limit is", "cooling limit", "cooling limit is", "limit for inoculating", "limit for inoculating is",
		"inoculating limit", "inoculation limit", "cool enough is", "cool enough means", "max", "maximum", "temperature limit", "limit for inoculation", "limit for inoculation is", "limit of cool", "inoculation limit is", "inoculate only",
		"inoculating limit is", "inoculate at", "inoculate when it's", "inoculate when its")
	if !ok {
		return nil, c, false
	}
	loosely := d.word(-1) == "limit" || d.word(-1) == "is" && d.word(-2) == "limit"
	loosely = loosely && !c.named("cool", "inoculating", "inoculation", "cooling")
	var is kitchen.CoolLimitIs
	most := strings.HasPrefix(d.word(-1), "max")
	if most && d.word(0) != "for" {
		return nil, c, false // of a cooker
	}
	if most || d.word(-1) == "limit" || c.named("limit") {
		if e := d.over("for"); e.i > d.i {
			if is.Culture, e, ok = e.newCulture(); !ok {
				return nil, c, false
			}
			e.quoted = [2]int{e.i - strings.Count(is.Culture, " ") - 1, e.i}
			d, loosely = e, false
		}
	}
	if verb := d.word(-1); (verb == "inoculate" || verb == "at") && !isRange(d.token()) && !isDegrees(d.token()) {
		return nil, c, false // "we inoculate at 25" can be a time, "inoculate 12" an order
	}
	quoted := d.quoted
	is.Temp, d, ok = d.limitTemp()
	d.quoted = quoted
	d.bare = loosely
	return is, d, ok
}

// limitTemp takes the temperature that something must not be over. A figure without
// a scale is of the one in which a hand would call it cool.
func (c cursor) limitTemp() (unit.Celsius, cursor, bool) {
	d := c.over("is", "means", "at", "most", "or", "about", ":", "=", "below", "under", "than", "to", "max", "not", "over", "above", "only", "when", "it's", "its")
	var n float64
	scale := "degree"
	switch t := d.token().(type) {
	case Quantity:
		s, ok := t.sense(Temperature)
		if !ok {
			return 0, c, false
		}
		n, scale = t.Number, s.Unit
	case Number:
		if t.Word || t.Times {
			return 0, c, false
		}
		n = t.Value
	case Range:
		if n = t.Hi; math.IsInf(n, 1) {
			n = t.Lo
		} else if !math.IsInf(t.Lo, -1) {
			return 0, c, false
		}
		if t.Senses != nil {
			s, ok := Quantity{Senses: t.Senses}.sense(Temperature)
			if !ok {
				return 0, c, false
			}
			scale = s.Unit
		}
	default:
		return 0, c, false
	}
	d = d.use(1).over("or less", "at most", "and no more", "max", "or below", "or under", "or colder", "degrees", "from now on", "here", "or cooler")
	switch {
	case scale == "°F", scale == "degree" && n >= 50 && n <= 113:
		return unit.Fahrenheit(n), d, true
	case scale == "°C", n > 0 && n < 50:
		return unit.Celsius(n), d, true
	}
	return 0, c, false
}

func isRange(t Token) bool {
	_, ok := t.(Range)
	return ok
}

// isDegrees reports whether a token can only be a temperature.
func isDegrees(t Token) bool {
	q, ok := t.(Quantity)
	if !ok {
		return false
	}
	_, ok = q.sense(Temperature)
	return ok
}

// mostOfCulture is the most words in the name of a culture.
const mostOfCulture = 3

// culture takes the name of a culture: of those that the collective has named, or
// that people put on an order.
func (c cursor) culture() (string, cursor, bool) {
	d := c
	var words []string
	for len(words) < mostOfCulture {
		w := d.word(0)
		if _, isWord := d.token().(Word); !isWord || !c.s.cultured(w) {
			break
		}
		words = append(words, w)
		d = d.use(1)
	}
	return strings.Join(words, " "), d, len(words) > 0
}

// newCulture takes the name of a culture, or words that nobody knows: they can be one.
func (c cursor) newCulture() (string, cursor, bool) {
	if name, d, ok := c.culture(); ok {
		return name, d, true
	}
	d := c
	var words []string
	for len(words) < mostOfCulture {
		w, isWord := d.token().(Word)
		if !isWord || w.Class != Unknown || len(w.Mended) > 0 {
			break
		}
		words = append(words, w.Text)
		d = d.use(1)
	}
	return strings.Join(words, " "), d, len(words) > 0
}

// cultured reports whether a word is one of the name of a culture.
func (s *sentence) cultured(word string) bool {
	if cultures[word] {
		return true
	}
	for _, name := range s.names.Cultures {
		for w := range strings.FieldsSeq(name) {
			if w == word {
				return true
			}
		}
	}
	return false
}

func coolLimitText(c kitchen.CoolLimitIs) string {
	if c.Culture == "" {
		return "cool limit " + temperatureText(c.Temp)
	}
	return "limit for " + c.Culture + " " + temperatureText(c.Temp)
}
