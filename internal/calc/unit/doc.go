// Package unit gives the quantities of a spawn kitchen types that can't be
// mixed up.
//
// Each type is a float64 named after the unit it counts, so that
// unit.Grams(1360) says what it is and adding grams to litres doesn't compile.
// Constructors convert from what people say (Pounds, USQuarts, PSI), accessors
// convert back (g.Pounds()). Convert once at the edge coming in and once at
// the edge going out; between them the base unit travels.
//
// Two pairs look alike and are kept apart: a temperature reading (Celsius)
// against a difference of two (Kelvins), and pressure over the surrounding air
// (GaugeKPa) against pressure over nothing (AbsoluteKPa). A gauge reading
// becomes absolute only through the atmosphere it was read in, by
// GaugeKPa.Above.
//
// Factors are exact by definition where the text says so: NIST Special
// Publication 811 (2008), appendix B, and NIST Handbook 44, appendix C. The
// package rounds and prints nothing.
package unit
