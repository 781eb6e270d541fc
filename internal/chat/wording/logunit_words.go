package wording

import (
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// step is what happened, to be read behind the name of who told it where that is
// somebody's doing or seeing: put oyster on it. Words of people come beside it.
func (v LogUnitView) step(st kitchen.UnitStep) (text string, theirs []string) {
	switch st.Kind {
	case kitchen.SaidCooked:
		return v.cooked(st)
	case kitchen.SaidArrived:
		return arrivedHere(st)
	case kitchen.SaidInoculated:
		return inoculatedWith(st)
	case kitchen.SaidGone:
		return "off the shelf, nobody said how", nil
	case kitchen.SaidBlank:
		return "left it as the blank", nil
	case kitchen.SaidShaken:
		return "shook it", nil
	case kitchen.SaidGrowth:
		e, _ := st.Entry.(kitchen.GrowthSeen)
		return "saw " + percent(e.Share) + " overgrown", nil
	case kitchen.SaidGrownThrough:
		return "saw it grown through", nil
	case kitchen.SaidSuspect, kitchen.SaidFine, kitchen.SaidContaminated, kitchen.SaidDead:
		e, _ := st.Entry.(kitchen.SignSeen)
		return saw(e.Sign), nil
	case kitchen.SaidPartUsed, kitchen.SaidUsed:
		return v.usedOn(st)
	case kitchen.SaidGiven:
		if e, _ := st.Entry.(kitchen.UnitsGiven); e.To != "" {
			return "gave it to {}", []string{e.To}
		}
		return "gave it away", nil
	case kitchen.SaidDiscarded:
		return "threw it out", nil
	case kitchen.SaidMoved:
		e, _ := st.Entry.(kitchen.UnitsMoved)
		return "moved it: {}", []string{e.Place}
	case kitchen.SaidLot, kitchen.SaidStood, kitchen.SaidNamed, kitchen.SaidTagged:
	}
	panic("step without a story: " + st.Kind.String())
}

// cooked is the cook that a unit comes out of: cooked, big pot, held 92 min.
func (v LogUnitView) cooked(st kitchen.UnitStep) (string, []string) {
	text, theirs := "cooked", []string(nil)
	if v.Run.Cooker != "" {
		text, theirs = "cooked, {}", []string{v.Run.Cooker}
	}
	if v.Run.No != 0 {
		text += ", " + ending(v.Run)
	}
	if !st.Seen {
		text += ", its zero not seen"
	}
	return text, theirs
}

// arrivedHere is how a unit that no run made came here.
func arrivedHere(st kitchen.UnitStep) (string, []string) {
	e, _ := st.Entry.(kitchen.Arrived)
	text, theirs := "not cooked here", []string(nil)
	if e.From != "" {
		text, theirs = text+", from {}", append(theirs, e.From)
	}
	if e.Culture != "" {
		text, theirs = text+", with {} on it", append(theirs, e.Culture)
	}
	return text + "; nobody here saw its cook", theirs
}

// inoculatedWith is what was put on a unit: put oyster on it, LC, 10 ml.
func inoculatedWith(st kitchen.UnitStep) (string, []string) {
	e, told := st.Entry.(kitchen.Inoculated)
	if !told {
		return "inoculated by then, not seen", nil
	}
	text, theirs := "put a culture on it, nobody said which", []string(nil)
	switch {
	case e.From != (kitchen.UnitRef{}):
		text = "put grain of " + e.From.String() + " on it"
	case e.Culture != "":
		text, theirs = "put {} on it", []string{e.Culture}
	}
	if e.Route != 0 && e.From == (kitchen.UnitRef{}) {
		text += ", " + routeWord(e.Route)
	}
	if e.Volume > 0 {
		text += ", " + millilitres(e.Volume)
	}
	return text, theirs
}

func millilitres(l unit.Litres) string { return upTo(1, l.Millilitres()) + nb + "ml" }

// usedOn is what a unit was used for.
func (v LogUnitView) usedOn(st kitchen.UnitStep) (string, []string) {
	e, _ := st.Entry.(kitchen.UnitsUsed)
	text := "used it"
	if part, before := v.Unit.LastStep(kitchen.SaidPartUsed); before && part.At.Before(st.At) {
		text = "used the rest"
	}
	if e.Share > 0 && e.Share < 1 {
		text = "used " + percent(e.Share)
	}
	if e.On != "" {
		return text + " on {}", []string{e.On}
	}
	return text, nil
}

// saw is what somebody saw or smelt.
func saw(s kitchen.Sign) string {
	switch s {
	case kitchen.LooksFine:
		return "found it fine"
	case kitchen.LooksOdd:
		return "saw something odd"
	case kitchen.LooksWet:
		return "saw it look wet"
	case kitchen.Slimy:
		return "found it slimy"
	case kitchen.SourSmell:
		return "smelt it sour"
	case kitchen.GreenMould:
		return "saw green mould"
	case kitchen.BlueGreenDust:
		return "saw blue-green dust"
	case kitchen.BlackHeads:
		return "saw black heads"
	case kitchen.PinkFluff:
		return "saw pink fluff"
	case kitchen.Cobweb:
		return "saw grey cobweb"
	case kitchen.YeastySmell:
		return "smelt yeast"
	case kitchen.YellowDrops:
		return "saw yellow drops"
	case kitchen.Stalled:
		return "saw it stand still"
	case kitchen.NothingGrew:
		return "saw nothing grow"
	case kitchen.Bulging:
		return "found it bulging"
	case kitchen.Leaking:
		return "found it leaking"
	case kitchen.WentBad:
		return "called it contaminated"
	}
	panic("sign without words")
}

// betweenWord is a kind of step as it is counted.
func betweenWord(k kitchen.UnitKind) string {
	switch k {
	case kitchen.SaidCooked:
		return "cooked"
	case kitchen.SaidArrived:
		return "came here"
	case kitchen.SaidInoculated:
		return "inoculated"
	case kitchen.SaidGone:
		return "off the shelf"
	case kitchen.SaidBlank:
		return "left as the blank"
	case kitchen.SaidShaken:
		return "shaken"
	case kitchen.SaidGrowth:
		return "growth seen"
	case kitchen.SaidGrownThrough:
		return "seen grown through"
	case kitchen.SaidSuspect:
		return "seen suspect"
	case kitchen.SaidFine:
		return "found fine"
	case kitchen.SaidContaminated:
		return "seen contaminated"
	case kitchen.SaidDead:
		return "nothing grew"
	case kitchen.SaidPartUsed:
		return "used in part"
	case kitchen.SaidUsed:
		return "used"
	case kitchen.SaidGiven:
		return "given away"
	case kitchen.SaidDiscarded:
		return "thrown out"
	case kitchen.SaidMoved:
		return "moved"
	case kitchen.SaidLot, kitchen.SaidStood, kitchen.SaidNamed, kitchen.SaidTagged:
	}
	panic("step without a story: " + k.String())
}
