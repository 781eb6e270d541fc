package answer

import (
	"fmt"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// handle gives an intent to its handler. Each case is one line; the handlers
// stand in the file of their capability.
func (t *turn) handle(intent phrase.Intent, ctx scene) (chat.Post, error) {
	t.kind = otherKind
	switch i := intent.(type) {
	case phrase.Plan:
		return t.plan(i, t.now)
	case phrase.Add:
		return t.add(i, ctx)
	case phrase.Drop:
		return t.drop(i, ctx)
	case phrase.StartAt:
		return t.startAt(i, ctx)
	case phrase.PlanIt:
		return t.planIt(i, ctx)
	case phrase.Reverse:
		return t.reverse(i)
	case phrase.SameAs:
		return t.sameAs(i)
	case phrase.Usual:
		return t.usual(i)
	case phrase.MakeUsual:
		return t.makeUsual(ctx)
	case phrase.OutBy:
		return t.outBy(i, ctx)
	case phrase.RemindStart:
		return t.remindStart(ctx)
	case phrase.Cook:
		return t.cook(i, ctx)
	case phrase.Set:
		return t.set(i)
	case phrase.Kitchen:
		return wording.Kitchen(t.settings), nil
	case phrase.Members:
		return t.members()
	case phrase.GiveRole:
		return t.giveRole(i)
	case phrase.Rename:
		return t.rename(i)
	case phrase.Claim:
		return t.claimAgain(i)
	case phrase.NewCode:
		return t.newCode()
	case phrase.Forget:
		return t.forget(i)
	case phrase.Why:
		return t.why(i, ctx)
	case phrase.Help:
		t.kind = helpKind
		return wording.Help(i.Topic, t.settings), nil
	case phrase.Undo:
		return t.undo(ctx)
	case phrase.Correct:
		return t.correct(i, ctx)
	case phrase.Choose:
		return t.askAgain(ctx)
	case phrase.Greet:
		return wording.Greeting(), nil
	case phrase.Thanks:
		return wording.Welcome(), nil
	case phrase.Board:
		return t.boardOf(i, ctx)
	case phrase.Tell:
		return t.tell(i, ctx)
	case phrase.ShiftTime:
		return t.shiftTime(i, ctx)
	case phrase.TakeOver:
		return t.takeOver(i, ctx)
	case phrase.HandOver:
		return t.handOver(i, ctx)
	case phrase.AnswerPing:
		return t.answerPing(i, ctx)
	case phrase.CoolYet:
		return t.coolYet(i, ctx)
	case phrase.Chart:
		return t.chart(i, ctx)
	case phrase.TimesRecord:
		return t.timesRecord()
	case phrase.Log:
		return t.logOf(i, ctx)
	case phrase.Steps:
		return t.steps(i, ctx)
	case phrase.Book:
		return t.bookCooker(i)
	case phrase.Unbook:
		return t.unbook(i)
	case phrase.Bookings:
		return t.listBookings()
	case phrase.GearTold:
		return t.gearTold(i, ctx)
	case phrase.Quiet:
		return t.quiet(i)
	case phrase.PingsWhere:
		return t.pingsWhere(i)
	case phrase.WhyPing:
		return t.whyPing(i, ctx)
	case phrase.SomeUnits:
		return t.someUnits(i)
	case phrase.TellUnits:
		return t.tellUnits(i, ctx)
	case phrase.Arrive:
		return t.arrive(i)
	case phrase.MakeCulture:
		return t.makeCulture(i)
	case phrase.EndCulture:
		return t.endCulture(i)
	case phrase.Cultures:
		return t.cultures(i)
	case phrase.Shelf:
		return t.shelf(i)
	case phrase.WhereIs:
		return t.whereIs(i, ctx)
	case phrase.ReadyWhen:
		return t.readyWhen(i, ctx)
	case phrase.Trace:
		return t.trace(i, ctx)
	case phrase.LogUnit:
		return t.logUnit(i, ctx)
	}
	panic(fmt.Sprintf("intent %T without a handler", intent))
}
