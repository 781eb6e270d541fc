package answer

import (
	"time"

	"ryebell/internal/kitchen"
)

// heed makes the pings of units equal to what they want in the kitchen as it is now: of
// these loads, and of all of which units wait or grow, since what was asked of them may
// be due again. Those that are touched come later, with all that their runs want.
func (t *turn) heed(loads map[kitchen.RunNo]bool) error {
	rows, err := t.book.StandingUnits()
	if err != nil {
		return err
	}
	for _, r := range rows {
		if r.Heeds() {
			loads[r.Ref.Run] = true
		}
	}
	changes, err := t.book.Standing(kitchenSubject)
	if err != nil {
		return err
	}
	then := kitchen.SettingsAt(changes)
	for no := range loads {
		if t.touched[no] {
			continue
		}
		if err := t.heedIn(no, then); err != nil {
			return err
		}
	}
	return nil
}

// heedIn does so in one load. Nothing was told of it, so that what its run wants stays as
// it stands, and no forecast of its cooling is needed, which takes most of the time.
func (t *turn) heedIn(no kitchen.RunNo, then func(time.Time) kitchen.Settings) error {
	load, err := t.loadThen(no, then)
	if err != nil {
		return err
	}
	rows, err := t.book.UnitsOfLoad(no)
	if err != nil {
		return err
	}
	if len(rows) > 0 && rows[0].Cool.UnixMilli() != load.Cool.UnixMilli() {
		t.touched[no] = true // by another limit it was cool at another time
		return nil
	}
	due, err := t.dueOf(load)
	if err != nil {
		return err
	}
	standing, err := t.book.Pings(no.Prefix())
	if err != nil {
		return err
	}
	var want []kitchen.Ping
	for _, d := range due {
		want = append(want, d.Ping)
	}
	want = t.settings.Quieted(want, t.a.zoneOf(t.settings))
	for _, p := range standing {
		if p.Fired.IsZero() && !ofUnits(p.Kind) {
			want = append(want, p.Ping)
		}
	}
	return t.book.Reconcile(no.Prefix(), want, t.m.Arrived)
}

// loadThen folds the units of a load without what its run forecasts.
func (t *turn) loadThen(no kitchen.RunNo, then func(time.Time) kitchen.Settings) (kitchen.Units, error) {
	row, err := t.book.Run(no)
	if err != nil {
		return kitchen.Units{}, err
	}
	records, err := t.book.Standing(no.Subject())
	if err != nil {
		return kitchen.Units{}, err
	}
	if row.Arrived {
		return kitchen.FoldArrived(records)
	}
	run, err := kitchen.FoldRun(records, then)
	return kitchen.FoldUnits(run, records), err
}
