// Package cooling says when the middle of a jar or bag will be cool, and how
// surely.
//
// A body is a short cylinder or a brick of wetted grain. Heat is conducted inside
// and leaves the surface by natural convection and radiation, both of which fade
// as it cools: there is no one time constant, and a forecast by one comes too
// early. It starts at zero pressure, at the kitchen's boiling point, in the closed
// pot; out of the pot it is faster.
//
// Nothing of that is known well: the conductivity of wetted grain within a factor
// of 1.6, the coefficient of a bag in a crowd, the room. So a forecast weighs some
// thousand kitchens that differ in the time scale (how much slower than the table
// of properties says), in how the skin stands to the core, in the pot and in the
// room, by how well they agree with the readings (Bayes), and answers in ranges
// that hold four times of five. A floor that no number of readings removes stands
// for what the model leaves out.
//
// Learn carries what finished runs have shown to the next forecast. Heated is the
// same body on the way up, by conduction alone: a lower bound, never a pass mark.
//
// The package has no clock: times count from zero pressure.
package cooling
