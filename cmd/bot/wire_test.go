package main

import (
	"context"
	"errors"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/faultfs"
	"ryebell/internal/store/storetest"
)

// speaker is a door through which one message comes.
type speaker struct {
	message chat.Message
	heard   chan error // what became of it

	mu   sync.Mutex
	sent []chat.Parcel
}

func (*speaker) Name() chat.DoorName { return chat.Console }

func (s *speaker) Run(ctx context.Context, handle chat.Handler) error {
	s.heard <- handle(ctx, s.message)
	<-ctx.Done()
	return nil
}

func (s *speaker) Send(_ context.Context, p chat.Parcel) (chat.Receipt, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.sent = append(s.sent, p)
	return chat.Receipt{Post: "post"}, nil
}

// speaking wires a house whose door brings a message, on a disk that can fail.
func speaking(t *testing.T) (*house, *speaker, *faultfs.Disk) {
	t.Helper()
	folder := t.TempDir()
	disk := faultfs.Watch(t, folder)
	db := storetest.OpenIn(t, folder)
	now := time.Date(2026, time.March, 2, 9, 0, 0, 0, time.UTC)
	robin, room := chat.Person{Door: chat.Console, ID: "robin", Name: "Robin"}, chat.Room{Door: chat.Console, ID: "room"}
	door := &speaker{heard: make(chan error, 1), message: chat.Message{
		Event: "one", Room: room, From: robin, At: now, Arrived: now,
		Audience: chat.Group, Address: chat.Addressed, Text: "3 bags 5lb agar",
	}}
	h := wire(db, time.UTC, slog.New(slog.DiscardHandler), door)
	if err := h.found(t.Context(), room, robin, now); err != nil {
		t.Fatal(err)
	}
	return h, door, disk
}

// Whoever speaks while the book can't be written is told so through the door, past
// the outbox, and the message is not taken for answered.
func TestPersonIsToldThatNothingCounts(t *testing.T) {
	h, door, disk := speaking(t)
	if err := disk.SetNow("query_only = 1"); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- h.run(ctx) }()
	if err := <-door.heard; !errors.Is(err, store.ErrReadOnly) {
		t.Errorf("the message came back with %v", err)
	}
	cancel()
	if err := <-ended; err != nil {
		t.Error(err)
	}
	if len(door.sent) != 1 || door.sent[0].Row != 0 || door.sent[0].Room != door.message.Room ||
		!strings.Contains(chat.Plain(door.sent[0].Post, 40), "can't write the book") {
		t.Errorf("sent %+v", door.sent)
	}
}

// After a sync that failed the process ends, and nothing was answered.
func TestFailedSyncEndsTheHouse(t *testing.T) {
	h, door, disk := speaking(t)
	disk.Fail(1, faultfs.SyncError, faultfs.Lasting)
	if err := h.run(t.Context()); !errors.Is(err, store.ErrFsync) {
		t.Errorf("the house ended with %v, want ErrFsync", err)
	}
	if err := <-door.heard; !errors.Is(err, store.ErrFsync) || len(door.sent) > 0 {
		t.Errorf("the message came back with %v, sent %+v", err, door.sent)
	}
	disk.Mend()
}
