package wording

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// CultureView is something told or asked of one culture.
type CultureView struct {
	Culture kitchen.Culture
	// Lineage has what it came from.
	Lineage kitchen.Lineage
	// Also are those that were told of in the same breath.
	Also []kitchen.Culture
	// Already are units that had its name on them before it was told of.
	Already []kitchen.UnitRef
	// Waiting is cooked grain of the newest load that waits for a culture; no units for
	// none.
	Waiting kitchen.Ref
	// Kin are the units that it went on, of one that turned out bad; nil for none.
	Kin *KinView
	Now time.Time // in the kitchen's zone
	Who func(kitchen.MemberNo) string
}

// CultureMade says that a culture is in the book now, and what was understood of it.
func CultureMade(v CultureView) chat.Post {
	var s sheet
	c := v.Culture
	names := []string{cultureHead(c.Name)}
	for _, a := range v.Also {
		names = append(names, a.Name)
	}
	is := "is"
	if len(names) > 1 {
		is = "are"
	}
	s.add(must, say("**"+holes(len(names))+"** "+is+" in the book.", names...))
	s.add(must, v.facts())
	v.old(&s)
	v.ofBad(&s)
	if n := len(v.Already); n > 0 {
		counts := "count"
		if n == 1 {
			counts = "counts"
		}
		s.add(must, say("**"+refsOf(v.Already, traceLoads)+"** "+counts+" as it: its name was put on before."))
	}
	if c.From != "" && c.Parent == 0 {
		s.add(should, say("{} is no culture in the book: taken as said.", cultureHead(c.From)))
	}
	if c.Species == "" && c.Parent == 0 && c.FromUnit == (kitchen.UnitRef{}) {
		s.add(should, say("**What grows on it?** Undo, and say it again with `, oyster` at its end"))
	}
	s.then(v.putOn(), tap("Undo", "undo"), traceTap(c.Name))
	return s.post(chat.Answer)
}

// putOn says how to tell that it was put on, of jars that wait for a culture: typed as
// it stands, it says what a reader expects.
func (v CultureView) putOn() chat.Para {
	if len(v.Waiting.Units) == 0 {
		return say("Put it on something? Say so with the number, once there is cooked grain.")
	}
	return say("Next: put it on? `" + v.Waiting.String() + " " + typable(v.Culture.Name) + "`")
}

// ofBad says that what the culture was taken of is bad.
func (v CultureView) ofBad(s *sheet) {
	parent, _ := v.Lineage.Back(kitchen.Node{Culture: v.Culture.No})
	if u, ok := v.Lineage.Unit(parent); ok && (u.State == kitchen.UnitSuspect || u.Loss.What != 0) {
		s.add(must, badUnit(u.Ref.String()))
	}
	if c, ok := v.Lineage.Culture(parent); ok && c.How == kitchen.CultureWentBad {
		s.add(must, badCulture(c.Name))
	}
}

// typable is a name as it is shown in an example, without marks of our own.
func typable(name string) string { return strings.NewReplacer("`", "'", "*", "").Replace(name) }

// holes are places for so many names: {}, {} and {}.
func holes(n int) string {
	if n == 1 {
		return "{}"
	}
	return strings.TrimSuffix(strings.Repeat("{}, ", n-1), ", ") + " and {}"
}

// facts are what is known of a culture, on a line.
func (v CultureView) facts() chat.Para {
	c := v.Culture
	var parts, names []string
	if c.Kind != 0 && !saysKind(c) {
		parts = append(parts, kindNoun(c.Kind))
	}
	if c.Species != "" && !strings.EqualFold(c.Species, c.Name) {
		parts, names = append(parts, "{}"), append(names, c.Species)
	}
	if c.FromUnit != (kitchen.UnitRef{}) {
		parts = append(parts, "from "+c.FromUnit.String())
	} else if c.From != "" {
		parts, names = append(parts, "from {}"), append(names, c.From)
	}
	if c.Volume > 0 {
		parts = append(parts, cultureVolume(c.Volume))
	}
	if g := v.generation(); g > 0 {
		parts = append(parts, "generation "+strconv.Itoa(g))
	}
	if c.Owner != 0 {
		parts, names = append(parts, "{}'s"), append(names, called(v.Who, c.Owner))
	}
	parts = append(parts, "made "+v.made())
	if strings.HasPrefix(parts[0], "{}") {
		names[0] = cultureHead(names[0])
	}
	return say(capital(strings.Join(parts, ", "))+".", names...)
}

// saysKind reports whether the name of a culture says what it lives in.
func saysKind(c kitchen.Culture) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(c.Name)), func(w string) bool {
		return w == kindNoun(c.Kind) || c.Kind == kitchen.LiquidBottle && (w == "lc" || w == "bottle") || c.Kind == kitchen.Plate && w == "agar"
	})
}

// cultureHead is a name at the beginning of a sentence.
func cultureHead(name string) string {
	if rest, ok := strings.CutPrefix(name, "lc "); ok {
		return "LC " + rest
	}
	return capital(name)
}

// made is the day on which it was made.
func (v CultureView) made() string {
	made := v.Culture.Made.In(v.Now.Location())
	if made.YearDay() == v.Now.YearDay() && made.Year() == v.Now.Year() {
		return "today"
	}
	return dateOf(v.Now, made)
}

func (v CultureView) generation() int {
	return v.Lineage.Generation(kitchen.Node{Culture: v.Culture.No})
}

// old warns of a culture that was carried on too often.
func (v CultureView) old(s *sheet) {
	if g := v.generation(); g >= kitchen.OldGeneration-1 {
		s.add(must, say("**Grain it goes on is generation "+strconv.Itoa(g+1)+"**: most stop at "+strconv.Itoa(kitchen.OldGeneration-1)+". Each step copies what hides in it."))
	}
}

// kindNoun is what people call a culture of a kind.
func kindNoun(k kitchen.CultureKind) string {
	switch k {
	case kitchen.LiquidBottle:
		return "liquid culture"
	case kitchen.Plate:
		return "plate"
	case kitchen.GrainMaster:
		return "master"
	case kitchen.Syringe:
		return "syringe"
	case 0:
		return "culture"
	}
	panic("kind " + k.String())
}

// cultureVolume prints how much there is of a liquid: 500 ml, 1.5 L.
func cultureVolume(l unit.Litres) string {
	if l < 1 {
		return upTo(0, l.Millilitres()) + nb + "ml"
	}
	return upTo(2, float64(l)) + nb + "L"
}

// CultureEnded says that a culture is no more, and of a bad one what it went on.
func CultureEnded(v CultureView) chat.Post {
	var s sheet
	names := []string{cultureHead(v.Culture.Name)}
	for _, a := range v.Also {
		names = append(names, a.Name)
	}
	head := say("**"+holes(len(names))+" "+endWord(v.Culture.How)+"**"+v.endedWhen()+".", names...)
	s.add(must, head)
	if v.Kin != nil {
		s.add(must, kinPara(*v.Kin))
	} else if v.Culture.How == kitchen.CultureWentBad {
		s.add(must, say("It went on nothing that still grows. Throw it out sealed."))
	}
	s.then(nil, tap("Undo", "undo"), traceTap(v.Culture.Name))
	return s.post(chat.Answer)
}

func (v CultureView) endedWhen() string {
	if v.Now.Sub(v.Culture.Ended) < time.Minute {
		return ""
	}
	if at := v.Culture.Ended.In(v.Now.Location()); at.Hour() == 23 && at.Minute() == 59 {
		return ", " + at.Format("Mon 2 Jan") // only the day was said
	}
	return ", " + near(v.Now, v.Culture.Ended)
}

// Culture tells of one culture.
func Culture(v CultureView) chat.Post {
	var s sheet
	c := v.Culture
	age := "new"
	if d := daysOld(c.Made, v.Now); d > 0 {
		age = plural(d, "day") + " old"
	}
	if !c.Ended.IsZero() {
		age = endWord(c.How) + " " + dateOf(v.Now, c.Ended)
	}
	s.add(must, say("**{}: "+age+"**.", cultureHead(c.Name)))
	s.add(must, v.facts())
	if tainted := taintOf(v.Lineage, c); tainted != "" {
		s.add(must, say("**{} went bad**: it may be bad, too.", cultureHead(tainted)))
	}
	v.old(&s)
	s.then(nil, traceTap(c.Name), tap("Cultures", "cultures"))
	return s.post(chat.Answer)
}

// daysOld counts whole days.
func daysOld(from, now time.Time) int { return int(now.Sub(from).Hours() / 24) }

// CulturesView are the cultures of a collective.
type CulturesView struct {
	All     kitchen.Cultures
	Lineage kitchen.Lineage
	// Kind is set when only those of one were asked for.
	Kind kitchen.CultureKind
	Now  time.Time
	Who  func(kitchen.MemberNo) string
}

// mostCultures is how many cultures a list shows.
const mostCultures = 7

// Cultures lists the living cultures, the newest first, and counts those that ended.
func Cultures(v CulturesView) chat.Post {
	var s sheet
	var living []kitchen.Culture
	ended, bad := 0, 0
	for _, c := range slices.Backward(v.All.All) {
		switch {
		case v.Kind != 0 && c.Kind != v.Kind:
		case c.Ended.IsZero():
			living = append(living, c)
		default:
			ended++
			if c.How == kitchen.CultureWentBad {
				bad++
			}
		}
	}
	noun := kindNoun(v.Kind)
	if len(living) == 0 {
		s.add(must, say("**No "+noun+"** in the book that is still there."))
	} else {
		s.add(must, say("**"+plural(len(living), noun)+"**, newest first:"))
	}
	for _, c := range living[:min(len(living), mostCultures)] {
		s.add(should, v.row(c))
	}
	if n := len(living) - mostCultures; n > 0 {
		s.add(must, say("And "+strconv.Itoa(n)+" older. By kind: `which plates do we have`"))
	}
	if ended > 0 {
		text := plural(ended, "more") + " ended"
		if ended > 1 {
			text = strconv.Itoa(ended) + " more ended"
		}
		if len(living) == 0 {
			text = strconv.Itoa(ended) + " ended"
		}
		if bad > 0 {
			text += ", " + strconv.Itoa(bad) + " of them bad"
		}
		s.add(must, say(text+"."))
	}
	if len(living) > 0 {
		s.then(say("Next: one of them, like `trace "+typable(living[0].Name)+"`"), traceTap(living[0].Name))
	} else {
		s.then(say("Next: tell one, like `plate 7 from plate 3` or `new lc 4, oyster, 500 ml`"))
	}
	return s.post(chat.Answer)
}

// row is a culture on a line or two.
func (v CulturesView) row(c kitchen.Culture) chat.Para {
	text, names := "**{}**", []string{cultureHead(c.Name)}
	if c.Species != "" && !strings.EqualFold(c.Species, c.Name) {
		text, names = text+" {}", append(names, c.Species)
	}
	if d := daysOld(c.Made, v.Now); d > 0 {
		text += ", " + plural(d, "day")
	} else {
		text += ", today"
	}
	if g := v.Lineage.Generation(kitchen.Node{Culture: c.No}); g > 0 {
		text += ", generation " + strconv.Itoa(g)
	}
	if c.Volume > 0 {
		text += ", " + cultureVolume(c.Volume)
	}
	if c.Owner != 0 {
		text, names = text+", {}", append(names, called(v.Who, c.Owner))
	}
	if tainted := taintOf(v.Lineage, c); tainted != "" {
		text, names = text+"; {} went bad", append(names, tainted)
	}
	return say(text, names...)
}

// taintOf is what a culture came from that went bad; empty for nothing.
func taintOf(l kitchen.Lineage, c kitchen.Culture) string {
	if up, ok := l.Tainted(kitchen.Node{Culture: c.No}); ok {
		return NodeName(l, up)
	}
	return ""
}

// NoSuchCulture says that no culture has a name, and names some that there are.
func NoSuchCulture(name string, known []string) chat.Post {
	if len(known) == 0 {
		return theirs(say("I know no culture called {}, and no other yet. Nothing was written.", name), say("Tell one, like `plate 7 from plate 3`"))
	}
	shown := known[:min(len(known), mostBack)]
	return with(theirs(say("I know no culture called {}. Nothing was written.", name), say("Known here: "+holes(len(shown))+".", shown...)), tap("Cultures", "cultures"))
}

// CultureOwnerUnknown asks for the owner of a culture by a name that is known.
func CultureOwnerUnknown(name string) chat.Post {
	return theirs(say("I know nobody here called {}. Nothing was written.", name), say("Who is here: `members`. Yours? `plate 7 from plate 3, mine`"))
}

// isEnded is what became of a culture, as a verb.
func isEnded(e kitchen.CultureEnd) string {
	switch e {
	case kitchen.CultureUsedUp:
		return "is used up"
	case kitchen.CultureThrownOut:
		return "was thrown out"
	case kitchen.CultureWentBad:
		return "went bad"
	}
	return "has ended"
}

// UndoneCulture names an entry about a culture that was taken back.
func UndoneCulture(e kitchen.CultureEntry) string {
	switch e := e.(type) {
	case kitchen.CultureMade:
		return "that " + typable(e.Name) + " was made."
	case kitchen.CultureEnded:
		return "that " + typable(e.Name) + " " + isEnded(e.How) + "."
	}
	panic("culture without words")
}
