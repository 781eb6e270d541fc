package phrase

import "ryebell/internal/kitchen"

// howFar takes how far the units of a piece are: a share, or a state. How much is
// overgrown says more than that something was put on, and when that was may stand
// beside it.
func (a *arrival) howFar(p *piece) (cursor, bool) {
	c := a.c
	grows := p.state == kitchen.UnitGrowing || p.state == kitchen.UnitGrown
	if d, ok := c.phrase("inoculated", "inoc'd", "noc'd", "knocked up", "inoculated about", "inoculated around", "inoculated on"); ok && grows && p.when == nil {
		if m, e, dated := pastDay(d); dated {
			p.when, a.sign = &m, true
			return e, true
		}
	}
	open := p.state == 0 || p.state == kitchen.UnitInoculated
	share, d, ok := c.grownShare()
	if !ok && len(p.items) > 0 {
		share, d, ok = c.bareShare()
	}
	if ok && open {
		a.sign = a.sign || p.state != 0 && p.when != nil
		p.state, p.share = kitchen.UnitGrowing, share
		return d, true
	}
	s, d, ok := c.grownState()
	if !ok || !open || p.state != 0 && s != kitchen.UnitGrowing && s != kitchen.UnitGrown {
		return c, false
	}
	a.sign = a.sign || p.state != 0 && p.when != nil
	p.state = s
	return d, true
}

// pastDay takes a day that has been: "2 weeks ago", "on 3 oct", "last week".
func pastDay(c cursor) (Moment, cursor, bool) {
	if m, d, ok := agoWords(c); ok {
		return m, d, true
	}
	m, d, ok := c.when()
	return m, d, ok && m.Day.Said && !m.Now
}

// taken takes the culture that was put on: "from plate 7", "with lc 4". What was said
// to grow is its species then.
func (p *piece) taken(c cursor) (cursor, bool) {
	d, ok := c.phrase("from", "off", "out of", "with", "using", "of", "w", "from culture")
	if !ok {
		return c, false
	}
	what, d, ok := d.cultureHere()
	own := p.culture == "" || isSpecies(p.culture) && p.species == ""
	if !ok || !own || len(what.more) > 0 || what.when != nil || what.kind == 0 {
		return c, false
	}
	p.species, p.culture = p.culture, what.name
	return d, true
}

// isSpecies reports whether a name is the canonical one of a species.
func isSpecies(name string) bool {
	species, ok := Species(name)
	return ok && species == name
}
