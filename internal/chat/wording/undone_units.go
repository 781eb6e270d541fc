package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// UnitsUndone is a telling of units that was taken back.
type UnitsUndone struct {
	// Load are the units as they stand now.
	Load    kitchen.Units
	Entry   kitchen.UnitEntry
	At, Now time.Time
	// By is whose it was, empty for the speaker's own; Beside is what else was taken
	// back with it.
	By     string
	Beside []UnitsSaid
	// Too is who else said the same of all of them; empty for nobody.
	Too string
	// Stands is what it had corrected, which counts again.
	Stands []UnitsSaid
}

// UnitsSaid is what was said of units of a run.
type UnitsSaid struct {
	Run   kitchen.RunNo
	Entry kitchen.UnitEntry
}

func (u UnitsSaid) words() string {
	ref := kitchen.Ref{Run: u.Run, Units: kitchen.UnitsOf(u.Entry)}.String() + " "
	switch e := u.Entry.(type) {
	case kitchen.GrowthSeen:
		return ref + percent(e.Share) + " grown"
	case kitchen.SignSeen:
		return ref + kitchen.SaidBy(e).String() + signTail(e.Sign)
	case kitchen.Inoculated:
		if e.Culture != "" && !strings.ContainsAny(e.Culture, "*`{") { // no marks of ours among theirs
			return ref + kitchen.SaidBy(e).String() + ": " + e.Culture
		}
	case kitchen.Arrived, kitchen.BlankSet, kitchen.Shaken, kitchen.GrownThrough, kitchen.UnitsUsed, kitchen.UnitsGiven, kitchen.UnitsDiscarded, kitchen.UnitsGone, kitchen.UnitsMoved,
		kitchen.UnitNamed, kitchen.UnitsTagged, kitchen.UnitsStood, kitchen.LotSaid:
	}
	return ref + kitchen.SaidBy(u.Entry).String()
}

func saidWords(said []UnitsSaid) string {
	words := make([]string, len(said))
	for i, u := range said {
		words[i] = u.words()
	}
	return strings.Join(words, "; ")
}

// UndoneUnits says what was taken back, and how the units stand now.
func UndoneUnits(v UnitsUndone) chat.Post {
	words := []string{UnitsSaid{v.Load.Run, v.Entry}.words()}
	for _, b := range v.Beside {
		words = append(words, b.words())
	}
	post := Undone(strings.Join(words, "; "), v.By)
	if len(v.Stands) > 0 {
		post.Blocks = append(post.Blocks, say("Counts again: "+saidWords(v.Stands)+"."))
	}
	now := nowStands(v.Load, kitchen.UnitsOf(v.Entry), v.Now)
	if v.Too != "" {
		post.Blocks = append(post.Blocks, say(strings.TrimSuffix(now, ".")+": {} says so, too.", v.Too))
		return post
	}
	post.Blocks = append(post.Blocks, say(now))
	return post
}

// nowStands says how units stand now: Now #12.1-3 cooked, #12.4 growing.
func nowStands(load kitchen.Units, units []kitchen.UnitNo, now time.Time) string {
	if len(units) == 0 {
		for _, u := range load.All {
			units = append(units, u.Ref.Unit)
		}
	}
	var parts []string
	for _, s := range kitchen.UnitStates() {
		var in []kitchen.UnitNo
		for _, n := range units {
			if u, ok := load.Unit(n); ok && u.State == s {
				in = append(in, n)
			}
		}
		if len(in) > 0 {
			parts = append(parts, "**"+refOf(load, in)+"** "+s.String())
		}
	}
	return "Now: " + strings.Join(parts, ", ") + "."
}
