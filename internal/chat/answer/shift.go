package answer

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// shiftTime corrects when the last thing said of a run happened.
func (t *turn) shiftTime(i phrase.ShiftTime, ctx scene) (chat.Post, error) {
	run, err := t.which(i.Which, ctx, func(kitchen.Run) bool { return true })
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	last, err := t.lastTold(run.No, i.Kind)
	if never := errors.As(err, new(kitchen.NeverTold)); never && i.To.Clock != nil {
		return t.tellUntold(i, run)
	}
	if err != nil {
		return chat.Post{}, err
	}
	at := last.At.Add(i.To.Shift)
	if !i.FromThere {
		if at, err = t.corrected(i.To, last.At); err == nil {
			err = t.aheadBy(correctsWithin, &i.To, at, run.PutOn())
		}
		if err != nil {
			return chat.Post{}, err
		}
	}
	entry := last.Entry.(kitchen.RunEntry)
	if kitchen.LongBefore(entry, at, run.PutOn()) && hourAlone(&i.To) {
		i.Which, i.Kind, i.To = phrase.Which{Run: run.No}, kitchen.KindOf(entry), dated(at.In(t.now.Location()))
		return wording.LongBefore(run.No, at.In(t.now.Location()), t.now, i.String()), nil
	}
	return t.tellAnew(run, last, at)
}

// tellAnew writes the last thing said of a run again, as of another time.
func (t *turn) tellAnew(run kitchen.Run, last store.Logged, at time.Time) (chat.Post, error) {
	entry := last.Entry.(kitchen.RunEntry)
	stripped, err := t.without(run.No, last.No)
	if err != nil {
		return chat.Post{}, err
	}
	err = t.follows(stripped, entry, at)
	if errors.As(err, new(kitchen.AlreadySo)) {
		err = kitchen.Misplaced{Run: run.No, Said: kitchen.KindOf(entry), At: at, Was: last.At}
	}
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.writeAt(run.No.Subject(), kitchen.Struck{No: last.No}, t.m.At); err != nil {
		return chat.Post{}, err
	}
	no, err := t.append(run.No.Subject(), entry, at, t.text)
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.unlearn(run, last); err != nil {
		return chat.Post{}, err
	}
	moved, err := t.theRun(run.No)
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.learn(moved, kitchen.Meant(entry), no); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.about = tellKind, run.No.Subject()
	return wording.Run(wording.RunView{
		Run: moved, Told: entry, At: at.In(t.now.Location()), Was: &run, WasAt: last.At.In(t.now.Location()),
		Now: t.arrived(), Who: t.who, First: t.once(run.No),
	}), nil
}

// unlearn takes back what the zero of a run had taught of its cooker, since that, or
// the heat off before it, was told anew with another time.
func (t *turn) unlearn(run kitchen.Run, moved store.Logged) error {
	told := kitchen.Meant(moved.Entry.(kitchen.RunEntry))
	zero, down := run.LastStep(kitchen.KindAtZero)
	if !is[kitchen.AtZero](told) && !is[kitchen.HeatOff](told) || !down || !zero.Seen {
		return nil
	}
	e, err := t.book.Entry(zero.No)
	if err != nil {
		return err
	}
	beside, err := t.book.EntriesOf(e.Inbox)
	if err != nil {
		return err
	}
	for _, e := range beside {
		if !learnt(e.Entry) || !counts(e) {
			continue
		}
		if err := t.strikeOne(e); err != nil {
			return err
		}
	}
	return t.reload()
}

// tellUntold takes a time of something that nobody told before for the telling of
// it: "steam was at 14:05".
func (t *turn) tellUntold(i phrase.ShiftTime, run kitchen.Run) (chat.Post, error) {
	entry, ok := phrase.ToldOf(i.Kind)
	if !ok {
		return chat.Post{}, kitchen.NeverTold{Run: run.No, Said: i.Kind}
	}
	at, err := t.past(&i.To)
	if err != nil {
		return chat.Post{}, err
	}
	if post, asked := t.longBefore(phrase.Tell{Entries: []kitchen.RunEntry{entry}, When: &i.To}, run, at); asked {
		return post, nil
	}
	return t.tellOf(run, []kitchen.RunEntry{entry}, at)
}

// longBefore asks whether what is told of the flame was so long before its run was put
// on, where an hour was said without its day. A run that is begun by it, zero here, is
// put on now.
func (t *turn) longBefore(i phrase.Tell, run kitchen.Run, at time.Time) (chat.Post, bool) {
	putOn := t.m.At
	if run.No != 0 {
		putOn, i.Which = run.PutOn(), phrase.Which{Run: run.No}
	}
	long := func(e kitchen.RunEntry) bool { return kitchen.LongBefore(e, at, putOn) }
	if !hourAlone(i.When) || !slices.ContainsFunc(i.Entries, long) {
		return chat.Post{}, false
	}
	when := dated(at.In(t.now.Location()))
	i.When = &when
	return wording.LongBefore(run.No, at.In(t.now.Location()), t.now, i.String()), true
}

// hourAlone reports whether an hour was said without its day.
func hourAlone(m *phrase.Moment) bool { return m != nil && m.Clock != nil && !m.Day.Said }

// dated is an instant as somebody would say it who leaves no doubt of the day.
func dated(at time.Time) phrase.Moment {
	year, month, date := at.Date()
	return phrase.Moment{
		Clock: &phrase.ClockTime{Hour: at.Hour(), Minute: at.Minute(), Half: true},
		Day:   phrase.Day{Year: year, Month: month, Date: date, Said: true},
	}
}

// lastTold is the newest entry about a run that can be corrected, of a kind if one
// was named.
func (t *turn) lastTold(no kitchen.RunNo, kind kitchen.Kind) (store.Logged, error) {
	all, err := t.book.Latest(no.Subject(), 100)
	if err != nil {
		return store.Logged{}, err
	}
	for _, e := range all {
		told, ok := e.Entry.(kitchen.RunEntry)
		if ok && counts(e) && (kind == 0 && happened(told) || kind != 0 && kitchen.KindOf(told) == kind) {
			return e, nil
		}
	}
	return store.Logged{}, kitchen.NeverTold{Run: no, Said: kind}
}

// happened reports whether an entry tells of something that happened to a run at a
// time, and not of who watches it or has seen a ping.
func happened(e kitchen.RunEntry) bool {
	switch kitchen.KindOf(e) {
	case kitchen.KindRunBegun, kitchen.KindTookOver, kitchen.KindHandOffered, kitchen.KindHandAccepted:
		return false
	case kitchen.KindPingAnswered:
		return e.(kitchen.PingAnswered).How == kitchen.AnswerDone
	case kitchen.KindPrepBegun, kitchen.KindPrepEnded, kitchen.KindHeatOn, kitchen.KindSteam, kitchen.KindVentClosed, kitchen.KindAtPressure,
		kitchen.KindPressureLost, kitchen.KindPressureBack, kitchen.KindDipped, kitchen.KindGaugeRead, kitchen.KindHeatOff, kitchen.KindAtZero,
		kitchen.KindOutOfPot, kitchen.KindTempRead, kitchen.KindWaterIn, kitchen.KindWaterLeft, kitchen.KindRunGone, kitchen.KindCalledOff:
		return true
	}
	panic("kind " + kitchen.KindOf(e).String())
}

// corrected is the instant that a moment means which corrects another one: a time of
// day alone is the one nearest to what stood, of those that have passed.
func (t *turn) corrected(m phrase.Moment, was time.Time) (time.Time, error) {
	if m.Clock == nil || m.Day.Said {
		return t.past(&m)
	}
	was = was.In(t.now.Location())
	until := was.Add(12 * time.Hour)
	if until.After(t.now) {
		until = t.now
	}
	meant := append(m.Resolve(was, phrase.Back), m.Resolve(until, phrase.Back)...)
	if len(meant) == 0 {
		return t.past(&m)
	}
	near := slices.MinFunc(meant, func(a, b time.Time) int { return cmp.Compare(a.Sub(was).Abs(), b.Sub(was).Abs()) })
	return near.UTC(), nil
}
