package store_test

import (
	"context"
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/kitchen"
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
		b := tx.Book(ours.id)
		got, err := b.PhotosOf(turns[:]...)
		for i := range got {
			if got[i].Bytes != nil {
				t.Errorf("photo %d is listed with its bytes", got[i].ID)
			}
			var missing error
			got[i].Bytes, missing = b.PhotoBytes(got[i].ID)
			err = errors.Join(err, missing)
			if _, foreign := tx.Book(theirs.id).PhotoBytes(got[i].ID); !errors.Is(foreign, store.ErrNotFound) {
				t.Errorf("another collective reads photo %d: %v", got[i].ID, foreign)
			}
		}
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

// Photos go with their turn, and with the member who sent them; those of others stay.
func TestPhotosAreDropped(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	var turns []store.InboxID
	storetest.Update(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		jo, err := b.AddMember("Jo", kitchen.Grower, morning)
		if err != nil {
			return err
		}
		for i, who := range []kitchen.MemberNo{k.ana, k.ana, jo} {
			turn, _, err := tx.Claim(store.Event{Door: "console", Event: string(rune('a' + i)), Collective: k.id, Room: k.room, Member: who, At: morning, Arrived: morning})
			if err != nil {
				return err
			}
			turns = append(turns, turn)
			if _, err := b.SavePhoto(store.Photo{Turn: turn, Name: "bag.jpg", Media: "image/jpeg", Bytes: []byte{byte(i)}}); err != nil {
				return err
			}
		}
		return nil
	})
	left := func() (of []store.InboxID) {
		storetest.View(t, db, func(tx *store.Tx) error {
			photos, err := tx.Book(k.id).PhotosOf(turns...)
			for _, f := range photos {
				of = append(of, f.Turn)
			}
			return err
		})
		return of
	}
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(k.id).DropPhotos(turns[0]) })
	if d := cmp.Diff(turns[1:], left()); d != "" {
		t.Errorf("dropped of one turn: %s", d)
	}
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(k.id).ForgetMember(k.ana, morning) })
	if d := cmp.Diff(turns[2:], left()); d != "" {
		t.Errorf("once she is forgotten: %s", d)
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		if _, err := tx.Book(k.id).PhotoBytes(2); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("her photo is still there: %v", err)
		}
		return nil
	})
}
