package store

import (
	"context"
	"database/sql"
	"fmt"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"ryebell/internal/kitchen"
)

// A turn is measured against the same rows written by prepared statements in a
// bare transaction, on the same file: what the disk and the database take.

const bigLog = 300_000

func BenchmarkEmpty(b *testing.B) { measure(b, 0) }
func BenchmarkBig(b *testing.B)   { measure(b, bigLog) }

// measure builds one book of so many entries and measures everything on it.
func measure(b *testing.B, entries int) {
	folder := bookOf(b, entries)
	b.Run("turn", func(b *testing.B) { turns(b, folder) })
	b.Run("open", func(b *testing.B) { opening(b, folder) })
	b.Run("verify", func(b *testing.B) { verifying(b, folder) })
}

func verifying(b *testing.B, folder string) {
	db := open(b, folder)
	for b.Loop() {
		if err := verify(b, db, 1); err != nil {
			b.Fatal(err)
		}
	}
}

// batch is how many turns are written before as many bare ones: enough that
// each finds its own pages in memory, few enough that both meet the same disk.
const batch = 64

// turns writes a mark, an entry, a ping and a post a turn, and behind each batch
// as many bare ones. It reports the mean of the bare ones and the ratio.
func turns(b *testing.B, folder string) {
	db := open(b, folder)
	bare := newBare(b, folder)
	first := countsOf(b, db)[1]
	var ours, theirs time.Duration
	b.ReportAllocs()
	for i := first; b.Loop(); i++ {
		now := morning.Add(time.Duration(i) * time.Second)
		start := time.Now()
		if err := db.Update(context.Background(), func(tx *Tx) error { return turn(tx, i, now) }); err != nil {
			b.Fatal(err)
		}
		ours += time.Since(start)
		if (i-first)%batch != batch-1 {
			continue
		}
		b.StopTimer()
		start = time.Now()
		for range batch {
			if err := bare.write(now); err != nil {
				b.Fatal(err)
			}
		}
		theirs += time.Since(start)
		b.StartTimer()
	}
	b.ReportMetric(float64(ours)/float64(theirs), "turn/bare")
}

func turn(tx *Tx, i int, now time.Time) error {
	name := strconv.Itoa(i)
	id, fresh, err := tx.Claim(Event{Door: "bench", Event: name, Collective: 1, Room: 1, Member: 1, At: now, Arrived: now})
	if err != nil || !fresh {
		return fmt.Errorf("claim %d: %v %w", i, fresh, err)
	}
	book := tx.Book(1)
	_, err = book.Append(Line{By: 1, Room: 1, Inbox: id, At: now, Written: now, Subject: "start", Entry: kitchen.StepIs{Step: 10}, Said: "round to 10 g"})
	if err != nil {
		return err
	}
	ping := kitchen.Ping{Key: "bench/" + name + "/", Due: now.Add(time.Hour), Kind: kitchen.StartNow, Loudness: kitchen.DuePing, To: 1, Room: 1, About: "start"}
	if err := book.Reconcile(ping.Key, []kitchen.Ping{ping}, now); err != nil {
		return err
	}
	if _, err := book.Queue(Parcel{Room: 1, Rank: InTurn, Post: make([]byte, 300), Inbox: id, About: "start"}, now); err != nil {
		return err
	}
	return book.SetTurn(Turn{ID: id, Room: 1, Member: 1, Kind: "step", Said: "round to 10 g"})
}

// bare writes what a turn writes, with prepared statements of database/sql
// alone. Its log is that of a second collective, so that neither disturbs the
// other's numbers.
type bare struct {
	pool  *sql.DB
	stmts []*sql.Stmt
	last  int
}

func newBare(b *testing.B, folder string) *bare {
	b.Helper()
	pool, err := sql.Open("sqlite", writerDSN(filepath.Join(folder, FileName), Config{}))
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = pool.Close() })
	pool.SetMaxOpenConns(1)
	w := &bare{pool: pool}
	for _, text := range []string{
		`INSERT INTO inbox (door, event, collective, room, member, at_ms, arrived_ms, kind, said) VALUES ('bare', ?, 2, 2, 1, ?, ?, 'step', 'round to 10 g')`,
		`INSERT INTO entry (collective, number, subject, member, room, inbox, at_ms, written_ms, kind, version, body, said, salt, digest, hash)
			VALUES (2, ?, 'start', 1, 2, ?, ?, ?, 'step', 1, '{"g":10}', 'round to 10 g', ?, ?, ?)`,
		`INSERT INTO ping (collective, key, due_ms, kind, loudness, member, room, about) VALUES (2, ?, ?, 1, 2, 1, 2, 'start')`,
		`INSERT INTO outbox (collective, room, rank, inbox, about, slot, reply_to, post, state, next_ms, created_ms) VALUES (2, 2, 2, ?, 'start', '', '', ?, 1, ?, ?)`,
	} {
		s, err := pool.Prepare(text)
		if err != nil {
			b.Fatal(err)
		}
		w.stmts = append(w.stmts, s)
	}
	if err := pool.QueryRow(`SELECT coalesce(max(number), 0) FROM entry WHERE collective = 2`).Scan(&w.last); err != nil {
		b.Fatal(err)
	}
	return w
}

func (w *bare) write(now time.Time) error {
	tx, err := w.pool.Begin()
	if err != nil {
		return err
	}
	w.last++
	name, ms := strconv.Itoa(w.last), toMS(now)
	r, err := tx.Stmt(w.stmts[0]).Exec(name, ms, ms)
	if err != nil {
		return err
	}
	id, err := r.LastInsertId()
	if err != nil {
		return err
	}
	post, salt, hash := make([]byte, 300), make([]byte, 16), make([]byte, 32)
	for n, args := range [][]any{
		{w.last, id, ms, ms, salt, hash, hash}, {"bench/" + name + "/", ms + 3600_000}, {id, post, ms, ms},
	} {
		if _, err := tx.Stmt(w.stmts[n+1]).Exec(args...); err != nil {
			return err
		}
	}
	return tx.Commit()
}

func opening(b *testing.B, folder string) {
	for b.Loop() {
		db, err := Open(context.Background(), folder, Config{})
		if err != nil {
			b.Fatal(err)
		}
		b.StopTimer()
		if err := db.Close(); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
}

// bookOf gives a folder with a book of so many entries.
func bookOf(b *testing.B, entries int) string {
	b.Helper()
	folder := b.TempDir()
	db := open(b, folder)
	for _, address := range []string{"room", "bare"} {
		if err := db.Update(context.Background(), func(tx *Tx) error { return foundation(tx, address) }); err != nil {
			b.Fatal(err)
		}
	}
	if entries > 0 {
		if err := db.Update(context.Background(), func(tx *Tx) error { return fill(tx, entries) }); err != nil {
			b.Fatal(err)
		}
	}
	if err := db.Close(); err != nil {
		b.Fatal(err)
	}
	return folder
}

// fill writes a log of several hundred subjects, with its turns and posts, in
// one transaction.
func fill(tx *Tx, entries int) error {
	book := tx.Book(1)
	for i := range entries {
		now := morning.Add(time.Duration(i-entries) * time.Minute)
		name := strconv.Itoa(i)
		id, _, err := tx.Claim(Event{Door: "console", Event: name, Collective: 1, Room: 1, Member: 1, At: now, Arrived: now})
		if err != nil {
			return err
		}
		_, err = book.Append(Line{By: 1, Room: 1, Inbox: id, At: now, Written: now, Subject: "run/" + strconv.Itoa(i/50), Entry: kitchen.StepIs{Step: 10}, Said: "round to 10 g"})
		if err != nil {
			return err
		}
		row, err := book.Queue(Parcel{Room: 1, Rank: InTurn, Post: make([]byte, 300), Inbox: id}, now)
		if err != nil {
			return err
		}
		if err := tx.MarkSent(row, name, now); err != nil {
			return err
		}
		if i%10 == 0 {
			key := "run/" + name
			if err := book.Reconcile(key, []kitchen.Ping{{Key: key, Due: now, Kind: kitchen.StartNow, Loudness: kitchen.DuePing}}, now); err != nil {
				return err
			}
			if err := book.MarkFired(key, now); err != nil {
				return err
			}
		}
	}
	return nil
}
