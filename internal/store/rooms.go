package store

import (
	"database/sql"
	"time"

	"ryebell/internal/kitchen"
)

// CollectiveID is the book's own number of a collective. It is never shown.
type CollectiveID int64

// RoomID is the book's own number of a room. It stays the same when the platform
// gives the room another address.
type RoomID int64

// RoomKind tells the rooms of a collective apart.
type RoomKind uint8

// The home room is the one that the collective was founded in; what concerns
// nobody's room goes there. A private room is a talk with one member.
const (
	HomeRoom RoomKind = iota + 1
	FurtherRoom
	PrivateRoom
)

// String returns the word for logs.
func (k RoomKind) String() string {
	switch k {
	case HomeRoom:
		return "home room"
	case FurtherRoom:
		return "further room"
	case PrivateRoom:
		return "private room"
	}
	return "room not said"
}

// RoomRow is a room that belongs to a collective. Rooms that nobody claimed
// have none.
type RoomRow struct {
	ID         RoomID
	Collective CollectiveID
	Door       string
	Address    string // the platform's identifier
	Thread     string // the topic to post into; empty for none
	Kind       RoomKind
	Member     kitchen.MemberNo // whose private room; else zero
	Joined     time.Time
	Closed     time.Time // zero while it is open
}

func readRoom(s scanner) (r RoomRow, err error) {
	var member, closed sql.NullInt64
	var joined int64
	err = s.Scan(&r.ID, &r.Collective, &r.Door, &r.Address, &r.Thread, &r.Kind, &member, &joined, &closed)
	r.Member, r.Joined = kitchen.MemberNo(member.Int64), fromMS(joined)
	if closed.Valid {
		r.Closed = fromMS(closed.Int64)
	}
	return r, err
}

// NewCollective founds a collective and gives its number.
func (tx *Tx) NewCollective(name string, at time.Time) (CollectiveID, error) {
	id, err := tx.insert(`INSERT INTO collective (name, founded_ms) VALUES (:name, :at)`,
		p("name", name), p("at", toMS(at)))
	return CollectiveID(id), err
}

// Collectives lists them all, oldest first.
func (tx *Tx) Collectives() ([]CollectiveID, error) {
	return each(tx, func(s scanner) (id CollectiveID, err error) { return id, s.Scan(&id) },
		`SELECT id FROM collective ORDER BY id`)
}

// Room finds a claimed room by its address; [ErrNotFound] means that it belongs
// to no collective.
func (tx *Tx) Room(door, address string) (RoomRow, error) {
	return readRoom(tx.row(`
		SELECT id, collective, door, address, thread, kind, member, joined_ms, closed_ms
		FROM room WHERE door = :door AND address = :address`,
		p("door", door), p("address", address)))
}

// MoveRoom gives a room the address that its platform now uses for it. Moving
// it again to where it already is changes nothing.
func (tx *Tx) MoveRoom(door, from, to string) error {
	tx.queued = true // what waits for it can go out
	_, err := tx.exec(`UPDATE room SET address = :to WHERE door = :door AND address = :from`,
		p("door", door), p("from", from), p("to", to))
	return err
}

// Seat is one place that an account has: a member of a collective.
type Seat struct {
	Collective CollectiveID
	Member     kitchen.MemberNo
}

// Account lists the collectives in which an account of a platform is a member,
// longest known first.
func (tx *Tx) Account(door, external string) ([]Seat, error) {
	return each(tx, func(s scanner) (seat Seat, err error) {
		return seat, s.Scan(&seat.Collective, &seat.Member)
	}, `SELECT collective, member FROM account
		WHERE door = :door AND external = :external ORDER BY collective`,
		p("door", door), p("external", external))
}

// AddRoom makes a room part of the collective. Member is zero unless the kind
// is [PrivateRoom]. It fails when the address belongs to any collective already.
func (b *Book) AddRoom(r RoomRow) (RoomID, error) {
	id, err := b.tx.insert(`
		INSERT INTO room (collective, door, address, thread, kind, member, joined_ms)
		VALUES (:collective, :door, :address, :thread, :kind, :member, :joined)`,
		b.bound(), p("door", r.Door), p("address", r.Address), p("thread", r.Thread),
		p("kind", r.Kind), p("member", orNull(r.Member)), p("joined", toMS(r.Joined)))
	return RoomID(id), err
}

// Room gives a room of the collective by its number.
func (b *Book) Room(id RoomID) (RoomRow, error) {
	return readRoom(b.tx.row(`
		SELECT id, collective, door, address, thread, kind, member, joined_ms, closed_ms
		FROM room WHERE collective = :collective AND id = :id`, b.bound(), p("id", id)))
}

// Rooms lists the collective's rooms, the closed ones too, in the order they
// joined.
func (b *Book) Rooms() ([]RoomRow, error) {
	return each(b.tx, readRoom, `
		SELECT id, collective, door, address, thread, kind, member, joined_ms, closed_ms
		FROM room WHERE collective = :collective ORDER BY id`, b.bound())
}

// HomeRoom gives the home room; the oldest one if there are several.
func (b *Book) HomeRoom() (RoomRow, error) {
	return readRoom(b.tx.row(`
		SELECT id, collective, door, address, thread, kind, member, joined_ms, closed_ms
		FROM room WHERE collective = :collective AND kind = 1 ORDER BY id LIMIT 1`, b.bound()))
}

// PrivateRoom gives the newest open private room of a member.
func (b *Book) PrivateRoom(member kitchen.MemberNo) (RoomRow, error) {
	return readRoom(b.tx.row(`
		SELECT id, collective, door, address, thread, kind, member, joined_ms, closed_ms
		FROM room WHERE collective = :collective AND member = :member AND closed_ms IS NULL
		ORDER BY id DESC LIMIT 1`, b.bound(), p("member", member)))
}

// CloseRoom says that the bot is no longer in a room. What waits for it stays.
func (b *Book) CloseRoom(id RoomID, at time.Time) error {
	return b.tx.change(`UPDATE room SET closed_ms = :at WHERE collective = :collective AND id = :id`,
		b.bound(), p("id", id), p("at", toMS(at)))
}
