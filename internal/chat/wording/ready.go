package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// ReadyView is what is expected of units, asked for. Now is in the kitchen's zone.
type ReadyView struct {
	Loads []ReadyLoad
	Now   time.Time
}

// ReadyLoad are units of one load, those together of which the same is expected.
type ReadyLoad struct {
	Load   kitchen.Units
	groups []readyGroup
}

type readyGroup struct {
	units  []kitchen.UnitNo
	first  kitchen.Unit
	growth kitchen.Growth
	grows  bool
}

// Add puts a unit with those of which the same is expected; grows is false where
// nothing is.
func (l *ReadyLoad) Add(u kitchen.Unit, g kitchen.Growth, grows bool) {
	for i := range l.groups {
		o := &l.groups[i]
		if o.grows == grows && o.first.State == u.State && o.first.Blank == u.Blank && o.first.Rests() == u.Rests() && o.growth.Through == g.Through && o.growth.Shaken == g.Shaken {
			o.units = append(o.units, u.Ref.Unit)
			return
		}
	}
	l.groups = append(l.groups, readyGroup{units: []kitchen.UnitNo{u.Ref.Unit}, first: u, growth: g, grows: grows})
}

// Ready says of units when they are to be shaken and expected grown through, with the
// range; of others how they stand.
func Ready(v ReadyView) chat.Post {
	var s sheet
	own, asked := 0, 0
	for _, l := range v.Loads {
		for _, g := range l.groups {
			s.add(must, v.line(l.Load, g))
			if g.grows {
				asked++
				own = max(own, g.growth.Runs())
			}
		}
	}
	switch {
	case len(v.Loads) == 1 && len(v.Loads[0].Load.All) > 0 && len(v.Loads[0].Load.Standing()) == 0:
		s.then(say("Nothing is left to do with it."))
	case len(v.Loads) == 0:
		return lines("**Nothing grows** on the shelf, as far as anybody told.", "Put a culture on? Say it, like `12.1-3 oyster`")
	case asked == 0:
	case own > 0:
		s.add(should, say("By estimate from "+plural(own, "run")+" of your own: 4 times of 5 it is in there."))
	default:
		s.add(should, say("By estimate, as is usual (common practice): 4 times of 5 it is in there."))
	}
	return s.post(chat.Answer)
}

// next is what comes next of the units of a load, the soonest first.
func (l ReadyLoad) next(now time.Time) chat.Para {
	var soonest *readyGroup
	for i, g := range l.groups {
		if g.grows && (soonest == nil || g.growth.ThroughAt(now).About.Before(soonest.growth.ThroughAt(now).About)) {
			soonest = &l.groups[i]
		}
	}
	if soonest == nil {
		return say("Nothing waits for a culture, and nothing grows.")
	}
	ref, through := refOf(l.Load, soonest.units), dateOf(now, soonest.growth.ThroughAt(now).About)
	if !soonest.growth.Shaken && now.Before(soonest.growth.Shake.To) {
		return say("Next: shake " + ref + " about " + dateOf(now, soonest.growth.Shake.About) + ". Grown through about " + through + ", by estimate.")
	}
	return say("Next: " + ref + " grown through about " + through + ", by estimate.")
}

func (v ReadyView) line(load kitchen.Units, g readyGroup) chat.Para {
	ref := refOf(load, g.units)
	if !g.grows {
		state := g.first.State.String()
		if g.first.Blank {
			state = "the blank: nothing grows on it"
		}
		if g.first.Rests() {
			return say("**"+ref+"**: "+state+", {}: no estimate.", atPlace(g.first.Place))
		}
		return say("**" + ref + "**: " + state + ".")
	}
	through := g.growth.ThroughAt(v.Now)
	head := "**" + ref + " grown through about " + dateOf(v.Now, through.About) + "**, " + dateOf(v.Now, through.From) + " to " + dateOf(v.Now, through.To)
	if g.first.Share > 0 {
		head += "; " + percent(g.first.Share) + " when last seen"
	}
	if !g.growth.Shaken && g.first.Share < shakeFrom && v.Now.Before(g.growth.Shake.To) {
		head += ". Shake it about " + dateOf(v.Now, g.growth.Shake.About)
	}
	return say(head + ".")
}
