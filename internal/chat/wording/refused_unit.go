package wording

import (
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

func unitNotYet(r kitchen.UnitNotYet) chat.Post {
	if r.Blank {
		return lines("**" + r.Unit.String() + "** is the blank: nothing was put on it. Nothing was written.")
	}
	if r.State == kitchen.InCook {
		return lines("**"+r.Unit.String()+" is still in the cook**: nobody said zero. Nothing was written.", "Next: when it shows zero, say `zero`.")
	}
	return lines("**"+r.Unit.String()+" is only "+r.State.String()+"** by the book. Nothing was written.", "Its story: `log "+r.Unit.String()+"`")
}

// unitPast says what has become of a unit, and how that can be mended.
func unitPast(r kitchen.UnitPast, a Asked) chat.Post {
	by := ""
	if r.By != 0 {
		by = " ({})"
	}
	head := say("**"+r.Unit.String()+" is "+r.State.String()+"** since "+whenSaid(a.Now, r.Since)+by+": "+r.Said.String()+" can't follow. Nothing was written.", called(a.Who, r.By))
	return theirs(head, say("Was that wrong? Reply `undo` to that answer. Its story: `log "+r.Unit.String()+"`"))
}

// unitAlready says that the same stands there.
func unitAlready(r kitchen.UnitAlready, a Asked) chat.Post {
	if !r.Seen {
		return lines("**"+r.Unit.String()+"**: "+r.Said.String()+" stands there, filled in "+whenSaid(a.Now, r.At)+". Nothing was changed.", "Its story: `log "+r.Unit.String()+"`")
	}
	return theirs(say("**"+r.Unit.String()+"**: "+r.Said.String()+" stands there since "+whenSaid(a.Now, r.At)+", told by {}. Nothing was changed.", called(a.Who, r.By)))
}

// unitContradicts says what was told of a later time.
func unitContradicts(r kitchen.UnitContradicts, a Asked) chat.Post {
	return theirs(say("**"+r.Unit.String()+"**: "+r.Said.String()+" "+whenSaid(a.Now, r.At)+" doesn't go with "+r.Other.String()+" "+whenSaid(a.Now, r.OtherAt)+" ({}). Nothing was written.", called(a.Who, r.OtherBy)),
		say("Its story: `log "+r.Unit.String()+"`"))
}

// noneMeant says that no unit can be meant.
func noneMeant(r kitchen.NoneMeant) chat.Post {
	if r.Run != 0 {
		return lines("**None of "+r.Run.String()+" can be meant** as it stands. Nothing was written.", "How it stands: `log "+r.Run.String()+"`")
	}
	return lines("**Which jar or bag?** None on the shelf fits that by itself. Nothing was written.", "Say its number, like `12.3 green`. What is there: `shelf`")
}

// whenSaid is an instant as people say it: the time today, else the day.
func whenSaid(now, t time.Time) string {
	if daysBetween(t, now) == 0 {
		return t.In(now.Location()).Format("15:04")
	}
	return t.In(now.Location()).Format("Mon ") + dateOf(now, t)
}

func ownAncestor(r kitchen.OwnAncestor) chat.Post {
	if r.Culture != "" {
		return theirs(say("**{} would come from itself.** Nothing was written.", cultureHead(r.Culture)))
	}
	return lines("**" + r.Unit.String() + "** would come from itself. Nothing was written.")
}

// mostNamed is how many units of one name are listed.
const mostNamed = 6

// nameShared says which units share the name that was said.
func nameShared(r kitchen.UnitNameShared) chat.Post {
	var refs []string
	for _, u := range r.Units[:min(len(r.Units), mostNamed)] {
		refs = append(refs, u.String())
	}
	all := strings.Join(refs, ", ")
	if more := len(r.Units) - len(refs); more > 0 {
		all += " and " + strconv.Itoa(more) + " more"
	}
	return theirs(say("Which {}? "+all+" are called so. Nothing was written.", r.Name), say("Say the number, like `"+r.Units[0].String()+" green`. New name: `call "+r.Units[0].String()+" bag b`"))
}
