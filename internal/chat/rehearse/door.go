package rehearse

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode"
	"unicode/utf8"

	"ryebell/internal/chat"
)

// Options says when and where a rehearsal begins and where it prints.
type Options struct {
	// Start is the instant at which the clock stands first; the zero value is
	// Monday 2 March 2026, 09:00 in Zone.
	Start time.Time
	// Zone is for the times in the script and in the headers; nil is UTC.
	Zone *time.Location
	Out  io.Writer
}

// Begin reads the flags --start ("2026-03-02 09:00", in the zone; a T instead
// of the space will do) and --tz (an IANA name). Either may be empty.
func Begin(start, tz string) (time.Time, *time.Location, error) {
	zone, err := time.LoadLocation(tz)
	if err != nil {
		return time.Time{}, nil, fmt.Errorf("no time zone %q: use a name like Europe/Berlin", tz)
	}
	if start == "" {
		return firstMorning(zone), zone, nil
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", strings.Replace(start, "T", " ", 1), zone)
	if err != nil {
		return time.Time{}, nil, fmt.Errorf("no start %q: use a date and time like 2026-03-02 09:00", start)
	}
	return at, zone, nil
}

func firstMorning(zone *time.Location) time.Time {
	return time.Date(2026, time.March, 2, 9, 0, 0, 0, zone)
}

// width is that of a phone.
const width = 40

// Door is the platform of a rehearsal: it prints posts, keeps the standing
// clock and knows which messages and posts there were, for replies, edits and
// taps. It is a [chat.Door] with the name of the terminal's.
type Door struct {
	mu    sync.Mutex
	out   io.Writer
	start time.Time // carries the zone, as now does
	now   time.Time
	posts []post            // the one printed last at the end
	said  map[saying]string // event of somebody's newest message in a room
	count int               // of events and photos
	// failed is why a post could not be printed: nothing is worth playing then.
	failed error
}

type post struct {
	id      string
	row     int64
	room    string
	at      time.Time
	buttons []chat.Button
}

type saying struct{ who, room string }

// NewDoor makes the door of one rehearsal.
func NewDoor(o Options) *Door {
	zone := cmp.Or(o.Zone, time.UTC)
	start := o.Start.In(zone)
	if o.Start.IsZero() {
		start = firstMorning(zone)
	}
	return &Door{out: o.Out, start: start, now: start, said: map[saying]string{}}
}

// Now is what the standing clock shows.
func (d *Door) Now() time.Time {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.now
}

// Name says that this door stands in for the terminal.
func (d *Door) Name() chat.DoorName { return chat.Console }

// Run waits for the end of ctx: what comes in comes through [Play].
func (d *Door) Run(ctx context.Context, _ chat.Handler) error {
	<-ctx.Done()
	return nil
}

// Send prints a parcel as a block.
func (d *Door) Send(_ context.Context, p chat.Parcel) (chat.Receipt, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	to, ok := shownRoom(p.Room.ID)
	if p.Room.Door != chat.Console || !ok {
		return chat.Receipt{}, chat.Refused{Reason: "no such room in a rehearsal"}
	}
	now := post{id: fmt.Sprintf("post-%d", p.Row), row: p.Row, room: p.Room.ID, at: d.now, buttons: p.Post.Buttons}
	header := d.stamp(d.now, d.start) + " bot → " + to
	if p.Replaces != "" {
		i := slices.IndexFunc(d.posts, func(old post) bool { return old.id == p.Replaces && old.room == p.Room.ID })
		if i < 0 {
			return chat.Receipt{}, chat.Refused{Reason: "the post to edit is not there"}
		}
		now.id, now.at = d.posts[i].id, d.posts[i].at
		header += " (edits " + d.stamp(now.at, d.now) + ")"
		d.posts = slices.Delete(d.posts, i, i+1)
	}
	d.posts = append(d.posts, now)
	block := header + "\n"
	if text := chat.Plain(p.Post, width); text != "" {
		block += "  " + strings.ReplaceAll(text, "\n", "\n  ") + "\n"
	}
	if _, err := io.WriteString(d.out, block); err != nil {
		d.failed = fmt.Errorf("the posts can't be printed: %w", err)
		return chat.Receipt{}, d.failed
	}
	return chat.Receipt{Post: now.id}, nil
}

func (d *Door) failure() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.failed
}

// stamp prints a time, with the date unless it is that of the day at hand.
func (d *Door) stamp(t, day time.Time) string {
	if t.Format(time.DateOnly) == day.Format(time.DateOnly) {
		return t.Format("15:04")
	}
	return t.Format("Mon 2 Jan 15:04")
}

func shownRoom(id string) (string, bool) {
	if who, ok := strings.CutPrefix(id, privately); ok {
		return shownName(who), who != ""
	}
	return id, id == room || id == room2 || id == other
}

// privately begins the address of a talk between one person and the bot.
const privately = "private:"

func shownName(id string) string {
	first, n := utf8.DecodeRuneInString(id)
	return string(unicode.ToTitle(first)) + id[n:]
}

// newest is the last printed post of a room, or the last that has a button of
// that label, with the button's place.
func (d *Door) newest(in string) (post, bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, p := range slices.Backward(d.posts) {
		if p.room == in {
			return p, true
		}
	}
	return post{}, false
}

func (d *Door) button(in, label string) (chat.Tap, bool) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, p := range slices.Backward(d.posts) {
		if p.room != in {
			continue
		}
		for i, b := range p.buttons {
			if strings.TrimSpace(chat.Clean(b.Label)) == label {
				return chat.Tap{Row: p.row, Button: i}, true
			}
		}
	}
	return chat.Tap{}, false
}
