// Package grain knows the nine kinds of grain that spawn is made from, and what
// a plan must assume of each as long as the collective has not weighed its own.
//
// All figures are starting values, not properties: a real lot differs by
// several per cent in density and by more in what it soaks up. The soaked
// yields and simmering times are common practice; the dry densities are trade
// weights per US bushel (University of Missouri Extension G4020; Ohio State
// University Extension AGF-503-00), except those of brown rice and birdseed,
// for which no published weight was found.
package grain
