package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
)

// lock is held by the one process that serves from a folder. It is a write lock
// on an empty database beside the book: that works alike on every system, within
// one process too, and ends with the process however it ends.
type lock struct {
	pool *sql.DB
	conn *conn
}

func takeLock(ctx context.Context, path string) (*lock, error) {
	if err := makePrivate(path); err != nil {
		return nil, fmt.Errorf("take the serving lock: %w", err)
	}
	pool, c, err := connect(ctx, dsn(path, url.Values{"_pragma": {"busy_timeout(0)"}}))
	if err != nil {
		return nil, fmt.Errorf("take the serving lock: %w", err)
	}
	l := &lock{pool: pool, conn: c}
	if _, err := c.exec(`BEGIN EXCLUSIVE`); err != nil {
		err = classify(err)
		if errors.Is(err, ErrLocked) {
			err = ErrInUse
		}
		return nil, errors.Join(err, l.release())
	}
	return l, nil
}

func (l *lock) release() error { return errors.Join(l.conn.close(), l.pool.Close()) }
