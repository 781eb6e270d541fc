package faultfs

import (
	"sync"
	"unsafe"

	"modernc.org/libc"
	sqlite3 "modernc.org/sqlite/lib"
)

// shim is what the functions that SQLite calls know. SQLite has one list of file
// systems for the whole process, so there is one shim.
var shim struct {
	once   sync.Once
	system sqlite3.Tsqlite3_vfs // the usual file system

	mu     sync.Mutex
	disks  map[string]*Disk    // by folder
	files  map[uintptr]file    // open files, by SQLite's handle
	tables map[uintptr]uintptr // our table of methods, by the one it was copied from
}

// file is an open file on a watched disk.
type file struct {
	disk   *Disk
	name   string // within the folder
	system *sqlite3.Tsqlite3_io_methods
}

// install makes the shim the file system of all databases opened from now on. Its
// tables lie in memory of C and stay until the process ends.
func install() {
	tls := libc.NewTLS()
	sqlite3.Xsqlite3_initialize(tls)
	usual := sqlite3.Xsqlite3_vfs_find(tls, 0)
	shim.system = *(*sqlite3.Tsqlite3_vfs)(memory(usual))
	shim.disks, shim.files, shim.tables = map[string]*Disk{}, map[uintptr]file{}, map[uintptr]uintptr{}
	name, err := libc.CString("faultfs")
	if err != nil {
		panic(err)
	}
	vfs := shim.system
	vfs.FzName, vfs.FpNext = name, 0
	vfs.FxOpen, vfs.FxDelete = pointer(open), pointer(remove)
	const asDefault = 1
	if code := sqlite3.Xsqlite3_vfs_register(tls, inC(tls, vfs), asDefault); code != sqlite3.SQLITE_OK {
		panic("faultfs was not registered")
	}
}

// memory is an address in memory of C, which Go neither moves nor frees, as a
// pointer. Read through the variable, since vet takes a plain conversion for one of
// Go's own memory.
func memory(at uintptr) unsafe.Pointer { return *(*unsafe.Pointer)(unsafe.Pointer(&at)) }

// inC copies a value into memory of C.
func inC[T any](tls *libc.TLS, v T) uintptr {
	at := libc.Xmalloc(tls, libc.Tsize_t(unsafe.Sizeof(v)))
	if at == 0 {
		panic("faultfs: no memory")
	}
	*(*T)(memory(at)) = v
	return at
}

// pointer is a Go function as a function pointer of C: the pointer word of the
// func value. Only functions that stand alone may be given, which are never moved
// or freed.
func pointer[F any](f F) uintptr { return *(*uintptr)(unsafe.Pointer(&f)) }

// function is a function pointer of C as a Go function.
func function[F any](p uintptr) F { return *(*F)(unsafe.Pointer(&p)) }

// The functions of the file system and of open files, as SQLite calls them.
type (
	openFunc     = func(tls *libc.TLS, vfs, name, handle uintptr, flags int32, outFlags uintptr) int32
	removeFunc   = func(tls *libc.TLS, vfs, name uintptr, syncDir int32) int32
	closeFunc    = func(tls *libc.TLS, handle uintptr) int32
	writeFunc    = func(tls *libc.TLS, handle, buf uintptr, amount int32, offset int64) int32
	truncateFunc = func(tls *libc.TLS, handle uintptr, size int64) int32
	syncFunc     = func(tls *libc.TLS, handle uintptr, flags int32) int32
)

func open(tls *libc.TLS, vfs, name, handle uintptr, flags int32, outFlags uintptr) int32 {
	code := function[openFunc](shim.system.FxOpen)(tls, vfs, name, handle, flags, outFlags)
	methods := &(*sqlite3.Tsqlite3_file)(memory(handle)).FpMethods
	if code != sqlite3.SQLITE_OK || name == 0 || *methods == 0 {
		return code
	}
	disk, within := diskOf(libc.GoString(name))
	if disk == nil {
		return code
	}
	shim.mu.Lock()
	defer shim.mu.Unlock()
	system := (*sqlite3.Tsqlite3_io_methods)(memory(*methods))
	if _, known := shim.tables[*methods]; !known {
		ours := *system
		ours.FxClose, ours.FxWrite = pointer(closeFile), pointer(write)
		ours.FxTruncate, ours.FxSync = pointer(truncate), pointer(syncFile)
		shim.tables[*methods] = inC(tls, ours)
	}
	shim.files[handle] = file{disk, within, system}
	*methods = shim.tables[*methods]
	return code
}

func fileOf(handle uintptr) file {
	shim.mu.Lock()
	defer shim.mu.Unlock()
	return shim.files[handle]
}

func closeFile(tls *libc.TLS, handle uintptr) int32 {
	f := fileOf(handle)
	code := function[closeFunc](f.system.FxClose)(tls, handle)
	shim.mu.Lock()
	defer shim.mu.Unlock()
	delete(shim.files, handle)
	return code
}

func write(tls *libc.TLS, handle, buf uintptr, amount int32, offset int64) int32 {
	f := fileOf(handle)
	data := unsafe.Slice((*byte)(memory(buf)), amount)
	return f.disk.pass(op{kind: opWrite, name: f.name, at: offset, data: data}, func() int32 {
		return function[writeFunc](f.system.FxWrite)(tls, handle, buf, amount, offset)
	})
}

func truncate(tls *libc.TLS, handle uintptr, size int64) int32 {
	f := fileOf(handle)
	return f.disk.pass(op{kind: opTruncate, name: f.name, at: size}, func() int32 {
		return function[truncateFunc](f.system.FxTruncate)(tls, handle, size)
	})
}

func syncFile(tls *libc.TLS, handle uintptr, flags int32) int32 {
	f := fileOf(handle)
	return f.disk.pass(op{kind: opSync, name: f.name}, func() int32 {
		return function[syncFunc](f.system.FxSync)(tls, handle, flags)
	})
}

func remove(tls *libc.TLS, vfs, name uintptr, syncDir int32) int32 {
	system := function[removeFunc](shim.system.FxDelete)
	disk, within := diskOf(libc.GoString(name))
	if disk == nil {
		return system(tls, vfs, name, syncDir)
	}
	return disk.pass(op{kind: opDelete, name: within, durable: syncDir != 0}, func() int32 {
		return system(tls, vfs, name, syncDir)
	})
}
