package rehearse

import (
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"ryebell/internal/chat"
	"ryebell/internal/chat/lines"
)

// set moves the clock.
func (d *Door) set(t time.Time) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.now = t.In(d.start.Location())
}

// message makes the platform's event of what is said.
func (d *Door) message(s say) (chat.Message, error) {
	m := d.event(s.voice, roomOf(s.voice))
	m.Text = lines.Said(s.text)
	if m.Audience == chat.Group {
		m.Text, m.Address = meant(m.Text)
	}
	if s.voice.reply {
		p, ok := d.newest(m.Room.ID)
		if !ok {
			return chat.Message{}, fault("no post there to reply to")
		}
		m.ReplyTo, m.Address = p.id, chat.Addressed
	}
	key := saying{m.From.ID, m.Room.ID}
	if s.voice.edit {
		if d.said[key] == "" {
			return chat.Message{}, fault("no message of theirs there to edit")
		}
		m.Edits = d.said[key]
	} else {
		d.said[key] = m.Event
	}
	if s.voice.photo {
		m.Photos = []chat.Photo{photo("photo-" + m.Event)}
	}
	return m, nil
}

// tapped makes the platform's event of a tap.
func (d *Door) tapped(t tap) (chat.Message, error) {
	places := []string{roomOf(t.voice)}
	if t.voice.in == "" {
		places = append(places, privately+t.voice.who)
	}
	for _, in := range places {
		if b, ok := d.button(in, t.label); ok {
			m := d.event(t.voice, in)
			m.Tap, m.Address = &b, chat.Addressed
			return m, nil
		}
	}
	return chat.Message{}, fault("no post there has this button")
}

// event fills in what all events have.
func (d *Door) event(v voice, in string) chat.Message {
	d.count++
	now := d.Now()
	m := chat.Message{
		Event: fmt.Sprintf("event-%d", d.count),
		Room:  chat.Room{Door: chat.Console, ID: in},
		From:  chat.Person{Door: chat.Console, ID: v.who, Name: shownName(v.who)},
		At:    now.UTC(), Arrived: now.UTC(),
		Audience: chat.Group, Address: chat.Overheard,
	}
	if strings.HasPrefix(in, privately) {
		m.Audience, m.Address = chat.Private, chat.Addressed
	}
	if v.sent != nil {
		m.At = v.sent.last(now).UTC()
	}
	return m
}

func roomOf(v voice) string {
	switch v.in {
	case "":
		return room
	case private:
		return privately + v.who
	}
	return v.in
}

// meant tells whether text in a group is plainly for the bot, and takes a
// mention of it off.
func meant(text string) (string, chat.Address) {
	for _, mention := range []string{"@bot", "bot,", "bot:"} {
		if len(text) < len(mention) || !strings.EqualFold(text[:len(mention)], mention) {
			continue
		}
		rest := text[len(mention):]
		next, _ := utf8.DecodeRuneInString(rest)
		if mention == "@bot" && (unicode.IsLetter(next) || unicode.IsDigit(next)) {
			continue
		}
		return strings.TrimSpace(strings.TrimLeft(rest, ",:")), chat.Addressed
	}
	if strings.HasPrefix(text, "/") {
		return text, chat.Addressed
	}
	return text, chat.Overheard
}
