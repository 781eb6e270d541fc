package console_test

import (
	"bytes"
	"context"
	"io"
	"sync"
	"testing"

	"ryebell/internal/chat"
	"ryebell/internal/chat/chattest"
	"ryebell/internal/chat/console"
)

// paper is written to by the door and read by the test.
type paper struct {
	mu  sync.Mutex
	buf bytes.Buffer
}

func (p *paper) Write(b []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.buf.Write(b)
}

func (p *paper) String() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.buf.String()
}

func TestDoor(t *testing.T) {
	chattest.Door(t, func(t testing.TB, handle chat.Handler) chattest.Seat {
		in, keys := io.Pipe()
		out := &paper{}
		d := console.New(console.Config{In: in, Out: out, Person: chat.Person{ID: "me", Name: "Ana"}, Downloads: t.TempDir()})
		ctx, cancel := context.WithCancel(context.Background())
		ended := make(chan error, 1)
		go func() { ended <- d.Run(ctx, handle) }()
		t.Cleanup(func() {
			cancel()
			if err := <-ended; err != nil {
				t.Errorf("Run: %v", err)
			}
			_ = keys.Close() // nobody types any more
		})
		line := func(text string) {
			if _, err := io.WriteString(keys, text+"\n"); err != nil {
				t.Error(err)
			}
		}
		return chattest.Seat{
			Door: d, Room: console.Room(), From: chat.Person{Door: d.Name(), ID: "me"},
			Say: line, Tap: func(label string) { line("[" + label + "]") }, Shown: out.String,
		}
	})
}
