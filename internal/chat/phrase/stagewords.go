package phrase

import "ryebell/internal/kitchen"

// told is one thing that happens to a run, in the words for it; the first of the
// words print it. Loose ones are also said between people.
type told struct {
	entry kitchen.RunEntry
	kind  kitchen.Kind
	loose []string
	plain []string
}

// stages are the things that are told in words alone.
var stages = [...]told{
	{kitchen.HeatOn{}, kitchen.KindHeatOn, []string{"lit it", "on the stove", "put it on the stove", "lit", "it's lit", "its lit", "fire on", "it's on the stove", "its on the stove", "turned it on", "lit it again", "relit it", "relit", "lit again"}, []string{
		"heat on", "heat is on", "heat's on", "heats on", "flame on", "flame is on", "flame's on", "flames on", "burner on", "burner is on", "burner's on",
		"stove on", "stove is on", "stove's on", "turned the heat on", "turned on the heat", "heat going", "heating up", "started heating", "lit the burner", "lit the stove",
		"lit the gas", "gas on", "started the heat", "turned the flame on", "lit the pot", "turned the burner on", "heating", "flame is back", "flame's back", "flame is back on", "flame's back on", "flame back on",
		"power is back", "power's back", "stove is back on", "gas is back on", "gas is back", "heat is back on", "heat's back on", "heat back on", "fire back on", "heat on again", "flame on again", "relit the pot",
		"lit the pot again", "relit the burner", "lit the burner again",
	}},
	{kitchen.Steam{}, kitchen.KindSteam, []string{"steam", "steaming", "venting"}, []string{
		"steam is coming out", "steam coming out", "steam comes out", "started venting", "vent started", "vent start", "steaming now", "venting now",
		"steam from the vent", "steam out of the vent", "steady steam", "steam plume", "full steam", "got steam", "there's steam", "theres steam", "there is steam", "steam is out",
		"steady plume", "it started steaming", "it started venting", "started steaming", "starts steaming", "vent is steaming", "steam is on", "begin venting",
	}},
	{kitchen.VentClosed{}, kitchen.KindVentClosed, []string{"vented"}, []string{
		"weight on", "weight is on", "weight's on", "weights on", "vent done", "vent is done", "vent over", "vent closed", "closed the vent", "venting done",
		"done venting", "finished venting", "vented and closed", "put the weight on", "weight went on", "vent shut", "shut the vent", "vent is closed",
		"jiggler on", "rocker on", "regulator on", "petcock closed", "closed the petcock", "venting over", "venting is done", "venting finished", "weight's down",
		"put weight on", "weights are on",
	}},
	{kitchen.AtPressure{}, kitchen.KindAtPressure, nil, []string{
		"at pressure", "up to pressure", "at full pressure", "full pressure", "pressure reached", "reached pressure", "made pressure", "hit pressure",
		"under pressure", "pressure is up", "pressure's up", "pressure up", "came up to pressure", "come up to pressure", "it came up", "rocking", "weight is rocking", "weight's rocking",
		"weight rocks", "jiggling", "up at pressure", "got to pressure", "pressurised", "pressurized", "on pressure",
	}},
	{kitchen.PressureLost{}, kitchen.KindPressureLost, []string{"dropping", "it's dropping", "its dropping"}, []string{
		"lost pressure", "pressure lost", "pressure is lost", "pressure's lost", "losing pressure", "it lost pressure", "pressure gone", "pressure's gone",
		"pressure is gone", "pressure is dropping", "pressure's dropping", "pressure dropping", "pressure is falling", "pressure falling", "pressure's falling",
		"pressure fell", "pressure is going down", "lost the pressure", "pressure went down", "not holding pressure", "pressure dropped", "dropping pressure",
		"pressure low", "pressure is low", "pressure's low", "low pressure", "sagging", "pressure is sagging", "pressure sagging", "it's sagging", "its sagging", "pressure too low", "pressure is too low",
	}},
	{kitchen.PressureBack{}, kitchen.KindPressureBack, []string{"it's back up", "its back up", "back up", "back", "back again"}, []string{
		"pressure back", "pressure is back", "pressure's back", "back at pressure", "back to pressure", "back up to pressure", "pressure's back up",
		"pressure is back up", "pressure back up", "back under pressure", "got pressure back", "pressure came back", "back on pressure", "at pressure again",
		"back up at pressure",
	}},
	{kitchen.Dipped{}, kitchen.KindDipped, nil, []string{"pressure dipped", "pressure dip", "a pressure dip", "short pressure dip", "dip in pressure"}},
	{kitchen.HeatOff{}, kitchen.KindHeatOff, []string{
		"turned it off", "it's off", "its off", "it is off", "switched it off", "off", "turned off", "shut it off", "off the heat", "took it off", "turned that off",
		"off the stove", "switched off", "i turned it off", "heat of", "heat is of", "heats of", "heat's of", "flame of", "turn off heat", "turn heat off",
	}, []string{
		"heat off", "heat is off", "heat's off", "heats off", "flame off", "flame is off", "flame's off", "flames off", "burner off", "burner is off",
		"burner's off", "stove off", "stove is off", "stove's off", "turned the heat off", "turned off the heat", "turned off the stove", "heat out", "fire off",
		"turned the stove off", "turned the flame off", "turned off the flame", "turned the burner off", "turned off the burner", "switched the heat off", "killed the heat",
		"heat was off", "flame was off", "gas off", "gas is off", "gas's off", "turned the gas off", "turned off the gas", "took it off the heat", "off heat",
		"shut off the heat", "fire is off", "fire out", "cut the heat", "turned the pot off", "turned off the pot", "turned the cooker off",
	}},
	{kitchen.AtZero{}, kitchen.KindAtZero, []string{"zero", "at zero", "at zero now", "lid off", "lid is off", "lid's off", "lid open", "opened it", "lids off"}, []string{
		"gauge at zero", "gauge is at zero", "gauge says zero", "gauge shows zero", "gauge reads zero", "pressure at zero", "pressure is at zero", "zero pressure",
		"pressure zero", "down to zero", "came down to zero", "reached zero", "hit zero", "dropped to zero", "gauge zero", "zero on the gauge", "fell to zero",
		"pressure is zero", "pressure's at zero", "no pressure left", "zero psi", "gauge is zero", "gauge on zero", "opened the pot", "opened the cooker",
		"opened the lid", "lid off the pot",
	}},
	{kitchen.OutOfPot{}, kitchen.KindOutOfPot, []string{"they're out", "they are out", "theyre out", "took them out", "all out", "on the rack", "everything is out", "everything's out", "everything out", "out", "took em out", "took 'em out", "taken out", "taken them out", "out now"}, []string{
		"out of the pot", "out of the cooker", "out of the canner", "bags are out", "jars are out", "bags out", "jars out", "bags are out on the rack", "bags out on the rack",
		"jars are out on the rack", "jars out on the rack", "took the bags out", "took the jars out", "took out the bags", "took out the jars", "unloaded", "bags on the rack",
		"jars on the rack", "took them out of the pot", "took em out of the pot", "unloaded the pot", "unloaded the cooker", "out on the rack", "the bags are out", "the jars are out",
		"lifted them out", "lifted the bags out", "bags are out of the pot", "jars are out of the pot", "took everything out", "bags are on the rack", "jars are on the rack",
		"emptied the pot", "bags taken out", "jars taken out", "taken out of the pot", "bags are out now", "jars are out now",
	}},
	{kitchen.RunGone{}, kitchen.KindRunGone, []string{
		"gone", "all gone", "it's all gone", "they're gone", "they're all gone", "used up", "all used", "all used up", "it's used up", "nothing left of it",
	}, []string{
		"gone from the shelf", "off the shelf", "all gone from the shelf", "completely used", "used up the last of", "used the last of", "all of it is used", "all used now",
		"none left on the shelf", "nothing left on the shelf", "none are left on the shelf", "all given away", "used up all of",
	}},
	{kitchen.CalledOff{}, kitchen.KindCalledOff, []string{
		"called off", "call it off", "called it off", "calling it off", "abort", "aborted", "scrap it", "scrapped", "scrapped it",
		"it's off for today", "abandon it", "abandoned", "calling off", "call off",
	}, []string{
		"call off the run", "cancel the run", "run called off", "scrap the run", "abort the run", "called off the run", "run is off", "cancel this run", "call the run off",
		"called the run off", "stop the run", "cancel run", "abandon the run",
	}},
}

// preparing are the steps of the preparation, told in words alone.
var preparing = [...]told{
	{kitchen.PrepBegun{What: kitchen.Soaking}, kitchen.KindPrepBegun, []string{"soaking", "soak", "soaked since", "been soaking", "been soaking since"}, []string{
		"grain is soaking", "grain's soaking", "started soaking", "started the soak", "soak started", "soaking the grain", "grain is in water",
		"grain's in water", "grain's in the water", "put the grain in to soak", "put the grain to soak", "grain soaking", "soak begun", "put grain to soak", "started to soak",
		"grain is in the water", "rye is soaking", "rye soaking", "rinsed and soaking", "soaking the rye", "soaking rye",
	}},
	{kitchen.PrepBegun{What: kitchen.Simmering}, kitchen.KindPrepBegun, []string{"simmering", "simmer"}, []string{
		"grain's in the pot", "grain is in the pot", "grain in the pot", "grain is simmering", "grain's simmering", "started simmering", "grain simmering",
		"boiling the grain", "grain is boiling", "grain's boiling", "simmer started", "started the simmer", "simmering the grain", "grain's on", "grains in the pot",
		"rye is simmering", "rye's in the pot", "rye is in the pot", "rye simmering",
	}},
	{kitchen.PrepBegun{What: kitchen.Draining}, kitchen.KindPrepBegun, []string{"draining", "drain"}, []string{
		"grain is draining", "grain's draining", "started draining", "in the colander", "grain in the colander", "draining the grain", "grain draining", "in the strainer",
		"grain's in the colander", "rye is draining",
	}},
	{kitchen.PrepBegun{What: kitchen.Drying}, kitchen.KindPrepBegun, []string{"drying"}, []string{
		"grain is drying", "grain's drying", "spread to dry", "spread out to dry", "grain spread out", "steaming off", "steam drying", "grain drying", "started drying",
		"spread the grain", "spread the grain out", "drying the grain", "rye is drying",
	}},
	{kitchen.PrepEnded{What: kitchen.Soaking}, kitchen.KindPrepEnded, []string{"soaked"}, []string{
		"soak done", "soaking done", "done soaking", "finished soaking", "soak over", "soak is done", "soaking is done", "soak finished", "grain is soaked", "soaking over",
	}},
	{kitchen.PrepEnded{What: kitchen.Simmering}, kitchen.KindPrepEnded, []string{"simmered"}, []string{
		"simmer done", "simmering done", "done simmering", "finished simmering", "simmer over", "simmer is done", "simmering is done", "water is gone",
		"grain is simmered", "simmered out", "simmering over",
	}},
	{kitchen.PrepEnded{What: kitchen.Draining}, kitchen.KindPrepEnded, []string{"drained"}, []string{
		"draining done", "done draining", "drain done", "finished draining", "grain is drained", "drained it", "drained the grain", "grain drained", "draining is done",
		"draining over",
	}},
	{kitchen.PrepEnded{What: kitchen.Drying}, kitchen.KindPrepEnded, []string{"dried"}, []string{
		"drying done", "done drying", "finished drying", "surface dry", "grain is dry", "surface is dry", "drying is done", "grain is dried", "drying over",
	}},
	{kitchen.PrepEnded{}, kitchen.KindPrepEnded, nil, []string{"prep done", "preparation done", "prep is done", "preparation is done", "done with the prep"}},
}
