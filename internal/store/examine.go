package store

import (
	"context"
	"database/sql"
	"fmt"
	"strings"
)

// Examine looks for damage in the whole book: pages and indexes, references from
// row to row, and the log of every collective ([Book.VerifyChain]). The error wraps
// [ErrDamaged] and says what was found first of each. It reads every page, on a
// snapshot, and holds up no writer.
func (db *DB) Examine(ctx context.Context) error {
	return db.View(ctx, func(tx *Tx) error {
		if err := tx.checkPages(); err != nil {
			return err
		}
		if err := tx.checkReferences(); err != nil {
			return err
		}
		all, err := tx.Collectives()
		if err != nil {
			return err
		}
		for _, id := range all {
			if err := tx.Book(id).VerifyChain(ctx); err != nil {
				return fmt.Errorf("collective %d: %w", id, err)
			}
		}
		return nil
	})
}

// checkPages holds the file against the rules of its format. What SQLite says of a
// fault names tables and pages, never what stands in them.
func (tx *Tx) checkPages() error {
	var found string
	if err := tx.row(`PRAGMA integrity_check(1)`).Scan(&found); err != nil {
		return err
	}
	if found == "ok" {
		return nil
	}
	return fmt.Errorf("%w: %s", ErrDamaged, strings.Join(strings.Fields(found), " "))
}

// checkReferences looks for rows that refer to what is not there.
func (tx *Tx) checkReferences() error {
	tables, err := each(tx, func(s scanner) (table string, err error) {
		var row, key sql.NullInt64
		var to string
		return table, s.Scan(&table, &row, &to, &key)
	}, `PRAGMA foreign_key_check`)
	if err == nil && len(tables) > 0 {
		err = fmt.Errorf("%w: a row of %s refers to nothing (%d such in all)", ErrDamaged, tables[0], len(tables))
	}
	return err
}
