package outbox

import (
	"context"
	"errors"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// counter takes every parcel and counts.
type counter struct{ sent atomic.Int64 }

func (*counter) Name() chat.DoorName                     { return "fake" }
func (*counter) Run(context.Context, chat.Handler) error { return nil }
func (c *counter) Send(context.Context, chat.Parcel) (chat.Receipt, error) {
	c.sent.Add(1)
	return chat.Receipt{Post: "x"}, nil
}

// waiting gives an outbox with one row that waits.
func waiting(t *testing.T) (*Outbox, *counter) {
	t.Helper()
	db := storetest.Open(t)
	storetest.Update(t, db, func(tx *store.Tx) error {
		id, err := tx.NewCollective("kitchen", time.Now())
		if err != nil {
			return err
		}
		room, err := tx.Book(id).AddRoom(store.RoomRow{Door: "fake", Address: "a", Kind: store.HomeRoom, Joined: time.Now()})
		if err != nil {
			return err
		}
		post, err := chat.Post{Loudness: chat.Answer}.Encode()
		if err != nil {
			return err
		}
		_, err = tx.Book(id).Queue(store.Parcel{Room: room, Rank: store.InTurn, Post: post}, time.Now())
		return err
	})
	d := &counter{}
	return New(db, []chat.Door{d}, Config{Chance: func() float64 { return 0.5 }}), d
}

// While the book can't be told what was sent, nothing further is: it would be
// sent twice. Once it can, everything goes on by itself.
func TestNothingIsSentWhileTheBookCannotBeTold(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		o, d := waiting(t)
		<-o.db.OutboxChanged() // a wake-up would be one more try
		full := 3
		o.senders[0].marks = []mark{func(*store.Tx) error {
			if full--; full >= 0 {
				return store.ErrFull
			}
			return nil
		}}
		ctx, cancel := context.WithCancel(t.Context())
		done := make(chan error, 1)
		go func() { done <- o.Run(ctx) }()
		time.Sleep(7*time.Second - time.Millisecond)
		synctest.Wait()
		if d.sent.Load() != 0 {
			t.Error("a post was sent while the book was full")
		}
		time.Sleep(time.Millisecond) // tries at 0, 1, 3 and 7 seconds
		synctest.Wait()
		if d.sent.Load() != 1 {
			t.Errorf("%d posts sent once there was space, want 1", d.sent.Load())
		}
		cancel()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
}

// After a failed sync, or once the file is malformed, nothing is known of the
// book: the process must end, and the mark is not tried again.
func TestBrokenBookEndsRun(t *testing.T) {
	for _, broken := range []error{store.ErrFsync, store.ErrDamaged} {
		o, d := waiting(t)
		tries := 0
		o.senders[0].marks = []mark{func(*store.Tx) error { tries++; return broken }}
		if err := o.Run(t.Context()); !errors.Is(err, broken) {
			t.Errorf("Run: got %v, want %v", err, broken)
		}
		if err := o.Flush(t.Context(), time.Now()); !errors.Is(err, broken) || tries != 1 {
			t.Errorf("Flush: got %v, want %v; %d tries, want 1", err, broken, tries)
		}
		if d.sent.Load() != 0 {
			t.Error("a post was sent from a broken book")
		}
	}
}

func TestDeliverKnowsItsDoors(t *testing.T) {
	o, _ := waiting(t)
	if err := o.Deliver(t.Context(), "other", time.Now()); err == nil {
		t.Error("delivered through a door that is not there")
	}
}
