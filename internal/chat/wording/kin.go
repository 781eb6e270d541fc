package wording

import (
	"strconv"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// KinView is what still stands of the kin of something that turned out bad, for the one
// warning.
type KinView struct {
	// Parent is what the bad ones came from, by its name or as a unit; empty where that
	// isn't known. Beside are those that came from it too, with what came from those.
	Parent string
	Beside []kitchen.UnitRef
	// Of is what turned out bad, where something was taken of it: Below.
	Of    string
	Below []kitchen.UnitRef
}

// kinPara warns of what a bad one may have tainted, or shares a taint with.
func kinPara(v KinView) chat.Para {
	var p chat.Para
	if len(v.Below) > 0 {
		p = append(p, say("**From {} came "+refsOf(v.Below, traceLoads)+"**, which "+stillStand(len(v.Below))+".", v.Of)...)
	}
	if len(v.Beside) > 0 {
		if len(p) > 0 {
			p = append(p, chat.Text(" "))
		}
		p = append(p, say("**If it was {}**: "+refsOf(v.Beside, traceLoads)+" came from it too and "+stillStand(len(v.Beside))+".", v.Parent)...)
	}
	if len(p) == 0 {
		return nil
	}
	return append(p, chat.Text(" Look at "+themOrIt(len(v.Below)+len(v.Beside))+" first."))
}

func stillStand(n int) string {
	if n == 1 {
		return "still stands"
	}
	return "still stand"
}

func themOrIt(n int) string {
	if n == 1 {
		return "it"
	}
	return "them"
}

// parentageParas say what is worth knowing of what was put on units: a high generation,
// a parent that had ended or was bad, a culture that the book doesn't know.
func parentageParas(p kitchen.Parentage, put kitchen.Inoculated, now time.Time) []chat.Para {
	name := put.Culture
	if put.From != (kitchen.UnitRef{}) {
		name = put.From.String()
	}
	var out []chat.Para
	switch {
	case p.Bad && p.Parent.IsUnit():
		out = append(out, badUnit(name))
	case p.Bad:
		out = append(out, badCulture(name))
	case p.Young:
		out = append(out, say("Nobody called **{}** grown through: was it? Written all the same.", name))
	case !p.Ended.IsZero():
		out = append(out, say("The book has {} as gone since "+near(now, p.Ended)+". Written all the same.", name))
	case !p.Known && unknownCulture(put):
		out = append(out, say("The book doesn't know {} yet: taken as said. What is it? `new culture "+typable(name)+", oyster`", name))
	}
	if p.Generation >= kitchen.OldGeneration {
		out = append(out, say("**That is generation "+strconv.Itoa(p.Generation)+"**: most stop at "+strconv.Itoa(kitchen.OldGeneration-1)+". Each step copies what hides in it."))
	}
	return out
}

// badUnit and badCulture are what is said of a parent that is bad.
func badUnit(name string) chat.Para {
	return say("**{} is suspect or went bad**: what comes of it may be, too. Written all the same.", name)
}

func badCulture(name string) chat.Para {
	return say("**{} went bad**: what comes of it may be, too. Written all the same.", cultureHead(name))
}

// unknownCulture reports whether a culture was named, and not only what grows.
func unknownCulture(put kitchen.Inoculated) bool {
	_, species := kitchen.SpeciesNamed(put.Culture)
	return put.Culture != "" && put.Culture != put.Species && !species
}
