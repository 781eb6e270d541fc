package answer

import (
	"errors"
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// quiet sets quiet hours, the speaker's own or, by a steward, everybody's.
func (t *turn) quiet(i phrase.Quiet) (chat.Post, error) {
	q := kitchen.QuietHours{Member: t.member.No, From: i.From, To: i.To}
	if i.Everybody {
		q.Member = 0
		if t.member.Role != kitchen.Steward {
			return chat.Post{}, kitchen.NotSteward{}
		}
	}
	return t.own(q)
}

// pingsWhere says where the speaker wants pings. Who never wrote in private can't be
// written to there: until then they come to the room.
func (t *turn) pingsWhere(i phrase.PingsWhere) (chat.Post, error) {
	post, err := t.own(kitchen.PingsPrivate{Member: t.member.No, Where: i.Where})
	if err != nil || i.Where != kitchen.InPrivate || t.m.Audience != chat.Group {
		return post, err
	}
	_, err = t.book.PrivateRoom(t.member.No)
	if errors.Is(err, store.ErrNotFound) {
		return wording.PrivateOnceWritten(), nil
	}
	return post, err
}

// own writes a change that everybody may make for themselves.
func (t *turn) own(c kitchen.Change) (chat.Post, error) {
	if err := check(t.settings, c); err != nil {
		return chat.Post{}, err
	}
	if err := t.write(kitchenSubject, c, t.text); err != nil {
		return chat.Post{}, err
	}
	t.settings = t.settings.With(c)
	return wording.Changed([]kitchen.Change{c}, t.settings), nil
}

// whyPing says why the ping replied to, or the last one, came; or why none did.
func (t *turn) whyPing(i phrase.WhyPing, ctx scene) (chat.Post, error) {
	came, next, err := t.pingsOfOpen(ctx.ping)
	if err != nil {
		return chat.Post{}, err
	}
	if ctx.ping == "" {
		if came, next, err = t.pingsOfShelf(came, next); err != nil {
			return chat.Post{}, err
		}
	}
	if i.None || came.Fired.IsZero() {
		return t.whyNone(next)
	}
	view := wording.PingCame{Ping: came.Ping, Sent: came.Fired.In(t.now.Location()), Now: t.arrived()}
	if no, ok := runOf(came.Key); ok {
		if view.Run, err = t.theRun(no); errors.As(err, new(kitchen.NotCookedHere)) {
			view.Run.No, err = no, nil
		}
	}
	return wording.WhyPing(view), err
}

// whyNone says why no ping has come: the next one isn't due, or nothing waits.
func (t *turn) whyNone(next store.PingRow) (chat.Post, error) {
	view := wording.NoPingView{Why: wording.NothingWaited, Now: t.arrived(), Who: t.who}
	if next.Key != "" {
		view.Why, view.Ping = wording.NotDueYet, next.Ping
		if no, ok := runOf(next.Key); ok {
			run, err := t.theRun(no)
			if errors.As(err, new(kitchen.NotCookedHere)) {
				run, err = kitchen.Run{No: no}, nil
			}
			if err != nil {
				return chat.Post{}, err
			}
			view.Run = run
			if t.heldByQuiet(run, next) {
				view.Why = wording.HeldByQuiet
			}
		}
	}
	return wording.WhyNoPing(view), nil
}

// heldByQuiet reports whether a ping would have come before, were it not for quiet
// hours.
func (t *turn) heldByQuiet(run kitchen.Run, row store.PingRow) bool {
	quiet, _ := t.settings.QuietFor(row.To)
	return slices.ContainsFunc(run.Wants(t.settings), func(w kitchen.Ping) bool {
		return w.Key == row.Key && w.Due.Before(row.Due) && quiet.Holds(w.Due.In(t.now.Location()))
	})
}

// pingsOfOpen finds among the pings of the open runs the one of a key, else the
// last that came, and the next that waits.
func (t *turn) pingsOfOpen(key string) (came, next store.PingRow, err error) {
	if key != "" { // it may be of a run that is over by now
		rows, err := t.book.Pings(key)
		if err != nil {
			return came, next, err
		}
		if len(rows) > 0 && rows[0].Key == key {
			came = rows[0]
		}
	}
	open, err := t.book.OpenRuns()
	if err != nil {
		return came, next, err
	}
	prefixes := []string{}
	if key != "" {
		prefixes = append(prefixes, key) // also of a run that is over, or a digest
	}
	for _, r := range open {
		prefixes = append(prefixes, r.No.Prefix())
	}
	for _, prefix := range prefixes {
		rows, err := t.book.Pings(prefix)
		if err != nil {
			return came, next, err
		}
		for _, p := range rows {
			switch {
			case !p.Fired.IsZero() && (p.Key == key || (key == "" || came.Key != key) && p.Fired.After(came.Fired)):
				came = p
			case p.Fired.IsZero() && (next.Key == "" || p.Due.Before(next.Due)):
				next = p
			}
		}
	}
	return came, next, nil
}

// pingsOfShelf takes the pings of the loads that stand for the last that came, and for
// the next that waits, where they are.
func (t *turn) pingsOfShelf(came, next store.PingRow) (store.PingRow, store.PingRow, error) {
	units, err := t.book.StandingUnits()
	if err != nil {
		return came, next, err
	}
	var last kitchen.RunNo
	for _, u := range units { // by run
		if u.Ref.Run == last {
			continue
		}
		last = u.Ref.Run
		rows, err := t.book.Pings(last.Prefix())
		if err != nil {
			return came, next, err
		}
		for _, p := range rows {
			switch {
			case p.Fired.After(came.Fired):
				came = p
			case p.Fired.IsZero() && (next.Key == "" || p.Due.Before(next.Due)):
				next = p
			}
		}
	}
	return came, next, nil
}
