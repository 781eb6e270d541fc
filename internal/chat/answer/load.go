package answer

import (
	"errors"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// load folds the units of a load, once until something is written that can change
// them.
func (t *turn) load(no kitchen.RunNo) (kitchen.Units, error) {
	if u, known := t.loads[no]; known {
		return u, nil
	}
	run, err := t.runOrNone(no)
	if err != nil {
		return kitchen.Units{}, err
	}
	u, err := unitsIn(t.book, no, run)
	if err == nil {
		t.loads[no] = u
	}
	return u, err
}

// runOrNone folds a run; the zero Run for a load that no run made.
func (t *turn) runOrNone(no kitchen.RunNo) (kitchen.Run, error) {
	row, err := t.book.Run(no)
	switch {
	case errors.Is(err, store.ErrNotFound) || err == nil && row.State == store.TakenBack:
		return kitchen.Run{}, kitchen.NoSuchRun{Run: no}
	case err != nil || row.Arrived:
		return kitchen.Run{}, err
	}
	return t.theRun(no)
}

// loadOf folds the units of a load outside of a turn.
func loadOf(book *store.Book, no kitchen.RunNo) (kitchen.Units, error) {
	row, err := book.Run(no)
	if errors.Is(err, store.ErrNotFound) || err == nil && row.State == store.TakenBack {
		return kitchen.Units{}, kitchen.NoSuchRun{Run: no}
	}
	if err != nil {
		return kitchen.Units{}, err
	}
	var run kitchen.Run
	if !row.Arrived {
		if run, err = foldRun(book, no); err != nil {
			return kitchen.Units{}, err
		}
	}
	return unitsIn(book, no, run)
}

// unitsIn folds the units of a run, or with the zero Run of what arrived.
func unitsIn(book *store.Book, no kitchen.RunNo, run kitchen.Run) (kitchen.Units, error) {
	records, err := book.Standing(no.Subject())
	if err != nil {
		return kitchen.Units{}, err
	}
	if run.No != 0 {
		return kitchen.FoldUnits(run, records), nil
	}
	u, err := kitchen.FoldArrived(records)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		err = kitchen.NoSuchRun{Run: no}
	}
	return u, err
}
