package phrase

import (
	"fmt"
	"strings"

	"ryebell/internal/kitchen"
)

var kitchenGrammar = grammar{
	kind: KindKitchen,
	examples: []string{
		"we're at 1600 m",
		"elevation 5280 ft",
		"room 19C",
		"we inoculate below 25C",
		"limit for enoki 24C",
		"big pot takes 7 quarts or 3 5lb bags, max 15 psi, dial gauge",
		"hold 5lb bags 150",
		"we soak jars",
		"we measure water for bags",
		"round to 10 g",
		"a quart jar holds 480 g with us",
		"5 kg rye came out at 9.4 after simmering",
		"agar 0.44",
		"usual grain is millet",
		"the usual is 3 bags 5lb agar",
		"gypsum 1%",
		"no gypsum",
		"5 lb bag means dry",
		"headspace 25%",
		"our rye is 13% moisture",
		"time zone Europe/Berlin",
		"imperial quarts",
		"we cook at 13 psi",
		"gauge reads 1 low",
		"digest monday 9:00",
		"digest on sundays",
		"no digest",
		"rest 3 days before inoculating",
		"no rest",
		"kitchen",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		if s, d, ok := matchSet(c); ok {
			return s, d, true
		}
		d, ok := c.over("show", "our", "the", "me", "what", "are").phrase("kitchen", "settings", "our kitchen", "the kitchen", "the settings", "kitchen settings",
			"show settings", "our settings", "setup", "setting")
		return Kitchen{}, d, ok
	},
}

// String prints the question so that it parses back.
func (Kitchen) String() string { return "settings" }

// String prints the settings so that they parse back.
func (s Set) String() string {
	said := make([]string, len(s.Changes))
	for i, c := range s.Changes {
		said[i] = changeText(c)
	}
	return strings.Join(said, "; ")
}

// setting reads one change of the kitchen.
type setting func(cursor) (kitchen.Change, cursor, bool)

var settings = [...]setting{
	elevation, roomTemperature, coolLimit, cooker, holdRule, method, step, jarFill, yield, ratioRule, usualGrain, usualOrder, gypsum, bagMeans, headspace,
	storageMoisture, timeZone, quarts, pressure, gaugeReads, shareRule, digest, restRule,
}

// matchSet reads one or more settings said in one breath.
func matchSet(c cursor) (Intent, cursor, bool) {
	var s Set
	open, end := 0, c
	for d := c; len(s.Changes) < maxSegments; {
		change, e, ok := longestSetting(d)
		if !ok && len(s.Changes) == 0 { // "sorry, we're at 1600 m"
			if f := d.over("no", "sorry", "actually", "oops"); f.i > d.i {
				change, e, ok = longestSetting(f.parted())
			}
		}
		if n := len(s.Changes); n > 0 && d.i > c.i {
			if _, held := s.Changes[n-1].(kitchen.HoldIs); held { // "hold quarts 90 and 5lb bags 150"
				if more, f, fits := heldFor(d); fits {
					change, e, ok = more, f, true
				}
			}
		}
		if !ok {
			break
		}
		if e.ask != nil && end.ask == nil {
			open, end.ask = len(s.Changes), e.ask
		}
		end.bare = e.bare && len(s.Changes) == 0
		s.Changes = append(s.Changes, change)
		end.i, end.used, end.filler, end.near, end.quoted = e.i, e.used, e.filler, e.near, e.quoted
		d = e
		d.ask = nil
		if d = d.parted(); d.i == e.i {
			break
		}
	}
	if end.ask != nil {
		end.ask = askOf(s, open, *end.ask)
	}
	return s, end, len(s.Changes) > 0
}

func longestSetting(c cursor) (best kitchen.Change, end cursor, ok bool) {
	end = c
	c = c.over("set", "change")
	for _, read := range settings {
		if change, d, fits := read(c); fits && d.i > end.i {
			best, end, ok = change, d, true
		}
	}
	return best, end, ok
}

// askOf makes the question about one of several settings into one about all.
func askOf(s Set, open int, ask asking) *asking {
	one := ask.fill
	ask.fill = func(reply cursor) (string, cursor, bool) {
		filled, rest, ok := one(reply)
		said := make([]string, len(s.Changes))
		for i, c := range s.Changes {
			said[i] = changeText(c)
		}
		said[open] = filled
		return strings.Join(said, "; "), rest, ok
	}
	return &ask
}

// changeText prints a setting so that it parses back.
func changeText(change kitchen.Change) string {
	switch c := change.(type) {
	case kitchen.Elevation:
		return "elevation " + lengthText(c.Height)
	case kitchen.RoomTemperature:
		return "room " + temperatureText(c.Temp)
	case kitchen.CoolLimitIs:
		return coolLimitText(c)
	case kitchen.CookerIs:
		return cookerText(c)
	case kitchen.HoldIs:
		return "hold " + heldText(c.Container) + " " + durationText(c.Hold)
	case kitchen.MethodIs:
		return methodText(c)
	case kitchen.StepIs:
		return "round to " + massText(c.Step)
	case kitchen.JarFill:
		return "a " + jarText(c.Container.Volume) + " jar holds " + massText(c.Wetted)
	case kitchen.YieldIs:
		return massText(c.Dry) + grainText(c.Grain) + " came out at " + massText(c.Drained)
	case kitchen.RatioIs:
		return ratioText(c)
	case kitchen.UsualGrain:
		return "usual grain is " + c.Grain.String()
	case kitchen.UsualOrder:
		return "the usual is " + orderText(c.Order)
	case kitchen.GypsumIs:
		if c.Share == 0 {
			return "no gypsum"
		}
		return "gypsum " + fractionText(c.Share)
	case kitchen.BagMeans:
		return "bag weight means" + basisText(c.Basis)
	case kitchen.HeadspaceIs:
		return "headspace " + fractionText(c.Share)
	case kitchen.StorageMoisture:
		if c.Grain == 0 {
			return "grain is " + fractionText(c.Moisture) + " moisture"
		}
		return c.Grain.String() + " is " + fractionText(c.Moisture) + " moisture"
	case kitchen.ZoneIs:
		return "time zone " + c.Zone
	case kitchen.MeasureIs:
		if c.Measure == kitchen.Imperial {
			return "imperial quarts"
		}
		return "us quarts"
	case kitchen.PressureIs:
		return "we cook at " + pressureText(c.Gauge)
	case kitchen.GaugeReads:
		return gaugeReadsText(c)
	case kitchen.DigestIs:
		return digestText(c)
	case kitchen.RestIs:
		return restText(c)
	case kitchen.QuietHours, kitchen.PingsPrivate: // said by Quiet and PingsWhere
		return ""
	}
	panic(fmt.Sprintf("phrase: no words for %T", change))
}
