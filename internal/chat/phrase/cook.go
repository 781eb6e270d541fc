package phrase

import (
	"strings"
	"unicode/utf8"

	"ryebell/internal/calc/unit"
)

var cookGrammar = grammar{
	kind: KindCook,
	examples: []string{
		"cook it",
		"cook load 2",
		"cook the next load in the small pot",
		"ok lets cook that",
		"cook 3 bags 5lb agar in the big pot",
		"starting the cooker now w 6 quarts rye",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		if in, d, ok := cookThat(c); ok {
			return in, d, true
		}
		if in, d, ok := cookLoad(c); ok {
			return in, d, true
		}
		return cookOrder(c)
	},
}

// String prints the telling so that it parses back.
func (k Cook) String() string {
	if k.Order != nil {
		return "cook " + orderText(*k.Order)
	}
	what := "it"
	switch {
	case k.Load == NextLoad:
		what = "the next load"
	case k.Load > 0:
		what = "load " + plain(float64(k.Load))
	}
	if k.Cooker != "" {
		return "cook " + what + " in the " + k.Cooker
	}
	return "cook " + what
}

// cookThat reads "cook it", "let's cook that in the small one".
func cookThat(c cursor) (Intent, cursor, bool) {
	if pot, d, ok := knownCooker(c.over("in", "the", "ok", "our")); ok && d.parted().i > d.i { // "small pot, cook it"
		in, d, ok := cookThat(d.parted())
		k, cooks := in.(Cook)
		if ok && cooks && k.Cooker == "" {
			k.Cooker = pot
			return k, d, true
		}
	}
	d, ok := starting(c).phrase("cook it", "cook that", "cook them", "cook this", "cook these", "cook those", "start it", "start that", "start cooking",
		"put it on", "put that on", "put them on", "cook it now", "cook all that", "do it", "cook")
	if !ok {
		return nil, c, false
	}
	bare := d.word(-1) == "cook"
	doIt := d.word(-2) == "do" // "do it later" is said of everything
	d = d.over("now", "then", "please", "pls", "up", "right away")
	f, _ := d.mark(",")
	name, e, ok := cookerRef(f.over("in", "with", "on", "using", "w", "the"))
	if ok {
		d = e.over("now", "then", "please", "pls")
	} else if bare || d.opensOrder() || doIt && !d.ends() {
		return nil, c, false
	}
	return Cook{Cooker: name}, d, true
}

// cookLoad reads "cook load 2", "next load", "put the second load on".
func cookLoad(c cursor) (Intent, cursor, bool) {
	d := starting(c).maybe("cook", "start", "put", "put on", "begin", "run", "do").over("the", "now", "with")
	load := 0
	if e, ok := d.phrase("next load", "next one", "other load", "another load", "the next load", "next batch"); ok {
		load, d = NextLoad, e
	} else if e, ok := d.phrase("load", "load number", "load no"); ok {
		n, f, number := e.number()
		whole, ok := whole(n)
		if !number || !ok || whole < 1 || !f.over("now", "in", "on", "please", "pls").ends() {
			return nil, c, false
		}
		load, d = whole, e.use(1)
	} else {
		for i, w := range ordinals {
			if e, ok := d.phrase(w...); ok {
				load, d = i+1, e
			}
		}
		e, ok := d.phrase("load")
		if !ok || load == 0 {
			return nil, c, false
		}
		d = e
	}
	d = d.over("on", "now", "then", "please", "pls", "up")
	name, e, ok := cookerRef(d.over("in", "with", "on", "using", "w", "the"))
	if ok {
		d = e.over("now", "then", "please", "pls")
	}
	return Cook{Cooker: name, Load: load}, d, d.parted().done()
}

// opensOrder reports whether an order follows.
func (c cursor) opensOrder() bool {
	_, _, ok := readWish(c)
	return ok
}

func starting(c cursor) cursor {
	return c.over("ok", "okay", "so", "let's", "lets", "let us", "i", "i'll", "we", "we'll", "i'm", "im", "we're", "now", "please", "gonna", "going to",
		"want to", "and", "then", "just", "start to", "me")
}

// cookOrder reads "cook" and what.
func cookOrder(c cursor) (Intent, cursor, bool) {
	d, ok := starting(c).phrase("cook", "cooking", "start", "starting", "start cooking", "put on", "putting on", "putting", "start the cooker with",
		"starting the cooker", "start the cooker", "starting the pot", "starting the cooker now", "start a run with", "start a run of", "begin",
		"loading", "load", "run", "start a run")
	if !ok {
		return nil, c, false
	}
	w, d, ok := readWish(d.over("up", "now", "with", "w", "w/", ":", "the", "some", "a run of", "off"))
	if !ok || w.outBy != nil || w.startAt != nil || d.asked() {
		return nil, c, false
	}
	d.near = w.near
	d.ask = w.question(func(w wish) string { return "cook " + w.String() })
	order := w.order()
	return Cook{Order: &order}, d, true
}

// asked reports whether a question mark stands here: what is asked about isn't
// put on.
func (c cursor) asked() bool {
	if _, behind := c.mark("?"); behind {
		return true
	}
	m, ok := c.ahead(-1).(Mark)
	return ok && m.Rune == '?'
}

// cookerNouns end the name of a cooker.
var cookerNouns = set("pot pots cooker canner autoclave pc steriliser sterilizer boiler drum barrel")

// cookerRef reads the name of a cooker: one that the collective has, "the small
// one" for it, or a new one by its noun.
func cookerRef(c cursor) (string, cursor, bool) {
	if n, ok := c.token().(Name); ok && n.Of == CookerName {
		return n.Text, c.use(1), true
	}
	if c.word(1) == "one" {
		found, n := "", 0
		for _, name := range c.s.names.Cookers {
			if first, _, _ := strings.Cut(strings.ToLower(name), " "); first == c.word(0) {
				found, n = name, n+1
			}
		}
		if n == 1 {
			return found, c.use(2), true
		}
	}
	if name, _, d, ok := c.sizedPot(); ok {
		return name, d, true
	}
	return newCooker(c)
}

// sizedPot reads "23 quart pot", "23qt canner": a cooker named by its volume.
func (c cursor) sizedPot() (name string, pot unit.Litres, d cursor, ok bool) {
	q, isQuantity := c.token().(Quantity)
	v, isVolume := q.sense(Volume)
	if !isQuantity || !isVolume || v.Value <= 0 || !bigUnit(&q) {
		return "", 0, c, false
	}
	d = c.use(1)
	if w := d.word(0); !cookerNouns[w] && w != "pressure" { // "6 quarts, big pot" is an order
		return "", 0, c, false
	}
	noun, d, ok := newCooker(d)
	return plain(q.Number) + " " + v.Unit + " " + noun, unit.Litres(v.Value), d, ok
}

// notInNames are words that begin something else than the name of a cooker.
var notInNames = set(`the a an in of our my your this that these is are and or with at to for it its what which when how who from out on
	off by not no i we you they he she can has have need needs hold holds take takes cook cooking start starting put i'm we're some any`)

// longestCooker is the longest name that a cooker gets, in characters.
const longestCooker = 24

// newCooker reads one to three words and a noun such as pot.
func newCooker(c cursor) (string, cursor, bool) {
	for n := range 4 {
		if _, ok := c.ahead(n).(Word); !ok {
			return "", c, false
		}
		w := c.word(n)
		if cookerNouns[w] {
			name := make([]string, n+1)
			for i := range name {
				name[i] = c.word(i)
			}
			if utf8.RuneCountInString(strings.Join(name, " ")) > longestCooker {
				return "", c, false
			}
			return strings.Join(name, " "), c.use(n + 1), true
		}
		if notInNames[w] {
			return "", c, false
		}
	}
	return "", c, false
}

// theCooker names the cooker of a kitchen that has given it no name: the setting
// is then about the only one.
func theCooker(name string) string {
	if cookerNouns[name] {
		return ""
	}
	return name
}
