package ordeal

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"sync/atomic"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

// live is the child: it lives through the day from a step on, and says on stdout
// each message that it has answered and each post that it hands out.
func live(folder, first string, w way) error {
	data, err := os.ReadFile(filepath.Join(filepath.Dir(folder), scriptFile))
	if err != nil {
		return err
	}
	var s script
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	from, err := strconv.Atoi(first)
	if err != nil {
		return err
	}
	db, err := store.Open(context.Background(), folder, store.Config{Readers: 2})
	if err != nil {
		return err
	}
	c := &child{}
	c.bot = around(db, sink{took: say}, c.clock.now)
	if err := c.found(context.Background(), s.Start); err != nil {
		return err
	}
	s.Steps = s.Steps[from:]
	switch w {
	case inTurn:
		err = c.inTurn(s)
	case beside:
		err = c.beside(s)
	}
	if err != nil {
		return err
	}
	fmt.Println("done")
	return db.Close()
}

// say says that a post was handed out.
func say(p chat.Parcel) error {
	rank := "in-turn"
	if p.Post.Loudness == chat.Guard {
		rank = "overtakes"
	}
	_, err := fmt.Println("sent", p.Row, p.Room.ID+"/"+rank)
	return err
}

func tell(m chat.Message) { fmt.Println("told", m.Event) }

// child is a process that may be killed, with the clock of its day.
type child struct {
	*bot
	clock dayClock
}

// dayClock stands until it is set.
type dayClock struct{ at atomic.Int64 }

func (c *dayClock) now() time.Time   { return time.UnixMilli(c.at.Load()).UTC() }
func (c *dayClock) set(at time.Time) { c.at.Store(at.UnixMilli()) }

func (c *child) inTurn(s script) error {
	// What the process before left is sent before anything further is said.
	if err := c.deliver(context.Background(), s.from()); err != nil {
		return err
	}
	for _, do := range s.stages(tell) {
		if err := do(context.Background(), c.bot); err != nil {
			return err
		}
	}
	return nil
}

// from is when what is left of a script begins.
func (s script) from() time.Time {
	if len(s.Steps) == 0 {
		return s.End
	}
	return s.Steps[0].At
}

// beside has reminders and outbox run while it talks.
func (c *child) beside(s script) error {
	c.clock.set(s.from())
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	ends := make(chan error, 2)
	go func() { ends <- c.reminders.Run(ctx) }()
	go func() { ends <- c.outbox.Run(ctx) }()
	for _, p := range s.Steps {
		c.clock.set(p.At)
		if err := c.step(ctx, s, p); err != nil {
			return err
		}
	}
	err := c.deliver(ctx, s.End)
	cancel()
	return errors.Join(err, <-ends, <-ends)
}

func (c *child) step(ctx context.Context, s script, p step) error {
	if p.Says == nil {
		return c.reminders.FireDue(ctx, p.At)
	}
	// Only what has arrived can be tapped, replied to or thought better of.
	if p.Says.Tap != nil || p.Says.ReplyTo != "" || p.Says.Edits != "" {
		if err := c.deliver(ctx, p.At); err != nil {
			return err
		}
	}
	err := c.answerer.Turn(ctx, *p.Says)
	if err == nil && s.Marked[p.Says.Event] {
		tell(*p.Says)
	}
	return err
}
