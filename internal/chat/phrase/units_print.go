package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

// String prints the telling so that it parses back.
func (t TellUnits) String() string {
	said := make([]string, len(t.Parts))
	for i, p := range t.Parts {
		said[i] = p.String()
	}
	s := strings.Join(said, "; ")
	if t.When != nil {
		return t.When.String() + ": " + s
	}
	return s
}

// String prints one thing told of units.
func (p UnitsPart) String() string {
	of := p.Of.String()
	switch e := p.Entry.(type) {
	case kitchen.Inoculated:
		return "inoculated " + of + inoculatedText(e)
	case kitchen.BlankSet:
		return "left " + of + " blank"
	case kitchen.GrowthSeen:
		return of + " is " + fractionText(e.Share) + " white"
	case kitchen.Shaken:
		return "shook " + of
	case kitchen.SignSeen:
		return of + signLink(e.Sign) + signText(e.Sign)
	case kitchen.GrownThrough:
		return of + " is grown through"
	case kitchen.UnitsUsed:
		return usedText(of, e)
	case kitchen.UnitsGiven:
		if e.To == "" {
			return "gave " + of + " away"
		}
		return "gave " + of + " to " + e.To
	case kitchen.UnitsDiscarded:
		return "threw " + of + " out"
	case kitchen.UnitsGone:
		return of + " is gone"
	case kitchen.UnitsMoved:
		return "moved " + of + " to " + e.Place
	case kitchen.UnitNamed:
		if e.Name == "" {
			return of + " has no name"
		}
		return "call " + of + " " + e.Name
	case kitchen.UnitsTagged:
		return "tag " + of + " #" + strings.Join(e.Tags, " #")
	case kitchen.UnitsStood:
		return of + " stood " + spotText(e.Where)
	case kitchen.LotSaid:
		return of + " has " + lotText(e)
	case kitchen.Arrived:
		return ""
	}
	panic(p.Entry)
}

func inoculatedText(e kitchen.Inoculated) string {
	var said []string
	if e.Culture != "" {
		said = append(said, e.Culture)
	}
	if e.From != (kitchen.UnitRef{}) {
		from := e.From.String()
		if e.Culture != "" {
			from = "from " + from
		}
		said = append(said, from)
	}
	if e.Species != "" && e.Species != e.Culture {
		said = append(said, e.Species)
	}
	if e.Route != 0 {
		said = append(said, routeText(e.Route))
	}
	if e.Volume > 0 {
		said = append(said, volumeText(e.Volume)+" each")
	}
	switch {
	case len(said) == 0:
		return ""
	case e.Culture == "" && e.From != (kitchen.UnitRef{}):
		return " from " + strings.Join(said, ", ")
	}
	return " with " + strings.Join(said, ", ")
}

func usedText(of string, e kitchen.UnitsUsed) string {
	s := "used "
	if e.Share > 0 {
		s += fractionText(e.Share) + " of "
	}
	s += of
	if e.On != "" {
		s += " on " + e.On
	}
	return s
}

func spotText(s kitchen.Spot) string {
	for _, w := range spotWords {
		if w.spot == s {
			return w.words[0]
		}
	}
	panic(s)
}

func lotText(l kitchen.LotSaid) string {
	switch l.What {
	case kitchen.GrainLot:
		return "grain lot " + l.Name
	case kitchen.BagLot:
		return "bag lot " + l.Name
	case kitchen.LidLot:
		return "lids " + l.Name
	}
	panic(l.What)
}

// signLink is the verb before the words of a sign.
func signLink(s kitchen.Sign) string {
	switch s {
	case kitchen.BlackHeads, kitchen.Cobweb, kitchen.YellowDrops:
		return " has "
	case kitchen.LooksFine, kitchen.LooksOdd, kitchen.LooksWet, kitchen.Slimy, kitchen.SourSmell, kitchen.GreenMould, kitchen.BlueGreenDust, kitchen.PinkFluff, kitchen.YeastySmell,
		kitchen.Stalled, kitchen.NothingGrew, kitchen.Bulging, kitchen.Leaking, kitchen.WentBad:
		return " is "
	}
	panic(s)
}
