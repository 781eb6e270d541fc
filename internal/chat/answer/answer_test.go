package answer

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// stage is a book with people talking in rooms; it delivers what is queued and
// hands it back as text.
type stage struct {
	t   testing.TB
	a   *Answerer
	db  *store.DB
	now time.Time
	n   int
}

func (s *stage) room(id string) chat.Room { return chat.Room{Door: chat.Console, ID: id} }

func (s *stage) person(name string) chat.Person {
	return chat.Person{Door: chat.Console, ID: strings.ToLower(name), Name: name}
}

// open gives a stage whose room "kitchen" belongs to a collective with Robin as
// its steward.
func open(t testing.TB) *stage {
	t.Helper()
	s := bare(t)
	f := Foundation{Room: s.room("kitchen"), Person: s.person("Robin"), At: s.now}
	if err := s.a.Found(t.Context(), f); err != nil {
		t.Fatal(err)
	}
	return s
}

// bare is a stage on which nobody has claimed anything.
func bare(t testing.TB) *stage {
	t.Helper()
	db := storetest.Open(t)
	return &stage{t: t, a: New(db, Config{}), db: db, now: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)}
}

// message is what somebody says in a room, not sent yet.
func (s *stage) message(room, who, text string) chat.Message {
	s.n++
	m := chat.Message{
		Event: fmt.Sprintf("event-%d", s.n), Room: s.room(room), From: s.person(who), At: s.now, Arrived: s.now,
		Audience: chat.Group, Address: chat.Overheard, Text: text,
	}
	if strings.HasPrefix(room, "private") {
		m.Audience, m.Address = chat.Private, chat.Addressed
	}
	return m
}

// say is what the bot posts, anywhere, when somebody says something.
func (s *stage) say(room, who, text string) string { return s.send(s.message(room, who, text)) }

func (s *stage) send(m chat.Message) string {
	s.t.Helper()
	if err := s.a.Turn(s.t.Context(), m); err != nil {
		s.t.Fatalf("%q: %v", m.Text, err)
	}
	var posts []string
	for _, d := range s.deliver() {
		posts = append(posts, chat.Plain(d.post, 40))
	}
	return strings.Join(posts, "\n")
}

// delivered is a post that was sent.
type delivered struct {
	row      store.RowID
	room     string
	replaces string
	post     chat.Post
}

// deliver sends all that waits; the post of row 7 stands as "post-7".
func (s *stage) deliver() []delivered {
	s.t.Helper()
	var out []delivered
	err := s.db.Update(context.Background(), func(tx *store.Tx) error {
		for {
			next, err := tx.NextParcels(string(chat.Console), s.now.Add(time.Hour), 10)
			if err != nil || len(next) == 0 {
				return err
			}
			for _, d := range next {
				post, err := chat.DecodePost(d.Post)
				if err != nil {
					return err
				}
				out = append(out, delivered{row: d.Row, room: d.Address, replaces: d.Replaces, post: post})
				name := d.Replaces
				if name == "" {
					name = fmt.Sprintf("post-%d", d.Row)
				}
				if err := tx.MarkSent(d.Row, name, s.now); err != nil {
					return err
				}
			}
		}
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return out
}

// hear sends a message and gives its one answer.
func (s *stage) hear(m chat.Message) delivered {
	s.t.Helper()
	if err := s.a.Turn(s.t.Context(), m); err != nil {
		s.t.Fatalf("%q: %v", m.Text, err)
	}
	got := s.deliver()
	if len(got) != 1 {
		s.t.Fatalf("%q got %d posts, want 1", m.Text, len(got))
	}
	return got[0]
}

func wantPart(t *testing.T, got, part string) {
	t.Helper()
	if !strings.Contains(got, part) {
		t.Errorf("answer lacks %q:\n%s", part, got)
	}
}

func wantSilence(t *testing.T, got string) {
	t.Helper()
	if got != "" {
		t.Errorf("want silence, got:\n%s", got)
	}
}
