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
		if is := saidOf(other); is.Entry != nil && other.No != e.No {
			view.Beside = append(view.Beside, is)
		}
	}
	for _, old := range t.stands {
		view.Stands = append(view.Stands, saidOf(old))
	}
	if too := saidToo(load, told); too != 0 {
		view.Too = t.who(too)
	}
	return wording.UndoneUnits(view), nil
}

// saidToo is who else said of all the units what was taken back; zero for nobody.
func saidToo(load kitchen.Units, told kitchen.UnitEntry) kitchen.MemberNo {
	var by kitchen.MemberNo
	for _, n := range kitchen.UnitsOf(told) {
		u, _ := load.Unit(n)
		s, ok := u.LastStep(kitchen.SaidBy(told))
		if !ok || s.By == 0 || s.To != u.State || s.From == s.To || by != 0 && s.By != by {
			return 0
		}
		by = s.By
	}
	return by
}

// saidOf is what an entry says of units; nothing for another entry.
func saidOf(e store.Logged) wording.UnitsSaid {
	run, _ := runOf(e.Subject)
	told, _ := e.Entry.(kitchen.UnitEntry)
	return wording.UnitsSaid{Run: run, Entry: told}
}
