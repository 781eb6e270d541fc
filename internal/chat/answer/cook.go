package answer

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// cook puts the next load of an order on: it becomes a run with a number.
func (t *turn) cook(i phrase.Cook, ctx scene) (chat.Post, error) {
	if i.Order != nil {
		ctx.plan, ctx.planTurn = &phrase.Plan{Order: *i.Order}, t.owner
	}
	if ctx.plan != nil && i.Cooker != "" {
		moved := *ctx.plan
		moved.Order.Cooker = i.Cooker
		ctx.plan = &moved
	}
	if err := t.loadScene(i, &ctx); err != nil {
		return chat.Post{}, err
	}
	if err := t.loadMeant(i.Load, ctx); err != nil {
		return chat.Post{}, err
	}
	if err := t.inFreeCooker(&ctx); err != nil {
		return chat.Post{}, err
	}
	run, err := t.begin(ctx, t.m.At)
	if err != nil {
		return chat.Post{}, err
	}
	ask, due, err := t.gearDue(run)
	if err != nil {
		return chat.Post{}, err
	}
	p, err := t.settings.Work(ctx.plan.Order)
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.BegunView{Run: run, Plan: p, Load: run.Load, Now: t.arrived(), Who: t.who, First: t.once(run.No)}
	if due {
		view.Gear = &ask
	}
	if view.Beside, err = t.beside(run); err != nil {
		return chat.Post{}, err
	}
	if view.Booked, err = t.booked(run); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.about, t.said = planKind, run.No.Subject(), phrase.Plan{Order: ctx.plan.Order}.String()
	return wording.Begun(view), nil
}

// inFreeCooker puts the plan talked about into a cooker that nobody cooks in, if it
// named none. Later loads of a plan go where the first went.
func (t *turn) inFreeCooker(ctx *scene) error {
	if ctx.plan == nil {
		return nil
	}
	origin, err := t.originOf(ctx.planTurn)
	if err != nil {
		return err
	}
	before, err := t.book.RunsOfPlan(origin)
	if err != nil || len(before) > 0 {
		return err
	}
	open, err := t.openRuns()
	if err != nil {
		return err
	}
	name, other := t.settings.FreeCooker(ctx.plan.Order, func(cooker string) bool {
		return len(only(open, func(r kitchen.Run) bool { return sameCooker(r.Cooker, cooker) && r.Stage < kitchen.StageCooling })) > 0
	})
	if other {
		moved := *ctx.plan
		moved.Order.Cooker = name
		ctx.plan = &moved
	}
	return nil
}

// beside is another run that has not left the cooker of one; zero for none.
func (t *turn) beside(run kitchen.Run) (kitchen.Run, error) {
	open, err := t.openRuns()
	return firstRun(only(open, func(r kitchen.Run) bool {
		return r.No != run.No && sameCooker(r.Cooker, run.Cooker) && r.Stage < kitchen.StageCooling
	})), err
}

// booked is the first booking of somebody else that a run would run into; zero
// for none.
func (t *turn) booked(run kitchen.Run) (kitchen.Booking, error) {
	stand, err := t.bookings()
	if err != nil {
		return kitchen.Booking{}, err
	}
	way := run.InTheWay(stand, t.m.At)
	if len(way) == 0 {
		return kitchen.Booking{}, nil
	}
	return way[0], nil
}

// begin makes the next load of the plan talked about a run, cooked by the speaker.
func (t *turn) begin(ctx scene, at time.Time) (kitchen.Run, error) {
	begun, err := t.toBegin(ctx)
	if err != nil {
		return kitchen.Run{}, err
	}
	if err := t.nameCooker(begun.Cooker); err != nil {
		return kitchen.Run{}, err
	}
	if err := t.writeAt(begun.Run.Subject(), begun, at); err != nil {
		return kitchen.Run{}, err
	}
	if err := t.saveRuns(); err != nil { // so that the next load gets the next number
		return kitchen.Run{}, err
	}
	if err := t.startsMet(ctx.plan.Order); err != nil {
		return kitchen.Run{}, err
	}
	return t.theRun(begun.Run)
}

// toBegin is what begins the next load of the plan talked about. It writes nothing.
func (t *turn) toBegin(ctx scene) (kitchen.RunBegun, error) {
	var none kitchen.RunBegun
	if ctx.plan == nil {
		return none, kitchen.NoPlanYet{}
	}
	p, err := t.settings.Work(ctx.plan.Order)
	if err != nil {
		return none, err
	}
	if p.Hold.Time == 0 {
		return none, kitchen.NoPlanYet{} // loose grain goes into no cooker
	}
	if p.Hold.TooLong {
		return none, kitchen.TooLongHere{Hold: p.Hold}
	}
	origin, err := t.originOf(ctx.planTurn)
	if err != nil {
		return none, err
	}
	before, err := t.book.RunsOfPlan(origin)
	if err != nil {
		return none, err
	}
	loads := p.Orders()
	if err := t.loadFree(before, len(loads)); err != nil {
		return none, err
	}
	no, err := t.book.NextRun()
	if err != nil {
		return none, err
	}
	begun := kitchen.RunBegun{
		Run: no, Cooker: p.Cooker.Name, Order: loads[len(before)], Cook: t.member.No, Room: int64(t.room.ID), Turn: int64(origin),
		Load: len(before) + 1, Loads: len(loads),
	}
	if n := len(before); n > 0 {
		begun.Follows = before[n-1].No
	}
	return begun, nil
}

// originOf is the turn that made a plan: of a turn that put one on, the one it
// was put on from.
func (t *turn) originOf(turn store.InboxID) (store.InboxID, error) {
	entries, err := t.book.EntriesOf(turn)
	if err != nil {
		return 0, err
	}
	for _, e := range entries {
		if begun, ok := e.Entry.(kitchen.RunBegun); ok && begun.Turn != 0 {
			return store.InboxID(begun.Turn), nil
		}
	}
	return turn, nil
}

// loadScene finds the plan whose next load is meant: that of the run talked about,
// else of the newest run that has one to come.
func (t *turn) loadScene(i phrase.Cook, ctx *scene) error {
	if i.Load == 0 {
		return nil
	}
	rows, err := t.book.LastRuns(lastRuns)
	if err != nil {
		return err
	}
	runs, err := t.folded(rows)
	if err != nil {
		return err
	}
	for _, r := range runs {
		if ctx.run != 0 && r.No != ctx.run || r.Turn == 0 || r.Loads < 2 {
			continue
		}
		turn, err := t.book.Turn(store.InboxID(r.Turn))
		if err != nil {
			return err
		}
		if of := t.sceneOf(turn); of.plan != nil {
			ctx.plan, ctx.at, ctx.planTurn = of.plan, of.at, of.planTurn
			return nil
		}
	}
	return nil
}

// loadMeant refuses a load named by number that is not the next one.
func (t *turn) loadMeant(load int, ctx scene) error {
	if load <= 0 || ctx.plan == nil {
		return nil // none was named, or the next one
	}
	origin, err := t.originOf(ctx.planTurn)
	if err != nil {
		return err
	}
	before, err := t.book.RunsOfPlan(origin)
	if err != nil || load == len(before)+1 || len(before) == 0 {
		return err
	}
	last := before[len(before)-1]
	return kitchen.AlreadyOn{Run: last.No, By: last.Cook, At: last.Begun, More: load - len(before)}
}

// loadFree refuses a load that is on already, or whose cooker isn't free yet: a
// tap that comes twice begins nothing twice.
func (t *turn) loadFree(before []store.RunRow, loads int) error {
	n := len(before)
	if n == 0 {
		return nil
	}
	last, err := t.theRun(before[n-1].No)
	if err != nil {
		return err
	}
	if n >= loads || last.Stage < kitchen.StageCooling {
		return kitchen.AlreadyOn{Run: last.No, By: last.Cook, At: last.Begun, More: loads - n, Stage: last.Stage}
	}
	return nil
}

// nameCooker keeps the name of a cooker that was first named by cooking in it.
func (t *turn) nameCooker(name string) error {
	if _, known := t.settings.CookerNamed(name); known || name == "" {
		return nil
	}
	if err := t.write(kitchenSubject, kitchen.CookerIs{Name: name}, t.text); err != nil {
		return err
	}
	return t.reload()
}

// runNo finds the beginning of a run by its number.
func (t *turn) runNo(no kitchen.RunNo) (kitchen.RunBegun, error) {
	if no == 0 {
		rows, err := t.book.LastRuns(1)
		if err != nil || len(rows) == 0 {
			return kitchen.RunBegun{}, orElse(err, kitchen.NoPlanYet{})
		}
		no = rows[0].No
	}
	records, err := t.book.Standing(no.Subject())
	if err != nil {
		return kitchen.RunBegun{}, err
	}
	for _, r := range records {
		if run, ok := r.Entry.(kitchen.RunBegun); ok {
			return run, nil
		}
	}
	return kitchen.RunBegun{}, kitchen.NoSuchRun{Run: no}
}

func orElse(err, otherwise error) error {
	if err != nil {
		return err
	}
	return otherwise
}

// board says what is on, and who has the cooker next.
func (t *turn) board() (chat.Post, error) {
	open, err := t.openRuns()
	if err != nil {
		return chat.Post{}, err
	}
	burning, err := t.mayBurn()
	if err != nil {
		return chat.Post{}, err
	}
	open = append(open, burning...)
	bookings, err := t.bookings()
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.BoardView{For: t.member.No, Rows: kitchen.Board(open, t.m.Arrived), Bookings: ahead(bookings, t.m.At), Now: t.arrived(), Who: t.who}
	return wording.BoardOf(view), nil
}
