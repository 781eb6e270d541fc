package phrase

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// elevation reads "we're at 1600 m", "elevation 5280 ft", "1600 m up".
func elevation(c cursor) (kitchen.Change, cursor, bool) {
	d, said := c.over("we", "we're", "were", "are", "our", "the", "kitchen", "is", "i'm", "i", "am", "im", "live", "lives", "stands", "it's", "its", "sits",
		"house", "here").phrase("elevation", "altitude", "at", "height", "at an elevation of", "elevation is", "altitude is", "up at", "at about",
		"at an altitude of", "elevation of", "our elevation is", "our altitude is", "living at", "the elevation is", "elevation:", "the altitude is")
	if !said {
		d = c.over("we're", "we", "are", "our", "kitchen", "is", "the", "it's", "were", "live", "at", "about")
	}
	d = d.over("about", "around", "roughly", ":", "=", "at", "is", "of", "now")
	bare := d.word(-1) == "at" && d.i == c.i+1 // "at 1600 m" alone could be anything
	if n, e, number := d.number(); number && said && n >= 0 && c.named("elevation", "altitude", "height") {
		e.ask = lengthQuestion(d, n)
		return kitchen.Elevation{}, e, true
	}
	m, d, ok := d.quantity(Length)
	if !ok || m.Value > farthest || m.Unit == "in" || m.Unit == "mm" || m.Unit == "cm" {
		return nil, c, false
	}
	e, tail := d.phrase("up", "above sea level", "over the sea", "high", "elevation", "altitude", "above sea", "asl", "up here", "of elevation", "of altitude",
		"over sea level", "above the sea")
	if tail {
		d = e
	}
	if !said && !tail || bare && !tail {
		return nil, c, false
	}
	return kitchen.Elevation{Height: unit.Metres(m.Value)}, d.over("here", "up", "now"), true
}

// farthest is the greatest length that can be meant as a height, in metres: more is
// the way to somewhere.
const farthest = 20_000

// named reports whether one of the words stands among the next few.
func (c cursor) named(words ...string) bool {
	for n := range 6 {
		if slices.Contains(words, c.word(n)) {
			return true
		}
	}
	return false
}

// lengthQuestion asks for the unit of a height.
func lengthQuestion(c cursor, n float64) *asking {
	return &asking{gap: WhichLength, about: c.s.typed(c.i, c.i+1), options: []string{"metres", "feet"}, fill: func(reply cursor) (string, cursor, bool) {
		if m, e, ok := reply.quantity(Length); ok {
			return "elevation " + senseText(m), e, true // said anew
		}
		if e, ok := reply.phrase("metres", "meters", "m", "metre", "meter"); ok {
			return "elevation " + plain(n) + " m", e, true
		}
		e, ok := reply.phrase("feet", "ft", "foot")
		return "elevation " + plain(n) + " ft", e, ok
	}}
}

// roomTemperature reads "room 19C", "its 66F in here", "kitchen is 18 degrees". A
// figure without a scale is of the one in which a room can be so warm.
func roomTemperature(c cursor) (kitchen.Change, cursor, bool) {
	d, said := c.over("the", "our", "it's", "its").phrase("room", "room temp", "room temperature", "room is", "the room is", "our room is", "room temp is",
		"room temperature is", "room's", "room at", "the room", "kitchen is", "the kitchen is", "kitchen's", "the kitchen's", "kitchen at", "the lab is", "lab is", "lab's")
	d = d.over("about", "around", "it's", "its", "is", "it", "at", "now", ":", "=")
	if _, degrees := d.token().(Quantity); !degrees && !said && d.i == c.i {
		return nil, c, false
	}
	t, e, ok := d.quantity(Temperature)
	temp := unit.Celsius(t.Value)
	var ask *asking
	if n, f, number := d.number(); !ok && number {
		e = f
		temp, ok = roomScale(n)
		ok = ok && (roomy(n) || !said || d.word(-1) != "room")
	} else if ok && t.Unit == "degree" {
		var one bool
		if temp, one = roomScale(t.Value); !one {
			ask = scaleQuestion(d, t.Value)
		}
	}
	if r, bound := d.token().(Range); !ok && bound && said && (r.Senses == nil || r.Senses[0].Dim == Temperature) {
		e, ok = d.use(1), true
		e.near = &Near{Trouble: Bound, Missed: c.s.typed(d.i, d.i+1), Example: "room " + plain(r.Lo) + " °C"}
	}
	if !ok {
		return nil, c, false
	}
	e = e.over("now", "right now", "today", "at the moment", "already", "again", "still")
	f, tail := e.phrase("in here", "in the room", "in the kitchen", "inside", "in the lab", "here", "in this room", "in our kitchen", "room", "room temperature")
	if tail {
		e = f
	}
	if !said && !tail {
		return nil, c, false
	}
	e = e.over("now", "right now", "today", "at the moment", "already", "again")
	e.ask = ask
	return kitchen.RoomTemperature{Temp: temp}, e, true
}

// roomScale is how warm a figure without a scale says that a room is: 5 to 40 °C, 41
// to 104 °F. No kitchen is outside of both.
func roomScale(n float64) (unit.Celsius, bool) {
	switch {
	case n >= 5 && n <= 40:
		return unit.Celsius(n), true
	case n >= 41 && n <= 104:
		return unit.Fahrenheit(n), true
	}
	return unit.Celsius(n), false
}

// roomy reports whether a figure right behind the word can be the warmth of a room:
// room 12 is rather one with a number on its door.
func roomy(n float64) bool { return n >= 14 && n <= 35 || n >= 50 && n <= 100 }

// comfortable is the highest figure that people would give a room in degrees
// Celsius.
const comfortable = 45

func scaleQuestion(c cursor, n float64) *asking {
	options := []string{"°F", "°C"}
	if n <= comfortable {
		options = []string{"°C", "°F"}
	}
	return &asking{gap: WhichScale, about: c.s.typed(c.i, c.i+1), options: options, fill: func(reply cursor) (string, cursor, bool) {
		n := n
		if q, ok := reply.token().(Quantity); ok {
			n = q.Number // "room 19" was a slip: "20C"
		}
		switch scale, _ := scaleSaid(reply); scale {
		case 'f':
			return "room " + plain(n) + " °F", reply.end(), true
		case 'c':
			return "room " + plain(n) + " °C", reply.end(), true
		}
		return "", reply, false
	}}
}

// scaleSaid reads a reply that names a scale, 'c' or 'f': "F", "°C", "70 F",
// "celsius".
func scaleSaid(c cursor) (rune, bool) {
	c = c.over("degrees", "in", "in degrees", "of course")
	if q, ok := c.token().(Quantity); ok && c.use(1).parted().done() {
		switch s, _ := q.sense(Temperature); s.Unit {
		case "°F":
			return 'f', true
		case "°C":
			return 'c', true
		}
	}
	w := strings.ToLower(strings.Trim(c.s.text, " °.!?"))
	w = strings.TrimSuffix(strings.TrimSuffix(w, " please"), " pls")
	switch w = strings.TrimPrefix(strings.TrimPrefix(w, "degrees "), "in "); w {
	case "f", "fahrenheit":
		return 'f', true
	case "c", "celsius", "centigrade":
		return 'c', true
	}
	return 0, false
}

// timeZone reads "time zone Europe/Berlin".
func timeZone(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.over("our", "the", "my").phrase("time zone", "timezone", "zone", "tz", "time zone is", "timezone is", "our time zone is", "clock is", "we're in",
		"we are in")
	if !ok || d.done() {
		return nil, c, false
	}
	free := d.word(-1) == "in"
	d, _ = d.over("is", "to").mark(":")
	if d.done() {
		return nil, c, false
	}
	start := d.token().Extent().Start
	name := d.s.text[start:]
	if i := strings.IndexFunc(name, func(r rune) bool { return r != '/' && r != '_' && r != '+' && r != '-' && !isAlnum(r) }); i >= 0 {
		name = name[:i]
	}
	name = strings.TrimRight(name, "+-_/")
	if !strings.Contains(name, "/") && (free || !strings.EqualFold(name, "utc") && !strings.EqualFold(name, "gmt")) {
		return nil, c, false
	}
	e := d
	for !e.done() && e.token().Extent().Start < start+len(name) {
		e = e.use(1)
	}
	e.quoted = [2]int{d.i, e.i}
	return kitchen.ZoneIs{Zone: zoneName(name)}, e, true
}

func isAlnum(r rune) bool {
	return r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r))
}

// zoneName spells a time zone as the tables do: Europe/Berlin,
// America/Port_of_Spain, Etc/GMT+1.
func zoneName(s string) string {
	b := []byte(strings.ToLower(s))
	for i := 0; i < len(b); {
		j := i
		for j < len(b) && b[j] >= 'a' && b[j] <= 'z' {
			j++
		}
		switch part := string(b[i:j]); part {
		case "of", "es", "au", "d":
		case "utc", "gmt", "us":
			copy(b[i:], strings.ToUpper(part))
		case "":
		default:
			b[i] -= 'a' - 'A'
		}
		i = j + 1
	}
	return string(b)
}

// quarts reads "imperial quarts", "we use us quarts", "our pints are imperial".
func quarts(c cursor) (kitchen.Change, cursor, bool) {
	d := c.over("we", "use", "our", "all", "always", "the", "mean", "by", "quart", "means")
	is := func(d cursor) (kitchen.Measure, cursor, bool) {
		if e, ok := d.phrase("imperial", "uk", "british"); ok {
			return kitchen.Imperial, e, true
		}
		e, ok := d.phrase("us", "american", "u.s.")
		return kitchen.US, e, ok
	}
	if m, e, ok := is(d); ok {
		e, ok = e.phrase("quarts", "quart", "pints", "pint", "gallons", "quarts and pints", "measures", "measure", "jars", "pints and quarts", "volumes")
		return kitchen.MeasureIs{Measure: m}, e, ok
	}
	d, ok := d.phrase("quarts are", "pints are", "quarts and pints are", "jars are", "gallons are", "measures are", "pints and quarts are", "quarts means")
	if !ok {
		return nil, c, false
	}
	m, d, ok := is(d.over("all", "the"))
	return kitchen.MeasureIs{Measure: m}, d.over("ones", "quarts"), ok
}

// pressure reads "we cook at 13 psi".
func pressure(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.phrase("we cook at", "we run at", "cooking pressure", "we always cook at", "our pressure is", "we use", "pressure", "cook pressure", "cook at",
		"we hold at", "we sterilise at", "we sterilize at", "i cook at", "our cooking pressure is", "we can at", "we pressure cook at")
	if !ok {
		return nil, c, false
	}
	p, d, ok := d.over("is", "about", "at", "of", "around").quantity(Pressure)
	return kitchen.PressureIs{Gauge: unit.GaugeKPa(p.Value)}, d.over("here", "usually", "always", "up", "now"), ok
}

// heldText names what a hold is for.
func heldText(c kitchen.Container) string {
	if c == (kitchen.Container{}) {
		return "everything"
	}
	return containerText(c)
}

func methodText(m kitchen.MethodIs) string {
	what := "everything"
	if m.Vessel != 0 {
		what = m.Vessel.String() + "s"
	}
	switch m.Method {
	case kitchen.Soaked:
		return "we soak " + what
	case kitchen.Measured:
		return "we measure water for " + what
	}
	panic(fmt.Sprintf("phrase: no method %d", m.Method))
}

func cookerText(k kitchen.CookerIs) string {
	var facts []string
	add := func(said bool, s string) {
		if said {
			facts = append(facts, s)
		}
	}
	for i, t := range k.Takes {
		verb := "takes "
		if i > 0 {
			verb = "or "
		}
		add(true, verb+plain(float64(t.Count))+" "+containerText(t.Container))
	}
	if len(facts) > 0 {
		facts = []string{strings.Join(facts, " ")}
	}
	add(k.MaxGauge != 0, "max "+pressureText(k.MaxGauge))
	add(k.Gauge == kitchen.Dial, "dial gauge")
	add(k.Gauge == kitchen.Weight, "weighted gauge")
	add(k.Pot != 0, "pot volume "+volumeText(k.Pot))
	add(k.MinWater != 0, "min water "+volumeText(k.MinWater))
	add(k.MaxWater != 0, "max water "+volumeText(k.MaxWater))
	add(k.BoilOff != 0, "boils off "+volumeText(unit.Litres(k.BoilOff))+" an hour")
	name := k.Name
	if name == "" {
		name = "the cooker"
	}
	return name + " " + strings.Join(slices.Clip(facts), ", ")
}
