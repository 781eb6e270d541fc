package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// ArrivedView is what was put on the shelf without a run.
type ArrivedView struct {
	// Loads are those that were told of; never empty.
	Loads []ArrivedLoad
	// Unseen says whether it was told before that what arrived is marked as not seen cooked.
	Unseen Newness
	// Now is in the kitchen's zone.
	Now time.Time
}

// ArrivedLoad is one of them, as it stands now, with its first unit as the shelf sees it.
type ArrivedLoad struct {
	Units kitchen.Units
	First kitchen.ShelfUnit
	Place string
	// Undated is set when nobody said from when its age counts.
	Undated bool
}

// Arrived says under which numbers units stand that no run made, and what was
// understood of them.
func Arrived(v ArrivedView) chat.Post {
	var s sheet
	for i, l := range v.Loads {
		need := must
		if i > 2 {
			need = should
		}
		s.add(need, v.load(l))
	}
	first := v.Loads[0]
	if len(v.Loads) == 1 && first.First.Rests() {
		s.add(should, say("In the cold: no estimate, and no ping."))
	} else if len(v.Loads) == 1 && !first.First.Expected().By.Before(v.Now) {
		s.add(should, say(capital(leftOf(first.First, v.Now))+", by estimate."))
	} else if len(v.Loads) == 1 {
		s.add(should, say(capital(leftOf(first.First, v.Now))+"."))
	}
	if v.Unseen != Known {
		s.add(must, say("Nobody here saw "+itOr(v, "it", "them")+" cooked: marked so."))
	}
	s.then(v.next(), v.taps()...)
	return s.post(chat.Answer)
}

// load is a load in a sentence: #13.1-4: 4 quart jars of rye, oyster, growing since 3 Oct.
func (v ArrivedView) load(l ArrivedLoad) chat.Para {
	ref := kitchen.Ref{Run: l.Units.Run}
	for _, u := range l.Units.All {
		ref.Units = append(ref.Units, u.Ref.Unit)
	}
	text := "**" + ref.String() + "**: " + orderWords(l.Units.Order)
	var theirs []string
	if u := l.First; u.Culture != "" {
		text += ", {}"
		theirs = append(theirs, u.Culture)
		if u.Species != "" && !strings.EqualFold(u.Species, u.Culture) {
			text += " ({})"
			theirs = append(theirs, u.Species)
		}
	}
	text += ", " + l.First.State.String()
	if l.First.Share > 0 && l.First.State == kitchen.UnitGrowing {
		text += " (" + percent(l.First.Share) + ")"
	}
	if l.Undated {
		text += ", counted from today"
	} else {
		text += ", counted from " + dateOf(v.Now, l.Units.Begun)
	}
	if l.Units.From != "" {
		text += ", from {}"
		theirs = append(theirs, l.Units.From)
	}
	if l.Place != "" {
		text += ", {}"
		theirs = append(theirs, atPlace(l.Place))
	}
	return say(text+".", theirs...)
}

func itOr(v ArrivedView, it, them string) string {
	if len(v.Loads) == 1 && len(v.Loads[0].Units.All) == 1 {
		return it
	}
	return them
}

// next is how to tell what is most worth knowing and wasn't said: the age, then the place.
func (v ArrivedView) next() chat.Para {
	for _, l := range v.Loads {
		if l.Undated {
			return say("Older? Undo, and say it with `since 3 oct`")
		}
	}
	for _, l := range v.Loads {
		if l.Place == "" {
			return say("Where? Say `" + strings.TrimPrefix(l.Units.Run.String(), "#") + " is in the fridge`")
		}
	}
	return nil
}

func (v ArrivedView) taps() []chat.Button {
	return []chat.Button{tap("Shelf", "shelf"), tap("Undo", "undo")}
}

// NotArrived says why something can't have arrived: it is too much at once, or it lies
// ahead. Nothing was written.
func NotArrived(why kitchen.Refusal, now time.Time) chat.Post {
	if r, ok := why.(kitchen.InFuture); ok {
		return lines("**"+dateOf(now, r.At)+"** is still to come, and what is on the shelf is here. Nothing was written.", "Say since when, like `4 quarts rye oyster on the shelf since 3 oct`")
	}
	if r, ok := why.(kitchen.OutOfRange); ok && r.What == kitchen.CountOfUnits && r.Got > r.High {
		return lines("**"+whole(r.Got)+" units at once** are more than I number: "+whole(r.High)+". Nothing was written.", "Say them in several messages, by kind, or by age.")
	}
	return Refused(why)
}

// UndoneArrived says that loads are off the shelf again.
func UndoneArrived(loads []kitchen.RunNo, by string) chat.Post {
	var nos []string
	for _, no := range loads {
		nos = append(nos, no.String())
	}
	what := listed(nos) + " on the shelf. "
	if len(loads) == 1 {
		return Undone(what+"Its number is not used again.", by)
	}
	return Undone(what+"Their numbers are not used again.", by)
}
