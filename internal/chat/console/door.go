// Package console is the terminal as a chat platform: one person, one room,
// private. It is the door that is open when nothing is configured.
//
// At a terminal there is a prompt with line editing and a history, and what
// the bot posts meanwhile goes above the half-typed line. Everywhere else,
// in a pipe or on a dumb terminal, it reads plain lines, prints no prompt and
// waits for the answer to each line before it reads the next, so that the
// output of a script is always the same. A line "[Cook it]" taps that button
// of the newest post that has it.
//
// The package has no words of the trade: it knows messages and posts only.
package console

import (
	"cmp"
	"context"
	"crypto/rand"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"

	"ryebell/internal/chat"
)

// Config is what a door is made of. In, Out and Person must be given.
type Config struct {
	In  io.Reader
	Out io.Writer
	// Terminal is what [Attach] found; nil reads plain lines.
	Terminal *Terminal
	// Person sits at the keyboard; its Door is set by New.
	Person chat.Person
	// Zone is for the times beside posts; nil is UTC.
	Zone *time.Location
	// Width wraps the text; 0 is 40 columns, as on a phone. A narrower
	// terminal makes it less.
	Width int
	// History is the file that keeps what was typed at a terminal, for its
	// owner alone; empty keeps nothing beyond the session. Lines with the
	// words claim or join are never kept, since they hold a secret.
	History string
	// Downloads is the folder that files of posts are written to; empty
	// writes none, and only their names show.
	Downloads string
	// Getenv looks up TERM and NO_COLOR; nil finds neither.
	Getenv func(string) string
	// NoColor is the flag of that name: no bold text.
	NoColor bool
	// Greeting is printed before the first prompt of a terminal.
	Greeting chat.Post
	// Lost tells the person that what they said could not be written, though it was
	// tried several times. Without it Run ends then.
	Lost chat.Post
	// Drain returns once everything that waits for this door and can be sent
	// now has been handed to Send. It is called after each plain line and at
	// the end of input; nil if nothing has to be waited for.
	Drain func(context.Context) error
}

// Room is the only room there is.
func Room() chat.Room { return chat.Room{Door: chat.Console, ID: "terminal"} }

// Door is the terminal.
type Door struct {
	config Config
	style  chat.Style
	prefix string // makes events unique over restarts
	events int
	broken chan error // why nothing can be printed; holds one

	mu     sync.Mutex
	screen io.Writer // where posts go: Out, or the line editor while it runs
	posts  []post    // the one printed last at the end
}

type post struct {
	id      string
	row     int64
	at      time.Time
	buttons []chat.Button
}

// remembered is how many posts can still be tapped.
const remembered = 200

// New makes the door; nothing is read or printed before Run.
func New(c Config) *Door {
	c.Person.Door = chat.Console
	c.Zone = cmp.Or(c.Zone, time.UTC)
	c.Width = cmp.Or(c.Width, 40)
	if c.Getenv == nil {
		c.Getenv = func(string) string { return "" }
	}
	if c.Drain == nil {
		c.Drain = func(context.Context) error { return nil }
	}
	if c.Getenv("TERM") == "dumb" {
		c.Terminal = nil
	}
	d := &Door{config: c, prefix: rand.Text(), screen: c.Out, broken: make(chan error, 1)}
	if c.Terminal != nil && !c.NoColor && c.Getenv("NO_COLOR") == "" {
		d.style = chat.Style{Bold: "\x1b[1m", Unbold: "\x1b[22m"}
	}
	return d
}

// Name is that of the terminal.
func (d *Door) Name() chat.DoorName { return chat.Console }

// Send prints a parcel. A post that comes by itself has the time above it, one
// that replaces another the time of that; at a terminal guard and due posts
// ring. Parcels for other rooms are refused.
func (d *Door) Send(_ context.Context, p chat.Parcel) (chat.Receipt, error) {
	if p.Room != Room() {
		return chat.Receipt{}, chat.Refused{Reason: "no such room in the terminal"}
	}
	saved, err := d.save(p.Post.Files)
	if err != nil {
		return chat.Receipt{}, err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	now := post{id: fmt.Sprintf("post-%d", p.Row), row: p.Row, at: time.Now(), buttons: p.Post.Buttons}
	head := d.head(p.Post.Loudness, now.at)
	if i := slices.IndexFunc(d.posts, func(old post) bool { return old.id == p.Replaces }); i >= 0 {
		now.id, now.at = d.posts[i].id, d.posts[i].at
		head = "(edits " + now.at.In(d.config.Zone).Format("15:04") + ")\n"
		d.posts = slices.Delete(d.posts, i, i+1)
	}
	d.posts = append(d.posts, now)
	d.posts = d.posts[max(0, len(d.posts)-remembered):]
	text := d.ring(p.Post.Loudness) + head + saved + chat.Styled(p.Post, d.columns(), d.style)
	if err := d.print(strings.TrimRight(text, "\n") + "\n"); err != nil {
		return chat.Receipt{}, err
	}
	return chat.Receipt{Post: now.id}, nil
}

// print writes to the screen; d.mu is held. When that fails Run ends: a talk that
// nobody can see is none.
func (d *Door) print(text string) error {
	_, err := io.WriteString(d.screen, text)
	if err == nil {
		return nil
	}
	err = fmt.Errorf("the posts can't be printed: %w", err)
	select {
	case d.broken <- err:
	default: // it knows already
	}
	return err
}

// head is the line above a post that nobody asked for.
func (d *Door) head(l chat.Loudness, now time.Time) string {
	if l == chat.Answer || l == 0 {
		return ""
	}
	return "(" + now.In(d.config.Zone).Format("15:04") + ")\n"
}

func (d *Door) ring(l chat.Loudness) string {
	if d.config.Terminal != nil && (l == chat.Guard || l == chat.Due) {
		return "\a"
	}
	return ""
}

func (d *Door) columns() int {
	if d.config.Terminal == nil {
		return d.config.Width
	}
	if w, _, err := d.config.Terminal.size(); err == nil && w > 0 {
		return min(d.config.Width, w)
	}
	return d.config.Width
}

// message makes the event of a typed line.
func (d *Door) message(line string) chat.Message {
	d.events++
	now := time.Now().UTC()
	m := chat.Message{
		Event: fmt.Sprintf("%s-%d", d.prefix, d.events),
		Room:  Room(), From: d.config.Person,
		At: now, Arrived: now,
		Audience: chat.Private, Address: chat.Addressed,
		Text: line,
	}
	if label, ok := bracketed(line); ok {
		if t, ok := d.button(label); ok {
			m.Text, m.Tap = "", &t
		}
	}
	return m
}

func bracketed(line string) (string, bool) {
	inner, opens := strings.CutPrefix(line, "[")
	inner, closes := strings.CutSuffix(inner, "]")
	return strings.TrimSpace(inner), opens && closes
}

// button finds a label as typed, in any case, on the newest post with it.
func (d *Door) button(label string) (chat.Tap, bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, p := range slices.Backward(d.posts) {
		for i, b := range p.buttons {
			if strings.EqualFold(strings.TrimSpace(chat.Clean(b.Label)), label) {
				return chat.Tap{Row: p.row, Button: i}, true
			}
		}
	}
	return chat.Tap{}, false
}

// Above is a writer for lines of the log: while the line editor has the
// terminal they go above the half-typed line, and to w at any other time.
func (d *Door) Above(w io.Writer) io.Writer { return above{d, w} }

type above struct {
	door  *Door
	other io.Writer
}

func (a above) Write(p []byte) (int, error) {
	a.door.mu.Lock()
	defer a.door.mu.Unlock()
	if a.door.screen != a.door.config.Out {
		return a.door.screen.Write(p)
	}
	return a.other.Write(p)
}
