// Package faultfs is a disk for tests that fails when it is told to, and whose
// power can be cut.
//
// It lies between SQLite and the system: a VFS that hands everything on to the
// usual one, and on the way counts, records or fails what changes files: writes,
// truncations, syncs and deletions. The files are real ones in a folder, so that
// the book in it is opened as always, by [ryebell/internal/store.Open]. Only files
// in folders that were given to [Watch] are touched, all others pass by.
//
// What a power cut leaves is worked out afterwards, from a [Film] of the
// operations: what was synced stays, and of the rest each piece of 512 bytes
// stays or does not. The file of shared memory does not pass through here; it is
// made anew when a book is opened.
//
// Functions of C and Go are turned into each other here, by way of package unsafe.
package faultfs
