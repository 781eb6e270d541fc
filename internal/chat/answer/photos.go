package answer

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// keepPhotos keeps the photos of a message with the turn that its entries belong to,
// and says so in the answer. Those of a message that wrote nothing are not kept.
func (t *turn) keepPhotos(post chat.Post) (chat.Post, error) {
	if len(t.m.Photos) == 0 {
		return post, nil
	}
	entries, err := t.book.EntriesOf(t.owner)
	switch {
	case err != nil:
		return post, err
	case t.text == "":
		return post, nil // the answer is about nothing else
	case !slices.ContainsFunc(entries, counts):
		return wording.PhotosNotKept(post, len(t.m.Photos)), nil
	}
	if t.edited != nil { // an edit comes with the photos that stand there now
		if err := t.book.DropPhotos(t.owner); err != nil {
			return post, err
		}
	}
	v, err := t.savePhotos()
	return wording.WithPhotos(post, v), err
}

func (t *turn) savePhotos() (v wording.PhotosView, err error) {
	for _, p := range t.m.Photos {
		_, known := p.Ending()
		switch {
		case p.TooLarge():
			v.TooLarge++
		case !known || len(p.Data) == 0:
			v.Unknown++
		case v.Kept == chat.MaxPhotos:
			v.TooMany++
		default:
			if _, err := t.book.SavePhoto(store.Photo{Turn: t.owner, Name: p.Name, Media: p.Type, Bytes: p.Data}); err != nil {
				return v, err
			}
			v.Kept++
		}
	}
	return v, nil
}

// moment is an entry that a story tells of, and when that happened.
type moment struct {
	no kitchen.EntryNo
	at time.Time
}

// photosOf are the photos that came with what a story tells of a load, in the order of
// the story.
func (t *turn) photosOf(no kitchen.RunNo, story []moment) ([]wording.LogPhoto, error) {
	entries, err := t.book.Entries(no.Subject())
	if err != nil {
		return nil, err
	}
	turnOf := make(map[kitchen.EntryNo]store.InboxID, len(entries))
	for _, e := range entries {
		turnOf[e.No] = e.Inbox
	}
	var out []wording.LogPhoto
	seen := map[store.InboxID]bool{0: true}
	for _, m := range story {
		turn := turnOf[m.no]
		if seen[turn] {
			continue
		}
		seen[turn] = true
		photos, err := t.book.PhotosOf(turn)
		if err != nil {
			return nil, err
		}
		for _, p := range photos {
			out = append(out, wording.LogPhoto{ID: int64(p.ID), Type: p.Media, At: m.at})
		}
	}
	return out, nil
}

// photosOfRun are those that came with what was said of the run itself.
func (t *turn) photosOfRun(r kitchen.Run) ([]wording.LogPhoto, error) {
	var story []moment
	for _, s := range r.Steps {
		if s.Seen {
			story = append(story, moment{s.No, s.At})
		}
	}
	return t.photosOf(r.No, story)
}
