// Package steam tells how hot it is inside a pressure cooker, from its gauge
// and the height of the kitchen.
//
// The chain has three links: the standard atmosphere gives the pressure of the
// air at that height, the gauge adds to it, and the saturation line of water
// gives the temperature at which steam and water stand side by side under that
// pressure. A gauge shows the pressure over the outside air, so the same 15 psi
// is 121.0 °C at the sea and 118.1 °C at 1600 m.
//
// It holds for pure steam. Air left in the cooker makes it colder than its
// gauge says (a tenth by volume: 3 K), which no formula here knows; hence the
// vent. Weather moves the air by some 2 kPa, that is 0.3 K at 15 psi.
package steam
