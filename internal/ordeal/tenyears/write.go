package tenyears

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// writer brings a life into a book.
type writer struct {
	*life
	db      *store.DB
	book    Book
	changes []kitchen.Record // of the kitchen
	post    []byte
}

// found makes the collective, its room and its people.
func (w *writer) found(ctx context.Context) error {
	return w.db.Update(ctx, func(tx *store.Tx) (err error) {
		if w.book.Collective, err = tx.NewCollective("The Ten", w.begun); err != nil {
			return err
		}
		b := tx.Book(w.book.Collective)
		w.book.Room, err = b.AddRoom(store.RoomRow{Door: string(chat.Console), Address: "kitchen", Kind: store.HomeRoom, Joined: w.begun})
		w.room = w.book.Room
		if err != nil {
			return err
		}
		for i, name := range People() {
			role := kitchen.Grower
			if i == 0 {
				role = kitchen.Steward
			}
			no, err := b.AddMember(name, role, w.begun)
			if err != nil {
				return err
			}
			if err := b.LinkAccount(no, store.Account{Door: string(chat.Console), External: strings.ToLower(name)}); err != nil {
				return err
			}
		}
		return nil
	})
}

// batch is how many entries a transaction takes.
const batch = 10_000

// write appends all that was told by the end, in the order in which it was written.
func (w *writer) write(ctx context.Context) (err error) {
	if w.post, err = answer().Encode(); err != nil {
		return err
	}
	w.life.told = slices.DeleteFunc(w.life.told, func(t *told) bool { return t.written.After(w.size.End) || t.at.Before(w.begun) })
	slices.SortStableFunc(w.life.told, func(a, b *told) int { return a.written.Compare(b.written) })
	for part := range slices.Chunk(w.life.told, batch) {
		err := w.db.Update(ctx, func(tx *store.Tx) error {
			for _, t := range part {
				if err := w.turn(tx, t); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	w.book.Entries = len(w.life.told)
	return nil
}

// answer stands for all that was answered.
func answer() chat.Post {
	return chat.Post{Blocks: []chat.Block{chat.P("Noted, ", chat.Bold("long ago"), ": what was said then, and the next step, as it was a line or two.")}}
}

// turn writes what a message leaves behind: its mark, its entry and the answer.
func (w *writer) turn(tx *store.Tx, t *told) error {
	w.number(t)
	b := tx.Book(w.book.Collective)
	name := fmt.Sprint("long ago ", w.book.Entries)
	w.book.Entries++
	id, _, err := tx.Claim(store.Event{
		Door: string(chat.Console), Event: name, Collective: w.book.Collective, Room: w.room, Member: t.by, At: t.written, Arrived: t.written,
	})
	if err != nil {
		return err
	}
	line := store.Line{By: t.by, Room: w.room, Inbox: id, At: t.at, Written: t.written, Subject: t.subject, Entry: t.entry, Said: t.said}
	if t.no, err = b.Append(line); err != nil {
		return err
	}
	w.keep(t)
	row, err := b.Queue(store.Parcel{Room: w.room, Rank: store.InTurn, Post: w.post, Inbox: id, About: t.subject}, t.written)
	if err != nil {
		return err
	}
	return errors.Join(
		tx.MarkSent(row, name, t.written),
		b.SetTurn(store.Turn{ID: id, Room: w.room, Member: t.by, Kind: "tell", Said: t.said}),
	)
}

// number puts the number of the entry that it is about into an entry.
func (w *writer) number(t *told) {
	if t.about == nil {
		return
	}
	if _, ok := t.entry.(kitchen.Struck); ok {
		t.entry = kitchen.Struck{No: t.about.no}
	}
	if _, ok := t.entry.(kitchen.StartMet); ok {
		t.entry = kitchen.StartMet{No: t.about.no}
	}
	if _, ok := t.entry.(kitchen.BookingReleased); ok {
		t.entry = kitchen.BookingReleased{No: t.about.no}
	}
}

// keep remembers what is folded at the end.
func (w *writer) keep(t *told) {
	r := kitchen.Record{No: t.no, By: t.by, At: t.at, Written: t.written, Entry: t.entry}
	switch {
	case t.struck:
	case t.subject == kitchenSubject:
		w.changes = append(w.changes, r)
	case t.load != nil:
		t.load.records = append(t.load.records, r)
	}
}

// folded is a load as its entries tell of it.
type folded struct {
	run   kitchen.Run // of a run
	units kitchen.Units
	err   error
}

func (ld *load) fold(settings func(time.Time) kitchen.Settings) (f folded) {
	if ld.arrived != nil {
		f.units, f.err = kitchen.FoldArrived(ld.records)
		return f
	}
	f.run, f.err = kitchen.FoldRun(ld.records, settings)
	f.units = kitchen.FoldUnits(f.run, ld.records)
	return f
}

// derive folds every load and saves its rows. Most of the time goes into forecasts of
// how loads cool, so all processors fold.
func (w *writer) derive(ctx context.Context) error {
	settings := kitchen.SettingsAt(w.changes)
	loads := slices.DeleteFunc(slices.Clone(w.loads), func(ld *load) bool { return len(ld.records) == 0 })
	for part := range slices.Chunk(loads, batch/10) {
		all := make([]folded, len(part))
		var wg sync.WaitGroup
		workers := runtime.GOMAXPROCS(0)
		for n := range workers {
			wg.Go(func() {
				for i := n; i < len(part); i += workers {
					all[i] = part[i].fold(settings)
				}
			})
		}
		wg.Wait()
		err := w.db.Update(ctx, func(tx *store.Tx) error {
			for i, ld := range part {
				if err := w.save(tx.Book(w.book.Collective), ld, all[i]); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// save writes the rows of a load. A run is open until it is cool or, where nobody said
// that, until nothing of it waits for a culture.
func (w *writer) save(b *store.Book, ld *load, f folded) error {
	if f.err != nil {
		return fmt.Errorf("load %d: %w", ld.no, f.err)
	}
	row := store.RunRow{No: ld.no, Begun: ld.begun, State: store.EndedRun, Arrived: true}
	if ld.arrived == nil {
		row = store.RunRow{No: ld.no, Begun: f.run.Begun, Cook: f.run.Cook, Cooker: f.run.Cooker, State: store.EndedRun}
		if !f.run.Stage.Over() && !f.units.Settled() {
			row.State = store.OpenRun
		}
		if f.run.Stage == kitchen.StageCool {
			w.book.Run = ld.no
		}
	}
	w.count(ld, f)
	return errors.Join(b.SaveRun(row), b.SaveUnits(f.units))
}

// count notes what there is to ask of the book.
func (w *writer) count(ld *load, f folded) {
	units := f.units
	w.book.Loads++
	w.book.Strays += len(f.run.Strays)
	w.book.Units += len(units.All)
	w.book.Standing += len(units.Standing())
	w.book.Strays += len(units.Strays)
	if w.size.End.Sub(ld.begun) > 40*day {
		return
	}
	for _, u := range units.All {
		if u.From != (kitchen.UnitRef{}) {
			w.book.Parent = u.From
		}
	}
	w.book.Lot = lotAt(int(w.size.End.AddDate(0, 0, -20).Sub(w.begun) / day))
	most := 0
	for _, c := range w.cultures[max(0, len(w.cultures)-12):] {
		if c.units > most {
			most, w.book.Culture = c.units, c.Name
		}
	}
}
