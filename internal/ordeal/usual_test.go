//go:build !race

package ordeal

const (
	slowness = 1         // divides how often a random trial is repeated
	busy     = "day.txt" // the script of most trials
)
