package answer

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// answerPing answers the ping that was tapped or replied to, else the newest one
// of a run that the speaker watches.
func (t *turn) answerPing(i phrase.AnswerPing, ctx scene) (chat.Post, error) {
	if i.Burning {
		if post, ok, err := t.stillBurns(i, ctx); ok || err != nil {
			return post, err
		}
	}
	if post, ok, err := t.unitsDone(i, ctx); ok || err != nil {
		return post, err
	}
	if i.Which.Run != 0 {
		run, err := t.theRun(i.Which.Run)
		if err != nil {
			return chat.Post{}, err
		}
		return t.answersNewest(run, i.How)
	}
	key := ctx.ping
	if key == "" {
		return t.withoutPing(i, ctx)
	}
	no, ok := runOf(key)
	if !ok {
		return wording.NotUnderstood(), nil
	}
	if post, ok, err := t.answersUnits(i, ctx); ok || err != nil {
		return post, err
	}
	run, err := t.theRun(no)
	if err != nil {
		return chat.Post{}, err
	}
	return t.answers(run, key, i.How)
}

// answers writes what was answered to a ping.
func (t *turn) answers(run kitchen.Run, key string, how kitchen.Answered) (chat.Post, error) {
	e := kitchen.PingAnswered{Key: key, How: how}
	post, err := t.tellOf(run, []kitchen.RunEntry{e}, t.m.At)
	if err != nil {
		return post, err
	}
	next, err := t.theRun(run.No)
	if err != nil {
		return post, err
	}
	if zero, denied := run.ZeroDenied(e, next); denied {
		err = t.warnOfZero(run.No, zero)
	}
	return post, err
}

// warnOfZero tells the room in which somebody said zero that it isn't so, where that is
// another than this: there a pot is taken for down that is under pressure.
func (t *turn) warnOfZero(no kitchen.RunNo, zero kitchen.Step) error {
	said, err := t.book.Entry(zero.No)
	if err != nil || said.Room == 0 || said.Room == t.room.ID {
		return err
	}
	to, err := mention(t.book, zero.By)
	if err != nil {
		return err
	}
	raw, err := wording.NotAtZero(no, to, t.who(t.member.No)).Encode()
	if err != nil {
		return err
	}
	_, err = t.book.Queue(store.Parcel{Room: said.Room, Rank: store.Overtakes, Post: raw, About: no.Subject()}, t.m.Arrived)
	return err
}

// withoutPing takes words that usually answer a ping, when none was answered: they
// are about the one that just came here, to the speaker or to everybody, and still
// asks. Else I've got it takes a run over, and the rest is about the newest ping of
// the run meant.
func (t *turn) withoutPing(i phrase.AnswerPing, ctx scene) (chat.Post, error) {
	run, key, err := t.justAsked(i.How)
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	if key != "" {
		return t.answers(run, key, i.How)
	}
	if i.How == kitchen.AnswerGotIt {
		return t.takeOver(phrase.TakeOver{}, ctx)
	}
	run, err = t.which(phrase.Which{}, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() })
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	return t.answersNewest(run, i.How)
}

// answersNewest writes what was answered to the newest ping of a run; where none waits
// for an answer it says the step at hand.
func (t *turn) answersNewest(run kitchen.Run, how kitchen.Answered) (chat.Post, error) {
	newest, err := t.lastPing(run.No)
	if err != nil {
		return chat.Post{}, err
	}
	if newest.Fired.IsZero() {
		return t.stepsOf(run)
	}
	return t.answers(run, newest.Key, how)
}

// pingStands is how long words that name nothing are taken for the answer to a ping.
const pingStands = 20 * time.Minute

// justAsked is the ping that came last of those that came lately to this room, to the
// speaker or to everybody, and still ask, and don't only announce. The key is empty for
// none. Where one post asked it of several runs it is a [whichRun].
func (t *turn) justAsked(how kitchen.Answered) (of kitchen.Run, key string, err error) {
	open, err := t.openRuns()
	if err != nil {
		return of, "", err
	}
	burning, err := t.mayBurn()
	if err != nil {
		return of, "", err
	}
	latest := t.m.At.Add(-pingStands)
	var several []kitchen.Run
	for _, run := range append(open, burning...) {
		rows, err := t.asking(run)
		if err != nil {
			return of, "", err
		}
		for _, row := range rows {
			since := t.asksSince(run, row, how)
			if since.Before(latest) || row.Kind == kitchen.HoldNearlyOver || row.To != 0 && row.To != t.member.No {
				continue
			}
			here, err := t.cameHere(row)
			if err != nil {
				return of, "", err
			}
			if !here {
				continue
			}
			if key == "" || since.After(latest) {
				several = nil
			}
			several = append(several, run)
			of, key, latest = run, row.Key, since
		}
	}
	several = slices.CompactFunc(several, func(a, b kitchen.Run) bool { return a.No == b.No })
	if len(several) > 1 {
		return of, "", whichRun{several}
	}
	return of, key, nil
}

// asking lists the pings of a run that the state still wants, sent or not.
func (t *turn) asking(run kitchen.Run) ([]store.PingRow, error) {
	bookings, err := t.bookings()
	if err != nil {
		return nil, err
	}
	want := append(run.Wants(t.settings), run.WantsOf(bookings)...)
	rows, err := t.book.Pings(run.No.Prefix())
	return slices.DeleteFunc(rows, func(r store.PingRow) bool {
		return !slices.ContainsFunc(want, func(w kitchen.Ping) bool { return w.Key == r.Key })
	}), err
}

// asksSince is since when a ping waits for an answer: since it was sent, or, to hear
// that it is done, since the speaker put it off. Zero for one that doesn't wait.
func (t *turn) asksSince(run kitchen.Run, row store.PingRow, how kitchen.Answered) time.Time {
	last, answered := run.LastAnswer(row.Chain())
	switch {
	case !answered || last.At.Before(row.Fired):
		return row.Fired
	case how == kitchen.AnswerDone && last.How != kitchen.AnswerDone && last.By == t.member.No:
		return last.At
	}
	return time.Time{}
}

// cameHere reports whether a ping went to the room that is spoken in.
func (t *turn) cameHere(row store.PingRow) (bool, error) {
	rooms, err := pinging{a: t.a, book: t.book, settings: t.settings}.rooms(row)
	return slices.Contains(rooms, t.room.ID), err
}

// lastPing is the ping of a run that came last and waits for an answer; its Fired is
// zero when none does.
func (t *turn) lastPing(no kitchen.RunNo) (newest store.PingRow, err error) {
	run, err := t.theRun(no)
	if err != nil {
		return newest, err
	}
	rows, err := t.asking(run)
	for _, p := range rows {
		if at := t.asksSince(run, p, kitchen.AnswerNotYet); at.After(newest.Fired) {
			newest = p
		}
	}
	return newest, err
}
