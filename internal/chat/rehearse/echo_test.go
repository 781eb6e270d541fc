package rehearse

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
)

// echo is a bot that answers every message with what it knows of it, has an
// Again button below, and does as a few words tell it: "ping 90m" pings after
// that time, "tell" answers in private, "edit" changes its first post there,
// "refuse" fails, "stuck" leaves something due for ever.
type echo struct {
	door  *Door
	heard []chat.Message
	row   int64
	queue []chat.Parcel
	pings []ping
	posts map[string]string // the first post in each room
}

type ping struct {
	due  time.Time
	room chat.Room
	text string
}

func newEcho(t testing.TB, d *Door) (*echo, World) {
	t.Helper()
	e := &echo{door: d, posts: map[string]string{}}
	return e, World{Turn: e.turn, Deliver: e.deliver, Next: e.next, FireDue: e.fire}
}

func (e *echo) turn(_ context.Context, m chat.Message) error {
	e.heard = append(e.heard, m)
	word, arg, _ := strings.Cut(m.Text, " ")
	switch {
	case m.Tap != nil:
		e.say(m.Room, m.From.Name+" tapped")
	case word == "ping":
		by, err := time.ParseDuration(arg)
		if err != nil {
			return err
		}
		e.pings = append(e.pings, ping{m.At.Add(by), m.Room, "ping of " + arg})
		slices.SortStableFunc(e.pings, func(a, b ping) int { return a.due.Compare(b.due) })
	case word == "tell":
		e.say(chat.Room{Door: chat.Console, ID: "private:" + m.From.ID}, arg)
	case word == "edit":
		e.say(m.Room, "changed to "+arg)
		e.queue[len(e.queue)-1].Replaces = e.posts[m.Room.ID]
	case word == "refuse":
		return context.DeadlineExceeded
	case word == "stuck":
		e.pings = append(e.pings, ping{due: m.At, text: "stuck"})
	case m.Address == chat.Addressed || strings.HasPrefix(m.Text, "echo"):
		e.say(m.Room, m.Text)
		e.queue[len(e.queue)-1].Post.Buttons = []chat.Button{{Label: "Again", Say: "again"}}
	}
	return nil
}

func (e *echo) say(to chat.Room, text string) {
	e.row++
	e.queue = append(e.queue, chat.Parcel{Row: e.row, Room: to, Post: chat.Post{Blocks: []chat.Block{chat.P(text)}}})
}

func (e *echo) deliver(ctx context.Context, _ time.Time) error {
	for len(e.queue) > 0 {
		r, err := e.door.Send(ctx, e.queue[0])
		if err != nil {
			return err
		}
		if in := e.queue[0].Room.ID; e.posts[in] == "" {
			e.posts[in] = r.Post
		}
		e.queue = e.queue[1:]
	}
	return nil
}

func (e *echo) next(context.Context) (time.Time, bool, error) {
	if len(e.pings) == 0 {
		return time.Time{}, false, nil
	}
	return e.pings[0].due, true, nil
}

func (e *echo) fire(_ context.Context, now time.Time) error {
	for len(e.pings) > 0 && !e.pings[0].due.After(now) && e.pings[0].text != "stuck" {
		text := e.pings[0].text
		if late := now.Sub(e.pings[0].due); late > 0 {
			text += ", " + late.String() + " late"
		}
		e.say(e.pings[0].room, text)
		e.pings = e.pings[1:]
	}
	return nil
}
