package store_test

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// queue puts a post into the home room and gives its row.
func (k kitchenOf) queue(t testing.TB, db *store.DB, c store.Parcel) (id store.RowID) {
	t.Helper()
	c.Room = k.room
	if c.Rank == 0 {
		c.Rank = store.InTurn
	}
	storetest.Update(t, db, func(tx *store.Tx) (err error) {
		id, err = tx.Book(k.id).Queue(c, morning)
		return err
	})
	return id
}

func heads(t testing.TB, db *store.DB, now time.Time) (next []store.Dispatch) {
	t.Helper()
	storetest.View(t, db, func(tx *store.Tx) (err error) {
		next, err = tx.NextParcels("console", now, 10)
		return err
	})
	return next
}

// sendAll sends what is due until nothing is, and says what went out as "post" or
// "post edits identifier". Posts are identified by their row.
func sendAll(t testing.TB, db *store.DB) (sent []string) {
	t.Helper()
	for {
		next := heads(t, db, morning)
		if len(next) == 0 {
			return sent
		}
		d := next[0]
		external, line := fmt.Sprintf("x%d", d.Row), string(d.Post)
		if d.Replaces != "" {
			external, line = d.Replaces, line+" edits "+d.Replaces
		}
		sent = append(sent, line)
		storetest.Update(t, db, func(tx *store.Tx) error { return tx.MarkSent(d.Row, external, morning) })
	}
}

func TestOutboxOrder(t *testing.T) {
	for _, tt := range []struct {
		name  string
		queue []store.Parcel
		want  []string
	}{
		{"in turn", []store.Parcel{{Post: []byte("a")}, {Post: []byte("b")}}, []string{"a", "b"}},
		{"guard overtakes", []store.Parcel{{Post: []byte("a")}, {Post: []byte("hot"), Rank: store.Overtakes}}, []string{"hot", "a"}},
		{
			"newest of a slot",
			[]store.Parcel{{Post: []byte("1"), Slot: "run/1"}, {Post: []byte("a")}, {Post: []byte("2"), Slot: "run/1"}},
			[]string{"a", "2"},
		},
		{
			"other slots apart",
			[]store.Parcel{{Post: []byte("1"), Slot: "run/1"}, {Post: []byte("2"), Slot: "run/2"}},
			[]string{"1", "2"},
		},
		{
			"an older post does not come behind the guard of its slot",
			[]store.Parcel{{Post: []byte("1"), Slot: "run/1"}, {Post: []byte("hot"), Slot: "run/1", Rank: store.Overtakes}},
			[]string{"hot"},
		},
		{
			"a guard is not merged into a later post in turn",
			[]store.Parcel{{Post: []byte("hot"), Slot: "run/1", Rank: store.Overtakes}, {Post: []byte("2"), Slot: "run/1"}},
			[]string{"hot", "2 edits x1"},
		},
		{
			"an answer edited before it was sent",
			[]store.Parcel{{Post: []byte("a")}, {Post: []byte("a2"), Replaces: 1}},
			[]string{"a2"},
		},
		{
			"edited twice",
			[]store.Parcel{{Post: []byte("a")}, {Post: []byte("a2"), Replaces: 1}, {Post: []byte("a3"), Replaces: 2}},
			[]string{"a3"},
		},
	} {
		t.Run(tt.name, func(t *testing.T) {
			db := storetest.Open(t)
			k := found(t, db, "room")
			for _, c := range tt.queue {
				k.queue(t, db, c)
			}
			if d := cmp.Diff(tt.want, sendAll(t, db)); d != "" {
				t.Errorf("want -, got +\n%s", d)
			}
		})
	}
}

func TestEditsInPlace(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	first := k.queue(t, db, store.Parcel{Post: []byte("a")})
	k.queue(t, db, store.Parcel{Post: []byte("board 1"), Slot: "board"})
	sendAll(t, db)
	second := k.queue(t, db, store.Parcel{Post: []byte("a2"), Replaces: first})
	k.queue(t, db, store.Parcel{Post: []byte("board 2"), Slot: "board"})
	want := []string{"a2 edits x1", "board 2 edits x2"}
	if d := cmp.Diff(want, sendAll(t, db)); d != "" {
		t.Errorf("want -, got +\n%s", d)
	}
	third := k.queue(t, db, store.Parcel{Post: []byte("a3"), Replaces: second})
	if got := heads(t, db, morning); len(got) != 1 || got[0].Replaces != "x1" {
		t.Fatalf("heads %+v, want an edit of x1", got)
	}
	// The platform no longer has x1: the door sent it as a new post.
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.MarkSent(third, "y1", morning) })
	k.queue(t, db, store.Parcel{Post: []byte("a4"), Replaces: second})
	if d := cmp.Diff([]string{"a4 edits y1"}, sendAll(t, db)); d != "" {
		t.Errorf("want -, got +\n%s", d)
	}
}

func TestPostponedRefusedHeld(t *testing.T) {
	db := storetest.Open(t)
	ana, jo := found(t, db, "ana"), found(t, db, "jo")
	a := ana.queue(t, db, store.Parcel{Post: []byte("a")})
	ana.queue(t, db, store.Parcel{Post: []byte("b")})
	jo.queue(t, db, store.Parcel{Post: []byte("j")})
	later := morning.Add(time.Minute)
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Postpone(a, later, "502") })
	due := func(now time.Time, want ...string) {
		t.Helper()
		var got []string
		for _, d := range heads(t, db, now) {
			got = append(got, string(d.Post))
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("due at %v: want -, got +\n%s", now, d)
		}
	}
	due(morning, "j")
	due(later, "j", "a")
	ana.queue(t, db, store.Parcel{Post: []byte("hot"), Rank: store.Overtakes})
	due(morning, "hot", "j")
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.HoldRoom(ana.room, later) })
	due(morning, "j")
	due(later, "hot", "j")
	storetest.Update(t, db, func(tx *store.Tx) error {
		if err := tx.Refuse(5-1, "kicked"); err != nil { // hot
			return err
		}
		return tx.Refuse(a, "kicked")
	})
	due(later, "j", "b")
	storetest.View(t, db, func(tx *store.Tx) error {
		all := func(store.Dispatch) bool { return true }
		next, ok, err := tx.NextTry("console", all)
		if !ok || !next.Equal(morning) {
			t.Errorf("next try %v %v, want 09:00", next, ok)
		}
		if _, ok, err := tx.NextTry("matrix", all); ok || err != nil {
			t.Errorf("another door has something to send: %v", err)
		}
		refused, err2 := tx.Refusals(10)
		if len(refused) != 2 || refused[1].ID != a || refused[1].Reason != "kicked" || refused[1].Attempts != 2 {
			t.Errorf("refused %+v", refused)
		}
		return errors.Join(err, err2)
	})
}

// A newest post that the platform refuses must not bring back the older one that
// it has made needless.
func TestRefusedMergesItsSlot(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	old := k.queue(t, db, store.Parcel{Post: []byte("heating"), Slot: "run/1"})
	other := k.queue(t, db, store.Parcel{Post: []byte("board"), Slot: "board"})
	newest := k.queue(t, db, store.Parcel{Post: []byte("venting"), Slot: "run/1"})
	later := k.queue(t, db, store.Parcel{Post: []byte("holding"), Slot: "run/1"})
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Refuse(newest, "too long") })
	for id, want := range map[store.RowID]store.RowState{old: store.Merged, other: store.Waiting, newest: store.Refused, later: store.Waiting} {
		storetest.View(t, db, func(tx *store.Tx) error {
			r, err := tx.Book(k.id).Row(id)
			if r.State != want {
				t.Errorf("row %d (%s) is %v, want %v", id, r.Post, r.State, want)
			}
			return err
		})
	}
	if d := cmp.Diff([]string{"board", "holding"}, sendAll(t, db)); d != "" {
		t.Errorf("want -, got +\n%s", d)
	}
}

func TestMarkedAgain(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	row := k.queue(t, db, store.Parcel{Post: []byte("a")})
	for _, external := range []string{"x1", "x2"} {
		storetest.Update(t, db, func(tx *store.Tx) error { return tx.MarkSent(row, external, morning) })
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		r, err := tx.Book(k.id).RowOfPost(k.room, "x1")
		if r.ID != row || r.State != store.Sent || r.Attempts != 1 {
			t.Errorf("row %+v", r)
		}
		return err
	})
}

// TestOutboxLosesNothing queues at random and lets a sender take, send, fail,
// crash between sending and marking, and be refused. In the end every row was
// sent, refused or needless, rows of one rank without a slot went out in order,
// and each slot shows its newest.
func TestOutboxLosesNothing(t *testing.T) {
	db := storetest.Open(t)
	round := 0
	rapid.Check(t, func(rt *rapid.T) {
		round++
		k := found(t, db, fmt.Sprintf("room %d", round))
		s := sender{db: db, k: k, now: morning, shown: map[string]store.RowID{}, newest: map[string]store.RowID{}}
		rt.Repeat(map[string]func(*rapid.T){
			"queue": s.queue, "send": s.send, "fail": s.fail, "crash": s.crash, "wait": func(*rapid.T) { s.now = s.now.Add(time.Minute) },
		})
		s.now = s.now.Add(time.Hour)
		for s.head(rt) != nil {
			s.send(rt)
		}
		s.check(rt)
	})
}

type sender struct {
	db     *store.DB
	k      kitchenOf
	now    time.Time
	queued []store.RowID
	last   [3]store.RowID // by rank: the last row sent that has no slot
	shown  map[string]store.RowID
	newest map[string]store.RowID
}

func (s *sender) update(rt *rapid.T, f func(*store.Tx) error) {
	if err := s.db.Update(context.Background(), f); err != nil {
		rt.Fatal(err)
	}
}

func (s *sender) queue(rt *rapid.T) {
	slot := rapid.SampledFrom([]string{"", "", "run/1", "board"}).Draw(rt, "slot")
	rank := rapid.SampledFrom([]store.Rank{store.InTurn, store.InTurn, store.Overtakes}).Draw(rt, "rank")
	s.update(rt, func(tx *store.Tx) error {
		id, err := tx.Book(s.k.id).Queue(store.Parcel{Room: s.k.room, Rank: rank, Slot: slot, Post: []byte(slot)}, s.now)
		s.queued = append(s.queued, id)
		s.newest[slot] = id
		return err
	})
}

func (s *sender) head(rt *rapid.T) (next *store.Dispatch) {
	err := s.db.View(context.Background(), func(tx *store.Tx) error {
		all, err := tx.NextParcels("console", s.now, 1000)
		for _, d := range all {
			if d.Room == s.k.room {
				next = &d
			}
		}
		return err
	})
	if err != nil {
		rt.Fatal(err)
	}
	return next
}

func (s *sender) send(rt *rapid.T) {
	d := s.head(rt)
	if d == nil {
		return
	}
	s.deliver(rt, d)
	s.update(rt, func(tx *store.Tx) error { return tx.MarkSent(d.Row, fmt.Sprintf("x%d", d.Row), s.now) })
}

// deliver is the platform taking a parcel.
func (s *sender) deliver(rt *rapid.T, d *store.Dispatch) {
	slot := string(d.Post)
	if slot == "" && d.Row < s.last[d.Rank] {
		rt.Fatalf("row %d came behind %d", d.Row, s.last[d.Rank])
	}
	if slot == "" {
		s.last[d.Rank] = d.Row
		return
	}
	if d.Row < s.shown[slot] {
		rt.Fatalf("%s shows row %d and then the older %d", slot, s.shown[slot], d.Row)
	}
	s.shown[slot] = d.Row
}

func (s *sender) crash(rt *rapid.T) {
	if d := s.head(rt); d != nil {
		s.deliver(rt, d)
	}
}

func (s *sender) fail(rt *rapid.T) {
	if d := s.head(rt); d != nil {
		s.update(rt, func(tx *store.Tx) error { return tx.Postpone(d.Row, s.now.Add(time.Minute), "no network") })
	}
}

func (s *sender) check(rt *rapid.T) {
	err := s.db.View(context.Background(), func(tx *store.Tx) error {
		for _, id := range s.queued {
			r, err := tx.Book(s.k.id).Row(id)
			if err != nil {
				return err
			}
			if r.State != store.Sent && !(r.State == store.Merged && r.Slot != "") {
				rt.Fatalf("row %d is %v", id, r.State)
			}
		}
		return nil
	})
	if err != nil {
		rt.Fatal(err)
	}
	for slot, id := range s.newest {
		if slot != "" && s.shown[slot] != id {
			rt.Fatalf("%s shows row %d, the newest is %d", slot, s.shown[slot], id)
		}
	}
}
