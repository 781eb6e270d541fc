package console

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"golang.org/x/term"

	"ryebell/internal/chat"
)

// Terminal is a keyboard and screen in one.
type Terminal struct {
	raw  func() (restore func() error, err error)
	size func() (width, height int, err error)
}

// Attach finds the terminal that in and out belong to; it returns nil unless
// both do.
func Attach(in, out *os.File) *Terminal {
	if !term.IsTerminal(int(in.Fd())) || !term.IsTerminal(int(out.Fd())) {
		return nil
	}
	return &Terminal{
		raw: func() (func() error, error) {
			before, err := term.MakeRaw(int(in.Fd()))
			if err != nil {
				return nil, err
			}
			return func() error { return term.Restore(int(in.Fd()), before) }, nil
		},
		size: func() (int, int, error) { return term.GetSize(int(out.Fd())) },
	}
}

// edit reads lines through the line editor. Answers come when they come.
func (d *Door) edit(ctx context.Context, handle chat.Handler) (err error) {
	restore, err := d.config.Terminal.raw()
	if err != nil {
		return fmt.Errorf("set up the terminal: %w", err)
	}
	keys := &keyboard{from: d.config.In}
	editor := term.NewTerminal(struct {
		io.Reader
		io.Writer
	}{keys, d.config.Out}, "> ")
	editor.History = loadHistory(d.config.History)
	editor.SetBracketedPasteMode(true)
	d.show(editor)
	defer func() {
		editor.SetBracketedPasteMode(false)
		// The cursor stands behind the prompt, and raw mode wants the \r.
		_, _ = io.WriteString(d.config.Out, "\r\n")
		d.show(d.config.Out)
		err = errors.Join(err, restore())
	}()
	if err := d.greet(); err != nil {
		return err
	}
	next := func() (string, error) {
		// The window may have been resized since the last line.
		if w, h, err := d.config.Terminal.size(); err == nil && w > 0 && h > 0 {
			_ = editor.SetSize(w, h) // it fails as a write does, which the next one tells
		}
		line, err := editor.ReadLine()
		switch {
		case errors.Is(err, term.ErrPasteIndicator):
			err = nil // a line is a line, pasted or typed
		case errors.Is(err, io.EOF) && keys.interrupted.Load():
			err = ErrInterrupted
		}
		return line, err
	}
	return d.converse(ctx, next, func(ctx context.Context, line string) error {
		return d.offer(ctx, handle, line)
	})
}

// show says where posts go from now on.
func (d *Door) show(screen io.Writer) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.screen = screen
}

func (d *Door) greet() error {
	text := chat.Styled(d.config.Greeting, d.columns(), d.style)
	if text == "" {
		return nil
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.print(text + "\n")
}
