package wording

import (
	"testing"
	"time"

	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// The deadline that is offered when one can't be met is read back as that very
// instant, today, tomorrow, in some days or weeks.
func TestLateOffersWhatParses(t *testing.T) {
	now := time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)
	order := kitchen.Order{Items: []kitchen.Item{{Count: 9, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}, Route: kitchen.Agar}}, Hold: 90 * time.Minute}
	for _, takes := range []time.Duration{time.Hour, 6 * time.Hour, 20 * time.Hour, 50 * time.Hour, 7 * 24 * time.Hour, 20 * 24 * time.Hour} {
		late := kitchen.TooLate{Now: now, OutBy: now, Start: now.Add(-takes), Soonest: now.Add(takes), Loads: 2}
		post := TooLate(late, order)
		fits(t, post, 8)
		parsed := phrase.Parse(post.Buttons[0].Say, phrase.Names{})
		if len(parsed.Intents) != 1 {
			t.Errorf("after %v: %q is %d intents", takes, post.Buttons[0].Say, len(parsed.Intents))
			continue
		}
		p, ok := parsed.Intents[0].(phrase.Plan)
		if !ok || p.OutBy == nil {
			t.Errorf("after %v: %q is no plan with a deadline", takes, post.Buttons[0].Say)
			continue
		}
		want := now.Add(takes + 10*time.Minute)
		if got := p.OutBy.Resolve(now, phrase.Forward); len(got) == 0 || !got[0].Equal(want) {
			t.Errorf("after %v: %q is %v, want %v", takes, post.Buttons[0].Say, got, want)
		}
	}
}
