package main

import (
	"context"
	"fmt"
	"log/slog"
	"slices"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// watch is a door that tells when a post was handed to it.
type watch struct {
	message chat.Message
	handed  chan time.Time
}

func (*watch) Name() chat.DoorName { return chat.Console }

func (w *watch) Run(ctx context.Context, handle chat.Handler) error {
	if err := handle(ctx, w.message); err != nil {
		return err
	}
	<-ctx.Done()
	return nil
}

func (w *watch) Send(context.Context, chat.Parcel) (chat.Receipt, error) {
	w.handed <- time.Now()
	return chat.Receipt{Post: "post"}, nil
}

// fewestPings is over how many pings lateness is measured at least: of fewer a
// hundredth is no whole ping.
const fewestPings = 300

// How late a ping is handed to its door after it was due, by the whole program on
// the real clock, with 1 and 10,000 rows that wait: the median and the hundredth that
// is latest. A guard ping that comes early fails.
func BenchmarkLateness(b *testing.B) {
	for _, waiting := range []int{1, 10_000} {
		b.Run(fmt.Sprint(waiting), func(b *testing.B) { lateness(b, waiting) })
	}
}

func lateness(b *testing.B, waiting int) {
	db := storetest.Open(b)
	now := time.Now()
	robin, room := chat.Person{Door: chat.Console, ID: "robin", Name: "Robin"}, chat.Room{Door: chat.Console, ID: "room"}
	door := &watch{handed: make(chan time.Time, 10), message: chat.Message{
		Event: "one", Room: room, From: robin, At: now, Arrived: now, Audience: chat.Group, Address: chat.Addressed, Text: "cook 4 quarts lc",
	}}
	h := wire(db, time.UTC, slog.New(slog.DiscardHandler), door)
	if err := h.found(b.Context(), room, robin, now); err != nil {
		b.Fatal(err)
	}
	ctx, end := context.WithCancel(b.Context())
	done := make(chan error, 1)
	go func() { done <- h.run(ctx) }()
	<-door.handed // the answer
	var later []kitchen.Ping
	for i := range waiting {
		later = append(later, holdOver(fmt.Sprintf("run/1/later/%d", i), now.AddDate(1, 0, i%300)))
	}
	want(b, db, "run/1/later/", later)
	var late []time.Duration
	for i := range max(b.N, fewestPings) {
		due := time.Now().Add(25 * time.Millisecond).Truncate(time.Millisecond)
		key := fmt.Sprintf("run/1/now/%d", i)
		want(b, db, key, []kitchen.Ping{holdOver(key, due)})
		late = append(late, (<-door.handed).Sub(due))
	}
	end()
	if err := <-done; err != nil {
		b.Fatal(err)
	}
	slices.Sort(late)
	if late[0] < 0 {
		b.Errorf("%v early", -late[0])
	}
	b.ReportMetric(0, "ns/op") // it is the waiting that takes the time
	b.ReportMetric(float64(len(late)), "pings")
	for name, share := range map[string]int{"p50-ms": 50, "p99-ms": 99} {
		b.ReportMetric(float64(late[(len(late)-1)*share/100].Microseconds())/1000, name)
	}
}

func holdOver(key string, due time.Time) kitchen.Ping {
	return kitchen.Ping{Key: key, Due: due, Kind: kitchen.HoldOver, Loudness: kitchen.GuardPing, To: 1, Room: 1, About: "run/1"}
}

// want makes the pings under a prefix equal to a list.
func want(b *testing.B, db *store.DB, prefix string, pings []kitchen.Ping) {
	b.Helper()
	err := db.Update(b.Context(), func(tx *store.Tx) error {
		all, err := tx.Collectives()
		if err != nil {
			return err
		}
		return tx.Book(all[0]).Reconcile(prefix, pings, time.Now())
	})
	if err != nil {
		b.Fatal(err)
	}
}
