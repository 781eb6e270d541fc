package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Nameless is how a member is called who was forgotten: by number.
func Nameless(no kitchen.MemberNo) string { return "member " + whole(float64(no)) }

// PlanNotWritten says that a plan has nothing to take back.
func PlanNotWritten() chat.Post {
	return lines("A plan is only worked out: nothing is written yet.", "To take back what was written before it, reply `undo` to that answer.")
}

// StillStands says that a message was edited into something that says nothing
// here, and that what it had said stands.
func StillStands(said string) chat.Post {
	return with(theirs(say("That was taken as \"{}\", and stands.", said)), tap("Undo", "undo"))
}

// StandsAsBefore says that what a message said before it was edited still counts.
func StandsAsBefore() chat.Block { return say("What the message said before stands.") }

// ToldStands says that what was to be corrected still counts.
func ToldStands() chat.Block { return say("What was told before stands.") }

// alreadyOn says that a plan is on, so that a second tap is no second run, and
// when its next load can follow.
func alreadyOn(r kitchen.AlreadyOn, a Asked) chat.Post {
	post := theirs(say("**"+r.Run.String()+"** is on since "+clock(a.Now, r.At)+", {}. Nothing was put on.", called(a.Who, r.By)))
	if r.More > 0 {
		post.Blocks = append(post.Blocks, say("The next load follows when it is at zero and out."))
	}
	return with(post, tap("Now", "now"))
}

// BegunBySaying says that a plan became a run, and which: what was said could only
// be of one.
func BegunBySaying(r kitchen.Run, who func(kitchen.MemberNo) string) chat.Block {
	return say("**Run "+r.No.String()+"** in {}, {}: "+orderWords(r.Order)+".", cookerOf(r.Cooker), called(who, r.Cook))
}
