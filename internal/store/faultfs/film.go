package faultfs

import (
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"sync"
)

// opKind is what an operation does.
type opKind uint8

const (
	opWrite opKind = iota + 1
	opTruncate
	opSync
	opDelete
)

// op is an operation on a file.
type op struct {
	kind    opKind
	name    string
	at      int64 // where a write begins, or the size that a truncation leaves
	data    []byte
	durable bool // a deletion that is synced at once
}

// files are contents by name.
type files map[string][]byte

// Film is what was done to a disk, in order.
type Film struct {
	before files

	mu  sync.Mutex
	ops []op
}

func (f *Film) add(o op) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.ops = append(f.ops, o)
}

// Len is how many operations are on the film by now.
func (f *Film) Len() int {
	f.mu.Lock()
	defer f.mu.Unlock()
	return len(f.ops)
}

// Syncs lists the places behind each sync, in order.
func (f *Film) Syncs() []int {
	f.mu.Lock()
	defer f.mu.Unlock()
	var at []int
	for i, o := range f.ops {
		if o.kind == opSync {
			at = append(at, i+1)
		}
	}
	return at
}

// Reel plays a film, forward at best. It is for one goroutine.
type Reel struct {
	film    *Film
	at      int
	synced  files // what is on the disk for good
	pending []op  // what was done since and is not
}

// Reel begins to play the film, which must be finished.
func (f *Film) Reel() *Reel {
	r := &Reel{film: f}
	r.rewind()
	return r
}

func (r *Reel) rewind() {
	r.at, r.pending, r.synced = 0, nil, files{}
	for name, data := range r.film.before {
		r.synced[name] = slices.Clone(data)
	}
}

// seek stands before an operation. What a sync covers is moved to what is on the
// disk for good.
func (r *Reel) seek(at int) {
	if at < r.at {
		r.rewind()
	}
	for _, o := range r.film.ops[r.at:at] {
		switch o.kind {
		case opSync:
			r.settle(o.name)
		case opDelete:
			r.pending = append(r.pending, o)
			if o.durable {
				r.settle(o.name)
			}
		case opWrite, opTruncate:
			r.pending = append(r.pending, o)
		}
	}
	r.at = at
}

func (r *Reel) settle(name string) {
	later := r.pending[:0]
	for _, o := range r.pending {
		if o.name != name {
			later = append(later, o)
			continue
		}
		r.synced.do(o, func() bool { return true })
	}
	r.pending = later
}

// Cut writes into a folder the files as a power cut before operation number at
// (0 to [Film.Len]) may leave them. What is in the folder under the same names is
// replaced, and what was deleted is deleted.
func (r *Reel) Cut(at int, chance *rand.Rand, folder string) error {
	// Some cuts leave nearly everything, some nearly nothing.
	share := chance.Float64()
	return r.leave(at, folder, func() bool { return chance.Float64() < share })
}

// Whole writes the files as they were before operation number at, whether they
// were synced or not.
func (r *Reel) Whole(at int, folder string) error {
	return r.leave(at, folder, func() bool { return true })
}

func (r *Reel) leave(at int, folder string, stays func() bool) error {
	r.seek(at)
	left := maps.Clone(r.synced)
	own := map[string]bool{}
	for _, o := range r.pending {
		if !own[o.name] { // what is on the disk for good stays as it is
			own[o.name] = true
			left[o.name] = slices.Clone(left[o.name])
		}
		left.do(o, stays)
	}
	return left.writeTo(folder)
}

// piece is what a disk writes at once or not at all.
const piece = 512

// do carries an operation out, as far as its pieces stay.
func (f files) do(o op, stays func() bool) {
	switch o.kind {
	case opDelete:
		if stays() {
			delete(f, o.name)
		}
	case opTruncate:
		if stays() {
			f[o.name] = resized(f[o.name], o.at)
		}
	case opWrite:
		for from := 0; from < len(o.data); from += piece {
			to := min(from+piece, len(o.data))
			if !stays() {
				continue
			}
			data := f[o.name]
			if end := o.at + int64(to); int64(len(data)) < end {
				data = resized(data, end)
			}
			copy(data[o.at+int64(from):], o.data[from:to])
			f[o.name] = data
		}
	case opSync:
	}
}

// resized cuts data off or fills it up with zeros.
func resized(data []byte, size int64) []byte {
	if int64(len(data)) >= size {
		return data[:size]
	}
	return append(data, make([]byte, size-int64(len(data)))...)
}

func (f files) writeTo(folder string) error {
	old, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range old {
		if _, kept := f[e.Name()]; kept {
			continue
		}
		if err := os.Remove(filepath.Join(folder, e.Name())); err != nil {
			return err
		}
	}
	for name, data := range f {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			return err
		}
	}
	return nil
}
