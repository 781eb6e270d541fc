//go:build !race

package ordeal

// slowness divides how often a random trial is repeated.
const slowness = 1
