package wording

import (
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// holdLines says how long at which pressure, and for how high a kitchen. Loads of
// different holds say their own below.
func holdLines(v PlanView) []chat.Block {
	h := v.Plan.Hold
	if shortest := shortestHold(v.Plan.Loads); shortest < h.Time {
		out := []chat.Block{say("Hold **" + whole(shortest.Minutes()) + " to " + minutes(h.Time) + "** at " + psi(h.At) + ", by load.")}
		return append(out, cautions(v)...)
	}
	text := "Hold **" + minutes(h.Time) + "** at " + psi(h.At)
	switch h.Origin {
	case kitchen.Said:
		text += ", as you said"
	case kitchen.Own:
		text += ", " + ownHold(h)
	case kitchen.Default:
		text += ", " + where(v.Settings)
	}
	out := append([]chat.Block{say(text + ".")}, cautions(v)...)
	if h.Origin == kitchen.Default && h.Higher > 0 && h.Rating != kitchen.RatingForbids {
		out = append(out, say(higherAdvice(h)))
	}
	return out
}

func ownHold(h kitchen.Hold) string {
	if h.Like.Sized() {
		return "as for your " + one(h.Like)
	}
	return "your own figure"
}

func where(s kitchen.Settings) string {
	if s.Height() == 0 {
		return "at sea level"
	}
	return "at " + height(s.Height())
}

func shortestHold(loads kitchen.Loads) time.Duration {
	shortest := loads.Each[0].Hold.Time
	for _, l := range loads.Each {
		shortest = min(shortest, l.Hold.Time)
	}
	return shortest
}

// cautions says which loads are held shorter than the default; those of one hold
// together.
func cautions(v PlanView) []chat.Block {
	var out []chat.Block
	var said kitchen.Hold
	for _, n := range v.Plan.Notes {
		n, ok := n.(kitchen.ShortHoldNote)
		if !ok || n.Hold.Time == said.Time && n.Hold.Usual == said.Usual {
			continue
		}
		said = n.Hold
		which := ""
		if shortestHold(v.Plan.Loads) < v.Plan.Hold.Time {
			which = ", " + one(n.Hold.For) + ", " + minutes(n.Hold.Time)
		}
		out = append(out, say("**Caution**"+which+": shorter than the default here, "+minutes(n.Hold.Usual)+". Less is killed."))
	}
	return out
}

// tooLong says that this cooker can't do it here, and what can.
func tooLong(v PlanView) []chat.Block {
	h := v.Plan.Hold
	out := []chat.Block{
		say("**Not with this cooker here**: " + minutes(h.Base) + " at 15" + nb + "psi and sea level become " + span(h.Time) + " at " + psi(h.At) + ", " + where(v.Settings) + "."),
	}
	advice := tooLongAdvice(h)
	if v.Smaller == nil {
		if h.Rating == kitchen.RatingForbids && h.AtReference == 0 && h.Higher > 0 {
			advice = "A cooker rated for " + psi(h.Higher) + " does it in " + minutes(h.Base) + "."
		}
		advice = strings.TrimSpace(advice + " Smaller ones don't help.")
	}
	if advice != "" {
		out = append(out, say(advice))
	}
	return out
}

// tooLongAdvice is the pressure that would do it: first 15 psi, where the cooker is
// run below. What its rating forbids is not offered.
func tooLongAdvice(h kitchen.Hold) string {
	switch {
	case h.AtReference > 0 && h.Rating == kitchen.RatingForbids:
		return "A 15" + nb + "psi cooker does it in " + minutes(h.AtReference) + "."
	case h.AtReference > 0:
		return "At 15" + nb + "psi it takes " + minutes(h.AtReference) + "."
	}
	if h.Higher == 0 {
		return ""
	}
	switch h.Rating {
	case kitchen.RatingAllows:
		return "Its rating allows more: " + psi(h.Higher) + " does it in " + minutes(h.Base) + ". Say `we cook at " + upTo(1, h.Higher.PSI()) + " psi`."
	case kitchen.RatingUnsaid:
		return psi(h.Higher) + " does it in " + minutes(h.Base) + ", if so rated."
	case kitchen.RatingForbids:
		return ""
	}
	panic("rating " + strconv.Itoa(int(h.Rating)))
}

func higherAdvice(h kitchen.Hold) string {
	if h.Rating == kitchen.RatingAllows {
		return "Or " + psi(h.Higher) + " for " + minutes(h.Base) + ", as it is rated."
	}
	return "Or " + psi(h.Higher) + " for " + minutes(h.Base) + ", if so rated."
}

// waterAndLoads says what goes under the rack, what goes into each load and when
// the last is done.
func waterAndLoads(v PlanView) []chat.Block {
	loads := v.Plan.Loads.Each
	least, most := loads[0].Water, loads[0].Water
	for _, l := range loads {
		least, most = min(least, l.Water), max(most, l.Water)
	}
	water := "Under the rack: **" + litres(most) + " water**"
	switch {
	case least < most:
		water = "Under the rack: **" + upTo(1, float64(least)) + " to " + litres(most) + " water**, by load"
	case len(loads) > 1:
		water += ", each load"
	}
	out := []chat.Block{say(water + ".")}
	if len(loads) == 1 {
		return append(out, say(finish(v)))
	}
	for i := range loads {
		if i == maxLoadLines && len(loads) > maxLoadLines+1 {
			out = append(out, say("And "+strconv.Itoa(len(loads)-i)+" loads more, the last out "+lastOut(v)+"."))
			break
		}
		out = append(out, say(loadLine(v, i)))
	}
	if !v.Start.IsZero() {
		out = append(out, say(finish(v)))
	}
	return out
}

// lastOut is when the last load is out.
func lastOut(v PlanView) string {
	if !v.Start.IsZero() {
		return clock(v.Now, v.OutBy)
	}
	return clock(v.Now, round10(v.Now.Add(v.Plan.Loads.Finish)))
}

// maxLoadLines is how many loads a plan lists one by one.
const maxLoadLines = 3

// loadLine is one of several loads: what is in it, its hold and water where they
// are not those of all, when it is lit and when it is out.
func loadLine(v PlanView, i int) string {
	l, at := v.Plan.Loads.Each[i], v.Plan.Loads.At[i]
	text := "Load " + strconv.Itoa(i+1) + ": " + contents(l)
	if shortestHold(v.Plan.Loads) < v.Plan.Hold.Time {
		text += ", **" + minutes(l.Hold.Time) + "**, " + litres(l.Water)
	}
	if !v.Start.IsZero() {
		return text + ", lit " + clock(v.Now, v.Start.Add(at.Heat)) + ", out " + clock(v.Now, v.Start.Add(at.Zero)) + "."
	}
	text += ", lit " + clock(v.Now, round10(v.Now.Add(at.Heat))) + ", out " + clock(v.Now, round10(v.Now.Add(at.Zero)))
	if i == 0 {
		text += outMeans(v)
	}
	return text + "."
}

func contents(l kitchen.Load) string {
	var parts []string
	for _, c := range l.Parts {
		parts = append(parts, many(c.Count, c.Container))
	}
	return listed(parts)
}

// finish says when the only load is out, or by when the first must be lit for the
// deadline that was given.
func finish(v PlanView) string {
	loads := v.Plan.Loads
	count := "One load"
	switch {
	case v.Plan.Unfitted() && v.Start.IsZero():
		count = "If it fits"
	case v.Plan.Unfitted():
		count = "if it fits in one load"
	case len(loads.Each) > 1:
		count = whole(float64(len(loads.Each))) + nb + "loads"
	}
	if !v.Start.IsZero() {
		return "**Light it by " + clock(v.Now, v.Start) + "**: " + lower(count) + ", " + span(loads.Finish) + ", out by " + clock(v.Now, v.OutBy) + outMeans(v) + "."
	}
	if !v.Day.IsZero() {
		return count + ": " + span(loads.Finish) + " from lit to out" + outMeans(v) + "."
	}
	return count + ", lit now: out about " + lastOut(v) + outMeans(v) + "."
}

// outMeans says once what out means.
func outMeans(v PlanView) string {
	if v.First != New {
		return ""
	}
	return " (at zero, lid off)"
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// round10 is a time to ten minutes, for what is only about.
func round10(t time.Time) time.Time {
	minute := (t.Minute() + 5) / 10 * 10
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), minute, 0, 0, t.Location())
}

// clock prints a time of day, with the day when it isn't today's.
func clock(now, t time.Time) string {
	t = t.In(now.Location())
	if now.YearDay() == t.YearDay() && now.Year() == t.Year() {
		return t.Format("15:04")
	}
	return t.Format("Mon 2 Jan 15:04")
}

// TooLate says that a deadline can't be met, and offers the soonest that can.
func TooLate(r kitchen.TooLate, o kitchen.Order) chat.Post {
	soonest := up10(r.Soonest.Add(readingTakes))
	post := tooLate(r)
	by := phrase.Plan{Order: o, OutBy: moment(r.Now, soonest)}
	post.Blocks = append(post.Blocks, append(say("Next: "), chat.Code(phrase.OutBy{By: *by.OutBy}.String())))
	return with(post, tap("Out by "+soonest.Format("15:04"), by.String()))
}

// readingTakes is how long it may take to read an offer before it is taken.
const readingTakes = 2 * time.Minute

func tooLate(r kitchen.TooLate) chat.Post {
	loads := ""
	if r.Loads > 1 {
		loads = " for its " + whole(float64(r.Loads)) + nb + "loads"
	}
	return lines("**Too late for "+clock(r.Now, r.OutBy)+"**: it had to be lit by "+clock(r.Now, r.Start)+loads+".",
		"Lit now it is out about "+clock(r.Now, round10(r.Soonest))+".")
}

// up10 is a time up to the next ten minutes.
func up10(t time.Time) time.Time {
	if r := round10(t); !r.Before(t) {
		return r
	}
	return round10(t.Add(5 * time.Minute))
}

// moment is an instant ahead as somebody would say it now.
func moment(now, t time.Time) *phrase.Moment {
	m := phrase.Moment{Clock: &phrase.ClockTime{Hour: t.Hour(), Minute: t.Minute(), Half: true}}
	y, mo, d := now.Date()
	switch days := int(time.Date(t.Year(), t.Month(), t.Day(), 12, 0, 0, 0, time.UTC).Sub(time.Date(y, mo, d, 12, 0, 0, 0, time.UTC)).Hours() / 24); {
	case days == 1:
		m.Day = phrase.Day{Said: true, Shift: 1}
	case days > 1 && days < 7:
		m.Day = phrase.Day{Said: true, HasWeekday: true, Weekday: t.Weekday()}
	case days >= 7:
		m.Day = phrase.Day{Said: true, Month: t.Month(), Date: t.Day()}
	}
	return &m
}
