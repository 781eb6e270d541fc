package ordeal

import (
	"bufio"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/faultfs"
	"ryebell/internal/store/storetest"
)

// obstacle is what keeps the book from being written for a while.
type obstacle struct {
	name string
	want error
	// begin sets it up, in the midst of the day, and end takes it away.
	begin func(t *testing.T, folder string, disk *faultfs.Disk) (end func())
}

func obstacles() []obstacle {
	pragma := func(on, off string) func(*testing.T, string, *faultfs.Disk) func() {
		return func(t *testing.T, _ string, disk *faultfs.Disk) func() {
			apply := func(p string) {
				if err := disk.SetNow(p); err != nil {
					t.Fatal(err)
				}
			}
			apply(on)
			return func() { apply(off) }
		}
	}
	return []obstacle{
		{"no space on the disk", store.ErrFull, func(_ *testing.T, _ string, disk *faultfs.Disk) func() {
			disk.Fail(1, faultfs.WriteError, faultfs.Lasting)
			return disk.Mend
		}},
		{"read-only", store.ErrReadOnly, pragma("query_only = 1", "query_only = 0")},
		{"held by another process", store.ErrLocked, func(t *testing.T, folder string, _ *faultfs.Disk) func() {
			return holdBook(t, folder)
		}},
	}
}

// While the book can't be written nothing is answered that doesn't count, reading
// goes on, and those who meant the bot are told, once an hour in each room. When it
// can be written again all goes on by itself, and nothing is lost.
func TestBookCannotBeWritten(t *testing.T) {
	for _, o := range obstacles() {
		t.Run(o.name, func(t *testing.T) {
			s, want := rehearsed(t, "quarter.txt")
			folder := inMemory(t)
			disk := faultfs.Watch(t, folder)
			b := started(t, folder, sink{}, s.Start)
			if err := b.db.Close(); err != nil {
				t.Fatal(err)
			}
			b, err := open(t.Context(), folder, sink{}, store.Config{Readers: 1, BusyTimeout: time.Millisecond})
			if err != nil {
				t.Fatal(err)
			}
			half := len(s.stages(nil)) / 2
			play(t, b, s.stages(nil)[:half])
			end := o.begin(t, folder, disk)
			b.obstructed(t, s, o.want)
			end()
			play(t, b, s.stages(nil)[half:])
			if err := b.db.Close(); err != nil {
				t.Fatal(err)
			}
			if err := errors.Join(same(contents(t, folder), want), sound(t.Context(), folder)); err != nil {
				t.Error(err)
			}
		})
	}
}

// A book that may not grow is written as long as there is room on its pages, and
// again by the same process once it may grow.
func TestNoSpaceInTheFile(t *testing.T) {
	s, _ := rehearsed(t, "quarter.txt")
	folder := inMemory(t)
	disk := faultfs.Watch(t, folder)
	b := started(t, folder, sink{}, s.Start)
	limit := func(pages string) {
		if err := disk.SetNow("max_page_count = " + pages); err != nil {
			t.Fatal(err)
		}
	}
	var told []string
	half := len(s.stages(nil)) / 2
	stages := s.stages(func(m chat.Message) {
		// What fills the book shifts the rows of posts: a tap is on another one.
		if m.Tap == nil {
			told = append(told, m.Event)
		}
	})
	play(t, b, stages[:half])
	limit("1") // SQLite takes the pages there are
	for _, text := range []string{"3 bags 5lb agar", "thanks"} {
		told = append(told, b.fill(t, text, s.Steps[half].At)...)
	}
	b.obstructed(t, s, store.ErrFull)
	limit("1000000")
	play(t, b, stages[half:])
	if err := b.db.Close(); err != nil {
		t.Fatal(err)
	}
	got := contents(t, folder)
	for _, event := range told {
		if !strings.Contains(got["inbox"], "|'"+event+"'|") {
			t.Errorf("%s %v", event, errLost)
		}
	}
	if err := sound(t.Context(), folder); err != nil {
		t.Error(err)
	}
}

// fill says something again and again until there is no room for the answer.
func (b *bot) fill(t *testing.T, text string, at time.Time) (told []string) {
	t.Helper()
	for n := range 100 {
		m := ask(fmt.Sprintf("%s %d", text, n), "room", text, at)
		m.Address = chat.Addressed
		err := b.answerer.Turn(t.Context(), m)
		if errors.Is(err, store.ErrFull) {
			return told
		}
		if err != nil {
			t.Fatal(err)
		}
		told = append(told, m.Event)
	}
	t.Fatal("the book is never full")
	return nil
}

func play(t *testing.T, b *bot, stages []stage) {
	t.Helper()
	for _, do := range stages {
		if err := do(t.Context(), b); err != nil {
			t.Fatal(err)
		}
	}
}

// ask is a message of Robin's in a room, said at an instant.
func ask(event, room, text string, at time.Time) chat.Message {
	return chat.Message{
		Event: event, Room: chat.Room{Door: chat.Console, ID: room}, Text: text,
		From: chat.Person{Door: chat.Console, ID: "robin", Name: "Robin"},
		At:   at, Arrived: at, Audience: chat.Group, Address: chat.Overheard,
	}
}

// obstructed talks with a bot that can't write.
func (b *bot) obstructed(t *testing.T, s script, want error) {
	t.Helper()
	if !b.reads(t) {
		t.Error("reading stopped")
	}
	for _, c := range []struct {
		event, room, text string
		minutes           int
		told              bool
	}{
		{"unmeant", "room", "nice evening, isn't it", 0, false},
		{"one", "room", "3 bags 5lb agar", 0, true},
		{"one", "room", "3 bags 5lb agar", 1, false}, // offered again
		{"two", "room", "4 quart jars rye lc", 59, false},
		{"three", "other", "3 bags 5lb agar", 59, true},
		{"four", "room", "room 19C", 60, true},
		{"unmeant", "nobody's", "3 bags 5lb agar", 60, false},
	} {
		m := ask(c.event, c.room, c.text, s.End.Add(time.Hour+time.Duration(c.minutes)*time.Minute))
		err := b.answerer.Turn(t.Context(), m)
		// What isn't meant for the bot needs no writing.
		if c.event != "unmeant" && err == nil || err != nil && !errors.Is(err, want) {
			t.Errorf("%q: got %v, want %v", c.text, err, want)
		}
		post, told := b.answerer.Excuse(t.Context(), m, err)
		if told != c.told {
			t.Errorf("%q in %s after %d min: told %t", c.text, c.room, c.minutes, told)
		}
		if told && !strings.Contains(chat.Plain(post, 40), "nothing counts yet") {
			t.Errorf("%q: told\n%s", c.text, chat.Plain(post, 40))
		}
	}
	if !b.reads(t) {
		t.Error("reading stopped")
	}
}

func (b *bot) reads(t *testing.T) bool {
	t.Helper()
	n := 0
	storetest.View(t, b.db, func(tx *store.Tx) error {
		all, err := tx.Collectives()
		n = len(all)
		return err
	})
	return n == 2
}

// childHolds names, for a child, the file of the book to hold.
const childHolds = "ORDEAL_HOLDS"

// hold takes the right to write to a book until stdin ends.
func hold(path string) {
	db, err := sql.Open("sqlite", "file:"+path)
	if err == nil {
		db.SetMaxOpenConns(1)
		_, err = db.ExecContext(context.Background(), `BEGIN IMMEDIATE`)
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("held")
	_, _ = io.Copy(io.Discard, os.Stdin)
	_ = db.Close() // the process ends
}

// holdBook has another process hold the book.
func holdBook(t *testing.T, folder string) (release func()) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), childHolds+"="+filepath.Join(folder, store.FileName))
	in, err1 := child.StdinPipe()
	out, err2 := child.StdoutPipe()
	if err := errors.Join(err1, err2, child.Start()); err != nil {
		t.Fatal(err)
	}
	said, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || said != "held\n" {
		t.Fatalf("the child says %q, %v", said, err)
	}
	return func() {
		if err := errors.Join(in.Close(), child.Wait()); err != nil {
			t.Fatal(err)
		}
	}
}
