//go:build race

package ordeal

// The race detector looks at other things, and makes the database some hundred
// times slower: fewer trials, in a shorter script.
const (
	slowness = 200 // divides how often a random trial is repeated
	busy     = "quarter.txt"
)
