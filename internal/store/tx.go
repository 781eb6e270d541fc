package store

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

// conn is one connection and the statements prepared on it.
type conn struct {
	sql      *sql.Conn
	stmts    map[string]*sql.Stmt
	logPages int // of the writer: when the log is written back
}

// connect opens one connection in a pool of its own.
func connect(ctx context.Context, dsn string) (*sql.DB, *conn, error) {
	pool, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, nil, err
	}
	pool.SetMaxOpenConns(1)
	c, err := pool.Conn(ctx)
	if err != nil {
		return nil, nil, errors.Join(err, pool.Close())
	}
	return pool, &conn{sql: c, stmts: map[string]*sql.Stmt{}}, nil
}

func (c *conn) close() error {
	var errs []error
	for _, s := range c.stmts {
		errs = append(errs, s.Close())
	}
	return errors.Join(append(errs, c.sql.Close())...)
}

// stmt gives the statement of a text, prepared at its first use.
func (c *conn) stmt(query string) (*sql.Stmt, error) {
	if s, ok := c.stmts[query]; ok {
		return s, nil
	}
	s, err := c.sql.PrepareContext(context.Background(), query)
	if err != nil {
		return nil, err
	}
	c.stmts[query] = s
	return s, nil
}

func (c *conn) exec(query string, args ...any) (sql.Result, error) {
	s, err := c.stmt(query)
	if err != nil {
		return nil, err
	}
	return s.ExecContext(context.Background(), args...)
}

// Tx is a transaction: what hangs on no collective.
type Tx struct {
	conn   *conn
	queued bool // posts were queued
	pinged bool // waiting pings have changed
}

func (tx *Tx) run(begin string, f func(*Tx) error) error {
	if _, err := tx.conn.exec(begin); err != nil {
		return err
	}
	committed := false
	defer func() {
		if !committed {
			// After a failed commit or a full disk there may be nothing to roll back.
			_, _ = tx.conn.exec(`ROLLBACK`)
		}
	}()
	if err := f(tx); err != nil {
		return err
	}
	if _, err := tx.conn.exec(`COMMIT`); err != nil {
		return err
	}
	committed = true
	return tx.conn.writeBack()
}

// writeBack brings the log into the file once it is long. SQLite would do it by
// itself at the end of a commit, and then says nothing of a disk that failed to
// sync, after which the process must end. Any other failure leaves the log as it
// is, with all that is committed, and the next commit tries again.
func (c *conn) writeBack() error {
	if c.logPages == 0 {
		return nil // a reader
	}
	pages, err := c.checkpoint(`PRAGMA wal_checkpoint(NOOP)`)
	if err == nil && pages >= c.logPages {
		_, err = c.checkpoint(`PRAGMA wal_checkpoint(PASSIVE)`)
	}
	if errors.Is(classify(err), ErrFsync) {
		return err
	}
	return nil
}

// checkpoint runs a pragma that writes back, or only looks, and gives the pages in
// the log.
func (c *conn) checkpoint(pragma string) (pages int, err error) {
	s, err := c.stmt(pragma)
	if err != nil {
		return 0, err
	}
	var busy, back int
	return pages, s.QueryRowContext(context.Background()).Scan(&busy, &pages, &back)
}

func (tx *Tx) exec(query string, args ...any) (sql.Result, error) {
	return tx.conn.exec(query, args...)
}

// change runs a statement that must meet a row.
func (tx *Tx) change(query string, args ...any) error {
	r, err := tx.exec(query, args...)
	if err != nil {
		return err
	}
	n, err := r.RowsAffected()
	if err == nil && n == 0 {
		return ErrNotFound
	}
	return err
}

// insert runs a statement that makes a row and gives its number.
func (tx *Tx) insert(query string, args ...any) (int64, error) {
	r, err := tx.exec(query, args...)
	if err != nil {
		return 0, err
	}
	return r.LastInsertId()
}

// scanner is a row to be read, alone or one of several.
type scanner interface{ Scan(into ...any) error }

// row is the only row of a query; its Scan gives [ErrNotFound] for none.
func (tx *Tx) row(query string, args ...any) scanner {
	s, err := tx.conn.stmt(query)
	if err != nil {
		return failed{err}
	}
	return single{s.QueryRowContext(context.Background(), args...)}
}

type failed struct{ err error }

func (f failed) Scan(...any) error { return f.err }

type single struct{ row *sql.Row }

func (s single) Scan(into ...any) error {
	err := s.row.Scan(into...)
	if errors.Is(err, sql.ErrNoRows) {
		return ErrNotFound
	}
	return err
}

// each reads all rows of a query.
func each[T any](tx *Tx, read func(scanner) (T, error), query string, args ...any) (all []T, err error) {
	s, err := tx.conn.stmt(query)
	if err != nil {
		return nil, err
	}
	rows, err := s.QueryContext(context.Background(), args...)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		v, err := read(rows)
		if err != nil {
			return nil, err
		}
		all = append(all, v)
	}
	return all, rows.Err()
}

// p binds a value to a named parameter.
func p(name string, value any) sql.NamedArg { return sql.Named(name, value) }

func toMS(t time.Time) int64 { return t.UnixMilli() }

func fromMS(ms int64) time.Time { return time.UnixMilli(ms).UTC() }

// orNull is NULL for zero: numbers that people and rooms have begin at 1.
func orNull[N ~int | ~int64](n N) sql.NullInt64 {
	return sql.NullInt64{Int64: int64(n), Valid: n != 0}
}
