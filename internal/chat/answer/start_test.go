package answer

import (
	"slices"
	"testing"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// Putting the order on ends the waiting for its start, and taking that back waits
// for it again.
func TestUndoneCookWaitsForItsStartAgain(t *testing.T) {
	s := open(t)
	for _, step := range []struct {
		text string
		due  []string
	}{
		{"3 bags 5lb agar", nil},
		{"out by 20:30", nil},
		{"remind me", []string{"16:30"}},
		{"cook it", nil},
		{"undo", []string{"16:30"}},
		{"we're at 1600 m", []string{"15:05"}},
		{"undo", []string{"16:30"}},
	} {
		s.say("kitchen", "Robin", step.text)
		if due := s.due(kitchen.StartPrefix); !slices.Equal(due, step.due) {
			t.Errorf("after %q the start is due %v, want %v", step.text, due, step.due)
		}
	}
}

// due lists when the waiting pings under a prefix are due.
func (s *stage) due(prefix string) (all []string) {
	s.t.Helper()
	storetest.View(s.t, s.db, func(tx *store.Tx) error {
		collectives, err := tx.Collectives()
		if err != nil {
			return err
		}
		rows, err := tx.Book(collectives[0]).WaitingPings(prefix)
		for _, r := range rows {
			all = append(all, r.Due.UTC().Format("15:04"))
		}
		return err
	})
	return all
}
