package answer

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// arrive puts units on the shelf that no run made, under numbers of the runs' own
// series. Nothing is written before all of it can be so.
func (t *turn) arrive(i phrase.Arrive) (chat.Post, error) {
	entries, err := t.toArrive(i)
	var why kitchen.Refusal
	if errors.As(err, &why) {
		return t.nothingWritten(wording.NotArrived(why, t.arrived()))
	}
	if err != nil {
		return chat.Post{}, err
	}
	past, err := t.grownBefore()
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.ArrivedView{Now: t.arrived()}
	for n, e := range entries {
		load, err := t.putOnShelf(e, i.Loads[n])
		if err != nil {
			return chat.Post{}, err
		}
		first := load.All[0]
		told := wording.ArrivedLoad{Units: load, Place: i.Loads[n].Place, Undated: e.Since.IsZero()}
		told.First = kitchen.ShelfUnit{Unit: first, Begun: load.Begun, Cool: load.Cool, Arrived: true, Through: t.throughAt(first, past)}
		view.Loads = append(view.Loads, told)
	}
	if view.Unseen, err = t.tellOnce("arrived/unseen"); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.said, t.about = unitsKind, i.String(), view.Loads[0].Units.Run.Subject()
	return wording.Arrived(view), nil
}

// toArrive are the entries of what arrived, without their numbers: their cultures as
// the book knows them, and their dates settled.
func (t *turn) toArrive(i phrase.Arrive) ([]kitchen.Arrived, error) {
	cultures, err := t.culturesNow()
	if err != nil {
		return nil, err
	}
	var out []kitchen.Arrived
	for _, l := range i.Loads {
		e := l.Entry
		e.Room = int64(t.room.ID)
		if l.When != nil {
			if e.Since, err = t.past(l.When); err != nil {
				return nil, err
			}
			if next, ahead := t.nearerAhead(l.When, e.Since); ahead && t.now.Sub(e.Since) > longAgo {
				return nil, kitchen.InFuture{At: next, Told: t.m.At}
			}
		}
		if c, ok := cultures.Named(e.Culture, t.m.At); ok {
			e.Culture, e.Species = c.Name, cmp.Or(e.Species, c.Species)
		} else if species, ok := phrase.Species(e.Culture); ok && e.Species == "" {
			e.Species = species
		}
		if err := kitchen.CheckArrived(kitchen.Record{By: t.member.No, At: t.m.At, Written: t.m.Arrived, Entry: e}); err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	return out, nil
}

// longAgo is how old something can't be that is put on the shelf, when the same day of
// this year comes soon.
const longAgo = 300 * 24 * time.Hour

// putOnShelf writes a load that arrived, with how far it is and where it stands if
// that was said.
func (t *turn) putOnShelf(e kitchen.Arrived, told phrase.Arriving) (kitchen.Units, error) {
	no, err := t.arrivalNo()
	if err != nil {
		return kitchen.Units{}, err
	}
	e.Run = no
	if err := t.writeAt(no.Subject(), e, t.m.At); err != nil {
		return kitchen.Units{}, err
	}
	// The row, so that the next load gets the next number.
	if err := t.book.SaveRun(store.RunRow{No: no, Begun: t.m.At, Cook: t.member.No, State: store.EndedRun, Arrived: true}); err != nil {
		return kitchen.Units{}, err
	}
	load, err := t.load(no)
	if err != nil {
		return load, err
	}
	var all []kitchen.UnitNo
	for _, u := range load.All {
		all = append(all, u.Ref.Unit)
	}
	if told.Share > 0 {
		if err := t.writeAt(no.Subject(), kitchen.GrowthSeen{Units: all, Share: told.Share}, t.m.At); err != nil {
			return kitchen.Units{}, err
		}
	}
	if told.Place != "" {
		if err := t.writeAt(no.Subject(), kitchen.UnitsMoved{Units: all, Place: told.Place}, t.m.At); err != nil {
			return kitchen.Units{}, err
		}
	}
	return t.load(no)
}

// arrivalNo is the number of the next load that arrives. An edited message gives those
// again that it had given, since others may have told of these by now.
func (t *turn) arrivalNo() (kitchen.RunNo, error) {
	for _, no := range arrivedIn(t.replaced) {
		if _, err := t.load(no); errors.As(err, new(kitchen.NoSuchRun)) {
			return no, nil
		}
	}
	return t.book.NextRun()
}

// arrivedIn are the loads that entries brought, in the order of their numbers.
func arrivedIn(entries []store.Logged) []kitchen.RunNo {
	var out []kitchen.RunNo
	for _, e := range entries {
		if a, ok := e.Entry.(kitchen.Arrived); ok {
			out = append(out, a.Run)
		}
	}
	slices.Sort(out)
	return out
}
