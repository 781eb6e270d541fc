package ordeal

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// sound opens the book in a folder as the program does. No turn left half of what
// it had to write, every chain of entries holds, and what is derived from the entries is what they say.
func sound(ctx context.Context, folder string) error {
	if err := storetest.Contradiction(folder); err != nil {
		return err
	}
	db, err := store.Open(ctx, folder, store.Config{Readers: 1})
	if err != nil {
		return err
	}
	return errors.Join(agrees(ctx, db), db.Close())
}

// agrees holds what is derived from the entries against the entries.
func agrees(ctx context.Context, db *store.DB) error {
	return db.View(ctx, func(tx *store.Tx) error {
		all, err := tx.Collectives()
		for _, id := range all {
			book := tx.Book(id)
			for _, check := range []func(*store.Book) error{
				func(b *store.Book) error { return b.VerifyChain(ctx) }, membersAgree, roomsAgree, pingsAgree, runsAgree,
			} {
				if err := check(book); err != nil {
					return fmt.Errorf("collective %d: %w", id, err)
				}
			}
		}
		return err
	})
}

// standing lists the entries about a subject that count.
func standing[E kitchen.Entry](book *store.Book, subject string) ([]E, error) {
	records, err := book.Standing(subject)
	var found []E
	for _, r := range records {
		if e, ok := r.Entry.(E); ok {
			found = append(found, e)
		}
	}
	return found, err
}

// membersAgree folds who joined, who has which role and who was forgotten.
func membersAgree(book *store.Book) error {
	joined, err1 := standing[kitchen.MemberJoined](book, "members")
	given, err2 := standing[kitchen.RoleGiven](book, "members")
	forgotten, err3 := standing[kitchen.Forgotten](book, "members")
	all, err4 := book.Members()
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		return err
	}
	if len(all) != len(joined) {
		return fmt.Errorf("%d members, of whom %d joined", len(all), len(joined))
	}
	for _, m := range all {
		role := kitchen.Grower
		for _, g := range given {
			if g.Member == m.No {
				role = g.Role
			}
		}
		gone := slices.Contains(forgotten, kitchen.Forgotten{Member: m.No})
		if !slices.Contains(joined, kitchen.MemberJoined{Member: m.No}) || !gone && m.Role != role || gone != (m.Name == "") {
			return fmt.Errorf("member %d is not what the entries say: %s, forgotten %t", m.No, m.Role, m.Name == "")
		}
	}
	return nil
}

// roomsAgree folds which rooms joined. Private ones do without an entry.
func roomsAgree(book *store.Book) error {
	joined, err1 := standing[kitchen.RoomJoined](book, "members")
	all, err2 := book.Rooms()
	n := 0
	for _, r := range all {
		if r.Kind == store.PrivateRoom {
			continue
		}
		if n++; !slices.Contains(joined, kitchen.RoomJoined{Room: int64(r.ID)}) {
			return fmt.Errorf("room %d never joined", r.ID)
		}
	}
	if n != len(joined) {
		return fmt.Errorf("%d rooms, of which %d joined", n, len(joined))
	}
	return errors.Join(err1, err2)
}
