package faultfs

import (
	"bytes"
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Code is a result code of SQLite that an operation fails with.
type Code int32

// The codes that a failing disk gives.
const (
	IOError    Code = sqlite3.SQLITE_IOERR       // 10
	Full       Code = sqlite3.SQLITE_FULL        // 13
	WriteError Code = sqlite3.SQLITE_IOERR_WRITE // 778
	SyncError  Code = sqlite3.SQLITE_IOERR_FSYNC // 1034
)

// Codes lists them all.
func Codes() []Code { return []Code{IOError, Full, WriteError, SyncError} }

// Span says how long a fault lasts.
type Span uint8

// A fault comes once, or stays until [Disk.Mend].
const (
	Once Span = iota + 1
	Lasting
)

// String returns the word for logs.
func (s Span) String() string {
	switch s {
	case Once:
		return "once"
	case Lasting:
		return "lasting"
	}
	return "span not said"
}

// Disk is a watched folder.
type Disk struct {
	folder string

	mu      sync.Mutex
	count   int // of operations
	fault   fault
	hits    int
	film    *Film // nil while nothing is recorded
	pragmas []string
	writer  sqlite.ExecQuerierContext // the newest writing connection
}

type fault struct {
	from int // the first operation that fails; 0 for none
	code Code
	span Span
}

// Watch puts a folder that exists on a disk of its own, until the test ends. It
// must come before the first database there is opened.
func Watch(t testing.TB, folder string) *Disk {
	t.Helper()
	shim.once.Do(func() {
		install()
		sqlite.RegisterConnectionHook(connected)
	})
	folder, err := filepath.EvalSymlinks(folder)
	if err != nil {
		t.Fatal(err)
	}
	d := &Disk{folder: folder}
	shim.mu.Lock()
	shim.disks[folder] = d
	shim.mu.Unlock()
	t.Cleanup(func() {
		shim.mu.Lock()
		defer shim.mu.Unlock()
		delete(shim.disks, folder)
	})
	return d
}

// diskOf is the disk that a path lies on, and the file's name within its folder;
// nil for a path that is not watched.
func diskOf(path string) (*Disk, string) {
	folder, name := filepath.Split(path)
	shim.mu.Lock()
	defer shim.mu.Unlock()
	return shim.disks[filepath.Clean(folder)], name
}

// Set runs pragmas on every writing connection opened from now on, behind those
// of the program: so a test weakens what it wants to see fail.
func (d *Disk) Set(pragmas ...string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.pragmas = pragmas
}

// SetNow runs a pragma on the writing connection that is open. Nobody may be
// writing.
func (d *Disk) SetNow(pragma string) error {
	d.mu.Lock()
	writer := d.writer
	d.mu.Unlock()
	return set(writer, pragma)
}

func set(c sqlite.ExecQuerierContext, pragma string) error {
	if _, err := c.ExecContext(context.Background(), "PRAGMA "+pragma, nil); err != nil {
		return fmt.Errorf("set %s: %w", pragma, err)
	}
	return nil
}

// connected is called by the driver for each new connection.
func connected(c sqlite.ExecQuerierContext, dsn string) error {
	u, err := url.Parse(dsn)
	if err != nil || !strings.Contains(u.RawQuery, "journal_mode") {
		return nil // a reader, the lock, or none of ours
	}
	disk, _ := diskOf(u.Path)
	if disk == nil {
		return nil
	}
	disk.mu.Lock()
	disk.writer = c
	pragmas := disk.pragmas
	disk.mu.Unlock()
	for _, p := range pragmas {
		if err := set(c, p); err != nil {
			return err
		}
	}
	return nil
}

// Count is how many operations there were since the disk was watched.
func (d *Disk) Count() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.count
}

// Fail makes the operation fail that comes as number n from now, 1 for the very
// next one; a lasting fault fails all that follow, too. A fault before is
// forgotten, and so are its hits.
func (d *Disk) Fail(n int, code Code, span Span) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.fault, d.hits = fault{d.count + n, code, span}, 0
}

// Mend ends a fault.
func (d *Disk) Mend() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.fault.from = 0
}

// Fault is the code of the fault that was set last.
func (d *Disk) Fault() Code {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.fault.code
}

// Hits is how many operations have failed since [Disk.Fail].
func (d *Disk) Hits() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.hits
}

// pass fails an operation or lets it through, and records it when it went
// through.
func (d *Disk) pass(o op, through func() int32) int32 {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.count++
	f := d.fault
	if f.from != 0 && (d.count == f.from || d.count > f.from && f.span == Lasting) {
		d.hits++
		return int32(f.code)
	}
	code := through()
	if code == sqlite3.SQLITE_OK && d.film != nil {
		o.data = bytes.Clone(o.data)
		d.film.add(o)
	}
	return code
}

// Record begins a film of the disk. What stands in the folder counts as synced.
func (d *Disk) Record() (*Film, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	before := files{}
	entries, err := os.ReadDir(d.folder)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), "-shm") {
			continue // shared memory is no file to be kept
		}
		if before[e.Name()], err = os.ReadFile(filepath.Join(d.folder, e.Name())); err != nil {
			return nil, err
		}
	}
	d.film = &Film{before: before}
	return d.film, nil
}

// Stop ends the film.
func (d *Disk) Stop() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.film = nil
}
