package answer

import (
	"sync"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// kept keeps what is folded from the entries of one subject, for each collective, as of
// the last of them, so that a turn needn't fold them again. Entries are only ever added,
// a strike is one too; so the number of the last one that is committed says whether the
// fold still holds. Never fill it with what a turn has written itself: that can be rolled
// back, and the number used again. The zero kept is empty.
type kept[T any] struct {
	mu sync.Mutex
	by map[store.CollectiveID]keptFold[T]
}

type keptFold[T any] struct {
	last kitchen.EntryNo
	of   T
}

// at is the fold of a subject at the beginning of a transaction: as kept, else made anew.
// Where there is no entry it is the zero T.
func (k *kept[T]) at(book *store.Book, subject string, fold func(*store.Book) (T, error)) (T, error) {
	var none T
	last, err := book.Latest(subject, 1)
	if err != nil || len(last) == 0 {
		return none, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if f, ok := k.by[book.Collective()]; ok && f.last == last[0].No {
		return f.of, nil
	}
	of, err := fold(book)
	if err != nil {
		return none, err
	}
	if k.by == nil {
		k.by = map[store.CollectiveID]keptFold[T]{}
	}
	k.by[book.Collective()] = keptFold[T]{last[0].No, of}
	return of, nil
}

// settingsOf are the settings of a collective at the beginning of a transaction.
func (a *Answerer) settingsOf(book *store.Book) (kitchen.Settings, error) {
	return a.settings.at(book, kitchenSubject, func(book *store.Book) (kitchen.Settings, error) {
		records, err := book.Standing(kitchenSubject)
		return kitchen.FoldSettings(records), err
	})
}
