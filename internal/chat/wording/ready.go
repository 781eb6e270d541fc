package wording

import (
	"slices"
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
	all := v.soonest()
	shown := all[:min(len(all), mostReady)]
	for _, g := range shown {
		s.add(must, v.line(g.load, g.readyGroup))
		if g.grows {
			asked++
			own = max(own, g.growth.Runs())
		}
	}
	if rest := all[len(shown):]; len(rest) > 0 {
		s.add(must, say("And "+whole(float64(len(rest)))+" more: ask one, like `when is "+refOf(rest[0].load, rest[0].units)+" ready`"))
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

// mostReady is of how many groups it is said when they are ready.
const mostReady = 4

type groupOf struct {
	readyGroup
	load kitchen.Units
}

// soonest are the groups of all loads; of more than have room the soonest first, before
// those that don't grow.
func (v ReadyView) soonest() []groupOf {
	var all []groupOf
	for _, l := range v.Loads {
		for _, g := range l.groups {
			all = append(all, groupOf{g, l.Load})
		}
	}
	if len(all) > mostReady {
		slices.SortStableFunc(all, func(a, b groupOf) int {
			switch {
			case a.grows && b.grows:
				return a.growth.ThroughAt(v.Now).About.Compare(b.growth.ThroughAt(v.Now).About)
			case a.grows:
				return -1
			case b.grows:
				return 1
			}
			return 0
		})
	}
	return all
}

func (v ReadyView) line(load kitchen.Units, g readyGroup) chat.Para {
	ref := refOf(load, g.units)
	if !g.grows {
		state := v.stands(g.first)
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

// stands is how a unit stands that doesn't grow: until when it keeps, or how it ended.
func (v ReadyView) stands(u kitchen.Unit) string {
	switch {
	case u.State == kitchen.UnitGrown && u.KeepsUntil().Before(v.Now):
		return "grown through, past its usual time, about " + dateOf(v.Now, u.KeepsUntil())
	case u.State == kitchen.UnitGrown:
		return "grown through, usually keeps to about " + dateOf(v.Now, u.KeepsUntil())
	case u.State == kitchen.UnitDead:
		return "given up on, nothing grew"
	}
	return u.State.String()
}
