package answer

import (
	"errors"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// understand parses the text. It can be the reply to the question just asked: then
// it completes the text that was asked about.
func (t *turn) understand(ctx scene) (phrase.Parsed, error) {
	if t.m.Tap != nil {
		return phrase.Parse(t.text, t.names), nil
	}
	p, err := t.parse(ctx)
	if err != nil {
		return p, err
	}
	return t.ofThem(p, ctx)
}

// parse reads the text by itself, or as what completes a question or mends a figure.
func (t *turn) parse(ctx scene) (phrase.Parsed, error) {
	if mends, err := t.remeasured(ctx); mends || err != nil {
		return phrase.Parse(t.text, t.names), err
	}
	parsed := phrase.Parse(t.text, t.names)
	if ctx.asked == "" {
		if figure, ok, err := t.gaugeFigure(parsed, ctx); ok || err != nil {
			return figure, err
		}
		return t.measured(parsed, ctx)
	}
	first := phrase.Parse(ctx.asked, t.names)
	if first.Ask == nil {
		return parsed, nil
	}
	sentence, ok := phrase.Complete(first.Ask, ctx.asked, t.text, t.names)
	if !ok {
		return parsed, nil
	}
	t.text = sentence
	return phrase.Parse(sentence, t.names), nil
}

// meant decides whether the bot should speak at all. In a group it answers what
// is addressed to it and what parses as a whole; words that people also say to
// each other count only from someone it has just talked with.
func (t *turn) meant(p phrase.Parsed, ctx scene) (bool, error) {
	nothing := len(p.Intents) == 0 && p.Ask == nil && p.Near == nil
	if t.m.Tap != nil && t.text == "" {
		return false, nil // a button that is not of this room
	}
	if t.addressed() {
		return t.text != "" || len(t.m.Photos) > 0 && t.m.Edits == "", nil
	}
	if nothing {
		return false, nil
	}
	if idle, err := t.idleCool(p); idle || err != nil {
		return false, err
	}
	if names, takes := t.takesPot(p, ctx); names {
		return takes, nil
	}
	if named, fits, err := t.namedWhole(p); named || err != nil {
		return fits, err
	}
	if p.Bare == phrase.Plainly || ctx.followed(p) {
		return true, nil
	}
	if in, err := t.inRun(p); in || err != nil || alarming(p) {
		return in, err
	}
	return t.talkedLately()
}

// potFollows is how long after a plan the name of a cooker alone says where it goes.
const potFollows = 15 * time.Minute

// takesPot reports whether a text is no more than the name of a cooker, and whether that
// says where the plan just made is to go, which named none.
func (t *turn) takesPot(p phrase.Parsed, ctx scene) (names, takes bool) {
	if len(p.Intents) != 1 {
		return false, false
	}
	it, ok := p.Intents[0].(phrase.PlanIt)
	if !ok || it.Cooker == "" {
		return false, false
	}
	return true, ctx.plan != nil && ctx.plan.Order.Cooker == "" && t.m.At.Sub(ctx.at) <= potFollows
}

// alarming reports whether what was said may be that a gauge shows far too much, or
// an hour or a temperature: "at 20". It is the gauge only while a cooker is hot.
func alarming(p phrase.Parsed) bool {
	if len(p.Intents) == 0 {
		return false
	}
	tell, _ := p.Intents[0].(phrase.Tell)
	if len(tell.Entries) == 0 {
		return false
	}
	at, ok := tell.Entries[0].(kitchen.AtPressure)
	return ok && at.Alarming()
}

// inRun reports whether words that are loosely said come from somebody who is in a
// run, and fit there: "steam", "zero", "how long"; from anybody else only the step
// that comes next in this room. Manners are no such words.
func (t *turn) inRun(p phrase.Parsed) (bool, error) {
	if len(p.Intents) == 0 || manners(p.Intents[0]) {
		return false, nil
	}
	tell, tells := p.Intents[0].(phrase.Tell)
	hot := alarming(p)
	fits := func(r kitchen.Run) bool {
		if hot && !r.Stage.Hot() || tells && tell.Which.Mine && !t.isOwn(r) {
			return false
		}
		if tells && is[kitchen.PressureBack](tell.Entries[0]) && r.Stage != kitchen.StagePressureLost {
			return false // "it's back" is said of everything
		}
		if tells && t.saidWithin(justNow, r, tell) {
			return true
		}
		if !r.Has(t.member.No) && !(tells && store.RoomID(r.Room) == t.room.ID && isNext(r, tell.Entries[0])) {
			return false
		}
		return !tells || t.follows(r, r.AsMeant(tell.Entries[0], t.m.At), t.m.At) == nil
	}
	open, err := t.openRuns()
	if _, takes := p.Intents[0].(phrase.TakeOver); takes && len(open) > 0 {
		return true, nil // whoever takes a hot cooker is heard
	}
	if err != nil || len(only(open, fits)) > 0 || !tells {
		return len(only(open, fits)) > 0, err
	}
	ended, err := t.endedLately(fits) // called off, a pot still comes to zero
	if err != nil || len(ended) > 0 {
		return len(ended) > 0, err
	}
	pressed, err := t.calledOff(kitchen.Run.MayPress)
	return len(only(pressed, fits)) > 0, err
}

// justNow is how long after somebody told something another who tells the same is taken
// to have seen the same.
const justNow = time.Minute

// saidWithin reports whether somebody else told the same of a run in this room so lately:
// who saw it as well is to hear that it is written.
func (t *turn) saidWithin(lately time.Duration, r kitchen.Run, i phrase.Tell) bool {
	if i.When != nil || store.RoomID(r.Room) != t.room.ID {
		return false
	}
	var so kitchen.AlreadySo
	twice := errors.As(t.follows(r, r.AsMeant(i.Entries[0], t.m.At), t.m.At), &so)
	return twice && so.Seen && so.By != t.member.No && t.m.At.Sub(so.At).Abs() <= lately
}

// isNext reports whether an entry is what comes next in a run: from whoever says so
// first it counts.
func isNext(r kitchen.Run, e kitchen.RunEntry) bool {
	next := r.Next()
	return len(next) > 0 && next[0].Kind == kitchen.KindOf(e)
}

// manners reports whether an intent is a greeting, thanks or a bare choice.
func manners(i phrase.Intent) bool {
	_, greets := i.(phrase.Greet)
	_, thanks := i.(phrase.Thanks)
	_, chooses := i.(phrase.Choose)
	return greets || thanks || chooses
}

// addressed reports whether the message was plainly meant for the bot, whatever
// it says.
func (t *turn) addressed() bool {
	return t.m.Address == chat.Addressed || t.m.Audience == chat.Private || t.m.Tap != nil || t.m.ReplyTo != ""
}

// choosing reports whether a text can only be the answer to a question.
func choosing(p phrase.Parsed) bool {
	if len(p.Intents) != 1 {
		return false
	}
	_, ok := p.Intents[0].(phrase.Choose)
	return ok
}

// talkedLately reports whether the speaker talked with the bot in this room in
// the last ten minutes.
func (t *turn) talkedLately() (bool, error) {
	if t.member.No == 0 {
		return false, nil
	}
	last, err := t.book.LastTurn(t.room.ID, t.member.No)
	if errors.Is(err, store.ErrNotFound) {
		return false, nil
	}
	return err == nil && t.m.At.Sub(last.At) <= 10*time.Minute, err
}
