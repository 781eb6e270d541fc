package wording

import (
	"strings"

	"ryebell/internal/calc/hydration"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Help shows six things to type, or one topic, with the figures of this kitchen
// where they depend on it.
func Help(topic kitchen.Topic, s kitchen.Settings) chat.Post {
	if topic == 0 {
		return firstHelp()
	}
	return lines(helpOn(topic, s)...)
}

// holdExample is a hold for 5 lb bags to type, longer than the default at this
// height: an example that is copied must not shorten a hold.
func holdExample(s kitchen.Settings) string {
	h, ok := s.SuggestedHold(kitchen.Container{Vessel: kitchen.Bag, Weight: fiveLb})
	if !ok {
		return ""
	}
	return "`hold 5lb bags " + whole(h.Minutes()) + "`"
}

func setHold(s kitchen.Settings) string {
	if e := holdExample(s); e != "" {
		return "Set a longer hold: " + e + ". "
	}
	return ""
}

// ratioFor45 is the water per dry grain that makes 45 % moisture of the usual
// grain.
func ratioFor45(s kitchen.Settings) string {
	m0, from := s.StorageMoistureOf(s.GrainMeant())
	r, err := hydration.RatioFor(0.45, m0)
	if err != nil {
		return ""
	}
	as := "at " + finePercent(m0) + " as bought"
	if from == kitchen.Own {
		as += ", your figure"
	}
	return "Water per grain and moisture are not the same: 45" + nb + "% moisture is r " + exact(float64(r)) + " (" + s.GrainMeant().String() + " " + as + ")."
}

func firstHelp() chat.Post {
	post := lines("Type it as you'd say it. These work:")
	post.Blocks = append(post.Blocks, chat.List{
		say("`3 bags 5lb agar`"),
		say("`i have 8 kg rye, 3lb bags, lc`"),
		say("`the usual, out by 20:30`"),
		say("`4 quarts oyster on shelf since 3 oct`"),
		say("`shelf` · `what's oldest` · `cultures`"),
		say("`why` · `undo` · `no, 4 bags`"),
	}, say("Say `help` with one of these: jars, bags, filters, hydration, cook, cooling, inoculating, units, watching, contamination, shelf, cultures, trace, cautions, kitchen."))
	return with(post, tap("Cook", "help cook"), tap("Units", "help units"), tap("Shelf", "help shelf"), tap("Cautions", "help cautions"))
}

// helpOn is the page of a topic, a paragraph each. Figures without a source are
// common practice.
func helpOn(t kitchen.Topic, s kitchen.Settings) []string {
	switch t {
	case kitchen.TopicJars:
		return jarsHelp()
	case kitchen.TopicBags:
		return bagsHelp()
	case kitchen.TopicFilters:
		return []string{
			"**Filters and ports**: 0.2" + nb + "µm breathes slowly and keeps out what is in the air; 5" + nb + "µm is for sawdust.",
			"Keep the patch dry and off the wall. Jars want a hole with a filter disc, wad or tape; a lid that seals gulps dirty air when opened.",
			"Let cooked grain cool in clean air: it draws in as much as it holds.",
		}
	case kitchen.TopicHydration:
		return hydrationHelp(s)
	case kitchen.TopicCook:
		return cookHelp(s)
	case kitchen.TopicCooling:
		return coolingHelp(s)
	case kitchen.TopicInoculating:
		return []string{
			"**Inoculating**, per quart and per 5" + nb + "lb bag: LC 2 to 5" + nb + "ml and 10 to 20" + nb + "ml; agar a few wedges and a quarter to half plate; G2G a tenth.",
			"Still or filtered air, clean hands, cooled grain. Leave one blank: it parts the cook from the culture.",
		}
	case kitchen.TopicContamination:
		return []string{
			"**Contamination**: green, blue or black dust is mould; wet, sour, glassy is bacteria.",
			"Out, **unopened**, in a second bag. Spores harm lungs.",
			"Say `12.3 green` or `12.3 smells sour`, then `threw 12.3`",
			"Not sure? `12.3 looks wet`: I ask again in two days.",
			"All of one cook bad, blank too: the cook. All of one culture: the culture. Which? `trace 12` · `trace plate 7`",
		}
	case kitchen.TopicShelf:
		return []string{
			"**Shelf**, to ask: `shelf` · `what's oldest` · `where is 12.3` · `whats in the fridge`",
			"Bought, or older than me? `4 quarts rye oyster on the shelf since 3 oct`",
			"The day is when the culture went on.",
			"Grown: `2 bags shiitake, grown through, since 1 feb, in the fridge`",
			"Gone? `used 12.1 on straw` · `threw 12.3`",
			"Keeps, usually: cooked jars to three months, bags less; spawn 1 to 2 weeks, longer cold.",
		}
	case kitchen.TopicCautions:
		return cautionsHelp()
	case kitchen.TopicKitchen:
		return kitchenHelp(s)
	case kitchen.TopicWords:
		return []string{
			"**Words**: **dry** is grain as bought, **wetted** grain with its water in it.",
			"**r** is water per dry grain by weight. **Moisture** is the share of water in the whole: r 0.40 is about 37" + nb + "%.",
			"**Vent**: steam blows freely until the air is out. **Hold**: the minutes at full pressure.",
			"**LC** is liquid culture, **G2G** grown grain put on fresh grain, **agar** a piece of a plate.",
			"**Spawn** is grain grown through. **Psi** is what the gauge shows.",
		}
	case kitchen.TopicUnits:
		return unitsHelp()
	case kitchen.TopicWatching:
		return watchingHelp()
	case kitchen.TopicCultures:
		return culturesHelp()
	case kitchen.TopicTrace:
		return traceHelp()
	case kitchen.TopicTyping:
		return []string{
			"**Typing**: no syntax. `2.5`, `2,5`, `½` or `two`; lb, oz, kg, g, qt, pint, L, ml; several things with , or +.",
			"Wrong? `no, 4 bags`, `make it rye`, `undo`, or edit your message.",
			"Which number is which: `why`",
		}
	}
	panic("topic without a page")
}

// unitsHelp is the page about what is told of jars and bags.
func unitsHelp() []string {
	return []string{
		"**Units**: each jar or bag has a number. Run 12 has #12.1, #12.2 and so on; `12` alone is all of it.",
		"Put on: `12.1-2 plate 7, 12.3 lc 4 5 ml, 12.4 blank`",
		"From grown grain: `13.1-4 from 12.1`",
		"Late: `12.1 plate 7 4 hours ago`",
		"Gone: `used half of 12.1 on straw` · `gave 12.2 to Lena` · `threw 12.3`",
		"Moved: `12.1 to the fridge`. Story: `log 12.3`",
		"More: `help watching` · `help trace`",
	}
}

// watchingHelp is the page about what is seen on units, and when they are ready.
func watchingHelp() []string {
	return []string{
		"**Watching**: `12.2 30%` · `shook 12` · `12.3 green` · `12.2 looks wet` · `12.1 done`",
		"No white yet? `12.2 nothing yet`. Given up: `12.2 nothing`",
		"When is it ready? `when is 12.2 ready`",
		"That goes by species, size and culture: usual figures, then your own. I ask when a shake or a look is due.",
		"A photo: send it with such words. `log 12.3` shows it again.",
	}
}

// culturesHelp is the page about cultures.
func culturesHelp() []string {
	return []string{
		"**Cultures**: plates, liquid cultures, masters, syringes, each with a number.",
		"New: `plate 3 oyster from Mira` · `plates 7 and 8 from plate 3` · `plate 12 from 9.2`",
		"With more: `new lc 4, oyster, 500 ml, mine` · `plate 9 enoki, made 20 feb`",
		"Any other name: `new culture called big blue, from plate 3`",
		"Over: `lc 4 is empty` · `threw plate 7` · `plate 7 went bad`",
		"Ask: `cultures` · `whats plate 7`. What came of it: `help trace`",
	}
}

// traceHelp is the page about what came from what.
func traceHelp() []string {
	return []string{
		"**Trace**: what came from what, and what was lost of it.",
		"`trace plate 7`: what it went on, how much went bad, what to look at.",
		"`trace 12.3`: where it came from. `trace 12`: the whole run.",
		"One culture bad in several runs: the culture. One run bad under several cultures, blank too: the cook.",
		"By grain or soak: say `12 is rye lot 3` or `12.1-3 #soak24`; then `trace rye lot 3` · `trace #soak24`",
	}
}

// hydrationHelp is the page about water per grain.
func hydrationHelp(s kitchen.Settings) []string {
	return []string{
		"**Hydration**: dry = wetted / (1 + r), water = r × dry.",
		"r by route: LC 0.40, G2G 0.43, agar 0.46 (common practice). To set yours: `agar 0.44`",
		"Or by moisture: `2 kg rye at 45% moisture`. " + ratioFor45(s),
		"A good kernel crushes between the nails with no dry white core.",
	}
}

// cookHelp is the page about the cook.
func cookHelp(s kitchen.Settings) []string {
	return []string{
		"**The cook**: water under the rack, vent a steady plume 10" + nb + "min, then 15" + nb + "psi, then the hold.",
		"Lost pressure? The hold starts again. Check the water first: sagging at full flame can mean dry.",
		"Heat off, leave it shut until it shows zero. Never cool it by force.",
		setHold(s) + "Holds are common practice, not proof.",
	}
}

// coolingHelp is the page about how grain comes down to what a culture stands.
func coolingHelp(s kitchen.Settings) []string {
	return []string{
		"**Cooling**: a culture put on warm grain dies. Wait for " + warmth(s.CoolLimit()) + " or less in the middle, not only at the skin.",
		"Usual in a 20" + nb + "°C room: quart jar 5 to 8" + nb + "h, 5" + nb + "lb bag 10 to 18" + nb + "h; in the shut pot half as long again or twice.",
		"Never pierce or open to measure: put the thermometer between two bags. Then `12 41C`, `31 between the bags`, `12.1 41, 12.2 43`",
		"Ask: `is 12 cool yet`, `cool by 8?`, `is 12 cool enough for enoki`, `chart 12`, `why`",
		"Tell how warm it is: `room 18`. A lower limit: `we inoculate below 25C`, `enoki not over 22C`",
	}
}

// kitchenHelp is the page about what is said once.
func kitchenHelp(s kitchen.Settings) []string {
	return []string{
		"**Your kitchen**, said once:",
		"`we're at 1600 m` · `room 19C` · `we inoculate below 25C`",
		"`big pot takes 7 quarts or 3 5lb bags, max 15 psi, dial gauge`",
		strings.TrimPrefix(holdExample(s)+" · `we soak jars` · `round to 10 g`", " · "),
		"`a quart jar holds 480 g` · `5 kg rye came out 9.4`",
		"`agar 0.44` · `gypsum 1%` · `usual grain is millet`",
		"`the usual is 3 bags 5lb agar` · `digest on sundays`",
		"Pings that can wait do so from 22 to 7, unless you say: `quiet 23-6`, `no quiet hours`",
		"As it stands: `kitchen`",
	}
}

// jarsHelp is the page about jars.
func jarsHelp() []string {
	return []string{
		"**Jars**: fill to two thirds or three quarters, so that they can be shaken.",
		"I reckon 30" + nb + "% headspace and 0.68" + nb + "kg wetted grain a litre. Weigh a full one and tell me: `a quart jar holds 480 g`",
		"Lid upside down or a quarter turn loose, foil over it. Never on the floor of the pot.",
		"Soaked instead of measured: `we soak jars`",
	}
}

// bagsHelp is the page about bags.
func bagsHelp() []string {
	return []string{
		"**Bags**: 5" + nb + "lb means wetted grain, unless you say `5 lb bags means dry`.",
		"Dry grain and measured water in, knead, gussets out, air out, fold the top towards the patch, patch free.",
		"Raise them off the water, a plate on top. Big bags heat slowly: sources hold 90 to 240" + nb + "min at sea level.",
	}
}

// cautionsHelp is the page of cautions.
func cautionsHelp() []string {
	return []string{
		"**Cautions**: the maker's manual, rating, gasket and valve checks come before anything I say.",
		"Steam and hot jars burn. Never open, tilt or cool a cooker by force before zero. Stay in earshot of it.",
		"Moist sealed grain that was not sterilised can grow dangerous bacteria: never eat it. Bulging, leaking or foul: throw it out unopened.",
		"Grow only what your law allows. Local codes and trained people come first.",
	}
}
