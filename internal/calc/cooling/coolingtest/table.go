package coolingtest

// spreads is everything that is drawn.
type spreads struct {
	// The grain.
	diffusivity, diffusivityOfRun, steaming, specificHeat, jarDensity, jarFill, jarSize, bagWeight, bagEdge, bagStands, glass spread
	// The air around it.
	film, filmOfRun, glassEmissivity, bagEmissivity, lidEmissivity, lidGap, bagGap, bagPocket spread
	rackShare, board, stone, onRack, onBoard                                                  spread
	close, closeJar, closeBag, warmedAir, draughty, draught                                   spread
	draughtFrom, draughtFor                                                                   spread
	elevation, room, nightDrop, kitchenWarmth, kitchenFades, zeroHour                         spread
	startOver                                                                                 spread
	pints, quarts, halfGallons, smallBags, bigBags                                            spread
	potMetal, potWater, potArea, potEmissivity, potInside, potCrowd                           spread
	leftForHours, neverLifted, liftedSoon, liftedLate                                         spread
	probeOffset, probeNoise, probeFin, probeSpot, foldBag, foldJar, roomOff                   spread
	roomNoise                                                                                 spread
}

// table is the one place of every number that is drawn. Sources: check values T6
// (Kazarian and Hall 1965, grain), H (simplified natural convection in air at one
// atmosphere, laminar, as textbooks of heat transfer print it, from memory), E
// (textbook tables of emissivity, from memory), G (the growers' trade figures:
// containers, filling, cookers, some of them common practice). "no source" means
// that somebody judged it.
var table = spreads{
	diffusivity:      spread{factor, 1.2e-7, 0.22, "m²/s at 60 °C", "check values: 1.2e-7 within a factor 1.6 either way; this is the kitchen's part of it (its grain, its moisture)"},
	diffusivityOfRun: spread{factor, 1, 0.18, "", "the run's part: with the kitchen's, 9 of 10 lie within the factor 1.6"},
	steaming:         spread{even, 0, 1.2, "share more conductivity at 100 than at 20 °C", "moist beds carry heat as vapour while hot; its size no source"},
	specificHeat:     spread{factor, 3200, 0.06, "J/(kg K)", "T6 stretched: 3.03 at 40 %, 3.24 at 45 %, 3.44 at 50 % moisture"},
	jarDensity:       spread{normal, 680, 45, "kg/m³", "G: wetted grain loose 0.60–0.75 kg/L"},
	jarFill:          spread{even, 0.62, 0.80, "of the brim", "G: jars are filled 2/3 to 3/4; a little more either way, no source"},
	jarSize:          spread{factor, 1, 0.03, "of the radius", "makers' jars of one volume differ; no source"},
	bagWeight:        spread{factor, 1, 0.03, "of the nominal weight", "kitchen scales and water kept or lost in the cook: G, 1–3 %"},
	bagEdge:          spread{factor, 1, 0.06, "of each edge", "footprints from memory (G), bags settle as they are put; no source"},
	bagStands:        spread{chance, 0.5, 0, "", "bags stand or lie while they cool; no source"},
	glass:            spread{even, 4500, 7500, "J/(m² K)", "2–3.5 mm of soda-lime glass, 2500 kg/m³, 840 J/(kg K): E; thickness no source"},

	film:            spread{factor, 1, 0.15, "", "H is good to about 20 %; the kitchen's part (its shelf, its corner)"},
	filmOfRun:       spread{factor, 1, 0.12, "", "the run's part: with the kitchen's about 20 %"},
	glassEmissivity: spread{even, 0.88, 0.95, "", "E: glass 0.90–0.95"},
	bagEmissivity:   spread{even, 0.80, 0.95, "", "E: plastics 0.85–0.95; thin film is partly clear, wet grain behind it 0.95"},
	lidEmissivity:   spread{even, 0.1, 0.9, "", "E: foil and tinned lids 0.1–0.3, plastic lids 0.9"},
	bagGap:          spread{even, 0, 0.03, "m² K/W", "kernels touch the film in points: 0–1 mm of still air, k 0.03 (E); thickness no source"},
	bagPocket:       spread{evenLog, 5, 40, "W/(m² K)", "air and folded film over the grain; no source"},
	lidGap:          spread{evenLog, 4, 15, "W/(m² K)", "air and vapour between grain and lid; no source"},
	rackShare:       spread{even, 0.6, 1, "", "what a wire rack leaves free of the bottom; no source"},
	board:           spread{even, 2, 7, "W/(m² K)", "towel or 2–5 cm of wood, k 0.1–0.15 (E); thickness no source"},
	stone:           spread{evenLog, 7, 22, "W/(m² K)", "thick stone takes √(kρc/πt): 22 after 1 h, 7 after 10 h with √(kρc) = 2300; a steel counter lies between"},
	onRack:          spread{chance, 0.35, 0, "", "no source"},
	onBoard:         spread{chance, 0.6, 0, "of those on no rack", "no source"},
	close:           spread{chance, 0.5, 0, "", "no source"},
	closeJar:        spread{even, 0.25, 0.8, "of the side's exchange", "neighbours within 2 cm stop radiation and hinder convection, from a third of the round to all; no source"},
	closeBag:        spread{even, 0.05, 0.5, "of the exchange of the touching faces", "middle and end of a row; no source"},
	warmedAir:       spread{even, 0, 0.15, "of the skin's excess", "a group warms its own air; no source"},
	draughty:        spread{chance, 0.3, 0, "", "a window, a fan, a hood for a while; no source"},
	draught:         spread{even, 1, 7, "W/(m² K)", "air at 0.2–1 m/s along 10 cm: H, forced"},
	draughtFrom:     spread{even, 0, 8, "h after zero", "no source"},
	draughtFor:      spread{evenLog, 0.5, 6, "h", "no source"},

	elevation:     spread{even, 0, 2000, "m", "where most kitchens are; no source"},
	room:          spread{even, 16, 26, "°C by day", "heated and unheated kitchens; no source"},
	nightDrop:     spread{even, 0, 4, "K from 22:00 to 06:00", "heating turned down at night; no source"},
	kitchenWarmth: spread{even, 0, 3, "K over the day's room at zero", "hours of boiling warm a kitchen; no source"},
	kitchenFades:  spread{evenLog, 0.7, 3, "h", "no source"},
	zeroHour:      spread{even, 12, 22, "o'clock", "G: a cook day ends in the afternoon or evening"},
	startOver:     spread{even, -1.5, 1, "K over the boiling point", "the grain boils down with the pressure; a cold middle or a slow one, no source"},

	pints:       spread{even, 5, 16, "in the pot", "G: 8–10 in one layer, 18–20 in two; part loads no source"},
	quarts:      spread{even, 3, 7.99, "in the pot", "G: 7 in the usual pot; part loads no source"},
	halfGallons: spread{even, 1, 4.99, "in the pot", "no source"},
	smallBags:   spread{even, 2, 6.99, "in the pot", "G: one record of seven; no source"},
	bigBags:     spread{even, 1, 4.99, "in the pot", "G: 2–3, 4 tight"},

	potMetal:      spread{evenLog, 2500, 7000, "J/K", "3–8 kg of aluminium, 900 J/(kg K) (E); weights no source"},
	potWater:      spread{even, 1, 3, "L left", "G: at least a litre is to be left; 3–5 L were put in"},
	potArea:       spread{even, 0.3, 0.55, "m²", "lid and wall of 30 × 30 cm, and of a larger one; the bottom stands on the stove"},
	potEmissivity: spread{even, 0.1, 0.6, "", "E: polished aluminium 0.1, used steel and cast 0.3–0.6"},
	potInside:     spread{evenLog, 8, 35, "W/(m² K)", "air and condensing vapour in the closed pot; no source"},
	potCrowd:      spread{even, 0.4, 1, "of the sides' exchange", "a crowded pot; no source"},
	leftForHours:  spread{chance, 0.15, 0, "", "dinner came between; no source"},
	neverLifted:   spread{chance, 0.12, 0, "", "left in the pot overnight; no source"},
	liftedSoon:    spread{evenLog, 5, 120, "min after zero", "no source"},
	liftedLate:    spread{even, 2, 8, "h after zero", "no source"},

	probeOffset: spread{normal, 0, 0.5, "K", "makers give ± 1 K: shared by all readings of one probe; with the noise 0.7 K"},
	probeNoise:  spread{normal, 0, 0.5, "K", "each reading's own part"},
	probeFin:    spread{even, 0, 0.1, "of the excess over the room", "a probe laid on a skin is cooled by its stem; no source"},
	probeSpot:   spread{even, 0, 1, "of the way from the sides' mean to their middle", "people lay it on the middle of a side, or near an edge; no source"},
	foldBag:     spread{even, 0.15, 0.5, "of the way from skin to core", "bags pressed together over the probe for some minutes; no source"},
	foldJar:     spread{even, 0, 0.15, "of the way from skin to core", "glass does not give; no source"},
	roomOff:     spread{normal, 0, 0.8, "K", "a wall thermometer elsewhere in the room; no source"},
	roomNoise:   spread{normal, 0, 0.5, "K", "people say whole degrees; no source"},
}
