package wording

import (
	"math"
	"strconv"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// WhyCool shows how the time at which a run is cool comes about: what was told, what
// was taken, the model with its sources, and the doubt.
func WhyCool(r kitchen.Run, now time.Time) chat.Post {
	c, known := r.Cooling()
	post := chat.Post{Loudness: chat.Answer, Blocks: []chat.Block{coolHead(r, c, known, now)}}
	if !known {
		return post
	}
	last, _ := c.Believed(r.Readings)
	add := func(p chat.Para) {
		if len(p) > 0 {
			post.Blocks = append(post.Blocks, p)
		}
	}
	add(began(r, c, last, now))
	add(say("Limit " + likewise(last.Temp, c.Limit) + " in the middle: common practice, no source. The range holds 4 times of 5."))
	if r.Stage == kitchen.StageCooling {
		add(say("Now: middle about " + degrees(c, last, c.Middle(now)) + "; outside about " + degrees(c, last, c.At(cooling.Skin, now)) + "."))
	}
	add(roomWords(c, last))
	add(countedWords(r, c))
	add(paceWords(c))
	add(say("Model: conduction in a " + shapeWord(c.Container) + " (Incropera and DeWitt), convection (McAdams) and radiation outside, which fade as it cools."))
	add(takenWords())
	add(heatedWords(r))
	return with(post, tap("Chart", chartOf(r.No)))
}

// began is where the count starts.
func began(r kitchen.Run, c kitchen.Cooling, last kitchen.Reading, now time.Time) chat.Para {
	text := "Starts at " + likewise(last.Temp, c.Boiling) + ", zero " + near(now, c.Zero)
	if !c.Seen {
		text += " (not seen, by a usual fall)"
	}
	if out, isOut := r.LiftedOut(); isOut {
		return say(text + ", out of the pot " + near(now, out) + ".")
	}
	return say(text + "; still in the shut pot, which is slower.")
}

func roomWords(c kitchen.Cooling, last kitchen.Reading) chat.Para {
	text := "Room about " + degrees(c, last, c.Room)
	if c.RoomTold {
		return say(text + ": as told, less for the night.")
	}
	return say(text + ": nobody said. Like `room 19C`")
}

// maxOddNamed is how many readings that don't count are named, the newest.
const maxOddNamed = 3

// countedWords says how many readings count, and which don't.
func countedWords(r kitchen.Run, c kitchen.Cooling) chat.Para {
	text := "Counted: " + plural(c.Counted, "reading")
	switch all := len(r.Readings) - len(c.Odd); {
	case all == 0:
		text = "No reading yet"
	case all > c.Counted:
		text += " of " + strconv.Itoa(all) + ", the first and the last"
	}
	more := max(0, len(c.Odd)-maxOddNamed)
	for _, o := range c.Odd[more:] {
		text += "; not " + warmth(o.Reading.Temp)
	}
	if more > 0 {
		text += " and " + whole(float64(more)) + " more"
	}
	return say(text + ".")
}

// paceWords says how the load cools beside the table of properties, and where that
// is known from.
func paceWords(c kitchen.Cooling) chat.Para {
	text := "Pace: " + percentSlower(c.Scale.Slower) + " the table of properties says, give or take " + percentOf(c.Scale.Spread)
	if c.Scale.Spread < 0.95*c.Prior.Spread {
		text += "; before the first reading " + percentOf(c.Prior.Spread)
	}
	if c.Prior.Runs == 0 {
		return say(text + ". No earlier run of this pot and size was measured.")
	}
	return say(text + ". It began from " + plural(c.Prior.Runs, "measured run") + " of this pot and size.")
}

func percentSlower(slower float64) string {
	if by := math.Round(100 * (math.Exp(math.Abs(slower)) - 1)); by >= 1 {
		if slower > 0 {
			return whole(by) + nb + "% slower than"
		}
		return whole(by) + nb + "% faster than"
	}
	return "as"
}

func percentOf(spread float64) string {
	return whole(math.Round(100*(math.Exp(spread)-1))) + nb + "%"
}

// takenWords are the properties of the grain that the model takes, and their doubt.
func takenWords() chat.Para {
	by := map[cooling.Aspect]cooling.Property{}
	for _, p := range cooling.Properties() {
		by[p.Aspect] = p
	}
	heat, spreads := by[cooling.SpecificHeat], by[cooling.Diffusivity]
	return say("Taken: wet grain holds " + upTo(1, heat.Value/1000) + nb + "kJ/kg" + nb + "K, give or take " + percentOf(heat.Spread) +
		" (Kazarian and Hall, 1965, wheat); heat spreads in it by " + upTo(2, spreads.Value*1e6) + nb + "mm²/s, give or take " + percentOf(spreads.Spread) + ": no source.")
}

func shapeWord(c kitchen.Container) string {
	if c.Vessel == kitchen.Bag {
		return "brick"
	}
	return "short cylinder"
}

// heatedWords is the heat that came before: a lower bound, and named as one.
func heatedWords(r kitchen.Run) chat.Para {
	h, ok := r.Heated()
	if !ok {
		return nil
	}
	return say("The hold brought the middle to at least about " + upTo(0, float64(h.Hottest)) + nb + "°C by conduction alone: a lower bound, for steam creeps in as well. No pass mark.")
}
