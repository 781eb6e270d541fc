package rehearse

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/lines"
)

// World is the bot that a script is played against.
type World struct {
	// Turn takes what is said.
	Turn chat.Handler
	// Deliver sends what the outbox holds and is due at now through the door,
	// and returns when that is done.
	Deliver func(ctx context.Context, now time.Time) error
	// Next is when the earliest ping or retry is due, false if none waits.
	Next func(ctx context.Context) (time.Time, bool, error)
	// FireDue fires the pings due at now or before. What it leaves must be
	// due later, or be sent by Deliver.
	FireDue func(ctx context.Context, now time.Time) error
}

// Play reads a script to its end and plays it line by line, so that it can be
// typed as well. Everything due is delivered before it returns. Several
// scripts played through one door are one rehearsal. The error is an [*Error]
// if the script is at fault, and the lines before it have been played. A post that
// can't be printed ends it too.
func Play(ctx context.Context, script io.Reader, d *Door, w World) error {
	p := player{door: d, world: w}
	if err := p.settle(ctx); err != nil {
		return err
	}
	from := lines.NewReader(script)
	for n := 1; ; n++ {
		line, err := from.Next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return fmt.Errorf("read script: %w", err)
		}
		if err := p.line(ctx, line); err != nil {
			if why, ok := errors.AsType[fault](err); ok {
				return &Error{Line: n, Text: strings.TrimSpace(line), Why: string(why)}
			}
			return fmt.Errorf("line %d: %w", n, err)
		}
	}
}

// fault is an error of the script and not of the world.
type fault string

func (f fault) Error() string { return string(f) }

type player struct {
	door  *Door
	world World
}

func (p player) line(ctx context.Context, text string) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	s, err := parse(text)
	if err != nil {
		return fault(err.Error())
	}
	switch s := s.(type) {
	case nil:
		return nil
	case say:
		m, err := p.door.message(s)
		if err != nil {
			return err
		}
		return p.turn(ctx, m)
	case tap:
		m, err := p.door.tapped(s)
		if err != nil {
			return err
		}
		return p.turn(ctx, m)
	case advance:
		return p.advance(ctx, p.door.Now().Add(s.by), s.power)
	case until:
		return p.advance(ctx, s.at.next(p.door.Now()), up)
	}
	panic(fmt.Sprintf("rehearse: step %T", s))
}

func (p player) turn(ctx context.Context, m chat.Message) error {
	if err := p.world.Turn(ctx, m); err != nil {
		return fmt.Errorf("turn: %w", err)
	}
	return p.settle(ctx)
}

// advance moves the clock to a later instant and stops at each due ping on
// the way, unless the bot is down.
func (p player) advance(ctx context.Context, to time.Time, power power) error {
	for power == up {
		due, ok, err := p.world.Next(ctx)
		if err != nil {
			return fmt.Errorf("next due: %w", err)
		}
		if !ok || due.After(to) {
			break
		}
		p.door.set(due)
		if err := p.settle(ctx); err != nil {
			return err
		}
	}
	p.door.set(to)
	return p.settle(ctx)
}

// rounds is how often one instant may bring forth something more that is due
// at once; a world that needs more would never come to rest.
const rounds = 1000

// settle delivers and fires until nothing is due at the present instant.
func (p player) settle(ctx context.Context) error {
	now := p.door.Now()
	for range rounds {
		if err := p.world.Deliver(ctx, now.UTC()); err != nil {
			return fmt.Errorf("deliver: %w", err)
		}
		if err := p.door.failure(); err != nil {
			return err
		}
		due, ok, err := p.world.Next(ctx)
		if err != nil {
			return fmt.Errorf("next due: %w", err)
		}
		if !ok || due.After(now) {
			return nil
		}
		if err := p.world.FireDue(ctx, now.UTC()); err != nil {
			return fmt.Errorf("fire what is due: %w", err)
		}
	}
	return fmt.Errorf("something stays due at %s", now.Format(time.RFC3339))
}
