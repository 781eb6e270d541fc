package store_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// side is one of two collectives and every number, name and key that is in it.
// All its texts hold its mark.
type side struct {
	mark    string
	id      store.CollectiveID
	members []kitchen.MemberNo
	rooms   []store.RoomID
	turns   []store.InboxID
	rows    []store.RowID
	entries []kitchen.EntryNo
	keys    []string
	photos  []store.PhotoID
}

// grow adds something at random.
func (s *side) grow(rt *rapid.T, tx *store.Tx) error {
	b := tx.Book(s.id)
	n := len(s.turns)
	event := fmt.Sprintf("%s event %d", s.mark, n)
	room := rapid.SampledFrom(s.rooms).Draw(rt, "room")
	member := rapid.SampledFrom(s.members).Draw(rt, "member")
	turn, _, err := tx.Claim(store.Event{Door: "console", Event: event, Collective: s.id, Room: room, Member: member, At: morning, Arrived: morning})
	if err != nil {
		return err
	}
	s.turns = append(s.turns, turn)
	no, err := b.Append(store.Line{
		By: member, Room: room, Inbox: turn, At: morning, Written: morning, Subject: "kitchen",
		Entry: kitchen.ZoneIs{Zone: s.mark}, Said: s.mark,
	})
	if err != nil {
		return err
	}
	s.entries = append(s.entries, no)
	row, err := b.Queue(store.Parcel{Room: room, Rank: store.InTurn, Post: []byte(s.mark), Slot: "board", Inbox: turn, About: s.mark, ReplyTo: event}, morning)
	if err != nil {
		return err
	}
	s.rows = append(s.rows, row)
	if rapid.Bool().Draw(rt, "sent") {
		if err := tx.MarkSent(row, s.post(n), morning); err != nil {
			return err
		}
	}
	key := fmt.Sprintf("start/%d", rapid.IntRange(0, 3).Draw(rt, "key"))
	s.keys = append(s.keys, key)
	photo, err := b.SavePhoto(store.Photo{Turn: turn, Name: s.mark, Media: "image/png", Bytes: []byte(s.mark)})
	if err != nil {
		return err
	}
	s.photos = append(s.photos, photo)
	ping := ping(key, morning)
	ping.About, ping.To, ping.Room = s.mark, member, int64(room)
	units := kitchen.Units{Run: 1, Begun: morning, All: []kitchen.Unit{s.unit()}}
	return errors.Join(
		b.SaveRun(store.RunRow{No: 1, Begun: morning, Cook: member, Cooker: s.mark, Turn: turn, State: store.OpenRun}),
		b.SaveCooled(kitchen.Cooled{Run: 1, Cooker: s.mark, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: 1}, Past: cooling.Past{Spread: 0.1}}),
		b.SaveUnits(units),
		b.Reconcile(key, []kitchen.Ping{ping}, morning),
		b.SetTurn(store.Turn{ID: turn, Room: room, Member: member, Kind: "plan", Said: s.mark, Asked: s.mark}),
	)
}

// unit is one that stands, all of whose words hold the mark.
func (s *side) unit() kitchen.Unit {
	return kitchen.Unit{
		Ref: kitchen.UnitRef{Run: 1, Unit: 1}, Name: s.mark, State: kitchen.UnitGrown, Since: morning, Cultured: true, Inoculated: morning,
		Culture: "plate 7", Species: s.mark, From: kitchen.UnitRef{Run: 1, Unit: 2}, Tags: []string{"fast"},
		Lots:  []kitchen.UnitLot{{What: kitchen.GrainLot, Name: "rye lot 3"}},
		Steps: []kitchen.UnitStep{{Kind: kitchen.SaidGrownThrough, At: morning.Add(time.Hour), Seen: true}},
	}
}

func errOf[T any](_ T, err error) error { return err }

// post is the platform's identifier of the post of a turn; the two sides use the
// same ones.
func (s *side) post(n int) string { return fmt.Sprintf("post %d", n) }

func (s *side) settle(tx *store.Tx, rooms, members int) (err error) {
	if s.id, err = tx.NewCollective(s.mark, morning); err != nil {
		return err
	}
	b := tx.Book(s.id)
	for i := range members {
		no, err := b.AddMember(s.mark, kitchen.Grower, morning)
		if err != nil {
			return err
		}
		s.members = append(s.members, no)
		if err := b.LinkAccount(no, store.Account{Door: "console", External: fmt.Sprintf("%s %d", s.mark, i)}); err != nil {
			return err
		}
	}
	for i := range rooms {
		r := store.RoomRow{Door: "console", Address: fmt.Sprintf("%s room %d", s.mark, i), Kind: store.HomeRoom, Joined: morning}
		if i == 1 {
			r.Kind, r.Member = store.PrivateRoom, s.members[0]
		}
		id, err := b.AddRoom(r)
		if err != nil {
			return err
		}
		s.rooms = append(s.rooms, id)
	}
	return nil
}

// read calls every reading method of a book with everything that is in a side,
// and prints all that it gives.
func read(b *store.Book, s *side) map[string]string {
	out := map[string]string{}
	say := func(method string, v any, err error) { out[method] += fmt.Sprintf("%q %q\n", v, fmt.Sprint(err)) }
	all := func(method string) func(any, error) { return func(v any, err error) { say(method, v, err) } }
	wrap := func(method string, f func() (any, error)) { v, err := f(); all(method)(v, err) }
	wrap("Name", func() (any, error) { return b.Name() })
	wrap("Members", func() (any, error) { return b.Members() })
	wrap("MembersNamed", func() (any, error) { return b.MembersNamed(s.mark) })
	wrap("Rooms", func() (any, error) { return b.Rooms() })
	wrap("HomeRoom", func() (any, error) { return b.HomeRoom() })
	wrap("LastNo", func() (any, error) { return b.LastNo() })
	wrap("Entries", func() (any, error) { return b.Entries("kitchen") })
	wrap("Standing", func() (any, error) { return b.Standing("kitchen") })
	wrap("EntriesAfter", func() (any, error) { return b.EntriesAfter(0, 1000) })
	wrap("Latest", func() (any, error) { return b.Latest("kitchen", 100) })
	wrap("Pings", func() (any, error) { return b.Pings("start/") })
	wrap("WaitingPings", func() (any, error) { return b.WaitingPings("start/") })
	wrap("OpenRuns", func() (any, error) { return b.OpenRuns() })
	wrap("LastRuns", func() (any, error) { return b.LastRuns(100) })
	wrap("AnyLoad", func() (any, error) { return b.AnyLoad() })
	wrap("ArrivedSince", func() (any, error) { return b.ArrivedSince(time.Time{}) })
	wrap("CooledBefore", func() (any, error) { return b.CooledBefore(100, 100) })
	refs := []kitchen.UnitRef{{Run: 1, Unit: 1}, {Run: 1, Unit: 2}}
	wrap("StandingUnits", func() (any, error) { return b.StandingUnits() })
	wrap("UnitsOfLoad", func() (any, error) { return b.UnitsOfLoad(1) })
	wrap("UnitRows", func() (any, error) { return b.UnitRows(refs) })
	wrap("UnitsTakenOf", func() (any, error) { return b.UnitsTakenOf(refs) })
	wrap("UnitsOfCultures", func() (any, error) { return b.UnitsOfCultures([]string{"Plate 7"}, 1000) })
	wrap("UnitsOfLot", func() (any, error) { return b.UnitsOfLot(kitchen.GrainLot, "Rye lot 3", 1000) })
	wrap("UnitsTagged", func() (any, error) { return b.UnitsTagged("Fast", 1000) })
	wrap("GrownUnits", func() (any, error) { return b.GrownUnits(100) })
	wrap("UnitsBehind", func() (any, error) { return b.UnitsBehind(100) })
	wrap("PhotosOf", func() (any, error) { return b.PhotosOf(s.turns...) })
	for _, id := range s.photos {
		wrap("PhotoBytes", func() (any, error) { return b.PhotoBytes(id) })
	}
	wrap("NextRun", func() (any, error) { return b.NextRun() })
	wrap("Run", func() (any, error) { return b.Run(1) })
	wrap("VerifyChain", func() (any, error) { return nil, b.VerifyChain(context.Background()) })
	for i, no := range s.members {
		wrap("Member", func() (any, error) { return b.Member(no) })
		wrap("MemberByAccount", func() (any, error) { return b.MemberByAccount("console", fmt.Sprintf("%s %d", s.mark, i)) })
		wrap("AccountsOf", func() (any, error) { return b.AccountsOf(no) })
		wrap("PrivateRoom", func() (any, error) { return b.PrivateRoom(no) })
		wrap("LastRunsOf", func() (any, error) { return b.LastRunsOf(no, 100) })
	}
	for _, room := range s.rooms {
		wrap("Room", func() (any, error) { return b.Room(room) })
		wrap("LastTurnIn", func() (any, error) { return b.LastTurnIn(room, "plan") })
		for _, no := range s.members {
			wrap("LastEntryOf", func() (any, error) { return b.LastEntryOf(no, room, 0) })
			wrap("LastTurn", func() (any, error) { return b.LastTurn(room, no, "plan") })
			wrap("Turns", func() (any, error) { return b.Turns(room, no, 100) })
		}
		for n := range s.turns {
			wrap("RowOfPost", func() (any, error) { return b.RowOfPost(room, s.post(n)) })
			wrap("TurnOfPost", func() (any, error) { return b.TurnOfPost(room, s.post(n)) })
		}
	}
	for n, turn := range s.turns {
		wrap("Turn", func() (any, error) { return b.Turn(turn) })
		wrap("TurnOfEvent", func() (any, error) { return b.TurnOfEvent("console", fmt.Sprintf("%s event %d", s.mark, n)) })
		wrap("RunsOfPlan", func() (any, error) { return b.RunsOfPlan(turn) })
		wrap("EntriesOf", func() (any, error) { return b.EntriesOf(turn) })
		wrap("RowsOf", func() (any, error) { return b.RowsOf(turn) })
		wrap("Row", func() (any, error) { return b.Row(s.rows[n]) })
		wrap("Entry", func() (any, error) { return b.Entry(s.entries[n]) })
	}
	return out
}

// write calls every writing method of a book that takes a number or key with
// those of a side. Some fail; none may reach the side. Each runs in a transaction
// of its own, since one that fails leaves nothing.
func write(db *store.DB, own store.CollectiveID, s *side) (methods []string) {
	try := func(method string, f func(*store.Book) error) {
		methods = append(methods, method)
		// Whether it fails is not the question here.
		_ = db.Update(context.Background(), func(tx *store.Tx) error { return f(tx.Book(own)) })
	}
	room, member, turn, row := s.rooms[0], s.members[len(s.members)-1], s.turns[0], s.rows[0]
	try("Append", func(b *store.Book) error {
		_, err := b.Append(store.Line{Room: room, Inbox: turn, At: morning, Written: morning, Subject: "kitchen", Entry: kitchen.Struck{No: s.entries[0]}})
		return err
	})
	try("SetTurn", func(b *store.Book) error { return b.SetTurn(store.Turn{ID: turn, Said: "broken in"}) })
	try("Queue", func(b *store.Book) error {
		_, err := b.Queue(store.Parcel{Room: room, Rank: store.InTurn, Post: []byte("broken in")}, morning)
		return err
	})
	try("Queue", func(b *store.Book) error {
		_, err := b.Queue(store.Parcel{Room: room, Rank: store.InTurn, Post: []byte("broken in"), Replaces: row}, morning)
		return err
	})
	for _, key := range s.keys {
		try("MarkFired", func(b *store.Book) error { return b.MarkFired(key, morning) })
	}
	try("SaveRun", func(b *store.Book) error {
		return b.SaveRun(store.RunRow{No: 1, Begun: morning, Cook: member, Cooker: "broken in", Turn: turn, State: store.OpenRun})
	})
	try("SaveCooled", func(b *store.Book) error {
		return b.SaveCooled(kitchen.Cooled{Run: 1, Cooker: "broken in", Container: kitchen.Container{Vessel: kitchen.Jar, Volume: 1}, Past: cooling.Past{Spread: 0.1}})
	})
	try("DropCooled", func(b *store.Book) error { return b.DropCooled(1) })
	try("SaveUnits", func(b *store.Book) error { return b.SaveUnits(kitchen.Units{Run: 1, Begun: morning}) })
	try("DropUnits", func(b *store.Book) error { return b.DropUnits(1) })
	try("SavePhoto", func(b *store.Book) error { return errOf(b.SavePhoto(store.Photo{Turn: turn, Name: "broken in"})) })
	try("DropPhotos", func(b *store.Book) error { return b.DropPhotos(turn) })
	try("Reconcile", func(b *store.Book) error { return b.Reconcile("start/", nil, morning) })
	try("CloseRoom", func(b *store.Book) error { return b.CloseRoom(room, morning) })
	try("AddRoom", func(b *store.Book) error {
		_, err := b.AddRoom(store.RoomRow{Door: "console", Address: s.mark + " room 0", Kind: store.FurtherRoom, Joined: morning})
		return err
	})
	try("LinkAccount", func(b *store.Book) error {
		return b.LinkAccount(1, store.Account{Door: "console", External: s.mark + " 0"})
	})
	try("RenameMember", func(b *store.Book) error { return b.RenameMember(member, "broken in") })
	try("SetRole", func(b *store.Book) error { return b.SetRole(member, kitchen.Steward) })
	try("Leave", func(b *store.Book) error { return b.Leave(member, morning) })
	try("Return", func(b *store.Book) error { return b.Return(member) })
	try("Rename", func(b *store.Book) error { return b.Rename("broken in") })
	try("AddMember", func(b *store.Book) error {
		_, err := b.AddMember(s.mark+"'s guest", kitchen.Grower, morning)
		return err
	})
	try("ForgetMember", func(b *store.Book) error { return b.ForgetMember(member, morning) })
	return methods
}

// sometimesEmpty reports whether a method may give nothing of a side's own: a
// number alone, or what not every side has.
func sometimesEmpty(method string) bool {
	switch method {
	case "LastNo", "NextRun", "AnyLoad", "ArrivedSince", "UnitsBehind", "VerifyChain", "PrivateRoom", "LastEntryOf", "LastTurn", "LastTurnIn", "LastRunsOf", "Turns":
		return true
	}
	return strings.HasSuffix(method, "OfPost") || strings.HasSuffix(method, "OfPlan")
}

func TestCollectivesAreApart(t *testing.T) {
	db := storetest.Open(t)
	round := 0
	rapid.Check(t, func(rt *rapid.T) {
		round++
		ours, theirs := &side{mark: fmt.Sprintf("ours%d", round)}, &side{mark: fmt.Sprintf("theirs%d", round)}
		err := db.Update(context.Background(), func(tx *store.Tx) error {
			for _, s := range []*side{ours, theirs} {
				if err := s.settle(tx, rapid.IntRange(1, 3).Draw(rt, "rooms"), rapid.IntRange(1, 3).Draw(rt, "members")); err != nil {
					return err
				}
			}
			for range rapid.IntRange(0, 8).Draw(rt, "turns") {
				if err := rapid.SampledFrom([]*side{ours, theirs}).Draw(rt, "side").grow(rt, tx); err != nil {
					return err
				}
			}
			return errors.Join(ours.grow(rt, tx), theirs.grow(rt, tx))
		})
		if err != nil {
			rt.Fatal(err)
		}
		before := look(rt, db, theirs.id, theirs)
		for method, got := range look(rt, db, ours.id, theirs) {
			if strings.Contains(got, theirs.mark) {
				rt.Fatalf("%s gives away what is theirs:\n%s", method, got)
			}
			if !strings.Contains(before[method], theirs.mark) && !sometimesEmpty(method) {
				rt.Fatalf("%s gives nothing of their own:\n%s", method, before[method])
			}
		}
		write(db, ours.id, theirs)
		if after := look(rt, db, theirs.id, theirs); !reflect.DeepEqual(after, before) {
			for method := range after {
				if after[method] != before[method] {
					rt.Fatalf("%s: before\n%safter\n%s", method, before[method], after[method])
				}
			}
		}
	})
}

func look(rt *rapid.T, db *store.DB, as store.CollectiveID, at *side) (out map[string]string) {
	err := db.View(context.Background(), func(tx *store.Tx) error {
		out = read(tx.Book(as), at)
		return nil
	})
	if err != nil {
		rt.Fatal(err)
	}
	return out
}

// TestEveryMethodIsTried fails when a book gets a method that the property above
// doesn't call.
func TestEveryMethodIsTried(t *testing.T) {
	db := storetest.Open(t)
	s := &side{mark: "s"}
	tried := map[string]bool{"Collective": true}
	rapid.Check(t, func(rt *rapid.T) {
		if s.id != 0 {
			return
		}
		err := db.Update(context.Background(), func(tx *store.Tx) error { return errors.Join(s.settle(tx, 2, 2), s.grow(rt, tx)) })
		if err != nil {
			rt.Fatal(err)
		}
		for method := range look(rt, db, s.id, s) {
			tried[method] = true
		}
	})
	for _, method := range write(db, s.id, s) {
		tried[method] = true
	}
	for i, typ := 0, reflect.TypeFor[*store.Book](); i < typ.NumMethod(); i++ {
		if name := typ.Method(i).Name; !tried[name] {
			t.Errorf("(*Book).%s is tried by neither read nor write", name)
		}
	}
}
