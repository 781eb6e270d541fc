package answer

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// observed reports whether a change of the kitchen is only what somebody saw there:
// that anybody may tell.
func observed(c kitchen.Entry) bool { return is[kitchen.RoomTemperature](c) }

// set changes the kitchen, which only a steward does but for what is observed. Every
// change is checked before the first is written.
func (t *turn) set(i phrase.Set) (chat.Post, error) {
	after := t.settings
	for _, c := range i.Changes {
		if t.member.Role != kitchen.Steward && !observed(c) {
			return chat.Post{}, kitchen.NotSteward{}
		}
		if err := check(after, c); err != nil {
			return chat.Post{}, err
		}
		after = after.With(c)
	}
	for _, c := range i.Changes {
		if err := t.write(kitchenSubject, c, t.text); err != nil {
			return chat.Post{}, err
		}
	}
	t.kind, t.said = setKind, i.String()
	return wording.Changed(i.Changes, after), t.reload() // told late, it may be no news
}

// check refuses a change that can't be so. Zones are the machine's to know.
func check(s kitchen.Settings, c kitchen.Change) error {
	if z, ok := c.(kitchen.ZoneIs); ok {
		if _, err := time.LoadLocation(z.Zone); err != nil || z.Zone == "" || z.Zone == "Local" {
			return kitchen.UnknownZone{Name: z.Zone}
		}
	}
	return s.Check(c)
}

// amend mends the setting said last: the same, with another number.
func (t *turn) amend(i phrase.Correct, last store.Turn) (chat.Post, error) {
	entries, err := t.book.EntriesOf(last.ID)
	if err != nil {
		return chat.Post{}, err
	}
	for _, e := range slices.Backward(entries) {
		c, ok := e.Entry.(kitchen.Change)
		if !ok || !counts(e) {
			continue
		}
		mended, ok := phrase.Amend(c, i)
		if !ok {
			continue
		}
		if t.member.Role != kitchen.Steward && !observed(c) {
			return chat.Post{}, kitchen.NotSteward{}
		}
		if err := check(t.settings, mended); err != nil {
			return chat.Post{}, err
		}
		if err := t.strikeOne(e); err != nil {
			return chat.Post{}, err
		}
		if err := t.reload(); err != nil {
			return chat.Post{}, err
		}
		return t.set(phrase.Set{Changes: []kitchen.Change{mended}})
	}
	t.kind, t.said = setKind, last.Said
	return wording.NothingChanged(), nil
}
