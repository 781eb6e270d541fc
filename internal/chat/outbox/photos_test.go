package outbox_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
	"ryebell/internal/chat/outbox"
	"ryebell/internal/store"
)

// A post names photos by their numbers: they are sent as they are in the book by
// then, and one that was deleted, or is of another collective, is not.
func TestPhotosAreSentFromTheBook(t *testing.T) {
	b, d := openBook(t, door, "a"), newPlatform(t, door)
	var kept, deleted, foreign store.PhotoID
	b.update(func(tx *store.Tx) error {
		photo := func(of store.CollectiveID, event string) (store.PhotoID, error) {
			turn, _, err := tx.Claim(store.Event{Door: string(door), Event: event, Collective: of, At: time.Now(), Arrived: time.Now()})
			if err != nil {
				return 0, err
			}
			id, err := tx.Book(of).SavePhoto(store.Photo{Turn: turn, Name: "bag.jpg", Media: "image/jpeg", Bytes: []byte(event)})
			if event == "deleted" && err == nil {
				err = tx.Book(of).DropPhotos(turn)
			}
			return id, err
		}
		other, err := tx.NewCollective("other", time.Now())
		if err != nil {
			return err
		}
		if kept, err = photo(b.id, "kept"); err != nil {
			return err
		}
		if foreign, err = photo(other, "foreign"); err != nil {
			return err
		}
		deleted, err = photo(b.id, "deleted")
		return err
	})
	post := chat.Post{Loudness: chat.Answer, Files: []chat.File{
		{Name: "chart.png", Type: "image/png", Data: []byte("drawn")},
		{Name: "1.jpg", Type: "image/jpeg", Kept: int64(deleted)},
		{Name: "2.jpg", Type: "image/jpeg", Kept: int64(foreign)},
		{Name: "3.jpg", Type: "image/jpeg", Kept: int64(kept)},
	}}
	raw, err := post.Encode()
	if err != nil {
		t.Fatal(err)
	}
	b.update(func(tx *store.Tx) error {
		_, err := tx.Book(b.id).Queue(store.Parcel{Room: b.rooms["a"], Rank: store.InTurn, Post: raw}, time.Now())
		return err
	})
	if err := outbox.New(b.db, []chat.Door{d}, outbox.Config{Chance: middle}).Deliver(t.Context(), door, time.Now()); err != nil {
		t.Fatal(err)
	}
	want := []chat.File{
		{Name: "chart.png", Type: "image/png", Data: []byte("drawn")},
		{Name: "3.jpg", Type: "image/jpeg", Data: []byte("kept"), Kept: int64(kept)},
	}
	if diff := cmp.Diff(want, d.last().Post.Files); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}
