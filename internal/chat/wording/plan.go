package wording

import (
	"strconv"
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
	// Day is the day that it is for, when no hour was said; zero for now.
	Day time.Time
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

// orderChanged says what an order was before, or only in which cooker it is now.
func orderChanged(was, now kitchen.Order) chat.Para {
	if before := orderWords(was); was.Cooker == now.Cooker || before != orderWords(now) {
		return say("Changed, was: " + before + ".")
	}
	return say("**In {}** now.", cookerOf(now.Cooker))
}

// Plan says what to weigh, how long to hold and what else the order asks for.
// What can't be done at all, and what was changed, stands before the amounts.
func Plan(v PlanView) chat.Post {
	p := v.Plan
	post := chat.Post{Loudness: chat.Answer}
	if p.Hold.TooLong {
		post.Blocks = tooLong(v)
	}
	if v.Was != nil {
		post.Blocks = append(post.Blocks, orderChanged(*v.Was, p.Order))
	}
	if len(p.Lines) == 1 {
		post.Blocks = append(post.Blocks, oneLine(p.Lines[0])...)
	} else {
		post.Blocks = append(post.Blocks, severalLines(p)...)
	}
	post.Blocks = append(post.Blocks, gypsum(p)...)
	switch {
	case p.Hold.Time == 0:
		return with(post, tap("Why", "why"))
	case p.Hold.TooLong:
		return smaller(post, v)
	}
	post.Blocks = append(post.Blocks, holdLines(v)...)
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
	if !v.Day.IsZero() {
		post.Blocks = append(post.Blocks, say("Next: at what hour on **"+v.Day.Format("Mon 2 Jan")+"**? Say `start at 10:00` or `out by 20:30`"))
		return with(post, tap("Why", "why"))
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
	dry := weighed(l.Each.Dry) + " " + l.Grain.String()
	if l.Method == kitchen.Soaked {
		return dry + ", dry"
	}
	return dry + " + " + weighed(l.Each.Water) + " water"
}

// taken echoes an item as it was understood, with what was not said.
func taken(l kitchen.Line) string {
	s := itemWords(l.Item, l.Basis)
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

// itemWords names the containers of an item, or its loose grain, and the grain in
// each where the size doesn't tell.
func itemWords(it kitchen.Item, basis kitchen.Basis) string {
	c := it.Container
	if c.Vessel == 0 {
		return massAsSaid(it.Mass) + " of " + basisWord(basis)
	}
	if !c.Sized() {
		c.Weight = it.Mass
	}
	s := many(it.Count, c)
	kind := " wetted"
	if basis == kitchen.DryBasis {
		kind = " dry"
	}
	switch {
	case it.Mass > 0 && it.Mass != c.Weight:
		s += ", " + massAsSaid(it.Mass) + kind + " in each"
	case basis == kitchen.DryBasis && c.Volume == 0:
		s += kind
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
	if l.FillLike.Wetted > 0 {
		per += ", filled as your " + one(l.FillLike.Container)
	}
	if l.Method == kitchen.Soaked {
		return "Soak, simmer in plenty of water, drain: " + weighed(l.Each.Wetted) + per + ", about " + percent(l.Moisture) + " moisture."
	}
	return "Wetted " + weighed(l.Each.Wetted) + per + ", " + percent(l.Moisture) + " moisture."
}

// severalLines says a plan of several items as one table: one container, then
// all of its kind, then everything together.
func severalLines(p kitchen.Plan) []chat.Block {
	out := []chat.Block{say(inAll(p))}
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
		out = append(out, say(taken(l)+": "+weighed(l.Each.Wetted)+" wetted, "+percent(l.Moisture)+" moisture."))
	}
	if anySoaked(p) {
		out = append(out, say("Soaked grain: simmer in plenty of water, drain, then fill by weight."))
	}
	return out
}

func amountRow(label string, l kitchen.Line, dry, water unit.Grams) []string {
	if l.Method == kitchen.Soaked {
		return []string{label, weighed(dry), "soak"}
	}
	return []string{label, weighed(dry), weighed(water)}
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

// inAll is what is weighed out for several items together: what soaked grain
// takes up is not.
func inAll(p kitchen.Plan) string {
	var water unit.Grams
	soaked := 0
	for _, l := range p.Lines {
		if l.Method == kitchen.Soaked {
			soaked++
			continue
		}
		water += l.All.Water
	}
	switch soaked {
	case 0:
		return "**" + kilos(p.All.Dry) + " grain + " + kilos(water) + " water** in all."
	case len(p.Lines):
		return "**" + kilos(p.All.Dry) + " dry grain** in all."
	}
	return "**" + kilos(p.All.Dry) + " dry grain, " + kilos(water) + " water to measure** in all."
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
		return []chat.Block{say("Gypsum " + finePercent(l.GypsumShare) + ": " + weighed(l.GypsumEach) + " a " +
			l.Item.Container.Vessel.String() + ", " + weighed(l.GypsumAll) + " in all.")}
	}
	return []chat.Block{say("Gypsum: " + weighed(p.Gypsum) + " in all.")}
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
