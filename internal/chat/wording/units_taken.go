package wording

import (
	"math"
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// taken says in a line what was written of which units.
func (v UnitsView) taken(p UnitsTold) chat.Para {
	ref := refOf(p.Load, p.Taking.Taken)
	one, _ := p.Load.Unit(p.Taking.Taken[0])
	was, _ := p.Was.Unit(p.Taking.Taken[0])
	when := v.when()
	switch e := p.Entry.(type) {
	case kitchen.Inoculated:
		if !slices.IsSorted(p.Taking.Taken) { // the order tells what may have come from what
			ref, when = kitchen.Ref{Run: p.Load.Run, Units: p.Taking.Taken}.String(), ", in that order"+when
		}
		return inoculatedLine(ref, e, when)
	case kitchen.BlankSet:
		return say("**" + ref + " left blank**" + when + ": no culture goes on it.")
	case kitchen.GrowthSeen:
		if e.Share >= 1 {
			return say("**" + ref + " grown through**" + when + onDay(one, v.At) + ".")
		}
		return say("**" + ref + " " + percent(e.Share) + " grown**" + when + onDay(one, v.At) + growthBefore(was, one, v.Now) + ".")
	case kitchen.Shaken:
		return say("**" + ref + " shaken**" + when + onDay(one, v.At) + ".")
	case kitchen.SignSeen:
		if e.Sign == kitchen.LooksFine && one.Blank {
			return say("**" + ref + " looks fine**" + when + ": the blank, still clean.")
		}
		if e.Sign == kitchen.LooksFine {
			return say("**" + ref + " looks fine**" + when + ": " + one.State.String() + onDay(one, v.At) + ".")
		}
		tail := signTail(e.Sign, p.signs...)
		if tail == "" && !one.State.Stands() {
			tail = ": " + one.Loss.What.String()
		}
		return say("**" + ref + " " + one.State.String() + "**" + when + tail + onDay(one, v.At) + ".")
	case kitchen.GrownThrough:
		return say("**" + ref + " grown through**" + when + onDay(one, v.At) + ".")
	case kitchen.UnitsUsed:
		return usedLine(ref, e, one, when)
	case kitchen.UnitsGiven:
		if e.To == "" {
			return say("**" + ref + " given away**" + when + ".")
		}
		return say("**"+ref+" given**"+when+" to {}.", e.To)
	case kitchen.UnitsDiscarded:
		return say("**" + ref + " thrown out**" + when + lossTail(p) + ".")
	case kitchen.UnitsGone:
		return say("**" + ref + " gone**" + when + ". I ask no more about it.")
	case kitchen.UnitsMoved:
		return movedLine(ref, e, was, v)
	case kitchen.UnitNamed:
		if e.Name == "" {
			return say("**" + ref + "** has no name of its own any more.")
		}
		return say("**"+ref+"** is called **{}**.", e.Name)
	case kitchen.UnitsTagged:
		return say("**"+ref+"** tagged {}.", "#"+strings.Join(e.Tags, " #"))
	case kitchen.UnitsStood:
		return say("**" + ref + "** stood " + spotWords(e.Where) + " in the cooker.")
	case kitchen.LotSaid:
		return say("**"+ref+"**: "+lotWord(e.What)+" {}.", e.Name)
	case kitchen.Arrived:
	}
	panic("what arrived is told elsewhere")
}

// when says when it happened, where that is not just now.
func (v UnitsView) when() string {
	if v.Now.Sub(v.At) < time.Minute {
		return ""
	}
	return ", " + near(v.Now, v.At)
}

// onDay is which day a unit is in since it was inoculated: , day 9.
func onDay(u kitchen.Unit, at time.Time) string {
	if u.Inoculated.IsZero() || at.Before(u.Inoculated) || !u.Cultured {
		return ""
	}
	return ", day " + whole(float64(daysBetween(u.Inoculated, at)))
}

func growthBefore(was, is kitchen.Unit, now time.Time) string {
	s, ok := was.LastStep(kitchen.SaidGrowth)
	if !ok || was.Share == is.Share {
		return ""
	}
	return "; was " + percent(was.Share) + " " + dayWord(now, s.At)
}

// dayWord is the day of an instant: its weekday within the week, else the date.
func dayWord(now, t time.Time) string {
	switch d := daysBetween(t, now); {
	case d == 0:
		return "today"
	case d == 1:
		return "yesterday"
	case d > 0 && d < 7:
		return "on " + t.In(now.Location()).Format("Mon")
	}
	return "on " + dateOf(now, t)
}

func inoculatedLine(ref string, e kitchen.Inoculated, when string) chat.Para {
	head := "**" + ref + " inoculated**" + when
	tail := ""
	if e.Volume > 0 {
		tail = ", " + millis(e.Volume) + " each"
	}
	switch {
	case e.From != kitchen.UnitRef{}:
		return say(head + " from **" + e.From.String() + "**, grain to grain" + tail + ".")
	case e.Culture == "":
		return say(head + tail + ". Which culture? Say `" + ref + " oyster`")
	}
	route := ""
	if e.Route != 0 && !strings.Contains(strings.ToLower(e.Culture), strings.ToLower(routeWord(e.Route))) {
		route = ", " + routeWord(e.Route)
	}
	name := e.Culture
	if strings.HasPrefix(name, "lc ") {
		name = cultureHead(name)
	}
	if e.Species != "" && !strings.EqualFold(e.Species, e.Culture) {
		return say(head+": {} ({})"+route+tail+".", name, e.Species)
	}
	return say(head+": {}"+route+tail+".", name)
}

func usedLine(ref string, e kitchen.UnitsUsed, one kitchen.Unit, when string) chat.Para {
	on, left := "", ""
	var theirs []string
	if e.On != "" {
		on, theirs = " on {}", []string{e.On}
	}
	if one.Left > 0 {
		left = ": " + shareWords(one.Left) + " is left"
		return say("**"+capital(shareWords(e.Share))+" of "+ref+" used**"+when+on+left+".", theirs...)
	}
	return say("**"+ref+" used**"+when+on+".", theirs...)
}

// shareWords is a share as people say it: half, a quarter, 30 %.
func shareWords(f unit.Fraction) string {
	words := map[int]string{25: "a quarter", 33: "a third", 50: "half", 67: "two thirds", 75: "three quarters"}
	if w, ok := words[int(math.Round(f.Percent()))]; ok {
		return w
	}
	return percent(f)
}

func movedLine(ref string, e kitchen.UnitsMoved, was kitchen.Unit, v UnitsView) chat.Para {
	s, moved := was.LastStep(kitchen.SaidMoved)
	if !moved || strings.EqualFold(was.Place, e.Place) {
		return say("**"+ref+"** now: **{}**"+v.when()+".", e.Place)
	}
	return say("**"+ref+"** now: **{}**"+v.when()+"; was: {} ({}, "+near(v.Now, s.At)+").", e.Place, was.Place, called(v.Who, s.By))
}

// lossTail says which of the units count as lost, and as what.
func lossTail(p UnitsTold) string {
	tail := ""
	for _, what := range []kitchen.UnitState{kitchen.UnitContaminated, kitchen.UnitDead} {
		var lost []kitchen.UnitNo
		for _, n := range p.Taking.Taken {
			if u, _ := p.Load.Unit(n); u.Loss.What == what {
				lost = append(lost, n)
			}
		}
		switch {
		case len(lost) == 0:
		case len(lost) == 1 && len(p.Taking.Taken) == 1:
			tail += "; it counts as " + what.String()
		case len(lost) == len(p.Taking.Taken):
			tail += "; they count as " + what.String()
		default:
			tail += "; " + refOf(p.Load, lost) + " as " + what.String()
		}
	}
	return strings.Replace(tail, "; ", ": ", 1)
}

func spotWords(s kitchen.Spot) string {
	switch s {
	case kitchen.TopLayer:
		return "in the top layer"
	case kitchen.BottomLayer:
		return "in the bottom layer"
	case kitchen.InnerOnes:
		return "in the middle"
	case kitchen.OuterOnes:
		return "at the outside"
	}
	panic("spot " + s.String())
}

func lotWord(k kitchen.LotKind) string {
	switch k {
	case kitchen.GrainLot:
		return "grain lot"
	case kitchen.BagLot:
		return "bag lot"
	case kitchen.LidLot:
		return "lids"
	}
	panic("lot " + k.String())
}

func signTail(s kitchen.Sign, more ...kitchen.Sign) string {
	switch s {
	case kitchen.LooksFine, kitchen.WentBad, kitchen.NothingGrew:
		return ""
	case kitchen.LooksOdd, kitchen.LooksWet, kitchen.Slimy, kitchen.SourSmell, kitchen.GreenMould, kitchen.BlueGreenDust, kitchen.BlackHeads, kitchen.PinkFluff,
		kitchen.Cobweb, kitchen.YeastySmell, kitchen.YellowDrops, kitchen.Stalled, kitchen.Bulging, kitchen.Leaking:
		words := []string{s.String()}
		for _, m := range more {
			words = append(words, m.String())
		}
		return ": " + listed(words)
	}
	panic("sign " + s.String())
}

// stepAfter is what comes next after what was told of units.
func (v UnitsView) stepAfter(p UnitsTold) (chat.Para, []chat.Button) {
	ref := refOf(p.Load, p.Taking.Taken)
	one, _ := p.Load.Unit(p.Taking.Taken[0])
	switch e := p.Entry.(type) {
	case kitchen.Inoculated:
		return v.afterInoculating(p, ref), nil
	case kitchen.GrowthSeen:
		shaken, _ := one.LastStep(kitchen.SaidShaken)
		if e.Share < 1 && e.Share >= shakeFrom && shaken.At.IsZero() {
			return say("Next: shake it, if it shakes loose. Then say `shook " + ref + "`"), []chat.Button{tap("Shaken", "shook "+ref)}
		}
		if e.Share >= 1 {
			return v.afterThrough(p, ref)
		}
	case kitchen.GrownThrough:
		return v.afterThrough(p, ref)
	case kitchen.SignSeen:
		return v.afterSign(one, ref, p.Taking.Taken)
	case kitchen.UnitsMoved:
		if one.Rests() {
			return restsWords(one, ref, p.Taking.Taken), nil
		}
	case kitchen.Shaken:
		if g := p.Growth; g != nil && g.Through.About.After(v.Now) {
			return say("Next: grown through about " + dateOf(v.Now, g.Through.About) + ", by estimate. I remind you."), nil
		}
	case kitchen.Arrived, kitchen.BlankSet, kitchen.UnitsUsed, kitchen.UnitsGiven, kitchen.UnitsDiscarded, kitchen.UnitsGone,
		kitchen.UnitNamed, kitchen.UnitsTagged, kitchen.UnitsStood, kitchen.LotSaid:
	}
	return nil, nil
}

// afterInoculating is when the first shake is due and when it is expected grown
// through, by estimate.
func (v UnitsView) afterInoculating(p UnitsTold, ref string) chat.Para {
	g := p.Growth
	if one, _ := p.Load.Unit(p.Taking.Taken[0]); one.Rests() {
		return restsWords(one, ref, p.Taking.Taken)
	}
	if g == nil || g.Through.About.Before(v.Now) {
		return say("Next: say how it grows, like `" + ref + " 30%`")
	}
	through := g.Through
	return say("Next: first shake about **" + dateOf(v.Now, g.Shake.About) + "**. Grown through about " + dateOf(v.Now, through.About) + ", by estimate (" +
		dateOf(v.Now, through.From) + " to " + dateOf(v.Now, through.To) + ").")
}

// restsWords say that of what stands in the cold nothing is expected.
func restsWords(one kitchen.Unit, ref string, units []kitchen.UnitNo) chat.Para {
	goes := "it goes"
	if len(units) > 1 {
		goes = "they go"
	}
	return say("{}: no estimate, and no ping. When "+goes+" on in the warm, say `"+strings.TrimPrefix(ref, "#")+" on the shelf`", capital(atPlace(one.Place)))
}

// shakeFrom is the share of the grain from which a first shake is due (common
// practice, no source).
const shakeFrom = 0.2

func (v UnitsView) afterThrough(p UnitsTold, ref string) (chat.Para, []chat.Button) {
	return say("Next: use it, or put it in the cold: `" + ref + " in the fridge`"), []chat.Button{tap("Used", "used "+ref)}
}

func (v UnitsView) afterSign(one kitchen.Unit, ref string, taken []kitchen.UnitNo) (chat.Para, []chat.Button) {
	it := "it"
	if len(taken) > 1 {
		it = "them"
	}
	switch {
	case one.State == kitchen.UnitSuspect:
		return say("Next: keep " + it + " apart. I ask again in two days."), []chat.Button{tap("Contaminated", ref+" contaminated"), tap("Looks fine", ref+" looks fine")}
	case one.State == kitchen.UnitContaminated:
		return say("Next: out, then say `threw " + ref + "`"), []chat.Button{tap("Thrown out", "threw "+ref)}
	case one.State == kitchen.UnitDead:
		return say("Next: clean? Inoculate once more. Else throw " + it + " out."), []chat.Button{tap("Thrown out", "threw "+ref)}
	}
	return nil, nil
}
