package store

import "ryebell/internal/kitchen"

// PhotoID is the number of a kept photo.
type PhotoID int64

// Photo is a picture that somebody sent.
type Photo struct {
	ID   PhotoID // zero for one not kept yet
	Turn InboxID // the turn that brought it
	// Name is that of the file as it was sent, Media its type: image/jpeg.
	Name  string
	Media string
	Bytes []byte // not read by lists
}

func readPhoto(s scanner) (f Photo, err error) {
	err = s.Scan(&f.ID, &f.Turn, &f.Name, &f.Media)
	return f, err
}

// SavePhoto keeps a photo with the turn that brought it, which must be of this
// collective: else [ErrNotFound]. The caller sees to it that it isn't too large.
func (b *Book) SavePhoto(f Photo) (PhotoID, error) {
	if f.Bytes == nil {
		f.Bytes = []byte{}
	}
	var id PhotoID
	err := b.tx.row(`
		INSERT INTO photo (collective, inbox, name, media, bytes)
		SELECT collective, id, :name, :media, :bytes FROM inbox WHERE id = :turn AND collective = :collective
		RETURNING id`,
		b.bound(), p("turn", f.Turn), p("name", f.Name), p("media", f.Media), p("bytes", f.Bytes)).Scan(&id)
	return id, err
}

// PhotosOf lists the photos that turns brought, turn by turn, without their bytes.
func (b *Book) PhotosOf(turns ...InboxID) ([]Photo, error) {
	return eachOf(b.tx, turns, readPhoto, `
		SELECT id, inbox, name, media FROM photo
		WHERE inbox = :turn AND collective = :collective ORDER BY id`,
		func(turn InboxID) []any { return []any{b.bound(), p("turn", turn)} })
}

// PhotoBytes is the picture of a number. [ErrNotFound] stands for one that was
// dropped, too.
func (b *Book) PhotoBytes(id PhotoID) (bytes []byte, err error) {
	err = b.tx.row(`SELECT bytes FROM photo WHERE id = :id AND collective = :collective`, b.bound(), p("id", id)).Scan(&bytes)
	return bytes, err
}

// DropPhotos deletes the photos that a turn brought.
func (b *Book) DropPhotos(turn InboxID) error {
	_, err := b.tx.exec(`DELETE FROM photo WHERE inbox = :turn AND collective = :collective`, b.bound(), p("turn", turn))
	return err
}

// forgetPhotos deletes those that a member sent.
func (b *Book) forgetPhotos(no kitchen.MemberNo) error {
	return b.forget(`
		DELETE FROM photo WHERE collective = :collective AND inbox IN
			(SELECT id FROM inbox WHERE collective = :collective AND member = :no)`, no)
}
