package answer

import (
	"errors"
	"strings"

	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// ofUnits reports whether a ping is about units, which a post of their own tells of.
func ofUnits(k kitchen.PingKind) bool { return k.Daily() || k == kitchen.LookAgain }

// units queues the post of pings about units. Those that nothing wants any more are
// left out.
func (p pinging) units(rows []store.PingRow) error {
	past, err := grownBefore(p.book)
	if err != nil {
		return err
	}
	view := wording.UnitsPingView{Now: p.now}
	for _, row := range rows {
		ask, wanted, err := p.unitsAsk(row, past)
		if err != nil {
			return err
		}
		if wanted {
			view.Asks, view.Late = append(view.Asks, ask), max(view.Late, row.Late(p.now))
		}
	}
	if len(view.Asks) == 0 {
		return nil
	}
	if to := rows[0].To; to != 0 {
		if view.To, err = mention(p.book, to); err != nil {
			return err
		}
	}
	var keys []string
	for _, a := range view.Asks {
		keys = append(keys, a.Due.Key)
	}
	return p.queue(wording.UnitsPing(view), strings.Join(keys, " "), rows...)
}

// unitsAsk is what a ping about units asks; false when nothing wants it any more.
func (p pinging) unitsAsk(row store.PingRow, past []kitchen.Grown) (wording.UnitsAsk, bool, error) {
	no, _ := runOf(row.Key)
	load, err := loadOf(p.book, no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return wording.UnitsAsk{}, false, nil // taken back in between
	}
	if err != nil {
		return wording.UnitsAsk{}, false, err
	}
	due, wanted := kitchen.DueAs(row.Key, load.Wants(p.settings, past))
	ask := wording.UnitsAsk{Load: load, Due: due}
	if !load.Arrived {
		ask.Run, err = foldRun(p.book, no)
	}
	return ask, wanted, err
}
