package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// SomeView is something told of so many units, without saying which.
type SomeView struct {
	Asked phrase.SomeUnits
	// There is how many of the kind grow or are grown through. Oldest are as many of
	// them as were told of, those to use first in front; empty where there aren't so many.
	There  int
	Oldest []kitchen.ShelfUnit
	// Say tells the same of the oldest.
	Say string
}

// SomeUnits asks which units were meant, and offers the oldest. Nothing was written.
func SomeUnits(v SomeView) chat.Post {
	if len(v.Oldest) == 0 {
		post := lines("**Which?** I know of "+whole(float64(v.There))+" there that can be meant. Nothing was written.", "Say it with their numbers, like `used 12.1 on straw`")
		return with(post, tap("Shelf", "shelf"))
	}
	which := shelfRefs(v.Oldest)
	post := lines("**Which?** The oldest of "+whole(float64(v.There))+": "+which+". Nothing was written yet.", "Others? Say it with their numbers.")
	return with(post, tap(capital(v.Say), v.Say), tap("Shelf", "shelf"))
}
