package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

func unitNotYet(r kitchen.UnitNotYet) chat.Post {
	if r.Blank {
		return lines("**" + r.Unit.String() + "** is the blank: nothing was put on it. Nothing was written.")
	}
	return lines("**" + r.Unit.String() + "** is not so far: " + r.State.String() + ". Nothing was written.")
}

func ownAncestor(r kitchen.OwnAncestor) chat.Post {
	if r.Culture != "" {
		return theirs(say("{} would come from itself. Nothing was written.", r.Culture))
	}
	return lines("**" + r.Unit.String() + "** would come from itself. Nothing was written.")
}
