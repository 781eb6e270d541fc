package store

import (
	"database/sql"
	"errors"
	"strconv"
	"time"
)

// RowID is the number of an outbox row, never used twice within a book.
type RowID int64

// Rank says whether a post waits its turn in its room.
type Rank uint8

// A post that overtakes goes before all that wait in its room, as those that
// watch over a hot cooker do.
const (
	Overtakes Rank = iota + 1
	InTurn
)

// RowState is what became of an outbox row.
type RowState uint8

// A row waits until it was sent, until the platform refused it for good, or
// until a newer row of its slot has made it needless.
const (
	Waiting RowState = iota + 1
	Sent
	Refused
	Merged
)

// String returns the word for logs.
func (s RowState) String() string {
	switch s {
	case Waiting:
		return "waiting"
	case Sent:
		return "sent"
	case Refused:
		return "refused"
	case Merged:
		return "merged"
	}
	return "state not said"
}

// Parcel is a post to be queued.
type Parcel struct {
	Room RoomID
	Rank Rank
	// Post is the encoded post; the store does not look into it.
	Post []byte
	// Slot names the place in the room where the post stands: it replaces what
	// stands there, and only the newest that waits for it is sent. Empty for a
	// post of its own.
	Slot string
	// Replaces is an earlier row of the same room whose post is edited in place;
	// zero for none. Then Slot is that row's.
	Replaces RowID
	// Inbox is the turn that the post answers; zero for a ping.
	Inbox InboxID
	// About is the subject it speaks of, for replies to it; may be empty.
	About string
	// ReplyTo is the platform's identifier of the message answered; may be empty.
	ReplyTo string
}

// Queue puts a post behind those that wait for its room. At is now.
func (b *Book) Queue(c Parcel, at time.Time) (RowID, error) {
	slot, err := b.slotOf(c)
	if err != nil {
		return 0, err
	}
	id, err := b.tx.insert(`
		INSERT INTO outbox (collective, room, rank, inbox, about, slot, reply_to, post, state, next_ms, created_ms)
		VALUES (:collective, :room, :rank, :inbox, :about, :slot, :reply, :post, 1, :at, :at)`,
		b.bound(), p("room", c.Room), p("rank", c.Rank), p("inbox", orNull(c.Inbox)), p("about", c.About),
		p("slot", slot), p("reply", c.ReplyTo), p("post", c.Post), p("at", toMS(at)))
	b.tx.queued = true
	return RowID(id), err
}

// slotOf gives the slot of a parcel. A row that is replaced and had no slot gets
// one of its own, so that edits have a single road.
func (b *Book) slotOf(c Parcel) (string, error) {
	if c.Replaces == 0 {
		return c.Slot, nil
	}
	old, err := b.Row(c.Replaces)
	if err != nil {
		return "", err
	}
	if old.Room != c.Room {
		return "", ErrNotFound
	}
	if old.Slot != "" {
		return old.Slot, nil
	}
	slot := "row/" + strconv.FormatInt(int64(old.ID), 10)
	return slot, b.tx.change(`UPDATE outbox SET slot = :slot WHERE id = :id AND collective = :collective`,
		b.bound(), p("id", old.ID), p("slot", slot))
}

// Row is an outbox row.
type Row struct {
	ID RowID
	Parcel
	State    RowState
	Attempts int
	Reason   string // of the last failure
	External string // the platform's identifier of the post; empty until sent
	Created  time.Time
	SentAt   time.Time // zero until sent
}

func readRow(s scanner) (r Row, err error) {
	var inbox, sent sql.NullInt64
	var created int64
	err = s.Scan(&r.ID, &r.Room, &r.Rank, &inbox, &r.About, &r.Slot, &r.ReplyTo, &r.Post,
		&r.State, &r.Attempts, &r.Reason, &r.External, &created, &sent)
	r.Inbox, r.Created = InboxID(inbox.Int64), fromMS(created)
	if sent.Valid {
		r.SentAt = fromMS(sent.Int64)
	}
	return r, err
}

// Row gives a row of the collective by its number, as when a button of its post
// is tapped. The caller checks that it belongs to the room of the tap.
func (b *Book) Row(id RowID) (Row, error) {
	return readRow(b.tx.row(`
		SELECT id, room, rank, inbox, about, slot, reply_to, post, state, attempts, reason, external, created_ms, sent_ms
		FROM outbox WHERE id = :id AND collective = :collective`, b.bound(), p("id", id)))
}

// RowsOf lists the rows that answer a turn, oldest first.
func (b *Book) RowsOf(turn InboxID) ([]Row, error) {
	return each(b.tx, readRow, `
		SELECT id, room, rank, inbox, about, slot, reply_to, post, state, attempts, reason, external, created_ms, sent_ms
		FROM outbox WHERE inbox = :turn AND collective = :collective ORDER BY id`, b.bound(), p("turn", turn))
}

// RowOfPost gives the newest row that stands in a room as the post of that
// platform identifier, as when somebody replies to it.
func (b *Book) RowOfPost(room RoomID, external string) (Row, error) {
	if external == "" {
		return Row{}, ErrNotFound
	}
	return readRow(b.tx.row(`
		SELECT id, room, rank, inbox, about, slot, reply_to, post, state, attempts, reason, external, created_ms, sent_ms
		FROM outbox WHERE room = :room AND external = :external AND external <> '' AND collective = :collective
		ORDER BY id DESC LIMIT 1`, b.bound(), p("room", room), p("external", external)))
}

// Dispatch is the row that a room's sender has to send next.
type Dispatch struct {
	Row        RowID
	Collective CollectiveID
	Room       RoomID
	Address    string // the platform's identifier of the room
	Thread     string
	Rank       Rank
	Post       []byte
	Wire       []byte // what [Tx.SetWire] kept; nil for nothing
	Replaces   string // the platform's identifier of the post to edit; empty for a new one
	ReplyTo    string
	Attempts   int
	Due        time.Time // not to be tried before
}

func readDispatch(s scanner) (d Dispatch, err error) {
	var due int64
	err = s.Scan(&d.Row, &d.Collective, &d.Room, &d.Address, &d.Thread, &d.Rank, &d.Post, &d.Wire,
		&d.Replaces, &d.ReplyTo, &d.Attempts, &due)
	d.Due = fromMS(due)
	return d, err
}

// NextParcels gives the row that is next in each room of a door, of at most
// limit rooms: those that overtake first, then by the time they may be tried
// from. Rooms whose next row is not due at now have none. A room whose row is on
// its way must be passed over by the caller until the row is marked.
func (tx *Tx) NextParcels(door string, now time.Time, limit int) ([]Dispatch, error) {
	return tx.heads(door, toMS(now), limit)
}

// NextTry is the earliest time at which a row of a door may be tried, of those
// that are next in their room and that among passes; false means that none waits.
func (tx *Tx) NextTry(door string, among func(Dispatch) bool) (first time.Time, waits bool, err error) {
	heads, err := tx.heads(door, forever, -1)
	for _, h := range heads {
		if among(h) && (!waits || h.Due.Before(first)) {
			first, waits = h.Due, true
		}
	}
	return first, waits, err
}

const forever = int64(1) << 62

// A row that would wait longer than that, or a room that would be held longer, is
// due: the clock was set back since, and the room must not fall silent until it has
// caught up.
const (
	longestWait = 10 * time.Minute
	longestHold = 24 * time.Hour
)

// heads reads, for each room in which rows wait, the first of them that is not
// needless: rows that overtake first, then by number. A row is needless when a
// newer one of its slot waits too and won't be later (it is merged when that was
// sent or refused). What it replaces is the newest row that was sent in its slot. CROSS JOIN keeps SQLite to this
// order: few rooms have rows that wait.
func (tx *Tx) heads(door string, until int64, limit int) ([]Dispatch, error) {
	return each(tx, readDispatch, `
		SELECT o.id, o.collective, o.room, r.address, r.thread, o.rank, o.post, o.wire,
			coalesce((SELECT e.external FROM outbox e
				WHERE e.room = o.room AND e.slot = o.slot AND e.slot <> '' AND e.state = 2
				ORDER BY e.id DESC LIMIT 1), ''),
			o.reply_to, o.attempts, max(o.next_ms, r.held_ms) AS due
		FROM (SELECT DISTINCT room FROM outbox WHERE state = 1) q
		CROSS JOIN room r ON r.id = q.room AND r.door = :door
		CROSS JOIN outbox o ON o.id = (SELECT w.id FROM outbox w
			WHERE w.room = q.room AND w.state = 1 AND NOT EXISTS (SELECT 1 FROM outbox n
				WHERE n.room = w.room AND n.slot = w.slot AND n.slot <> '' AND n.id > w.id
					AND n.state = 1 AND n.rank <= w.rank)
			ORDER BY w.rank, w.id LIMIT 1)
		WHERE (o.next_ms <= :until OR o.next_ms > :until + :wait) AND (r.held_ms <= :until OR r.held_ms > :until + :hold)
		ORDER BY o.rank, due, o.id LIMIT :limit`,
		p("door", door), p("until", until), p("limit", limit),
		p("wait", longestWait.Milliseconds()), p("hold", longestHold.Milliseconds()))
}

// MarkSent says that the platform has taken a row and under which identifier
// the post stands there. Older rows that wait for the same slot are needless
// then. Marking a row twice changes nothing.
func (tx *Tx) MarkSent(row RowID, external string, at time.Time) error {
	var room RoomID
	var slot string
	err := tx.row(`
		UPDATE outbox SET state = 2, external = :external, sent_ms = :at, attempts = attempts + 1, wire = NULL, reason = ''
		WHERE id = :id AND state <> 2 RETURNING room, slot`,
		p("id", row), p("external", external), p("at", toMS(at))).Scan(&room, &slot)
	if errors.Is(err, ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	if err := tx.merge(room, slot, row); err != nil {
		return err
	}
	return tx.dropAddress(room)
}

// merge sets aside the rows that wait for a slot and are older than one that was
// sent or refused there: they must not come behind it.
func (tx *Tx) merge(room RoomID, slot string, than RowID) error {
	if slot == "" {
		return nil
	}
	_, err := tx.exec(`
		UPDATE outbox SET state = 4
		WHERE room = :room AND slot = :slot AND slot <> '' AND id < :id AND state = 1`,
		p("room", room), p("slot", slot), p("id", than))
	return err
}

// Postpone says that a row could not be delivered and when it may be tried
// again, at most ten minutes ahead. Reason is for the operator and holds no text of people.
func (tx *Tx) Postpone(row RowID, until time.Time, reason string) error {
	return tx.change(`
		UPDATE outbox SET next_ms = :until, attempts = attempts + 1, reason = :reason WHERE id = :id AND state = 1`,
		p("id", row), p("until", toMS(until)), p("reason", reason))
}

// HoldRoom says that nothing may be sent to a room before a time, at most a day
// ahead, because its platform asked to wait. It is no failure of a row, and holds those that
// overtake too.
func (tx *Tx) HoldRoom(room RoomID, until time.Time) error {
	return tx.change(`UPDATE room SET held_ms = :until WHERE id = :room`, p("room", room), p("until", toMS(until)))
}

// Refuse sets a row aside that the platform will never take. The rows behind it
// go on; older ones that wait for the same slot are needless.
func (tx *Tx) Refuse(row RowID, reason string) error {
	var room RoomID
	var slot string
	err := tx.row(`
		UPDATE outbox SET state = 3, attempts = attempts + 1, reason = :reason
		WHERE id = :id AND state = 1 RETURNING room, slot`, p("id", row), p("reason", reason)).Scan(&room, &slot)
	if err != nil {
		return err
	}
	if err := tx.merge(room, slot, row); err != nil {
		return err
	}
	return tx.dropAddress(room)
}

// SetWire keeps what a door made of a row and must send unchanged when it tries
// again. It is dropped when the row was sent.
func (tx *Tx) SetWire(row RowID, wire []byte) error {
	return tx.change(`UPDATE outbox SET wire = :wire WHERE id = :id AND state = 1`, p("id", row), p("wire", wire))
}

// Refusals lists the newest rows that were refused, for the operator: without
// their posts.
func (tx *Tx) Refusals(limit int) ([]Row, error) {
	return each(tx, readRow, `
		SELECT id, room, rank, inbox, about, slot, reply_to, x'', state, attempts, reason, external, created_ms, sent_ms
		FROM outbox WHERE state = 3 ORDER BY id DESC LIMIT :limit`, p("limit", limit))
}
