package console

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"sync/atomic"

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

// keyInterrupt is what Ctrl-C sends in raw mode, where it is no signal.
const keyInterrupt = 3

// keyboard notes whether Ctrl-C was typed, for the line editor reports it as
// the end of input just like Ctrl-D.
type keyboard struct {
	io.Reader
	interrupted atomic.Bool
}

func (k *keyboard) Read(p []byte) (int, error) {
	n, err := k.Reader.Read(p)
	if bytes.IndexByte(p[:n], keyInterrupt) >= 0 {
		k.interrupted.Store(true)
	}
	return n, err
}

// edit reads lines through the line editor. Answers come when they come.
func (d *Door) edit(ctx context.Context, handle chat.Handler) (err error) {
	restore, err := d.config.Terminal.raw()
	if err != nil {
		return fmt.Errorf("set up the terminal: %w", err)
	}
	keys := &keyboard{Reader: d.config.In}
	editor := term.NewTerminal(struct {
		io.Reader
		io.Writer
	}{keys, d.config.Out}, "> ")
	editor.History = loadHistory(d.config.History)
	d.show(editor)
	defer func() {
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
		if errors.Is(err, io.EOF) && keys.interrupted.Load() {
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
	if _, err := io.WriteString(d.screen, text+"\n"); err != nil {
		return fmt.Errorf("print the greeting: %w", err)
	}
	return nil
}
