package phrase

import "strings"

// species takes the name of a species.
func (c cursor) species() (string, cursor, bool) {
	d := c
	for d.i-c.i < mostOfCulture && cultures[d.word(0)] {
		d = d.use(1)
	}
	name := spelt(c.s.typed(c.i, d.i))
	return name, d, d.i > c.i && name != "wine" && name != "tail" && name != "cap"
}

// speciesOf is the species that a name says.
func speciesOf(name string) (string, bool) {
	var out []string
	for w := range strings.FieldsSeq(name) {
		if cultures[w] {
			out = append(out, w)
		}
	}
	return strings.Join(out, " "), len(out) > 0
}
