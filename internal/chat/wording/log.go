package wording

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Story is what the story of a run and that of a unit are both told from.
type Story struct {
	// Run is the one of which it is told, or which made the unit; the zero Run of a unit
	// that arrived.
	Run kitchen.Run
	// Photos are those that were kept with what was said of it, the oldest first.
	Photos []LogPhoto
	// Now is in the kitchen's zone.
	Now time.Time
	Who func(kitchen.MemberNo) string
}

// LogView is the story of a run to be told.
type LogView struct {
	Story
	// Units are its jars and bags; the zero Units where nothing is told of them.
	Units kitchen.Units
}

// Log tells the story of a run: what was reached, then who said what when, and
// what nobody saw. What doesn't fit beside it is [LogFigures], behind a button.
func Log(v LogView) chat.Post {
	post := v.log()
	post.Files = photoFiles(v.Run.No.String(), v.Photos, v.Now)
	return post
}

func (v LogView) log() chat.Post {
	all := v.sheet(mostTold)
	all.add(must, v.dips())
	v.figures(all)
	all.then(nil, v.unitTaps()...)
	if all.whole() {
		return all.post(chat.Answer)
	}
	for told := mostTold; ; told-- {
		s := v.sheet(told)
		s.then(nil, append(v.unitTaps(), tap("Figures", "why"))...)
		if told == fewestTold || s.whole() {
			return s.post(chat.Answer)
		}
	}
}

// LogFigures is the rest of the story of a run: the losses, F0 of the steam, what
// was read, the water.
func LogFigures(v LogView) chat.Post {
	var s sheet
	s.add(must, v.reached())
	s.add(must, v.dips())
	v.figures(&s)
	return s.post(chat.Answer)
}

// mostTold and fewestTold are how many steps a story tells; the last ones matter
// most.
const (
	mostTold   = 16
	fewestTold = 4
)

func (v LogView) sheet(told int) *sheet {
	r := v.Run
	var s sheet
	s.add(must, say("**"+r.No.String()+"** {}, "+r.Begun.In(v.Now.Location()).Format("Mon 2 Jan")+": "+stageAt(r, v.Now)+". "+capital(orderWords(r.Order))+".", cookerShort(r.Cooker)))
	s.add(must, v.reached())
	s.add(must, v.story(told))
	s.add(must, v.units())
	s.add(must, photosShown(v.Photos, v.Now))
	return &s
}

func (v LogView) figures(s *sheet) {
	s.add(should, v.lethality())
	s.add(should, v.readings())
	s.add(should, v.water())
	if len(v.Run.Strays) > 0 {
		s.add(may, say("Can't be so beside these: "+strays(v.Run.Strays)+"."))
	}
}

// strays names the records that can't be so.
func strays(all []kitchen.Stray) string {
	var out []string
	for _, s := range all {
		out = append(out, kindWord(kindOf(s.Record.Entry.(kitchen.RunEntry))))
	}
	return listed(out)
}

// reached is what became of the hold: of the last one that ended, else of the one
// that runs.
func (v LogView) reached() chat.Para {
	r := v.Run
	if off, ok := r.Ended(); ok {
		return reached(r, off, r.Begun.In(v.Now.Location()))
	}
	if end, ok := r.HoldEnd(); ok {
		had := r.CreditAt(v.Now).Hold
		return say("**" + whole(had.Truncate(time.Minute).Minutes()) + " of " + minutes(r.Hold.Time) + "** held so far, heat off " + near(v.Now, end) + ".")
	}
	return nil
}

// story is who said what when, and what nobody saw: Ana: 09:45 heat on; steam not
// seen; Jo: 10:35 weight on.
func (v LogView) story(told int) chat.Para {
	var steps []kitchen.Step
	for _, st := range v.Run.Steps {
		if inStory(st.Kind) {
			steps = append(steps, st)
		}
	}
	left := max(0, len(steps)-told)
	var parts, names []string
	teller := ""
	if left > 0 {
		parts = append(parts, strconv.Itoa(left)+" earlier")
	}
	day := v.Run.Begun.In(v.Now.Location())
	for _, same := range byTeller(steps[left:]) {
		if !same[0].Seen {
			parts = append(parts, stepWords(same)+" not seen")
			continue
		}
		part := ""
		if name := called(v.Who, same[0].By); name != teller {
			part, names, teller = "{}: ", append(names, name), name
		}
		for i, st := range same {
			if i > 0 {
				part += ", "
			}
			if st.To != 0 && st.To != st.By {
				gave := "gave it to {}"
				if v.heldBefore(st) == st.To {
					gave = "left it with {}"
				}
				part, names = part+near(day, st.At)+nb+gave, append(names, called(v.Who, st.To))
			} else {
				part += near(day, st.At) + nb + stepWord(st)
			}
			day = st.At.In(v.Now.Location())
		}
		parts = append(parts, part)
	}
	return say(strings.Join(parts, "; ")+".", names...)
}

// byTeller parts steps where another tells them, or nobody does.
func byTeller(steps []kitchen.Step) [][]kitchen.Step {
	var out [][]kitchen.Step
	for _, st := range steps {
		n := len(out) - 1
		if n < 0 || out[n][0].By != st.By || out[n][0].Seen != st.Seen {
			out = append(out, nil)
			n++
		}
		out[n] = append(out[n], st)
	}
	return out
}

// heldBefore is who watched the run just before a step.
func (v LogView) heldBefore(st kitchen.Step) kitchen.MemberNo {
	holder := v.Run.Steps[0].By
	for _, s := range v.Run.Steps {
		if s == st {
			break
		}
		if s.To != 0 && (s.Kind == kitchen.KindTookOver || s.Kind == kitchen.KindHandAccepted) {
			holder = s.To
		}
	}
	return holder
}

func stepWords(steps []kitchen.Step) string {
	var out []string
	for _, st := range steps {
		out = append(out, stepWord(st))
	}
	return listed(out)
}

// inStory reports whether a kind of step is told in the story; readings and water
// have lines of their own.
func inStory(k kitchen.Kind) bool {
	return !slices.Contains([]kitchen.Kind{
		kitchen.KindGaugeRead, kitchen.KindDipped, kitchen.KindTempRead, kitchen.KindWaterIn, kitchen.KindWaterLeft,
		kitchen.KindHandOffered, kitchen.KindPingAnswered,
	}, k)
}

// stepWord is a step as people say it.
func stepWord(st kitchen.Step) string {
	if st.Kind == kitchen.KindPrepBegun && st.Prep != 0 {
		return prepWord(st.Prep)
	}
	if st.Kind == kitchen.KindPrepEnded && st.Prep != 0 {
		return prepWord(st.Prep) + " done"
	}
	return kindWord(st.Kind)
}

// dips tells of the times when pressure was lost.
func (v LogView) dips() chat.Para {
	var out []string
	day := v.Run.Begun.In(v.Now.Location())
	for _, d := range v.Run.Dips {
		text := near(day, d.From)
		if !d.To.IsZero() {
			text += " to " + until(day, d.From, d.To)
		}
		if d.Low != nil {
			text += ", down to " + psi(*d.Low)
		} else {
			text += ", depth not told"
		}
		out = append(out, text)
	}
	if len(out) == 0 {
		return nil
	}
	text := "Lost " + strings.Join(out, "; ") + "."
	if broken := v.Run.CreditAt(v.Now).Broken; broken >= time.Minute {
		text += " " + capital(minutes(broken)) + " held before, not counted."
	}
	return say(text)
}

// lethality is F0 of the steam around the containers, and no pass mark.
func (v LogView) lethality() chat.Para {
	f0 := v.Run.CreditAt(v.Now).F0
	if f0 < 6*time.Second {
		return nil
	}
	return say("F0 of the steam around them about " + twoFigures(f0.Minutes()) + nb + "min: not of their middle, no pass mark.")
}

// twoFigures prints a number with at most two figures that mean something.
func twoFigures(v float64) string {
	if v <= 0 {
		return "0"
	}
	digits := 1 - int(math.Floor(math.Log10(v)))
	if digits > 0 {
		return upTo(digits, v)
	}
	step := math.Pow(10, float64(-digits))
	return whole(math.Round(v/step) * step)
}

// maxReadings is how many readings a story tells.
const maxReadings = 4

func (v LogView) readings() chat.Para {
	all := v.Run.Readings
	var out []string
	day := v.Run.Begun.In(v.Now.Location())
	for _, m := range all[max(0, len(all)-maxReadings):] {
		out = append(out, warmth(m.Temp)+placeWord(m.Where)+" "+near(day, m.At))
		day = m.At.In(v.Now.Location())
	}
	if len(out) == 0 {
		return nil
	}
	return say("Read " + strings.Join(out, ", ") + ".")
}

func placeWord(p kitchen.Place) string {
	switch p {
	case kitchen.Skin:
		return " outside"
	case kitchen.Between:
		return " between"
	case kitchen.Middle:
		return " in the middle"
	case 0:
		return ""
	}
	panic("place without words")
}

func (v LogView) water() chat.Para {
	w := v.Run.Water
	text := "Water: " + litres(w.In) + " in"
	if w.Assumed {
		text = "Water: " + litres(w.In) + " taken, nobody told"
	}
	if w.Left != nil {
		text += ", " + litres(*w.Left) + " left"
	}
	return say(text + ".")
}

// RunsView is a list of runs, the newest first.
type RunsView struct {
	Runs []kitchen.Run
	// Mine is true when only the speaker's own were asked for.
	Mine bool
	Now  time.Time
	Who  func(kitchen.MemberNo) string
}

// maxRuns is how many runs a list shows.
const maxRuns = 6

// Runs lists the last runs and what was reached.
func Runs(v RunsView) chat.Post {
	var s sheet
	if len(v.Runs) == 0 && v.Mine {
		return with(lines("You have cooked no run yet."), tap("Log", "log"))
	}
	if len(v.Runs) == 0 {
		return lines("No run in the book yet.", "Next: ask for a plan, then `cook it`.")
	}
	s.add(must, say("**Last runs**, newest first"))
	for i, r := range v.Runs {
		if i == maxRuns {
			break
		}
		s.add(should, say("**"+r.No.String()+"** "+r.Begun.In(v.Now.Location()).Format("2 Jan")+" {}, "+ending(r), called(v.Who, r.Cook)))
	}
	no := v.Runs[0].No
	s.then(say("Next: one of them, like `"+logOf(no)+"`"), tap("Log "+no.String(), logOf(no)))
	return s.post(chat.Answer)
}

// ending is what became of a run, in a few words.
func ending(r kitchen.Run) string {
	if r.Stage == kitchen.StageCalledOff {
		return "called off"
	}
	off, ok := r.Ended()
	if !ok {
		return stageWord(r.Stage)
	}
	switch off.Outcome {
	case kitchen.Held:
		return "held " + minutes(off.Credit.Hold)
	case kitchen.Early:
		return "early, " + heldOf(off)
	case kitchen.Unseen:
		return "hold not seen"
	}
	panic("outcome without words")
}
