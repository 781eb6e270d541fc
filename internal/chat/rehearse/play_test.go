package rehearse

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
)

// rehearsed plays a script against the echo and returns what was printed.
func rehearsed(t *testing.T, script string) (string, *echo, error) {
	t.Helper()
	var out bytes.Buffer
	d := NewDoor(Options{Out: &out})
	e, w := newEcho(t, d)
	err := Play(t.Context(), strings.NewReader(script), d, w)
	return out.String(), e, err
}

func TestPlay(t *testing.T) {
	for _, c := range []struct{ name, script, want string }{
		{"silence to what is only overheard", "hello\n// echo\n\n", ""},
		{"a post with a button, and taps", "echo hi\n[Again]\n<jo> [Again]\n", `
09:00 bot → room
  echo hi
  [Again]
09:00 bot → room
  Robin tapped
09:00 bot → room
  Jo tapped
`},
		{"pings in order at their due time", "ping 90m\nping 30m\n+29m\n+2h\necho now\n", `
09:30 bot → room
  ping of 30m
10:30 bot → room
  ping of 90m
11:29 bot → room
  echo now
  [Again]
`},
		{"down until the end", "ping 10m\nping 20m\n+25m down\n", `
09:25 bot → room
  ping of 10m, 15m0s late
09:25 bot → room
  ping of 20m, 5m0s late
`},
		{"a ping due exactly at the end of a move", "ping 10m\n+10m\n", "\n09:10 bot → room\n  ping of 10m\n"},
		{"a ping that is due at once", "<ana 8:00> ping 10m\n", "\n09:00 bot → room\n  ping of 10m, 50m0s late\n"},
		{"the next such time of day, with the date", "ping 24h\n@09:00\n@18:30\necho\n", `
Tue 3 Mar 09:00 bot → room
  ping of 24h
Tue 3 Mar 18:30 bot → room
  echo
  [Again]
`},
		{"rooms and private talk", "<ana room2> echo a\n<ana other> echo b\n<josé> tell c\n<ana private> d\n", `
09:00 bot → room2
  echo a
  [Again]
09:00 bot → other
  echo b
  [Again]
09:00 bot → José
  c
09:00 bot → Ana
  d
  [Again]
`},
		{"an edited post names the time of the first", "echo a\n+5m\nedit b\n+24h\nedit c\n", `
09:00 bot → room
  echo a
  [Again]
09:05 bot → room (edits 09:00)
  changed to b
Tue 3 Mar 09:05 bot → room (edits Mon 2 Mar 09:00)
  changed to c
`},
		{"a tap finds the speaker's own talk", "<ana private> a\n<ana> [Again]\n", `
09:00 bot → Ana
  a
  [Again]
09:00 bot → Ana
  Ana tapped
`},
		{"a line break and no last one", `<ana private> a\nb`, "\n09:00 bot → Ana\n  a b\n  [Again]\n"},
	} {
		got, _, err := rehearsed(t, c.script)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(strings.TrimPrefix(c.want, "\n"), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestPlayMakesMessages(t *testing.T) {
	_, e, err := rehearsed(t, `echo hi
echo hi
+10m
<ana room reply 09:05> 46C
<ana edit> no, 47C
<ana edit photo> no, 48C
<ana 23:00> heat off
<jo> @bot: now
<jo> /help
<jo private photo>
<jo> @bothersome
[Again]
`)
	if err != nil {
		t.Fatal(err)
	}
	nine := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	ten := nine.Add(10 * time.Minute)
	inRoom := chat.Room{Door: chat.Console, ID: "room"}
	ana, jo := chat.Person{Door: chat.Console, ID: "ana", Name: "Ana"}, chat.Person{Door: chat.Console, ID: "jo", Name: "Jo"}
	robin := chat.Person{Door: chat.Console, ID: "robin", Name: "Robin"}
	group := func(event string, from chat.Person, to chat.Address) chat.Message {
		return chat.Message{Event: event, Room: inRoom, From: from, At: ten, Arrived: ten, Audience: chat.Group, Address: to}
	}
	want := []chat.Message{
		group("event-1", robin, chat.Overheard), group("event-2", robin, chat.Overheard), group("event-3", ana, chat.Addressed),
		group("event-4", ana, chat.Overheard), group("event-5", ana, chat.Overheard), group("event-6", ana, chat.Overheard),
		group("event-7", jo, chat.Addressed), group("event-8", jo, chat.Addressed), group("event-9", jo, chat.Addressed),
		group("event-10", jo, chat.Overheard), group("event-11", robin, chat.Addressed),
	}
	for i, text := range []string{"echo hi", "echo hi", "46C", "no, 47C", "no, 48C", "heat off", "now", "/help", "", "@bothersome", ""} {
		want[i].Text = text
	}
	want[0].At, want[0].Arrived, want[1].At, want[1].Arrived = nine, nine, nine, nine
	want[2].At, want[2].ReplyTo = nine.Add(5*time.Minute), "post-2"
	want[3].Edits, want[4].Edits = "event-3", "event-3"
	want[4].Photos = []chat.Photo{photo("photo-event-5")}
	want[5].At = time.Date(2026, 3, 1, 23, 0, 0, 0, time.UTC)
	want[8].Room.ID, want[8].Audience = "private:jo", chat.Private
	want[8].Photos = []chat.Photo{photo("photo-event-9")}
	want[10].Tap = &chat.Tap{Row: 5, Button: 0}
	if diff := cmp.Diff(want, e.heard); diff != "" {
		t.Errorf("messages (-want +got):\n%s", diff)
	}
}

func TestPlayReportsTheScript(t *testing.T) {
	for script, want := range map[string]string{
		"hi\n\n<ana who":                                 `line 3: "<ana who": no > behind the speaker`,
		"[Cook it]\n":                                    `line 1: "[Cook it]": no post there has this button`,
		"echo a\n<ana room2> [Again]\n":                  `line 2: "<ana room2> [Again]": no post there has this button`,
		"echo a\nedit b\n[Again]":                        `line 3: "[Again]": no post there has this button`,
		"<ana reply> a\n":                                `line 1: "<ana reply> a": no post there to reply to`,
		"<ana room2> a\n<jo room2> b\n  <ana edit> c \n": `line 3: "<ana edit> c": no message of theirs there to edit`,
	} {
		_, _, err := rehearsed(t, script)
		if _, ok := errors.AsType[*Error](err); !ok || err.Error() != want {
			t.Errorf("Play(%q): %v, want %s", script, err, want)
		}
	}
}

func TestPlayPassesOnFailures(t *testing.T) {
	for script, want := range map[string]string{
		"refuse": "line 1: turn: context deadline exceeded",
		"stuck":  "line 1: something stays due at 2026-03-02T09:00:00Z",
	} {
		_, _, err := rehearsed(t, script)
		if _, ok := errors.AsType[*Error](err); ok || err == nil || err.Error() != want {
			t.Errorf("Play(%.10q): %v, want %s", script, err, want)
		}
	}
	d := NewDoor(Options{Out: io.Discard})
	_, w := newEcho(t, d)
	if err := Play(t.Context(), iotest.ErrReader(io.ErrUnexpectedEOF), d, w); !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("a broken script: %v", err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := Play(ctx, strings.NewReader("hi\n"), d, w); !errors.Is(err, context.Canceled) {
		t.Errorf("after the end of ctx: %v", err)
	}
}

// A line that is too long is said as far as it is read, and the next is played.
func TestPlayALongLine(t *testing.T) {
	out, e, err := rehearsed(t, strings.Repeat("é", 3<<20)+"\necho now\n")
	if err != nil || len(e.heard) != 2 || utf8.RuneCountInString(e.heard[0].Text) != 5000 || !strings.Contains(out, "echo now") {
		t.Errorf("%d messages, %v; printed %q", len(e.heard), err, out)
	}
	_, _, err = rehearsed(t, "["+strings.Repeat("x", 1<<20))
	if err == nil || len(err.Error()) > 200 {
		t.Errorf("a long line at fault: %.300q", err.Error())
	}
}

// A rehearsal that nobody can see ends.
func TestPlayWithoutOutput(t *testing.T) {
	broken := errors.New("no space left")
	d := NewDoor(Options{Out: brokenWriter{broken}})
	e, w := newEcho(t, d)
	if err := Play(t.Context(), strings.NewReader("echo a\necho b\n"), d, w); !errors.Is(err, broken) || len(e.heard) != 1 {
		t.Errorf("after %d messages: %v, want the error of the output after the first", len(e.heard), err)
	}
}

type brokenWriter struct{ err error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.err }

func TestPlayTwiceIsOneRehearsal(t *testing.T) {
	var out bytes.Buffer
	d := NewDoor(Options{Out: &out})
	_, w := newEcho(t, d)
	for _, script := range []string{"echo a\n+5m\n", "[Again]\n"} {
		if err := Play(t.Context(), strings.NewReader(script), d, w); err != nil {
			t.Fatal(err)
		}
	}
	want := "09:00 bot → room\n  echo a\n  [Again]\n09:05 bot → room\n  Robin tapped\n"
	if diff := cmp.Diff(want, out.String()); diff != "" {
		t.Error(diff)
	}
}

func TestBegin(t *testing.T) {
	for _, c := range []struct{ start, tz, want string }{
		{"", "", "2026-03-02T09:00:00Z"},
		{"", "Europe/Berlin", "2026-03-02T09:00:00+01:00"},
		{"2026-07-01 22:30", "Europe/Berlin", "2026-07-01T22:30:00+02:00"},
		{"2026-07-01T22:30", "", "2026-07-01T22:30:00Z"},
		{"yesterday", "", ""},
		{"", "Nowhere/Land", ""},
	} {
		got, zone, err := Begin(c.start, c.tz)
		if c.want == "" {
			if err == nil {
				t.Errorf("Begin(%q, %q) = %v, want an error", c.start, c.tz, got)
			}
			continue
		}
		shown := NewDoor(Options{Start: got, Zone: zone, Out: io.Discard}).Now().Format(time.RFC3339)
		if err != nil || shown != c.want {
			t.Errorf("Begin(%q, %q) = %s, %v; want %s", c.start, c.tz, shown, err, c.want)
		}
	}
}

func TestSend(t *testing.T) {
	var out bytes.Buffer
	d := NewDoor(Options{Out: &out})
	send := func(p chat.Parcel) error { _, err := d.Send(t.Context(), p); return err }
	for _, p := range []chat.Parcel{
		{Room: chat.Room{Door: chat.Console, ID: "kitchen"}},
		{Room: chat.Room{Door: chat.Console, ID: "private:"}},
		{Room: chat.Room{Door: chat.Matrix, ID: "room"}},
		{Room: chat.Room{Door: chat.Console, ID: "room"}, Replaces: "post-9"},
	} {
		if _, ok := errors.AsType[chat.Refused](send(p)); !ok {
			t.Errorf("Send(%v) was not refused", p)
		}
	}
	p := chat.Parcel{Row: 1, Room: chat.Room{Door: chat.Console, ID: "room"}, Post: chat.Post{
		Blocks: []chat.Block{chat.P("two"), chat.Quote("a\nb")}, Files: []chat.File{{Name: "a.csv", Data: []byte("x")}},
	}}
	if err := send(p); err != nil {
		t.Fatal(err)
	}
	if want := "09:00 bot → room\n  two\n  > a\n  > b\n  <a.csv, 1>\n"; out.String() != want {
		t.Errorf("printed %q, want %q", out.String(), want)
	}
	failing := NewDoor(Options{Out: failingWriter{}})
	if _, err := failing.Send(t.Context(), p); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("Send to a closed pipe: %v", err)
	}
}

type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestRunEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := NewDoor(Options{Out: io.Discard}).Run(ctx, nil); err != nil {
		t.Error(err)
	}
}

// FuzzPlay holds that a script prints the same whenever it is played, and
// that the clock never runs backwards.
func FuzzPlay(f *testing.F) {
	f.Add("echo a\n[Again]\nping 10m\n+1h down\n<ana reply> 46C\n<ana edit> x\n@18:30\n<ana other> echo")
	f.Fuzz(func(t *testing.T, script string) {
		var outs [2]bytes.Buffer
		for i := range outs {
			d := NewDoor(Options{Out: &outs[i]})
			_, w := newEcho(t, d)
			_ = Play(t.Context(), strings.NewReader(script), d, w) // most scripts are faulty, which is as good a test
			if d.Now().Before(d.start) {
				t.Error("the clock ran backwards")
			}
		}
		if outs[0].String() != outs[1].String() {
			t.Errorf("%q and then %q", outs[0].String(), outs[1].String())
		}
	})
}
