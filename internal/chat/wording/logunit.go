package wording

import (
	"iter"
	"slices"
	"strconv"
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// LogUnitView is the story of a unit to be told.
type LogUnitView struct {
	Story
	Unit kitchen.Unit
}

// LogUnit tells the story of a unit: how it stands, then day by day who saw or did
// what, the newest last, and what nobody saw. A story that is longer than a screen
// is told by its beginning and its end; what lies between is counted.
func LogUnit(v LogUnitView) chat.Post {
	days := v.days()
	s := v.sheet(days, fold{})
	for f := range folds(len(days)) {
		if s.whole() {
			break
		}
		s = v.sheet(days, f)
	}
	p := s.post(chat.Answer)
	p.Files = photoFiles(v.Unit.Ref.String(), v.Photos, v.Now)
	return p
}

// fold is which days of a story are only counted: from one to before another; the
// zero fold is none.
type fold struct{ from, to int }

// folds are the folds of a story of so many days, each more than the one before. The
// first two days, of the cook and the culture, are told as long as they can be, the
// last one always.
func folds(days int) iter.Seq[fold] {
	return func(yield func(fold) bool) {
		for to := 4; to < days; to++ { // a line for a line saves nothing
			if !yield(fold{2, to}) {
				return
			}
		}
		if days > 2 {
			yield(fold{1, days - 1})
		}
	}
}

func (v LogUnitView) sheet(days []storyDay, f fold) *sheet {
	var s sheet
	s.add(must, v.head())
	s.add(should, v.details())
	for _, d := range days[:f.from] {
		s.add(must, v.day(d))
	}
	if f.from < f.to {
		s.add(must, v.between(days[f.from:f.to]))
	}
	for _, d := range days[f.to:] {
		s.add(must, v.day(d))
	}
	s.add(must, photosShown(v.Photos, v.Now))
	s.then(nil, v.taps()...)
	return &s
}

// head is what the unit is and how it stands.
func (v LogUnitView) head() chat.Para {
	u := v.Unit
	text, names := "**"+u.Ref.String()+"**", []string{}
	if u.Name != "" {
		text, names = text+" {},", append(names, u.Name)
	}
	text += " **" + unitStands(u) + "**: " + one(u.Container)
	if u.Grain != 0 {
		text += ", " + u.Grain.String()
	}
	switch {
	case u.Culture != "":
		text, names = text+", {}", append(names, u.Culture)
		if u.Species != "" && !strings.EqualFold(u.Species, u.Culture) {
			text, names = text+" ({})", append(names, u.Species)
		}
	case u.From != (kitchen.UnitRef{}):
		text += ", grain of " + u.From.String()
	}
	return say(text+".", names...)
}

// unitStands is how a unit stands, in a word or two.
func unitStands(u kitchen.Unit) string {
	text := u.State.String()
	switch {
	case u.State == kitchen.UnitDead:
		text = "nothing grew"
	case u.State == kitchen.UnitDiscarded:
		text = "thrown out"
	case u.State == kitchen.UnitGrowing && u.Share > 0:
		text += " " + percent(u.Share)
	}
	if u.Blank {
		text += ", the blank"
	}
	if u.Left > 0 && u.Left < 1 && u.State.Stands() {
		text += ", " + percent(u.Left) + " left"
	}
	if !u.State.Stands() && u.Loss.What != 0 {
		text += ", " + map[kitchen.UnitState]string{kitchen.UnitContaminated: "contaminated", kitchen.UnitDead: "nothing grew"}[u.Loss.What]
	}
	return text
}

// details are where it is and what is known of it beside its story.
func (v LogUnitView) details() chat.Para {
	u := v.Unit
	var parts, names []string
	if u.Place != "" && u.State.Stands() {
		parts, names = append(parts, "it stands: {}"), append(names, u.Place)
	}
	if u.Spot != 0 {
		parts = append(parts, "in the load: "+spotWord(u.Spot))
	}
	for _, l := range u.Lots {
		parts, names = append(parts, l.What.String()+": {}"), append(names, l.Name)
	}
	for _, tag := range u.Tags {
		parts, names = append(parts, "{}"), append(names, "#"+tag)
	}
	if len(parts) == 0 {
		return nil
	}
	return say(capital(strings.Join(parts, "; "))+".", names...)
}

func spotWord(s kitchen.Spot) string {
	switch s {
	case kitchen.TopLayer:
		return "at the top"
	case kitchen.BottomLayer:
		return "at the bottom"
	case kitchen.InnerOnes:
		return "in the middle"
	case kitchen.OuterOnes:
		return "at the outside"
	}
	panic("spot without words")
}

// storyDay are the steps of one day, in the order in which they happened.
type storyDay []kitchen.UnitStep

// days are the steps of the story by their days.
func (v LogUnitView) days() []storyDay {
	var out []storyDay
	for _, st := range v.Unit.Steps {
		if !inUnitStory(st.Kind) {
			continue
		}
		n := len(out) - 1
		if n < 0 || v.date(out[n][0]) != v.date(st) {
			out = append(out, nil)
			n++
		}
		out[n] = append(out[n], st)
	}
	return out
}

func (v LogUnitView) date(st kitchen.UnitStep) string { return dateOf(v.Now, st.At) }

// inUnitStory reports whether a kind is told in the story; what a unit is called and
// made of stands above it.
func inUnitStory(k kitchen.UnitKind) bool {
	return !slices.Contains([]kitchen.UnitKind{kitchen.SaidLot, kitchen.SaidStood, kitchen.SaidNamed, kitchen.SaidTagged}, k)
}

// mostOfDay is how many steps of one day are told: its first one and its last ones.
const mostOfDay = 5

// day is one day of the story: 9 Mar: Ana put oyster on it. Jo saw green mould.
func (v LogUnitView) day(d storyDay) chat.Para {
	var sentences, names []string
	teller, last := kitchen.MemberNo(0), ""
	for i, st := range d {
		if more := len(d) - mostOfDay; more > 0 && i > 0 && i <= more {
			if i == more {
				sentences, teller = append(sentences, strconv.Itoa(more)+" more"), 0
			}
			continue
		}
		did, theirs := v.step(st)
		switch {
		case !byName(st):
			sentences, teller = append(sentences, did), 0
		case teller != 0 && st.By == teller && did == last && len(theirs) == 0:
			continue
		case teller != 0 && st.By == teller:
			sentences[len(sentences)-1] += ", " + did
		default:
			sentences, names, teller = append(sentences, "{} "+did), append(names, called(v.Who, st.By)), st.By
		}
		names, last = append(names, theirs...), did
	}
	for i := range sentences[1:] {
		sentences[i+1] = capital(sentences[i+1])
	}
	return say(v.date(d[0])+": "+strings.Join(sentences, ". ")+".", names...)
}

// byName reports whether a step is somebody's doing or seeing, and not what became of
// the whole load or what nobody reported.
func byName(st kitchen.UnitStep) bool {
	return st.Seen && st.Kind != kitchen.SaidArrived && st.Kind != kitchen.SaidCooked && st.Kind != kitchen.SaidGone
}

// between counts what is not told: 10 to 20 Mar: shaken 3 times, growth seen.
func (v LogUnitView) between(days []storyDay) chat.Para {
	times := map[kitchen.UnitKind]int{}
	var order []kitchen.UnitKind
	for _, d := range days {
		for _, st := range d {
			if times[st.Kind] == 0 {
				order = append(order, st.Kind)
			}
			times[st.Kind]++
		}
	}
	var parts []string
	for _, k := range order {
		part := betweenWord(k)
		if times[k] > 1 {
			part += " " + strconv.Itoa(times[k]) + nb + "times"
		}
		parts = append(parts, part)
	}
	last := days[len(days)-1]
	span := v.date(days[0][0])
	if end := v.date(last[0]); end != span {
		span += " to " + end
	}
	return say(span + ": " + listed(parts) + ".")
}

// taps offer the load, and where a unit with a culture comes from and went.
func (v LogUnitView) taps() []chat.Button {
	no := v.Unit.Ref.String()
	load := v.Unit.Ref.Run.String()
	taps := []chat.Button{tap("Log "+load, "log "+load)}
	if v.Unit.Cultured {
		taps = append(taps, tap("Trace "+no, "trace "+no))
	}
	return taps
}
