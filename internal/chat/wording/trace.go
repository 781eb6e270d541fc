package wording

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// TraceView is what came from what, to be told.
type TraceView struct {
	Lineage kitchen.Lineage
	// Of is the unit or culture that is traced; zero for several, which are Units: of a
	// lot, with a tag, of a load. Label is what these are called.
	Of    kitchen.Node
	Units []kitchen.UnitRef
	Label string
	// Drawn is set when a picture of the tree comes with it, Cut when there are more
	// units than were looked at.
	Drawn, Cut bool
	// Contrast is what stood beside those that went bad; nil where none did.
	Contrast *kitchen.Contrast
	Now      time.Time

	told int // how many fates have a line of their own
}

// TreeTooTall reports whether a tree of so many lines is more than a phone shows.
func TreeTooTall(lines int) bool { return lines > screen-2 }

// Trace tells where something came from, what came from it, and how and where that is.
// What has no room is counted.
func Trace(v TraceView) chat.Post {
	for v.told = mostFates; ; v.told-- {
		if p := v.sheet().post(chat.Answer); v.told == 0 || tall(p) <= screen {
			return p
		}
	}
}

func (v TraceView) sheet() *sheet {
	var s sheet
	switch {
	case v.Of.IsUnit():
		v.unit(&s)
	case v.Of != (kitchen.Node{}):
		v.culture(&s)
	default:
		v.several(&s)
	}
	if v.Drawn {
		s.add(should, say("The picture has the whole tree."))
	}
	if v.Cut {
		s.add(must, say("There are more than I looked at: trace a part of it."))
	}
	return &s
}

// culture tells of a culture: how much of it was lost, where it is from, what it went on.
func (v TraceView) culture(s *sheet) {
	l := v.Lineage
	name := NodeName(l, v.Of)
	all := l.Tree(v.Of).Units()
	if len(all) == 0 {
		s.add(must, say("**{}** went on no unit so far.", cultureHead(name)))
	} else {
		s.add(must, say("**{}: "+lostShare(lostOf(l, all), len(all))+"**"+inRuns(all)+".", cultureHead(name)))
	}
	s.add(must, v.origin(v.Of))
	v.forward(s)
	v.fates(s, all)
	s.add(must, v.verdict(name))
	v.nextLook(s, all)
}

// unit tells of a unit: how it is, where it is from, what stands beside it and what was
// taken of it.
func (v TraceView) unit(s *sheet) {
	l := v.Lineage
	u, ok := l.Unit(v.Of)
	if !ok {
		s.add(must, say("**"+v.Of.Unit.String()+"** is not in the book."))
		return
	}
	name, state, place := NodeWords(l, v.Of, v.Now)
	if place != "" {
		s.add(must, say("**{}: "+state+"**, {}.", name, place))
	} else {
		s.add(must, say("**{}: "+state+"**.", name))
	}
	if _, linked := l.Back(v.Of); linked {
		s.add(must, v.origin(v.Of))
	} else if u.Blank && u.Loss.What == kitchen.UnitContaminated {
		s.add(must, say("**It is the blank: look at the cook.** Nothing was put on it."))
	} else if u.Blank {
		s.add(must, say("It is the blank: nothing was put on it."))
	} else if !u.Cultured {
		s.add(must, say("No culture is on it."))
	} else {
		s.add(must, say("Nobody said which culture is on it."))
	}
	v.beside(s)
	below := l.Tree(v.Of).Units()
	below = slices.DeleteFunc(below, func(r kitchen.UnitRef) bool { return r == v.Of.Unit })
	v.forward(s)
	v.fates(s, below)
	v.nextLook(s, below)
}

// several tells of units that share a lot, a tag or a load.
func (v TraceView) several(s *sheet) {
	l := v.Lineage
	if len(v.Units) == 0 {
		s.add(must, say("No unit in the book has {}.", v.Label))
		return
	}
	s.add(must, say("**{}: "+lostShare(lostOf(l, v.Units), len(v.Units))+"**"+inRuns(v.Units)+".", capital(v.Label)))
	s.add(should, v.sources())
	var below []kitchen.UnitRef
	for _, ref := range v.Units {
		for _, b := range l.Tree(kitchen.UnitNode(ref)).Units() {
			if !slices.Contains(v.Units, b) && !slices.Contains(below, b) {
				below = append(below, b)
			}
		}
	}
	v.fates(s, v.Units)
	s.add(must, v.verdict(""))
	if len(below) > 0 {
		s.add(must, say("Their grain went on "+plural(len(below), "unit")+" more: "+refsOf(below, traceLoads)+", "+lostShare(lostOf(l, below), len(below))+"."))
	}
	v.nextLook(s, append(slices.Clone(v.Units), below...))
}

func inRuns(units []kitchen.UnitRef) string {
	if n := runsOf(units); n > 1 {
		return ", in " + strconv.Itoa(n) + " loads"
	}
	return ""
}

// mostBack is how many steps back a sentence names.
const mostBack = 4

// origin says what something came from, step by step.
func (v TraceView) origin(n kitchen.Node) chat.Para {
	l := v.Lineage
	line := l.Line(n)
	var names []string
	if len(line) == 0 {
		if c, ok := l.Culture(n); ok {
			return say("Nobody said where it came from. Made " + dateOf(v.Now, c.Made) + ended(c, v.Now) + ".")
		}
		return say("The book knows only the name.")
	}
	if _, species := kitchen.SpeciesNamed(line[0].Name); species && line[0].Name != "" {
		return say("On it is {}: nobody said which culture.", NodeName(l, line[0]))
	}
	text := "It came from "
	for i, up := range line {
		if i == mostBack && len(line) > mostBack+1 {
			text += ", in the end from {}"
			names = append(names, NodeName(l, line[len(line)-1]))
			break
		}
		if i > 0 {
			text += ", that from "
		}
		text += "{}"
		names = append(names, NodeName(l, up)+badBefore(l, up))
	}
	text += "."
	if g := l.Generation(n); g > 0 && n.IsUnit() {
		text += " Generation " + strconv.Itoa(g) + "."
	}
	if c, ok := l.Culture(n); ok && !c.Ended.IsZero() {
		text += " " + capital(endWord(c.How)) + " " + dateOf(v.Now, c.Ended) + "."
	}
	return say(text, names...)
}

// ended is what became of a culture, behind a comma.
func ended(c kitchen.Culture, now time.Time) string {
	if c.Ended.IsZero() {
		return ""
	}
	return ", " + endWord(c.How) + " " + dateOf(now, c.Ended)
}

// badBefore says of a parent that it went bad.
func badBefore(l kitchen.Lineage, n kitchen.Node) string {
	if c, ok := l.Culture(n); ok && c.How == kitchen.CultureWentBad {
		return " (went bad)"
	}
	if u, ok := l.Unit(n); ok && u.Loss.What == kitchen.UnitContaminated {
		return " (went bad)"
	}
	return ""
}

// forward says what was taken of it, one step on, and how much went on from there.
func (v TraceView) forward(s *sheet) {
	l := v.Lineage
	var units []kitchen.UnitRef
	var cultures []string
	for _, n := range l.Forward(v.Of) {
		if n.IsUnit() {
			units = append(units, n.Unit)
		} else {
			cultures = append(cultures, NodeName(l, n))
		}
	}
	if len(cultures) > 0 {
		shown := cultures[:min(len(cultures), mostBack)]
		rest := ""
		if n := len(cultures) - len(shown); n > 0 {
			rest = " and " + strconv.Itoa(n) + " more"
		}
		s.add(must, say("Taken of it: "+strings.TrimSuffix(strings.Repeat("{}, ", len(shown)), ", ")+rest+".", shown...))
	}
	all := l.Tree(v.Of).Units()
	further := len(all) - len(units)
	if v.Of.IsUnit() {
		further-- // itself
	}
	text := ""
	if len(units) > 0 {
		text = "It went on " + plural(len(units), "unit")
		if v.Of.IsUnit() {
			text = "Its grain went on " + plural(len(units), "unit")
		}
	}
	switch {
	case further > 0 && text != "":
		text += ", from there on " + strconv.Itoa(further) + " more"
	case further > 0:
		text = "From these it went on " + plural(further, "unit")
	}
	if text != "" {
		s.add(must, say(text+":"))
	}
	v.links(s)
}

// mostLinks is how many parents further on are named.
const mostLinks = 3

// links says what came from what further on, where that is little.
func (v TraceView) links(s *sheet) {
	l := v.Lineage
	from := map[kitchen.Node][]kitchen.UnitRef{}
	var parents []kitchen.Node
	for _, ref := range l.Tree(v.Of).Units() {
		p, ok := l.Back(kitchen.UnitNode(ref))
		if !ok || p == v.Of || ref == v.Of.Unit {
			continue
		}
		if from[p] == nil {
			parents = append(parents, p)
		}
		from[p] = append(from[p], ref)
	}
	if len(parents) > mostLinks {
		return
	}
	for _, p := range parents {
		s.add(may, say(refsOf(from[p], traceLoads)+" came from {}.", NodeName(l, p)))
	}
}

// beside tells of what came from the same parent.
func (v TraceView) beside(s *sheet) {
	l := v.Lineage
	parent, ok := l.Back(v.Of)
	if _, species := kitchen.SpeciesNamed(parent.Name); !ok || species && parent.Name != "" {
		return // what has only its species in common is no kin
	}
	var all, stand []kitchen.UnitRef
	for _, n := range l.Siblings(v.Of) {
		if u, ok := l.Unit(n); ok {
			all = append(all, n.Unit)
			if u.State.Lives() {
				stand = append(stand, n.Unit)
			}
		}
	}
	if len(all) == 0 {
		return
	}
	text := plural(len(all), "unit") + " more came from {}, " + lostShare(lostOf(l, all), len(all))
	if len(all) == 1 {
		text = all[0].String() + " came from {} too"
		if lostOf(l, all) == 1 {
			text += ", and was lost"
		}
	} else if len(stand) > 0 {
		text += "; still standing: " + refsOf(stand, traceLoads)
	}
	s.add(should, say(text+".", NodeName(l, parent)))
}

// sources says what the units came from, the one with most of them first.
func (v TraceView) sources() chat.Para {
	l := v.Lineage
	count := map[kitchen.Node]int{}
	var order []kitchen.Node
	for _, ref := range v.Units {
		if p, ok := l.Back(kitchen.UnitNode(ref)); ok {
			if count[p] == 0 {
				order = append(order, p)
			}
			count[p]++
		}
	}
	if len(order) == 0 {
		return nil
	}
	slices.SortStableFunc(order, func(a, b kitchen.Node) int { return count[b] - count[a] })
	text := "On them: "
	var names []string
	for i, n := range order {
		if i == mostBack {
			text += ", and more"
			break
		}
		if i > 0 {
			text += ", "
		}
		text += "{} (" + strconv.Itoa(count[n]) + ")"
		names = append(names, NodeName(l, n))
	}
	return say(text+".", names...)
}

// mostFates is how many fates have a line of their own.
const mostFates = 4

// fates lists how and where the units are. Of many fates the last are but counted.
func (v TraceView) fates(s *sheet, units []kitchen.UnitRef) {
	all := fatesOf(v.Lineage, units)
	shown := len(all)
	if shown > v.told+1 || v.told < mostFates {
		shown = min(v.told, shown)
	}
	for _, f := range all[:shown] {
		s.add(must, f.words())
	}
	var rest []string
	for _, f := range all[shown:] {
		rest = append(rest, strconv.Itoa(len(f.units))+" "+f.short())
	}
	if len(rest) > 0 {
		head := "Also "
		if shown == 0 {
			head = "Of these "
		}
		s.add(must, say(head+listed(rest)+"."))
	}
}

// buttons lead one step back.
func (v TraceView) buttons(units []kitchen.UnitRef) []chat.Button {
	var out []chat.Button
	parent, ok := v.Lineage.Back(v.Of)
	outside := parent.Name != "" && !v.Of.IsUnit() // who a culture came from is no culture
	if ok && v.Of != (kitchen.Node{}) && !outside {
		out = append(out, traceTap(NodeName(v.Lineage, parent)))
	}
	if v.Of.IsUnit() {
		out = append(out, tap("Log "+v.Of.Unit.String(), "log "+v.Of.Unit.String()))
	} else if len(units) > 0 && len(out) > 0 {
		out = append(out, tap("Trace "+units[0].String(), "trace "+units[0].String()))
	}
	return out
}

// widestTap is how many letters the label of a button has.
const widestTap = 16

func traceTap(name string) chat.Button {
	label := "Trace " + name
	if len([]rune(label)) > widestTap {
		label = "Trace parent"
	}
	return tap(label, "trace "+name)
}

// TreeTitle names the picture of a tree, TreeFile its file.
func TreeTitle(v TraceView) string {
	if v.Of == (kitchen.Node{}) {
		return capital(v.Label) + ": what came from it"
	}
	return cultureHead(NodeName(v.Lineage, v.Of)) + " and its kin"
}

// TreeFile is the name of the file of a picture.
func TreeFile(v TraceView) string {
	name := v.Label
	if v.Of != (kitchen.Node{}) {
		name = NodeName(v.Lineage, v.Of)
	}
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			return r
		case r == ' ' || r == '.' || r == '-':
			return '-'
		}
		return -1
	}, strings.ToLower(name))
	if clean == "" {
		clean = "tree"
	}
	return "trace-" + clean + ".png"
}

// TreeMore counts branches that have no room in the picture.
func TreeMore(n int) string { return "and " + whole(float64(n)) + " more" }

// NothingTraced says that nobody gave anything that name.
func NothingTraced(name string) chat.Post {
	return with(theirs(say("I know no culture called {}, and nothing with {} on it.", name, name), say("Like: `trace plate 7`, `trace 12.3`, `trace rye lot 3`")), tap("Cultures", "cultures"))
}
