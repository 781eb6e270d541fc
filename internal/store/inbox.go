package store

import (
	"database/sql"
	"slices"
	"time"

	"ryebell/internal/kitchen"
)

// InboxID is the number of a claimed event: of a turn.
type InboxID int64

// Event is something that came in through a door. Room, Member and Collective
// are zero as long as they are not known; [Book.SetTurn] settles them.
type Event struct {
	Door, Event string // the platform's identifier, with the door it is unique
	Collective  CollectiveID
	Room        RoomID
	Member      kitchen.MemberNo
	At, Arrived time.Time
}

// Claim says whether an event comes for the first time, and marks it as handled.
// Of one that was handled before it gives the earlier number, and fresh is
// false: nothing must be done. The mark commits with the rest of the turn.
func (tx *Tx) Claim(e Event) (id InboxID, fresh bool, err error) {
	r, err := tx.exec(`
		INSERT INTO inbox (door, event, collective, room, member, at_ms, arrived_ms)
		VALUES (:door, :event, :collective, :room, :member, :at, :arrived)
		ON CONFLICT (door, event) DO NOTHING`,
		p("door", e.Door), p("event", e.Event), p("collective", orNull(e.Collective)), p("room", orNull(e.Room)),
		p("member", orNull(e.Member)), p("at", toMS(e.At)), p("arrived", toMS(e.Arrived)))
	if err != nil {
		return 0, false, err
	}
	n, err := r.RowsAffected()
	if err != nil {
		return 0, false, err
	}
	if n == 1 {
		last, err := r.LastInsertId()
		return InboxID(last), true, err
	}
	err = tx.row(`SELECT id FROM inbox WHERE door = :door AND event = :event`,
		p("door", e.Door), p("event", e.Event)).Scan(&id)
	return id, false, err
}

// Turn is a claimed event and what became of it. Kind, Said and Asked are the
// responder's own; the store only compares the kind.
type Turn struct {
	ID     InboxID
	Door   string
	Event  string
	Room   RoomID
	Member kitchen.MemberNo
	At     time.Time
	// Kind is a word for what was understood.
	Kind string
	// Said is what was understood, as a sentence that is understood again.
	Said string
	// Asked is the question that waits for an answer; empty for none.
	Asked string
}

func readTurn(s scanner) (t Turn, err error) {
	var room, member sql.NullInt64
	var at int64
	err = s.Scan(&t.ID, &t.Door, &t.Event, &room, &member, &at, &t.Kind, &t.Said, &t.Asked)
	t.Room, t.Member, t.At = RoomID(room.Int64), kitchen.MemberNo(member.Int64), fromMS(at)
	return t, err
}

// SetTurn says what became of a claimed event. Door, Event and At stay as they
// were claimed.
func (b *Book) SetTurn(t Turn) error {
	return b.tx.change(`
		UPDATE inbox SET collective = :collective, room = :room, member = :member,
			kind = :kind, said = :said, asked = :asked
		WHERE id = :id AND (collective IS NULL OR collective = :collective)`,
		b.bound(), p("id", t.ID), p("room", orNull(t.Room)), p("member", orNull(t.Member)),
		p("kind", t.Kind), p("said", t.Said), p("asked", t.Asked))
}

// Turn gives a turn by its number.
func (b *Book) Turn(id InboxID) (Turn, error) {
	return readTurn(b.tx.row(`
		SELECT id, door, event, room, member, at_ms, kind, said, asked
		FROM inbox WHERE id = :id AND collective = :collective`, b.bound(), p("id", id)))
}

// lookBack is how many turns of a member in a room LastTurn looks through.
const lookBack = 200

// LastTurn gives the newest turn of a member in a room that is of one of the
// kinds (none: of any). It looks through the last 200 turns.
func (b *Book) LastTurn(room RoomID, member kitchen.MemberNo, kinds ...string) (Turn, error) {
	turns, err := b.Turns(room, member, lookBackOf(kinds))
	if err != nil {
		return Turn{}, err
	}
	for _, t := range turns {
		if len(kinds) == 0 || slices.Contains(kinds, t.Kind) {
			return t, nil
		}
	}
	return Turn{}, ErrNotFound
}

func lookBackOf(kinds []string) int {
	if len(kinds) == 0 {
		return 1
	}
	return lookBack
}

// Turns lists the last turns of a member in a room, the newest first.
func (b *Book) Turns(room RoomID, member kitchen.MemberNo, limit int) ([]Turn, error) {
	return each(b.tx, readTurn, `
		SELECT id, door, event, room, member, at_ms, kind, said, asked
		FROM inbox WHERE collective = :collective AND member = :member AND room = :room
		ORDER BY id DESC LIMIT :limit`,
		b.bound(), p("member", member), p("room", room), p("limit", limit))
}

// LastTurnIn gives the newest turn of anybody in a room that is of a kind.
func (b *Book) LastTurnIn(room RoomID, kind string) (Turn, error) {
	return readTurn(b.tx.row(`
		SELECT id, door, event, room, member, at_ms, kind, said, asked
		FROM inbox WHERE collective = :collective AND room = :room AND kind = :kind AND kind <> '' ORDER BY id DESC LIMIT 1`,
		b.bound(), p("room", room), p("kind", kind)))
}

// TurnOfEvent gives the turn of an event, as when a message is edited.
func (b *Book) TurnOfEvent(door, event string) (Turn, error) {
	return readTurn(b.tx.row(`
		SELECT id, door, event, room, member, at_ms, kind, said, asked
		FROM inbox WHERE door = :door AND event = :event AND collective = :collective`,
		b.bound(), p("door", door), p("event", event)))
}

// TurnOfPost gives the turn that a post in a room answered, as when somebody
// replies to it. [ErrNotFound] also stands for a post that came by itself; see
// [Book.RowOfPost].
func (b *Book) TurnOfPost(room RoomID, external string) (Turn, error) {
	row, err := b.RowOfPost(room, external)
	if err != nil {
		return Turn{}, err
	}
	return b.Turn(row.Inbox)
}
