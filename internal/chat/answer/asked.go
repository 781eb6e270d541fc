package answer

import (
	"errors"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// holdOf says how long a container is held here, and why: of the plan talked about
// nothing changes.
func (t *turn) holdOf(i phrase.Why) (chat.Post, error) {
	order := kitchen.Order{Items: []kitchen.Item{{Count: 1, Container: i.Of}}}
	p, err := t.settings.Work(order)
	if err != nil {
		return chat.Post{}, err
	}
	return wording.HoldOf(p, t.settings), nil
}

// waterOf shows how much water a run takes.
func (t *turn) waterOf(i phrase.Why, ctx scene) (chat.Post, error) {
	run, err := t.which(i.Which, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() })
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	ctx.run, ctx.turn, i.Which = run.No, nil, phrase.Which{}
	return t.whyPlan(i, ctx)
}

// boardOf says what is on, or what the run is doing that was named.
func (t *turn) boardOf(i phrase.Board, ctx scene) (chat.Post, error) {
	if i.Which == (phrase.Which{}) {
		return t.board()
	}
	run, err := t.which(i.Which, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() })
	if errors.As(err, new(nothingOn)) {
		return t.board() // what is on, if not there
	}
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	t.about = run.No.Subject()
	return wording.Doing(run, t.arrived(), t.who), nil
}
