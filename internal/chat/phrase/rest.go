package phrase

import (
	"strconv"
	"time"

	"ryebell/internal/kitchen"
)

// restRule reads "rest 3 days before inoculating", "no rest": how long cooked grain
// stands before a culture goes on it.
func restRule(c cursor) (kitchen.Change, cursor, bool) {
	before := []string{"before inoculating", "before we inoculate", "before inoculation", "before the culture goes on", "before it is inoculated"}
	d := c.over("our", "we", "want", "to", "always", "let", "cooked grain", "grain", "jars", "bags", "the grain", "the jars", "the bags",
		"the cooked grain", "it", "please")
	if e, ok := d.phrase("no rest", "don't rest", "rest off", "without rest", "no resting", "without a rest"); ok {
		return kitchen.RestIs{}, e.over("please", "any more").over(before...), true
	}
	d, ok := d.phrase("rest", "rests", "resting time", "rest time", "rest is", "rest for", "rests for", "rest: ")
	if !ok {
		return nil, c, false
	}
	d = d.over("the grain", "the jars", "the bags", "grain", "jars", "bags", "it", "is", "for", "of", ":", "about")
	days, e, ok := d.days()
	if !ok {
		return nil, c, false
	}
	return kitchen.RestIs{Days: days}, e.over("please", "from now on").over(before...).over("please", "from now on"), true
}

// days takes a number of days, or a week.
func (c cursor) days() (int, cursor, bool) {
	if d, ok := c.phrase("a week", "one week", "1 week"); ok {
		return 7, d, true
	}
	if d, ok := c.phrase("two weeks", "2 weeks"); ok {
		return 14, d, true
	}
	switch t := c.token().(type) {
	case Number:
		e, said := c.use(1).phrase("day", "days")
		return int(t.Value), e, said && t.Whole
	case Period, Quantity:
		long, d, ok := c.span()
		return int(long / day), d, ok && long%day == 0
	}
	return 0, c, false
}

const day = 24 * time.Hour

func restText(r kitchen.RestIs) string {
	if r.Days == 0 {
		return "no rest before inoculating"
	}
	if r.Days == 1 {
		return "rest 1 day before inoculating"
	}
	return "rest " + strconv.Itoa(r.Days) + " days before inoculating"
}
