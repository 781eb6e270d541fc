package answer

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

func jpeg(data string) chat.Photo {
	return chat.Photo{Name: "bag.jpg", Type: "image/jpeg", Size: int64(len(data)), Data: []byte(data)}
}

// with adds photos to a message.
func with(m chat.Message, photos ...chat.Photo) chat.Message {
	m.Photos = photos
	return m
}

// photos are those in the book, by their turns.
func (s *stage) photos() (kept []string) {
	s.t.Helper()
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		for turn := store.InboxID(1); turn < 100; turn++ {
			all, err := tx.Book(1).PhotosOf(turn)
			if err != nil {
				return err
			}
			for _, p := range all {
				data, err := tx.Book(1).PhotoBytes(p.ID)
				if err != nil {
					return err
				}
				kept = append(kept, string(data))
			}
		}
		return nil
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return kept
}

func (s *stage) wantPhotos(want ...string) {
	s.t.Helper()
	if diff := cmp.Diff(want, s.photos()); diff != "" {
		s.t.Errorf("photos in the book (-want +got):\n%s", diff)
	}
}

// A photo is kept with what its message wrote, and with nothing else.
func TestPhotosAreKeptWithEntries(t *testing.T) {
	s := open(t)
	wantPart(t, s.send(with(s.message("kitchen", "Robin", "cook 3 bags 5lb agar"), jpeg("bags"))), "Photo kept.")
	s.wantPhotos("bags")
	wantPart(t, s.send(with(s.message("kitchen", "Robin", "who's cooking"), jpeg("pot"))), "Photo not kept: nothing was written.")
	s.wantPhotos("bags")
}

// What is not understood keeps no photo, and in a group the bot stays silent at it.
func TestPhotosOfChatter(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "cook 3 bags 5lb agar")
	wantSilence(t, s.send(with(s.message("kitchen", "Ana", "look at my cat"), jpeg("cat"))))
	wantSilence(t, s.send(with(s.message("kitchen", "Ana", ""), jpeg("cat"))))
	m := with(s.message("kitchen", "Robin", ""), jpeg("cat"))
	m.Address = chat.Addressed
	wantPart(t, s.send(m), "Photo not kept: nothing was said with")
	s.wantPhotos()
}

// A member who is met with a question has written nothing that a photo belongs to.
func TestPhotoOfANewcomer(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "cook 3 bags 5lb agar")
	wantPart(t, s.send(with(s.message("kitchen", "Ana", "who's cooking"), jpeg("pot"))), "Photo not kept")
	s.wantPhotos()
}

func TestPhotosWithinLimits(t *testing.T) {
	s := open(t)
	big := chat.Photo{Name: "huge.jpg", Type: "image/jpeg", Size: chat.MaxPhoto + 1}
	odd := chat.Photo{Name: "page.html", Type: "text/html", Size: 4, Data: []byte("<b>")}
	got := s.send(with(s.message("kitchen", "Robin", "cook 3 bags 5lb agar"), big, jpeg("1"), odd, jpeg("2"), jpeg("3"), jpeg("4"), jpeg("5")))
	wantPart(t, got, "4 photos kept.")
	wantPart(t, got, "Photo too large: not")
	wantPart(t, got, "One more not kept")
	wantPart(t, got, "One is no photo")
	s.wantPhotos("1", "2", "3", "4")
}

// An edited message comes with the photo that stands there now: that one is kept. One
// that is edited without a photo keeps what it had.
func TestPhotoOfAnEdit(t *testing.T) {
	s := open(t)
	first := with(s.message("kitchen", "Robin", "cook 3 bags 5lb agar"), jpeg("dark"))
	s.send(first)
	again := with(s.message("kitchen", "Robin", "cook 2 bags 5lb agar"), jpeg("bright"))
	again.Edits = first.Event
	s.send(again)
	s.wantPhotos("bright")
	plain := s.message("kitchen", "Robin", "cook 3 bags 5lb agar")
	plain.Edits = first.Event
	s.send(plain)
	s.wantPhotos("bright")
}

// Who is forgotten leaves no photo; those of others stay.
func TestForgottenPhotos(t *testing.T) {
	s := open(t)
	s.send(with(s.message("kitchen", "Robin", "cook 3 bags 5lb agar"), jpeg("robin's")))
	s.send(with(s.message("kitchen", "Ana", "heat on"), jpeg("ana's")))
	s.wantPhotos("robin's", "ana's")
	s.say("kitchen", "Ana", "forget me")
	s.say("kitchen", "Ana", "forget Ana")
	s.wantPhotos("robin's")
}

// The log of a run comes with the photos of what was said of it and still counts.
func TestLogShowsPhotosOfARun(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "cook 3 bags 5lb agar")
	s.send(with(s.message("kitchen", "Robin", "heat on"), jpeg("flame")))
	s.now = s.now.Add(10 * time.Minute)
	s.send(with(s.message("kitchen", "Robin", "steam"), jpeg("steam"), jpeg("jet")))
	files := func() (kept []int64) {
		for _, f := range s.hear(s.message("kitchen", "Robin", "log 1")).post.Files {
			kept = append(kept, f.Kept)
		}
		return kept
	}
	if diff := cmp.Diff([]int64{1, 2, 3}, files()); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	s.say("kitchen", "Robin", "undo")
	if diff := cmp.Diff([]int64{1}, files()); diff != "" {
		t.Errorf("once steam was taken back (-want +got):\n%s", diff)
	}
}
