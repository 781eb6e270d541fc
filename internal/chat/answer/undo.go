package answer

import (
	"errors"
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// undo takes back the speaker's last turn that wrote something, or, in a reply,
// what the post replied to had written.
func (t *turn) undo(ctx scene) (chat.Post, error) {
	turn, by, err := t.undoable(ctx)
	if err != nil {
		return chat.Post{}, err
	}
	if turn == 0 {
		return t.undoPlan(ctx)
	}
	struck, err := t.strike(turn)
	if err != nil {
		return chat.Post{}, err
	}
	return t.tellUndone(struck, by)
}

// undoable is the turn that an undo is about, and whose it is when it isn't the
// speaker's own; zero when what was said last is a plan, which wrote nothing.
func (t *turn) undoable(ctx scene) (turn store.InboxID, by string, err error) {
	if ctx.post {
		return t.answeredTurn(ctx)
	}
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return 0, "", err
	}
	for _, turn := range turns {
		if turn.At.After(t.m.At) {
			continue // said after this was
		}
		entries, err := t.book.EntriesOf(turn.ID)
		if err != nil {
			return 0, "", err
		}
		if slices.ContainsFunc(entries, counts) {
			return turn.ID, "", nil
		}
		if len(entries) == 0 && turn.Kind == planKind && turn.ID != t.owner && t.m.At.Sub(turn.At) <= questionLasts {
			return 0, "", nil
		}
	}
	turn, err = t.lastWritten()
	return turn, "", err
}

// lastWritten is the speaker's last turn here that wrote something that counts, however
// much they have asked since.
func (t *turn) lastWritten() (store.InboxID, error) {
	for before := kitchen.EntryNo(0); ; {
		e, err := t.book.LastEntryOf(t.member.No, t.room.ID, before)
		if errors.Is(err, store.ErrNotFound) {
			return 0, kitchen.NothingToUndo{}
		}
		if err != nil {
			return 0, err
		}
		if e.Inbox != 0 && counts(e) && !e.Written.After(t.m.Arrived) {
			return e.Inbox, nil
		}
		before = e.No
	}
}

// answeredTurn is the turn behind the post that was replied to or tapped.
func (t *turn) answeredTurn(ctx scene) (store.InboxID, string, error) {
	if ctx.turn == nil {
		return 0, "", kitchen.NothingToUndo{}
	}
	entries, err := t.book.EntriesOf(ctx.turn.ID)
	if err != nil {
		return 0, "", err
	}
	switch {
	case slices.ContainsFunc(entries, counts):
	case slices.ContainsFunc(entries, func(e store.Logged) bool { return e.StruckBy != 0 }):
		return 0, "", kitchen.TakenBackAlready{}
	case ctx.turn.Kind == planKind:
		return 0, "", nil
	default:
		return 0, "", kitchen.NothingToUndo{}
	}
	if ctx.turn.Member == t.member.No {
		return ctx.turn.ID, "", nil
	}
	return ctx.turn.ID, t.who(ctx.turn.Member), nil
}

// undoPlan goes back from a plan that was corrected to the one before it.
func (t *turn) undoPlan(ctx scene) (chat.Post, error) {
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return chat.Post{}, err
	}
	for _, turn := range turns {
		if turn.ID >= ctx.planTurn || turn.Kind != planKind || t.m.At.Sub(turn.At) > sceneLasts {
			continue
		}
		before := t.sceneOf(turn)
		if before.plan != nil && ctx.plan != nil {
			return t.replan(*before.plan, before.at.In(t.now.Location()), &ctx.plan.Order)
		}
	}
	if ctx.plan != nil {
		t.kind, t.said = planKind, ctx.plan.String()
	}
	return wording.PlanNotWritten(), nil
}

// tellUndone says what was taken back.
func (t *turn) tellUndone(struck []store.Logged, by string) (chat.Post, error) {
	if loads := arrivedIn(struck); len(loads) > 0 {
		return wording.UndoneArrived(loads, by), nil
	}
	for _, e := range struck {
		if given, ok := e.Entry.(kitchen.RoleGiven); ok {
			return wording.UndoneRole(t.who(given.Member), given.Role), nil
		}
		if told, ok := e.Entry.(kitchen.RunEntry); ok && !is[kitchen.RunBegun](e.Entry) {
			return t.undoneTelling(e, told, by, t.toldBeside(struck, e.No))
		}
		if told, ok := e.Entry.(kitchen.UnitEntry); ok {
			return t.undoneUnits(e, told, by, struck)
		}
		if words, ok := t.undone(e); ok {
			return wording.Undone(words, by), nil
		}
	}
	return chat.Post{}, kitchen.NothingToUndo{}
}

// toldBeside is what was taken back of the same message beside one entry of it: the
// gas that ran out under the pressure that was lost.
func (t *turn) toldBeside(struck []store.Logged, no kitchen.EntryNo) []string {
	var words []string
	for _, e := range struck {
		if e.No == no {
			continue
		}
		if g, ok := e.Entry.(kitchen.GearEntry); ok && e.Subject == kitchen.GearSubject {
			words = append(words, wording.UndoneGear(g))
		}
		if told, ok := e.Entry.(kitchen.RunEntry); ok {
			run, _ := runOf(e.Subject)
			words = append(words, wording.UndoneEntry(told, run, e.At, t.now))
		}
	}
	return words
}

// undoneTelling says what was taken back of a run, what else the same message had
// told, and how the run stands now.
func (t *turn) undoneTelling(e store.Logged, told kitchen.RunEntry, by string, beside []string) (chat.Post, error) {
	no, _ := runOf(e.Subject)
	run, err := t.theRun(no)
	if err != nil {
		return chat.Post{}, err
	}
	t.about = e.Subject
	if t.back != nil {
		view := wording.RunView{
			Run: run, Told: told, At: t.back.At.In(t.now.Location()), No: t.back.No, WasAt: e.At.In(t.now.Location()),
			Now: t.arrived(), Who: t.who, First: t.once(no),
		}
		if read, ok := t.back.Entry.(kitchen.TempRead); ok && e.At.Equal(t.back.At) {
			view.Instead = &read
		}
		return wording.BroughtBack(view), nil
	}
	view := wording.RunView{Run: run, Told: told, At: e.At.In(t.now.Location()), No: e.No, Now: t.arrived(), Who: t.who, First: t.once(no)}
	return wording.TakenBack(view, by, beside...), nil
}

// undone says what a struck entry was; false for one that is not worth a word.
func (t *turn) undone(e store.Logged) (string, bool) {
	if c, ok := e.Entry.(kitchen.Change); ok {
		return wording.UndoneChange(c, t.settings), true
	}
	if run, ok := e.Entry.(kitchen.RunBegun); ok {
		return wording.UndoneRun(run.Run), true
	}
	if b, ok := e.Entry.(kitchen.BookingEntry); ok {
		return wording.UndoneBooking(b, t.now), true
	}
	if g, ok := e.Entry.(kitchen.GearEntry); ok {
		return wording.UndoneGear(g), true
	}
	if c, ok := e.Entry.(kitchen.CultureEntry); ok {
		return wording.UndoneCulture(c), true
	}
	return wording.UndoneStart(), is[kitchen.StartWanted](e.Entry)
}
