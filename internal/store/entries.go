package store

import (
	"crypto/rand"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"ryebell/internal/kitchen"
)

// Line is an entry to be written.
type Line struct {
	// By is who said it; zero for nobody in particular.
	By kitchen.MemberNo
	// Room is where; zero for nowhere.
	Room RoomID
	// Inbox is the turn that makes the entry; zero for none.
	Inbox InboxID
	// At is when it happened, Written when it was told.
	At, Written time.Time
	// Subject is what it is about, and the key under which it is found again:
	// kitchen, members, run/12.
	Subject string
	Entry   kitchen.Entry
	// Said is what was typed; empty for nothing.
	Said string
}

// Logged is an entry as it stands in the log.
type Logged struct {
	Line
	No kitchen.EntryNo
	// StruckBy is the entry that took this one back; zero while it counts.
	StruckBy kitchen.EntryNo
}

// Record is what the kitchen folds.
func (l Logged) Record() kitchen.Record {
	return kitchen.Record{No: l.No, By: l.By, At: l.At, Written: l.Written, Entry: l.Entry}
}

// Append writes an entry behind the last one of the collective and gives its
// number. A [kitchen.Struck] marks the entry that it takes back; it fails with
// [ErrNotFound] when there is none of that number and [ErrStrike] when it can't
// be taken back. Times are kept to the millisecond.
func (b *Book) Append(l Line) (kitchen.EntryNo, error) {
	body, err := kitchen.Encode(l.Entry)
	if err != nil {
		return 0, err
	}
	prev, err := b.head()
	if err != nil {
		return 0, err
	}
	link := seal(l, body, prev)
	if s, ok := l.Entry.(kitchen.Struck); ok {
		if err := b.strike(s.No, link.no); err != nil {
			return 0, err
		}
	}
	_, err = b.tx.exec(`
		INSERT INTO entry (collective, number, subject, member, room, inbox, at_ms, written_ms,
			kind, version, body, said, salt, digest, hash)
		VALUES (:collective, :no, :subject, :by, :room, :inbox, :at, :written,
			:kind, :version, :body, :said, :salt, :digest, :hash)`,
		b.bound(), p("no", link.no), p("subject", link.subject), p("by", orNull(link.by)), p("room", orNull(link.room)),
		p("inbox", orNull(l.Inbox)), p("at", link.at), p("written", link.written),
		p("kind", link.kind), p("version", link.version), p("body", string(link.body)),
		p("said", sql.NullString{String: l.Said, Valid: l.Said != ""}),
		p("salt", link.salt), p("digest", link.digest[:]), p("hash", link.hash[:]))
	return link.no, err
}

// seal makes the link of the chain that stands for an entry.
func seal(l Line, body kitchen.Stored, prev head) link {
	k := link{
		no: prev.no + 1, by: l.By, room: l.Room, at: toMS(l.At), written: toMS(l.Written), subject: l.Subject,
		kind: body.Kind, version: body.Version, body: body.Body, salt: []byte{},
	}
	if l.Said != "" {
		k.salt = make([]byte, 16)
		rand.Read(k.salt) //nolint:errcheck // never fails
	}
	k.digest = digestOf(k.salt, l.Said)
	k.hash = k.sum(prev.hash)
	return k
}

func digestOf(salt []byte, said string) [sha256.Size]byte {
	return sha256.Sum256(append(append(make([]byte, 0, len(salt)+len(said)), salt...), said...))
}

// strike marks an entry as taken back by another.
func (b *Book) strike(no, by kitchen.EntryNo) error {
	var kind string
	var struck sql.NullInt64
	err := b.tx.row(`SELECT kind, struck_by FROM entry WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no)).Scan(&kind, &struck)
	if err != nil {
		return err
	}
	if struck.Valid || kind == "struck" {
		return ErrStrike
	}
	return b.tx.change(`UPDATE entry SET struck_by = :by WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no), p("by", by))
}

// LastNo is the number of the last entry; zero in an empty book.
func (b *Book) LastNo() (no kitchen.EntryNo, err error) {
	err = b.tx.row(`SELECT coalesce(max(number), 0) FROM entry WHERE collective = :collective`, b.bound()).Scan(&no)
	return no, err
}

func readEntry(s scanner) (l Logged, err error) {
	var by, room, inbox, struck sql.NullInt64
	var at, written int64
	var said sql.NullString
	var body kitchen.Stored
	err = s.Scan(&l.No, &l.Subject, &by, &room, &inbox, &at, &written, &body.Kind, &body.Version, &body.Body, &said, &struck)
	if err != nil {
		return Logged{}, err
	}
	l.By, l.Room, l.Inbox = kitchen.MemberNo(by.Int64), RoomID(room.Int64), InboxID(inbox.Int64)
	l.At, l.Written, l.Said = fromMS(at), fromMS(written), said.String
	l.StruckBy = kitchen.EntryNo(struck.Int64)
	if l.Entry, err = kitchen.Decode(body); err != nil {
		return Logged{}, fmt.Errorf("entry %d: %w", l.No, err)
	}
	return l, nil
}

// Entry gives an entry by its number, a struck one too.
func (b *Book) Entry(no kitchen.EntryNo) (Logged, error) {
	return readEntry(b.tx.row(`
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry WHERE collective = :collective AND number = :no`, b.bound(), p("no", no)))
}

// What is read by subject names its index: without statistics SQLite takes the
// primary key, which is in the right order, and walks the whole log.

// Entries lists all entries about a subject in the order they were written, the
// struck ones too.
func (b *Book) Entries(subject string) ([]Logged, error) {
	return each(b.tx, readEntry, `
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry INDEXED BY entry_subject WHERE collective = :collective AND subject = :subject ORDER BY number`,
		b.bound(), p("subject", subject))
}

// Standing gives the records about a subject that count, in the order they were
// written: what a fold takes.
func (b *Book) Standing(subject string) ([]kitchen.Record, error) {
	return each(b.tx, func(s scanner) (kitchen.Record, error) {
		l, err := readEntry(s)
		return l.Record(), err
	}, `
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry INDEXED BY entry_subject WHERE collective = :collective AND subject = :subject AND struck_by IS NULL ORDER BY number`,
		b.bound(), p("subject", subject))
}

// Latest lists at most limit entries about a subject, the newest first, the struck
// ones too.
func (b *Book) Latest(subject string, limit int) ([]Logged, error) {
	return each(b.tx, readEntry, `
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry INDEXED BY entry_subject WHERE collective = :collective AND subject = :subject ORDER BY number DESC LIMIT :limit`,
		b.bound(), p("subject", subject), p("limit", limit))
}

// EntriesAfter lists at most limit entries of all subjects that follow a number.
func (b *Book) EntriesAfter(no kitchen.EntryNo, limit int) ([]Logged, error) {
	return each(b.tx, readEntry, `
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry WHERE collective = :collective AND number > :no ORDER BY number LIMIT :limit`,
		b.bound(), p("no", no), p("limit", limit))
}

// EntriesOf lists the entries that a turn made.
func (b *Book) EntriesOf(turn InboxID) ([]Logged, error) {
	return each(b.tx, readEntry, `
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry WHERE inbox = :turn AND collective = :collective ORDER BY number`, b.bound(), p("turn", turn))
}

// LastEntryOf gives the last entry before a number (zero: before the end) that a
// member made in a room, that counts and that strikes no other: what undo takes
// back.
func (b *Book) LastEntryOf(m kitchen.MemberNo, room RoomID, before kitchen.EntryNo) (Logged, error) {
	return readEntry(b.tx.row(`
		SELECT number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, struck_by
		FROM entry
		WHERE collective = :collective AND member = :member AND room = :room
			AND (:before = 0 OR number < :before) AND struck_by IS NULL AND kind <> 'struck'
		ORDER BY number DESC LIMIT 1`,
		b.bound(), p("member", m), p("room", room), p("before", before)))
}

// head is the end of the chain; the zero head is that of an empty book.
type head struct {
	no   kitchen.EntryNo
	hash [sha256.Size]byte
}

func (b *Book) head() (h head, err error) {
	var hash []byte
	err = b.tx.row(`SELECT number, hash FROM entry WHERE collective = :collective ORDER BY number DESC LIMIT 1`, b.bound()).
		Scan(&h.no, &hash)
	if errors.Is(err, ErrNotFound) {
		return head{}, nil
	}
	copy(h.hash[:], hash)
	return h, err
}
