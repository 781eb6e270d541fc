package chat

import (
	"fmt"
	"time"
)

// Post is something the bot says: a small tree of blocks with buttons below.
// It knows nothing of any platform; each door prints it in its own way.
type Post struct {
	Blocks []Block
	// Buttons are at most three in a post, the likely step first.
	Buttons []Button
	Files   []File
	// Slot names the post that this one replaces in place, such as "run/12"
	// or "board"; empty for a post of its own.
	Slot     string
	Loudness Loudness
}

// Loudness says how much of a stir a post makes.
type Loudness uint8

// An Answer follows somebody's message. The others come by themselves: Guard
// posts watch over a hot cooker, ring at any hour and overtake the rest; Due
// posts ring and wait for the morning; Note and Digest posts are silent.
const (
	Answer Loudness = iota + 1
	Guard
	Due
	Note
	Digest
)

// String is the word for logs and for the stored form; empty for none.
func (l Loudness) String() string { return word(loudnesses, int(l)) }

// Button is a labelled sentence: a tap on it is the same as saying it.
type Button struct {
	Label string
	Say   string
}

// File is a document or picture that goes with a post.
type File struct {
	Name string
	Type string // media type
	Data []byte
	// Kept is the number of a photo in the book whose bytes are put in when the
	// post is sent; zero for a file that brings its own. So a photo is in the book
	// once, and what was deleted meanwhile is not sent.
	Kept int64
}

// Block is a piece of a post that stands on lines of its own. The cases are
// [Para], [Table], [List] and [Quote].
//
//sumtype:decl
type Block interface{ block() }

// Para is one paragraph. A line break inside a span is printed as a space:
// what is to stand on lines of its own is several paragraphs.
type Para []Span

// P makes a paragraph from strings, each a [Text], and other spans. It panics
// for anything else, since that is a slip in a literal.
func P(parts ...any) Para {
	p := make(Para, len(parts))
	for i, part := range parts {
		switch part := part.(type) {
		case string:
			p[i] = Text(part)
		case Span:
			p[i] = part
		default:
			panic(fmt.Sprintf("chat: paragraph of %T", part))
		}
	}
	return p
}

// Table holds short cells in two or three columns, at most 28 columns of text
// wide. Numbers go to the right. A column that Align does not reach stands
// left; a row may be short.
type Table struct {
	Align []Align
	Rows  [][]string
}

// Align is the side that a column's cells stand on.
type Align uint8

// The two sides.
const (
	Left Align = iota + 1
	Right
)

// List is a list of short lines, each with a mark before it.
type List [][]Span

// Quote is text of somebody else, shown as such. It alone keeps its line
// breaks.
type Quote string

func (f WhenForm) layout() string {
	switch f {
	case Clock:
		return "15:04"
	case DayClock:
		return "Mon 2 Jan 15:04"
	case Day:
		return "Mon 2 Jan"
	}
	panic(fmt.Sprintf("chat: form of instant %d", f))
}

func (Para) block()  {}
func (Table) block() {}
func (List) block()  {}
func (Quote) block() {}

// Span is a run of text inside a paragraph. The cases are [Text], [Bold],
// [Code], [Mention] and [When].
//
//sumtype:decl
type Span interface{ span() }

// Text is plain text. It is shown as it is, whatever it contains.
type Text string

// Bold is text that matters most.
type Bold string

// Code is something to type.
type Code string

// Mention names a person and rings for them where the platform can. Name is
// what the collective calls them; if it is empty the platform's name is shown.
type Mention struct {
	Person Person
	Name   string
}

// String is the name to show.
func (m Mention) String() string {
	if m.Name != "" {
		return m.Name
	}
	return m.Person.Name
}

// When is an instant, printed as Form says in the zone that the book keeps
// for the room.
type When struct {
	At   time.Time
	Zone string // IANA name
	Form WhenForm
}

// String prints the instant. A zone that is not known on this machine counts
// as UTC, for a post that cannot be shown would hold up its room.
func (w When) String() string {
	zone, err := time.LoadLocation(w.Zone)
	if err != nil {
		zone = time.UTC
	}
	return w.At.In(zone).Format(w.Form.layout())
}

// WhenForm says how much of an instant is printed.
type WhenForm uint8

// Clock prints 14:05, DayClock Mon 2 Mar 14:05, Day Mon 2 Mar.
const (
	Clock WhenForm = iota + 1
	DayClock
	Day
)

func (Text) span()    {}
func (Bold) span()    {}
func (Code) span()    {}
func (Mention) span() {}
func (When) span()    {}
