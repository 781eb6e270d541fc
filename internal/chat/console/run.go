package console

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

// ErrInterrupted ends Run when Ctrl-C is typed at a terminal.
var ErrInterrupted = errors.New("interrupted at the terminal")

// Run reads lines until the input or ctx ends and then returns nil. At the end
// of input everything handed in has been answered, as far as Drain tells. A line
// that cannot be handed over after several tries is given up, and the person is told.
// When nothing can be printed any more Run ends with that error.
//
// A read that waits for a keyboard cannot be called back: when ctx ends before
// the input does, one goroutine stays until the next line or the end of the
// process, and what it reads then is not handed over.
func (d *Door) Run(ctx context.Context, handle chat.Handler) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	if d.config.Terminal != nil {
		return d.edit(ctx, handle)
	}
	return d.pipe(ctx, handle)
}

// pipe reads plain lines and waits for the answer to each.
func (d *Door) pipe(ctx context.Context, handle chat.Handler) error {
	from := lines.NewReader(d.config.In)
	return d.converse(ctx, from.Next, func(ctx context.Context, line string) error {
		if err := d.offer(ctx, handle, line); err != nil {
			return err
		}
		return d.config.Drain(ctx)
	})
}

type typed struct {
	line string
	err  error
}

// converse hands on one line after the other. Lines are read in a goroutine
// of their own, because only so can Run end while a read is waiting.
func (d *Door) converse(ctx context.Context, next func() (string, error), take func(context.Context, string) error) error {
	read := make(chan typed)
	go func() {
		for {
			line, err := next()
			select {
			case read <- typed{line, err}:
			case <-ctx.Done():
				return
			}
			if err != nil {
				return
			}
		}
	}()
	for {
		select {
		case <-ctx.Done():
			return nil
		case err := <-d.broken:
			return err
		case l := <-read:
			switch {
			case errors.Is(l.err, io.EOF):
				if err := d.config.Drain(ctx); err != nil {
					return err
				}
				return d.failure()
			case errors.Is(l.err, ErrInterrupted):
				return l.err
			case l.err != nil:
				return fmt.Errorf("read a line: %w", l.err)
			}
			if err := take(ctx, l.line); err != nil {
				return unlessOver(ctx, err)
			}
			if err := d.failure(); err != nil {
				return err
			}
		}
	}
}

// failure is why nothing can be printed; nil while it can.
func (d *Door) failure() error {
	select {
	case err := <-d.broken:
		return err
	default:
		return nil
	}
}

// unlessOver drops an error that is only the end of ctx.
func unlessOver(ctx context.Context, err error) error {
	if ctx.Err() != nil && errors.Is(err, ctx.Err()) {
		return nil
	}
	return err
}

// pauses are the waits between tries to hand over a message, long enough for
// a disk that is busy with a backup.
var pauses = []time.Duration{200 * time.Millisecond, time.Second, 5 * time.Second}

// offer hands a line over, again if it was not taken. The event stays the
// same, so that a line that was taken after all is known.
func (d *Door) offer(ctx context.Context, handle chat.Handler, line string) error {
	line = strings.TrimSpace(strings.ToValidUTF8(line, "\uFFFD"))
	if line == "" {
		return nil
	}
	m := d.message(lines.Said(line))
	err := handle(ctx, m)
	for _, pause := range pauses {
		if err == nil {
			return nil
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(pause):
		}
		err = handle(ctx, m)
	}
	switch {
	case err == nil:
		return nil
	case ctx.Err() != nil:
		return ctx.Err()
	case len(d.config.Lost.Blocks) == 0:
		return fmt.Errorf("hand over a line: %w", err)
	}
	_, err = d.Send(ctx, chat.Parcel{Room: Room(), Post: d.config.Lost})
	return err
}
