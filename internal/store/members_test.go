package store_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func TestMembers(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	storetest.Update(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		jo, err := b.AddMember("Ｊö", kitchen.Grower, morning)
		if err != nil {
			return err
		}
		if _, err := b.AddMember("ana", kitchen.Grower, morning); err != nil {
			return err
		}
		for name, want := range map[string]string{"JÖ": "[2]", "ANA": "[1 3]", "an": "[]", "": "[]"} {
			named, err := b.MembersNamed(name)
			if err != nil {
				return err
			}
			nos := []kitchen.MemberNo{}
			for _, m := range named {
				nos = append(nos, m.No)
			}
			if got := fmt.Sprint(nos); got != want {
				t.Errorf("named %q: %s, want %s", name, got, want)
			}
		}
		err = errors.Join(b.RenameMember(jo, "Jo"), b.SetRole(jo, kitchen.Steward), b.Leave(jo, morning.Add(time.Hour)))
		if err != nil {
			return err
		}
		m, err := b.Member(jo)
		if want := (store.Member{No: 2, Name: "Jo", Role: kitchen.Steward, Joined: morning, Left: morning.Add(time.Hour)}); m != want {
			t.Errorf("got %+v, want %+v", m, want)
		}
		if err := b.Return(jo); err != nil {
			return err
		}
		if m, _ := b.Member(jo); !m.Left.IsZero() {
			t.Errorf("came back and left at %v", m.Left)
		}
		if err := b.SetRole(99, kitchen.Steward); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("a role for nobody: %v", err)
		}
		return err
	})
}

func TestAccountsAndRooms(t *testing.T) {
	db := storetest.Open(t)
	k, other := found(t, db, "room"), found(t, db, "other")
	storetest.Update(t, db, func(tx *store.Tx) error {
		if err := tx.Book(other.id).LinkAccount(other.ana, store.Account{Door: "console", External: "ana room"}); err != nil {
			return err
		}
		seats, err := tx.Account("console", "ana room")
		if want := "[{1 1} {2 1}]"; fmt.Sprint(seats) != want {
			t.Errorf("seats %v, want %s", seats, want)
		}
		if _, err := tx.Room("console", "nowhere"); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("unclaimed room: %v", err)
		}
		for range 2 { // the notice comes twice, in any order
			if err := tx.MoveRoom("console", "room", "-100"); err != nil {
				return err
			}
		}
		r, err2 := tx.Room("console", "-100")
		if r.ID != k.room || r.Collective != k.id {
			t.Errorf("moved room is %+v", r)
		}
		_, taken := tx.Book(k.id).AddRoom(store.RoomRow{Door: "console", Address: "other", Kind: store.FurtherRoom, Joined: morning})
		if taken == nil {
			t.Error("took the room of another collective")
		}
		return errors.Join(err, err2)
	})
}

func TestForgetMember(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	var goodbye store.RowID
	storetest.Update(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		private, err := b.AddRoom(store.RoomRow{Door: "console", Address: "ana's own", Kind: store.PrivateRoom, Member: k.ana, Joined: morning})
		if err != nil {
			return err
		}
		turn, _, err := tx.Claim(store.Event{Door: "console", Event: "1", Collective: k.id, Room: k.room, Member: k.ana, At: morning, Arrived: morning})
		if err != nil {
			return err
		}
		_, err = b.Append(store.Line{By: k.ana, Room: k.room, Inbox: turn, At: morning, Written: morning, Subject: "kitchen", Entry: kitchen.StepIs{Step: 10}, Said: "ana typed"})
		if err != nil {
			return err
		}
		answer, err := b.Queue(store.Parcel{Room: k.room, Rank: store.InTurn, Post: []byte("for ana"), Inbox: turn}, morning)
		if err != nil {
			return err
		}
		goodbye, err = b.Queue(store.Parcel{Room: private, Rank: store.InTurn, Post: []byte("goodbye"), Inbox: turn}, morning)
		return errors.Join(err, tx.MarkSent(answer, "x1", morning),
			b.SetTurn(store.Turn{ID: turn, Room: k.room, Member: k.ana, Kind: "kitchen", Said: "ana said", Asked: "ana?"}),
			b.ForgetMember(k.ana, morning))
	})
	storetest.View(t, db, func(tx *store.Tx) error {
		parcels, err := tx.NextParcels("console", morning, 10)
		if len(parcels) != 1 || parcels[0].Address != "ana's own" || string(parcels[0].Post) != "goodbye" {
			t.Errorf("the goodbye is lost: %+v", parcels)
		}
		return err
	})
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.MarkSent(goodbye, "x2", morning) })
	storetest.View(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		members, err1 := b.Members()
		rooms, err2 := b.Rooms()
		entries, err3 := b.Entries("kitchen")
		turn, err4 := b.Turn(1)
		rows, err5 := b.RowsOf(1)
		seats, err6 := tx.Account("console", "ana room")
		left := strings.ToLower(fmt.Sprintf("%+v %+v %+v %+v %s %v", members, rooms, entries, turn, rows[0].Post, seats))
		if strings.Contains(left, "ana") {
			t.Errorf("something is left of her:\n%s", left)
		}
		if len(entries) != 1 || entries[0].By != k.ana {
			t.Errorf("entries %+v, want hers", entries)
		}
		return errors.Join(err1, err2, err3, err4, err5, err6)
	})
}

func TestCodes(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	take := func(hash string, now time.Time) (c store.Code, err error) {
		err = db.Update(t.Context(), func(tx *store.Tx) (err error) {
			c, err = tx.TakeCode([]byte(hash), now)
			return err
		})
		return c, err
	}
	storetest.Update(t, db, func(tx *store.Tx) error {
		return errors.Join(
			tx.PutCode([]byte("claim"), store.Code{Purpose: store.Claiming, Expires: morning.Add(time.Hour)}),
			tx.PutCode([]byte("join"), store.Code{Purpose: store.Joining, Collective: k.id, Expires: morning.Add(time.Hour)}),
			tx.PutCode([]byte("old"), store.Code{Purpose: store.Joining, Collective: k.id, Expires: morning}),
		)
	})
	if c, err := take("join", morning); err != nil || c.Purpose != store.Joining || c.Collective != k.id {
		t.Errorf("join: %+v, %v", c, err)
	}
	for name, hash := range map[string]string{"used": "join", "expired": "old", "unknown": "guess"} {
		if c, err := take(hash, morning); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("%s code: %+v, %v", name, c, err)
		}
	}
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.DropCodes(store.Claiming) })
	if c, err := take("claim", morning); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("dropped code: %+v, %v", c, err)
	}
}

func TestCodeTriesCountPerRoomAndHour(t *testing.T) {
	db := storetest.Open(t)
	storetest.Update(t, db, func(tx *store.Tx) error {
		for i, want := range []int{1, 2, 3} {
			now := morning.Add(time.Duration(i) * 10 * time.Minute)
			if err := tx.MissCode("console", "room", now); err != nil {
				return err
			}
			if got, err := tx.CodeTries("console", "room", now); got != want || err != nil {
				t.Errorf("%d tries, %v, want %d", got, err, want)
			}
		}
		for name, at := range map[string]time.Time{"room": morning.Add(time.Hour), "another": morning} {
			if got, err := tx.CodeTries("console", name, at); got != 0 || err != nil {
				t.Errorf("%s at %v: %d tries, %v", name, at, got, err)
			}
		}
		return nil
	})
}

func TestNotes(t *testing.T) {
	db := storetest.Open(t)
	storetest.Update(t, db, func(tx *store.Tx) error {
		if _, err := tx.Note("matrix", "since"); !errors.Is(err, store.ErrNotFound) {
			t.Errorf("no note: %v", err)
		}
		for _, v := range []string{"s1", "s2"} {
			if err := tx.SetNote("matrix", "since", []byte(v)); err != nil {
				return err
			}
		}
		v, err := tx.Note("matrix", "since")
		if string(v) != "s2" {
			t.Errorf("note %q", v)
		}
		return err
	})
}
