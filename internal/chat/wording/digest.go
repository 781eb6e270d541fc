package wording

import (
	"slices"
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
}

// maxNumbers is how many loads are named in a row.
const maxNumbers = 3

// Digest says what needs a decision. What the screen has no room for is counted or left
// out, the least pressing first.
func Digest(v DigestView) chat.Post {
	d := v.Digest
	var s sheet
	s.add(must, v.head())
	s.add(must, batches("Lost", d.Lost, lostAs))
	s.add(should, batches("Bad, still on the shelf", d.Bad, nil))
	s.add(should, batches("Suspect", d.Suspect, doubtedAs))
	s.add(should, batches("To be used", d.Ageing, v.ageing))
	s.add(should, batches("Hold not seen whole", d.Unheld, nil))
	s.add(should, batches("Cooked over three months ago", d.Old, nil))
	s.add(should, batches("Nobody said that they are cool", d.Unmeasured, nil))
	s.add(should, v.nearing())
	v.decide(&s)
	return s.post(chat.Digest)
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

// batches names units of which one thing is so, each with a word of its own.
func batches(what string, all []kitchen.Batch, word func(kitchen.Batch) (string, []string)) chat.Para {
	if len(all) == 0 {
		return nil
	}
	var parts, theirs []string
	for _, b := range all[:min(len(all), maxNumbers)] {
		part := "**" + namedUnits(b.Units, b.These) + "**"
		if word != nil {
			more, names := word(b)
			part, theirs = part+more, append(theirs, names...)
		}
		parts = append(parts, part)
	}
	if left := len(all) - len(parts); left > 0 {
		parts = append(parts, whole(float64(left))+" more")
	}
	return say(what+": "+listed(parts)+".", theirs...)
}

// maxSigns is how many signs are named of one load.
const maxSigns = 2

// lostAs is what units were lost as: (green, wet).
func lostAs(b kitchen.Batch) (string, []string) {
	return signsOf(b, func(u kitchen.Unit) kitchen.Sign { return u.Loss.Sign }), nil
}

// doubtedAs is what made units suspect.
func doubtedAs(b kitchen.Batch) (string, []string) {
	return signsOf(b, func(u kitchen.Unit) kitchen.Sign {
		step, _ := u.LastStep(kitchen.SaidSuspect)
		e, _ := step.Entry.(kitchen.SignSeen)
		return e.Sign
	}), nil
}

func signsOf(b kitchen.Batch, sign func(kitchen.Unit) kitchen.Sign) string {
	var words []string
	for _, n := range b.These {
		u, _ := b.Units.Unit(n)
		if s := sign(u); s != 0 && !slices.Contains(words, s.String()) && len(words) < maxSigns {
			words = append(words, s.String())
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " (" + listed(words) + ")"
}

// ageing is what spawn is of, and until when it usually keeps.
func (v DigestView) ageing(b kitchen.Batch) (string, []string) {
	u, _ := b.Units.Unit(b.These[0])
	until := " to about " + dateOf(v.Now, b.At)
	if name := speciesOn(u); name != "" {
		return " {}," + until, []string{name}
	}
	return until, nil
}

// speciesOn is what grows on a unit, as far as it was said.
func speciesOn(u kitchen.Unit) string {
	if u.Species != "" {
		return u.Species
	}
	return u.Culture
}

// nearing names what reaches an age in the coming week.
func (v DigestView) nearing() chat.Para {
	var parts []string
	for _, n := range v.Digest.Nearing[:min(len(v.Digest.Nearing), maxNumbers)] {
		day := n.At.In(v.Now.Location()).Format("Mon 2 Jan")
		parts = append(parts, namedUnits(n.Units, n.These)+" "+limitAge(n.Limit)+" old on "+day)
	}
	if len(parts) == 0 {
		return nil
	}
	return say("Ahead: " + listed(parts) + ".")
}

// decide asks for the one decision that presses most.
func (v DigestView) decide(s *sheet) {
	d := v.Digest
	switch {
	case len(d.Bad) > 0:
		ref := unitsRef(d.Bad[0].Units, d.Bad[0].These)
		s.then(say("**Decide: "+ref+", out unopened?** It is still with the others."), tap("It is out", "threw "+ref))
	case len(d.Unheld) > 0:
		b := d.Unheld[0]
		ref := unitsRef(b.Units, b.These)
		s.then(say("**Decide: "+ref+", throw it out?** Nobody saw the hold whole: no culture on it."), tap("It is out", "threw "+ref), tap("Log", logOf(b.Run.No)))
	case len(d.Suspect) > 0:
		ref := unitsRef(d.Suspect[0].Units, d.Suspect[0].These)
		s.then(say("**Decide: "+ref+", fine or bad?** Look, and keep it apart until then."), tap("It looks fine", ref+" looks fine"), tap("It is bad", ref+" contaminated"))
	case len(d.Ageing) > 0:
		ref := unitsRef(d.Ageing[0].Units, d.Ageing[0].These)
		s.then(say("**Decide: "+ref+", what is it for?** Spawn loses vigour."), tap("It is used", "used "+spelledOut(d.Ageing[0].Units, d.Ageing[0].These)))
	case len(d.Old) > 0:
		ref := unitsRef(d.Old[0].Units, d.Old[0].These)
		s.then(say("**Decide: "+ref+", use or throw?** It is over three months old."), tap("It is out", "threw "+ref))
	case len(d.Unmeasured) > 0:
		no := d.Unmeasured[0].Run.No.String()
		s.then(say("**Decide: "+no+", keep or throw?** Nobody said that it is cool. Measure one, like `"+no+" 26C`"), goneTap(d.Unmeasured[0].Run.No), tap("Log", logOf(d.Unmeasured[0].Run.No)))
	case len(d.Nearing) > 0:
		s.then(say("Next: use "+namedUnits(d.Nearing[0].Units, d.Nearing[0].These)+" before newer ones."), tap("Shelf", "shelf"))
	default:
		s.then(nil, tap("Shelf", "shelf"))
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
