package wording

import (
	"slices"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// DigestView is a digest to be said.
type DigestView struct {
	Digest kitchen.Digest
	// Now is when it is sent, in the kitchen's zone.
	Now time.Time
	// Late is how long after it was due.
	Late time.Duration
	Who  func(kitchen.MemberNo) string
}

// maxShelfRows is how many runs of the shelf a digest shows.
const maxShelfRows = 4

// Digest says what the week brought and what the next one brings. What the screen
// has no room for is counted.
func Digest(v DigestView) chat.Post {
	for n := min(len(v.Digest.Shelf), maxShelfRows); ; n-- {
		if s := v.sheet(n); n <= 1 || s.whole() {
			return s.post(chat.Digest)
		}
	}
}

func (v DigestView) sheet(rows int) *sheet {
	d := v.Digest
	var s sheet
	s.add(must, v.head())
	s.add(must, v.cooked())
	s.add(should, v.lost())
	if rows > 0 {
		s.add(must, say("**On the shelf**"+oldestFirst(len(d.Shelf))+":"))
	}
	for _, r := range d.Shelf[:rows] {
		s.add(must, say("**"+r.No.String()+"** "+containersIn(r.Order)+", "+dateOf(v.Now, r.Begun)+notHeld(r)))
	}
	if left := len(d.Shelf) - rows; left > 0 {
		s.add(must, say("And "+whole(float64(left))+" more, newer."))
	}
	s.add(should, v.passing())
	s.add(should, v.booked())
	v.decide(&s)
	return &s
}

// head names the time that the digest tells of, and how late it comes.
func (v DigestView) head() chat.Para {
	what := "**The week**, "
	if v.Now.Sub(v.Digest.Since) > 8*24*time.Hour {
		what = "**What happened**, "
	}
	text := what + dateOf(v.Now, v.Digest.Since) + " to " + dateOf(v.Now, v.Now) + "."
	if v.Late >= time.Minute {
		text += " " + capital(lateBy(v.Late)) + " late: I was down."
	}
	return say(text)
}

func oldestFirst(n int) string {
	if n > 1 {
		return ", oldest first"
	}
	return ""
}

// containersIn is what an order fills, without grain and route: 3 bags of 5 lb.
func containersIn(o kitchen.Order) string {
	var parts []string
	for _, it := range o.Items {
		parts = append(parts, itemWords(it, it.Basis))
	}
	return listed(parts)
}

// cooked counts what was cooked: #12 and #13 cooked: 3 bags, 7 jars.
func (v DigestView) cooked() chat.Para {
	d := v.Digest
	if len(d.Cooked) == 0 {
		return say("Nothing was cooked.")
	}
	bags, jars := 0, 0
	for _, r := range d.Cooked {
		for _, it := range r.Order.Items {
			switch it.Container.Vessel {
			case kitchen.Bag:
				bags += it.Count
			case kitchen.Jar:
				jars += it.Count
			case 0:
			}
		}
	}
	var what []string
	if bags > 0 {
		what = append(what, plural(bags, "bag"))
	}
	if jars > 0 {
		what = append(what, plural(jars, "jar"))
	}
	text := "Cooked: **" + listed(what) + "**, " + runNumbers(d.Cooked) + "."
	if len(what) == 0 {
		text = "Cooked: " + runNumbers(d.Cooked) + "."
	}
	if len(d.Short) > 0 {
		text += " Heat off early: " + runNumbers(d.Short) + "."
	}
	return say(text)
}

// lost names what was called off and what has left the shelf.
func (v DigestView) lost() chat.Para {
	var parts []string
	if len(v.Digest.CalledOff) > 0 {
		parts = append(parts, "Called off: "+runNumbers(v.Digest.CalledOff)+".")
	}
	if len(v.Digest.Gone) > 0 {
		parts = append(parts, "Gone from the shelf: "+runNumbers(v.Digest.Gone)+".")
	}
	return say(strings.Join(parts, " "))
}

// maxNumbers is how many runs are named in a row.
const maxNumbers = 4

// runNumbers names runs: #12, #13 and 3 more.
func runNumbers(runs []kitchen.Run) string {
	var out []string
	for _, r := range runs[:min(len(runs), maxNumbers)] {
		out = append(out, r.No.String())
	}
	if left := len(runs) - len(out); left > 0 {
		out = append(out, whole(float64(left))+" more")
	}
	return listed(out)
}

// passing names what reaches an age in the coming week.
func (v DigestView) passing() chat.Para {
	var parts []string
	for _, p := range v.Digest.Passing[:min(len(v.Digest.Passing), 3)] {
		day := p.Limit.At.In(v.Now.Location()).Format("Mon 2 Jan")
		parts = append(parts, p.Run.No.String()+" "+limitAge(p.Limit.What)+" old on "+day)
	}
	if len(parts) == 0 {
		return nil
	}
	return say("Ahead: " + strings.Join(parts, ", ") + ".")
}

// booked names the first bookings of the coming week.
func (v DigestView) booked() chat.Para {
	all := v.Digest.Bookings
	if len(all) == 0 {
		return nil
	}
	text, names := "Booked: ", []string{}
	for i, b := range all[:min(len(all), 2)] {
		if i > 0 {
			text += "; "
		}
		text += "{}, " + bookingSpan(v.Now, b) + ", {}"
		names = append(names, cookerShort(b.Cooker), called(v.Who, b.For))
	}
	if left := len(all) - 2; left > 0 {
		text += " and " + whole(float64(left)) + " more"
	}
	return say(text+".", names...)
}

// decide asks for the one decision that waits longest.
func (v DigestView) decide(s *sheet) {
	d := v.Digest
	short := slices.IndexFunc(d.Shelf, func(r kitchen.Run) bool { return !heldWhole(r) })
	switch {
	case short >= 0:
		no := d.Shelf[short].No
		s.then(say("**Decide: "+no.String()+", throw it out?** Nobody saw the hold whole: no culture on it."), goneTap(no), tap("Log", logOf(no)))
	case len(d.Decide) > 0:
		no := d.Decide[0].No
		s.then(say("**Decide: "+no.String()+", use or throw?** It is over three months old."), goneTap(no))
	case len(d.Unmeasured) > 0:
		no := d.Unmeasured[0].No
		s.then(say("**Decide: "+no.String()+", keep or throw?** Nobody said that it is cool. Measure one, like `"+no.String()+" 26C`"), goneTap(no), tap("Log", logOf(no)))
	case len(d.Shelf) > 0:
		s.then(say("Next: use "+d.Shelf[0].No.String()+" first."), goneTap(d.Shelf[0].No))
	case len(d.Bookings) > 0:
		s.then(nil, tap("Bookings", "bookings"))
	}
}

// digestChanged says when the digest comes from now on.
func digestChanged(c kitchen.DigestIs) []chat.Block {
	if c.At == 0 {
		return []chat.Block{say("**No digest** from now on.")}
	}
	return []chat.Block{
		say("The digest comes **" + digestDay(c) + "** from now on."),
		say("It is silent, and left out when there is nothing to say."),
	}
}

func digestDay(c kitchen.DigestIs) string { return c.Day.String() + "s at " + timeOfDay(c.At) }

// digestTimes is when the digest comes, in a kitchen as it is.
func digestTimes(s kitchen.Settings) string {
	c, on := s.DigestAt()
	if !on {
		return "none"
	}
	return digestDay(c)
}
