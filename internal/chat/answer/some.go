package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// someUnits asks which units are meant of which only the number was told, and offers
// those that are to be used first. Nothing is written.
func (t *turn) someUnits(i phrase.SomeUnits) (chat.Post, error) {
	units, err := t.standing()
	if err != nil {
		return chat.Post{}, err
	}
	only := kitchen.ShelfOnly{Container: i.Container, Culture: i.Culture}
	var of []kitchen.ShelfUnit
	for _, u := range only.Of(units) {
		if i.Run == 0 || u.Ref.Run == i.Run {
			of = append(of, u)
		}
	}
	shelf := kitchen.ShelfOf(of, t.arrived())
	var first []kitchen.ShelfUnit
	for _, part := range []kitchen.ShelfPart{kitchen.ShelfReady, kitchen.ShelfGrowing, kitchen.ShelfInoculated} {
		first = append(first, shelf.First(part)...)
	}
	view := wording.SomeView{Asked: i, There: len(first)}
	if len(first) >= i.Count {
		var meant phrase.Meant
		for _, u := range first[:i.Count] {
			view.Oldest = append(view.Oldest, u)
			if n := len(meant.Refs); n > 0 && meant.Refs[n-1].Run == u.Ref.Run {
				meant.Refs[n-1].Units = append(meant.Refs[n-1].Units, u.Ref.Unit)
				continue
			}
			meant.Refs = append(meant.Refs, u.Ref.Ref())
		}
		view.Say = phrase.TellUnits{Parts: []phrase.UnitsPart{{Of: meant, Entry: i.Entry}}}.String()
	}
	t.said = i.String()
	return wording.SomeUnits(view), nil
}
