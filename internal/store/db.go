package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	_ "modernc.org/sqlite" // the driver
)

// FileName is the name of the book within its folder.
const FileName = "book.db"

// Config holds what may be left as it is.
type Config struct {
	// BusyTimeout is how long a statement waits for a lock that another process
	// holds; zero means five seconds.
	BusyTimeout time.Duration
	// Readers is how many may read at once; zero means four.
	Readers int
	// LogPages is how many pages the write-ahead log may have before it is written
	// back into the file; zero means 1000.
	LogPages int
}

// DB is an open book. Its methods may be called from any goroutine.
type DB struct {
	id      string
	lock    *lock // nil for a reader
	pools   []*sql.DB
	writer  chan *conn // holds the one writer while nobody writes; nil for a reader
	readers chan *conn
	reading int // how many readers there are
	outbox  chan struct{}
	pings   chan struct{}
}

// Open opens the book in a folder for serving, and makes both if they are not
// there: the folder with mode 0700, the files with 0600. It fails with [ErrInUse]
// when another process serves from the folder, [ErrNewer] when a newer program
// has written the book and [ErrForeign] when the file is something else. The
// context bounds the opening only.
func Open(ctx context.Context, folder string, c Config) (*DB, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, fmt.Errorf("make the folder of the book: %w", err)
	}
	l, err := takeLock(ctx, filepath.Join(folder, "serving.lock"))
	if err != nil {
		return nil, err
	}
	db := newDB(c)
	db.lock = l
	if err := db.open(ctx, filepath.Join(folder, FileName), c); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

// OpenReader opens an existing book for reading only, beside a process that
// serves from it or alone. [DB.Update] fails with [ErrReadOnly]. A book that an
// older program left is refused as [ErrOlder].
func OpenReader(ctx context.Context, folder string, c Config) (*DB, error) {
	path := filepath.Join(folder, FileName)
	if _, err := os.Stat(path); err != nil {
		return nil, fmt.Errorf("open the book: %w", err)
	}
	db := newDB(c)
	if err := db.openReaders(ctx, path, c); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

func newDB(c Config) *DB {
	return &DB{
		readers: make(chan *conn, cmpOr(c.Readers, 4)),
		outbox:  make(chan struct{}, 1),
		pings:   make(chan struct{}, 1),
	}
}

func (db *DB) open(ctx context.Context, path string, c Config) error {
	if err := inspect(ctx, path, c); err != nil {
		return err
	}
	if err := makePrivate(path); err != nil {
		return fmt.Errorf("make the book: %w", err)
	}
	pool, w, err := connect(ctx, writerDSN(path, c))
	if err != nil {
		return fmt.Errorf("open the book: %w", classify(err))
	}
	db.pools = append(db.pools, pool)
	w.logPages = cmpOr(c.LogPages, 1000)
	if err := migrate(ctx, w); err != nil {
		return err
	}
	db.writer = make(chan *conn, 1)
	db.writer <- w
	return db.openReaders(ctx, path, c)
}

// inspect refuses a file that must not be touched before a writing connection
// changes its journal mode.
func inspect(ctx context.Context, path string, c Config) error {
	if info, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) || err == nil && info.Size() == 0 {
		return nil
	}
	pool, r, err := connect(ctx, readerDSN(path, c))
	if err != nil {
		return fmt.Errorf("look at the book: %w", classify(err))
	}
	_, err = identify(ctx, r)
	return errors.Join(err, r.close(), pool.Close())
}

// The readers are connected one by one and held: each keeps its own prepared
// statements.
func (db *DB) openReaders(ctx context.Context, path string, c Config) error {
	for range cap(db.readers) {
		pool, r, err := connect(ctx, readerDSN(path, c))
		if err != nil {
			return fmt.Errorf("open the book for reading: %w", classify(err))
		}
		db.pools = append(db.pools, pool)
		db.readers <- r
		db.reading++
	}
	return db.View(ctx, func(tx *Tx) error {
		if err := checkVersion(tx); err != nil {
			return err
		}
		return tx.row(`SELECT id FROM book WHERE one = 1`).Scan(&db.id)
	})
}

// Close waits for the transactions at hand and closes the files.
func (db *DB) Close() error {
	var errs []error
	for ; db.reading > 0; db.reading-- {
		errs = append(errs, (<-db.readers).close())
	}
	// The writer goes last: only it can fold the write-ahead log into the file.
	if db.writer != nil {
		errs = append(errs, (<-db.writer).close())
		db.writer = nil
	}
	for _, p := range slices.Backward(db.pools) {
		errs = append(errs, p.Close())
	}
	db.pools = nil
	if db.lock != nil {
		errs = append(errs, db.lock.release())
		db.lock = nil
	}
	return errors.Join(errs...)
}

// ID is the random name that this book was given when it was made. With the
// number of an outbox row it makes an idempotency key that no other book uses.
func (db *DB) ID() string { return db.id }

// OutboxChanged receives after a transaction that queued posts has committed;
// several may come as one.
func (db *DB) OutboxChanged() <-chan struct{} { return db.outbox }

// PingsChanged receives after a transaction that changed waiting pings has
// committed; several may come as one.
func (db *DB) PingsChanged() <-chan struct{} { return db.pings }

// Update runs f in the one writing transaction and commits it when f returns
// nil. When Update returns nil, what f wrote has survived a power cut. When f
// fails or panics, or the commit fails, nothing was written. The context bounds
// the wait for the turn; see [ErrFsync], [ErrFull], [ErrReadOnly] and
// [ErrLocked].
func (db *DB) Update(ctx context.Context, f func(*Tx) error) error {
	if db.writer == nil {
		return ErrReadOnly
	}
	tx := &Tx{}
	if err := run(ctx, db.writer, tx, `BEGIN IMMEDIATE`, f); err != nil {
		return err
	}
	if tx.queued {
		wake(db.outbox)
	}
	if tx.pinged {
		wake(db.pings)
	}
	return nil
}

// View runs f on a snapshot of the book. It waits for no writer.
func (db *DB) View(ctx context.Context, f func(*Tx) error) error {
	return run(ctx, db.readers, &Tx{}, `BEGIN DEFERRED`, f)
}

func run(ctx context.Context, from chan *conn, tx *Tx, begin string, f func(*Tx) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	select {
	case tx.conn = <-from:
	case <-ctx.Done():
		return ctx.Err()
	}
	defer func() { from <- tx.conn }()
	return classify(tx.run(begin, f))
}

func wake(c chan<- struct{}) {
	select {
	case c <- struct{}{}:
	default:
	}
}

// The pragmas belong in the name: they hold per connection. SQLite writes the log
// back by itself no more: see [conn.writeBack].
func writerDSN(path string, c Config) string {
	return dsn(path, url.Values{
		"_txlock": {"immediate"}, "_dqs": {"0"},
		"_pragma": {busyTimeout(c), "journal_mode(WAL)", "synchronous(FULL)", "wal_autocheckpoint(0)", "foreign_keys(1)", "secure_delete(FAST)"},
	})
}

func readerDSN(path string, c Config) string {
	return dsn(path, url.Values{"mode": {"ro"}, "_dqs": {"0"}, "_pragma": {busyTimeout(c), "query_only(1)"}})
}

func dsn(path string, v url.Values) string {
	return (&url.URL{Scheme: "file", Opaque: (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath(), RawQuery: v.Encode()}).String()
}

func busyTimeout(c Config) string {
	wait := c.BusyTimeout
	if wait == 0 {
		wait = 5 * time.Second
	}
	return "busy_timeout(" + strconv.FormatInt(wait.Milliseconds(), 10) + ")"
}

func cmpOr(n, usual int) int {
	if n == 0 {
		return usual
	}
	return n
}

// makePrivate makes sure that the file is there and that only its owner reads
// it: SQLite gives the files beside it the mode of this one. A file that is
// there is not opened, because closing it would drop the locks that this process
// holds on it.
func makePrivate(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return os.Chmod(path, 0o600)
	}
	if err != nil {
		return err
	}
	return f.Close()
}
