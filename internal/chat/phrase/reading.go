package phrase

import (
	"slices"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// places are where a thermometer is held. "The one in the middle" is a bag that
// stands there, read from outside.
var places = [...]struct {
	place kitchen.Place
	words []string
	// outside words tell the place only of a reading that names its run: people
	// speak of the weather, too.
	outside []string
}{
	{kitchen.Skin, []string{
		"on the skin", "skin", "surface", "on the surface", "on the outside", "at the skin", "skin temp", "outside of the bag", "on the bag", "outside the bag",
		"on the jar", "on the glass", "outside of the jar", "on top of the bag", "at the surface", "skin reading",
	}, []string{"outside"}},
	{kitchen.Between, []string{
		"between the bags", "between the two", "between them", "between", "in between", "between the jars", "between bags", "between jars", "between two bags",
		"in between the bags", "between the two bags", "sandwiched", "between two",
	}, nil},
	{kitchen.Middle, []string{
		"in the middle", "middle", "in the core", "core", "at the core", "in the centre", "in the center", "in the middle of the bag", "in the middle of the jar",
		"core temp", "inside the grain", "in the grain", "middle of the bag", "at the centre", "at the center", "in the heart",
	}, []string{"inside"}},
	{0, []string{
		"on the one in the middle", "the one in the middle", "on the middle one", "the middle one", "on the big one", "on the small one", "on one of them", "on one",
		"on the warmest", "the warmest", "on the inner bag", "on the outer bag", "on the inner one", "on the outer one", "on the top one", "on the bottom one", "on the first",
	}, nil},
}

func placeText(p kitchen.Place) string {
	switch p {
	case 0:
		return ""
	case kitchen.Skin:
		return " on the skin"
	case kitchen.Between:
		return " between the bags"
	case kitchen.Middle:
		return " in the middle"
	}
	panic(p)
}

// place takes where a reading was taken.
func place(c cursor, named bool) (p kitchen.Place, end cursor, ok bool) {
	end = c
	for _, at := range places {
		if d, fits := c.phrase(at.words...); fits && d.i > end.i {
			p, end, ok = at.place, d, true
		}
		if d, fits := c.phrase(at.outside...); fits && named && d.i > end.i {
			p, end, ok = at.place, d, true
		}
	}
	return p, end, ok
}

// feels are words before a reading that say as much.
var feels = []string{
	"bags feel warm", "bags feel warm still", "bags still warm", "bags are still warm", "bags are warm", "bags still feel warm", "jars still warm", "jars feel warm",
	"jars are still warm", "still warm", "feels warm", "bags still hot", "bags are still hot", "jars are still hot", "jars still hot", "feels warm still", "still hot",
	"the bags feel warm still", "bags feel hot", "bags feel lukewarm", "warm", "bags feel cool", "bags are warm still", "jars feel warm still", "jars feel cool",
}

// tempTold reads "46C", "31 between the bags", "skin 26", "is 31".
func tempTold(c cursor, t telling) (event, cursor, bool) {
	named := t.which != (Which{})
	d := c
	e, felt := c.phrase(feels...)
	if felt {
		d = e.parted()
	}
	where, d, placed := place(d.over("the"), named)
	start := d.i
	d = d.over(tempLinks...)
	felt = felt || d.i > start && (c.s.said[start] == "thermometer" || strings.HasPrefix(c.s.said[start], "bag") || strings.HasPrefix(c.s.said[start], "jar"))
	linked := felt && d.i > start+1 || t.linked && len(t.entries) == 0 || named && d.i > start
	linked = linked || d.i > start && shows[c.s.said[start]] && warmish(d.token())
	number := unitless(d.token())
	ev, temp, d, ok := degrees(d)
	if !ok {
		return event{}, c, false
	}
	d = d.maybe("ish", "or so", "degrees", "deg", "approx", "roughly", "still", "now").maybe("still", "now")
	if p, e, ok := place(d, named); ok {
		where, d, placed = p, e, true
	}
	on := onUnit(d, t)
	if on.units != nil {
		ev.which, ev.units, d, linked = on.which, on.units, on.end, true
	}
	if number && !placed && !linked {
		return event{}, c, false
	}
	ev.loose = !placed && !felt && on.units == nil
	ev.entry = kitchen.TempRead{Temp: temp, Where: where}
	return ev, d, true
}

// A figure without a scale is degrees Celsius up to mostCelsius, for grain is no
// colder than a room, and degrees Fahrenheit from leastFahrenheit on, for it never
// boils over; between them either can be meant.
const (
	mostCelsius     = 55
	leastFahrenheit = 102
)

// degrees reads a temperature. A figure without a scale that can be either leaves
// a question.
func degrees(c cursor) (event, unit.Celsius, cursor, bool) {
	var n float64
	switch t := c.token().(type) {
	case Quantity:
		s, ok := t.sense(Temperature)
		if !ok || s.Unit != "degree" {
			return event{}, unit.Celsius(s.Value), c.use(1), ok
		}
		n = s.Value
	case Number:
		if t.Word || t.Times {
			return event{}, 0, c, false
		}
		n = t.Value
	case Range:
		if t.Senses != nil && t.Senses[0].Dim != Temperature {
			return event{}, 0, c, false
		}
		d := c.use(1)
		d.near = &Near{Trouble: Bound, Missed: c.s.typed(c.i, c.i+1)}
		return event{}, unit.Celsius(t.Lo), d, true
	default:
		return event{}, 0, c, false
	}
	var ev event
	temp := unit.Celsius(n)
	if n > mostCelsius {
		temp = unit.Fahrenheit(n)
	}
	if n > mostCelsius && n < leastFahrenheit {
		ev.ask = &scaleAsk{n, c.s.typed(c.i, c.i+1)}
	}
	return ev, temp, c.use(1), true
}

// scaleAsk is a figure that can be of either scale.
type scaleAsk struct {
	n     float64
	about string
}

// question asks for the scale of the reading that is open. Grain that is measured
// is more often near the warmth of a hand than near boiling.
func (t telling) question(in Tell) *asking {
	open, n := t.open, t.ask.n
	return &asking{gap: WhichScale, about: t.ask.about, options: []string{"°F", "°C"}, fill: func(reply cursor) (string, cursor, bool) {
		r, n := in.Entries[open].(kitchen.TempRead), n
		if q, ok := reply.token().(Quantity); ok {
			n = q.Number // the figure was a slip: "140F"
		}
		scale, ok := scaleSaid(reply)
		switch scale {
		case 'f':
			r.Temp = unit.Fahrenheit(n)
		case 'c':
			r.Temp = unit.Celsius(n)
		}
		filled := in
		filled.Entries = slices.Clone(in.Entries)
		filled.Entries[open] = r
		return filled.String(), reply.end(), ok
	}}
}

// tempLinks are words between a run or place and the temperature.
var tempLinks = []string{
	"is", "at", "about", "abt", "around", "reads", "it's", "its", "roughly", "just", "now", "still", "measured", "reading", "temp", "temp is", "temperature",
	"temperature is", "got", "we got", "shows", "thermometer says", "thermometer reads", "thermometer shows", "down to", "only", "measures", "the", "says", "bags are", "jars are", "the bags are", "the jars are", "bags at", "jars at", "bag is", "jar is",
	"they're", "they are",
}
