// Package storetest opens books for tests.
package storetest

import (
	"context"
	"testing"

	"ryebell/internal/store"
)

// Open gives a new book in a folder of its own, closed when the test ends.
func Open(t testing.TB) *store.DB {
	t.Helper()
	return OpenIn(t, t.TempDir())
}

// OpenIn opens the book in a folder, which the test may close and open again.
func OpenIn(t testing.TB, folder string) *store.DB {
	t.Helper()
	db, err := store.Open(context.Background(), folder, store.Config{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := db.Close(); err != nil {
			t.Error(err)
		}
	})
	return db
}

// Update runs f in a writing transaction and fails the test if it fails.
func Update(t testing.TB, db *store.DB, f func(*store.Tx) error) {
	t.Helper()
	if err := db.Update(context.Background(), f); err != nil {
		t.Fatal(err)
	}
}

// View runs f in a reading transaction and fails the test if it fails.
func View(t testing.TB, db *store.DB, f func(*store.Tx) error) {
	t.Helper()
	if err := db.View(context.Background(), f); err != nil {
		t.Fatal(err)
	}
}
