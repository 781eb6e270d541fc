package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// undoneUnits says what was taken back of units, and how they stand now.
func (t *turn) undoneUnits(e store.Logged, told kitchen.UnitEntry, by string, struck []store.Logged) (chat.Post, error) {
	no, _ := runOf(e.Subject)
	load, err := t.load(no)
	if err != nil {
		return chat.Post{}, err
	}
	t.about = e.Subject
	view := wording.UnitsUndone{Load: load, Entry: told, At: e.At.In(t.now.Location()), Now: t.arrived(), By: by}
	for _, other := range struck {
		if u, ok := other.Entry.(kitchen.UnitEntry); ok && other.No != e.No {
			run, _ := runOf(other.Subject)
			view.Beside = append(view.Beside, wording.UnitsSaid{Run: run, Entry: u})
		}
	}
	return wording.UndoneUnits(view), nil
}
