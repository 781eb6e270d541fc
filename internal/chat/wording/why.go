package wording

import (
	"math"
	"strconv"

	"ryebell/internal/calc/hydration"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// section is a part of the working, with the numbers that it explains.
type section struct {
	numbers []float64
	blocks  []chat.Block
}

// Why shows the working of a plan: formula, numbers, where each comes from. With
// a number it shows the part that explains it; without, the amounts, and the
// rest behind buttons, for a screen is small.
func Why(p kitchen.Plan, s kitchen.Settings, number float64) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	all := sections(p, s)
	for _, part := range all {
		if number > 0 && part.explains(number) {
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
		tap("Why the hold", "why "+plain(minutes(p.Hold.Time))),
		tap("Why the water", "why "+upTo(1, float64(p.Loads.Each[0].Water))+" litres"))
}

// sections are the working of a plan: one for each line, the hold, the water.
func sections(p kitchen.Plan, s kitchen.Settings) []section {
	var out []section
	for _, l := range p.Lines {
		out = append(out, section{
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
	h := p.Hold
	return append(out,
		section{numbers: []float64{h.Time.Minutes(), h.Base.Minutes(), h.At.PSI(), h.Higher.PSI()}, blocks: whyHold(h, s)},
		section{numbers: []float64{float64(p.Loads.Each[0].Water)}, blocks: whyWater(p)})
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
	out := []chat.Block{say("**" + title(l) + "**")}
	out = append(out, say(whyMass(l, s)))
	r := ratio(l.Ratio)
	if l.Method == kitchen.Soaked {
		k := ratio(l.Ratio + 1)
		out = append(out, say("Dry = wetted / k = "+grams(l.Exact.Wetted)+" / "+k+" = "+tenths(l.Exact.Dry)+". k is drained weight per dry weight: "+soakedFrom(l.RatioOrigin)+"."))
	} else {
		out = append(out,
			say("Dry = wetted / (1 + r) = "+grams(l.Exact.Wetted)+" / "+ratio(l.Ratio+1)+" = "+tenths(l.Exact.Dry)+"."),
			say("Water = r × dry = "+r+" × "+tenths(l.Exact.Dry)+" = "+tenths(l.Exact.Water)+"."),
			say("r "+r+": "+ratioFrom(l)+"."))
	}
	out = append(out,
		say("Shown in steps of "+upTo(1, float64(s.ScaleStep()))+nb+"g: "+grams(l.Each.Dry)+" + "+grams(l.Each.Water)+"."),
		say("Moisture = (m0 + r) / (1 + r) = "+finePercent(l.Moisture)+", m0 "+finePercent(l.Stored)+" as bought ("+originWord(l.StoredFrom)+"). Large bags run drier than jars."))
	if l.Method == kitchen.Measured && hydration.ShortcutOvershoot(l.Ratio) > 1.001 && l.Item.Moisture == 0 {
		out = append(out, say("Dividing by 1.4 instead would end "+upTo(1, (hydration.ShortcutOvershoot(l.Ratio)-1)*100)+nb+"% too heavy."))
	}
	return out
}

func title(l kitchen.Line) string {
	if l.Item.Container.Vessel == 0 {
		return l.Grain.String()
	}
	return many(l.Item.Count, l.Item.Container) + ", " + l.Grain.String()
}

// whyMass says where the wetted weight of a container comes from.
func whyMass(l kitchen.Line, s kitchen.Settings) string {
	c := l.Item.Container
	switch {
	case l.Item.Mass > 0:
		return "Taken: " + massAsSaid(l.Item.Mass) + " of " + basisWord(l.Item.Basis) + ", as said."
	case c.Vessel == kitchen.Jar && l.FillOrigin == kitchen.Own:
		return "A " + one(c) + " holds " + grams(l.Exact.Wetted) + " wetted, as you weighed it."
	case c.Vessel == kitchen.Jar && c.Volume > 0:
		return "A " + one(c) + ": " + litresFine(float64(c.Volume)) + " less " + percent(s.Empty()) + " headspace × 0.68" + nb + "kg/L = " +
			grams(l.Exact.Wetted) + " (common practice: weigh one, `a quart jar holds 480 g`)."
	case c.Vessel == kitchen.Bag && (l.Item.Basis == kitchen.DryBasis || s.BagBasis == kitchen.DryBasis):
		return massAsSaid(c.Weight) + " of a bag is dry grain here: " + grams(l.Exact.Dry) + "."
	case c.Vessel == kitchen.Bag:
		return massAsSaid(c.Weight) + " of a bag is wetted grain: " + grams(l.Exact.Wetted) + ". If yours means dry: `5 lb bags means dry`"
	}
	return "Wetted: " + grams(l.Exact.Wetted) + "."
}

func litresFine(l float64) string { return upTo(3, l) + nb + "L" }

func ratioFrom(l kitchen.Line) string {
	switch {
	case l.Item.Moisture > 0:
		return "for " + finePercent(l.Item.Moisture) + " moisture, (m − m0) / (1 − m)"
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

// whyHold is the working of the hold.
func whyHold(h kitchen.Hold, s kitchen.Settings) []chat.Block {
	out := []chat.Block{say("**Hold** " + minutes(h.Time) + ", ruled by the " + one(h.For) + ".")}
	switch h.Origin {
	case kitchen.Said:
		out = append(out, say("As you said with the order."))
	case kitchen.Own:
		out = append(out, say("Your kitchen's own figure, not scaled."))
	case kitchen.Default:
		out = append(out, say("Common practice is "+minutes(h.Base)+" at 15"+nb+"psi and sea level. No published source: sources give 90 to 240 for bags."))
	}
	out = append(out, say("Steam at "+psi(h.At)+" and "+height(s.Height())+": "+celsius(h.Temperature)+" (ISO 2533 atmosphere, IAPWS-IF97 saturation), if the air is out."))
	if h.Origin == kitchen.Default && h.Usual > h.Base {
		out = append(out, say("Colder than the reference 121"+nb+"°C, so longer by equal lethality, z 10"+nb+"°C, rounded up: an upper bound. A longer hold can boil the pot dry: check the water."))
	}
	return append(out, say("This says what the steam does, not what the middle of a big bag gets."))
}

// whyWater is the working of the water under the rack.
func whyWater(p kitchen.Plan) []chat.Block {
	rate, from := "0.6", "taken"
	if p.Cooker.BoilOff > 0 {
		rate, from = upTo(2, float64(p.Cooker.BoilOff)), "yours"
	}
	return []chat.Block{
		say("**Water** 0.4" + nb + "L venting + hold × " + rate + nb + "L/h (" + from + ") + 0.3 taken up + 1 left; at least 3" + nb +
			"L to 90" + nb + "min, 4 to 150, 5 beyond (common practice). The maker's line comes first."),
	}
}

func tenths[T ~float64](g T) string { return upTo(1, float64(g)) + nb + "g" }

// NoWhy says that there is no working to show yet.
func NoWhy() chat.Post {
	return lines("Nothing worked out yet. Ask for a plan, like `3 bags 5lb agar`, then `why`.")
}
