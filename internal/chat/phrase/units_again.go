package phrase

import (
	"reflect"
	"slices"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// OfThem reads the whole of a text as told of units that a post has just spoken of: "its
// in the fridge", "30%", "threw it". Elsewhere such words are talk.
func OfThem(text string, names Names) (TellUnits, bool) {
	if len(text) > maxQuoted {
		return TellUnits{}, false
	}
	t, d := unitsTelling{opens: true, answers: true}.timeFirst(cursor{s: read(text, names)})
	t, d = t.allOf(d)
	return TellUnits{Parts: t.parts, When: t.when}, len(t.parts) > 0 && d.parted().done()
}

// retellLeads begin what mends something told just now; thatWas too, which names no more
// than the time or the units.
var (
	retellLeads = []string{
		"no", "nope", "sorry", "oops", "i meant", "i mean", "meant", "make it", "make that", "actually", "correction", "should be", "it should be", "that should be", "i said", "wait no", "no wait",
		"oops no", "no sorry", "sorry no", "sorry i meant", "no i meant", "change it to", "change that to",
	}
	thatWas = []string{"that was", "it was", "this was", "those were", "they were", "thats", "that's"}
	// lament is said of what else went wrong, too.
	lament = []string{"sorry", "oops", "actually", "make it", "make that"}
	// retellTails change nothing behind it.
	retellTails = []string{"i meant", "i mean", "instead", "sorry", "please", "actually", "of course", "it was", "that is", "it is", "rather", "already"}
)

// Retold takes a text for the correction of what was told of units just now: "no, 12.3",
// "no, shiitake", "sorry 30% not 50", "that was yesterday". It gives all that was told as
// it should have been; the time only where it is what was wrong.
func Retold(text string, names Names, was TellUnits) (TellUnits, bool) {
	if len(text) > maxQuoted || len(was.Parts) == 0 {
		return TellUnits{}, false
	}
	r := retelling{was: was, names: names}
	c := cursor{s: read(text, names)}
	d, led := c.phrase(retellLeads...)
	l, laments := c.phrase(lament...)
	r.weakly = laments && l.i == d.i
	if e, not := d.phrase("not"); not {
		e.listMost = 1 // what stands behind it is right
		if wrong, f, ok := e.meant(r.last().Of); ok && f.parted().i > f.i {
			r.wrong, led, d = wrong.Meant, true, f.parted()
			d.listMost = 0
		}
	}
	e, times := d.phrase(thatWas...)
	if led {
		d = d.retold()
	} else if times {
		d = e
	}
	end := d
	for !end.done() && end.length("not") == 0 && end.length("instead of") == 0 && end.length("rather than") == 0 {
		end = end.use(1)
	}
	if !end.done() && !r.wasWrong(end.use(1).maybe("of", "than"), led) || !led && !times && end.done() {
		return TellUnits{}, false
	}
	right := d.s.typed(d.i, end.i)
	if in, ok := r.units(right); ok {
		return in, true
	}
	if in, ok := r.time(right); ok {
		return in, true
	}
	if times && !led {
		return TellUnits{}, false
	}
	return r.said(right)
}

// retold goes past what stands between "no" and what is right.
func (c cursor) retold() cursor {
	for {
		d := c.parted().over("i", "meant", "mean", "it's", "its", "it", "was", "that", "is", "only", "rather", "make", "sorry", "no", "should be", "it was", "those were", "they were", "that's")
		if e, ok := d.mark("-"); ok {
			d = e
		}
		if d.i == c.i {
			return c
		}
		c = d
	}
}

// retelling is a correction of something told of units, while it is read.
type retelling struct {
	was   TellUnits
	names Names
	// wrong are the units that were said not to be meant.
	wrong Meant
	// weakly is true where what leads to it is also said of other news.
	weakly bool
}

func (r retelling) last() UnitsPart { return r.was.Parts[len(r.was.Parts)-1] }

// wasWrong takes what was said to be wrong behind what is right: without a word in front
// that mends, it must be what was told.
func (r *retelling) wasWrong(c cursor, led bool) bool {
	if m, d, ok := c.meant(r.last().Of); ok && m.sure && d.over(retellTails...).parted().done() {
		r.wrong = m.Meant
		return led || r.about(m.Meant) >= 0
	}
	seen, grown := r.last().Entry.(kitchen.GrowthSeen)
	s, d, ok := c.share(true)
	return ok && d.over(retellTails...).parted().done() && (led || grown && s == seen.Share) || led && !ok
}

// about is the part that is about units; -1 for none.
func (r retelling) about(of Meant) int {
	return slices.IndexFunc(r.was.Parts, func(p UnitsPart) bool {
		return slices.ContainsFunc(p.Of.Refs, func(a kitchen.Ref) bool {
			return slices.ContainsFunc(of.Refs, func(b kitchen.Ref) bool { return overlap(a, b) })
		})
	})
}

func overlap(a, b kitchen.Ref) bool {
	return a.Run == b.Run && (len(a.Units) == 0 || len(b.Units) == 0 || slices.ContainsFunc(a.Units, func(u kitchen.UnitNo) bool { return slices.Contains(b.Units, u) }))
}

// with is what was told with one part of it replaced.
func (r retelling) with(at int, p UnitsPart) TellUnits {
	parts := slices.Clone(r.was.Parts)
	parts[at] = p
	return TellUnits{Parts: parts}
}

// units reads that others were meant: "12.3", ".3", "3".
func (r retelling) units(right string) (TellUnits, bool) {
	at := len(r.was.Parts) - 1
	if i := r.about(r.wrong); i >= 0 {
		at = i
	}
	old := r.was.Parts[at]
	c := cursor{s: read(right, r.names)}
	m, d, ok := c.meant(old.Of)
	if !ok || !d.over(retellTails...).parted().done() {
		return TellUnits{}, false
	}
	run, one := old.Of.oneRun()
	if n, bare := c.token().(Number); bare && n.Ref == nil && c.word(0)[0] != '.' && !n.Word {
		no, isWhole := whole(n.Value)
		switch {
		case !isWhole || no < 1 || d.i > c.i+1 || is[kitchen.GrowthSeen](old.Entry):
			return TellUnits{}, false
		case old.Of.wholeRun():
			m.Meant = Meant{Refs: []kitchen.Ref{{Run: kitchen.RunNo(no)}}}
		case one && no <= mostUnits:
			m.Meant = Meant{Refs: []kitchen.Ref{{Run: run, Units: []kitchen.UnitNo{kitchen.UnitNo(no)}}}}
		}
	} else if !m.sure && m.Vessel == 0 && len(m.Units) == 0 {
		return TellUnits{}, false
	}
	if len(m.Refs) == 0 && len(m.Names) == 0 {
		if !one {
			return TellUnits{}, false
		}
		m.Refs, m.Units = []kitchen.Ref{{Run: run, Units: m.Units}}, nil
	}
	return r.with(at, UnitsPart{m.Meant, old.Entry}), true
}

func is[E kitchen.UnitEntry](e kitchen.UnitEntry) bool {
	_, ok := e.(E)
	return ok
}

// time reads that it was at another time.
func (r retelling) time(right string) (TellUnits, bool) {
	c := cursor{s: read(right, r.names)}
	m, d, ok := moment(c.over("at"), nil)
	if !ok {
		m, d, ok = moment(c, nil)
	}
	if !ok || m.Shift > 0 || m.Day.Shift > 0 || m.Now || !d.over(retellTails...).parted().done() {
		return TellUnits{}, false
	}
	return TellUnits{Parts: slices.Clone(r.was.Parts), When: &m}, true
}

// said reads that something else is so of them, with or without the units: "shiitake",
// "30%", "12.3 green".
func (r retelling) said(right string) (TellUnits, bool) {
	c := cursor{s: read(right, r.names)}
	if p := Parse(right, r.names); len(p.Intents) == 1 && p.Bare == Plainly {
		again, ok := p.Intents[0].(TellUnits)
		if !ok || len(again.Parts) != 1 || again.When != nil {
			return TellUnits{}, false
		}
		at := r.alike(again.Parts[0].Entry)
		if i := r.about(again.Parts[0].Of); i >= 0 {
			at = i
		}
		if at < 0 || r.weakly && r.about(again.Parts[0].Of) < 0 {
			return TellUnits{}, false
		}
		return r.with(at, UnitsPart{again.Parts[0].Of, likeTold(again.Parts[0].Entry, r.was.Parts[at].Entry)}), true
	}
	old := r.last()
	entry, d, ok := r.anew(c, old)
	if !ok || !d.over(retellTails...).parted().done() {
		return TellUnits{}, false
	}
	at := r.alike(entry)
	if at < 0 && len(r.was.Parts) > 1 {
		return TellUnits{}, false
	}
	at = max(at, 0)
	return r.with(at, UnitsPart{r.was.Parts[at].Of, likeTold(entry, r.was.Parts[at].Entry)}), true
}

// anew reads what is so of units instead: what is said as it was before comes first, a
// culture of one, per cent of how far one has grown.
func (r retelling) anew(c cursor, old UnitsPart) (kitchen.UnitEntry, cursor, bool) {
	if r.alike(kitchen.Inoculated{}) >= 0 {
		if s, d, ok := weakSpecies().take(c); ok && d.done() {
			return kitchen.Inoculated{Culture: s, Species: s}, d, true
		}
		if k, d, ok := c.inoculated(false); ok {
			return k.entry(), d, true
		}
	}
	if is[kitchen.GrowthSeen](old.Entry) {
		if s, d, ok := c.over("only", "about").share(true); ok {
			return kitchen.GrowthSeen{Share: unit.Fraction(s)}, d.over(grownWords...), true
		}
	}
	said, d, ok := predicate(c, meantRead{Meant: old.Of.clone(), sure: true})
	return said.entry, d, ok && said.entry != nil && len(said.but)+len(said.none) == 0
}

// alike is the last part of the kind of an entry; -1 for none.
func (r retelling) alike(e kitchen.UnitEntry) int {
	for i, p := range slices.Backward(r.was.Parts) {
		if reflect.TypeOf(p.Entry) == reflect.TypeOf(e) {
			return i
		}
	}
	return -1
}

// likeTold is what is right with what was told before and isn't said again: how much of a
// culture, and on which way.
func likeTold(right, was kitchen.UnitEntry) kitchen.UnitEntry {
	put, ok := right.(kitchen.Inoculated)
	old, before := was.(kitchen.Inoculated)
	if !ok || !before {
		return right
	}
	if put.Volume == 0 {
		put.Volume = old.Volume
	}
	if put.Route == 0 && put.From == (kitchen.UnitRef{}) && (put.Culture == "" || put.Culture == put.Species) {
		put.Route = old.Route
	}
	if put.Culture == "" && put.From == (kitchen.UnitRef{}) && put.Species == "" {
		put.Culture, put.From, put.Species = old.Culture, old.From, old.Species
	}
	return put
}

// UnitsAlone reads a text that names units or a run, and nothing else.
func UnitsAlone(text string, names Names) (Meant, bool) {
	if len(text) > maxQuoted {
		return Meant{}, false
	}
	c := cursor{s: read(text, names)}
	m, d, ok := c.over("the", "it's", "its", "it was", "in", "on").meant(Meant{})
	return m.Meant, ok && len(m.Refs)+len(m.Names) > 0 && d.over("please", "sorry").parted().done()
}

// SaysUsed reports whether a text says that something was used: "used up 12".
func SaysUsed(text string, names Names) bool {
	return slices.Contains(read(text, names).said, "used")
}
