// Package rehearsetest runs conversations that are kept as files: what is
// said and what the bot posts, side by side.
//
// A file is a txtar archive. The comment on top says in one line what a reader
// learns. Then follow
//
//	-- start --   first if at all: flags, --start 2026-03-02T09:00 --tz UTC
//	-- say --     lines of a script as package rehearse describes
//	-- posts --   exactly what was printed for them; say and posts alternate
//	-- log --     at the end if at all: the entries there are then
//	-- due --     the same for the pings that still wait
//
// All say parts joined are a script of their own.
package rehearsetest

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"ryebell/internal/chat/rehearse"
)

// Mode says what to do with a file that differs from what happened.
type Mode uint8

// Check fails the test, Update rewrites everything in the file but the
// comment and the start and say parts.
const (
	Check Mode = iota + 1
	Update
)

// World is a bot to talk with. Log and Due print the entries and the waiting
// pings for the parts of those names, and are needed only by files with such a
// part.
type World struct {
	rehearse.World
	Log func(context.Context) (string, error)
	Due func(context.Context) (string, error)
}

// Talk plays the conversation in a file against a new world, whose posts go
// out through the door.
func Talk(t testing.TB, file string, mode Mode, newWorld func(testing.TB, *rehearse.Door) World) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	want := txtar.Parse(data)
	got, err := play(t, want, newWorld)
	if err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	compare(t, file, mode, want, got)
}

// compare holds a conversation against its file, or writes the file.
func compare(t testing.TB, file string, mode Mode, want, got *txtar.Archive) {
	t.Helper()
	switch mode {
	case Check:
		diff := cmp.Diff(lines(want), lines(got))
		if diff != "" {
			t.Errorf("%s (-want +got):\n%s", file, diff)
		}
	case Update:
		if err := os.WriteFile(file, txtar.Format(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func lines(a *txtar.Archive) []string {
	return strings.Split(string(txtar.Format(a)), "\n")
}

// conversation is a file being played.
type conversation struct {
	door  *rehearse.Door
	world World
	out   bytes.Buffer
	got   []txtar.File
}

// play returns the archive as it should have been.
func play(t testing.TB, a *txtar.Archive, newWorld func(testing.TB, *rehearse.Door) World) (*txtar.Archive, error) {
	if err := check(a.Files); err != nil {
		return nil, err
	}
	var c conversation
	files := a.Files
	var flags []string
	if files[0].Name == "start" {
		flags = strings.Fields(string(files[0].Data))
		c.got, files = files[:1:1], files[1:]
	}
	options, err := rehearse.Started(flags)
	if err != nil {
		return nil, err
	}
	options.Out = &c.out
	c.door = rehearse.NewDoor(options)
	c.world = newWorld(t, c.door)
	for _, f := range files {
		if err := c.part(t.Context(), f); err != nil {
			return nil, fmt.Errorf("part %d, %s: %w", len(c.got)+1, f.Name, err)
		}
	}
	return &txtar.Archive{Comment: a.Comment, Files: c.got}, nil
}

// check holds the parts to their order. A say part without its posts is
// allowed, since that is how a new file is written; posts are made for it.
func check(files []txtar.File) error {
	follows := map[string]string{
		"":      "start say",
		"start": "say",
		"say":   "posts say log due",
		"posts": "say log due",
		"log":   "due",
		"due":   "log",
	}
	seen, last := map[string]int{}, ""
	for _, f := range files {
		seen[f.Name]++
		if !strings.Contains(" "+follows[last]+" ", " "+f.Name+" ") || seen["log"] > 1 || seen["due"] > 1 {
			return fmt.Errorf("a part %q behind %q", f.Name, last)
		}
		last = f.Name
	}
	if seen["say"] == 0 {
		return fmt.Errorf("no part in which anything is said")
	}
	return nil
}

func (c *conversation) part(ctx context.Context, f txtar.File) error {
	switch f.Name {
	case "say":
		if err := rehearse.Play(ctx, bytes.NewReader(f.Data), c.door, c.world.World); err != nil {
			return err
		}
		posts := bytes.Clone(c.out.Bytes())
		c.out.Reset()
		c.got = append(c.got, f, txtar.File{Name: "posts", Data: posts})
		return nil
	case "posts":
		return nil
	case "log":
		return c.ask(ctx, f.Name, c.world.Log)
	case "due":
		return c.ask(ctx, f.Name, c.world.Due)
	}
	panic(fmt.Sprintf("rehearsetest: part %q", f.Name))
}

func (c *conversation) ask(ctx context.Context, name string, tell func(context.Context) (string, error)) error {
	if tell == nil {
		return fmt.Errorf("this world cannot tell its %s", name)
	}
	text, err := tell(ctx)
	if err != nil {
		return err
	}
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += "\n"
	}
	c.got = append(c.got, txtar.File{Name: name, Data: []byte(text)})
	return nil
}
