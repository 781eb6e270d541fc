package storetest

import (
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"
	"slices"
	"strings"

	"ryebell/internal/store"
)

// Contents is all that stands in the file of a book: for each table its rows, a
// line each, as they are written there.
type Contents map[string]string

// Sum is a hash of the contents: equal books have equal ones.
func (c Contents) Sum() [sha256.Size]byte {
	h := sha256.New()
	for _, table := range c.Tables() {
		fmt.Fprintf(h, "%s %d\n%s\n", table, len(c[table]), c[table])
	}
	return [sha256.Size]byte(h.Sum(nil))
}

// Tables lists the names of the tables in order.
func (c Contents) Tables() []string {
	var names []string
	for name := range c {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// random lists the columns that no two books have alike, though they were written
// alike.
func random() []string {
	return []string{"book.id", "entry.salt", "entry.digest", "entry.hash", "code.hash"}
}

// Examine reads the file of a book past the program, one that was not closed too.
// The error says in what the file is damaged.
func Examine(folder string) (Contents, error) { return examine(folder, nil) }

// Alike is [Examine] without what was drawn at random, so that two books into
// which the same was written have the same contents.
func Alike(folder string) (Contents, error) { return examine(folder, random()) }

func examine(folder string, without []string) (c Contents, err error) {
	path := filepath.ToSlash(filepath.Join(folder, store.FileName))
	db, err := sql.Open("sqlite", (&url.URL{Scheme: "file", Opaque: path, RawQuery: "mode=ro"}).String())
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	db.SetMaxOpenConns(1)
	if err := sound(db); err != nil {
		return nil, err
	}
	selects, err := selects(db, without)
	if err != nil {
		return nil, err
	}
	c = Contents{}
	for table, query := range selects {
		var rows sql.NullString
		if err := db.QueryRow(query).Scan(&rows); err != nil {
			return nil, fmt.Errorf("read %s: %w", table, err)
		}
		c[table] = rows.String
	}
	return c, nil
}

// sound checks the pages, indexes and references of a file.
func sound(db *sql.DB) error {
	var verdict string
	if err := db.QueryRow(`PRAGMA integrity_check`).Scan(&verdict); err != nil {
		return fmt.Errorf("check integrity: %w", err)
	}
	if verdict != "ok" {
		return errors.New("check integrity: " + verdict)
	}
	var table string
	err := db.QueryRow(`SELECT "table" FROM pragma_foreign_key_check LIMIT 1`).Scan(&table)
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	if err == nil {
		err = errors.New("a row of " + table + " refers to none")
	}
	return fmt.Errorf("check references: %w", err)
}

// selects gives, for each table, the query that makes one text of all its rows.
func selects(db *sql.DB, without []string) (map[string]string, error) {
	rows, err := db.Query(`
		SELECT t.name, c.name FROM sqlite_schema t, pragma_table_info(t.name) c
		WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite_%' ORDER BY t.name, c.cid`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns := map[string][]string{}
	for rows.Next() {
		var table, column string
		if err := rows.Scan(&table, &column); err != nil {
			return nil, err
		}
		if !slices.Contains(without, table+"."+column) {
			columns[table] = append(columns[table], column)
		}
	}
	all := map[string]string{}
	for table, names := range columns {
		line := `quote("` + strings.Join(names, `")||'|'||quote("`) + `")`
		all[table] = `SELECT group_concat(line, char(10)) FROM (SELECT ` + line + ` AS line FROM ` + table + ` ORDER BY 1)`
	}
	return all, rows.Err()
}
