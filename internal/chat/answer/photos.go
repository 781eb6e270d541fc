package answer

import (
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
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
