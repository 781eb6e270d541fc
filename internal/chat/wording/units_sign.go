package wording

import (
	"strings"

	"ryebell/internal/kitchen"
)

// finding says what a sign usually points to, and what the skilled do about it; in
// words that say it is likely and not sure.
func (v UnitsView) finding(s *sheet, p UnitsTold, sign kitchen.Sign) {
	f := sign.Means()
	one, _ := p.Load.Unit(p.Taking.Taken[0])
	if sign == kitchen.LooksFine {
		return
	}
	if f.Likely != "" {
		s.add(should, say("Likely "+f.Likely+", by what growers see: no lab looked."))
	}
	if act := actWords(f, one); act != "" && one.State.Stands() { // what is away can't be put out
		s.add(must, say(act))
	}
	if one.Blank && f.InBlankToo {
		s.add(must, say("**In the blank: that points to the cook**, not to the culture. Look at all of "+p.Load.Run.String()+"."))
	} else if one.Blank {
		s.add(must, say("**It is the blank: look at the cook**, its lids and filters. No culture did that. Look at all of "+p.Load.Run.String()+"."))
	} else if len(f.PointsTo) > 0 {
		s.add(may, say("Usually from: "+causes(f)+"."))
	}
}

// mostCauses is how many causes are named: the likeliest.
const mostCauses = 3

func causes(f kitchen.Finding) string {
	var words []string
	for _, c := range f.PointsTo[:min(len(f.PointsTo), mostCauses)] {
		words = append(words, c.String())
	}
	return strings.Join(words, "; ")
}

// actWords is what to do with what shows a sign.
func actWords(f kitchen.Finding, u kitchen.Unit) string {
	dust := ""
	if f.Dusty {
		dust = " Its spores harm lungs."
	}
	switch f.Do {
	case kitchen.KeepWatching:
		return ""
	case kitchen.OutUnopened:
		return "**Out, unopened**: bag it, seal it, out of the room." + dust
	case kitchen.OutAlarm:
		return "**Out at once, unopened**, and look at everything in the room: it spreads in days." + dust
	case kitchen.OutAndRetire:
		return "**Out, unopened**, and no more of that culture."
	case kitchen.OnceMore:
		return ""
	}
	panic("act not said")
}
