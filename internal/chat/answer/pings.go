package answer

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// reconcile makes the pings equal to what the state wants, for everything that
// this turn has written about.
func (t *turn) reconcile() error {
	if t.wrote[kitchen.BookingsSubject] || t.wrote[kitchenSubject] {
		if err := t.reconcileBookings(); err != nil {
			return err
		}
		if err := t.touchOpen(); err != nil {
			return err
		}
	}
	if t.wrote[startSubject] || t.wrote[kitchenSubject] {
		if err := t.reconcileStarts(); err != nil {
			return err
		}
	}
	if t.wrote[kitchen.GearSubject] || t.wrote[kitchenSubject] {
		if err := t.reconcileGear(); err != nil {
			return err
		}
	}
	runs := len(t.touched) > 0
	if err := t.saveTaught(); err != nil {
		return err
	}
	if runs || t.wrote[kitchenSubject] {
		return t.a.wantDigest(t.book, t.settings, t.m.Arrived)
	}
	return nil
}

// touchOpen has the pings of all open runs worked out anew, and of those over for which
// one still waits: a setting or a booking may move them. What units want is moved by few
// settings: then it is made equal for all loads of which units wait or grow.
func (t *turn) touchOpen() error {
	rows, err := t.book.OpenRuns()
	if err != nil {
		return err
	}
	for _, r := range rows {
		t.touched[r.No] = true
	}
	waiting, err := t.book.WaitingPings(kitchen.RunPrefix)
	if err != nil {
		return err
	}
	heeding := map[kitchen.RunNo]bool{}
	for _, p := range waiting {
		if no, ok := runOf(p.Key); ok {
			heeding[no] = true
			t.touched[no] = t.touched[no] || !ofUnits(p.Kind)
		}
	}
	if !t.settings.MovesUnits(t.before) {
		return nil
	}
	return t.heed(heeding)
}

func (t *turn) reconcileBookings() error {
	bookings, err := t.bookings()
	if err != nil {
		return err
	}
	var want []kitchen.Ping
	for _, b := range bookings {
		want = append(want, b.Wants()...)
	}
	return t.wantPings(kitchen.BookingsPrefix, want)
}

func (t *turn) reconcileGear() error {
	gear, err := t.gear()
	if err != nil {
		return err
	}
	var want []kitchen.Ping
	for _, g := range gear {
		k, _ := t.settings.CookerNamed(g.Cooker)
		want = append(want, g.Wants(k)...)
	}
	return t.wantPings(kitchen.GearPrefix, want)
}

// batchWithin is how near two pings to the same person may lie to become one
// post.
const batchWithin = time.Minute

// Ping queues the post of a ping that is due, within the transaction that marks
// it as fired. Others to the same person that are due within a minute go into
// the same post; of several that ask for one thing only the last is said.
func (a *Answerer) Ping(tx *store.Tx, row store.PingRow, now time.Time) error {
	book := tx.Book(row.Collective)
	settings, err := a.settingsOf(book)
	if err != nil {
		return err
	}
	p := pinging{a: a, book: book, settings: settings, now: now.In(a.zoneOf(settings)), late: map[string]time.Duration{}}
	if row.Kind == kitchen.WeeklyDigest {
		return p.digest(row)
	}
	fired, err := p.batch(tx, row)
	if err != nil {
		return err
	}
	batch := oneOfChains(fired)
	if ofUnits(row.Kind) {
		return p.units(batch)
	}
	var views []wording.PingView
	for _, r := range batch {
		if r.Stale(now) {
			continue
		}
		v, err := p.view(r)
		if errors.As(err, new(kitchen.NoSuchRun)) {
			continue // taken back in between: nothing to say
		}
		if err != nil {
			return err
		}
		views = append(views, v)
	}
	if len(views) == 0 {
		return nil
	}
	fired = slices.DeleteFunc(fired, func(r store.PingRow) bool { return r.Stale(now) })
	return p.queue(wording.Pings(views), views[0].Ping.Key, fired...)
}

// pinging is one post of pings being made.
type pinging struct {
	a        *Answerer
	book     *store.Book
	settings kitchen.Settings
	now      time.Time // in the kitchen's zone
	// late is how late the first of each chain comes that is said now.
	late map[string]time.Duration
}

// batch is the row with those that can be said in the same post, the loudest first,
// then the one that is due first. They are marked as fired with it. Which of them came
// up makes no difference: what is said is the same after one was tried in vain.
func (p pinging) batch(tx *store.Tx, row store.PingRow) ([]store.PingRow, error) {
	due, err := tx.DuePings(p.now.Add(batchWithin), 200)
	if err != nil {
		return nil, err
	}
	batch := []store.PingRow{row}
	everybody := askingEverybody(row, due, p.now)
	for _, d := range due {
		if d.Key == row.Key || !together(row, d) && !slices.ContainsFunc(everybody, func(e store.PingRow) bool { return together(e, d) }) {
			continue
		}
		if d.Due.After(p.now) && d.Loudness == kitchen.GuardPing {
			continue // never early where a hot cooker is watched
		}
		batch = append(batch, d)
		if err := p.book.MarkFired(d.Key, p.now); err != nil {
			return nil, err
		}
	}
	slices.SortFunc(batch, func(a, b store.PingRow) int {
		return cmp.Or(cmp.Compare(a.Loudness, b.Loudness), a.Due.Compare(b.Due), cmp.Compare(a.Key, b.Key))
	})
	for _, b := range batch {
		p.late[b.Chain()] = max(p.late[b.Chain()], b.Late(p.now))
	}
	return batch, nil
}

// askingEverybody are the due pings that ask every room, when the chain of a ping
// has come so far: two cookers that nobody answered for are one post.
func askingEverybody(row store.PingRow, due []store.PingRow, now time.Time) []store.PingRow {
	var asking []store.PingRow
	own := false
	for _, d := range due {
		if d.Kind == kitchen.WhoIsThere && !d.Due.After(now) {
			asking = append(asking, d)
			own = own || together(row, d)
		}
	}
	if !own {
		return nil
	}
	return slices.DeleteFunc(asking, func(d store.PingRow) bool { return d.Collective != row.Collective })
}

// together reports whether two pings can be one post: to the same person in the
// same room, to everybody, or about one hot run, where who is asked last is everybody.
// Of two hot runs the post goes as far as the farther. What is said of the shelf stands
// alone, and so does a digest.
func together(a, b store.PingRow) bool {
	everybody := a.Kind == kitchen.WhoIsThere && b.Kind == kitchen.WhoIsThere
	if a.Collective != b.Collective || a.Room != b.Room && !everybody || ofUnits(a.Kind) != ofUnits(b.Kind) || b.Kind == kitchen.WeeklyDigest {
		return false
	}
	hot := a.Loudness == kitchen.GuardPing && b.Loudness == kitchen.GuardPing
	return hot && a.About == b.About || a.To == b.To && (hot || a.Kind.Reach() == b.Kind.Reach())
}

// oneOfChains keeps of several pings that ask for one thing one: the last, or the
// first that asks the same, since none of them was heard yet.
func oneOfChains(batch []store.PingRow) []store.PingRow {
	var kept []store.PingRow
	for _, p := range batch {
		i := slices.IndexFunc(kept, func(k store.PingRow) bool { return k.Chain() == p.Chain() })
		switch {
		case i < 0:
			kept = append(kept, p)
		case p.Kind == kept[i].Kind && p.Due.Before(kept[i].Due), p.Kind != kept[i].Kind && p.Due.After(kept[i].Due):
			kept[i] = p
		}
	}
	return kept
}

// view is what a ping speaks of.
func (p pinging) view(row store.PingRow) (wording.PingView, error) {
	v := wording.PingView{Ping: row.Ping, Now: p.now, Late: max(p.late[row.Chain()], row.Late(p.now))}
	var err error
	if v.Asked, err = p.asked(row); err != nil {
		return v, err
	}
	if row.To != 0 {
		if v.To, err = mention(p.book, row.To); err != nil {
			return v, err
		}
	}
	if no, ok := runOf(row.Key); ok {
		if v.Run, err = foldRun(p.book, no); err == nil && row.Kind == kitchen.BookingOverrun {
			v.Booking, err = p.booking(kitchen.BookingsPrefix + row.Key[strings.LastIndex(row.Key, "/")+1:])
		}
		return v, err
	}
	if no, ok := startNo(row.Key); ok {
		e, err := p.book.Entry(no)
		if err != nil {
			return v, err
		}
		if start, ok := e.Entry.(kitchen.StartWanted); ok {
			v.Order, v.OutBy = start.Order, start.OutBy.In(p.now.Location())
		}
		return v, nil
	}
	if strings.HasPrefix(row.Key, kitchen.BookingsPrefix) {
		v.Booking, err = p.booking(row.About)
		return v, err
	}
	if cooker, ok := strings.CutPrefix(row.About, kitchen.GearPrefix); ok {
		v.Cooker = cooker
		return v, nil
	}
	return v, fmt.Errorf("ping key %q names nothing", row.Key)
}

// asked is when the first of a chain was due of which everybody is asked; zero for a
// ping that asks by itself.
func (p pinging) asked(row store.PingRow) (time.Time, error) {
	if row.Kind != kitchen.WhoIsThere {
		return time.Time{}, nil
	}
	rows, err := p.book.Pings(row.Chain())
	if err != nil || len(rows) == 0 || rows[0].Key != row.Chain() {
		return time.Time{}, err
	}
	return rows[0].Due, nil
}

// booking is the booking that a ping is about.
func (p pinging) booking(about string) (kitchen.Booking, error) {
	records, err := p.book.Standing(kitchen.BookingsSubject)
	if err != nil {
		return kitchen.Booking{}, err
	}
	for _, b := range kitchen.FoldBookings(records) {
		if about == kitchen.BookingsPrefix+strconv.Itoa(int(b.No)) {
			return b, nil
		}
	}
	return kitchen.Booking{}, fmt.Errorf("booking of %q doesn't stand", about)
}

// queue sends a post about a key to all rooms that pings reach: of a chain that comes
// late also to the cook in private, who would have been asked before everybody.
func (p pinging) queue(post chat.Post, about string, pings ...store.PingRow) error {
	raw, err := post.Encode()
	if err != nil {
		return err
	}
	var rooms []store.RoomID
	for _, row := range pings {
		reached, err := p.rooms(row)
		if err != nil {
			return err
		}
		for _, room := range reached {
			if !slices.Contains(rooms, room) {
				rooms = append(rooms, room)
			}
		}
	}
	rank := store.InTurn
	if post.Loudness == chat.Guard {
		rank = store.Overtakes
	}
	for _, room := range rooms {
		if _, err := p.book.Queue(store.Parcel{Room: room, Rank: rank, Post: raw, About: about}, p.now); err != nil {
			return err
		}
	}
	return nil
}

// rooms are where a ping goes: to the room of the run, or to the member in
// private where they want that; to both; or to every room.
func (p pinging) rooms(row store.PingRow) ([]store.RoomID, error) {
	if row.Kind.Reach() == kitchen.EveryRoom {
		all, err := p.book.Rooms()
		if err != nil {
			return nil, err
		}
		var open []store.RoomID
		for _, r := range all {
			if r.Closed.IsZero() && (r.Kind != store.PrivateRoom || r.ID == store.RoomID(row.Room)) {
				open = append(open, r.ID) // a run begun in private is heard of there as well
			}
		}
		return open, nil
	}
	rooms := []store.RoomID{store.RoomID(row.Room)}
	if row.Room == 0 {
		home, err := p.book.HomeRoom()
		if err != nil {
			return nil, err
		}
		rooms[0] = home.ID
	}
	if row.To == 0 || p.settings.PingsFor(row.To) != kitchen.InPrivate {
		return rooms, nil
	}
	private, err := p.book.PrivateRoom(row.To)
	if errors.Is(err, store.ErrNotFound) {
		return rooms, nil // never spoken in private: the room it is
	}
	if err != nil {
		return nil, err
	}
	if row.Kind.Reach() == kitchen.CookAndRoom {
		return append(rooms, private.ID), nil
	}
	return []store.RoomID{private.ID}, nil
}

// mention is a member as a span that rings for them on the platform of their
// first account; nil for one who was forgotten.
func mention(book *store.Book, no kitchen.MemberNo) (chat.Span, error) {
	m, err := book.Member(no)
	if err != nil {
		return nil, err
	}
	if m.Name == "" {
		return nil, nil
	}
	accounts, err := book.AccountsOf(no)
	if err != nil {
		return nil, err
	}
	if len(accounts) == 0 {
		return chat.Text(m.Name), nil
	}
	who := chat.Person{Door: chat.DoorName(accounts[0].Door), ID: accounts[0].External, Name: m.Name}
	return chat.Mention{Person: who, Name: m.Name}, nil
}

// startNo is the entry that a start ping belongs to.
func startNo(key string) (kitchen.EntryNo, bool) {
	rest, ok := strings.CutPrefix(key, kitchen.StartPrefix)
	digits, _, _ := strings.Cut(rest, "/")
	no, err := atoi(digits)
	return kitchen.EntryNo(no), ok && err == nil
}

func atoi(s string) (int, error) { return strconv.Atoi(s) }
