// Package hold carries a holding time from the reference cycle to a kitchen
// that stands higher or whose cooker reaches less.
//
// The reference is 15 psi on the gauge at sea level, about 121 °C. Steam that is
// colder needs longer for the same lethality (package lethality). That is an
// upper bound on what elevation costs: part of any hold is heat creeping into
// the load, which hardly depends on the height. The better answer, where the
// cooker is rated for it, is more pressure; this package says how much would
// restore the temperature and leaves the advice to those who know the rating.
package hold
