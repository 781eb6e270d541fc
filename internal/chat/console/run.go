package console

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ryebell/internal/chat"
)

// ErrInterrupted ends Run when Ctrl-C is typed at a terminal.
var ErrInterrupted = errors.New("interrupted at the terminal")

// Run reads lines until the input or ctx ends and then returns nil. At the end
// of input everything handed in has been answered, as far as Drain tells. Lines
// that cannot be handed over after several tries end it with an error.
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

// longestLine is how long a plain line may be, in bytes.
const longestLine = 1 << 20

// pipe reads plain lines and waits for the answer to each.
func (d *Door) pipe(ctx context.Context, handle chat.Handler) error {
	lines := bufio.NewScanner(d.config.In)
	lines.Buffer(nil, longestLine)
	next := func() (string, error) {
		if lines.Scan() {
			return lines.Text(), nil
		}
		if err := lines.Err(); err != nil {
			return "", err
		}
		return "", io.EOF
	}
	return d.converse(ctx, next, func(ctx context.Context, line string) error {
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
	lines := make(chan typed)
	go func() {
		for {
			line, err := next()
			select {
			case lines <- typed{line, err}:
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
		case l := <-lines:
			switch {
			case errors.Is(l.err, io.EOF):
				return d.config.Drain(ctx)
			case errors.Is(l.err, ErrInterrupted):
				return l.err
			case l.err != nil:
				return fmt.Errorf("read a line: %w", l.err)
			}
			if err := take(ctx, l.line); err != nil {
				return unlessOver(ctx, err)
			}
		}
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
	m := d.message(line)
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
	if err != nil {
		return fmt.Errorf("hand over a line: %w", err)
	}
	return nil
}
