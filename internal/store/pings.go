package store

import (
	"database/sql"
	"errors"
	"time"

	"ryebell/internal/kitchen"
)

// PingRow is a ping of a collective and, once it has, when it fired.
type PingRow struct {
	Collective CollectiveID
	kitchen.Ping
	Fired time.Time // zero while it waits
	// Set is when it was put in, or its time was last moved.
	Set time.Time
}

// Late is how long the ping has waited by now when it could have been sent: since it
// was due or, when it was due before it was wanted, since it was put in.
func (r PingRow) Late(now time.Time) time.Duration {
	if r.Set.After(r.Due) {
		return max(0, now.Sub(r.Set))
	}
	return max(0, now.Sub(r.Due))
}

func readPing(s scanner) (r PingRow, err error) {
	var due, set int64
	var member, room, fired sql.NullInt64
	err = s.Scan(&r.Collective, &r.Key, &due, &r.Kind, &r.Loudness, &member, &room, &r.About, &fired, &set)
	r.Due, r.Set, r.To, r.Room = fromMS(due), fromMS(set), kitchen.MemberNo(member.Int64), room.Int64
	if fired.Valid {
		r.Fired = fromMS(fired.Int64)
	}
	return r, err
}

// Pings lists the pings whose key begins with a prefix, by key, those that have
// fired too.
func (b *Book) Pings(prefix string) ([]PingRow, error) {
	if prefix == "" {
		return nil, errors.New("pings of no prefix")
	}
	return each(b.tx, readPing, `
		SELECT collective, key, due_ms, kind, loudness, member, room, about, fired_ms, set_ms
		FROM ping WHERE collective = :collective AND key >= :from AND key < :to ORDER BY key`,
		b.bound(), p("from", prefix), p("to", after(prefix)))
}

// WaitingPings lists the pings that wait whose key begins with a prefix, the first
// due first.
func (b *Book) WaitingPings(prefix string) ([]PingRow, error) {
	return each(b.tx, readPing, `
		SELECT collective, key, due_ms, kind, loudness, member, room, about, fired_ms, set_ms
		FROM ping INDEXED BY ping_due
		WHERE collective = :collective AND fired_ms IS NULL AND key >= :from AND key < :to ORDER BY due_ms`,
		b.bound(), p("from", prefix), p("to", after(prefix)))
}

// after is the first text behind all that begin with a prefix. Keys are plain
// ASCII, so the last byte can be counted up.
func after(prefix string) string {
	last := len(prefix) - 1
	return prefix[:last] + string(prefix[last]+1)
}

// Reconcile makes the waiting pings under a prefix (such as run/12/) equal to the
// list: new keys are put in, changed ones changed, vanished ones withdrawn. One
// that has fired stays so, wanted or not, unless its time was moved and lies
// ahead of now: then it waits again. Every key of the list begins with the
// prefix and occurs once.
func (b *Book) Reconcile(prefix string, want []kitchen.Ping, now time.Time) error {
	rows, err := b.Pings(prefix)
	if err != nil {
		return err
	}
	have := make(map[string]PingRow, len(rows))
	for _, r := range rows {
		have[r.Key] = r
	}
	for _, w := range want {
		old, known := have[w.Key]
		delete(have, w.Key)
		w.Due = fromMS(toMS(w.Due))
		if known && old.Ping == w {
			continue
		}
		row := PingRow{Ping: w, Fired: old.Fired, Set: old.Set}
		if !w.Due.Equal(old.Due) {
			row.Set = now
			if w.Due.After(now) {
				row.Fired = time.Time{}
			}
		}
		if err := b.putPing(row); err != nil {
			return err
		}
	}
	for key, old := range have {
		if old.Fired.IsZero() {
			if err := b.withdraw(key); err != nil {
				return err
			}
		}
	}
	return nil
}

func (b *Book) putPing(w PingRow) error {
	b.tx.pinged = true
	_, err := b.tx.exec(`
		INSERT INTO ping (collective, key, due_ms, kind, loudness, member, room, about, fired_ms, set_ms)
		VALUES (:collective, :key, :due, :kind, :loudness, :member, :room, :about, :fired, :set)
		ON CONFLICT (collective, key) DO UPDATE SET due_ms = excluded.due_ms, kind = excluded.kind,
			loudness = excluded.loudness, member = excluded.member, room = excluded.room,
			about = excluded.about, fired_ms = excluded.fired_ms, set_ms = excluded.set_ms`,
		b.bound(), p("key", w.Key), p("due", toMS(w.Due)), p("kind", w.Kind), p("loudness", w.Loudness),
		p("member", orNull(w.To)), p("room", orNull(w.Room)), p("about", w.About),
		p("fired", sql.NullInt64{Int64: toMS(w.Fired), Valid: !w.Fired.IsZero()}), p("set", toMS(w.Set)))
	return err
}

func (b *Book) withdraw(key string) error {
	b.tx.pinged = true
	_, err := b.tx.exec(`DELETE FROM ping WHERE collective = :collective AND key = :key`, b.bound(), p("key", key))
	return err
}

// MarkFired says that a ping's post was queued. One that has fired stays as it
// is.
func (b *Book) MarkFired(key string, at time.Time) error {
	_, err := b.tx.exec(`
		UPDATE ping SET fired_ms = :at WHERE collective = :collective AND key = :key AND fired_ms IS NULL`,
		b.bound(), p("key", key), p("at", toMS(at)))
	return err
}

// DuePings lists at most limit pings of all collectives that wait and are due at
// now: those that guard a hot cooker first, then by loudness, then the longest due.
func (tx *Tx) DuePings(now time.Time, limit int) ([]PingRow, error) {
	return each(tx, readPing, `
		SELECT collective, key, due_ms, kind, loudness, member, room, about, fired_ms, set_ms
		FROM ping WHERE fired_ms IS NULL AND due_ms <= :now ORDER BY loudness, due_ms, collective, key LIMIT :limit`,
		p("now", toMS(now)), p("limit", limit))
}

// NextDue is when the next ping that waits is due; false means that none waits.
func (tx *Tx) NextDue() (time.Time, bool, error) {
	var due int64
	err := tx.row(`SELECT due_ms FROM ping WHERE fired_ms IS NULL ORDER BY due_ms LIMIT 1`).Scan(&due)
	if errors.Is(err, ErrNotFound) {
		return time.Time{}, false, nil
	}
	return fromMS(due), err == nil, err
}
