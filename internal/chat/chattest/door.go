// Package chattest holds every door to what the rest of the house relies on: posts
// come in order, an edit stands where the first post stood, a tap comes back as the
// row and the place of its button, a reply as the post it answers.
package chattest

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/chat"
)

// Seat is an open door and the person in front of it. What they do is done through
// the platform's own means, a fake one where it is far away.
type Seat struct {
	Door chat.Door
	// Room is where the person talks with the bot.
	Room chat.Room
	// From is the person, as the door names them.
	From chat.Person
	// Say types a message.
	Say func(text string)
	// Tap taps the newest button of that label.
	Tap func(label string)
	// Reply types a message in reply to the newest post; nil if the platform knows
	// no replies.
	Reply func(text string)
	// Photo sends a photo with a text; nil if the platform knows no photos.
	Photo func(text string)
	// Shown is all that the person has been shown, the first at the beginning. An
	// edit may show below or in place.
	Shown func() string
}

// Open opens a door whose messages go to a handler, and closes it when the test
// ends.
type Open func(testing.TB, chat.Handler) Seat

// Door runs the suite.
func Door(t *testing.T, open Open) {
	t.Helper()
	for name, test := range map[string]func(*guest){
		"posts come in order":        (*guest).order,
		"an edit stands in place":    (*guest).edit,
		"an edit of what is gone":    (*guest).editLost,
		"files":                      (*guest).files,
		"what is said":               (*guest).said,
		"taps":                       (*guest).taps,
		"replies":                    (*guest).replies,
		"photos":                     (*guest).photos,
		"a room that is not there":   (*guest).elsewhere,
		"a post that is in no book":  (*guest).unwritten,
		"text that looks like marks": (*guest).hostile,
	} {
		t.Run(name, func(t *testing.T) {
			g := &guest{t: t, heard: make(chan chat.Message, 100)}
			g.Seat = open(t, func(_ context.Context, m chat.Message) error {
				g.heard <- m
				return nil
			})
			test(g)
		})
	}
}

// guest sits in a seat.
type guest struct {
	Seat
	t     *testing.T
	heard chan chat.Message
	row   int64
}

// send sends a new row and gives its receipt.
func (g *guest) send(p chat.Parcel, text string) chat.Receipt {
	g.t.Helper()
	g.row++
	p.Row, p.Room = g.row, g.Room
	p.Post.Blocks = append(p.Post.Blocks, chat.Para{chat.Text(text)})
	if p.Post.Loudness == 0 {
		p.Post.Loudness = chat.Answer
	}
	r, err := g.Door.Send(g.t.Context(), p)
	if err != nil || r.Post == "" {
		g.t.Fatalf("Send %q: receipt %+v, %v", text, r, err)
	}
	return r
}

// hears is the next message that the handler got.
func (g *guest) hears() chat.Message {
	g.t.Helper()
	select {
	case m := <-g.heard:
		return m
	case <-time.After(10 * time.Second):
		g.t.Fatal("nothing came in")
		return chat.Message{}
	}
}

// shows checks that texts have been shown, one behind the other.
func (g *guest) shows(texts ...string) {
	g.t.Helper()
	rest := g.Shown()
	for _, text := range texts {
		_, behind, found := strings.Cut(rest, text)
		if !found {
			g.t.Fatalf("shown was\n%s\nwant %q in this order", g.Shown(), texts)
		}
		rest = behind
	}
}

func (g *guest) order() {
	if g.Room.Door != g.Door.Name() || g.From.Door != g.Door.Name() {
		g.t.Errorf("the door is %s, its room and person are of %s and %s", g.Door.Name(), g.Room.Door, g.From.Door)
	}
	seen := map[string]bool{}
	for _, l := range []chat.Loudness{chat.Answer, chat.Guard, chat.Due, chat.Note, chat.Digest} {
		r := g.send(chat.Parcel{Post: chat.Post{Loudness: l}}, "post of "+l.String())
		if seen[r.Post] {
			g.t.Errorf("two posts are %q", r.Post)
		}
		seen[r.Post] = true
	}
	g.shows("post of answer", "post of guard", "post of due", "post of note", "post of digest")
}

func (g *guest) edit() {
	first := g.send(chat.Parcel{Post: chat.Post{Buttons: []chat.Button{{Label: "Old", Say: "old"}, {Label: "Both", Say: "both"}}}}, "heating")
	g.send(chat.Parcel{}, "in between")
	for _, text := range []string{"venting", "holding"} {
		p := chat.Parcel{Replaces: first.Post, Post: chat.Post{Buttons: []chat.Button{{Label: "Both", Say: "both"}}}}
		if again := g.send(p, text); again != first {
			g.t.Errorf("edited, the post is %q, want %q as before", again.Post, first.Post)
		}
	}
	g.shows("holding")
	g.Tap("Both")
	if got := g.hears().Tap; got == nil || *got != (chat.Tap{Row: g.row, Button: 0}) {
		g.t.Errorf("the button of the newest edit gives %+v, want row %d", got, g.row)
	}
}

// A platform may have lost a post, or the person deleted it. The door says so for
// good or sends a new one; it never waits.
func (g *guest) editLost() {
	p := chat.Parcel{Row: 7, Room: g.Room, Replaces: "post-404", Post: chat.Post{Blocks: []chat.Block{chat.P("late")}, Loudness: chat.Answer}}
	if r, err := g.Door.Send(g.t.Context(), p); err != nil && !errors.As(err, new(chat.Refused)) || err == nil && r.Post == "" {
		g.t.Errorf("receipt %+v, %v; want a new post or a refusal", r, err)
	}
}

func (g *guest) files() {
	g.send(chat.Parcel{Post: chat.Post{Files: []chat.File{
		{Name: "labels.pdf", Type: "application/pdf", Data: []byte("%PDF")},
		{Name: "rates.png", Type: "image/png", Data: []byte("\x89PNG")},
	}}}, "here they are")
	g.shows("labels.pdf")
	g.shows("rates.png")
	g.shows("here they are")
}

func (g *guest) said() {
	seen := map[string]bool{}
	for _, text := range []string{"3 bags 5lb agar", "lol ]?", "ünïcode 🍄", "why"} {
		g.Say(text)
		m := g.hears()
		if m.Text != text || m.Tap != nil || m.Room != g.Room || m.From.Door != g.From.Door || m.From.ID != g.From.ID {
			g.t.Errorf("said %q: %+v", text, m)
		}
		if m.Audience == 0 || m.Address == 0 || m.At.IsZero() || m.At.Location() != time.UTC || m.Arrived.Location() != time.UTC || m.Arrived.Before(m.At) {
			g.t.Errorf("said %q: audience, address and times are %d, %d, %v, %v", text, m.Audience, m.Address, m.At, m.Arrived)
		}
		if m.Event == "" || seen[m.Event] {
			g.t.Errorf("said %q: event %q is empty or was there", text, m.Event)
		}
		seen[m.Event] = true
	}
}

func (g *guest) taps() {
	g.send(chat.Parcel{Post: chat.Post{Buttons: []chat.Button{{Label: "Cook it", Say: "cook it"}, {Label: "Why", Say: "why"}}}}, "plan")
	g.send(chat.Parcel{}, "no buttons")
	for label, want := range map[string]chat.Tap{"Cook it": {Row: 1, Button: 0}, "Why": {Row: 1, Button: 1}} {
		g.Tap(label)
		m := g.hears()
		if diff := cmp.Diff(&want, m.Tap); diff != "" || m.Text != "" || m.Address != chat.Addressed || m.Room != g.Room {
			g.t.Errorf("tapped %q: %+v, -want +got\n%s", label, m, diff)
		}
	}
}

func (g *guest) replies() {
	g.send(chat.Parcel{}, "run 11")
	r := g.send(chat.Parcel{}, "run 12")
	if g.Reply != nil {
		g.Reply("46C")
		if m := g.hears(); m.ReplyTo != r.Post || m.Text != "46C" || m.Address != chat.Addressed {
			g.t.Errorf("a reply to %q: %+v", r.Post, m)
		}
	}
	g.Say("46C")
	m := g.hears()
	if m.ReplyTo != "" {
		g.t.Errorf("what is no reply answers %q", m.ReplyTo)
	}
	// The other way round: the door may show what a post answers, and must take it.
	g.send(chat.Parcel{ReplyTo: m.Event}, "noted")
	g.shows("noted")
}

// A photo comes with its bytes, for they go into the book with what was said.
func (g *guest) photos() {
	if g.Photo != nil {
		g.Photo("12.3 green")
		m := g.hears()
		if m.Text != "12.3 green" || len(m.Photos) != 1 {
			g.t.Fatalf("a photo came as %+v", m)
		}
		p := m.Photos[0]
		if _, known := p.Ending(); !known || len(p.Data) == 0 || int64(len(p.Data)) != p.Size || p.TooLarge() {
			g.t.Errorf("a photo %q of type %q: %d bytes of %d", p.Name, p.Type, len(p.Data), p.Size)
		}
	}
	g.Say("12.3 green")
	if m := g.hears(); len(m.Photos) != 0 {
		g.t.Errorf("what was only said came with %d photos", len(m.Photos))
	}
}

func (g *guest) elsewhere() {
	for _, room := range []chat.Room{{Door: "none", ID: g.Room.ID}, {Door: g.Door.Name(), ID: "nowhere"}} {
		p := chat.Parcel{Row: 1, Room: room, Post: chat.Post{Blocks: []chat.Block{chat.P("secret")}, Loudness: chat.Answer}}
		if _, err := g.Door.Send(g.t.Context(), p); !errors.As(err, new(chat.Refused)) {
			g.t.Errorf("Send to %+v: %v, want a refusal", room, err)
		}
	}
	if strings.Contains(g.Shown(), "secret") {
		g.t.Errorf("it was shown here: %q", g.Shown())
	}
}

func (g *guest) unwritten() {
	for _, text := range []string{"no book", "still none"} {
		p := chat.Parcel{Room: g.Room, Post: chat.Post{Blocks: []chat.Block{chat.P(text)}, Loudness: chat.Answer}}
		if _, err := g.Door.Send(g.t.Context(), p); err != nil {
			g.t.Errorf("Send: %v", err)
		}
	}
	g.shows("no book", "still none")
}

func (g *guest) hostile() {
	for _, text := range []string{"*a* _b_ <b>&amp;", "[x](y) `c` ~~d~~", "@room #12"} {
		g.send(chat.Parcel{}, text)
		g.shows(text)
	}
	g.send(chat.Parcel{}, "a\x1b[2Jb\x00c\u202ed")
	if shown := g.Shown(); strings.ContainsAny(shown, "\x00\u202e") || strings.Contains(shown, "\x1b[2J") {
		g.t.Errorf("control characters are shown: %q", shown)
	}
}
