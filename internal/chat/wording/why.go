package wording

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// section is a part of the working, with the numbers that it explains.
type section struct {
	part    phrase.Part
	numbers []float64
	blocks  []chat.Block
}

// Why shows the working of a plan: formula, numbers, where each comes from. With
// a number or a part it shows what explains that; without, the amounts, and the
// rest behind buttons, for a screen is small.
func Why(p kitchen.Plan, s kitchen.Settings, asked phrase.Why) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	all := sections(p, s)
	for _, part := range all {
		if asked.Part == part.part || asked.Number > 0 && part.explains(asked.Number) {
			post.Blocks = append(post.Blocks, part.blocks...)
		}
	}
	if len(post.Blocks) > 0 {
		return post
	}
	for _, part := range all[:len(p.Lines)] {
		post.Blocks = append(post.Blocks, part.blocks...)
	}
	if p.Hold.Time == 0 {
		return post
	}
	return with(post,
		tap("Why the hold", phrase.Why{Part: phrase.PartHold}.String()), tap("Why the water", phrase.Why{Part: phrase.PartWater}.String()))
}

// sections are the working of a plan: one for each line, the hold, the water.
func sections(p kitchen.Plan, s kitchen.Settings) []section {
	var out []section
	for _, l := range p.Lines {
		out = append(out, section{
			part: phrase.PartAmounts,
			numbers: []float64{
				float64(l.Each.Dry), float64(l.Each.Water), float64(l.Each.Wetted), float64(l.All.Dry), float64(l.All.Water),
				float64(l.All.Wetted), l.Moisture.Percent(), float64(l.Ratio), float64(l.GypsumEach), float64(l.GypsumAll),
			},
			blocks: whyAmounts(l, s),
		})
	}
	if p.Hold.Time == 0 {
		return out
	}
	for _, h := range holdsOf(p) {
		out = append(out, section{
			part:    phrase.PartHold,
			numbers: []float64{h.Time.Minutes(), h.Base.Minutes(), h.Usual.Minutes(), h.At.PSI(), h.Higher.PSI()},
			blocks:  whyHold(h, s, p.Cooker),
		})
	}
	return append(out, section{part: phrase.PartWater, numbers: waters(p), blocks: whyWater(p)})
}

// holdsOf is the holds of the loads, each once, the ruling one first.
func holdsOf(p kitchen.Plan) []kitchen.Hold {
	out := []kitchen.Hold{p.Hold}
	for _, l := range p.Loads.Each {
		if !slices.ContainsFunc(out, func(h kitchen.Hold) bool { return h.Time == l.Hold.Time }) {
			out = append(out, l.Hold)
		}
	}
	return out
}

// wettest is the load that needs the most water.
func wettest(p kitchen.Plan) kitchen.Load {
	return slices.MaxFunc(p.Loads.Each, func(a, b kitchen.Load) int { return cmp.Compare(a.Water, b.Water) })
}

func waters(p kitchen.Plan) []float64 {
	var out []float64
	for _, l := range p.Loads.Each {
		out = append(out, float64(l.Water))
	}
	return out
}

// explains reports whether a number was shown that this section works out.
func (s section) explains(number float64) bool {
	for _, n := range s.numbers {
		if n > 0 && math.Abs(n-number) < 0.051 || math.Round(n) == number && n > 1 {
			return true
		}
	}
	return false
}

// whyAmounts is the working of one line.
func whyAmounts(l kitchen.Line, s kitchen.Settings) []chat.Block {
	out := []chat.Block{say("**" + title(l) + "**"), say(whyMass(l, s))}
	if l.Method == kitchen.Soaked {
		out = append(out, whySoaked(l)...)
	} else {
		out = append(out, whyMeasured(l)...)
	}
	if l.Item.Container.Vessel == kitchen.Bag {
		out = append(out, say("Large bags run drier than jars."))
	}
	if l.Step < s.ScaleStep() {
		out = append(out, say("Finer than your "+upTo(1, float64(s.ScaleStep()))+nb+"g steps, for so little."))
	}
	return out
}

// whyMeasured is the working where the water is weighed out.
func whyMeasured(l kitchen.Line) []chat.Block {
	r := exact(float64(l.Ratio))
	var out []chat.Block
	if l.Basis == kitchen.DryBasis {
		out = append(out, say("Water = r × dry = "+r+" × "+tenths(l.Exact.Dry)+" = "+tenths(l.Exact.Water)+"; wetted "+tenths(l.Exact.Wetted)+"."))
	} else {
		out = append(out,
			say("Dry = wetted / (1 + r) = "+tenths(l.Exact.Wetted)+" / "+exact(1+float64(l.Ratio))+" = "+tenths(l.Exact.Dry)+"."),
			say("Water = r × dry = "+r+" × "+tenths(l.Exact.Dry)+" = "+tenths(l.Exact.Water)+"."))
	}
	return append(out,
		say("r "+r+": "+ratioFrom(l)+"."),
		say("Shown in steps of "+upTo(1, float64(l.Step))+nb+"g: "+weighed(l.Each.Dry)+" + "+weighed(l.Each.Water)+"."),
		say("Moisture = (m0 + r) / (1 + r) = "+finePercent(l.Moisture)+", "+stored(l)+"."))
}

// whySoaked is the working where the grain takes up what it will. Its water is not
// weighed out, so none is shown.
func whySoaked(l kitchen.Line) []chat.Block {
	k := exact(1 + float64(l.Ratio))
	var out []chat.Block
	if l.Basis == kitchen.DryBasis {
		out = append(out, say("Drained = k × dry = "+k+" × "+tenths(l.Exact.Dry)+" = "+tenths(l.Exact.Wetted)+"."))
	} else {
		out = append(out, say("Dry = drained / k = "+tenths(l.Exact.Wetted)+" / "+k+" = "+tenths(l.Exact.Dry)+"."))
	}
	return append(out,
		say("k "+k+" is drained weight per dry weight: "+soakedFrom(l.RatioOrigin)+"."),
		say("Shown in steps of "+upTo(1, float64(l.Step))+nb+"g: "+weighed(l.Each.Dry)+"."),
		say("Moisture = 1 − (1 − m0) / k = "+finePercent(l.Moisture)+", "+stored(l)+"."))
}

// stored is the moisture as bought, and where it comes from.
func stored(l kitchen.Line) string {
	return "m0 " + finePercent(l.Stored) + " as bought (" + originWord(l.StoredFrom) + ")"
}

func title(l kitchen.Line) string {
	if l.Item.Container.Vessel == 0 {
		return l.Grain.String()
	}
	return many(l.Item.Count, l.Item.Container) + ", " + l.Grain.String()
}

// whyMass says where the weight of grain in a container comes from.
func whyMass(l kitchen.Line, s kitchen.Settings) string {
	c := l.Item.Container
	switch {
	case l.Item.Mass > 0:
		return "Taken: " + massAsSaid(l.Item.Mass) + " of " + basisWord(l.Basis) + ", as said."
	case c.Vessel == kitchen.Jar && l.FillLike.Wetted > 0:
		return "A " + one(c) + " holds " + tenths(l.Exact.Wetted) + " wetted, filled as your " + one(l.FillLike.Container) + ": " +
			massAsSaid(l.FillLike.Wetted) + " × " + litresFine(float64(c.Volume)) + " / " + litresFine(float64(l.FillLike.Container.Volume)) + "."
	case c.Vessel == kitchen.Jar && l.FillOrigin == kitchen.Own:
		return "A " + one(c) + " holds " + tenths(l.Exact.Wetted) + " wetted, as you weighed it."
	case c.Vessel == kitchen.Jar && c.Volume > 0:
		return "A " + one(c) + ": " + litresFine(float64(c.Volume)) + " less " + percent(s.Empty()) + " headspace × 0.68" + nb + "kg/L = " +
			tenths(l.Exact.Wetted) + " (common practice: weigh one, `a quart jar holds 480 g`)."
	case c.Vessel == kitchen.Bag && l.Basis == kitchen.DryBasis:
		return "A " + one(c) + " takes " + massAsSaid(c.Weight) + " of dry grain here: " + tenths(l.Exact.Dry) + "."
	case c.Vessel == kitchen.Bag:
		return "A " + one(c) + " takes " + massAsSaid(c.Weight) + " of wetted grain, " + tenths(l.Exact.Wetted) + ". If yours means dry: `bags mean dry`"
	}
	return "Wetted: " + tenths(l.Exact.Wetted) + "."
}

func litresFine(l float64) string { return upTo(3, l) + nb + "L" }

func ratioFrom(l kitchen.Line) string {
	switch {
	case l.Item.Moisture > 0:
		m, m0 := exact(float64(l.Item.Moisture)), exact(float64(l.Stored))
		return "for " + finePercent(l.Item.Moisture) + " moisture, (m − m0) / (1 − m) = (" + m + " − " + m0 + ") / (1 − " + m + ")"
	case l.RatioOrigin == kitchen.Said:
		return "as you said"
	case l.RatioOrigin == kitchen.Own:
		return "your own figure"
	case l.Route == 0:
		return "no route was said (common practice 0.40 to 0.46)"
	}
	return "usual for " + routeWord(l.Route) + " (common practice)"
}

func soakedFrom(o kitchen.Origin) string {
	if o == kitchen.Own {
		return "yours, as you weighed it"
	}
	return "common practice; to set yours: `5 kg rye came out 9.4`"
}

func originWord(o kitchen.Origin) string {
	switch o {
	case kitchen.Said:
		return "as said"
	case kitchen.Own:
		return "your own figure"
	case kitchen.Default:
		return "taken: a usual figure"
	}
	panic("origin " + strconv.Itoa(int(o)))
}

// whyHold is the working of a hold.
func whyHold(h kitchen.Hold, s kitchen.Settings, k kitchen.CookerIs) []chat.Block {
	out := []chat.Block{say("**Hold** " + minutes(h.Time) + ", ruled by the " + one(h.For) + ".")}
	switch {
	case h.Origin == kitchen.Said:
		out = append(out, say("As you said with the order."))
	case h.Like.Sized():
		out = append(out, say("Your own figure for the "+one(h.Like)+", for a larger one needs no less; the default here is "+minutes(h.Usual)+"."))
	case h.Origin == kitchen.Own:
		out = append(out, say("Your kitchen's own figure, not scaled."))
	case h.Origin == kitchen.Default:
		out = append(out, say("Common practice is "+minutes(h.Base)+" at 15"+nb+"psi and sea level. No published source: sources give 90 to 240 for bags."))
	}
	out = append(out, say("Steam at "+psi(h.At)+" and "+height(s.Height())+": "+celsius(h.Temperature)+" (ISO 2533 atmosphere, IAPWS-IF97 saturation), if the air is out."))
	if h.Origin == kitchen.Default && h.Usual > h.Base {
		out = append(out, say("Colder than the reference 121"+nb+"°C, so longer by equal lethality, z 10"+nb+"°C, rounded up: an upper bound. A longer hold can boil the pot dry: check the water."))
	}
	if h.Higher > 0 && h.Rating == kitchen.RatingForbids {
		out = append(out, say(psi(h.Higher)+" would do it in "+minutes(h.Base)+", but this cooker's rating is "+psi(k.MaxGauge)+"."))
	}
	return append(out, say("This says what the steam does, not what the middle of a big bag gets."))
}

// whyWater is the working of the water under the rack, for the load that needs the
// most.
func whyWater(p kitchen.Plan) []chat.Block {
	l := wettest(p)
	w := p.Cooker.WaterSum(l.Hold.Time)
	from := "taken"
	if w.RateFrom == kitchen.Own {
		from = "yours"
	}
	return []chat.Block{
		say("**Water** " + litres2(w.Vent) + " venting + " + litres2(w.BoiledOff) + " boiled off (" + minutes(l.Hold.Time) + " × " + upTo(2, float64(w.Rate)) + nb + "L/h, " + from +
			") + " + litres2(w.TakenUp) + " taken up + " + litres2(w.Left) + " left = " + litres2(w.Sum()) + nb + "L."),
		say(whatDecides(w, l)),
		say("The maker's line comes first."),
	}
}

// whatDecides says whether the sum, the least or the maker's figure is the water.
func whatDecides(w kitchen.WaterSum, l kitchen.Load) string {
	switch {
	case w.Maker > w.Sum() && w.Maker > w.Least:
		return "The maker asks for " + litres(w.Maker) + ", and that decides."
	case w.Least > w.Sum():
		return litres(w.Least) + " is the least " + leastFor(l.Hold.Time) + " (common practice), and that decides."
	}
	return "Rounded up: " + litres(l.Water) + "."
}

// leastFor names the row of the least water: 3 L to 90 min, 4 to 150, 5 beyond.
func leastFor(hold time.Duration) string {
	switch {
	case hold <= 90*time.Minute:
		return "to 90" + nb + "min"
	case hold <= 150*time.Minute:
		return "to 150" + nb + "min"
	}
	return "beyond 150" + nb + "min"
}

func litres2(l unit.Litres) string { return upTo(2, float64(l)) }

func tenths[T ~float64](g T) string { return upTo(1, float64(g)) + nb + "g" }

// NoWhy says that there is no working to show yet.
func NoWhy() chat.Post {
	return lines("Nothing worked out yet. Ask for a plan, like `3 bags 5lb agar`, then `why`.")
}
