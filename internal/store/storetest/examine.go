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

// chance lists the columns that no two books have alike, though they were written
// alike: what is drawn at random, and when a post could be sent at last.
func chance() []string {
	return []string{"book.id", "entry.salt", "entry.digest", "entry.hash", "code.hash", "outbox.sent_ms"}
}

// Examine reads the file of a book past the program, one that was not closed too.
// The error says in what the file is damaged.
func Examine(folder string) (Contents, error) { return examine(folder, nil) }

// Alike is [Examine] without what is left to chance, so that two books into which
// the same was written have the same contents.
func Alike(folder string) (Contents, error) { return examine(folder, chance()) }

func examine(folder string, without []string) (c Contents, err error) {
	db, err := openFile(folder)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
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

func openFile(folder string) (*sql.DB, error) {
	path := filepath.ToSlash(filepath.Join(folder, store.FileName))
	db, err := sql.Open("sqlite", (&url.URL{Scheme: "file", Opaque: path, RawQuery: "mode=ro"}).String())
	if err == nil {
		db.SetMaxOpenConns(1)
	}
	return db, err
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
	if err == nil {
		err = errors.New("a row of " + table + " refers to none")
	}
	if !errors.Is(err, sql.ErrNoRows) {
		return fmt.Errorf("check references: %w", err)
	}
	return nil
}

// Contradiction reports what a turn or a ping must never leave in the book of a
// folder, such as an answered turn without its answer; nil for nothing.
func Contradiction(folder string) (err error) {
	db, err := openFile(folder)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	for _, c := range contradictions() {
		var where string
		err := db.QueryRow(c.query).Scan(&where)
		if err == nil {
			return errors.New(c.name + ": " + where)
		}
		if !errors.Is(err, sql.ErrNoRows) {
			return fmt.Errorf("look for %s: %w", c.name, err)
		}
	}
	return nil
}

type contradiction struct{ name, query string }

func contradictions() []contradiction {
	return []contradiction{
		{"a turn without an answer", `
			SELECT id FROM inbox i WHERE kind <> '' AND NOT EXISTS (SELECT 1 FROM outbox o WHERE o.inbox = i.id)`},
		// Several pings can be one post, which names the first; what announces
		// something that has come meanwhile (kind 5) is said by none, and so is a digest
		// (kind 20) of a week without news.
		{"a ping that fired without a post", `
			SELECT key FROM ping p WHERE fired_ms IS NOT NULL AND kind <> 20 AND NOT (kind = 5 AND fired_ms - due_ms > 240000) AND NOT EXISTS (
				SELECT 1 FROM outbox o WHERE o.collective = p.collective AND o.inbox IS NULL AND o.created_ms = p.fired_ms)`},
		{"a ping that is said twice in a room", `
			SELECT about FROM outbox WHERE inbox IS NULL GROUP BY collective, room, about, created_ms HAVING count(*) > 1`},
		{"a ping that was said when it was due and still waits", `
			SELECT key FROM ping p WHERE fired_ms IS NULL AND EXISTS (
				SELECT 1 FROM outbox o WHERE o.collective = p.collective AND o.inbox IS NULL AND o.about = p.key
					AND o.created_ms >= p.due_ms)`},
		{"a post that was sent and stands nowhere", `
			SELECT id FROM outbox WHERE (state = 2) <> (external <> '') OR (state = 2) <> (sent_ms IS NOT NULL)`},
		{"an entry of a turn of somebody else", `
			SELECT e.number FROM entry e JOIN inbox i ON i.id = e.inbox
			WHERE e.collective <> i.collective OR e.member <> i.member`},
	}
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
