package answer

import (
	"context"
	"errors"
	"sync"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/store"
)

// excuseEvery is how long a room is not told again that the book can't be
// written.
const excuseEvery = time.Hour

// excused remembers which rooms were told, and when. It can't be in the book.
type excused struct {
	mu    sync.Mutex
	rooms map[chat.Room]time.Time
}

// first reports whether a room is to be told now, and remembers that it was.
func (e *excused) first(r chat.Room, now time.Time) bool {
	e.mu.Lock()
	defer e.mu.Unlock()
	// A clock that was set back must not silence a room for long.
	if since := now.Sub(e.rooms[r]); since >= 0 && since < excuseEvery {
		return false
	}
	if e.rooms == nil {
		e.rooms = map[chat.Room]time.Time{}
	}
	e.rooms[r] = now
	return true
}

// Excuse is what a person is told when [Answerer.Turn] failed because the book
// can't be written: that nothing counts yet. The outbox is in the book, so the
// caller sends the post through the door itself; if that fails, it is not sent
// again. The message is still to be offered again. False means that nothing is to
// be said: the failure is another one, the message was not meant for the bot, or
// its room was told within the hour.
func (a *Answerer) Excuse(ctx context.Context, m chat.Message, failure error) (chat.Post, bool) {
	if !unwritable(failure) || !a.wasMeant(ctx, m) || !a.excused.first(m.Room, m.Arrived) {
		return chat.Post{}, false
	}
	return wording.CannotWrite(), true
}

func unwritable(err error) bool {
	return errors.Is(err, store.ErrFull) || errors.Is(err, store.ErrReadOnly) || errors.Is(err, store.ErrLocked)
}

// wasMeant reports whether a message would have been answered. Reading works
// while writing does not.
func (a *Answerer) wasMeant(ctx context.Context, m chat.Message) (meant bool) {
	defer func() {
		if recover() != nil {
			meant = true // the turn would have broken, and apologised
		}
	}()
	err := a.db.View(ctx, func(tx *store.Tx) error {
		room, err := tx.Room(string(m.Room.Door), m.Room.ID)
		if err != nil {
			return err // also for a room that nobody claimed
		}
		t := a.newTurn(tx, m, room)
		if err := t.prepare(); err != nil {
			return err
		}
		_, _, meant, err = t.listen()
		return err
	})
	return err == nil && meant
}
