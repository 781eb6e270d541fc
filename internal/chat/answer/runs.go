package answer

import (
	"errors"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// endedCounts is how long a run that is over can still be talked of without its
// number: a late reading, the water left in the pot.
const endedCounts = 24 * time.Hour

// theRun folds a run from its entries, once until something is written that can
// change it.
func (t *turn) theRun(no kitchen.RunNo) (kitchen.Run, error) {
	if r, known := t.runs[no]; known {
		return r, nil
	}
	r, err := foldRun(t.book, no)
	if err == nil {
		t.runs[no] = r
	}
	if row, known := t.book.Run(no); errors.As(err, new(kitchen.NoSuchRun)) && known == nil && row.Arrived && row.State != store.TakenBack {
		err = kitchen.NotCookedHere{Run: no}
	}
	return r, err
}

// foldRun folds a run from its entries, each with the settings in force when it
// happened. A run that was taken back, or never was, is [kitchen.NoSuchRun].
func foldRun(book *store.Book, no kitchen.RunNo) (kitchen.Run, error) {
	records, err := book.Standing(no.Subject())
	if err != nil {
		return kitchen.Run{}, err
	}
	changes, err := book.Standing(kitchenSubject)
	if err != nil {
		return kitchen.Run{}, err
	}
	r, err := kitchen.FoldRun(records, kitchen.SettingsAt(changes))
	if err != nil {
		return r, kitchen.NoSuchRun{Run: no}
	}
	return knowing(book, r, changes)
}

// teaches is how many runs back a forecast learns from.
const teaches = 24

// knowing is a run that has been at zero, with what its forecast goes by: the kitchen
// of today and the runs before it.
func knowing(book *store.Book, r kitchen.Run, changes []kitchen.Record) (kitchen.Run, error) {
	if _, zero := r.LastStep(kitchen.KindAtZero); !zero {
		return r, nil
	}
	past, err := book.CooledBefore(r.No, teaches)
	slices.Reverse(past) // the oldest first
	return r.Knowing(kitchen.FoldSettings(changes), past), err
}

// without is a run as if one of its entries had not been told.
func (t *turn) without(run kitchen.RunNo, no kitchen.EntryNo) (kitchen.Run, error) {
	records, err := t.book.Standing(run.Subject())
	if err != nil {
		return kitchen.Run{}, err
	}
	changes, err := t.book.Standing(kitchenSubject)
	if err != nil {
		return kitchen.Run{}, err
	}
	records = slices.DeleteFunc(records, func(r kitchen.Record) bool { return r.No == no })
	return kitchen.FoldRun(records, kitchen.SettingsAt(changes))
}

// openRuns folds the runs that are not over.
func (t *turn) openRuns() ([]kitchen.Run, error) {
	rows, err := t.book.OpenRuns()
	if err != nil {
		return nil, err
	}
	return t.folded(rows)
}

func (t *turn) folded(rows []store.RunRow) ([]kitchen.Run, error) {
	runs := make([]kitchen.Run, 0, len(rows))
	for _, row := range rows {
		r, err := t.theRun(row.No)
		if err != nil {
			return nil, err
		}
		runs = append(runs, r)
	}
	return runs, nil
}

// which finds the run that is meant: the one of the post replied to or tapped,
// the one named, the one in the cooker named; else the only one where it can
// follow, then the speaker's own. Where several are left it is a [whichRun].
func (t *turn) which(w phrase.Which, ctx scene, fits func(kitchen.Run) bool) (kitchen.Run, error) {
	return t.whichNext(w, ctx, fits, fits)
}

// whichNext is which for what has its place in a run: of several that can be meant
// it is the one where it comes next.
func (t *turn) whichNext(w phrase.Which, ctx scene, fits, next func(kitchen.Run) bool) (kitchen.Run, error) {
	if w.Run != 0 {
		return t.theRun(w.Run)
	}
	if ctx.run != 0 && w.Cooker == "" && !w.Mine {
		return t.theRun(ctx.run)
	}
	open, err := t.openRuns()
	if err != nil {
		return kitchen.Run{}, err
	}
	if w.Cooker != "" {
		open = only(open, func(r kitchen.Run) bool { return sameCooker(r.Cooker, w.Cooker) })
	}
	if w.Mine {
		open = only(open, t.isOwn)
	}
	left := func(r kitchen.Run) bool { return r.NeverSeenCool(t.m.At) }
	if on := only(open, func(r kitchen.Run) bool { return !left(r) }); len(on) > 0 {
		open = on // what was left to cool long ago is meant where there is nothing else
	}
	if fitting := only(open, fits); len(fitting) > 0 {
		open = fitting
	} else if ended, err := t.endedLately(func(r kitchen.Run) bool {
		return (w.Cooker == "" || sameCooker(r.Cooker, w.Cooker)) && (!w.Mine || t.isOwn(r)) && fits(r)
	}); err != nil || len(ended) > 0 {
		return firstRun(ended), err
	}
	return t.theOne(open, next)
}

// theOne is the only run of several that can be meant: the only one there is, the
// speaker's own, the one where it comes next.
func (t *turn) theOne(open []kitchen.Run, next func(kitchen.Run) bool) (kitchen.Run, error) {
	own := only(open, t.isOwn)
	switch {
	case len(open) == 0:
		return kitchen.Run{}, nothingOn{}
	case len(open) == 1:
		return open[0], nil
	case len(own) == 1:
		return own[0], nil
	case len(own) == 0:
		own = open
	}
	if likely := only(own, next); len(likely) == 1 {
		return likely[0], nil
	}
	return kitchen.Run{}, whichRun{open}
}

// isOwn reports whether a run is the speaker's.
func (t *turn) isOwn(r kitchen.Run) bool { return r.Cook == t.member.No }

// endedLately is the newest run that is over, where that can be meant.
func (t *turn) endedLately(fits func(kitchen.Run) bool) ([]kitchen.Run, error) {
	rows, err := t.book.LastRuns(1)
	if err != nil || len(rows) == 0 {
		return nil, err
	}
	runs, err := t.folded(rows)
	if err != nil {
		return nil, err
	}
	return only(runs, func(r kitchen.Run) bool { return t.m.At.Sub(r.Newest) <= endedCounts && fits(r) }), nil
}

// burnsAmong is among how many of the last runs one is looked for that was called off
// with the flame on.
const burnsAmong = 12

// mayBurn lists the runs of late that were called off, and whose flame nobody has
// said to be off.
func (t *turn) mayBurn() ([]kitchen.Run, error) { return t.calledOff(kitchen.Run.MayBurn) }

// calledOff lists the runs of late that were called off, and that are still so. Those
// that nobody called off are not folded: twelve forecasts take their time.
func (t *turn) calledOff(state func(kitchen.Run) bool) ([]kitchen.Run, error) {
	rows, err := t.book.LastRuns(burnsAmong)
	if err != nil {
		return nil, err
	}
	var off []store.RunRow
	for _, row := range rows {
		records, err := t.book.Standing(row.No.Subject())
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(records, func(r kitchen.Record) bool { return is[kitchen.CalledOff](r.Entry) }) {
			off = append(off, row)
		}
	}
	runs, err := t.folded(off)
	return only(runs, state), err
}

func firstRun(runs []kitchen.Run) kitchen.Run {
	if len(runs) == 0 {
		return kitchen.Run{}
	}
	return runs[0]
}

func only(runs []kitchen.Run, keep func(kitchen.Run) bool) []kitchen.Run {
	var kept []kitchen.Run
	for _, r := range runs {
		if keep(r) {
			kept = append(kept, r)
		}
	}
	return kept
}

// whichRun says that several runs can be meant: it is asked.
type whichRun struct{ runs []kitchen.Run }

func (whichRun) Error() string { return "several runs can be meant" }

// nothingOn says that no run is on.
type nothingOn struct{}

func (nothingOn) Error() string { return "no run is on" }

// unsettled is the answer to a message whose run couldn't be settled; false for
// any other error.
func (t *turn) unsettled(err error) (chat.Post, bool) {
	var several whichRun
	if errors.As(err, &several) {
		return wording.WhichRun(kitchen.Board(several.runs, t.m.At), t.saidOfRun(several.runs[0].No), t.arrived(), t.who), true
	}
	if errors.As(err, new(nothingOn)) {
		return wording.NoRunOn(), true
	}
	return chat.Post{}, false
}

// saidOfRun is what was said, in words that are still understood with the number of a run
// in front: as typed, else as they were understood.
func (t *turn) saidOfRun(no kitchen.RunNo) string {
	if p := phrase.Parse(no.String()+" "+t.text, t.names); len(p.Intents) > 0 || p.Ask != nil {
		return t.text
	}
	if p := phrase.Parse(t.text, t.names); len(p.Intents) == 1 {
		return p.Intents[0].String()
	}
	return t.text
}

// who is the name of a member, or the number of one who was forgotten; empty for
// nobody named.
func (t *turn) who(no kitchen.MemberNo) string { return whoIn(t.book)(no) }

func whoIn(book *store.Book) func(kitchen.MemberNo) string {
	return func(no kitchen.MemberNo) string {
		if no == 0 {
			return ""
		}
		m, err := book.Member(no)
		if err != nil || m.Name == "" {
			return wording.Nameless(no)
		}
		return m.Name
	}
}

// saveRuns writes the list rows of the runs that this turn touched, and makes
// their pings equal to what they want.
func (t *turn) saveRuns() error {
	if len(t.touched) == 0 {
		return nil
	}
	bookings, err := t.bookings()
	if err != nil {
		return err
	}
	for no := range t.touched {
		if err := t.saveRun(no, bookings); err != nil {
			return err
		}
	}
	return nil
}

func (t *turn) saveRun(no kitchen.RunNo, bookings []kitchen.Booking) error {
	row, err := t.book.Run(no)
	if errors.Is(err, store.ErrNotFound) {
		row, err = store.RunRow{No: no, Begun: t.m.At}, nil
	}
	if err != nil {
		return err
	}
	if row.Arrived {
		return t.saveArrived(row)
	}
	r, err := t.theRun(no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		row.State = store.TakenBack
		if err := t.book.SaveRun(row); err != nil {
			return err
		}
		if err := t.book.DropUnits(no); err != nil {
			return err
		}
		return t.book.Reconcile(no.Prefix(), nil, t.m.Arrived)
	}
	if err != nil {
		return err
	}
	row.Begun, row.Cook, row.Cooker, row.Turn = r.Begun, r.Cook, r.Cooker, store.InboxID(r.Turn)
	load, err := unitsIn(t.book, no, r) // the list doesn't have a new run yet
	if err != nil {
		return err
	}
	t.loads[no] = load
	row.State = store.OpenRun
	if r.Stage.Over() || load.Settled() {
		row.State = store.EndedRun
	}
	if err := t.book.SaveRun(row); err != nil {
		return err
	}
	if err := t.saveCooled(r); err != nil {
		return err
	}
	units, err := t.saveLoad(no)
	if err != nil {
		return err
	}
	want := slices.DeleteFunc(r.Wants(t.settings), load.Hushes)
	return t.wantPings(no.Prefix(), slices.Concat(want, r.WantsOf(bookings), units))
}

// saveCooled keeps what a run has shown of how it cools.
func (t *turn) saveCooled(r kitchen.Run) error {
	if c, shows := r.Cooled(); shows {
		return t.book.SaveCooled(c)
	}
	return t.book.DropCooled(r.No)
}

// wantPings makes the pings under a prefix equal to a list, after the quiet hours.
func (t *turn) wantPings(prefix string, want []kitchen.Ping) error {
	zone := t.a.zoneOf(t.settings) // which this very turn may have changed
	return t.book.Reconcile(prefix, t.settings.Quieted(want, zone), t.m.Arrived)
}
