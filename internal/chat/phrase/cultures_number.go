package phrase

import (
	"strconv"
	"strings"
)

// numberless takes what is told of new cultures that have no number yet: "new lc from
// plate 2", "i have 3 plates of blue oyster". Where the words began is at start. The
// example has the numbers that come next.
func (c cursor) numberless(start cursor, told bool) (Intent, cursor, bool) {
	d := c
	if !told {
		e, have := d.phrase("i have", "we have", "have", "there are", "there is", "here are", "here is")
		if !have {
			return nil, start, false
		}
		d = e.over("a", "an", "the", "another", "some")
	}
	count := 1
	if n, e, ok := d.number(); ok {
		whole, isWhole := whole(n)
		if !isWhole || whole < 1 || whole > mostTogether {
			return nil, start, false
		}
		count, d = whole, e.over("new")
	}
	noun, kind, _, d, ok := d.cultureNoun()
	if !ok || kind == 0 {
		return nil, start, false
	}
	in := MakeCulture{}
	in.Made.Kind = kind
	e, ok := in.details(d.over("of"))
	if !ok || !in.surely(told) || !e.parted().done() || start.i > 0 {
		return nil, start, false
	}
	next := c.s.names.nextOf(noun)
	in.Made.Name = noun + " " + strconv.Itoa(next)
	for n := next + 1; n < next+count; n++ {
		in.Also = append(in.Also, noun+" "+strconv.Itoa(n))
	}
	e.near = &Near{Trouble: Numberless, Missed: start.left(), Example: in.String()}
	e.plain = true
	return in, e, true
}

// surely reports whether what is said of a plate or bottle makes a culture of it: what
// grows on it, or, of a new one, the culture or the unit that it was taken of. People
// bring plates and bottles home, too.
func (m MakeCulture) surely(told bool) bool {
	if m.Made.Species != "" {
		return true
	}
	c := cursor{s: read(m.Made.From, Names{})}
	_, _, numbered := c.numberedCulture()
	return told && (numbered || m.Made.FromUnit.Run != 0)
}

// nextOf is the number behind the highest that cultures with this noun have.
func (n Names) nextOf(noun string) int {
	next := 1
	for _, name := range n.Sources {
		number, ok := strings.CutPrefix(strings.ToLower(name), noun+" ")
		if k, err := strconv.Atoi(number); ok && err == nil && k >= next && k < mostRuns {
			next = k + 1
		}
	}
	return next
}
