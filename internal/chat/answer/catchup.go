package answer

import (
	"context"
	"errors"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// catchUpBy is how many loads are brought up to date in one transaction.
const catchUpBy = 500

// CatchUp derives anew what an older program kept otherwise, or not at all, of the
// units of loads. It is called before the first message; a book that is up to date
// costs one look. Pings are left as they are: the next word about a load makes them
// right.
func (a *Answerer) CatchUp(ctx context.Context) error {
	for more := true; more; {
		err := a.db.Update(ctx, func(tx *store.Tx) error {
			collectives, err := tx.Collectives()
			if err != nil {
				return err
			}
			more = false
			for _, id := range collectives {
				n, err := catchUp(tx.Book(id))
				if err != nil {
					return err
				}
				more = more || n > 0
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

func catchUp(book *store.Book) (int, error) {
	behind, err := book.UnitsBehind(catchUpBy)
	if err != nil {
		return 0, err
	}
	for _, no := range behind {
		load, err := loadOf(book, no)
		if errors.As(err, new(kitchen.NoSuchRun)) {
			if err = book.DropUnits(no); err != nil {
				return 0, err
			}
			continue
		}
		if err != nil {
			return 0, err
		}
		if err := book.SaveUnits(load); err != nil {
			return 0, err
		}
	}
	return len(behind), nil
}
