package answer

import (
	"errors"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// learnsFrom is how many units of each species a forecast of growth looks back to.
const learnsFrom = 60

// grownBefore is what grew through before, for the growth of others to be forecast by.
func grownBefore(book *store.Book) ([]kitchen.Grown, error) {
	rows, err := book.GrownUnits(learnsFrom)
	past := make([]kitchen.Grown, 0, len(rows))
	for _, r := range rows {
		if !r.Arrived { // of those nobody here saw the beginning
			past = append(past, kitchen.Grown{
				Unit: r.Ref, Species: r.Species, Container: r.Container, Route: r.Route, Inoculated: r.Inoculated, Shaken: r.Shaken, Through: r.Through,
			})
		}
	}
	return past, err
}

// grownBefore is read once in a turn.
func (t *turn) grownBefore() ([]kitchen.Grown, error) {
	if t.grown != nil {
		return t.grown, nil
	}
	past, err := grownBefore(t.book)
	t.grown = past
	return past, err
}

// dueOf are the pings that the units of a load want.
func (t *turn) dueOf(load kitchen.Units) ([]kitchen.UnitsDue, error) {
	past, err := t.grownBefore()
	return load.Wants(t.settings, past), err
}

// saveLoad keeps what the shelf and traces look for of the units of a load, and gives
// the pings that they want.
func (t *turn) saveLoad(no kitchen.RunNo) ([]kitchen.Ping, error) {
	load, err := t.load(no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return nil, t.book.DropUnits(no)
	}
	if err != nil {
		return nil, err
	}
	if err := t.book.SaveUnits(load); err != nil {
		return nil, err
	}
	due, err := t.dueOf(load)
	var want []kitchen.Ping
	for _, d := range due {
		want = append(want, d.Ping)
	}
	return want, err
}

// saveArrived writes the list row of a load that no run made, and makes its pings
// equal to what its units want.
func (t *turn) saveArrived(row store.RunRow) error {
	load, err := t.load(row.No)
	gone := errors.As(err, new(kitchen.NoSuchRun))
	if err != nil && !gone {
		return err
	}
	row.State, row.Begun = store.EndedRun, load.Begun
	if gone {
		row.State, row.Begun = store.TakenBack, t.m.At
	}
	if err := t.book.SaveRun(row); err != nil {
		return err
	}
	want, err := t.saveLoad(row.No)
	if err != nil {
		return err
	}
	return t.wantPings(row.No.Prefix(), want)
}
