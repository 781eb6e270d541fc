package store_test

import (
	"testing"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

var morning = time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)

// kitchenOf is a collective with one member in one room.
type kitchenOf struct {
	id   store.CollectiveID
	room store.RoomID
	ana  kitchen.MemberNo
}

func found(t testing.TB, db *store.DB, address string) (k kitchenOf) {
	t.Helper()
	storetest.Update(t, db, func(tx *store.Tx) (err error) {
		if k.id, err = tx.NewCollective("growers "+address, morning); err != nil {
			return err
		}
		b := tx.Book(k.id)
		if k.ana, err = b.AddMember("Ana", kitchen.Steward, morning); err != nil {
			return err
		}
		if err := b.LinkAccount(k.ana, store.Account{Door: "console", External: "ana " + address}); err != nil {
			return err
		}
		k.room, err = b.AddRoom(store.RoomRow{Door: "console", Address: address, Kind: store.HomeRoom, Joined: morning})
		return err
	})
	return k
}

func TestTurn(t *testing.T) {
	db := storetest.Open(t)
	k := found(t, db, "room")
	turn := func(tx *store.Tx) error {
		id, fresh, err := tx.Claim(store.Event{Door: "console", Event: "1", Collective: k.id, Room: k.room, Member: k.ana, At: morning, Arrived: morning})
		if err != nil || !fresh {
			return err
		}
		b := tx.Book(k.id)
		_, err = b.Append(store.Line{
			By: k.ana, Room: k.room, Inbox: id, At: morning, Written: morning, Subject: "kitchen",
			Entry: kitchen.Elevation{Height: 1600}, Said: "we're at 1600 m",
		})
		if err != nil {
			return err
		}
		if err := b.SetTurn(store.Turn{ID: id, Room: k.room, Member: k.ana, Kind: "kitchen", Said: "at 1600 m"}); err != nil {
			return err
		}
		if err := b.Reconcile("start/", []kitchen.Ping{{Key: "start/1", Due: morning.Add(time.Hour), Kind: kitchen.StartNow, Loudness: kitchen.DuePing, To: k.ana}}, morning); err != nil {
			return err
		}
		_, err = b.Queue(store.Parcel{Room: k.room, Rank: store.InTurn, Post: []byte("noted"), Inbox: id}, morning)
		return err
	}
	storetest.Update(t, db, turn)
	storetest.Update(t, db, turn)
	storetest.View(t, db, func(tx *store.Tx) error {
		b := tx.Book(k.id)
		records, err := b.Standing("kitchen")
		if err != nil {
			return err
		}
		if len(records) != 1 || records[0].Entry != (kitchen.Elevation{Height: 1600}) {
			t.Errorf("records %v, want one elevation of 1600 m", records)
		}
		parcels, err := tx.NextParcels("console", morning, 10)
		if err != nil {
			return err
		}
		if len(parcels) != 1 || string(parcels[0].Post) != "noted" {
			t.Errorf("parcels %v, want one", parcels)
		}
		due, ok, err := tx.NextDue()
		if err != nil {
			return err
		}
		if !ok || !due.Equal(morning.Add(time.Hour)) {
			t.Errorf("next due %v %v", due, ok)
		}
		return b.VerifyChain(t.Context())
	})
}
