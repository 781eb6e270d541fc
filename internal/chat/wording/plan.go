package wording

import (
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// PlanView is a plan to be said, with what belongs to the moment.
type PlanView struct {
	Plan kitchen.Plan
	// Now is when it was asked, in the kitchen's zone.
	Now time.Time
	// Settings are those it was worked out in.
	Settings kitchen.Settings
	// Start is the latest start and OutBy the deadline, when one was given.
	Start, OutBy time.Time
	// First is set for the first plan this collective is told, which names what
	// was taken for granted; FirstBags for the first with bags of 5 lb and more.
	First, FirstBags Newness
	// FirstFit is set when they are first asked what their cooker takes.
	FirstFit Newness
	// Smaller is an order of as much grain that can be cooked here, when this one
	// can't; nil if there is none.
	Smaller *kitchen.Order
	// Was is the order that this plan corrects; nil when it corrects none.
	Was *kitchen.Order
}

// Newness tells whether something is said to a collective for the first time.
type Newness uint8

// A thing is New to them, or Known.
const (
	Known Newness = iota + 1
	New
)

// Plan says what to weigh, how long to hold and what else the order asks for.
func Plan(v PlanView) chat.Post {
	p := v.Plan
	post := chat.Post{Loudness: chat.Answer}
	if len(p.Lines) == 1 {
		post.Blocks = append(post.Blocks, oneLine(p.Lines[0])...)
	} else {
		post.Blocks = append(post.Blocks, severalLines(p)...)
	}
	if v.Was != nil {
		post.Blocks = append(post.Blocks, say("Changed, was: "+orderWords(*v.Was)+"."))
	}
	post.Blocks = append(post.Blocks, gypsum(p)...)
	if p.Hold.Time == 0 {
		return with(post, tap("Why", "why"))
	}
	post.Blocks = append(post.Blocks, holdLine(v)...)
	if p.Hold.TooLong {
		return smaller(post, v)
	}
	post.Blocks = append(post.Blocks, waterAndLoads(v)...)
	post.Blocks = append(post.Blocks, notes(v)...)
	return nextStep(post, v)
}

// smaller ends a plan that this cooker can't do here with one that it can.
func smaller(post chat.Post, v PlanView) chat.Post {
	if v.Smaller == nil {
		return with(post, tap("Why", "why"))
	}
	post.Blocks = append(post.Blocks, say("Next: as much grain in smaller ones, "+orderWords(*v.Smaller)+"."))
	return with(post, tap("Smaller ones", phrase.Plan{Order: *v.Smaller}.String()), tap("Why", "why"))
}

// nextStep ends a plan with the one thing to do now.
func nextStep(post chat.Post, v PlanView) chat.Post {
	if !v.Start.IsZero() {
		post.Blocks = append(post.Blocks, say("Next: be told when to start."))
		return with(post, tap("Ping me then", "ping me then"), tap("Cook it", "cook it"), tap("Why", "why"))
	}
	post.Blocks = append(post.Blocks, say("Next: weigh it out, then `cook it`."))
	return with(post, tap("Cook it", "cook it"), tap("Why", "why"))
}

// oneLine says a plan of one item: amounts first, then what they are for.
func oneLine(l kitchen.Line) []chat.Block {
	n := l.Item.Count
	each := "**" + amounts(l) + "**"
	var out []chat.Block
	switch {
	case l.Item.Container.Vessel == 0:
		out = append(out, say(each+"."))
	case n == 1:
		out = append(out, say("In the "+l.Item.Container.Vessel.String()+": "+each+"."))
	default:
		out = append(out, say("Each "+l.Item.Container.Vessel.String()+": "+each+"."))
		all := l
		all.Each = l.All
		out = append(out, say("All "+strconv.Itoa(n)+": **"+amounts(all)+"**."))
	}
	out = append(out, say(taken(l)+"."))
	return append(out, say(result(l)))
}

// amounts is what to weigh out. Soaked grain takes water in plenty, so only the
// grain is weighed.
func amounts(l kitchen.Line) string {
	dry := grams(l.Each.Dry) + " " + l.Grain.String()
	if l.Method == kitchen.Soaked {
		return dry + ", dry"
	}
	return dry + " + " + grams(l.Each.Water) + " water"
}

// taken echoes an item as it was understood, with what was not said.
func taken(l kitchen.Line) string {
	s := many(l.Item.Count, l.Item.Container)
	if l.Item.Container.Vessel == 0 {
		s = massAsSaid(l.Item.Mass) + " of " + basisWord(l.Item.Basis)
	}
	if l.Route != 0 {
		s += ", " + routeWord(l.Route)
	}
	switch l.GrainOrigin {
	case kitchen.Said:
		s += ", " + l.Grain.String()
	case kitchen.Own:
		s += ", " + l.Grain.String() + " as usual"
	case kitchen.Default:
		s += "; " + l.Grain.String() + " (none said)"
	}
	if l.Route == 0 && l.Method == kitchen.Measured && l.RatioOrigin != kitchen.Said {
		s += "; no route: " + ratio(l.Ratio) + " water"
	}
	return s
}

func basisWord(b kitchen.Basis) string {
	if b == kitchen.DryBasis {
		return "dry grain"
	}
	return "wetted grain"
}

func routeWord(r kitchen.Route) string {
	switch r {
	case kitchen.LiquidCulture:
		return "LC"
	case kitchen.Agar:
		return "agar"
	case kitchen.GrainToGrain:
		return "grain to grain"
	case kitchen.Spores:
		return "spores"
	case 0:
		return "no route"
	}
	panic("route " + r.String())
}

// result is what the grain weighs in the end, and how moist it is.
func result(l kitchen.Line) string {
	per := ""
	if l.Item.Container.Vessel != 0 {
		per = " a " + l.Item.Container.Vessel.String()
	}
	if l.Method == kitchen.Soaked {
		return "Soak, simmer in plenty of water, drain: " + grams(l.Each.Wetted) + per + ", about " + percent(l.Moisture) + " moisture."
	}
	return "Wetted " + grams(l.Each.Wetted) + per + ", " + percent(l.Moisture) + " moisture."
}

// severalLines says a plan of several items as one table: one container, then
// all of its kind, then everything together.
func severalLines(p kitchen.Plan) []chat.Block {
	head := "**" + kilos(p.All.Dry) + " grain + " + kilos(p.All.Water) + " water** in all."
	if soaksAll(p) {
		head = "**" + kilos(p.All.Dry) + " dry grain** in all."
	}
	out := []chat.Block{say(head)}
	table := chat.Table{Align: []chat.Align{chat.Left, chat.Right, chat.Right}}
	table.Rows = append(table.Rows, []string{"", "dry", "water"})
	for _, l := range p.Lines {
		table.Rows = append(table.Rows, amountRow(short(l.Item.Container), l, l.Each.Dry, l.Each.Water))
		if l.Item.Count > 1 {
			table.Rows = append(table.Rows, amountRow("× "+strconv.Itoa(l.Item.Count), l, l.All.Dry, l.All.Water))
		}
	}
	out = append(out, table)
	for _, l := range p.Lines {
		out = append(out, say(taken(l)+": "+grams(l.Each.Wetted)+" wetted, "+percent(l.Moisture)+" moisture."))
	}
	if anySoaked(p) {
		out = append(out, say("Soaked grain: simmer in plenty of water, drain, then fill by weight."))
	}
	return out
}

func amountRow(label string, l kitchen.Line, dry, water unit.Grams) []string {
	if l.Method == kitchen.Soaked {
		return []string{label, grams(dry), "soak"}
	}
	return []string{label, grams(dry), grams(water)}
}

// short names a container within nine columns or so, for the first column of a
// table.
func short(c kitchen.Container) string {
	switch c.Vessel {
	case kitchen.Jar:
		if c.Volume > 0 {
			return jarSize(c.Volume)
		}
		return massAsSaid(c.Weight) + nb + "jar"
	case kitchen.Bag:
		return massAsSaid(c.Weight) + nb + "bag"
	case 0:
		return "loose"
	}
	panic("vessel " + c.Vessel.String())
}

func soaksAll(p kitchen.Plan) bool {
	for _, l := range p.Lines {
		if l.Method != kitchen.Soaked {
			return false
		}
	}
	return true
}

func anySoaked(p kitchen.Plan) bool {
	for _, l := range p.Lines {
		if l.Method == kitchen.Soaked {
			return true
		}
	}
	return false
}

// gypsum says how much of it goes in, where the kitchen uses it.
func gypsum(p kitchen.Plan) []chat.Block {
	if p.Gypsum == 0 {
		return nil
	}
	if len(p.Lines) == 1 && p.Lines[0].Item.Count > 1 {
		l := p.Lines[0]
		return []chat.Block{say("Gypsum " + finePercent(l.GypsumShare) + ": " + grams(l.GypsumEach) + " a " +
			l.Item.Container.Vessel.String() + ", " + grams(l.GypsumAll) + " in all.")}
	}
	return []chat.Block{say("Gypsum: " + grams(p.Gypsum) + " in all.")}
}

// holdLine says how long at which pressure, and for how high a kitchen.
func holdLine(v PlanView) []chat.Block {
	h := v.Plan.Hold
	where := "at " + height(v.Settings.Height())
	if v.Settings.Height() == 0 {
		where = "at sea level"
	}
	if h.TooLong {
		return []chat.Block{
			say("**Not with this cooker at this height**: " + minutes(h.Base) + " at sea level become " + span(h.Time) + " at " + psi(h.At) + ", " + where + "."),
			say(tooLongAdvice(h)),
		}
	}
	text := "Hold **" + minutes(h.Time) + "** at " + psi(h.At)
	switch h.Origin {
	case kitchen.Said:
		text += ", as you said"
	case kitchen.Own:
		text += ", your own figure"
	case kitchen.Default:
		text += ", " + where
	}
	text += "."
	out := []chat.Block{say(text)}
	if h.Short() {
		out = append(out, say("**Caution**: shorter than the default here, "+minutes(h.Usual)+". Less is killed."))
	}
	if h.Origin == kitchen.Default && h.Higher > 0 {
		out = append(out, say(higherAdvice(h)))
	}
	return out
}

func tooLongAdvice(h kitchen.Hold) string {
	if h.WithinRating {
		return "Its rating allows more: " + psi(h.Higher) + " does it in " + minutes(h.Base) + ". Say `we cook at " + upTo(1, h.Higher.PSI()) + " psi`."
	}
	return "Smaller containers, or a cooker rated for " + psi(h.Higher) + ", which does it in " + minutes(h.Base) + "."
}

func higherAdvice(h kitchen.Hold) string {
	if h.WithinRating {
		return "Or " + psi(h.Higher) + " for " + minutes(h.Base) + ", as it is rated."
	}
	return "Or " + psi(h.Higher) + " for " + minutes(h.Base) + ", if so rated."
}

// waterAndLoads says what goes under the rack, how many loads it makes and when
// the last is done.
func waterAndLoads(v PlanView) []chat.Block {
	loads := v.Plan.Loads
	most := loads.Each[0].Water
	for _, l := range loads.Each {
		most = max(most, l.Water)
	}
	water := "Under the rack: **" + litres(most) + " water**"
	if len(loads.Each) > 1 {
		water += ", each load"
	}
	out := []chat.Block{say(water + ".")}
	if len(loads.Each) > 1 {
		for i, l := range loads.Each {
			if i == maxLoadLines && len(loads.Each) > maxLoadLines+1 {
				out = append(out, say("And "+strconv.Itoa(len(loads.Each)-i)+" loads more."))
				break
			}
			out = append(out, say("Load "+strconv.Itoa(i+1)+": "+contents(l)+"."))
		}
	}
	return append(out, say(finish(v)))
}

// maxLoadLines is how many loads a plan lists one by one.
const maxLoadLines = 4

func contents(l kitchen.Load) string {
	var parts []string
	for _, c := range l.Parts {
		parts = append(parts, many(c.Count, c.Container))
	}
	return listed(parts)
}

// finish says when the last load stands at zero: from now, or before the
// deadline that was given.
func finish(v PlanView) string {
	loads := v.Plan.Loads
	count := "One load"
	if len(loads.Each) > 1 {
		count = whole(float64(len(loads.Each))) + nb + "loads"
	}
	if !v.Start.IsZero() {
		return "**Light it by " + clock(v.Now, v.Start) + "**: " + lower(count) + ", " + span(loads.Finish) + ", out by " + clock(v.Now, v.OutBy) + "."
	}
	if v.Plan.Unfitted() {
		count = "If it fits"
	}
	return count + ", lit now: out about " + clock(v.Now, round10(v.Now.Add(loads.Finish))) + "."
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

// near prints an instant of a run, which lies within days: with the weekday when it
// isn't today's, with the date when that is no longer plain.
func near(now, t time.Time) string {
	if d := t.Sub(now); d > 6*24*time.Hour || d < -6*24*time.Hour {
		return clock(now, t)
	}
	t = t.In(now.Location())
	if now.YearDay() == t.YearDay() {
		return t.Format("15:04")
	}
	return t.Format("Mon 15:04")
}

// until prints the end of a time of which the beginning was printed.
func until(now, from, to time.Time) string {
	from, to = from.In(now.Location()), to.In(now.Location())
	if from.YearDay() == to.YearDay() && from.Year() == to.Year() {
		return to.Format("15:04")
	}
	return near(now, to)
}
