package console

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
)

// seat is somebody at a terminal, inside a synctest bubble.
type seat struct {
	t        *testing.T
	door     *Door
	keys     *io.PipeWriter
	out      *screen
	heard    chan string
	ended    chan error
	restored bool
}

func sit(t *testing.T, c Config) *seat {
	t.Helper()
	in, keys := io.Pipe()
	s := &seat{t: t, keys: keys, out: &screen{}, heard: make(chan string, 10), ended: make(chan error, 1)}
	c.In, c.Out = in, s.out
	c.Terminal = &Terminal{
		raw:  func() (func() error, error) { return func() error { s.restored = true; return nil }, nil },
		size: func() (int, int, error) { return 60, 20, nil },
	}
	s.door = New(c)
	go func() {
		s.ended <- s.door.Run(t.Context(), func(_ context.Context, m chat.Message) error {
			s.heard <- m.Text
			return nil
		})
	}()
	synctest.Wait()
	return s
}

func (s *seat) press(keys string) {
	s.t.Helper()
	if _, err := io.WriteString(s.keys, keys); err != nil {
		s.t.Fatal(err)
	}
	synctest.Wait()
}

func TestTerminal(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := sit(t, Config{Greeting: chat.Post{Blocks: []chat.Block{chat.P("Try ", chat.Bold("3 bags"))}}})
		if got, want := s.out.String(), "\x1b[?2004hTry \x1b[1m3 bags\x1b[22m\r\n> "; got != want {
			t.Errorf("at first %q, want %q", got, want)
		}
		s.press("4 ja")
		p := parcel(1, chat.P("heat off"))
		p.Post.Loudness = chat.Guard
		if _, err := s.door.Send(t.Context(), p); err != nil {
			t.Error(err)
		}
		_, after, _ := strings.Cut(s.out.String(), "heat off")
		if after != "\r\n> 4 ja" {
			t.Errorf("after the ping stands %q, want the half-typed line", after)
		}
		if !strings.Contains(s.out.String(), "\a(") {
			t.Errorf("the ping did not ring: %q", s.out.String())
		}
		if _, err := io.WriteString(s.door.Above(io.Discard), "level=WARN\n"); err != nil || !strings.HasSuffix(s.out.String(), "level=WARN\r\n> 4 ja") {
			t.Errorf("a line of the log: %v, %q", err, s.out.String())
		}
		s.press("rs\r")
		if got := <-s.heard; got != "4 jars" {
			t.Errorf("heard %q", got)
		}
		s.press("\x04")
		if err := <-s.ended; err != nil || !s.restored {
			t.Errorf("Ctrl-D: %v, terminal restored: %v", err, s.restored)
		}
		var log screen
		if _, err := io.WriteString(s.door.Above(&log), "x"); err != nil || log.String() != "x" {
			t.Errorf("after the end the log goes to %q, %v", log.String(), err)
		}
	})
}

func TestInterrupt(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := sit(t, Config{})
		s.press("half a line\x03")
		if err := <-s.ended; !errors.Is(err, ErrInterrupted) || !s.restored {
			t.Errorf("Ctrl-C: %v, terminal restored: %v", err, s.restored)
		}
	})
}

func TestNoColour(t *testing.T) {
	terminal := &Terminal{size: func() (int, int, error) { return 30, 10, nil }}
	for name, c := range map[string]struct {
		config Config
		want   bool
	}{
		"terminal":       {Config{Terminal: terminal}, true},
		"no terminal":    {Config{}, false},
		"flag":           {Config{Terminal: terminal, NoColor: true}, false},
		"NO_COLOR":       {Config{Terminal: terminal, Getenv: env("NO_COLOR=1")}, false},
		"empty NO_COLOR": {Config{Terminal: terminal, Getenv: env("NO_COLOR=")}, true},
		"dumb":           {Config{Terminal: terminal, Getenv: env("TERM=dumb")}, false},
	} {
		d := New(c.config)
		if got := d.style.Bold != ""; got != c.want {
			t.Errorf("%s: bold is %v, want %v", name, got, c.want)
		}
		if got, want := d.columns(), map[bool]int{true: 30, false: 40}[d.config.Terminal != nil]; got != want {
			t.Errorf("%s: %d columns, want %d", name, got, want)
		}
	}
}

func env(setting string) func(string) string {
	name, value, _ := strings.Cut(setting, "=")
	return func(asked string) string {
		if asked == name {
			return value
		}
		return ""
	}
}

func TestAttachWithoutATerminal(t *testing.T) {
	f, err := os.Create(filepath.Join(t.TempDir(), "out"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if Attach(f, f) != nil {
		t.Error("a file was taken for a terminal")
	}
}

func TestHistory(t *testing.T) {
	path := filepath.Join(t.TempDir(), "history")
	if err := os.WriteFile(path, []byte("old\nclaim OLD-CODE\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	synctest.Test(t, func(t *testing.T) {
		s := sit(t, Config{History: path})
		s.press("3 bags\r3 bags\r\r/claim ABC\rPlease JOIN 77\rclaims\r")
		s.press("\x1b[A\x1b[A\x1b[A\r\x04")
		if err := <-s.ended; err != nil {
			t.Error(err)
		}
		close(s.heard)
		var heard []string
		for h := range s.heard {
			heard = append(heard, h)
		}
		want := []string{"3 bags", "3 bags", "/claim ABC", "Please JOIN 77", "claims", "old"}
		if diff := cmp.Diff(want, heard); diff != "" {
			t.Errorf("heard (-want +got):\n%s", diff)
		}
	})
	data, err := os.ReadFile(path)
	if want := "old\n3 bags\nclaims\nold\n"; err != nil || string(data) != want {
		t.Errorf("the file holds %q, %v; want %q", data, err, want)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
}

func TestHistoryIsCutDown(t *testing.T) {
	path := filepath.Join(t.TempDir(), "history")
	if err := os.WriteFile(path, []byte(strings.Repeat("a\nb\n", kept)+"newest\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if h := loadHistory(path); h.Len() != kept || h.At(0) != "newest" || h.At(kept-1) != "b" {
			t.Errorf("%d lines, newest %q, oldest %q", h.Len(), h.At(0), h.At(h.Len()-1))
		}
	}
	for _, path := range []string{"", filepath.Join(path, "no", "folder")} {
		h := loadHistory(path)
		h.Add("x")
		if h.Len() != 1 {
			t.Errorf("without a file: %d lines", h.Len())
		}
	}
}
