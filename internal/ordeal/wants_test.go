package ordeal

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// kitchenOf is what all pings depend on: the settings of now and when they were
// last written of, how they were at any time, and the bookings.
type kitchenOf struct {
	settings kitchen.Settings
	then     func(time.Time) kitchen.Settings
	changes  []kitchen.Record
	bookings []kitchen.Booking
	written  time.Time
}

func readKitchen(book *store.Book) (k kitchenOf, err error) {
	changes, err1 := book.Standing("kitchen")
	booked, err2 := book.Standing(kitchen.BookingsSubject)
	at, err3 := lastWritten(book, "kitchen", kitchen.BookingsSubject)
	return kitchenOf{
		settings: kitchen.FoldSettings(changes), then: kitchen.SettingsAt(changes), changes: changes,
		bookings: kitchen.FoldBookings(booked), written: at,
	}, errors.Join(err1, err2, err3)
}

// lastWritten is when one of some subjects was last written of.
func lastWritten(book *store.Book, subjects ...string) (at time.Time, err error) {
	for _, s := range subjects {
		last, err := book.Latest(s, 1)
		if err != nil {
			return at, err
		}
		if len(last) > 0 && last[0].Written.After(at) {
			at = last[0].Written
		}
	}
	return at, nil
}

// quieted is a list of pings as the book has them: after the quiet hours, in UTC,
// to the millisecond.
func (k kitchenOf) quieted(want []kitchen.Ping) ([]kitchen.Ping, error) {
	zone, err := time.LoadLocation(k.settings.Zone)
	all := k.settings.Quieted(want, zone)
	for i := range all {
		all[i].Due = all[i].Due.UTC().Truncate(time.Millisecond)
	}
	return all, err
}

// pingsAgree holds the pings of starts, bookings and gear against those that the
// state wants.
func pingsAgree(book *store.Book) error {
	k, err1 := readKitchen(book)
	starts, err2 := book.Standing("start")
	gear, err3 := book.Standing(kitchen.GearSubject)
	written, err4 := lastWritten(book, "kitchen", kitchen.BookingsSubject, "start", kitchen.GearSubject)
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		return err
	}
	var start, soak, check []kitchen.Ping
	for _, s := range kitchen.FoldStarts(starts) {
		start = append(start, s.Reckoned(k.settings).Wants()...)
	}
	for _, b := range k.bookings {
		soak = append(soak, b.Wants()...)
	}
	for _, g := range kitchen.FoldGear(append(gear, k.changes...)) {
		pot, _ := k.settings.CookerNamed(g.Cooker)
		check = append(check, g.Wants(pot)...)
	}
	k.written = written
	return errors.Join(
		k.waiting(book, kitchen.StartPrefix, start),
		k.waiting(book, kitchen.BookingsPrefix, soak),
		k.waiting(book, kitchen.GearPrefix, check),
	)
}

// digestWaits holds the digest against what the settings want: one waits once there is
// a load to tell of, or none.
func (k kitchenOf) digestWaits(book *store.Book) error {
	waiting, err1 := book.WaitingPings(kitchen.DigestPrefix)
	loads, err2 := book.AnyLoad()
	want := 0
	if _, on := k.settings.DigestAt(); on && loads {
		want = 1
	}
	err := errors.Join(err1, err2)
	if err == nil && len(waiting) != want {
		err = fmt.Errorf("%d digests wait, want %d", len(waiting), want)
	}
	return err
}

// waiting holds the rows under a prefix against the pings that are wanted.
func (k kitchenOf) waiting(book *store.Book, prefix string, want []kitchen.Ping) error {
	rows, err1 := book.Pings(prefix)
	want, err2 := k.quieted(want)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	for _, w := range want {
		i := slices.IndexFunc(rows, func(r store.PingRow) bool { return r.Key == w.Key })
		if i < 0 {
			return fmt.Errorf("ping %s is wanted and not there", w.Key)
		}
		if err := k.stands(rows[i], w); err != nil {
			return err
		}
	}
	for _, r := range rows {
		if r.Fired.IsZero() && !slices.ContainsFunc(want, func(w kitchen.Ping) bool { return w.Key == r.Key }) {
			return fmt.Errorf("ping %s waits and is not wanted", r.Key)
		}
	}
	return nil
}

// early is how long before its time a ping may be said along with another one.
const early = time.Minute

// stands holds one row against the ping that is wanted. One that has fired waits
// again if it was put off to a time that lay ahead.
func (k kitchenOf) stands(r store.PingRow, w kitchen.Ping) error {
	if r.Fired.IsZero() && r.Ping != w {
		return fmt.Errorf("ping %s waits as\n  %+v\nand is wanted as\n  %+v", w.Key, r.Ping, w)
	}
	if !r.Fired.IsZero() && w.Due.After(k.written) && w.Due.After(r.Fired.Add(early)) {
		return fmt.Errorf("ping %s is wanted at %v and fired at %v", w.Key, w.Due, r.Fired)
	}
	return nil
}

// runsAgree holds the list of runs, and the pings of each, against its entries.
func runsAgree(book *store.Book) error {
	k, err1 := readKitchen(book)
	next, err2 := book.NextRun()
	beyond, err3 := book.Latest(next.Subject(), 1)
	if err := errors.Join(err1, err2, err3); err != nil {
		return err
	}
	if len(beyond) > 0 {
		return fmt.Errorf("run %d has entries and is not in the list", next)
	}
	if err := k.digestWaits(book); err != nil {
		return err
	}
	for no := kitchen.RunNo(1); no < next; no++ {
		if err := k.runAgrees(book, no); err != nil {
			return fmt.Errorf("run %d: %w", no, err)
		}
	}
	return nil
}

func (k kitchenOf) runAgrees(book *store.Book, no kitchen.RunNo) error {
	row, err1 := book.Run(no)
	records, err2 := book.Standing(no.Subject())
	written, err3 := lastWritten(book, no.Subject())
	if err := errors.Join(err1, err2, err3); err != nil {
		return err
	}
	if row.Arrived {
		return k.arrivedAgrees(book, row, records)
	}
	r, err := kitchen.FoldRun(records, k.then)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		if row.State != store.TakenBack {
			return fmt.Errorf("was taken back and is %s", row.State)
		}
		return k.waiting(book, no.Prefix(), nil)
	}
	if err != nil {
		return err
	}
	want := store.RunRow{
		No: no, Begun: r.Begun.UTC(), Cook: r.Cook, Cooker: r.Cooker, Turn: store.InboxID(r.Turn), State: store.OpenRun,
	}
	units := kitchen.FoldUnits(r, records)
	if r.Stage.Over() || units.Settled() {
		want.State = store.EndedRun
	}
	if row != want {
		return fmt.Errorf("is in the list as\n  %+v\nand by its entries\n  %+v", row, want)
	}
	if err := unitsAgree(book, units); err != nil {
		return err
	}
	if written.After(k.written) {
		k.written = written
	}
	due, err := k.unitPings(book, units)
	if err != nil {
		return err
	}
	pings := slices.DeleteFunc(r.Wants(k.settings), units.Hushes)
	return k.waiting(book, no.Prefix(), slices.Concat(pings, r.WantsOf(k.bookings), due))
}

// unitPings are those that the units of a load want.
func (k kitchenOf) unitPings(book *store.Book, us kitchen.Units) (want []kitchen.Ping, err error) {
	rows, err := book.GrownUnits(60)
	var past []kitchen.Grown
	for _, r := range rows {
		if !r.Arrived {
			past = append(past, kitchen.Grown{
				Unit: r.Ref, Species: r.Species, Container: r.Container, Route: r.Route, Inoculated: r.Inoculated, Shaken: r.Shaken, Through: r.Through,
			})
		}
	}
	for _, d := range us.Wants(k.settings, past) {
		want = append(want, d.Ping)
	}
	return want, err
}

// arrivedAgrees holds what arrived against its entries.
func (k kitchenOf) arrivedAgrees(book *store.Book, row store.RunRow, records []kitchen.Record) error {
	us, err := kitchen.FoldArrived(records)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		if row.State != store.TakenBack {
			return fmt.Errorf("was taken back and is %s", row.State)
		}
		return errors.Join(unitsAgree(book, kitchen.Units{Run: row.No}), k.waiting(book, row.No.Prefix(), nil))
	}
	if err != nil {
		return err
	}
	due, err := k.unitPings(book, us)
	return errors.Join(err, unitsAgree(book, us), k.waiting(book, row.No.Prefix(), due))
}

// unitsAgree holds the rows of a load's units against its entries.
func unitsAgree(book *store.Book, us kitchen.Units) error {
	rows, err1 := book.UnitsOfLoad(us.Run)
	behind, err2 := book.UnitsBehind(1000)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	if slices.Contains(behind, us.Run) {
		return errors.New("its units have no rows")
	}
	var want []store.UnitRow
	for _, u := range us.All {
		u.Steps = nil
		want = append(want, store.UnitRow{Unit: u, Begun: us.Begun, Cool: us.Cool, Arrived: us.Arrived, Size: len(us.All)})
	}
	if d := cmp.Diff(want, rows, cmpopts.EquateEmpty(), cmpopts.EquateApproxTime(time.Millisecond)); d != "" {
		return fmt.Errorf("its units by their entries (-) and in their rows (+):\n%s", d)
	}
	return nil
}
