package answer

import (
	"errors"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// scene is what a message is about beyond its own words: the post it answers,
// else what the speaker said last in this room.
type scene struct {
	// plan is the plan talked about, and at when it was asked for.
	plan *phrase.Plan
	at   time.Time
	// set is the turn that changed the kitchen, when that was said last.
	set *store.Turn
	// turn is the turn a reply or tap answers; nil when it answers none.
	turn *store.Turn
	// asked is the text of the question that waits for an answer.
	asked string
}

// sceneLasts is how long a plan or setting stays what "no, 4 bags" is about, and
// questionLasts how long a question waits.
const (
	sceneLasts    = 12 * time.Hour
	questionLasts = time.Hour
)

// followed reports whether a text goes on from the speaker's own last plan or
// setting ("no, 4 bags", "cook it"), said within the hour.
func (s scene) followed(p phrase.Parsed, at time.Time) bool {
	if s.plan == nil && s.set == nil || at.Sub(s.at) > questionLasts || len(p.Intents) != 1 {
		return false
	}
	_, corrects := p.Intents[0].(phrase.Correct)
	_, cooks := p.Intents[0].(phrase.Cook)
	return corrects || cooks
}

// context finds the scene of the message, and the sentence of a tapped button.
func (t *turn) context() (scene, error) {
	row, err := t.answered()
	if err != nil {
		return scene{}, err
	}
	if row == nil {
		return t.lastScene()
	}
	if t.m.Tap != nil {
		t.text = tapped(*row, t.m.Tap.Button)
	}
	if row.Inbox == 0 {
		return t.startScene(*row)
	}
	turn, err := t.book.Turn(row.Inbox)
	if err != nil {
		return scene{}, err
	}
	s := t.sceneOf(turn)
	s.turn = &turn
	return s, nil
}

// answered is the post that a tap or a reply answers, if it is one of this room.
func (t *turn) answered() (*store.Row, error) {
	var row store.Row
	var err error
	switch {
	case t.m.Tap != nil:
		row, err = t.book.Row(store.RowID(t.m.Tap.Row))
	case t.m.ReplyTo != "":
		row, err = t.book.RowOfPost(t.room.ID, t.m.ReplyTo)
	default:
		return nil, nil
	}
	if errors.Is(err, store.ErrNotFound) || err == nil && row.Room != t.room.ID {
		return nil, nil
	}
	return &row, err
}

// tapped is the sentence of a button; empty when the post has no such button.
func tapped(row store.Row, button int) string {
	post, err := chat.DecodePost(row.Post)
	if err != nil || button < 0 || button >= len(post.Buttons) {
		return ""
	}
	return post.Buttons[button].Say
}

// lastScene is what the speaker said last here, while it is fresh.
func (t *turn) lastScene() (scene, error) {
	if t.member.No == 0 {
		return scene{}, nil
	}
	last, err := t.book.LastTurn(t.room.ID, t.member.No)
	if errors.Is(err, store.ErrNotFound) {
		return scene{}, nil
	}
	if err != nil {
		return scene{}, err
	}
	asked := ""
	if last.Kind == askedKind && t.m.At.Sub(last.At) <= questionLasts {
		asked = last.Asked
	}
	about, err := t.book.LastTurn(t.room.ID, t.member.No, planKind, reverseKind, setKind)
	if errors.Is(err, store.ErrNotFound) || err == nil && t.m.At.Sub(about.At) > sceneLasts {
		return scene{asked: asked}, nil
	}
	if err != nil {
		return scene{}, err
	}
	s := t.sceneOf(about)
	s.asked = asked
	return s, nil
}

// sceneOf reads back what a turn was about.
func (t *turn) sceneOf(turn store.Turn) scene {
	s := scene{at: turn.At}
	switch turn.Kind {
	case askedKind:
		s.asked = turn.Asked
	case setKind:
		s.set = &turn
	}
	for _, intent := range phrase.Parse(turn.Said, t.names).Intents {
		if p, ok := intent.(phrase.Plan); ok {
			s.plan = &p
		}
	}
	return s
}

// startScene is the order that a start ping spoke of.
func (t *turn) startScene(row store.Row) (scene, error) {
	no, ok := startNo(row.About)
	if !ok {
		return scene{}, nil
	}
	e, err := t.book.Entry(no)
	if err != nil {
		return scene{}, err
	}
	start, ok := e.Entry.(kitchen.StartWanted)
	if !ok {
		return scene{}, nil
	}
	return scene{plan: &phrase.Plan{Order: start.Order}, at: e.At}, nil
}

// replace takes back what an edited message had written, so that the new text
// can write it anew; the answer will stand in the old one's place.
func (t *turn) replace() error {
	if t.m.Edits == "" {
		return nil
	}
	old, err := t.book.TurnOfEvent(string(t.m.Room.Door), t.m.Edits)
	if errors.Is(err, store.ErrNotFound) {
		return nil // chatter that became a message
	}
	if err != nil {
		return err
	}
	if old.Room != t.room.ID || old.Member != t.member.No {
		return nil // nobody edits somebody else's words
	}
	t.edited, t.owner = &old, old.ID
	if err := t.strike(old.ID); err != nil {
		return err
	}
	return t.loadSettings()
}

// strike takes back all entries of a turn that still count.
func (t *turn) strike(turn store.InboxID) error {
	entries, err := t.book.EntriesOf(turn)
	if err != nil {
		return err
	}
	for i := len(entries) - 1; i >= 0; i-- {
		e := entries[i]
		if e.StruckBy != 0 || !strikable(e.Entry) {
			continue
		}
		if err := t.write(e.Subject, kitchen.Struck{No: e.No}, ""); err != nil {
			return err
		}
	}
	return nil
}

// strikable reports whether an entry can be taken back: who joined has joined,
// and what was forgotten is gone.
func strikable(e kitchen.Entry) bool {
	return !is[kitchen.Struck](e) && !is[kitchen.MemberJoined](e) && !is[kitchen.RoomJoined](e) && !is[kitchen.Forgotten](e)
}

// is reports whether an entry is of a type.
func is[E kitchen.Entry](e kitchen.Entry) bool {
	_, ok := e.(E)
	return ok
}

// oldAnswer is the row that the answer to an edited message stands in.
func (t *turn) oldAnswer() (store.RowID, error) {
	if t.edited == nil {
		return 0, nil
	}
	rows, err := t.book.RowsOf(t.edited.ID)
	if err != nil || len(rows) == 0 {
		return 0, err
	}
	return rows[0].ID, nil
}
