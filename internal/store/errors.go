package store

import (
	"errors"
	"fmt"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// What a caller can tell apart. They wrap the cause, whose text names no path
// and holds nothing that people wrote.
var (
	// ErrNotFound says that nothing of that number, name or key is in this
	// collective.
	ErrNotFound = errors.New("not in the book")
	// ErrInUse says that another process serves from this folder.
	ErrInUse = errors.New("another process serves from this folder")
	// ErrNewer says that a newer program has written the file; it was not touched.
	ErrNewer = errors.New("the book was written by a newer version of this program")
	// ErrForeign says that the file is no book of this program; it was not touched.
	ErrForeign = errors.New("the file is not a book of this program")
	// ErrFsync says that the disk did not take what was written. What stands
	// there now is unknown until the file is opened anew: the process must end.
	ErrFsync = errors.New("the disk failed to sync")
	// ErrFull says that there is no space left, or that the system refuses to
	// write more. Reading goes on; writing works again once there is space.
	ErrFull = errors.New("no space for the book")
	// ErrReadOnly says that the file or its folder can't be written.
	ErrReadOnly = errors.New("the book is read-only")
	// ErrLocked says that another process held the file for longer than the
	// busy timeout.
	ErrLocked = errors.New("the book is locked")
	// ErrStrike says that an entry can't be taken back: it was already, or it
	// takes back another itself.
	ErrStrike = errors.New("the entry can't be taken back")
	// ErrDamaged says that the file or the log in it is not as it was written:
	// what is read there may be wrong, and nothing more should be written.
	ErrDamaged = errors.New("the book is damaged")
)

// classify puts the sentinel for an error of the database before it.
func classify(err error) error {
	var cause *sqlite.Error
	if !errors.As(err, &cause) {
		return err
	}
	sentinel := sentinelOf(cause.Code())
	if sentinel == nil || errors.Is(err, sentinel) {
		return err
	}
	return fmt.Errorf("%w: %w", sentinel, err)
}

// sentinelOf knows the extended result codes of SQLite; the low byte is the
// primary one.
func sentinelOf(code int) error {
	switch code {
	case sqlite3.SQLITE_IOERR_FSYNC, sqlite3.SQLITE_IOERR_DIR_FSYNC:
		return ErrFsync
	case sqlite3.SQLITE_IOERR_WRITE:
		return ErrFull
	}
	switch code & 0xff {
	case sqlite3.SQLITE_FULL:
		return ErrFull
	case sqlite3.SQLITE_READONLY:
		return ErrReadOnly
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		return ErrLocked
	case sqlite3.SQLITE_NOTADB:
		return ErrForeign
	case sqlite3.SQLITE_CORRUPT:
		return ErrDamaged
	}
	return nil
}
