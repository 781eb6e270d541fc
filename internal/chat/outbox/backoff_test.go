package outbox

import (
	"testing"
	"time"
)

func TestBackoff(t *testing.T) {
	for _, c := range []struct {
		attempt int
		chance  float64
		want    time.Duration
	}{
		{1, 0.5, time.Second},
		{2, 0.5, 2 * time.Second},
		{3, 0.5, 4 * time.Second},
		{9, 0.5, 256 * time.Second},
		{10, 0.5, 5 * time.Minute},
		{1000, 0.5, 5 * time.Minute},
		{0, 0.5, time.Second},
		{1, 0, 800 * time.Millisecond},
		{1, 1, 1200 * time.Millisecond},
		{20, 0, 4 * time.Minute},
		{20, 1, 6 * time.Minute},
	} {
		got := backoff(c.attempt, c.chance)
		if diff := got - c.want; diff < -time.Microsecond || diff > time.Microsecond {
			t.Errorf("backoff(%d, %g) = %v, want %v", c.attempt, c.chance, got, c.want)
		}
	}
}
