package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// WhereView is where units are, or what became of them.
type WhereView struct {
	// Units hold their steps; never empty.
	Units []kitchen.Unit
	// Now is in the kitchen's zone.
	Now time.Time
	Who func(kitchen.MemberNo) string
}

// mostPlaces is how many places or fates are told of units that were asked for at once.
const mostPlaces = 6

// Where says where units stand, since when and by whose word; or what became of them.
func Where(v WhereView) chat.Post {
	var s sheet
	told := v.alike()
	for i, units := range told {
		if i == mostPlaces {
			s.add(must, say("And "+whole(float64(len(told)-i))+" more: ask for them one by one."))
			break
		}
		s.add(must, v.where(units))
	}
	var unplaced kitchen.UnitRef
	for _, u := range v.Units {
		bad := u.State == kitchen.UnitContaminated || u.State == kitchen.UnitDead
		if u.State.Stands() && !bad && u.Place == "" && unplaced.Run == 0 { // what is bad goes out, not into the fridge
			unplaced = u.Ref
		}
	}
	if unplaced.Run != 0 {
		s.then(say("Know it? Say `"+strings.TrimPrefix(unplaced.String(), "#")+" is in the fridge`"), tap("In the fridge", unplaced.String()+" is in the fridge"), tap("Shelf", "shelf"))
		return s.post(chat.Answer)
	}
	s.then(nil, tap("Shelf", "shelf"))
	return s.post(chat.Answer)
}

// alike are units of which the same is told, in the order asked for.
func (v WhereView) alike() [][]kitchen.Unit {
	var out [][]kitchen.Unit
	at := map[string]int{}
	for _, u := range v.Units {
		key := u.Ref.Run.String() + chat.Plain(chat.Post{Blocks: []chat.Block{v.fate(u)}}, phone)
		i, ok := at[key]
		if !ok {
			i, at[key] = len(out), len(out)
			out = append(out, nil)
		}
		out[i] = append(out[i], u)
	}
	return out
}

// where is a sentence of units alike: #12.3: in the fridge, since 3 Nov, by Ana.
func (v WhereView) where(units []kitchen.Unit) chat.Para {
	ref := kitchen.Ref{Run: units[0].Ref.Run}
	for _, u := range units {
		ref.Units = insertUnit(ref.Units, u.Ref.Unit)
	}
	named := ref.String()
	if len(units) == 1 && units[0].Name != "" {
		return append(say("**"+named+"** ({}): ", units[0].Name), v.fate(units[0])...)
	}
	return append(say("**"+named+"**: "), v.fate(units[0])...)
}

// fate is where a unit stands or what became of it, behind its number.
func (v WhereView) fate(u kitchen.Unit) chat.Para {
	switch u.State {
	case kitchen.UnitUsed:
		on := ""
		if e, ok := lastSaid[kitchen.UnitsUsed](u, kitchen.SaidUsed); ok && e.On != "" {
			on = " on " + e.On
		}
		return v.gone(u, kitchen.SaidUsed, "used{}", on)
	case kitchen.UnitGiven:
		to := ""
		if e, ok := lastSaid[kitchen.UnitsGiven](u, kitchen.SaidGiven); ok && e.To != "" {
			to = " to " + e.To
		}
		return v.gone(u, kitchen.SaidGiven, "given away{}", to)
	case kitchen.UnitDiscarded:
		why := ""
		if u.Loss.What != 0 {
			why = ", " + u.Loss.What.String()
		}
		return v.gone(u, kitchen.SaidDiscarded, "thrown out{}", why)
	case kitchen.UnitGone:
		return v.gone(u, kitchen.SaidGone, "gone, and nobody said how{}", "")
	case kitchen.InCook:
		return say("still in the cook.")
	case kitchen.UnitCooked, kitchen.UnitInoculated, kitchen.UnitGrowing, kitchen.UnitGrown, kitchen.UnitSuspect, kitchen.UnitContaminated, kitchen.UnitDead:
		return v.stands(u)
	}
	panic("state without words")
}

// gone is what became of a unit, when and by whom.
func (v WhereView) gone(u kitchen.Unit, k kitchen.UnitKind, text, more string) chat.Para {
	st, ok := u.LastStep(k)
	if !ok {
		return say(text+".", more)
	}
	by := v.by(st.By)
	return say(text+", "+dateOf(v.Now, st.At)+"{}.", more, by)
}

// by names who said it; nothing for nobody.
func (v WhereView) by(no kitchen.MemberNo) string {
	if name := v.Who(no); name != "" {
		return ", by " + name
	}
	return ""
}

// stands is the place of a unit that is still there.
func (v WhereView) stands(u kitchen.Unit) chat.Para {
	state := capital(u.State.String()) + " since " + dateOf(v.Now, u.Since) + "."
	if u.Place == "" {
		return say("nobody said where. " + state)
	}
	st, ok := u.LastStep(kitchen.SaidMoved)
	if !ok {
		return say("{}. "+state, atPlace(u.Place))
	}
	return say("{}, since "+dateOf(v.Now, st.At)+"{}. "+state, atPlace(u.Place), v.by(st.By))
}

// lastSaid is the newest entry of a kind that tells of a unit.
func lastSaid[E kitchen.UnitEntry](u kitchen.Unit, k kitchen.UnitKind) (E, bool) {
	st, ok := u.LastStep(k)
	if !ok {
		var none E
		return none, false
	}
	e, ok := st.Entry.(E)
	return e, ok
}
