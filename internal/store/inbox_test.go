package store_test

import (
	"errors"
	"fmt"
	"testing"

	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func TestTurnsAreFoundAgain(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	for i, kind := range []string{"plan", "kitchen", "plan", "thanks"} {
		storetest.Update(t, db, func(tx *store.Tx) error {
			id, fresh, err := tx.Claim(store.Event{Door: "console", Event: fmt.Sprint("e", i+1), At: morning, Arrived: morning})
			if err != nil || !fresh {
				return fmt.Errorf("claim: %v %w", fresh, err)
			}
			b := tx.Book(k.id)
			if err := b.SetTurn(store.Turn{ID: id, Room: k.room, Member: k.ana, Kind: kind, Said: fmt.Sprint("said ", i+1), Asked: "rye?"}); err != nil {
				return err
			}
			row, err := b.Queue(store.Parcel{Room: k.room, Rank: store.InTurn, Post: []byte(kind), Inbox: id, About: "run/1"}, morning)
			if err != nil {
				return err
			}
			return tx.MarkSent(row, fmt.Sprint("x", i+1), morning)
		})
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		for name, tt := range map[string]struct {
			want string
			find func() (store.Turn, error)
		}{
			"newest":       {"said 4", func() (store.Turn, error) { return b.LastTurn(k.room, k.ana) }},
			"newest plan":  {"said 3", func() (store.Turn, error) { return b.LastTurn(k.room, k.ana, "plan") }},
			"of two kinds": {"said 3", func() (store.Turn, error) { return b.LastTurn(k.room, k.ana, "kitchen", "plan") }},
			"of a post":    {"said 2", func() (store.Turn, error) { return b.TurnOfPost(k.room, "x2") }},
			"of an event":  {"said 1", func() (store.Turn, error) { return b.TurnOfEvent("console", "e1") }},
		} {
			got, err := tt.find()
			if err != nil || got.Said != tt.want || got.Asked != "rye?" || got.Member != k.ana || !got.At.Equal(morning) {
				t.Errorf("%s: %+v, %v, want %q", name, got, err, tt.want)
			}
		}
		if _, err := b.LastTurn(k.room, k.ana, "undo"); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("a kind that never was: %v", err)
		}
		return nil
	})
}
