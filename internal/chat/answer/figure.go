package answer

import (
	"errors"
	"time"

	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// figureLasts is how long after the bot asked for a pressure a figure alone still is one.
const figureLasts = 2 * time.Hour

// gaugeFigure takes a figure alone for what the gauge shows, where the bot asked the
// cook for that last: "at 15 psi say at pressure". False where it is none.
func (t *turn) gaugeFigure(p phrase.Parsed, ctx scene) (phrase.Parsed, bool, error) {
	if !choosing(p) && (len(p.Intents) > 0 || p.Ask != nil || p.Near != nil) {
		return p, false, nil
	}
	shown, ok := phrase.GaugeFigure(t.text, t.names)
	if !ok {
		return p, false, nil
	}
	run, spoken, err := t.spokenOf(ctx)
	if err != nil || !spoken || !t.isOwn(run) || run.Stage != kitchen.StageRising {
		return p, false, err // where pressure was lost it may be how low it fell
	}
	e := kitchen.AtPressure{Gauge: shown}
	t.text = phrase.Tell{Which: phrase.Which{Run: run.No}, Entries: []kitchen.RunEntry{e}}.String()
	return phrase.Parse(t.text, t.names), true, nil
}

// spokenOf is the run that the post replied to is about, or that the bot spoke of last to
// the speaker in this room, in an answer to something told or in a ping, not long ago.
func (t *turn) spokenOf(ctx scene) (kitchen.Run, bool, error) {
	no := ctx.run
	if !ctx.post {
		newest, err := t.newestTurn()
		if err != nil {
			return kitchen.Run{}, false, err
		}
		came, _, err := t.pingsOfOpen("")
		if err != nil {
			return kitchen.Run{}, false, err
		}
		switch {
		case came.Fired.After(newest.At) && !came.Fired.After(t.m.At) && t.m.At.Sub(came.Fired) <= figureLasts:
			no, _ = runOf(came.Key)
		case newest.Kind == tellKind && t.m.At.Sub(newest.At) <= figureLasts:
			rows, err := t.book.RowsOf(newest.ID)
			if err != nil || len(rows) == 0 {
				return kitchen.Run{}, false, err
			}
			no, _ = runOf(rows[len(rows)-1].About)
		}
	}
	if no == 0 {
		return kitchen.Run{}, false, nil
	}
	run, err := t.theRun(no)
	var none kitchen.Refusal // it was taken back, or arrived and was no run
	if errors.As(err, &none) {
		return kitchen.Run{}, false, nil
	}
	return run, err == nil, err
}
