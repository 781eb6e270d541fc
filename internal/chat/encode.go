package chat

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"time"
)

// formatVersion is the version of the stored form of posts. Within a version
// the form may only grow.
const formatVersion = 1

// Encode gives the stored form of a post: JSON with a version, and a kind
// beside every block and span. [DecodePost] gives the same post back, with
// instants in UTC. Bytes that are not UTF-8 come back as U+FFFD. The only
// error is an instant outside the years 0 to 9999.
func (p Post) Encode() ([]byte, error) {
	stored := storedPost{Version: formatVersion, Slot: p.Slot, Loudness: p.Loudness.String()}
	for _, b := range p.Blocks {
		stored.Blocks = append(stored.Blocks, storeBlock(b))
	}
	for _, b := range p.Buttons {
		stored.Buttons = append(stored.Buttons, storedButton(b))
	}
	for _, f := range p.Files {
		stored.Files = append(stored.Files, storedFile(f))
	}
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(stored); err != nil {
		return nil, fmt.Errorf("encode post: %w", err)
	}
	return bytes.TrimRight(out.Bytes(), "\n"), nil
}

// DecodePost reads what [Post.Encode] wrote. It fails on anything that is not
// a post of a version it knows, so that nothing is shown in part.
func DecodePost(data []byte) (Post, error) {
	var stored storedPost
	if err := json.Unmarshal(data, &stored); err != nil {
		return Post{}, fmt.Errorf("decode post: %w", err)
	}
	if stored.Version != formatVersion {
		return Post{}, fmt.Errorf("decode post: version %d, want %d", stored.Version, formatVersion)
	}
	p := Post{Slot: stored.Slot}
	for _, b := range stored.Blocks {
		block, err := b.load()
		if err != nil {
			return Post{}, fmt.Errorf("decode post: %w", err)
		}
		p.Blocks = append(p.Blocks, block)
	}
	for _, b := range stored.Buttons {
		p.Buttons = append(p.Buttons, Button(b))
	}
	for _, f := range stored.Files {
		p.Files = append(p.Files, File(f))
	}
	loudness, err := unword(loudnesses, stored.Loudness)
	if err != nil {
		return Post{}, fmt.Errorf("decode post: loudness: %w", err)
	}
	p.Loudness = Loudness(loudness)
	return p, nil
}

// The words of the closed choices, by their value. They are in stored posts
// and are never changed.
var (
	loudnesses = []string{"", "answer", "guard", "due", "note", "digest"}
	aligns     = []string{"", "left", "right"}
	whenForms  = []string{"clock", "day clock", "day"} // less one: there is no empty form
)

func word(words []string, value int) string {
	if value < 0 || value >= len(words) {
		panic(fmt.Sprintf("chat: value %d of %q", value, words))
	}
	return words[value]
}

func unword(words []string, w string) (int, error) {
	value := slices.Index(words, w)
	if value < 0 {
		return 0, fmt.Errorf("unknown word %q", w)
	}
	return value, nil
}

type storedPost struct {
	Version  int            `json:"v"`
	Blocks   []storedBlock  `json:"blocks"`
	Buttons  []storedButton `json:"buttons,omitempty"`
	Files    []storedFile   `json:"files,omitempty"`
	Slot     string         `json:"slot,omitempty"`
	Loudness string         `json:"loudness,omitempty"`
}

type storedButton struct {
	Label string `json:"label"`
	Say   string `json:"say"`
}

type storedFile struct {
	Name string `json:"name"`
	Type string `json:"type"`
	Data []byte `json:"data"`
	Kept int64  `json:"kept,omitempty"`
}

type storedBlock struct {
	Kind  string         `json:"kind"`
	Spans []storedSpan   `json:"spans,omitempty"`
	Items [][]storedSpan `json:"items,omitempty"`
	Align []string       `json:"align,omitempty"`
	Rows  [][]string     `json:"rows,omitempty"`
	Text  string         `json:"text,omitempty"`
}

type storedSpan struct {
	Kind   string        `json:"kind"`
	Text   string        `json:"text,omitempty"`
	Person *storedPerson `json:"person,omitempty"`
	At     *time.Time    `json:"at,omitempty"`
	Zone   string        `json:"zone,omitempty"`
	Form   string        `json:"form,omitempty"`
}

type storedPerson struct {
	Door DoorName `json:"door"`
	ID   string   `json:"id"`
	Name string   `json:"name"`
}

func storeBlock(b Block) storedBlock {
	switch b := b.(type) {
	case Para:
		return storedBlock{Kind: "para", Spans: storeSpans(b)}
	case Table:
		stored := storedBlock{Kind: "table", Rows: b.Rows}
		for _, a := range b.Align {
			stored.Align = append(stored.Align, word(aligns, int(a)))
		}
		return stored
	case List:
		stored := storedBlock{Kind: "list"}
		for _, item := range b {
			stored.Items = append(stored.Items, storeSpans(item))
		}
		return stored
	case Quote:
		return storedBlock{Kind: "quote", Text: string(b)}
	}
	panic(fmt.Sprintf("chat: block %T", b))
}

func (b storedBlock) load() (Block, error) {
	switch b.Kind {
	case "para":
		spans, err := loadSpans(b.Spans)
		return Para(spans), err
	case "table":
		t := Table{Rows: b.Rows}
		for _, w := range b.Align {
			a, err := unword(aligns, w)
			if err != nil {
				return nil, fmt.Errorf("align: %w", err)
			}
			t.Align = append(t.Align, Align(a))
		}
		return t, nil
	case "list":
		var l List
		for _, item := range b.Items {
			spans, err := loadSpans(item)
			if err != nil {
				return nil, err
			}
			l = append(l, spans)
		}
		return l, nil
	case "quote":
		return Quote(b.Text), nil
	}
	return nil, fmt.Errorf("unknown block %q", b.Kind)
}

func storeSpans(spans []Span) []storedSpan {
	stored := make([]storedSpan, len(spans))
	for i, s := range spans {
		stored[i] = storeSpan(s)
	}
	return stored
}

func storeSpan(s Span) storedSpan {
	switch s := s.(type) {
	case Text:
		return storedSpan{Kind: "text", Text: string(s)}
	case Bold:
		return storedSpan{Kind: "bold", Text: string(s)}
	case Code:
		return storedSpan{Kind: "code", Text: string(s)}
	case Mention:
		person := storedPerson(s.Person)
		return storedSpan{Kind: "mention", Text: s.Name, Person: &person}
	case When:
		at := s.At.UTC()
		return storedSpan{Kind: "when", At: &at, Zone: s.Zone, Form: word(whenForms, int(s.Form)-1)}
	}
	panic(fmt.Sprintf("chat: span %T", s))
}

func loadSpans(stored []storedSpan) ([]Span, error) {
	var spans []Span
	for _, s := range stored {
		span, err := s.load()
		if err != nil {
			return nil, err
		}
		spans = append(spans, span)
	}
	return spans, nil
}

func (s storedSpan) load() (Span, error) {
	switch s.Kind {
	case "text":
		return Text(s.Text), nil
	case "bold":
		return Bold(s.Text), nil
	case "code":
		return Code(s.Text), nil
	case "mention":
		if s.Person == nil {
			return nil, fmt.Errorf("mention of nobody")
		}
		return Mention{Person: Person(*s.Person), Name: s.Text}, nil
	case "when":
		return s.loadWhen()
	}
	return nil, fmt.Errorf("unknown span %q", s.Kind)
}

func (s storedSpan) loadWhen() (Span, error) {
	form, err := unword(whenForms, s.Form)
	if err != nil {
		return nil, fmt.Errorf("form of instant: %w", err)
	}
	if s.At == nil {
		return nil, fmt.Errorf("instant without a time")
	}
	return When{At: s.At.UTC(), Zone: s.Zone, Form: WhenForm(form + 1)}, nil
}
