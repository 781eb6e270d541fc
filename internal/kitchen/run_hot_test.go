package kitchen

import (
	"testing"
	"time"
)

// Seven quarts fall in 45 minutes: a zero in the first 15 of them is doubted, but
// not where nobody said when the heat went off.
func TestZeroSoon(t *testing.T) {
	off := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}) }
	for _, tt := range []struct {
		name    string
		told    *teller
		after   time.Duration
		doubted bool
	}{
		{"two minutes", off().say("11:32", jo, AtZero{}), 2 * time.Minute, true},
		{"under a third", off().say("11:44", jo, AtZero{}), 14 * time.Minute, true},
		{"a third", off().say("11:45", jo, AtZero{}), 15 * time.Minute, false},
		{"no zero yet", off(), 0, false},
		{"heat off unseen", begun().say("10:00", ana, AtPressure{}).say("11:32", jo, AtZero{}), 0, false},
		{"lit once more", off().say("11:32", ana, HeatOn{}), 0, false},
		{"called off", off().say("11:31", ana, CalledOff{}).say("11:33", jo, AtZero{}), 3 * time.Minute, true},
	} {
		after, usual, doubted := tt.told.run(t, pot()).ZeroSoon()
		if doubted != tt.doubted || after != tt.after || after > 0 && usual != 45*time.Minute {
			t.Errorf("%s: %v of %v, doubted %t; want %v, %t", tt.name, after, usual, doubted, tt.after, tt.doubted)
		}
	}
}
