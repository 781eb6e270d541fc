package answer

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// runsSubject is what the beginnings of runs are about, so that the next number
// and the board find them.
const runsSubject = "runs"

// runsLookedAt is how many of their newest entries are read for that.
const runsLookedAt = 100

// cook puts an order on: it becomes a run with a number.
func (t *turn) cook(i phrase.Cook, ctx scene) (chat.Post, error) {
	order, err := cooked(i, ctx)
	if err != nil {
		return chat.Post{}, err
	}
	p, err := t.settings.Work(order)
	if err != nil {
		return chat.Post{}, err
	}
	if p.Hold.Time == 0 {
		return chat.Post{}, kitchen.NoPlanYet{} // loose grain goes into no cooker
	}
	no, err := t.nextRun()
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.nameCooker(p.Cooker.Name); err != nil {
		return chat.Post{}, err
	}
	run := kitchen.RunBegun{Run: no, Cooker: p.Cooker.Name, Order: order, Cook: t.member.No}
	if err := t.write(runsSubject, run, t.text); err != nil {
		return chat.Post{}, err
	}
	if err := t.startsMet(); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.said = planKind, phrase.Plan{Order: order}.String()
	return wording.CookedOn(no, t.member.Name, p, t.now), nil
}

// nameCooker keeps the name of a cooker that was first named by cooking in it.
func (t *turn) nameCooker(name string) error {
	if _, known := t.settings.CookerNamed(name); known || name == "" {
		return nil
	}
	if err := t.write(kitchenSubject, kitchen.CookerIs{Name: name}, t.text); err != nil {
		return err
	}
	return t.loadSettings()
}

// cooked is the order that is put on: the one said, else the one just planned.
func cooked(i phrase.Cook, ctx scene) (kitchen.Order, error) {
	var order kitchen.Order
	switch {
	case i.Order != nil:
		order = *i.Order
	case ctx.plan != nil:
		order = ctx.plan.Order
	default:
		return order, kitchen.NoPlanYet{}
	}
	if i.Cooker != "" {
		order.Cooker = i.Cooker
	}
	return order, nil
}

// nextRun is the next free number. A number that was taken back is not used
// again.
func (t *turn) nextRun() (kitchen.RunNo, error) {
	last, err := t.book.Latest(runsSubject, runsLookedAt)
	if err != nil {
		return 0, err
	}
	for _, e := range last {
		if run, ok := e.Entry.(kitchen.RunBegun); ok {
			return run.Run + 1, nil
		}
	}
	return 1, nil
}

// runNo finds a run by its number.
func (t *turn) runNo(no kitchen.RunNo) (kitchen.RunBegun, error) {
	runs, err := t.book.Standing(runsSubject)
	if err != nil {
		return kitchen.RunBegun{}, err
	}
	for _, r := range runs {
		if run, ok := r.Entry.(kitchen.RunBegun); ok && run.Run == no {
			return run, nil
		}
	}
	return kitchen.RunBegun{}, kitchen.NoSuchRun{Run: no}
}

// boardReaches is how far the board looks back.
const boardReaches = 12 * time.Hour

// board says who put what on lately.
func (t *turn) board() (chat.Post, error) {
	runs, err := t.book.Latest(runsSubject, runsLookedAt)
	if err != nil {
		return chat.Post{}, err
	}
	var rows []wording.BoardRow
	for _, e := range runs {
		run, ok := e.Entry.(kitchen.RunBegun)
		if !ok || e.StruckBy != 0 || t.m.At.Sub(e.At) > boardReaches {
			continue
		}
		cook, err := t.book.Member(run.Cook)
		if err != nil {
			return chat.Post{}, err
		}
		rows = append(rows, wording.BoardRow{No: run.Run, Cook: cook.Name, Cooker: run.Cooker, Since: e.At, Order: run.Order})
	}
	return wording.Board(rows, t.now), nil
}

// remindStart asks for a ping at the latest start of the plan talked about.
func (t *turn) remindStart(ctx scene) (chat.Post, error) {
	if ctx.plan == nil || ctx.plan.OutBy == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	p, err := t.settings.Work(ctx.plan.Order)
	if err != nil {
		return chat.Post{}, err
	}
	start, out, err := deadline(*ctx.plan.OutBy, p, ctx.at.In(t.now.Location()), t.now)
	if late, ok := errors.AsType[kitchen.TooLate](err); ok {
		return wording.TooLate(late, ctx.plan.Order), nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	wanted := kitchen.StartWanted{Order: ctx.plan.Order, Start: start.UTC(), OutBy: out.UTC(), For: t.member.No, Room: int64(t.room.ID)}
	if err := t.write(startSubject, wanted, t.text); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.said = planKind, ctx.plan.String()
	return wording.WillRemind(start, t.now), nil
}

// startsMet says that the starts this member waits for have happened.
func (t *turn) startsMet() error {
	starts, err := t.book.Standing(startSubject)
	if err != nil {
		return err
	}
	for _, s := range kitchen.FoldStarts(starts) {
		if s.For == t.member.No {
			if err := t.write(startSubject, kitchen.StartMet{No: s.No}, ""); err != nil {
				return err
			}
		}
	}
	return nil
}

// reconcile makes the pings equal to what the state wants.
func (t *turn) reconcile() error {
	starts, err := t.book.Standing(startSubject)
	if err != nil || len(starts) == 0 {
		return err
	}
	var want []kitchen.Ping
	for _, s := range kitchen.FoldStarts(starts) {
		want = append(want, s.Wants()...)
	}
	return t.book.Reconcile(kitchen.StartPrefix, want, t.m.Arrived)
}

// Ping queues the post of a ping that is due, within the transaction that marks
// it as fired.
func (a *Answerer) Ping(tx *store.Tx, row store.PingRow, now time.Time) error {
	book := tx.Book(row.Collective)
	settings, err := a.settingsOf(book)
	if err != nil {
		return err
	}
	now = now.In(a.zoneOf(settings))
	switch row.Kind {
	case kitchen.StartNow:
		return a.startNow(book, row, now)
	}
	panic(fmt.Sprintf("ping kind %d without a post", row.Kind))
}

// startNow is the ping that an order must be lit.
func (a *Answerer) startNow(book *store.Book, row store.PingRow, now time.Time) error {
	no, ok := startNo(row.Key)
	if !ok {
		return fmt.Errorf("ping key %q names no entry", row.Key)
	}
	e, err := book.Entry(no)
	if err != nil {
		return err
	}
	start, ok := e.Entry.(kitchen.StartWanted)
	if !ok {
		return fmt.Errorf("entry %d wants no start", no)
	}
	who, err := mention(book, start.For)
	if err != nil {
		return err
	}
	post := wording.StartNow(who, start.Order, start.OutBy, now, now.Sub(row.Due))
	raw, err := post.Encode()
	if err != nil {
		return err
	}
	_, err = book.Queue(store.Parcel{Room: store.RoomID(row.Room), Rank: store.InTurn, Post: raw, About: row.Key}, now)
	return err
}

// mention is a member as a span that rings for them on the platform of their
// first account.
func mention(book *store.Book, no kitchen.MemberNo) (chat.Span, error) {
	m, err := book.Member(no)
	if err != nil {
		return nil, err
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
	no, err := strconv.Atoi(strings.TrimPrefix(key, kitchen.StartPrefix))
	return kitchen.EntryNo(no), err == nil && strings.HasPrefix(key, kitchen.StartPrefix)
}
