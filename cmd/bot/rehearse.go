package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/answer"
	"ryebell/internal/chat/rehearse"
	"ryebell/internal/store"
)

// rehearse plays the script or the conversation on stdin against a book of its own, which is thrown
// away at the end.
func (p program) rehearse(ctx context.Context, o options) (err error) {
	script, err := rehearse.Open(p.stdin)
	if err != nil {
		return err
	}
	where := o.stage
	if where.Zone == nil {
		if where, err = rehearse.Started(script.Start); err != nil {
			return fmt.Errorf("the start part of the conversation: %w", err)
		}
	}
	folder, err := os.MkdirTemp("", "ryebell-rehearsal-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	db, err := store.Open(ctx, folder, store.Config{})
	if err != nil {
		return ofBook(folder, err)
	}
	where.Out = p.stdout
	door := rehearse.NewDoor(where)
	world, err := stage(ctx, db, door, where.Zone, logger(p.stderr, slog.LevelError))
	if err == nil {
		err = rehearse.Play(ctx, script, door, world)
	}
	return ofBook(folder, errors.Join(err, db.Close()))
}

// stage founds the rooms of a rehearsal in an empty book and wires the bot to
// them: room and room2 belong to one collective, other to another.
func stage(ctx context.Context, db *store.DB, door *rehearse.Door, zone *time.Location, log *slog.Logger) (rehearse.World, error) {
	h := wire(db, zone, log, door)
	room := func(id string) chat.Room { return chat.Room{Door: door.Name(), ID: id} }
	person := func(id, name string) chat.Person { return chat.Person{Door: door.Name(), ID: id, Name: name} }
	now := door.Now().UTC()
	err := errors.Join(
		h.found(ctx, room("room"), person("robin", "Robin"), now),
		h.answerer.Admit(ctx, room("room"), room("room2"), now),
		h.found(ctx, room("other"), person("kit", "Kit"), now),
	)
	return rehearse.World{
		Turn: h.answerer.Turn,
		Deliver: func(ctx context.Context, now time.Time) error {
			return h.outbox.Deliver(ctx, door.Name(), now)
		},
		Next:    h.reminders.Next,
		FireDue: h.reminders.FireDue,
	}, err
}

// found gives a room a collective of its own, unless it has one.
func (h *house) found(ctx context.Context, r chat.Room, who chat.Person, at time.Time) error {
	return h.answerer.Found(ctx, answer.Foundation{Room: r, Person: who, At: at})
}
