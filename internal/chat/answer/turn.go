package answer

import (
	"cmp"
	"errors"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// turn is one message being handled: who, where, when, and the book it belongs
// to.
type turn struct {
	a    *Answerer
	tx   *store.Tx
	m    chat.Message
	book *store.Book
	room store.RoomRow
	// member is the speaker; zero No until they are known to the book.
	member   store.Member
	settings kitchen.Settings
	// before are the settings as they were when the turn began.
	before kitchen.Settings
	names  phrase.Names
	now    time.Time // when it was sent, in the kitchen's zone

	text    string        // what was said: typed, or the sentence of a tapped button
	inbox   store.InboxID // the mark of this event
	owner   store.InboxID // the turn that entries and answer belong to: of the message edited, else this one
	edited  *store.Turn   // the turn that this message replaces
	said    string        // canonical sentence of what was understood
	kind    string
	asked   string
	about   string // the subject of the answer, for replies to it
	entries int
	// wrote and touched are the subjects, and the runs, that this turn wrote about.
	wrote   map[string]bool
	touched map[kitchen.RunNo]bool
	// runs are the runs that were folded and have not changed since.
	runs map[kitchen.RunNo]kitchen.Run
	// loads are their units, kept likewise.
	loads map[kitchen.RunNo]kitchen.Units
	// grown is what grew through before, once it was read.
	grown []kitchen.Grown
	// replaced is what the edited message had written.
	replaced []store.Logged
	// wrong are the readings that this message corrects, instead the one that it stands for.
	wrong   []store.Logged
	instead *kitchen.TempRead
	// mends is what was told of units and is told anew by this message.
	mends []store.Logged
	// stands is what this turn wrote anew of units, since it took back the correction of it.
	stands []store.Logged
	// back is what this turn wrote anew since it took back the correction of it.
	back *store.Logged
	// rest is what was said in the same breath behind what is handled now.
	rest []phrase.Intent
	// forgotten is set when the speaker asked to be forgotten: done last, after
	// the goodbye is queued.
	forgotten bool
}

// lateAfter is how far sending and arriving may lie apart before the answer says
// which time was taken.
const lateAfter = 10 * time.Minute

// begin finds the book and the speaker of a message. A nil turn means that
// nothing is to be done: a room that nobody claimed, a stranger, an old event.
func (a *Answerer) begin(tx *store.Tx, m chat.Message) (*turn, error) {
	room, err := tx.Room(string(m.Room.Door), m.Room.ID)
	if errors.Is(err, store.ErrNotFound) {
		return a.unclaimed(tx, m)
	}
	if err != nil {
		return nil, err
	}
	t := a.newTurn(tx, m, room)
	if ok, err := t.admitted(); err != nil || !ok {
		return nil, err
	}
	return t, t.prepare()
}

func (a *Answerer) newTurn(tx *store.Tx, m chat.Message, room store.RoomRow) *turn {
	return &turn{
		a: a, tx: tx, m: m, book: tx.Book(room.Collective), room: room,
		wrote: map[string]bool{}, touched: map[kitchen.RunNo]bool{}, runs: map[kitchen.RunNo]kitchen.Run{}, loads: map[kitchen.RunNo]kitchen.Units{},
	}
}

// admitted reports whether the speaker may speak here: a private room is one
// member's, as long as they are in a room of the collective.
func (t *turn) admitted() (bool, error) {
	if t.room.Kind != store.PrivateRoom {
		return true, nil
	}
	m, err := t.book.MemberByAccount(string(t.m.From.Door), t.m.From.ID)
	if errors.Is(err, store.ErrNotFound) {
		return false, nil
	}
	return err == nil && m.No == t.room.Member && m.Left.IsZero(), err
}

// prepare reads what every turn needs: speaker, settings, names, the text.
func (t *turn) prepare() error {
	var err error
	t.member, err = t.book.MemberByAccount(string(t.m.From.Door), t.m.From.ID)
	if err != nil && !errors.Is(err, store.ErrNotFound) {
		return err
	}
	if t.settings, err = t.a.settingsOf(t.book); err != nil {
		return err
	}
	t.before = t.settings
	t.furnish()
	if err := t.given(); err != nil {
		return err
	}
	members, err := t.book.Members()
	if err != nil {
		return err
	}
	for _, m := range members {
		if m.Name != "" {
			t.names.Members = append(t.names.Members, m.Name)
		}
	}
	t.text = t.m.Text
	return nil
}

// reload folds the kitchen and reads the speaker anew, once this turn has written
// about them.
func (t *turn) reload() error {
	if t.member.No != 0 {
		m, err := t.book.Member(t.member.No)
		if err != nil {
			return err
		}
		t.member = m
	}
	records, err := t.book.Standing(kitchenSubject)
	if err != nil {
		return err
	}
	t.settings = kitchen.FoldSettings(records)
	t.furnish()
	return nil
}

// furnish sets what follows from the settings.
func (t *turn) furnish() {
	t.names.Cookers, t.names.Cultures, t.names.Quarts = t.settings.CookerNames(), t.settings.Cultures(), t.settings.Measure
	t.now = t.m.At.In(t.a.zoneOf(t.settings))
}

// zoneOf is the kitchen's time zone: its own, else the machine's.
func (a *Answerer) zoneOf(s kitchen.Settings) *time.Location {
	if s.Zone == "" {
		return a.zone
	}
	zone, err := time.LoadLocation(s.Zone)
	if err != nil {
		return a.zone // the name was checked when it was said; a machine may know fewer
	}
	return zone
}

// listen understands the message, and reports whether it was meant for the bot. It
// writes nothing.
func (t *turn) listen() (p phrase.Parsed, ctx scene, meant bool, err error) {
	if ctx, err = t.context(); err != nil {
		return p, ctx, false, err
	}
	if p, err = t.understand(ctx); err != nil {
		return p, ctx, false, err
	}
	if p, err = t.both(p); err != nil {
		return p, ctx, false, err
	}
	if p, err = t.volunteered(p, ctx); err != nil {
		return p, ctx, false, err
	}
	if choosing(p) && ctx.asked == "" && !t.addressed() {
		return p, ctx, false, nil // a bare number answers nothing
	}
	meant, err = t.meant(p, ctx)
	return p, ctx, meant, err
}

// run understands the message, and answers it if it was meant for the bot.
func (t *turn) run() (report, error) {
	parsed, ctx, meant, err := t.listen()
	if err == nil && !meant {
		return t.editedAway()
	}
	if err != nil {
		return report{}, err
	}
	fresh, err := t.claim()
	if err != nil || !fresh {
		return report{}, err
	}
	if err := t.meet(); err != nil {
		return report{}, err
	}
	post, err := t.respond(parsed, ctx)
	if err != nil {
		return report{}, err
	}
	if post, err = t.keepPhotos(post); err != nil {
		return report{}, err
	}
	if err := t.settle(); err != nil {
		return report{}, err
	}
	if err := t.queue(t.late(post)); err != nil {
		return report{}, err
	}
	if t.forgotten {
		err = t.book.ForgetMember(t.member.No, t.m.At)
	}
	return report{kind: t.kind, entries: t.entries}, err
}

// editedAway answers a message that was edited into something that says nothing
// to the bot: what it had said stands, and can be taken back.
func (t *turn) editedAway() (report, error) {
	if t.edited == nil {
		return report{}, nil
	}
	entries, err := t.book.EntriesOf(t.edited.ID)
	if err != nil || !slices.ContainsFunc(entries, counts) {
		return report{}, err
	}
	fresh, err := t.claim()
	if err != nil || !fresh {
		return report{}, err
	}
	t.owner, t.kind, t.said = t.edited.ID, t.edited.Kind, t.edited.Said
	if err := t.settle(); err != nil {
		return report{}, err
	}
	return report{kind: t.kind}, t.queue(wording.StillStands(cmp.Or(t.edited.Said, entries[0].Said)))
}

// respond takes back what an edited message had said, and answers the new text.
// What is not understood changes nothing.
func (t *turn) respond(p phrase.Parsed, ctx scene) (chat.Post, error) {
	if len(p.Intents) > 0 {
		err := t.replace()
		var refusal kitchen.Refusal
		if errors.As(err, &refusal) {
			return t.refuse(refusal)
		}
		if err != nil {
			return chat.Post{}, err
		}
	}
	return t.answer(p, ctx)
}

// claim marks the event as handled; false means that it was before.
func (t *turn) claim() (bool, error) {
	id, fresh, err := t.tx.Claim(store.Event{
		Door: string(t.m.Room.Door), Event: t.m.Event, Collective: t.room.Collective, Room: t.room.ID, Member: t.member.No,
		At: t.m.At, Arrived: t.m.Arrived,
	})
	t.inbox, t.owner = id, id
	return fresh, err
}

// meet takes a speaker in whom the book doesn't know yet: everybody in a room of
// the collective is a member.
func (t *turn) meet() error {
	if t.member.No != 0 {
		return nil
	}
	role, err := t.firstRole()
	if err != nil {
		return err
	}
	no, err := t.book.AddMember(t.freeName(called(t.m.From.Name)), kitchen.Grower, t.m.At)
	if err != nil {
		return err
	}
	if err := t.book.LinkAccount(no, store.Account{Door: string(t.m.From.Door), External: t.m.From.ID}); err != nil {
		return err
	}
	if t.member, err = t.book.Member(no); err != nil {
		return err
	}
	if err := t.write(membersSubject, kitchen.MemberJoined{Member: no}, ""); err != nil || role == kitchen.Grower {
		return err
	}
	if err := t.setRole(no, role); err != nil {
		return err
	}
	t.member, err = t.book.Member(no)
	return err
}

// notUnderstood says what works: beside a run that is on and the speaker's, its next step.
func (t *turn) notUnderstood() (chat.Post, error) {
	open, err := t.openRuns()
	own := only(open, func(r kitchen.Run) bool { return t.isOwn(r) && r.Stage < kitchen.StageCooling })
	if err != nil || len(own) != 1 {
		return wording.NotUnderstood(), err
	}
	return wording.NotUnderstoodOf(own[0], t.arrived()), nil
}

// answer makes the post for what was understood.
func (t *turn) answer(p phrase.Parsed, ctx scene) (chat.Post, error) {
	switch {
	case p.Ask != nil:
		t.kind, t.asked = askedKind, t.text
		return wording.Ask(*p.Ask), nil
	case p.Near != nil && p.Near.Topic != 0 && ctx.helped:
		t.kind = helpKind
		return wording.Help(p.Near.Topic, t.settings), nil
	case p.Near != nil:
		t.kind = nearKind
		return wording.Near(*p.Near), nil
	case len(p.Intents) == 0 && t.text == "":
		t.kind = nearKind
		return wording.PhotoAlone(), nil
	case len(p.Intents) == 0:
		t.kind = nearKind
		if post, near, err := t.nearlyOfUnits(); near || err != nil {
			return post, err
		}
		return t.notUnderstood()
	}
	var post chat.Post
	for i := range p.Intents {
		t.rest = p.Intents[i+1:]
		one, err := t.handle(p.Intents[i], ctx)
		var refusal kitchen.Refusal
		if errors.As(err, &refusal) {
			one, err = t.refuse(refusal)
		}
		if err != nil {
			return chat.Post{}, err
		}
		if i == 0 {
			post = one
			continue
		}
		post.Blocks = append(post.Blocks, one.Blocks...)
		post.Buttons = wording.ButtonsBeside(one.Buttons, post.Buttons)
	}
	return post, nil
}

// refuse says why something can't be.
func (t *turn) refuse(r kitchen.Refusal) (chat.Post, error) {
	return t.nothingWritten(wording.RefusedHere(r, wording.Asked{Now: t.arrived(), Who: t.who, Said: t.text}))
}

// nothingWritten is the answer to what can't be written. What an edited message had
// written stands again.
func (t *turn) nothingWritten(post chat.Post) (chat.Post, error) {
	if len(t.mends) > 0 && len(t.replaced) > 0 {
		post.Blocks = append(post.Blocks, wording.ToldStands())
	} else if len(t.replaced) > 0 {
		post.Blocks = append(post.Blocks, wording.StandsAsBefore())
	}
	return post, t.restore()
}

// settle writes what became of the turn, and makes the pings equal to what the
// state wants.
func (t *turn) settle() error {
	if t.entries > 0 {
		if err := t.reconcile(); err != nil {
			return err
		}
	}
	return t.book.SetTurn(store.Turn{
		ID: t.owner, Room: t.room.ID, Member: t.member.No, Kind: t.kind, Said: t.said, Asked: t.asked,
	})
}

// late heads the answer to a message that came long after it was sent.
func (t *turn) late(post chat.Post) chat.Post {
	if t.m.Arrived.Sub(t.m.At) > lateAfter {
		post.Blocks = append([]chat.Block{wording.SentLate(t.now, t.m.Arrived.In(t.now.Location()))}, post.Blocks...)
	}
	return post
}

// queue puts a post into the outbox, in place of the one it corrects.
func (t *turn) queue(post chat.Post) error {
	raw, err := post.Encode()
	if err != nil {
		return err
	}
	replaces, err := t.oldAnswer()
	if err != nil {
		return err
	}
	_, err = t.book.Queue(store.Parcel{
		Room: t.room.ID, Rank: store.InTurn, Post: raw, Slot: post.Slot, Inbox: t.owner, Replaces: replaces, About: t.about,
	}, t.m.Arrived)
	return err
}

// The subjects that entries are about, and the kinds of turns that are looked
// for later.
const (
	kitchenSubject = "kitchen"
	membersSubject = "members"
	startSubject   = "start"

	planKind    = "plan"
	reverseKind = "reverse"
	setKind     = "set"
	tellKind    = "tell"
	helpKind    = "help"
	logKind     = "log"
	coolKind    = "cool"
	unitsKind   = "units"
	whichKind   = "which units"
	askedKind   = "asked"
	nearKind    = "near"
	otherKind   = "other"
)
