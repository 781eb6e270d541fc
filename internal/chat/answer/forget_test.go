package answer

import (
	"errors"
	"strings"
	"testing"
	"time"

	"ryebell/internal/store"
)

// Who is forgotten stands in no post that was sent: not in a ping to them, nor in
// what was answered to others.
func TestForgottenInPosts(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "cook 4 quart jars rye lc")
	s.say("kitchen", "Ana", "at pressure")
	if got := s.pass(95 * time.Minute); len(got) == 0 {
		t.Fatal("no ping came")
	}
	wantPart(t, s.say("kitchen", "Robin", "log 1"), "Ana")
	s.say("kitchen", "Ana", "heat off")
	s.say("kitchen", "Ana", "forget me")
	s.say("kitchen", "Ana", "forget Ana")
	err := s.db.View(t.Context(), func(tx *store.Tx) error {
		for id := store.RowID(1); ; id++ {
			r, err := tx.Book(1).Row(id)
			if errors.Is(err, store.ErrNotFound) && id > 5 {
				return nil
			}
			if err != nil {
				return err
			}
			if strings.Contains(strings.ToLower(string(r.Post)), "ana") {
				t.Errorf("row %d about %q: %s", id, r.About, r.Post)
			}
		}
	})
	if err != nil {
		t.Fatal(err)
	}
}
