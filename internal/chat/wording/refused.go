package wording

import (
	"fmt"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// Refused says why something can't be done, where it needs neither times nor names.
func Refused(r kitchen.Refusal) chat.Post { return RefusedHere(r, Asked{}) }

// RefusedHere says why something can't be done or can't be so, with who, when, and
// what to type instead.
func RefusedHere(r kitchen.Refusal, a Asked) chat.Post {
	switch r := r.(type) {
	case kitchen.OutOfRange:
		return outOfRange(r)
	case kitchen.KillsCulture:
		return killsCulture(r)
	case kitchen.NoHold:
		return lines("How long for a **"+one(r.Container)+"**? I know no usual hold for one so large.",
			"Set it, like `hold "+typed(r.Container)+"s 240`, or use smaller ones.")
	case kitchen.NoSuchRun:
		return lines("There is no run **" + r.Run.String() + "** in this book yet.")
	case kitchen.NoPlanYet:
		return lines("There is no plan here to go on from.", "Ask for one first, like `3 bags 5lb agar`.")
	case kitchen.NoUsualYet:
		return lines("Nobody has said yet what the usual is.", "Say it, like `the usual is 3 bags 5lb agar`.")
	case kitchen.NotSteward:
		return lines("Only a steward changes that. Nothing was written.", "Who is one: `members`.")
	case kitchen.LastSteward:
		return lines("You are the only steward, so that stays.", "Name another first, like `make Ana a steward`.")
	case kitchen.NoSuchMember:
		return theirs(say("I know nobody here called {}.", r.Name), say("Who is here: `members`. People count once they have spoken."))
	case kitchen.NoSuchCooker:
		return theirs(say("I know no cooker called {}, only {}.", r.Name, listed(r.Known)), say("A new one? Say what it takes, like `big pot takes 7 quarts or 3 5lb bags`"))
	case kitchen.WhichCooker:
		return whichCooker(r, a)
	case kitchen.NothingToUndo:
		return lines("You have said nothing here that could be taken back.")
	case kitchen.TooDry:
		return lines("**"+finePercent(r.Wanted)+" is below what the grain has** as bought, "+finePercent(r.Stored)+".",
			"Ask for 35 to 60"+nb+"%, like `2 kg rye at 45% moisture`.")
	case kitchen.WrongCode:
		return lines("That code doesn't work: wrong, used or too old.", "A steward gets a new one with `code for another room`, in a room that has joined.")
	case kitchen.TooManyTries:
		return lines("Too many wrong codes here. Try again in an hour.")
	case kitchen.UnknownZone:
		return theirs(say("I know no time zone {}.", r.Name), say("It looks like `time zone Europe/Berlin`."))
	case kitchen.NameTaken:
		return theirs(say("{} is somebody else's name here.", r.Name), say("Take another, like `call me Ana B`."))
	case kitchen.NoRoom:
		return lines("Not one **" + one(r.Container) + "** goes into that cooker.")
	case kitchen.TooSmall:
		return lines("**Not enough for one**: a " + one(r.Container) + " takes " + grams(r.Needs) + " dry, you have " + grams(r.AtHand) + ".")
	case kitchen.TooLate:
		return tooLate(r)
	case kitchen.NotYet:
		return notYet(r)
	case kitchen.Misplaced:
		return misplaced(r, a)
	case kitchen.AlreadySo:
		return alreadySo(r, a)
	case kitchen.Over:
		return past(r)
	case kitchen.BeforeRun:
		return beforeRun(r, a)
	case kitchen.InFuture:
		return inFuture(r, a)
	case kitchen.Contradicts:
		return contradicts(r, a)
	case kitchen.NotOffered:
		return notOffered(r, a)
	case kitchen.StillOn:
		return stillOn(r, a)
	case kitchen.NoSuchUnit:
		return noSuchUnit(r)
	case kitchen.Booked:
		return booked(r, a)
	case kitchen.NoSuchBooking:
		return with(lines("You have no booking like that. Nothing was written."), tap("Bookings", "bookings"))
	case kitchen.EmptyBooking:
		return emptyBooking(r, a)
	case kitchen.AlreadyOn:
		return alreadyOn(r, a)
	case kitchen.TooLongHere:
		return lines("**Not with this cooker at this height**: the hold would be "+span(r.Hold.Time)+". Nothing was put on.", tooLongAdvice(r.Hold))
	case kitchen.NoSuchTime:
		return theirs(say("I can't find {} in the calendar. Nothing was written.", r.Said), say("Like: `out by 20:30`, `out by friday 18:00`"))
	case kitchen.NoHour:
		return theirs(say("**At what time**, {}?", r.Said), say("Like: `out by 20:30`, `out by friday 18:00`"))
	case kitchen.NeverTold:
		return neverTold(r)
	case kitchen.UnitNotYet:
		return unitNotYet(r)
	case kitchen.UnitPast:
		return unitPast(r, a)
	case kitchen.UnitAlready:
		return unitAlready(r, a)
	case kitchen.UnitContradicts:
		return unitContradicts(r, a)
	case kitchen.NotCookedHere:
		return lines("**"+r.Run.String()+" was not cooked here**: it has jars or bags, and no run. Nothing was written.", "Speak of them, like `"+r.Run.String()+".1 30%`. How they stand: `log "+r.Run.String()+".1`")
	case kitchen.NoneMeant:
		return noneMeant(r)
	case kitchen.NoSuchUnitName:
		return theirs(say("Nothing on the shelf is called {}. Nothing was written.", r.Name), say("Say its number, like `12.3`, or see `shelf`"))
	case kitchen.UnitNameShared:
		return nameShared(r)
	case kitchen.OwnAncestor:
		return ownAncestor(r)
	case kitchen.NoSuchCulture:
		return theirs(say("I know no culture called {}. Nothing was written.", r.Name))
	case kitchen.CultureKnown:
		return theirs(say("There is a {} already, made "+near(a.Now, r.Made)+". Nothing was written.", r.Name))
	case kitchen.CultureOver:
		return theirs(say("{} is over since "+near(a.Now, r.Ended)+". Nothing was written.", cultureHead(r.Name)), say("A new one of that name? `new culture called "+typable(r.Name)+"`"))
	case kitchen.TakenBackAlready:
		return lines("That was taken back already. Nothing changed.")
	}
	panic("refusal without words: " + r.Error())
}

// theirs makes a post of paragraphs that hold words of people; empty ones are
// left out.
func theirs(paras ...chat.Para) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	for _, p := range paras {
		if len(p) > 0 {
			post.Blocks = append(post.Blocks, p)
		}
	}
	return post
}

// outOfRange says which number, which limit and whose, and the nearest that
// works.
func outOfRange(r kitchen.OutOfRange) chat.Post {
	limits := "from " + limit(r.What, r.Low) + " to " + limit(r.What, r.High)
	head := "**" + limit(r.What, r.Got) + "** " + rangeWords(r.What) + ": I take " + limits + "."
	return lines(head, rangeExample(r.What))
}

// RefusedSize refuses a size and offers the one that was probably meant, with the
// sentence that orders it.
func RefusedSize(r kitchen.OutOfRange, meant kitchen.Order, sentence string) chat.Post {
	post := outOfRange(r)
	it := meant.Items[0]
	post.Blocks = append(post.Blocks[:len(post.Blocks)-1], say("Meant "+orderWords(meant)+"?"))
	return with(post, tap(typed(it.Container)+"s", sentence))
}

// limit prints a value in the base unit of a quantity.
func limit(q kitchen.Quantity, v float64) string {
	switch q {
	case kitchen.CountOfUnits, kitchen.CookerCapacity:
		return whole(v)
	case kitchen.BagWeight, kitchen.JarWeight, kitchen.LooseGrain, kitchen.ScaleStepSize:
		return massEither(unit.Grams(v))
	case kitchen.JarVolume, kitchen.PotVolume, kitchen.CookerWater:
		return jarSize(unit.Litres(v))
	case kitchen.HeightOfKitchen:
		return height(unit.Metres(v))
	case kitchen.RoomWarmth, kitchen.LimitOfCool:
		return warmth(unit.Celsius(v))
	case kitchen.HoldTime:
		return span(time.Duration(v * float64(time.Minute)))
	case kitchen.GaugePressure:
		return psi(unit.GaugeKPa(v))
	case kitchen.WaterRatio, kitchen.SoakedYield:
		return upTo(2, v)
	case kitchen.Moisture, kitchen.GrainMoisture, kitchen.GypsumShare, kitchen.HeadspaceShare:
		return finePercent(unit.Fraction(v))
	case kitchen.BoilOffRate:
		return upTo(2, v) + nb + "L an hour"
	case kitchen.ReadTemp:
		return warmth(unit.Celsius(v))
	case kitchen.FallTime, kitchen.DipTime:
		return span(time.Duration(v * float64(time.Minute)))
	case kitchen.GrownShare:
		return finePercent(unit.Fraction(v))
	case kitchen.CultureVolume:
		return litres(unit.Litres(v))
	case kitchen.DaysOfRest:
		return plural(int(v), "day")
	case kitchen.GaugeError:
		return psi(unit.GaugeKPa(v))
	case kitchen.ClockTime:
		return fmt.Sprintf("%02d:%02d", int(v)/60, int(v)%60)
	}
	panic("quantity without a unit")
}

// massEither prints a limit as it was said, with kilograms beside pounds.
func massEither(g unit.Grams) string {
	s := massAsSaid(g)
	if g >= unit.Kilograms(1) && !isRound(g.Kilograms(), 100) {
		return s + " (" + kilos(g) + ")"
	}
	return s
}

func rangeWords(q kitchen.Quantity) string {
	switch q {
	case kitchen.CountOfUnits:
		return "is no number of jars or bags for one order"
	case kitchen.BagWeight:
		return "is no size of a bag"
	case kitchen.JarVolume:
		return "is no size of a jar"
	case kitchen.JarWeight:
		return "is no weight of grain for that jar"
	case kitchen.LooseGrain:
		return "of grain is out of range"
	case kitchen.HeightOfKitchen:
		return "is no height for a kitchen"
	case kitchen.RoomWarmth:
		return "is no warmth for a room"
	case kitchen.LimitOfCool:
		return "is no limit for inoculating"
	case kitchen.HoldTime:
		return "is no hold"
	case kitchen.GaugePressure:
		return "is no pressure for that"
	case kitchen.WaterRatio:
		return "water per dry grain is out of range"
	case kitchen.Moisture:
		return "is no moisture for stored grain"
	case kitchen.GrainMoisture:
		return "is no moisture for grain to cook"
	case kitchen.GypsumShare:
		return "is no share of gypsum"
	case kitchen.HeadspaceShare:
		return "is no headspace"
	case kitchen.ScaleStepSize:
		return "is no step of a scale"
	case kitchen.PotVolume:
		return "is no size of a pot"
	case kitchen.CookerWater:
		return "is no water for a cooker"
	case kitchen.CookerCapacity:
		return "is no number that a cooker takes"
	case kitchen.SoakedYield:
		return "times its dry weight is out of range"
	case kitchen.BoilOffRate:
		return "is no boil-off"
	case kitchen.ReadTemp:
		return "is no temperature of grain"
	case kitchen.FallTime:
		return "is no time for a cooker to fall to zero"
	case kitchen.DipTime:
		return "is no dip"
	case kitchen.GaugeError:
		return "is more than a gauge is off"
	case kitchen.ClockTime:
		return "is no time of day"
	case kitchen.GrownShare:
		return "is no share of a unit"
	case kitchen.CultureVolume:
		return "is no volume of a culture"
	case kitchen.DaysOfRest:
		return "is too long a rest for cooked grain"
	}
	panic("quantity without words")
}

func rangeExample(q kitchen.Quantity) string {
	switch q {
	case kitchen.CountOfUnits, kitchen.BagWeight:
		return "Like: `3 bags 5lb agar`"
	case kitchen.JarVolume, kitchen.JarWeight:
		return "Like: `4 quart jars rye LC`"
	case kitchen.LooseGrain:
		return "Like: `2 kg rye at 45% moisture`"
	case kitchen.HeightOfKitchen:
		return "Like: `we're at 1600 m`"
	case kitchen.RoomWarmth:
		return "Like: `room 19C`"
	case kitchen.LimitOfCool:
		return "Like: `we inoculate below 25C`"
	case kitchen.HoldTime:
		return "Like: `hold 5lb bags 150`"
	case kitchen.GaugePressure:
		return "More than 15" + nb + "psi only if the maker says so: `big pot max 18 psi`"
	case kitchen.WaterRatio:
		return "Like: `agar 0.44`, grams of water per gram of dry grain."
	case kitchen.Moisture:
		return "Like: `rye is 13% moisture`"
	case kitchen.GrainMoisture:
		return "Like: `2 kg rye at 45% moisture`"
	case kitchen.GypsumShare:
		return "Like: `gypsum 1%`"
	case kitchen.HeadspaceShare:
		return "Like: `headspace 30%`"
	case kitchen.ScaleStepSize:
		return "Like: `round to 10 g`"
	case kitchen.PotVolume, kitchen.CookerWater, kitchen.CookerCapacity:
		return "Like: `big pot takes 7 quarts or 3 5lb bags`"
	case kitchen.SoakedYield:
		return "Like: `5 kg rye came out 9.4 kg`"
	case kitchen.BoilOffRate:
		return "Like: `big pot boils off 0.5 l an hour`"
	case kitchen.ReadTemp:
		return "Like: `46C` or `#12 115f`"
	case kitchen.FallTime:
		return "I learn it from `heat off` and `zero`."
	case kitchen.DipTime:
		return "Like: `dropped to 11 for 4 min`; longer is `lost pressure`."
	case kitchen.GaugeError:
		return "Like: `gauge reads 1 low`. More than 2" + nb + "psi off: replace it."
	case kitchen.ClockTime:
		return "Like: `quiet 22-7`"
	case kitchen.GrownShare:
		return "Like: `12.2 30%`"
	case kitchen.CultureVolume:
		return "Like: `12.1-4 oyster lc 10ml`"
	case kitchen.DaysOfRest:
		return "Like: `rest 3 days before inoculating`"
	}
	panic("quantity without an example")
}

// whichCooker asks which cooker is meant: a button for each that the sentence can be
// said of, else how to say it.
func whichCooker(r kitchen.WhichCooker, a Asked) chat.Post {
	why := say("**Which cooker**, {}? Nothing was written.", strings.Join(r.Known, " or "))
	names, example := phrase.Names{Cookers: r.Known}, r.Known[0]+" max 15 psi"
	var taps []chat.Button
	for _, name := range r.Known {
		said := name + " " + a.Said
		if p := phrase.Parse(said, names); len(p.Intents) != 1 || a.Said == "" {
			break
		}
		example = r.Known[0] + " " + a.Said
		if len([]rune(name)) > longestLabel || len(r.Known) > maxButtons {
			break
		}
		taps = append(taps, tap(capital(name), said))
	}
	if len(taps) == len(r.Known) {
		return with(theirs(why), taps...)
	}
	return theirs(why, append(say("Say it with the name, like "), chat.Code(example)))
}
