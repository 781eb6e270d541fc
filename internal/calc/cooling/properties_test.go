package cooling_test

import (
	"testing"

	"ryebell/internal/calc/cooling"
)

// TestProperties: each aspect stands in the table once, with a number, and a
// publication where it claims one.
func TestProperties(t *testing.T) {
	seen := map[cooling.Aspect]bool{}
	for _, p := range cooling.Properties() {
		if seen[p.Aspect] || p.Value <= 0 || p.Spread < 0 || p.Spread > 0.5 {
			t.Errorf("%v: %+v", p.Aspect, p)
		}
		if (p.Basis == cooling.FromMemory) != (p.Publication != "") {
			t.Errorf("%v: %v, but %q", p.Aspect, p.Basis, p.Publication)
		}
		seen[p.Aspect] = true
	}
	for a := cooling.JarDensity; a <= cooling.RemainingTime; a++ {
		if !seen[a] {
			t.Errorf("%v isn't in the table", a)
		}
	}
}
