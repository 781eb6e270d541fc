package answer

import (
	"errors"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// scene is what a message is about beyond its own words: the post it answers,
// else what the speaker said last in this room.
type scene struct {
	// plan is the plan talked about, at when it was asked for, planTurn the turn
	// that it belongs to.
	plan     *phrase.Plan
	at       time.Time
	planTurn store.InboxID
	// set is the turn that changed the kitchen, when that was said last.
	set *store.Turn
	// turn is the turn that a reply or tap answers; nil when it answers none.
	turn *store.Turn
	// post is true when a post of the bot is answered, whatever it was about.
	post bool
	// run is the run, and ping the key of the ping, that the post answered is
	// about; zero and empty for none.
	run  kitchen.RunNo
	ping string
	// asks are the keys of all its pings, a space between them.
	asks string
	// log is the run whose story was told last; zero for none.
	log kitchen.RunNo
	// asked is the text of the question that waits for an answer, helped is set when
	// the last answer was a page of help.
	asked  string
	helped bool
}

// sceneLasts is how long a plan or setting stays what "no, 4 bags" is about,
// questionLasts how long a question waits, and othersLast how long somebody
// else's plan in the same room can be gone on from.
const (
	sceneLasts    = 12 * time.Hour
	questionLasts = time.Hour
	othersLast    = time.Hour
)

// followed reports whether a text goes on from the last plan or setting ("no, 4
// bags", "cook it").
func (s scene) followed(p phrase.Parsed) bool {
	if s.plan == nil && s.set == nil || len(p.Intents) != 1 {
		return false
	}
	_, corrects := p.Intents[0].(phrase.Correct)
	_, cooks := p.Intents[0].(phrase.Cook)
	tells, _ := p.Intents[0].(phrase.Tell)
	prepares := s.plan != nil && len(tells.Entries) > 0 && is[kitchen.PrepBegun](tells.Entries[0])
	return corrects || cooks || prepares
}

// context finds the scene of the message, and the sentence of a tapped button.
func (t *turn) context() (scene, error) {
	if t.m.Edits != "" {
		return t.editScene()
	}
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
	s, err := t.rowScene(*row)
	s.post = true
	return s, err
}

// rowScene is the scene that a post of the bot sets.
func (t *turn) rowScene(row store.Row) (scene, error) {
	s := scene{}
	if no, ok := runOf(row.About); ok {
		s.run = no
	}
	if row.Inbox == 0 {
		s.ping, s.asks = row.About, row.About
		if s.run != 0 {
			s.ping, _, _ = strings.Cut(row.About, " ")
		}
		return t.startScene(s, row)
	}
	turn, err := t.book.Turn(row.Inbox)
	if err != nil {
		return scene{}, err
	}
	of := t.sceneOf(turn)
	of.run, of.turn = s.run, &turn
	if turn.Kind == logKind {
		of.log = s.run
	}
	return of, nil
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

// lastScene is what the speaker said last here, while it is fresh; else the plan
// that somebody else made here just now.
func (t *turn) lastScene() (scene, error) {
	if t.member.No == 0 {
		return t.othersScene(scene{})
	}
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return scene{}, err
	}
	s := t.sceneIn(turns)
	if len(turns) > 0 {
		s.helped = turns[0].Kind == helpKind
		s.log = t.loggedIn(turns[0])
	}
	if s.plan == nil && s.set == nil {
		return t.othersScene(s)
	}
	return s, nil
}

// loggedIn is the run whose story a turn told.
func (t *turn) loggedIn(turn store.Turn) kitchen.RunNo {
	if turn.Kind != logKind {
		return 0
	}
	for _, i := range phrase.Parse(turn.Said, t.names).Intents {
		if log, ok := i.(phrase.Log); ok {
			return log.Which.Run
		}
	}
	return 0
}

// lookBack is how many turns of a speaker are looked through for a scene.
const lookBack = 30

// sceneIn is the scene that turns set, the newest first.
func (t *turn) sceneIn(turns []store.Turn) scene {
	asked := t.openQuestion(turns)
	for _, turn := range turns {
		if turn.Kind != planKind && turn.Kind != reverseKind && turn.Kind != setKind {
			continue
		}
		if t.m.At.Sub(turn.At) > sceneLasts {
			break
		}
		s := t.sceneOf(turn)
		s.asked = asked
		return s
	}
	return scene{asked: asked}
}

// openQuestion is the text of the newest question that still waits. Another plan
// makes it idle, a setting in between doesn't.
func (t *turn) openQuestion(turns []store.Turn) string {
	for _, turn := range turns {
		switch turn.Kind {
		case askedKind:
			if t.m.At.Sub(turn.At) <= questionLasts {
				return turn.Asked
			}
			return ""
		case planKind, reverseKind, tellKind:
			return ""
		}
	}
	return ""
}

// othersScene adds to a scene without a plan the newest one that somebody made in
// this room within the hour: Robin plans, Ana says "cook it".
func (t *turn) othersScene(s scene) (scene, error) {
	newest, err := t.book.LastTurnIn(t.room.ID, planKind)
	if errors.Is(err, store.ErrNotFound) || err == nil && t.m.At.Sub(newest.At) > othersLast {
		return s, nil
	}
	if err != nil {
		return s, err
	}
	of := t.sceneOf(newest)
	s.plan, s.at, s.planTurn = of.plan, of.at, of.planTurn
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
			s.plan, s.planTurn = &p, turn.ID
		}
	}
	return s
}

// startScene is the order that a start ping spoke of.
func (t *turn) startScene(s scene, row store.Row) (scene, error) {
	no, ok := startNo(row.About)
	if !ok {
		return s, nil
	}
	e, err := t.book.Entry(no)
	if err != nil {
		return s, err
	}
	if start, ok := e.Entry.(kitchen.StartWanted); ok {
		s.plan, s.at, s.planTurn = &phrase.Plan{Order: start.Order}, e.At, e.Inbox
	}
	return s, nil
}
