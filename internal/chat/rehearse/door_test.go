package rehearse_test

import (
	"bytes"
	"context"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/chattest"
	"ryebell/internal/chat/rehearse"
)

func TestDoor(t *testing.T) {
	chattest.Door(t, func(t testing.TB, handle chat.Handler) chattest.Seat {
		var out bytes.Buffer
		d := rehearse.NewDoor(rehearse.Options{Out: &out})
		world := rehearse.World{
			Turn:    handle,
			Deliver: func(context.Context, time.Time) error { return nil },
			Next:    func(context.Context) (time.Time, bool, error) { return time.Time{}, false, nil },
		}
		line := func(text string) {
			if err := rehearse.Play(t.Context(), strings.NewReader(text+"\n"), d, world); err != nil {
				t.Error(err)
			}
		}
		return chattest.Seat{
			Door: d, Room: chat.Room{Door: d.Name(), ID: "private:ana"}, From: chat.Person{Door: d.Name(), ID: "ana"},
			Say:   func(text string) { line("<ana private> " + text) },
			Tap:   func(label string) { line("<ana private> [" + label + "]") },
			Reply: func(text string) { line("<ana private reply> " + text) },
			Photo: func(text string) { line("<ana private photo> " + text) },
			Shown: out.String,
		}
	})
}
