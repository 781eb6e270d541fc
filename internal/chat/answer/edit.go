package answer

import (
	"errors"
	"reflect"
	"slices"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// editScene is the scene of an edited message: what stood before it, and itself,
// but nothing that was said since.
func (t *turn) editScene() (scene, error) {
	old, err := t.book.TurnOfEvent(string(t.m.Room.Door), t.m.Edits)
	if errors.Is(err, store.ErrNotFound) {
		return t.lastScene() // chatter that became a message
	}
	if err != nil {
		return scene{}, err
	}
	if old.Room != t.room.ID || old.Member != t.member.No {
		return scene{}, nil // nobody edits somebody else's words
	}
	t.edited = &old
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return scene{}, err
	}
	var before []store.Turn
	for _, turn := range turns {
		if turn.ID < old.ID {
			before = append(before, turn)
		}
	}
	s := t.sceneIn(before)
	own := t.sceneOf(old)
	if own.plan != nil {
		s.plan, s.at, s.planTurn, s.set = own.plan, own.at, own.planTurn, nil
	}
	if own.set != nil {
		s.set = own.set
	}
	return s, nil
}

// replace takes back what an edited message had written, so that the new text
// can write it anew; the answer will stand in the old one's place.
func (t *turn) replace() error {
	if t.edited == nil {
		return nil
	}
	t.owner = t.edited.ID
	struck, err := t.strike(t.edited.ID)
	t.replaced = struck
	return err
}

// restore says again what an edited message had said, when the new text was
// refused: nothing that stood is lost by a slip.
func (t *turn) restore() error {
	if t.back != nil && len(t.replaced) > 0 {
		if err := t.strikeOne(*t.back); err != nil {
			return err
		}
	}
	for _, e := range t.replaced {
		line := e.Line // of the turn that told it, so that an undo finds it there
		line.Written = t.m.Arrived
		if _, err := t.appendLine(line); err != nil {
			return err
		}
	}
	t.replaced = nil
	return t.reload()
}

// strike takes back all entries of a turn that still count, the last first, and
// gives them in the order in which they were written.
func (t *turn) strike(turn store.InboxID) ([]store.Logged, error) {
	entries, err := t.book.EntriesOf(turn)
	if err != nil {
		return nil, err
	}
	var standing []store.Logged
	for _, e := range entries {
		if counts(e) {
			standing = append(standing, e)
		}
	}
	if err := t.mayStrike(standing); err != nil {
		return nil, err
	}
	for i := len(standing) - 1; i >= 0; i-- {
		if err := t.strikeOne(standing[i]); err != nil {
			return nil, err
		}
		if err := t.bringBack(standing[i], entries); err != nil {
			return nil, err
		}
	}
	if err := t.bringBackUnits(entries); err != nil {
		return nil, err
	}
	return standing, t.reload()
}

// bringBack writes anew what an entry had replaced when it corrected the time of it,
// as of its old time and for the turn that had told it, so that a second undo finds it
// there.
func (t *turn) bringBack(correction store.Logged, turn []store.Logged) error {
	old, ok, err := t.correctedBy(correction, turn)
	if err != nil || !ok {
		return err
	}
	line := old.Line
	line.Written = t.m.Arrived
	no, err := t.appendLine(line)
	if err != nil {
		return err
	}
	old.No = no
	t.back = &old
	return nil
}

// correctedBy is the entry of another turn that a correction took back to write it
// with another time; turn is all that its turn wrote. The last one counts, which is
// what was last brought back.
func (t *turn) correctedBy(correction store.Logged, turn []store.Logged) (store.Logged, bool, error) {
	told, ok := correction.Entry.(kitchen.RunEntry)
	if !ok {
		return store.Logged{}, false, nil
	}
	for _, e := range slices.Backward(turn) {
		struck, ok := e.Entry.(kitchen.Struck)
		if !ok || e.Subject != correction.Subject {
			continue
		}
		old, err := t.book.Entry(struck.No)
		if err != nil {
			return store.Logged{}, false, err
		}
		was, ok := old.Entry.(kitchen.RunEntry)
		if ok && old.Inbox != correction.Inbox && kitchen.KindOf(was) == kitchen.KindOf(told) {
			return old, true, nil
		}
	}
	return store.Logged{}, false, nil
}

// strikeOne takes back one entry, and what was derived from it.
func (t *turn) strikeOne(e store.Logged) error {
	if err := t.writeAt(e.Subject, kitchen.Struck{No: e.No}, t.m.At); err != nil {
		return err
	}
	if given, ok := e.Entry.(kitchen.RoleGiven); ok {
		return t.syncRole(given.Member)
	}
	return nil
}

// mayStrike refuses to take back what the speaker couldn't have said: the kitchen
// and the roles are the stewards'. Entries decide, not what the turn was called.
func (t *turn) mayStrike(entries []store.Logged) error {
	cooked, taught := false, false
	for _, e := range entries {
		cooked = cooked || is[kitchen.RunBegun](e.Entry)
		if said, ok := e.Entry.(kitchen.RunEntry); ok {
			said = kitchen.Meant(said)
			taught = taught || is[kitchen.AtZero](said) || is[kitchen.WaterLeft](said)
		}
	}
	for _, e := range entries {
		_, change := e.Entry.(kitchen.Change)
		ours := observed(e.Entry) || is[kitchen.CookerIs](e.Entry) && cooked || taught && learnt(e.Entry) || is[kitchen.QuietHours](e.Entry) || is[kitchen.PingsPrivate](e.Entry)
		if (change && !ours || is[kitchen.RoleGiven](e.Entry)) && t.member.Role != kitchen.Steward {
			return kitchen.NotSteward{}
		}
		if given, ok := e.Entry.(kitchen.RoleGiven); ok && given.Role == kitchen.Steward {
			if err := t.stewardRemains(given.Member); err != nil {
				return err
			}
		}
	}
	return t.mayTakeBackRuns(entries)
}

// mayTakeBackRuns refuses to take back the beginning of a run that is hot, or was
// called off hot, by what was told of it elsewhere: nothing would watch its flame any
// more.
func (t *turn) mayTakeBackRuns(entries []store.Logged) error {
	for _, e := range entries {
		begun, ok := e.Entry.(kitchen.RunBegun)
		if !ok {
			continue
		}
		run, err := t.theRun(begun.Run)
		if err != nil {
			return err
		}
		if !run.Stage.Hot() && run.Stage != kitchen.StageFalling && !run.MayBurn() && !run.MayPress() {
			continue
		}
		for _, s := range slices.Backward(run.Steps) {
			if s.Seen && !slices.ContainsFunc(entries, func(e store.Logged) bool { return e.No == s.No }) {
				return kitchen.StillOn{Run: run.No, Stage: run.Stage, Said: s.Kind, At: s.At, By: s.By}
			}
		}
	}
	return nil
}

// learnt reports whether an entry says of a cooker no more than a run can teach.
func learnt(e kitchen.Entry) bool {
	k, ok := e.(kitchen.CookerIs)
	return ok && reflect.DeepEqual(k, kitchen.CookerIs{Name: k.Name, BoilOff: k.BoilOff, Fall: k.Fall})
}

// counts reports whether an entry can be taken back and hasn't been.
func counts(e store.Logged) bool { return e.StruckBy == 0 && strikable(e.Entry) }

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

// write appends an entry about a subject to the book, of when the message was
// sent.
func (t *turn) write(subject string, e kitchen.Entry, said string) error {
	_, err := t.append(subject, e, t.m.At, said)
	return err
}

// writeAt appends an entry of another time.
func (t *turn) writeAt(subject string, e kitchen.Entry, at time.Time) error {
	_, err := t.append(subject, e, at, t.text)
	return err
}

func (t *turn) append(subject string, e kitchen.Entry, at time.Time, said string) (kitchen.EntryNo, error) {
	return t.appendLine(store.Line{
		By: t.member.No, Room: t.room.ID, Inbox: t.owner, At: at, Written: t.m.Arrived, Subject: subject, Entry: e, Said: said,
	})
}

func (t *turn) appendLine(l store.Line) (kitchen.EntryNo, error) {
	t.entries++
	t.wrote[l.Subject] = true
	if no, ok := runOf(l.Subject); ok {
		t.touched[no] = true
		delete(t.runs, no)
		delete(t.loads, no)
	}
	if l.Subject == kitchenSubject {
		clear(t.runs)
		clear(t.loads)
	}
	return t.book.Append(l)
}
