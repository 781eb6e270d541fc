package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/user"
	"path/filepath"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"ryebell/internal/chat"
	"ryebell/internal/chat/console"
	"ryebell/internal/chat/wording"
	"ryebell/internal/store"
)

// serve opens the book and answers in the terminal until the input or ctx ends.
func (p program) serve(ctx context.Context, c config, o options) error {
	book := filepath.Join(c.Data, store.FileName)
	_, missing := os.Stat(book)
	db, err := store.Open(ctx, c.Data, store.Config{})
	if err != nil {
		return ofBook(c.Data, err)
	}
	terminal := p.terminal()
	if terminal != nil {
		fmt.Fprintf(p.stderr, "book: %s%s\n", shortened(book, p.env), newMark(missing))
	}
	err = p.talk(ctx, db, c, console.Config{
		In: p.stdin, Out: p.stdout, Terminal: terminal,
		Person:    chat.Person{Door: chat.Console, ID: "keyboard", Name: userName(p.env, loginName())},
		Zone:      time.Local,
		History:   filepath.Join(c.Data, "history"),
		Downloads: filepath.Join(c.Data, "files"),
		Getenv:    p.env.get,
		NoColor:   o.noColor,
		Greeting:  wording.Greeting(),
		Lost:      wording.Lost(),
	})
	return ofBook(c.Data, errors.Join(err, db.Close()))
}

// talk runs the house with the terminal as its door. Somebody at a terminal needs
// no code: the book gets a collective for them at the first start.
func (p program) talk(ctx context.Context, db *store.DB, c config, cc console.Config) error {
	var h *house
	cc.Drain = func(ctx context.Context) error { return h.drain(ctx, chat.Console) }
	door := console.New(cc)
	h = wire(db, localZone(p.env, os.Readlink), logger(door.Above(p.stderr), c.Log), door)
	if err := h.answerer.CatchUp(ctx); err != nil {
		return err
	}
	if err := h.found(ctx, console.Room(), cc.Person, time.Now()); err != nil {
		return err
	}
	return h.run(ctx)
}

// terminal is the one that stdin and stdout belong to; nil when they are
// something else.
func (p program) terminal() *console.Terminal {
	in, ok := p.stdin.(*os.File)
	if !ok {
		return nil
	}
	out, ok := p.stdout.to.(*os.File)
	if !ok {
		return nil
	}
	return console.Attach(in, out)
}

func newMark(missing error) string {
	if errors.Is(missing, os.ErrNotExist) {
		return " (new)"
	}
	return ""
}

// shortened writes the user's home folder as ~.
func shortened(path string, env environ) string {
	home := env.get("HOME")
	if rest, ok := strings.CutPrefix(path, home+string(filepath.Separator)); ok && home != "" {
		return filepath.Join("~", rest)
	}
	return path
}

// loginName is what the system calls its user; empty if it has no name for them, as
// in some containers.
func loginName() string {
	u, err := user.Current()
	if err != nil {
		return ""
	}
	return u.Username
}

// userName is what the person at the keyboard is called in posts: their name on this
// machine with a capital, or Cook.
func userName(env environ, login string) string {
	for _, name := range []string{env.get("USER"), env.get("LOGNAME"), env.get("USERNAME"), login} {
		name = name[strings.LastIndexByte(name, '\\')+1:] // Windows puts the domain before it
		first, size := utf8.DecodeRuneInString(name)
		if unicode.IsLetter(first) {
			return string(unicode.ToTitle(first)) + name[size:]
		}
	}
	return "Cook"
}
