package outbox_test

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// failer is what a test and a property have in common.
type failer interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// taken is a parcel that the fake platform took, and when.
type taken struct {
	chat.Parcel
	text string
	at   time.Time
}

// platform is a strict fake: it complains of a parcel in a wrong room, of an edit
// of what never stood there, and of a row that comes again though its receipt was
// given.
type platform struct {
	t    failer
	name chat.DoorName
	// before decides on a parcel before it is taken; nil takes all.
	before func(p chat.Parcel, text string) error

	mu     sync.Mutex
	took   []taken
	stands map[string]int64 // post identifier → row
}

func newPlatform(t failer, name chat.DoorName) *platform {
	return &platform{t: t, name: name, stands: map[string]int64{}}
}

func (d *platform) Name() chat.DoorName { return d.name }

func (d *platform) Run(ctx context.Context, _ chat.Handler) error {
	<-ctx.Done()
	return nil
}

func (d *platform) Send(_ context.Context, p chat.Parcel) (chat.Receipt, error) {
	text := strings.TrimSpace(chat.Plain(p.Post, 40))
	if d.before != nil {
		if err := d.before(p, text); err != nil {
			return chat.Receipt{}, err
		}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if p.Room.Door != d.name || p.Room.ID == "" {
		d.t.Errorf("row %d came for room %+v", p.Row, p.Room)
	}
	id := fmt.Sprintf("post-%d", p.Row)
	if p.Replaces != "" {
		if id = p.Replaces; d.stands[id] == 0 {
			d.t.Errorf("row %d edits %q, which never stood there", p.Row, id)
		}
	}
	d.stands[id] = p.Row
	d.took = append(d.took, taken{p, text, time.Now()})
	return chat.Receipt{Post: id}, nil
}

// texts lists what was taken for a room, in order.
func (d *platform) texts(room string) string {
	d.mu.Lock()
	defer d.mu.Unlock()
	var all []string
	for _, t := range d.took {
		if t.Room.ID == room {
			all = append(all, t.text)
		}
	}
	return strings.Join(all, " ")
}

// last is what was taken last.
func (d *platform) last() taken {
	d.mu.Lock()
	defer d.mu.Unlock()
	if len(d.took) == 0 {
		return taken{}
	}
	return d.took[len(d.took)-1]
}

// kitchenBook is a book with one collective and some rooms on a door.
type kitchenBook struct {
	t     failer
	db    *store.DB
	id    store.CollectiveID
	rooms map[string]store.RoomID
}

func newBook(t failer, db *store.DB, door chat.DoorName, rooms ...string) *kitchenBook {
	t.Helper()
	b := &kitchenBook{t: t, db: db, rooms: map[string]store.RoomID{}}
	b.update(func(tx *store.Tx) (err error) {
		if b.id, err = tx.NewCollective("kitchen", time.Now()); err != nil {
			return err
		}
		for _, name := range rooms {
			b.rooms[name], err = tx.Book(b.id).AddRoom(store.RoomRow{
				Door: string(door), Address: name, Kind: store.FurtherRoom, Joined: time.Now(),
			})
			if err != nil {
				return err
			}
		}
		return nil
	})
	return b
}

func openBook(t *testing.T, door chat.DoorName, rooms ...string) *kitchenBook {
	t.Helper()
	return newBook(t, storetest.Open(t), door, rooms...)
}

func (b *kitchenBook) update(f func(*store.Tx) error) {
	b.t.Helper()
	if err := b.db.Update(context.Background(), f); err != nil {
		b.t.Fatalf("update: %v", err)
	}
}

// queue puts posts behind those that wait in a room.
func (b *kitchenBook) queue(room string, at time.Time, texts ...string) {
	b.t.Helper()
	for _, text := range texts {
		b.put(store.Parcel{Room: b.rooms[room], Rank: store.InTurn}, at, text)
	}
}

// put queues one post.
func (b *kitchenBook) put(p store.Parcel, at time.Time, text string) {
	b.t.Helper()
	post, err := chat.Post{Blocks: []chat.Block{chat.Para{chat.Text(text)}}, Loudness: chat.Answer}.Encode()
	if err != nil {
		b.t.Fatalf("encode: %v", err)
	}
	p.Post = post
	b.update(func(tx *store.Tx) error {
		_, err := tx.Book(b.id).Queue(p, at)
		return err
	})
}
