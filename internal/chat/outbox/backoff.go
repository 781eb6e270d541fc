package outbox

import "time"

// The wait before another try doubles from the first to the longest.
const (
	firstWait   = time.Second
	longestWait = 5 * time.Minute
	// spread is how far the wait strays to either side, as a share of it, so
	// that rooms that failed together don't come back together.
	spread = 0.2
)

// backoff is how long to wait after the failed try number attempt, counted from
// 1. The chance, 0 to 1, says where in the spread the wait lies.
func backoff(attempt int, chance float64) time.Duration {
	wait := longestWait
	// Nine doublings are more than five minutes; shifting further would overflow.
	if n := max(attempt, 1) - 1; n < 9 {
		wait = min(firstWait<<n, longestWait)
	}
	return time.Duration(float64(wait) * (1 - spread + 2*spread*chance))
}
