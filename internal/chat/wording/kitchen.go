package wording

import (
	"slices"
	"strconv"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Changed says what will differ from now on. Caution is the settings after the
// change, in which a hold may be short of the default.
func Changed(changes []kitchen.Change, after kitchen.Settings) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	for _, c := range changes {
		post.Blocks = append(post.Blocks, changed(c, after)...)
	}
	return with(post, tap("Undo", "undo"))
}

// changed is one change in words.
func changed(c kitchen.Change, after kitchen.Settings) []chat.Block {
	switch c := c.(type) {
	case kitchen.Elevation:
		return elevationChanged(c, after)
	case kitchen.RoomTemperature:
		return []chat.Block{say("Room **" + warmth(c.Temp) + "** from now on.")}
	case kitchen.CoolLimitIs:
		return coolLimitChanged(c, after)
	case kitchen.CookerIs:
		return cookerChanged(c, after)
	case kitchen.HoldIs:
		return holdChanged(c, after)
	case kitchen.MethodIs:
		return []chat.Block{say(methodChanged(c))}
	case kitchen.StepIs:
		return []chat.Block{say("Weights in steps of **" + upTo(1, float64(c.Step)) + nb + "g** from now on.")}
	case kitchen.JarFill:
		return []chat.Block{say("A " + one(c.Container) + " holds **" + massAsSaid(c.Wetted) + "** wetted from now on.")}
	case kitchen.YieldIs:
		return []chat.Block{say(yieldName(c) + " comes out **" + ratio2(float64(c.Drained/c.Dry)) + " times** its dry weight from now on (" + kilos(c.Dry) + " gave " + kilos(c.Drained) + ").")}
	case kitchen.RatioIs:
		return []chat.Block{say("**" + ratio(c.Ratio) + " water per dry grain** for " + ratioScope(c) + " from now on.")}
	case kitchen.UsualGrain:
		return []chat.Block{say("When no grain is said, **" + c.Grain.String() + "** is meant.")}
	case kitchen.UsualOrder:
		return []chat.Block{say("The usual is now **" + orderWords(c.Order) + "**. Say `the usual` for its plan.")}
	case kitchen.GypsumIs:
		if c.Share == 0 {
			return []chat.Block{say("No gypsum from now on.")}
		}
		return []chat.Block{say("Gypsum **" + finePercent(c.Share) + "** of the dry grain, in every plan from now on.")}
	case kitchen.BagMeans:
		return []chat.Block{say("A 5" + nb + "lb bag means 5" + nb + "lb of **" + basisWord(c.Basis) + "** from now on.")}
	case kitchen.HeadspaceIs:
		return []chat.Block{say("Jars keep **" + percent(c.Share) + "** empty from now on.")}
	case kitchen.StorageMoisture:
		return []chat.Block{say("**" + finePercent(c.Moisture) + "** moisture as bought, for " + grainScope(c) + ", from now on.")}
	case kitchen.ZoneIs:
		return []chat.Block{say("Times are those of {} from now on.", c.Zone)}
	case kitchen.MeasureIs:
		return []chat.Block{say("Quarts and pints are **" + measureWord(c.Measure) + "** from now on.")}
	case kitchen.PressureIs:
		return []chat.Block{say("You cook at **" + psi(c.Gauge) + "** from now on. Holds are worked out for it.")}
	case kitchen.GaugeReads:
		return blocks(gaugeChanged(c, after))
	case kitchen.QuietHours:
		return quietChanged(c)
	case kitchen.PingsPrivate:
		return privateChanged(c)
	case kitchen.DigestIs:
		return digestChanged(c)
	case kitchen.RestIs:
		return restChanged(c)
	}
	panic("change without words")
}

// elevationChanged shows what the height does to the hold of a quart jar.
func elevationChanged(c kitchen.Elevation, after kitchen.Settings) []chat.Block {
	out := []chat.Block{say("Kitchen at **" + height(c.Height) + "** from now on.")}
	for _, container := range examples() {
		p, err := after.Work(kitchen.Order{Items: []kitchen.Item{{Count: 1, Container: container}}})
		if err != nil {
			continue
		}
		h := p.Hold
		switch {
		case h.Origin == kitchen.Own:
			out = append(out, say("A "+one(container)+": your own "+minutes(h.Time)+", unchanged."))
		case h.TooLong:
			out = append(out, say("A "+one(container)+": not with this cooker up here. "+tooLongAdvice(h)))
		case h.Time == h.Base:
			out = append(out, say("A "+one(container)+": hold "+minutes(h.Time)+" at "+psi(h.At)+", as at sea level."))
		default:
			out = append(out, say("A "+one(container)+": hold "+minutes(h.Time)+" at "+psi(h.At)+", "+minutes(h.Base)+" at sea level."))
		}
	}
	return out
}

// examples are the containers whose holds a kitchen is shown.
func examples() []kitchen.Container {
	return []kitchen.Container{{Vessel: kitchen.Jar, Volume: quart}, {Vessel: kitchen.Bag, Weight: fiveLb}}
}

// holdsNow is the hold in force for a quart and a 5 lb bag in this kitchen.
func holdsNow(s kitchen.Settings) []chat.Block {
	var out []chat.Block
	for _, c := range examples() {
		p, err := s.Work(kitchen.Order{Items: []kitchen.Item{{Count: 1, Container: c}}})
		if err != nil {
			continue
		}
		h := p.Hold
		text := "Hold now, " + one(c) + ": "
		switch {
		case h.TooLong:
			text += "not with this cooker here"
		case h.Origin == kitchen.Default:
			text += minutes(h.Time) + " at " + psi(h.At)
		default:
			text += minutes(h.Time) + ", " + ownHold(h)
		}
		out = append(out, say(text+"."))
	}
	return out
}

// cookerChanged says what is now known of a cooker, and what to tell next.
func cookerChanged(c kitchen.CookerIs, after kitchen.Settings) []chat.Block {
	k, ok := after.CookerNamed(c.Name)
	if !ok {
		k = c
	}
	out := []chat.Block{say("{}"+cookerFacts(k)+".", cookerName(k))}
	if k.MaxGauge > 0 && float64(k.MaxGauge) < 0.99*float64(fifteenPSI) {
		out = append(out, say("Below 15"+nb+"psi steam is colder: holds get longer, or it can't be done. Ask for a plan."))
	}
	if len(k.Takes) == 0 {
		out = append(out, say("Next: say what it takes, like `"+cookerTyped+" takes 7 quarts or 3 5lb bags`"))
	}
	return out
}

const cookerTyped = "big pot"

// cookerName is what a cooker is called; the one without a name is the cooker.
func cookerName(k kitchen.CookerIs) string {
	if k.Name == "" {
		return "The cooker"
	}
	return "The " + k.Name
}

func cookerFacts(k kitchen.CookerIs) string {
	s := ""
	for i, t := range k.Takes {
		sep := ", or "
		if i == 0 {
			sep = " takes "
		}
		s += sep + many(t.Count, t.Container)
	}
	facts := []string{}
	if k.MaxGauge > 0 {
		facts = append(facts, "at most "+psi(k.MaxGauge))
	}
	switch k.Gauge {
	case kitchen.Dial:
		facts = append(facts, "dial gauge")
	case kitchen.Weight:
		facts = append(facts, "weight")
	case 0:
	}
	if k.Pot > 0 {
		facts = append(facts, "pot of "+litres(k.Pot))
	}
	if k.MinWater > 0 {
		facts = append(facts, "at least "+litres(k.MinWater)+" water")
	}
	if k.MaxWater > 0 {
		facts = append(facts, "at most "+litres(k.MaxWater)+" water")
	}
	if k.BoilOff > 0 {
		facts = append(facts, "boils off "+upTo(2, float64(k.BoilOff))+nb+"L an hour")
	}
	for i, f := range facts {
		sep := ", "
		if i == 0 && s == "" {
			sep = ": "
		}
		s += sep + f
	}
	if s == "" {
		return " is known now"
	}
	return s
}

// holdChanged says a hold that was set, with the caution where it is short.
func holdChanged(c kitchen.HoldIs, after kitchen.Settings) []chat.Block {
	out := []chat.Block{say("Hold **" + minutes(c.Hold) + "** for " + holdScope(c.Container) + " from now on, as said: not scaled.")}
	probe := c.Container
	if !probe.Sized() {
		probe = kitchen.Container{Vessel: kitchen.Jar, Volume: quart}
		if c.Container.Vessel == kitchen.Bag {
			probe = kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb}
		}
	}
	p, err := after.Work(kitchen.Order{Items: []kitchen.Item{{Count: 1, Container: probe}}})
	if err == nil && p.Hold.Short() {
		out = append(out, say("**Caution**: that is shorter than the "+minutes(p.Hold.Usual)+" that is the default here. Less is killed; every plan will say so."))
	}
	return out
}

func holdScope(c kitchen.Container) string {
	switch {
	case c.Sized():
		return one(c) + "s"
	case c.Vessel != 0:
		return "all " + c.Vessel.String() + "s"
	}
	return "everything"
}

func methodChanged(c kitchen.MethodIs) string {
	what := "Jars and bags"
	switch c.Vessel {
	case kitchen.Jar:
		what = "Jars"
	case kitchen.Bag:
		what = "Bags"
	case 0:
	}
	if c.Method == kitchen.Soaked {
		return "**" + what + " are soaked** from now on: plans give dry grain, water in plenty, and drain."
	}
	return "**" + what + " get measured water** from now on."
}

func ratio2(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func yieldName(c kitchen.YieldIs) string {
	if c.Grain == 0 {
		return "Soaked grain"
	}
	return "Soaked " + c.Grain.String()
}

func ratioScope(c kitchen.RatioIs) string {
	s := ""
	if c.Route != 0 {
		s += " " + routeWord(c.Route)
	}
	if c.Grain != 0 {
		s += " " + c.Grain.String()
	}
	if c.Vessel != 0 {
		s += " " + c.Vessel.String() + "s"
	}
	if s == "" {
		return "everything"
	}
	return s[1:]
}

func grainScope(c kitchen.StorageMoisture) string {
	if c.Grain == 0 {
		return "every grain"
	}
	return c.Grain.String()
}

func measureWord(m kitchen.Measure) string {
	if m == kitchen.Imperial {
		return "imperial (1.14" + nb + "L)"
	}
	return "US (0.95" + nb + "L)"
}

// orderWords is an order in a few words: 3 bags of 5 lb, rye, agar.
func orderWords(o kitchen.Order) string {
	var parts []string
	for _, it := range o.Items {
		s := itemWords(it, it.Basis)
		if it.Grain != 0 {
			s += ", " + it.Grain.String()
		}
		if it.Route != 0 {
			s += ", " + routeWord(it.Route)
		}
		parts = append(parts, s)
	}
	return listed(parts)
}

// Kitchen shows the settings as they are, and how to change one.
func Kitchen(s kitchen.Settings) chat.Post {
	elevation := "sea level (not said)"
	if s.Elevation != nil {
		elevation = height(*s.Elevation)
	}
	room := warmth(s.RoomTemp()) + " (not said)"
	if s.Room != nil {
		room = warmth(*s.Room)
	}
	post := lines("**Your kitchen**")
	post.Blocks = append(post.Blocks, chat.List{
		say("Elevation: " + elevation),
		say("Room: " + room),
		say("Weights to " + upTo(1, float64(s.ScaleStep())) + nb + "g"),
		say("Usual grain: " + s.GrainMeant().String()),
		say("Jars: " + s.MethodFor(kitchen.Jar).String() + "; bags: " + s.MethodFor(kitchen.Bag).String()),
		say(quietNow(s)),
	})
	var cookers chat.List
	for _, k := range s.Cookers {
		cookers = append(cookers, say("{}"+cookerFacts(k)+gaugeOff(s, k), cookerName(k)))
	}
	if len(cookers) > 0 {
		post.Blocks = append(post.Blocks, cookers)
	}
	post.Blocks = append(post.Blocks, holdsNow(s)...)
	for _, h := range s.Holds {
		if slices.ContainsFunc(examples(), h.Container.Same) {
			continue // said just above
		}
		post.Blocks = append(post.Blocks, say("Hold "+holdScope(h.Container)+": "+minutes(h.Hold)+"."))
	}
	post.Blocks = append(post.Blocks, moreSettings(s)...)
	post.Blocks = append(post.Blocks, say("To change one, say it: `we're at 1600 m`, `big pot takes 7 quarts or 3 5lb bags`"))
	return with(post, tap("More to set", "help kitchen"))
}

// quietNow is when pings wait that can.
func quietNow(s kitchen.Settings) string {
	q, set := s.QuietFor(0)
	if set == kitchen.Default {
		return capital(quietWords(q)) + " (not said)"
	}
	return capital(quietWords(q))
}

// gaugeOff is by how much a cooker's gauge is off, if anybody said so.
func gaugeOff(s kitchen.Settings, k kitchen.CookerIs) string {
	const shown = unit.GaugeKPa(50)
	switch low := s.TrueGauge(k, shown) - shown; {
	case low > 0:
		return ", its gauge reads " + psi(low) + " low"
	case low < 0:
		return ", its gauge reads " + psi(-low) + " high"
	}
	return ""
}

// moreSettings lists what only some kitchens set.
func moreSettings(s kitchen.Settings) []chat.Block {
	var out []chat.Block
	for _, f := range s.Fills {
		out = append(out, say("A "+one(f.Container)+" holds "+massAsSaid(f.Wetted)+" wetted."))
	}
	for _, r := range s.Ratios {
		out = append(out, say("Water for "+ratioScope(r)+": "+ratio(r.Ratio)+" per dry grain."))
	}
	for _, m := range s.StoredAt {
		out = append(out, say("As bought, "+grainScope(m)+": "+finePercent(m.Moisture)+" moisture."))
	}
	for _, y := range s.Yields {
		out = append(out, say(yieldName(y)+": "+ratio2(float64(y.Drained/y.Dry))+" times dry."))
	}
	if s.Gypsum > 0 {
		out = append(out, say("Gypsum: "+finePercent(s.Gypsum)+" of dry grain."))
	}
	out = append(out, coolLimits(s)...)
	if s.UsualOrder != nil {
		out = append(out, say("The usual: "+orderWords(*s.UsualOrder)+"."))
	}
	if s.CookingGauge > 0 {
		out = append(out, say("Cooking at "+psi(s.CookingGauge)+"."))
	}
	if s.Digest != nil {
		out = append(out, say("Digest: "+digestTimes(s)+"."))
	}
	if s.RestDays > 0 {
		out = append(out, say("Rest before inoculating: "+plural(s.RestDays, "day")+"."))
	}
	if s.Zone != "" {
		out = append(out, say("Times: {}.", s.Zone))
	}
	return out
}
