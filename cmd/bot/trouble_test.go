package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ryebell/internal/store"
)

// pageSize is that of the pages of a book.
const pageSize = 4096

// Whichever page of the book is overwritten: check says so, and serving never ends
// but well or with the words for it.
func TestOverwrittenPages(t *testing.T) {
	folder := t.TempDir()
	if got := startIn(t, t.Context(), folder, "", strings.NewReader("we're at 1600 m\n3 bags 5lb agar\ncook it\n")); got.code != exitDone {
		t.Fatalf("the sound book: %+v", got)
	}
	sound, err := os.ReadFile(filepath.Join(folder, store.FileName))
	if err != nil {
		t.Fatal(err)
	}
	ended := 0
	for at := pageSize; at < len(sound); at += pageSize {
		spoilt := bytes.Clone(sound)
		copy(spoilt[at:], bytes.Repeat([]byte{0xa5}, pageSize))
		folder := t.TempDir()
		if err := os.WriteFile(filepath.Join(folder, store.FileName), spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		got := startIn(t, t.Context(), folder, "check", nil)
		if got.code != exitFailed || !strings.Contains(got.stdout, "is damaged. Copy the folder away") || !strings.Contains(got.stdout, "\nfound: ") {
			t.Errorf("page %d: check: %+v", at/pageSize+1, got)
		}
		got = startIn(t, t.Context(), folder, "", strings.NewReader("3 bags 5lb agar\nwhy\nundo\n"))
		if failed := got.code == exitFailed && strings.Contains(got.stderr, "bot: the book in "+folder+" is damaged"); failed {
			ended++
		} else if got.code != exitDone || got.stderr != "" {
			t.Errorf("page %d: serving: %+v", at/pageSize+1, got)
		}
	}
	if ended < 5 {
		t.Errorf("serving ended on %d of %d pages", ended, len(sound)/pageSize)
	}
}

// A line that nobody could read is answered, and so is the one after it.
func TestLongLine(t *testing.T) {
	got := start(t, "", strings.Repeat("agar ", 3<<20/5)+"\n3 bags 5lb agar\n")
	if got.code != exitDone || got.stderr != "" || !strings.Contains(got.stdout, "more than I") || !strings.Contains(got.stdout, "1,555 g rye") {
		t.Errorf("code %d, stderr %q, stdout:\n%s", got.code, got.stderr, got.stdout)
	}
}

type fullDevice struct{}

func (fullDevice) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// What could not be printed is no success.
func TestFullOutput(t *testing.T) {
	for _, args := range []string{"", "--rehearse", "check", "version", "help"} {
		var errs strings.Builder
		env := environ{"RYEBELL_DATA=" + t.TempDir()}
		code := run(t.Context(), strings.Fields(args), env, strings.NewReader("3 bags 5lb agar\nwhy\n"), fullDevice{}, &errs)
		if code != exitFailed || !strings.HasSuffix(errs.String(), "bot: the output can't be written: no space left on device\n") {
			t.Errorf("%q: code %d, %q", args, code, errs.String())
		}
	}
}

func TestDataFolderIsAFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{file, filepath.Join(file, "below")} {
		for _, args := range []string{"serve", "check"} {
			got := startIn(t, t.Context(), folder, args, strings.NewReader(""))
			if got.code != exitConfig || !strings.Contains(got.stderr, "RYEBELL_DATA: "+folder+" is a file, or lies below one: set it to a folder") {
				t.Errorf("%s in %s: %+v", args, folder, got)
			}
		}
	}
}

// The program plays conversations with their own posts for an answer, also those
// that begin elsewhere and those that come through a pipe.
func TestRehearseConversations(t *testing.T) {
	for _, name := range []string{"plan-agar", "plan-deadline", "rooms"} {
		data, err := os.ReadFile(filepath.Join("testdata", "talk", name+".txtar"))
		if err != nil {
			t.Fatal(err)
		}
		_, posted := parts(string(data))
		in, out := io.Pipe()
		go func() {
			_, _ = out.Write(data)
			_ = out.Close()
		}()
		for how, from := range map[string]io.Reader{"from a file": bytes.NewReader(data), "through a pipe": in} {
			got := startIn(t, t.Context(), t.TempDir(), "--rehearse", from)
			if got.code != exitDone || got.stdout != posted || got.stderr != "" {
				t.Errorf("%s %s: code %d, %s\n%s\nwant\n%s", name, how, got.code, got.stderr, got.stdout, posted)
			}
		}
	}
	elsewhere := "About.\n-- start --\n--start 2026-07-01T18:30\n-- say --\n3 bags 5lb agar\n"
	for args, want := range map[string]string{"": "18:30 bot", " --start 2026-03-02T10:00": "10:00 bot"} {
		if got := start(t, "--rehearse"+args, elsewhere); !strings.HasPrefix(got.stdout, want) {
			t.Errorf("with %q: %+v; want it to begin with %s", args, got, want)
		}
	}
	if got := start(t, "--rehearse", "About.\n-- start --\n--tz Nowhere\n-- say --\nhelp\n"); got.code != exitFailed || !strings.Contains(got.stderr, "Nowhere") {
		t.Errorf("a zone that is none: %+v", got)
	}
}

func TestUserName(t *testing.T) {
	for _, c := range []struct {
		env         environ
		login, want string
	}{
		{environ{"USER=ana"}, "root", "Ana"},
		{environ{"LOGNAME=élodie"}, "", "Élodie"},
		{nil, "jo", "Jo"},
		{nil, `BARN\kit`, "Kit"},
		{environ{"USER=1000"}, "", "Cook"},
		{nil, "", "Cook"},
	} {
		if got := userName(c.env, c.login); got != c.want {
			t.Errorf("%v, %q: got %q, want %q", c.env, c.login, got, c.want)
		}
	}
}
