package answer

import (
	"testing"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// What one load teaches of growth moves the pings of another at once, and back when
// it is taken back.
func TestLessonsMoveOthers(t *testing.T) {
	s := open(t)
	s.cooked("#1", "#2")
	s.now = s.now.Add(48 * time.Hour)
	s.say("kitchen", "Robin", "1.1-3 oyster")
	s.say("kitchen", "Robin", "2.1-3 oyster")
	s.now = s.now.Add(7 * 24 * time.Hour)
	through := func() (due time.Time) {
		t.Helper()
		storetest.View(t, s.db, func(tx *store.Tx) error {
			rows, err := tx.Book(1).WaitingPings("run/2/")
			for _, r := range rows {
				if r.Kind == kitchen.ThroughDue {
					due = r.Due
				}
			}
			return err
		})
		if due.IsZero() {
			t.Fatal("nobody is to be asked whether #2 is grown through")
		}
		return due
	}
	usual := through()
	s.say("kitchen", "Robin", "1.1-3 done")
	if sooner := through(); !sooner.Before(usual) {
		t.Errorf("after a load that took 7 days it is due %v, before it %v", sooner, usual)
	}
	s.say("kitchen", "Robin", "undo")
	if again := through(); !again.Equal(usual) {
		t.Errorf("taken back it is due %v, before %v", again, usual)
	}
}
