package wording

import (
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// UnitsView is what came of telling something of units.
type UnitsView struct {
	// Parts are what was told, load by load, in the order of the sentence; never empty.
	Parts []UnitsTold
	// At is when it happened, Now when it was told, both in the kitchen's zone.
	At, Now time.Time
	Who     func(kitchen.MemberNo) string
	// Instead is what was told before and is corrected by it.
	Instead []UnitsSaid
	// First tells whether a caution is New to the load: see [RunView].
	First func(caution string) Newness
}

// UnitsTold is one thing told of units of one load.
type UnitsTold struct {
	// Was and Load are the units before it and with it; alike when nothing was taken.
	Was, Load kitchen.Units
	// Units are those that were named; none for all of the load.
	Units []kitchen.UnitNo
	// Entry is what was told of them, No its number in the book.
	Entry  kitchen.UnitEntry
	No     kitchen.EntryNo
	Taking kitchen.Taking
	// Why says why nothing of it was taken; nil when something was.
	Why kitchen.Refusal
	// Parentage is what is worth saying of what was put on; zero for other entries.
	Parentage kitchen.Parentage
	// Growth is what is expected of the first of them from now on; nil for nothing.
	Growth *kitchen.Growth
	// Read is the reading by which somebody just found it within the limit, and Middle
	// how warm the middle is by estimate; nil where nobody did.
	Read   *kitchen.Reading
	Middle *cooling.Warmth
	// Too is who told the same sign of the same units at once, TooAt when; zero for
	// nobody.
	Too   kitchen.MemberNo
	TooAt time.Time
	// signs are more signs of the same units, told in the same breath.
	signs []kitchen.Sign
	// Kin are the units that a lost one endangers, to be warned of now; nil for none.
	Kin *KinView
}

// Units answers what was told of units: what was taken and what was not, what it
// points to, what comes next.
func Units(v UnitsView) chat.Post {
	v.Parts = joinedRefusals(joinedSigns(v.Parts))
	var s sheet
	for _, p := range v.Parts {
		v.head(&s, p)
	}
	if len(v.Instead) > 0 {
		s.add(should, say("Taken back: "+saidWords(v.Instead)+"."))
	}
	v.warm(&s)
	for _, p := range v.Parts {
		if p.Why == nil {
			v.remarks(&s, p)
		}
	}
	v.unknown(&s)
	v.next(&s)
	s.undoable()
	return s.post(chat.Answer)
}

// head says what was taken of one part, and what was not.
func (v UnitsView) head(s *sheet, p UnitsTold) {
	if p.Why != nil {
		s.add(must, v.notTaken(p.Why, p.Units, p.Load.Run))
		return
	}
	s.add(must, v.taken(p))
	for _, not := range byReason(p.Taking.Not) {
		s.add(must, v.notTaken(not.why, not.units, p.Load.Run))
	}
}

// joinedSigns makes one part of several signs of the same units, told in one breath.
func joinedSigns(parts []UnitsTold) []UnitsTold {
	var out []UnitsTold
	for _, p := range parts {
		seen, ok := p.Entry.(kitchen.SignSeen)
		if ok && p.Why == nil && len(out) > 0 {
			last := &out[len(out)-1]
			if _, signs := last.Entry.(kitchen.SignSeen); signs && last.Load.Run == p.Load.Run && slices.Equal(last.Taking.Taken, p.Taking.Taken) {
				last.signs, last.Load = append(last.signs, seen.Sign), p.Load
				continue
			}
		}
		out = append(out, p)
	}
	return out
}

// joinedRefusals makes one part of those of one load that can't be so for one reason.
func joinedRefusals(parts []UnitsTold) []UnitsTold {
	var out []UnitsTold
	for _, p := range parts {
		i := slices.IndexFunc(out, func(o UnitsTold) bool {
			return o.Why != nil && p.Why != nil && o.Load.Run == p.Load.Run && o.Load.Run != 0 && len(o.Units)*len(p.Units) > 0 && shortWhy(o.Why) == shortWhy(p.Why)
		})
		if i < 0 {
			out = append(out, p)
			continue
		}
		out[i].Units = slices.Concat(out[i].Units, p.Units)
	}
	return out
}

// refused are units that share a reason.
type refused struct {
	why   kitchen.Refusal
	units []kitchen.UnitNo
}

// byReason puts units together of which something can't be so for one reason.
func byReason(not []kitchen.UnitStray) []refused {
	var out []refused
	for _, n := range not {
		words := shortWhy(n.Why)
		i := slices.IndexFunc(out, func(r refused) bool { return shortWhy(r.why) == words })
		if i < 0 {
			out = append(out, refused{why: n.Why})
			i = len(out) - 1
		}
		out[i].units = append(out[i].units, n.Unit)
	}
	return out
}

// notTaken says of which units something was not taken, and why.
func (v UnitsView) notTaken(why kitchen.Refusal, units []kitchen.UnitNo, run kitchen.RunNo) chat.Para {
	if run == 0 {
		return say("Not taken: " + shortWhy(why) + ".")
	}
	units = slices.Clone(units)
	slices.Sort(units)
	return say("Not **" + kitchen.Ref{Run: run, Units: slices.Compact(units)}.String() + "**: " + shortWhy(why) + ".")
}

// refOf are units of a load as people write them; the whole load by its number.
func refOf(load kitchen.Units, units []kitchen.UnitNo) string {
	if len(units) == len(load.All) && len(units) > 1 {
		return load.Run.String()
	}
	units = slices.Clone(units)
	slices.Sort(units)
	return kitchen.Ref{Run: load.Run, Units: units}.String()
}

// remarks say what is worth knowing of what was taken.
func (v UnitsView) remarks(s *sheet, p UnitsTold) {
	if len(p.Taking.Filled) > 0 {
		s.add(should, say("Nobody had told of a culture on "+refOf(p.Load, p.Taking.Filled)+": noted as not seen. Which? `"+refOf(p.Load, p.Taking.Filled)+" oyster`"))
	}
	if len(p.Taking.Early) > 0 {
		s.add(must, say("**Nobody called "+refOf(p.Load, p.Taking.Early)+" grown through**: was it? Else `undo`."))
	}
	switch e := p.Entry.(type) {
	case kitchen.Inoculated:
		for _, para := range parentageParas(p.Parentage, e, v.Now) {
			s.add(must, para)
		}
		v.noBlank(s, p)
	case kitchen.SignSeen:
		if p.Too != 0 {
			s.add(must, say("{} said so at "+near(v.Now, p.TooAt)+", too.", called(v.Who, p.Too)))
		}
		v.finding(s, p, e.Sign)
	case kitchen.Arrived, kitchen.BlankSet, kitchen.GrowthSeen, kitchen.Shaken, kitchen.GrownThrough, kitchen.UnitsUsed, kitchen.UnitsGiven,
		kitchen.UnitsDiscarded, kitchen.UnitsGone, kitchen.UnitsMoved, kitchen.UnitNamed, kitchen.UnitsTagged, kitchen.UnitsStood, kitchen.LotSaid:
	}
	if p.Kin != nil {
		s.add(must, kinPara(*p.Kin))
	}
}

// unknown says once which cultures the book doesn't know yet.
func (v UnitsView) unknown(s *sheet) {
	var names []string
	for _, p := range v.Parts {
		put, is := p.Entry.(kitchen.Inoculated)
		if is && p.Why == nil && unknownParent(p.Parentage, put) && !slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(n, put.Culture) }) {
			names = append(names, put.Culture)
		}
	}
	if len(names) > 0 {
		s.add(must, unknownPara(names))
	}
}

// warm warns once of a culture that was put on what is warm by the estimate. Who had
// just measured it is not told to.
func (v UnitsView) warm(s *sheet) {
	i := slices.IndexFunc(v.Parts, func(p UnitsTold) bool { return p.Why == nil && p.Taking.Warm })
	if i < 0 {
		return
	}
	p := v.Parts[i]
	if p.Read == nil {
		s.add(must, say("**Still warm by my estimate**: a culture on warm grain can die. It is in the book all the same; measure one now."))
		return
	}
	line := "**By the reading " + warmth(p.Read.Temp) + "** at " + near(v.Now, p.Read.At)
	if m := p.Middle; m != nil && m.Mid > p.Read.Temp {
		line += "; the middle may be warmer still (about " + estimated(p.Read.Temp, m.Mid) + ", by estimate)"
	}
	s.add(must, say(line+"."))
}

// noBlank advises to leave a unit without a culture, once a load has none left.
func (v UnitsView) noBlank(s *sheet, p UnitsTold) {
	blank := slices.ContainsFunc(p.Load.All, func(u kitchen.Unit) bool { return u.Blank || u.State == kitchen.UnitCooked })
	if !blank && !p.Load.Arrived && len(p.Load.All) > 2 && v.First("no-blank") == New {
		s.add(may, say("No blank left in "+p.Load.Run.String()+": one without a culture tells the cook from the culture."))
	}
}

// next is the step after what was told last.
func (v UnitsView) next(s *sheet) {
	for _, p := range slices.Backward(v.Parts) {
		if p.Why != nil {
			continue
		}
		if step, taps := v.stepAfter(p); step != nil {
			s.then(step, taps...)
			return
		}
	}
}
