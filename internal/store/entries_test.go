package store_test

import (
	"context"
	"errors"
	"testing"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func TestUndoGoesFurtherBack(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	say := func(e kitchen.Entry) (no kitchen.EntryNo, err error) {
		err = db.Update(context.Background(), func(tx *store.Tx) (err error) {
			no, err = tx.Book(k.id).Append(store.Line{By: k.ana, Room: k.room, At: morning, Written: morning, Subject: "kitchen", Entry: e})
			return err
		})
		return no, err
	}
	last := func(before kitchen.EntryNo) (no kitchen.EntryNo) {
		storetest.View(t, db, func(tx *store.Tx) error {
			l, err := tx.Book(k.id).LastEntryOf(k.ana, k.room, before)
			no = l.No
			if errors.Is(err, store.ErrNotFound) {
				return nil
			}
			return err
		})
		return no
	}
	for range 3 {
		if _, err := say(kitchen.Elevation{Height: 1600}); err != nil {
			t.Fatal(err)
		}
	}
	if got := last(3); got != 2 {
		t.Errorf("before 3 comes %d, want 2", got)
	}
	for _, want := range []kitchen.EntryNo{3, 2, 1} {
		if got := last(0); got != want {
			t.Fatalf("last entry %d, want %d", got, want)
		}
		if _, err := say(kitchen.Struck{No: want}); err != nil {
			t.Fatal(err)
		}
	}
	if got := last(0); got != 0 {
		t.Errorf("last entry %d, want none", got)
	}
	for name, tt := range map[string]struct {
		no   kitchen.EntryNo
		want error
	}{"twice": {3, store.ErrStrike}, "a strike": {4, store.ErrStrike}, "nothing": {99, store.ErrNotFound}, "itself": {7, store.ErrNotFound}} {
		if _, err := say(kitchen.Struck{No: tt.no}); !errors.Is(err, tt.want) {
			t.Errorf("striking %s: %v, want %v", name, err, tt.want)
		}
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		records, err := b.Standing("kitchen")
		if len(records) != 3 {
			t.Errorf("%d records stand, want the 3 strikes", len(records))
		}
		all, err2 := b.Entries("kitchen")
		if len(all) != 6 || all[0].StruckBy != 6 {
			t.Errorf("entries %+v", all)
		}
		return errors.Join(err, err2, b.VerifyChain(t.Context()))
	})
}
