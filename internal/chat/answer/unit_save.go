package answer

import (
	"errors"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

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
	var want []kitchen.Ping
	for _, due := range load.Wants() {
		want = append(want, due.Ping)
	}
	return want, nil
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

// unitsOfPing are the units that a ping of a load is about.
func (t *turn) unitsOfPing(no kitchen.RunNo, key string) ([]kitchen.UnitNo, error) {
	load, err := t.load(no)
	if err != nil {
		return nil, err
	}
	for _, due := range load.Wants() {
		if due.Key == key {
			return due.Units, nil
		}
	}
	return nil, nil
}
