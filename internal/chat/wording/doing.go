package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// Doing says how one run stands, with its next step to tap.
func Doing(r kitchen.Run, now time.Time, who func(kitchen.MemberNo) string) chat.Post {
	v := RunView{Run: r, Now: now, Who: who}
	var s sheet
	s.add(must, v.state())
	s.add(should, say("In {}, with {}.", cookerOf(r.Cooker), v.who(r.Cook)))
	for _, c := range r.Next() {
		if b, ok := v.choice(c); ok && len(s.buttons) < 1 {
			s.buttons = append(s.buttons, b)
		}
	}
	s.buttons = append(s.buttons, runTap(r.No, "What now", "what now"))
	return s.post(chat.Answer)
}

// HoldOf says how long one container is held, from a plan of it, and how that comes
// about.
func HoldOf(p kitchen.Plan, s kitchen.Settings) chat.Post {
	return Why(p, s, phrase.Why{Part: phrase.PartHold})
}
