package main

import (
	"errors"
	"fmt"

	"ryebell/internal/store"
)

// bookError is a failure of the book in a folder.
type bookError struct {
	folder string
	err    error
}

func (e bookError) Error() string { return fmt.Sprintf("book in %s: %v", e.folder, e.err) }

func (e bookError) Unwrap() error { return e.err }

// ofBook says of which book an error is, if a person can do something about it.
func ofBook(folder string, err error) error {
	for _, e := range explanations() {
		if errors.Is(err, e.of) {
			return bookError{folder, err}
		}
	}
	return err
}

// explanation is what a person can do about an error of the book. The text takes
// the folder.
type explanation struct {
	of   error
	text string
}

// explanations are in the order in which they are looked through: what has two
// causes is told by the one that ended the program.
func explanations() []explanation {
	return []explanation{
		{store.ErrFsync, "the disk of %s failed to keep what was written. What was answered is safe. Check the disk, then start again."},
		{store.ErrDamaged, "the book in %s is damaged. Copy the folder away as it is, put a backup in its place, then start again."},
		{store.ErrInUse, "another bot already serves from %s. End that one first, or set RYEBELL_DATA to another folder."},
		{store.ErrNewer, "the book in %s was written by a newer version of this program. Update the program; the book was not touched."},
		{store.ErrOlder, "the book in %s was written by an older version of this program. Start the bot once: it brings the book up to date."},
		{store.ErrForeign, "the file book.db in %s is not a book of this program. Move it away, or set RYEBELL_DATA to another folder."},
		{store.ErrFull, "there is no space left for the book in %s. Make some, then start again."},
		{store.ErrReadOnly, "the book in %s can't be written. Give this user the right to write there, or set RYEBELL_DATA to another folder."},
		{store.ErrLocked, "another program holds the book in %s. End it, then start again."},
	}
}

// explain says what went wrong and what to do about it, in one or two sentences.
func explain(err error) string {
	var book bookError
	if !errors.As(err, &book) {
		return err.Error()
	}
	for _, e := range explanations() {
		if errors.Is(err, e.of) {
			return fmt.Sprintf(e.text, book.folder)
		}
	}
	return err.Error()
}
