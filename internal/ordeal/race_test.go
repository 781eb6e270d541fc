//go:build race

package ordeal

// slowness divides how often a random trial is repeated: the race detector looks
// at other things and makes the database many times slower.
const slowness = 200
