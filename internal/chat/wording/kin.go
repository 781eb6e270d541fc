package wording

import (
	"slices"
	"strconv"
	"strings"
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
	// Of is what turned out bad, where something was taken of it: Below. Away was used or
	// given away, Cultures were taken of it.
	Of       string
	Below    []kitchen.UnitRef
	Away     []AwayUnits
	Cultures []string
}

// AwayUnits are units that were used on something; empty for unsaid what.
type AwayUnits struct {
	On    string
	Units []kitchen.UnitRef
}

// UsedOn adds a unit that was used, or given away.
func (v *KinView) UsedOn(on string, ref kitchen.UnitRef) {
	i := slices.IndexFunc(v.Away, func(a AwayUnits) bool { return a.On == on })
	if i < 0 {
		i, v.Away = len(v.Away), append(v.Away, AwayUnits{On: on})
	}
	if !slices.Contains(v.Away[i].Units, ref) {
		v.Away[i].Units = append(v.Away[i].Units, ref)
	}
}

// None reports whether there is nothing to warn of.
func (v KinView) None() bool { return len(v.Beside)+len(v.Below)+len(v.Away)+len(v.Cultures) == 0 }

// kinPara warns of what a bad one may have tainted, or shares a taint with.
func kinPara(v KinView) chat.Para {
	var p chat.Para
	add := func(text string, names ...string) {
		if len(p) > 0 {
			p = append(p, chat.Text(" "))
		}
		p = append(p, say(text, names...)...)
	}
	if len(v.Below) > 0 {
		add("**From {} came "+refsOf(v.Below, traceLoads)+"**, which "+stillStand(len(v.Below))+".", v.Of)
	}
	if len(v.Beside) > 0 {
		add("**If it was {}**: "+refsOf(v.Beside, traceLoads)+" came from it too and "+stillStand(len(v.Beside))+".", v.Parent)
	}
	if n := len(v.Below) + len(v.Beside); n > 0 {
		add("Look at " + themOrIt(n) + " first.")
	}
	if n := min(len(v.Cultures), mostBack); n > 0 {
		names := append(slices.Clone(v.Cultures[:n]), v.Of)
		names[0] = cultureHead(names[0])
		if n == 1 {
			add("**{}** was made from {}: it may be bad, too.", names...)
		} else {
			add("**"+holes(n)+"** were made from {}: they may be bad, too.", names...)
		}
	}
	if len(v.Away) > 0 {
		var parts, names []string
		for _, a := range v.Away {
			part := refsOf(a.Units, traceLoads)
			if a.On != "" {
				part, names = part+" on {}", append(names, a.On)
			}
			parts = append(parts, part)
		}
		add("Away: "+strings.Join(parts, ", ")+". Look there, too.", names...)
	}
	return p
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
// a parent that had ended or was bad.
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
	case p.Tainted != "":
		out = append(out, say("**{} came from {}, which went bad**: what comes of it may be, too. Written all the same.", cultureHead(name), p.Tainted))
	case p.Young:
		out = append(out, say("Nobody called **{}** grown through: was it? Written all the same.", name))
	case !p.Ended.IsZero():
		out = append(out, say("The book has {} as gone since "+near(now, p.Ended)+". Written all the same.", name))
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

// mostUnknown is how many cultures are named that the book doesn't know.
const mostUnknown = 3

// unknownPara says that the book doesn't know cultures that were put on, and how to make
// them known.
func unknownPara(names []string) chat.Para {
	what, it := "", "What is it?"
	if len(names) > 1 {
		it = "What are they?"
	}
	for i := range names[:min(len(names), mostUnknown)] {
		switch {
		case i > 0 && i == len(names)-1:
			what += " and "
		case i > 0:
			what += ", "
		}
		what += "{}"
	}
	if more := len(names) - mostUnknown; more > 0 {
		what += " and " + strconv.Itoa(more) + " more"
	}
	return say("The book doesn't know "+what+" yet: taken as said. "+it+" `new culture "+typable(names[0])+", oyster`", names[:min(len(names), mostUnknown)]...)
}

// unknownParent reports whether what was put on is a culture that the book doesn't know,
// and of which nothing else is worth saying.
func unknownParent(p kitchen.Parentage, put kitchen.Inoculated) bool {
	return !p.Bad && p.Tainted == "" && !p.Young && p.Ended.IsZero() && !p.Known && unknownCulture(put)
}

// unknownCulture reports whether a culture was named, and not only what grows.
func unknownCulture(put kitchen.Inoculated) bool {
	_, species := kitchen.SpeciesNamed(put.Culture)
	return put.Culture != "" && put.Culture != put.Species && !species
}
