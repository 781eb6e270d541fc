package phrase

import "testing"

// TestUnitNought holds that 12.0, which is no unit, isn't taken for all of run 12.
func TestUnitNought(t *testing.T) {
	for _, text := range []string{
		"12.0 green", "12,0 green", "12.00 30%", "threw 12.0", "used 12.0 on straw", "12.1, 12.0 green", "trace 12.0", "log 12.0", "where is 12.0", "12.0 oyster", "shook 12.0", "12 except 3.0", "12.0 is gone", "call off 12.0",
	} {
		if p := Parse(text, shelfNames); len(p.Intents) > 0 {
			t.Errorf("Parse(%q) = %s, want nothing understood", text, understood(p))
		}
	}
}
