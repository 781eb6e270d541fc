// Package ordeal puts the program through what may happen to it: the power is cut,
// the disk fails or is full, another program holds the book, the process is
// killed, the clock jumps. Whatever happens, what was answered is in the book once,
// every ping comes, and the book is sound.
//
// All of it is played with scripts of rehearsal (testdata), so that a new
// capability is put to the test by a few lines more in them.
package ordeal

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/answer"
	"ryebell/internal/chat/outbox"
	"ryebell/internal/chat/rehearse"
	"ryebell/internal/kitchen"
	"ryebell/internal/reminders"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// bot is the program around one book. Each of its steps is told the time.
type bot struct {
	db        *store.DB
	answerer  *answer.Answerer
	reminders *reminders.Reminders
	outbox    *outbox.Outbox
}

// open starts the program on the book in a folder.
func open(ctx context.Context, folder string, door chat.Door, c store.Config) (*bot, error) {
	db, err := store.Open(ctx, folder, c)
	if err != nil {
		return nil, err
	}
	return around(db, door, time.Now), nil
}

// around puts the program around a book. The clock is for what runs by itself.
func around(db *store.DB, door chat.Door, now func() time.Time) *bot {
	a := answer.New(db, answer.Config{Weekly: weekly})
	return &bot{
		db: db, answerer: a,
		reminders: reminders.New(db, seldom(a.Ping), reminders.Config{Now: now}),
		outbox:    outbox.New(db, []chat.Door{door}, outbox.Config{Now: now, Chance: func() float64 { return 0.5 }}),
	}
}

// weekly is the calendar of the digests.
func weekly(d kitchen.DigestIs, zone *time.Location, after time.Time) (key string, due time.Time, err error) {
	at := reminders.TimeOfDay{Hour: int(d.At) / 60, Minute: int(d.At) % 60}
	c, err := reminders.Weekly(strings.TrimSuffix(kitchen.DigestPrefix, "/"), d.Day, at, zone)
	if err != nil {
		return "", time.Time{}, err
	}
	next := c.Next(after)
	return next.Key, next.Due, nil
}

// oftenest is how often a ping may be fired at one instant: again where the disk
// fails, and not without end, which is what a missing mark comes to.
const oftenest = 20

func seldom(fire reminders.Fire) reminders.Fire {
	var mu sync.Mutex
	times := map[string]int{}
	return func(tx *store.Tx, row store.PingRow, now time.Time) error {
		mu.Lock()
		defer mu.Unlock()
		what := fmt.Sprint(row.Collective, row.Key, now)
		if times[what]++; times[what] > oftenest {
			return fmt.Errorf("ping %s fires again and again: its mark is missing", row.Key)
		}
		return fire(tx, row, now)
	}
}

// found gives the rooms of a rehearsal their books: room and room2 belong to one
// collective, other to another.
func (b *bot) found(ctx context.Context, at time.Time) error {
	room := func(id string) chat.Room { return chat.Room{Door: chat.Console, ID: id} }
	person := func(id, name string) chat.Person { return chat.Person{Door: chat.Console, ID: id, Name: name} }
	return errors.Join(
		b.answerer.Found(ctx, answer.Foundation{Room: room("room"), Person: person("robin", "Robin"), At: at}),
		b.answerer.Admit(ctx, room("room"), room("room2"), at),
		b.answerer.Found(ctx, answer.Foundation{Room: room("other"), Person: person("kit", "Kit"), At: at}),
	)
}

func (b *bot) deliver(ctx context.Context, now time.Time) error {
	return b.outbox.Deliver(ctx, chat.Console, now)
}

// stage is one thing that the program does, and is asked to do again when it
// fails.
type stage func(ctx context.Context, b *bot) error

// fire fires what is due at an instant and sends what it brought forth.
func fire(at time.Time) stage {
	return func(ctx context.Context, b *bot) error {
		if err := b.reminders.FireDue(ctx, at); err != nil {
			return err
		}
		return b.deliver(ctx, at)
	}
}

// turn offers a message; then calls told, unless it is nil, once the turn counts
// as answered; and sends what it brought forth.
func turn(m chat.Message, told func()) stage {
	answered := false
	return func(ctx context.Context, b *bot) error {
		if !answered {
			if err := b.answerer.Turn(ctx, m); err != nil {
				return err
			}
			if answered = true; told != nil {
				told()
			}
		}
		return b.deliver(ctx, m.Arrived)
	}
}

// script is what happened in a rehearsal, with every reply, edit and tap settled.
type script struct {
	Start, End time.Time
	Steps      []step
	// Marked lists the events that the book keeps a mark of: those that were
	// meant for the bot.
	Marked map[string]bool
}

// step is something that was said or, if nothing was, pings that fell due. What
// fell due while the program was switched off is late.
type step struct {
	At   time.Time
	Says *chat.Message
}

// rehearsed plays a script of testdata, and gives what happened and the book as it
// is at the end.
func rehearsed(t testing.TB, name string) (script, storetest.Contents) {
	t.Helper()
	file, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	door := rehearse.NewDoor(rehearse.Options{Out: io.Discard})
	folder := inMemory(t)
	once := &once{Door: door}
	b := started(t, folder, once, door.Now())
	s := script{Start: door.Now().UTC(), Marked: map[string]bool{}}
	err = rehearse.Play(t.Context(), file, door, rehearse.World{
		Turn: func(ctx context.Context, m chat.Message) error {
			s.Steps = append(s.Steps, step{m.Arrived, &m})
			return b.answerer.Turn(ctx, m)
		},
		FireDue: func(ctx context.Context, now time.Time) error {
			s.Steps = append(s.Steps, step{now, nil})
			return b.reminders.FireDue(ctx, now)
		},
		Deliver: b.deliver, Next: b.reminders.Next,
	})
	if err := errors.Join(err, b.db.Close(), once.err()); err != nil {
		t.Fatal(err)
	}
	s.End = door.Now().UTC()
	marks := contents(t, folder)["inbox"]
	for _, m := range s.said() {
		s.Marked[m.Event] = strings.Contains(marks, "|'"+m.Event+"'|")
	}
	return s, contents(t, folder)
}

// said lists the messages of a script.
func (s script) said() []chat.Message {
	var all []chat.Message
	for _, step := range s.Steps {
		if step.Says != nil {
			all = append(all, *step.Says)
		}
	}
	return all
}

// stages are all that the program does in a script.
func (s script) stages(told func(m chat.Message)) []stage {
	var all []stage
	for _, step := range s.Steps {
		if step.Says == nil {
			all = append(all, fire(step.At))
			continue
		}
		m := *step.Says
		all = append(all, turn(m, func() {
			if s.Marked[m.Event] && told != nil {
				told(m)
			}
		}))
	}
	return all
}

// started starts the program on a new book with the rooms of a rehearsal.
func started(t testing.TB, folder string, door chat.Door, at time.Time) *bot {
	t.Helper()
	return startedWith(t, folder, door, at, store.Config{Readers: 1})
}

func startedWith(t testing.TB, folder string, door chat.Door, at time.Time, c store.Config) *bot {
	t.Helper()
	b, err := open(t.Context(), folder, door, c)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.found(t.Context(), at.UTC()); err != nil {
		t.Fatal(err)
	}
	return b
}

// contents is what the book in a folder holds, but for what is left to chance.
func contents(t testing.TB, folder string) storetest.Contents {
	t.Helper()
	c, err := storetest.Alike(folder)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// same names the first row in which a book differs from what it should be.
func same(got, want storetest.Contents) error {
	for _, table := range want.Tables() {
		have, need := strings.Split(got[table], "\n"), strings.Split(want[table], "\n")
		for i := range max(len(have), len(need)) {
			h, n := "no row", "no row"
			if i < len(have) {
				h = have[i]
			}
			if i < len(need) {
				n = need[i]
			}
			if h != n {
				return fmt.Errorf("%s: there is\n  %.300s\nand should be\n  %.300s", table, h, n)
			}
		}
	}
	return nil
}

// memory is where Linux keeps files in memory.
const memory = "/dev/shm"

// inMemory is a folder for the test, in memory where there is such a place: what
// a sync is worth is worked out here, and none is waited for.
func inMemory(t testing.TB) string {
	t.Helper()
	folder, err := os.MkdirTemp(memory, "ordeal-")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() {
		if err := os.RemoveAll(folder); err != nil {
			t.Error(err)
		}
	})
	return folder
}

// sink is a platform that takes every post and says which.
type sink struct {
	took func(p chat.Parcel) error
}

func (sink) Name() chat.DoorName { return chat.Console }

func (sink) Run(ctx context.Context, _ chat.Handler) error {
	<-ctx.Done()
	return nil
}

func (s sink) Send(_ context.Context, p chat.Parcel) (chat.Receipt, error) {
	if s.took != nil {
		if err := s.took(p); err != nil {
			return chat.Receipt{}, err
		}
	}
	post := fmt.Sprintf("post-%d", p.Row)
	if p.Replaces != "" {
		post = p.Replaces
	}
	return chat.Receipt{Post: post}, nil
}

// once is a door that takes no post twice. One that is sent again and again, for
// its mark is missing, would have a delivery never end.
type once struct {
	chat.Door
	mu          sync.Mutex
	took, again []int64
}

func (o *once) Send(ctx context.Context, p chat.Parcel) (chat.Receipt, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if slices.Contains(o.took, p.Row) {
		o.again = append(o.again, p.Row)
		return chat.Receipt{}, chat.Refused{Reason: "it came before"}
	}
	receipt, err := o.Door.Send(ctx, p)
	if err == nil {
		o.took = append(o.took, p.Row)
	}
	return receipt, err
}

// err names the posts that came again.
func (o *once) err() error {
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.again) > 0 {
		return fmt.Errorf("posts %v came again: a mark is missing", o.again)
	}
	return nil
}
