package answer

import (
	"sync"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// folded keeps the settings of each collective as of its last entry about the
// kitchen, so that a turn needn't fold them again. Entries are only ever added, a
// strike is one too; so the number of the last one that is committed says whether
// the fold still holds. Never fill it with what a turn has written itself: that
// can be rolled back, and the number used again.
type folded struct {
	mu sync.Mutex
	by map[store.CollectiveID]fold
}

type fold struct {
	last     kitchen.EntryNo
	settings kitchen.Settings
}

// settingsOf are the settings of a collective at the beginning of a transaction.
func (a *Answerer) settingsOf(book *store.Book) (kitchen.Settings, error) {
	last, err := book.Latest(kitchenSubject, 1)
	if err != nil || len(last) == 0 {
		return kitchen.Settings{}, err
	}
	a.folded.mu.Lock()
	defer a.folded.mu.Unlock()
	if f, ok := a.folded.by[book.Collective()]; ok && f.last == last[0].No {
		return f.settings, nil
	}
	records, err := book.Standing(kitchenSubject)
	if err != nil {
		return kitchen.Settings{}, err
	}
	f := fold{last: last[0].No, settings: kitchen.FoldSettings(records)}
	a.folded.by[book.Collective()] = f
	return f.settings, nil
}
