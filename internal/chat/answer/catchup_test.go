package answer

import (
	"testing"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// Of runs that an older program wrote the units come to stand on the shelf at the
// first start; and a second start finds nothing to do.
func TestCatchUp(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "kitchen")
	err := s.db.Update(t.Context(), func(tx *store.Tx) error {
		book := tx.Book(1)
		for no := kitchen.RunNo(1); no <= 3; no++ {
			if err := book.SaveRun(store.RunRow{No: no, Begun: s.now, Cook: 1, State: store.OpenRun}); err != nil {
				return err
			}
			begun := kitchen.RunBegun{Run: no, Cook: 1, Order: kitchen.Order{Items: []kitchen.Item{{Count: 4, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: 1}}}}}
			entries := []kitchen.Entry{begun, kitchen.AtPressure{}, kitchen.HeatOff{}, kitchen.AtZero{}}
			for i, e := range entries[:len(entries)-int(no)/3] { // the third is still in the pot
				at := s.now.Add(time.Duration(i-len(entries)) * 2 * time.Hour)
				if _, err := book.Append(store.Line{By: 1, At: at, Written: at, Subject: no.Subject(), Entry: e}); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if err := s.a.CatchUp(t.Context()); err != nil {
			t.Fatal(err)
		}
		wantPart(t, s.say("kitchen", "Robin", "shelf"), "8 units on the shelf")
	}
}
