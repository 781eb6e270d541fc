package console

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/iotest"
	"testing/synctest"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
)

// screen is a writer that can be read while it is written to.
type screen struct {
	mu  sync.Mutex
	buf bytes.Buffer
}

func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.buf.Write(p)
}

func (s *screen) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.buf.String()
}

// echo answers each message with its text or its tap once it is asked to
// drain, as an outbox would.
type echo struct {
	door  *Door
	heard []chat.Message
	sent  int64
}

func (e *echo) handle(_ context.Context, m chat.Message) error {
	e.heard = append(e.heard, m)
	return nil
}

func (e *echo) drain(ctx context.Context) error {
	for ; e.sent < int64(len(e.heard)); e.sent++ {
		text := e.heard[e.sent].Text
		if e.heard[e.sent].Tap != nil {
			text = "tapped"
		}
		p := parcel(e.sent+1, chat.P("you said ", chat.Bold(text)))
		p.Post.Buttons = []chat.Button{{Label: "Again", Say: "again"}}
		if _, err := e.door.Send(ctx, p); err != nil {
			return err
		}
	}
	return nil
}

func parcel(row int64, blocks ...chat.Block) chat.Parcel {
	return chat.Parcel{Row: row, Room: Room(), Post: chat.Post{Blocks: blocks, Loudness: chat.Answer}}
}

func TestPipe(t *testing.T) {
	var out screen
	e := &echo{}
	e.door = New(Config{
		In: strings.NewReader("3 bags\n\n  [again] \r\n[nothing]\nlast \xff"), Out: &out, Drain: e.drain,
		Person: chat.Person{ID: "me", Name: "Ana"}, Greeting: chat.Post{Blocks: []chat.Block{chat.P("hello")}},
	})
	if err := e.door.Run(t.Context(), e.handle); err != nil {
		t.Fatal(err)
	}
	want := "you said 3 bags\n[Again]\nyou said tapped\n[Again]\nyou said [nothing]\n[Again]\nyou said last \uFFFD\n[Again]\n"
	if diff := cmp.Diff(want, out.String()); diff != "" {
		t.Errorf("printed (-want +got):\n%s", diff)
	}
	m := e.heard[1]
	if diff := cmp.Diff(&chat.Tap{Row: 1}, m.Tap); diff != "" || m.Text != "" {
		t.Errorf("the tap was %v %q", m.Tap, m.Text)
	}
	if want := (chat.Person{Door: chat.Console, ID: "me", Name: "Ana"}); m.From != want || m.Room != Room() {
		t.Errorf("from %v in %v", m.From, m.Room)
	}
	if m.Audience != chat.Private || m.Address != chat.Addressed || m.At.IsZero() || m.At.Location() != time.UTC {
		t.Errorf("message %+v", m)
	}
}

func TestEventsAreUnique(t *testing.T) {
	seen := map[string]bool{}
	for range 3 {
		d := New(Config{Out: io.Discard})
		for range 3 {
			seen[d.message("x").Event] = true
		}
	}
	if len(seen) != 9 {
		t.Errorf("%d different events of 9", len(seen))
	}
}

func TestPipeFailures(t *testing.T) {
	broken := errors.New("broken")
	drain := func(context.Context) error { return broken }
	take := func(context.Context, chat.Message) error { return nil }
	for name, c := range map[string]Config{
		"a failing read":                {In: iotest.ErrReader(broken)},
		"a failing drain":               {In: strings.NewReader("a\n"), Drain: drain},
		"a drain that fails at the end": {In: strings.NewReader(""), Drain: drain},
	} {
		c.Out = io.Discard
		if err := New(c).Run(t.Context(), take); !errors.Is(err, broken) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestLinesAreOfferedAgain(t *testing.T) {
	for tries, want := range map[int]error{3: nil, 4: io.ErrNoProgress} {
		synctest.Test(t, func(t *testing.T) {
			var events []string
			err := New(Config{In: strings.NewReader("a\n"), Out: io.Discard}).Run(t.Context(), func(_ context.Context, m chat.Message) error {
				events = append(events, m.Event)
				if len(events) <= tries {
					return io.ErrNoProgress
				}
				return nil
			})
			if !errors.Is(err, want) || len(slices.Compact(events)) != 1 {
				t.Errorf("after %d failures: %v, events %v", tries, err, events)
			}
		})
	}
}

// A line that can't be written is given up after some tries: the person is told,
// and the next line is handled.
func TestLostLine(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var out screen
		var heard []string
		lost := chat.Post{Blocks: []chat.Block{chat.P("not written")}}
		err := New(Config{In: strings.NewReader("a\nb\n"), Out: &out, Lost: lost}).Run(t.Context(), func(_ context.Context, m chat.Message) error {
			heard = append(heard, m.Text)
			if m.Text == "a" {
				return io.ErrNoProgress
			}
			return nil
		})
		if got := strings.Join(heard, " "); err != nil || out.String() != "not written\n" || got != "a a a a b" {
			t.Errorf("%v; heard %s; printed %q", err, got, out.String())
		}
	})
}

// A line is never too long to go on.
func TestLongLine(t *testing.T) {
	var out screen
	e := &echo{}
	e.door = New(Config{In: strings.NewReader(strings.Repeat("x", 3<<20) + "\nnext\n"), Out: &out, Drain: e.drain})
	if err := e.door.Run(t.Context(), e.handle); err != nil || len(e.heard) != 2 {
		t.Fatalf("%v; %d messages, want 2", err, len(e.heard))
	}
	if n := len(e.heard[0].Text); n != 5000 || e.heard[1].Text != "next" {
		t.Errorf("heard %d characters and then %q", n, e.heard[1].Text)
	}
}

type brokenWriter struct{ err error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.err }

// When nothing can be printed the talk ends, though the outbox would wait and the
// input goes on or is silent.
func TestBrokenOutput(t *testing.T) {
	broken := errors.New("no space left")
	e := &echo{}
	e.door = New(Config{In: strings.NewReader("a\nb\n"), Out: brokenWriter{broken}, Drain: func(ctx context.Context) error {
		_ = e.drain(ctx) // an outbox keeps the error
		return nil
	}})
	if err := e.door.Run(t.Context(), e.handle); !errors.Is(err, broken) || len(e.heard) != 1 {
		t.Errorf("in a pipe: %v after %d messages", err, len(e.heard))
	}
	synctest.Test(t, func(t *testing.T) {
		in, keys := io.Pipe()
		defer keys.Close()
		d := New(Config{In: in, Out: brokenWriter{broken}})
		ended := make(chan error, 1)
		go func() { ended <- d.Run(t.Context(), e.handle) }()
		synctest.Wait()
		if _, err := d.Send(t.Context(), parcel(1, chat.P("hold over"))); !errors.Is(err, broken) {
			t.Errorf("Send: %v", err)
		}
		if err := <-ended; !errors.Is(err, broken) {
			t.Errorf("while it waits for a line: %v", err)
		}
	})
}

func TestRunEndsWithItsContext(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		in, keys := io.Pipe()
		ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
		defer cancel()
		failing := func(context.Context, chat.Message) error { return io.ErrNoProgress }
		if err := New(Config{In: in, Out: io.Discard}).Run(ctx, failing); err != nil {
			t.Errorf("while it waits for a line: %v", err)
		}
		ctx, cancel = context.WithTimeout(t.Context(), time.Second/2)
		defer cancel()
		if err := New(Config{In: strings.NewReader("a\n"), Out: io.Discard}).Run(ctx, failing); err != nil {
			t.Errorf("while it waits to try again: %v", err)
		}
		_ = keys.Close()
	})
}

func TestSend(t *testing.T) {
	var out screen
	d := New(Config{Out: &out, Width: 20, Downloads: filepath.Join(t.TempDir(), "files")})
	for _, to := range []chat.Room{{Door: chat.Console, ID: "x"}, {Door: chat.Matrix, ID: Room().ID}} {
		if _, err := d.Send(t.Context(), chat.Parcel{Room: to}); !errors.As(err, new(chat.Refused)) {
			t.Errorf("Send to %v: %v", to, err)
		}
	}
	first := parcel(1, chat.P("hold over, turn the heat off"))
	first.Post.Loudness = chat.Guard
	first.Post.Buttons = []chat.Button{{Label: "Heat is off"}}
	r, err := d.Send(t.Context(), first)
	if err != nil {
		t.Fatal(err)
	}
	second := parcel(2, chat.P("off"))
	second.Replaces = r.Post
	if again, err := d.Send(t.Context(), second); err != nil || again != r {
		t.Errorf("an edit: %v, %v; want the post %v", again, err, r)
	}
	if _, ok := d.button("Heat is off"); ok {
		t.Error("the button is still there after the edit")
	}
	clock := d.posts[0].at.In(time.UTC).Format("15:04")
	want := "(" + clock + ")\nhold over, turn the\nheat off\n[Heat is off]\n(edits " + clock + ")\noff\n"
	if diff := cmp.Diff(want, out.String()); diff != "" {
		t.Errorf("printed (-want +got):\n%s", diff)
	}
}

func TestFilesAreSavedAndNeverOverwritten(t *testing.T) {
	var out screen
	folder := filepath.Join(t.TempDir(), "files")
	d := New(Config{Out: &out, Downloads: folder})
	for row, data := range []string{"a", "b", "a"} {
		p := parcel(int64(row))
		p.Post.Files = []chat.File{{Name: "../log.csv", Data: []byte(data)}}
		if _, err := d.Send(t.Context(), p); err != nil {
			t.Fatal(err)
		}
	}
	for name, want := range map[string]string{".._log.csv": "a", ".._log-2.csv": "b"} {
		path := filepath.Join(folder, name)
		if got, err := os.ReadFile(path); err != nil || string(got) != want {
			t.Errorf("%s holds %q, %v; want %q", name, got, err, want)
		}
		if !strings.Contains(out.String(), path+"\n") {
			t.Errorf("%s is not in %q", path, out.String())
		}
	}
	if found, err := os.ReadDir(folder); err != nil || len(found) != 2 {
		t.Errorf("%d files, %v; want 2", len(found), err)
	}
	if fileName("..") != "file" || fileName("a/\x00b") != "a__b" || fileName(strings.Repeat("x", 300)+".pdf") != strings.Repeat("x", 46)+".pdf" {
		t.Errorf("names %q %q", fileName(".."), fileName("a/\x00b"))
	}
}

func TestOldPostsAreForgotten(t *testing.T) {
	d := New(Config{Out: io.Discard})
	for row := range int64(remembered + 1) {
		p := parcel(row)
		p.Post.Buttons = []chat.Button{{Label: strconv.FormatInt(row, 10)}}
		if _, err := d.Send(t.Context(), p); err != nil {
			t.Fatal(err)
		}
	}
	if _, ok := d.button("0"); ok {
		t.Error("the oldest post is still remembered")
	}
	if got, ok := d.button("1"); !ok || got.Row != 1 {
		t.Errorf("button 1: %v, %v", got, ok)
	}
	p := parcel(remembered + 1)
	p.Post.Buttons = []chat.Button{{Label: "0"}, {Label: "9"}}
	if _, err := d.Send(t.Context(), p); err != nil {
		t.Fatal(err)
	}
	if got, _ := d.button("9"); got != (chat.Tap{Row: remembered + 1, Button: 1}) {
		t.Errorf("button 9: %v, want that of the newest post", got)
	}
}
