// Package conduction solves heat conduction in simple bodies whose surface is
// held against surroundings of one temperature: the classical series.
//
// A short cylinder is the product of a wall and a long cylinder, a brick that of
// three walls (Newman's product rule). Temperatures are excesses over the
// surroundings, as shares of the excess at the start; lengths are shares of the
// half thickness or radius L, times Fourier numbers Fo = α t/L², the coefficient
// of the surface a Biot number Bi = h L/k.
//
// Source of all formulas: Carslaw and Jaeger, Conduction of Heat in Solids, and
// any textbook after it (Incropera and DeWitt, chapter 5; Çengel, chapter 4);
// written from memory, and held in the tests against tables and worked examples.
//
// It knows one constant coefficient. Package cooling has the one that falls.
package conduction
