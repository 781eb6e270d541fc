// Package coolingtest cools jars and bags of cooked grain in kitchens that are
// drawn at random, so that a forecast of cooling can be held against many
// coolings whose end is known. Only tests import it.
//
// It is on purpose another model than a forecast will use, and a richer one. A
// finite-volume solution in r and z (jar) or x, y and z (bag) carries what
// closed formulas leave out: a top, a bottom and sides that lose heat
// differently, convection that falls with the fourth root of the excess,
// radiation by the fourth powers, a bed that conducts better while it is hot and
// steams, the glass around it, the closed pot with its metal and left-over water,
// a room that is warm from cooking and cools at night, draughts, neighbours.
//
// A Kitchen is what stays the same from run to run; Kitchen.Draw draws one
// Cooling in it; Cooling.Run solves it and gives a Curve, from which readings
// are taken with the errors that a probe makes. Time counts from zero pressure.
// The same seed gives the same kitchen, cooling and readings.
//
// All numbers that are drawn stand in table.go, each with its reason, and with
// its source or the words "no source".
//
// What it leaves out: water that evaporates through a filter patch, grain that is
// wetter below than above, bags that are not bricks, units of one load that
// differ from each other, and heat from growth (nothing is alive in it yet).
package coolingtest
