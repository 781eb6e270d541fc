package wording

import (
	"math"
	"strings"
	"time"

	"ryebell/internal/calc/duration"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// mostWorked is how many groups of units are worked out in one answer.
const mostWorked = 2

// WhyGrowth shows how the days come about at which units are expected grown through:
// what is usual for the species, what changes it, and the runs that it rests on.
func WhyGrowth(v ReadyView) chat.Post {
	var s sheet
	worked := 0
	for _, l := range v.Loads {
		for _, g := range l.groups {
			s.add(must, v.line(l.Load, g))
			if !g.grows {
				s.add(must, g.unknown())
				continue
			}
			if worked++; worked <= mostWorked {
				for _, p := range g.working(v.Now) {
					s.add(should, p)
				}
			}
		}
	}
	if worked > 0 {
		s.add(may, say("4 times of 5 it is in there: an estimate."))
	}
	return s.post(chat.Answer)
}

// unknown says why there is no estimate for what grows all the same.
func (g readyGroup) unknown() chat.Para {
	if g.first.Cultured && g.first.Inoculated.IsZero() && g.first.State.Stands() {
		return say("Nobody said when it was inoculated, so there is no estimate.")
	}
	return nil
}

// working is how the expectation of units comes about.
func (g readyGroup) working(now time.Time) []chat.Para {
	out := []chat.Para{g.usual(), g.size(), say("Here: " + strings.Join(g.changes(now), "; ") + ".")}
	if !g.growth.By.RoomTold {
		out = append(out, say("Nobody said how warm the room is: like `room 21C`"))
	}
	return append(out, g.rests())
}

// usual is what is common practice for the species.
func (g readyGroup) usual() chat.Para {
	s, named := g.growth.Species, g.growth.Named
	text := "{}: usually " + daysRange(s.Jar) + " days through a quart" + nb + "jar"
	if s.Bag != (kitchen.Days{}) {
		text += ", " + daysRange(s.Bag) + " through a 5" + nb + "lb" + nb + "bag"
	}
	text += ", with LC, shaken (common practice)."
	switch {
	case named == "":
		return say(strings.Replace(text, "{}", "As any species", 1))
	case !g.growth.Known:
		text = "No figures for {}, so as others:" + strings.TrimPrefix(text, "{}:")
	}
	return say(text, capital(named))
}

// size is what the container makes of it, where it is none of those that have a figure.
func (g readyGroup) size() chat.Para {
	from, to := days(g.growth.By.Usual.From), days(g.growth.By.Usual.To)
	for _, d := range []kitchen.Days{g.growth.Species.Jar, g.growth.Species.Bag} {
		if d.From == from && d.To == to {
			return nil
		}
	}
	return say("A " + one(g.first.Container) + ", by its grain: " + daysRange(kitchen.Days{From: from, To: to}) + " days.")
}

// changes are from when it is counted and what makes it longer or shorter than is usual.
func (g readyGroup) changes(now time.Time) []string {
	out := []string{"from " + dateOf(now, g.first.Inoculated)}
	by := g.growth.By
	if g.first.Route == 0 {
		out = append(out, "route not said, taken as LC")
	} else if by.Route != 1 {
		out = append(out, routeWord(g.first.Route)+" "+timesWord(by.Route))
	}
	if rested := days(g.first.Rested); rested > 0 {
		out = append(out, plural(rested, "day")+" in the cold don't count")
	}
	if by.Cold != 1 {
		room := g.growth.Species.Coldest.Plus(-g.growth.Colder)
		out = append(out, "room at "+warmth(room)+", under its "+warmth(g.growth.Species.Coldest)+", "+timesWord(by.Cold))
	}
	if !g.growth.Shaken && !now.Before(g.growth.Shake.To) {
		out = append(out, "not shaken, "+timesWord(by.Unshaken))
	}
	if g.growth.Paced {
		out = append(out, percent(g.first.Share)+" on "+dateOf(now, g.first.Seen)+" says how quick it is")
	}
	return out
}

// mostRests is how many runs of one's own are named.
const mostRests = 4

// rests is which runs of their own the expectation rests on.
func (g readyGroup) rests() chat.Para {
	runs := g.growth.By.Runs
	if len(runs) == 0 {
		return say("No run of your own with it is through yet.")
	}
	var out []string
	for _, no := range runs[max(0, len(runs)-mostRests):] {
		out = append(out, no.String())
	}
	text := "Moved by " + plural(len(runs), "run") + " of your own: " + listed(out)
	if len(runs) > mostRests {
		text = "Moved by " + plural(len(runs), "run") + " of your own, the last " + listed(out)
	}
	return say(text + ".")
}

func timesWord(f duration.Factor) string { return "×" + nb + upTo(2, float64(f)) }

func days(d time.Duration) int { return int(math.Round(d.Hours() / 24)) }

func daysRange(d kitchen.Days) string {
	if d.From == d.To {
		return whole(float64(d.From))
	}
	return whole(float64(d.From)) + " to " + whole(float64(d.To))
}
