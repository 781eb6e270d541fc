package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

// shows are words with which a figure is what some instrument says: "it reads 41".
var shows = set("reads reading measures measured shows says")

// The figures that can be the warmth of grain that cools, of either scale. Fewer are
// rather what a gauge says.
const (
	leastWarm = 18
	mostWarm  = 212
)

// warmish reports whether a token is a bare figure that can be how warm grain is.
func warmish(t Token) bool {
	n, ok := t.(Number)
	return ok && !n.Word && !n.Times && n.Value >= leastWarm && n.Value <= mostWarm
}

// takenOn is the unit that a reading was taken on, and the place behind its name.
type takenOn struct {
	which Which
	units []kitchen.UnitNo
	end   cursor
}

// onUnit reads "on 1.1", "on bag 2" behind a reading of a run that was not named in
// front.
func onUnit(c cursor, t telling) takenOn {
	d := c.over("on", "at", "from", "for", "in", "of")
	if d.i == c.i || t.units != nil || t.which != (Which{}) {
		return takenOn{}
	}
	if n, ok := c.ahead(-1).(Number); ok && n.Ref != nil && c.word(0) == "from" {
		return takenOn{} // "1.2 from 1.1" is grain to grain
	}
	which, units, e := leadingRun(d)
	if units == nil {
		return takenOn{}
	}
	return takenOn{which, units, e}
}

// joinReadings makes one telling of readings of several units: "1.1 41, 1.2 43".
func (r *reading) joinReadings() {
	if r.ask != nil || r.near != nil {
		return
	}
	n := 0
	for i, in := range r.intents {
		if n > 0 {
			before, isTell := r.intents[n-1].(Tell)
			if joined, ok := before.with(in); isTell && ok {
				r.intents[n-1], r.bare[n-1] = joined, false
				continue
			}
		}
		r.intents[n], r.kinds[n], r.bare[n] = in, r.kinds[i], r.bare[i]
		n++
	}
	r.intents, r.kinds, r.bare = r.intents[:n], r.kinds[:n], r.bare[:n]
}

// with is a telling with the readings of a further one, if both are nothing else and of
// units of the same run.
func (t Tell) with(in Intent) (Tell, bool) {
	u, ok := in.(Tell)
	if !ok || t.Which != u.Which || t.When != nil || u.When != nil || !t.ofUnits() || !u.ofUnits() {
		return t, false
	}
	t.Entries = append(t.Entries[:len(t.Entries):len(t.Entries)], u.Entries...)
	return t, true
}

// ofUnits reports whether all that is told are readings of units.
func (t Tell) ofUnits() bool {
	for _, e := range t.Entries {
		r, ok := e.(kitchen.TempRead)
		if !ok || r.Units == nil {
			return false
		}
	}
	return true
}

// unitsApart prints several readings each with its unit, and one of a unit in a cooker;
// false for anything else.
func (t Tell) unitsApart() (string, bool) {
	if len(t.Entries) < 2 && t.Which.Cooker == "" || t.When != nil || !t.ofUnits() {
		return "", false
	}
	said := make([]string, len(t.Entries))
	for i, e := range t.Entries {
		said[i] = t.Which.before(e.(kitchen.TempRead).Units) + toldText(e)
		if t.Which.Run == 0 {
			said[i] += t.Which.behind("in ")
		}
	}
	return strings.Join(said, ", "), true
}

// Figures takes a text of nothing but bare figures for readings of a run that cools,
// and gives the sentence that tells them: "118", "42 and 44". It is for a text that
// answers the question for one: nothing else makes a figure alone a reading.
func Figures(text string, names Names, run kitchen.RunNo) (string, bool) {
	c := cursor{s: read(text, names)}
	var said []string
	for len(said) < maxSegments {
		c = c.parted().over("it's", "its", "about", "now", "still", "just", "is", "ca", "around", "ok", "so", "yes")
		if c.done() {
			break
		}
		if !warmish(c.token()) {
			return "", false
		}
		n := c.token().(Number)
		said = append(said, "is "+plain(n.Value))
		c = c.use(1).over("degrees", "now", "still", "please")
	}
	return run.String() + " " + strings.Join(said, ", "), len(said) > 0
}
