package main

import (
	"context"
	"errors"
	"log/slog"
	"strings"
	"time"

	"golang.org/x/sync/errgroup"

	"ryebell/internal/chat"
	"ryebell/internal/chat/answer"
	"ryebell/internal/chat/console"
	"ryebell/internal/chat/outbox"
	"ryebell/internal/kitchen"
	"ryebell/internal/reminders"
	"ryebell/internal/store"
)

// flushTime is how long the program goes on sending, at its end, what it has
// answered.
const flushTime = 5 * time.Second

// house is the program around one open book.
type house struct {
	doors     []chat.Door
	answerer  *answer.Answerer
	reminders *reminders.Reminders
	outbox    *outbox.Outbox
	log       *slog.Logger
}

// wire puts the rooms of the house together. The zone is that of kitchens that
// have not said theirs.
func wire(db *store.DB, zone *time.Location, log *slog.Logger, doors ...chat.Door) *house {
	a := answer.New(db, answer.Config{Log: log, Zone: zone, Weekly: weekly})
	return &house{
		doors:     doors,
		answerer:  a,
		reminders: reminders.New(db, a.Ping, reminders.Config{Log: log}),
		outbox:    outbox.New(db, doors, outbox.Config{Log: log}),
		log:       log,
	}
}

// weekly is the calendar of the digests.
func weekly(d kitchen.DigestIs, zone *time.Location, after time.Time) (key string, due time.Time, err error) {
	at := reminders.TimeOfDay{Hour: int(d.At) / 60, Minute: int(d.At) % 60}
	c, err := reminders.Weekly(strings.TrimSuffix(kitchen.DigestPrefix, "/"), d.Day, at, zone)
	if err != nil {
		return "", time.Time{}, err
	}
	next := c.Next(after)
	return next.Key, next.Due, nil
}

// run starts all goroutines of the program and waits for them: a receiver for
// each door, the reminders and the outbox. It ends when ctx does, when a door has
// come to the end of what it receives, or when the book is broken.
func (h *house) run(ctx context.Context) error {
	inside, end := context.WithCancelCause(ctx)
	defer end(nil)
	g, running := errgroup.WithContext(inside)
	for _, d := range h.doors {
		g.Go(func() error {
			defer end(nil)
			return d.Run(running, h.turn(d, end))
		})
	}
	g.Go(func() error { return h.reminders.Run(running) })
	g.Go(func() error { return h.outbox.Run(running) })
	err := g.Wait()
	if cause := context.Cause(inside); fatal(cause) {
		return cause
	}
	if fatal(err) {
		return err
	}
	if errors.Is(err, console.ErrInterrupted) {
		return errInterrupted
	}
	return errors.Join(err, h.flush(ctx))
}

// fatal reports whether the process must end: what was written may be lost, or what
// is read wrong.
func fatal(err error) bool {
	return errors.Is(err, store.ErrFsync) || errors.Is(err, store.ErrDamaged)
}

// turn hands a message to the responder. After a fatal failure the message is not
// offered again: the process must end.
func (h *house) turn(d chat.Door, end context.CancelCauseFunc) chat.Handler {
	return func(ctx context.Context, m chat.Message) error {
		err := h.answerer.Turn(ctx, m)
		switch {
		case fatal(err):
			end(err)
		case err != nil && ctx.Err() == nil:
			h.log.Error("message not answered", "door", d.Name(), "error", err)
			h.excuse(ctx, d, m, err)
		}
		return err
	}
}

// excuse tells a person that the book can't be written, past the outbox, which is
// in the book.
func (h *house) excuse(ctx context.Context, d chat.Door, m chat.Message, failure error) {
	post, ok := h.answerer.Excuse(ctx, m, failure)
	if !ok {
		return
	}
	if _, err := d.Send(ctx, chat.Parcel{Room: m.Room, Post: post}); err != nil {
		h.log.Warn("nobody could be told", "door", d.Name(), "error", err)
	}
}

// drain sends what was answered through a door. A book that can't be told so for
// now ends no talk: what is not marked is sent again, and flush tells in the end.
func (h *house) drain(ctx context.Context, d chat.DoorName) error {
	err := h.outbox.Deliver(ctx, d, time.Now())
	if err == nil || fatal(err) || ctx.Err() != nil {
		return err
	}
	h.log.Warn("posts not sent", "door", d, "error", err)
	return nil
}

// flush sends what was answered and is not out yet, even when ctx has ended.
func (h *house) flush(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), flushTime)
	defer cancel()
	return h.outbox.Flush(ctx, time.Now())
}
