package phrase

import (
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// grownShare takes "30% grown".
func (c cursor) grownShare() (unit.Fraction, cursor, bool) {
	p, d, ok := c.percent()
	d, grown := d.phrase("grown", "colonised", "colonized", "through", "overgrown", "done", "grown through")
	return unit.Percent(p), d, ok && grown && p > 0 && p < 100
}

// bareShare takes "50%" and "half white", with nothing behind it that it could be of.
func (c cursor) bareShare() (unit.Fraction, cursor, bool) {
	share, d, ok := c.over("about", "abt", "around", "ca", "roughly", "nearly", "almost", "now", "only").share(false)
	if !ok || share <= 0 || share >= 1 {
		return 0, c, false
	}
	e, grown := d.phrase(grownWords...)
	if grown {
		d = e
	}
	_, marked := d.over("please", "pls", "now").token().(Mark)
	_, percent := d.ahead(-1).(Percent)
	return share, d, grown || percent && (marked || d.over("please", "pls", "now").done())
}

// grownState takes how far units are.
func (c cursor) grownState() (kitchen.UnitState, cursor, bool) {
	if d, ok := c.phrase("blank", "blanks", "sterile", "sterilised", "sterilized", "still blank"); ok {
		return kitchen.UnitCooked, d, true // nothing was put on
	}
	s, d, ok := c.over("already", "fully", "they're", "they are", "it's", "still", "not yet", "nearly", "almost").shelfState()
	if w := c.word(0); ok && s == kitchen.UnitGrown && (w == "nearly" || w == "almost" || w == "not") {
		s = kitchen.UnitGrowing
	}
	return s, d, ok && (s == kitchen.UnitGrown || s == kitchen.UnitGrowing || s == kitchen.UnitInoculated || s == kitchen.UnitCooked)
}

// arriveSince takes from when their age counts: "since 3 oct", "from last week", "2
// weeks old", "yesterday".
func arriveSince(c cursor) (Moment, cursor, bool) {
	if p, ok := c.token().(Period); ok {
		if d, old := c.use(1).phrase("old", "ago", "on the shelf", "in", "by now"); old && p.Length >= 24*time.Hour {
			return daysBack(p.Length), d, true
		}
		return Moment{}, c, false
	}
	d, led := c.phrase("since", "from", "since about", "since around", "on", "dated", "inoculated on", "cooked on", "from about", "of", "as of", "inoculated", "cooked", "made", "made on", "done on", "noc'd",
		"arrived", "arrived on", "came", "came on", "bought", "got them", "it came", "they came", "they arrived", "inoculated around", "inoculated about")
	if m, e, ok := agoWords(d); ok {
		return m, e, true
	}
	if p, ok := d.token().(Period); ok && d.word(-1) == "since" && p.Length >= 24*time.Hour {
		return daysBack(p.Length), d.use(1), true
	}
	m, e, ok := d.when()
	if !ok || !led && !m.Day.Said || m.Now {
		return Moment{}, c, false
	}
	if w := c.word(0); w == "inoculated" || w == "cooked" {
		return Moment{}, c, false // the word says the state, too
	}
	return m, e, true
}

// agoWords are days that the lexer makes no moment of: last week, november.
func agoWords(c cursor) (Moment, cursor, bool) {
	for _, w := range [...]struct {
		say  string
		days int
	}{{"last week", 7}, {"a week ago", 7}, {"the week before", 14}, {"last month", 30}, {"a month ago", 30}, {"a week old", 7}, {"a month old", 30}} {
		if d, ok := c.phrase(w.say); ok {
			return daysBack(time.Duration(w.days) * 24 * time.Hour), d, true
		}
	}
	d := c.over("early", "mid", "late", "the beginning of", "beginning of", "the end of", "end of")
	w, ok := d.token().(Word)
	if !ok {
		return Moment{}, c, false
	}
	if k := vocabulary()[w.Text]; k != nil && k.month != 0 && (!k.loose || c.word(-1) == "since") {
		day := 1
		switch c.word(0) {
		case "mid":
			day = 15
		case "late", "end":
			day = 25
		}
		return Moment{Day: Day{Said: true, Month: k.month, Date: day}}, d.use(1), true
	}
	return Moment{}, c, false
}

// daysBack is so many days before the message.
func daysBack(d time.Duration) Moment {
	return Moment{Day: Day{Said: true, Shift: -int(d / (24 * time.Hour))}}
}

// arriveFrom takes who it came from: "from Mira", "from the market", "by ana".
func arriveFrom(c cursor) (string, cursor, bool) {
	d, ok := c.phrase("from", "by", "off", "thanks to", "a gift from", "gift of")
	if !ok {
		return "", c, false
	}
	if who, e, known := d.person(false); known {
		return who, e, true
	}
	e := d
	for e.i-d.i < mostOfOrigin {
		_, word := e.token().(Word)
		_, name := e.token().(Name)
		if !word && !name {
			break
		}
		if _, _, state := e.grownState(); state {
			break
		}
		if _, onIt := e.phrase(onShelf...); onIt || e.word(0) == "and" || e.word(0) == "since" || e.word(0) == "in" || e.word(0) == "on" || e.length("please") > 0 {
			break
		}
		e = e.use(1)
	}
	from := c.s.saidBetween(d.i, e.i)
	return from, e, from != "" && from != "the"
}

// mostOfOrigin is the most words that say where something came from.
const mostOfOrigin = 4
