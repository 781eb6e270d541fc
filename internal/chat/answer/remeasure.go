package answer

import (
	"slices"
	"time"

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
		entries, err := t.book.EntriesOf(ctx.turn.ID)
		return readingsIn(entries), err
	}
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return nil, err
	}
	for _, turn := range turns {
		if turn.ID == t.owner {
			continue
		}
		if t.m.At.Sub(turn.At) > sceneLasts || turn.Kind == planKind || turn.Kind == reverseKind || turn.Kind == setKind {
			return nil, nil
		}
		entries, err := t.book.EntriesOf(turn.ID)
		if err != nil || len(entries) > 0 {
			return readingsIn(entries), err
		}
	}
	return nil, nil
}

// readingsIn are the readings among entries that still count.
func readingsIn(entries []store.Logged) []store.Logged {
	return slices.DeleteFunc(entries, func(e store.Logged) bool { return !is[kitchen.TempRead](e.Entry) || !counts(e) })
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
	entries := slices.Clone(i.Entries)
	if was := old.Entry.(kitchen.TempRead); len(entries) == 1 {
		entries[0] = likeBefore(first, was)
		t.instead = &was
	}
	run, err := t.withoutWrong(no, wrong, entries, at)
	if err != nil {
		return chat.Post{}, err
	}
	return t.tellOf(run, entries, at)
}

// withoutWrong takes readings back and gives the run without them, if the right ones can
// follow: nothing that stood is lost by a slip.
func (t *turn) withoutWrong(no kitchen.RunNo, wrong []store.Logged, right []kitchen.RunEntry, at time.Time) (kitchen.Run, error) {
	run, err := t.theRun(no)
	if err != nil {
		return kitchen.Run{}, err
	}
	for _, e := range right {
		if err := t.follows(run, e, at); err != nil {
			return kitchen.Run{}, err
		}
	}
	for _, e := range wrong {
		if err := t.strikeOne(e); err != nil {
			return kitchen.Run{}, err
		}
	}
	return t.theRun(no)
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
