package answer

import (
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// remeasured takes "no, 44C" behind a reading for the right figure of that, and
// reports whether it was.
func (t *turn) remeasured(ctx scene) (bool, error) {
	if t.m.Edits != "" || t.member.No == 0 {
		return false, nil
	}
	readings, err := t.readingsLately(ctx)
	if err != nil || len(readings) == 0 {
		return false, err
	}
	last := readings[len(readings)-1]
	run, ok := runOf(last.Subject)
	if !ok {
		return false, nil
	}
	sentence, ok := phrase.Remeasured(t.text, t.names, run, last.Entry.(kitchen.TempRead).Temp)
	if ok {
		t.text, t.wrong = sentence, readings
	}
	return ok, nil
}

// readingsLately is what the speaker read last here, if they told or changed nothing
// since; of a post replied to, what was read for it.
func (t *turn) readingsLately(ctx scene) ([]store.Logged, error) {
	if ctx.post {
		if ctx.turn == nil || ctx.turn.Kind != tellKind {
			return nil, nil
		}
		return t.readingsOf(*ctx.turn)
	}
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return nil, err
	}
	for _, turn := range turns {
		switch {
		case turn.ID == t.owner || turn.Kind == coolKind:
			continue
		case turn.Kind != tellKind || t.m.At.Sub(turn.At) > sceneLasts:
			return nil, nil
		}
		return t.readingsOf(turn)
	}
	return nil, nil
}

// readingsOf are the readings of a turn that still count.
func (t *turn) readingsOf(turn store.Turn) ([]store.Logged, error) {
	entries, err := t.book.EntriesOf(turn.ID)
	return slices.DeleteFunc(entries, func(e store.Logged) bool { return !is[kitchen.TempRead](e.Entry) || !counts(e) }), err
}

// remeasure writes readings anew in the place of those that were wrong, as of their
// time.
func (t *turn) remeasure(i phrase.Tell) (chat.Post, error) {
	wrong := t.wrong
	first, _ := i.Entries[0].(kitchen.TempRead)
	if len(i.Entries) == 1 {
		wrong = []store.Logged{t.meantReading(first)}
	}
	old := wrong[len(wrong)-1]
	at := old.At
	if i.When != nil {
		var err error
		if at, err = t.past(i.When); err != nil {
			return chat.Post{}, err
		}
	}
	no, _ := runOf(old.Subject)
	if i.Which.Run != 0 {
		no = i.Which.Run
	}
	for _, e := range wrong {
		if err := t.strikeOne(e); err != nil {
			return chat.Post{}, err
		}
	}
	run, err := t.theRun(no)
	if err != nil {
		return chat.Post{}, err
	}
	entries := slices.Clone(i.Entries)
	if was := old.Entry.(kitchen.TempRead); len(entries) == 1 {
		entries[0] = likeBefore(first, was)
		t.instead = &was
	}
	return t.tellOf(run, entries, at)
}

// meantReading is the one of the wrong readings that a right one stands for: that of
// the same unit, else the last.
func (t *turn) meantReading(right kitchen.TempRead) store.Logged {
	for _, e := range slices.Backward(t.wrong) {
		if right.Units != nil && slices.Equal(e.Entry.(kitchen.TempRead).Units, right.Units) {
			return e
		}
	}
	return t.wrong[len(t.wrong)-1]
}

// likeBefore is a reading with what was said of the wrong one and isn't said again.
func likeBefore(right, wrong kitchen.TempRead) kitchen.TempRead {
	if right.Units == nil {
		right.Units = wrong.Units
	}
	if right.Where == 0 {
		right.Where = wrong.Where
	}
	return right
}
