package rehearsetest

import (
	"context"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/rehearse"
)

// echo says everything back at once and once more after an hour.
func echo(_ testing.TB, d *rehearse.Door) World {
	var heard, queue []string
	var due []time.Time
	var row int64
	send := func(ctx context.Context, _ time.Time) error {
		for _, text := range queue {
			row++
			p := chat.Parcel{Row: row, Room: chat.Room{Door: chat.Console, ID: "room"}, Post: chat.Post{Blocks: []chat.Block{chat.P(text)}}}
			if _, err := d.Send(ctx, p); err != nil {
				return err
			}
		}
		queue = nil
		return nil
	}
	var w World
	w.Deliver = send
	w.Turn = func(_ context.Context, m chat.Message) error {
		heard, queue = append(heard, m.Text), append(queue, m.Text)
		due = append(due, m.At.Add(time.Hour))
		return nil
	}
	w.Next = func(context.Context) (time.Time, bool, error) {
		if len(due) == 0 {
			return time.Time{}, false, nil
		}
		return due[0], true, nil
	}
	w.FireDue = func(context.Context, time.Time) error {
		queue, due, heard = append(queue, "again: "+heard[0]), due[1:], heard[1:]
		return nil
	}
	w.Due = func(context.Context) (string, error) {
		if len(due) == 0 {
			return "(none)", nil
		}
		return due[0].Format("15:04"), nil
	}
	return w
}
