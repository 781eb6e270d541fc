package wording

import (
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// The log of a run says how its units stand once somebody told of one, and offers the
// story of the one told of last.
func TestLogOfUnits(t *testing.T) {
	l := tellOf(t)
	log := func() string {
		post := Log(LogView{Story: Story{Run: l.run, Now: time.Date(2026, 3, 12, 12, 0, 0, 0, time.UTC), Who: name}, Units: kitchen.FoldUnits(l.run, l.records)})
		understood(t, post)
		shown := chat.Plain(post, phone)
		if n := strings.Count(shown, "\n") + 1; n > screen {
			t.Errorf("%d lines:\n%s", n, shown)
		}
		return strings.ReplaceAll(shown, "\n", " ")
	}
	if got := log(); strings.Contains(got, "Units") {
		t.Errorf("nobody told of a unit:\n%s", got)
	}
	l.on(3, ana, kitchen.Inoculated{Units: numbered(1, 2, 3, 4, 6), Culture: "oyster"}).on(3, ana, kitchen.BlankSet{Units: numbered(5)}).
		on(9, jo, kitchen.GrowthSeen{Units: numbered(1, 2), Share: 0.3}).on(10, jo, kitchen.SignSeen{Units: numbered(4), Sign: kitchen.GreenMould})
	got := log()
	for _, part := range []string{"Units: 1-2 growing 30 %; 3, 6 inoculated; 4 contaminated; 5 cooked, the blank; 7 cooked.", "[Log #12.4]"} {
		if !strings.Contains(got, part) {
			t.Errorf("lacks %q:\n%s", part, got)
		}
	}
}
