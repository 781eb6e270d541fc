//go:build race

package kitchen

// The race detector makes sums some ten times slower: fewer coolings are simulated.
const slowness = 10
