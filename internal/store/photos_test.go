package store_test

import (
	"context"
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func TestPhotosStayWithTheirTurn(t *testing.T) {
	db := storetest.Open(t)
	ours, theirs := found(t, db, "ours"), found(t, db, "theirs")
	var turns [2]store.InboxID
	var want []store.Photo
	storetest.Update(t, db, func(tx *store.Tx) error {
		for i := range turns {
			id, _, err := tx.Claim(store.Event{Door: "console", Event: string(rune('a' + i)), Collective: ours.id, Room: ours.room, Member: ours.ana, At: morning, Arrived: morning})
			if err != nil {
				return err
			}
			turns[i] = id
		}
		for _, f := range []store.Photo{
			{Turn: turns[1], Name: "bag.jpg", Media: "image/jpeg", Bytes: []byte{0xff, 0, 1}},
			{Turn: turns[1], Name: "side.png", Media: "image/png", Bytes: []byte("png")},
		} {
			id, err := tx.Book(ours.id).SavePhoto(f)
			if err != nil {
				return err
			}
			f.ID = id
			want = append(want, f)
		}
		return nil
	})
	storetest.View(t, db, func(tx *store.Tx) error {
		got, err := tx.Book(ours.id).PhotosOf(turns[:]...)
		if d := cmp.Diff(want, got); d != "" {
			t.Error(d)
		}
		return err
	})
	err := db.Update(context.Background(), func(tx *store.Tx) error {
		_, err := tx.Book(theirs.id).SavePhoto(store.Photo{Turn: turns[0], Media: "image/png"})
		return err
	})
	if !errors.Is(err, store.ErrNotFound) {
		t.Errorf("a photo for a turn of another collective: %v, want ErrNotFound", err)
	}
}
