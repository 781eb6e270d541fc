package wording

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// refsOf are units as people write them, load by load: #9.4, #12.1-4. What is over so
// many loads is counted.
func refsOf(units []kitchen.UnitRef, most int) string {
	byRun := map[kitchen.RunNo][]kitchen.UnitNo{}
	var runs []kitchen.RunNo
	for _, u := range units {
		if byRun[u.Run] == nil {
			runs = append(runs, u.Run)
		}
		byRun[u.Run] = append(byRun[u.Run], u.Unit)
	}
	slices.Sort(runs)
	var out []string
	left := 0
	for i, no := range runs {
		if i >= most {
			left += len(byRun[no])
			continue
		}
		slices.Sort(byRun[no])
		out = append(out, shortRef(no, byRun[no]))
	}
	if left > 0 {
		return strings.Join(out, ", ") + " and " + strconv.Itoa(left) + " more"
	}
	return strings.Join(out, ", ")
}

// mostGaps is how many stretches of numbers of one load are written out.
const mostGaps = 4

// shortRef are units of a load; many that lie scattered are counted.
func shortRef(no kitchen.RunNo, units []kitchen.UnitNo) string {
	s := kitchen.Ref{Run: no, Units: units}.String()
	if strings.Count(s, ",") < mostGaps {
		return s
	}
	return strconv.Itoa(len(units)) + " of " + no.String()
}

// traceLoads is how many loads a sentence of a trace names.
const traceLoads = 4

// NodeName is what a unit or culture is called in the middle of a sentence.
func NodeName(l kitchen.Lineage, n kitchen.Node) string {
	if n.IsUnit() {
		return n.Unit.String()
	}
	if c, ok := l.Culture(n); ok {
		return c.Name
	}
	for _, below := range l.Forward(n) { // as it was spelt
		if c, ok := l.Culture(below); ok {
			return c.From
		}
		if u, ok := l.Unit(below); ok {
			return u.Culture
		}
	}
	return n.Name
}

// NodeWords are the words for a unit or culture in a tree: what it is called, how it
// stands, and where.
func NodeWords(l kitchen.Lineage, n kitchen.Node, now time.Time) (name, state, place string) {
	if u, ok := l.Unit(n); ok {
		name = n.Unit.String()
		if u.Name != "" {
			name += " " + u.Name
		}
		if u.State.Stands() {
			place = u.Place
		}
		return name, fateWord(u, now), place
	}
	if n.IsUnit() {
		return n.Unit.String(), "not in the book", ""
	}
	name = cultureHead(NodeName(l, n))
	c, ok := l.Culture(n)
	if !ok {
		return name, "only the name is known", ""
	}
	state = c.Species
	if strings.EqualFold(state, c.Name) {
		state = ""
	}
	if !c.Ended.IsZero() {
		state = strings.TrimPrefix(state+", "+endWord(c.How)+" "+dateOf(now, c.Ended), ", ")
	}
	return name, state, ""
}

// fateWord is how a unit stands, with the day when it was lost or went.
func fateWord(u kitchen.Unit, now time.Time) string {
	switch {
	case u.Loss.What == kitchen.UnitContaminated && !u.State.Stands():
		return "went bad " + dateOf(now, u.Loss.At) + ", " + awayWord(u.State)
	case u.Loss.What == kitchen.UnitContaminated:
		return "went bad " + dateOf(now, u.Loss.At)
	case u.State == kitchen.UnitUsed || u.State == kitchen.UnitDiscarded || u.State == kitchen.UnitGiven:
		return unitStands(u) + " " + dateOf(now, u.Since)
	}
	return unitStands(u)
}

func awayWord(s kitchen.UnitState) string {
	switch s {
	case kitchen.UnitDiscarded:
		return "out"
	case kitchen.UnitUsed:
		return "used"
	case kitchen.UnitGiven:
		return "given away"
	case kitchen.UnitGone, kitchen.InCook, kitchen.UnitCooked, kitchen.UnitInoculated, kitchen.UnitGrowing, kitchen.UnitGrown, kitchen.UnitSuspect,
		kitchen.UnitContaminated, kitchen.UnitDead:
		return "gone"
	}
	panic("state " + s.String())
}

func endWord(e kitchen.CultureEnd) string {
	switch e {
	case kitchen.CultureUsedUp:
		return "used up"
	case kitchen.CultureThrownOut:
		return "thrown out"
	case kitchen.CultureWentBad:
		return "went bad"
	}
	return "ended"
}

// fated are units that fared alike.
type fated struct {
	units []kitchen.UnitRef
	sort  int
	// one and many say how, of one unit and of several.
	one, many string
	// places are where they stand, and which of them where.
	places []string
	at     map[string][]kitchen.UnitRef
}

// fatesOf puts units together that fared alike: what went bad and still stands first,
// then what stands, then what is away.
func fatesOf(l kitchen.Lineage, units []kitchen.UnitRef) []fated {
	var out []fated
	for _, ref := range units {
		u, ok := l.Unit(kitchen.UnitNode(ref))
		if !ok {
			continue
		}
		f := fateOf(u)
		i := slices.IndexFunc(out, func(o fated) bool { return o.sort == f.sort })
		if i < 0 {
			f.at = map[string][]kitchen.UnitRef{}
			out = append(out, f)
			i = len(out) - 1
		}
		place := ""
		if u.State.Stands() {
			place = u.Place
		}
		if out[i].at[place] == nil {
			out[i].places = append(out[i].places, place)
		}
		out[i].units, out[i].at[place] = append(out[i].units, ref), append(out[i].at[place], ref)
	}
	slices.SortStableFunc(out, func(a, b fated) int { return cmp.Compare(a.sort, b.sort) })
	return out
}

// firstAway is the first kind of fate of what is no longer there.
const firstAway = 20

func fateOf(u kitchen.Unit) fated {
	bad := fated{sort: 1, one: "went bad and still stands", many: "went bad and still stand"}
	switch {
	case u.Loss.What == kitchen.UnitContaminated && u.State.Stands():
		return bad
	case u.Loss.What == kitchen.UnitContaminated && u.State == kitchen.UnitDiscarded:
		return fated{sort: firstAway, one: "went bad and is out", many: "went bad and are out"}
	case u.Loss.What == kitchen.UnitContaminated:
		return fated{sort: firstAway + 1, one: "went bad, " + awayWord(u.State), many: "went bad, " + awayWord(u.State)}
	}
	switch u.State {
	case kitchen.UnitContaminated:
		return bad
	case kitchen.UnitDead:
		return fated{sort: 2, one: "grew nothing", many: "grew nothing"}
	case kitchen.UnitSuspect:
		return fated{sort: 3, one: "looks suspect", many: "look suspect"}
	case kitchen.UnitGrowing:
		return fated{sort: 4, one: "is growing", many: "are growing"}
	case kitchen.UnitInoculated:
		return fated{sort: 5, one: "is inoculated", many: "are inoculated"}
	case kitchen.UnitGrown:
		return fated{sort: 6, one: "is grown through", many: "are grown through"}
	case kitchen.UnitCooked:
		return fated{sort: 7, one: "is cooked grain", many: "are cooked grain"}
	case kitchen.InCook:
		return fated{sort: 8, one: "is in the cook", many: "are in the cook"}
	case kitchen.UnitUsed:
		return fated{sort: firstAway + 2, one: "was used", many: "were used"}
	case kitchen.UnitGiven:
		return fated{sort: firstAway + 3, one: "was given away", many: "were given away"}
	case kitchen.UnitDiscarded:
		return fated{sort: firstAway + 4, one: "was thrown out", many: "were thrown out"}
	case kitchen.UnitGone:
		return fated{sort: firstAway + 5, one: "is gone", many: "are gone"}
	}
	panic("state " + u.State.String())
}

// words say how the units fared, which they are and where.
func (f fated) words() chat.Para {
	how := f.many
	if len(f.units) == 1 {
		how = f.one
	}
	text := strconv.Itoa(len(f.units)) + " " + how + ": "
	var parts, names []string
	for _, place := range f.places {
		part := refsOf(f.at[place], traceLoads)
		if place != "" {
			part, names = part+" ({})", append(names, place)
		}
		parts = append(parts, part)
	}
	return say(text+strings.Join(parts, ", ")+".", names...)
}

// short says how they fared behind a number alone: 3 growing.
func (f fated) short() string {
	for _, verb := range []string{"are ", "were ", "look "} {
		if rest, ok := strings.CutPrefix(f.many, verb); ok {
			return rest
		}
	}
	return strings.TrimSuffix(f.many, " and still stand")
}

// lostOf counts the units that were lost.
func lostOf(l kitchen.Lineage, units []kitchen.UnitRef) int {
	n := 0
	for _, ref := range units {
		if u, ok := l.Unit(kitchen.UnitNode(ref)); ok && u.Loss.What != 0 {
			n++
		}
	}
	return n
}

// lostShare is how many of how many were lost: 3 of 11 lost, without more.
func lostShare(lost, of int) string {
	switch {
	case of == 1 && lost == 1:
		return "the one unit lost"
	case lost == 0 && of == 1:
		return "one unit, not lost"
	case lost == 0:
		return "none of " + strconv.Itoa(of) + " lost"
	}
	return strconv.Itoa(lost) + " of " + strconv.Itoa(of) + " lost"
}

// runsOf counts the loads of units.
func runsOf(units []kitchen.UnitRef) int {
	runs := map[kitchen.RunNo]bool{}
	for _, u := range units {
		runs[u.Run] = true
	}
	return len(runs)
}

// LotLabel is what a lot is called: rye lot 3, bag lot b2.
func LotLabel(what kitchen.LotKind, name string) string {
	head, rest, ok := strings.Cut(name, " ")
	switch what {
	case kitchen.GrainLot:
		if ok {
			return head + " lot " + rest
		}
		return "lot " + name
	case kitchen.BagLot:
		return "bag lot " + name
	case kitchen.LidLot:
		return "lid lot " + name
	}
	panic("lot " + what.String())
}
