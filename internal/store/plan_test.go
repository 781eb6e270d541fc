package store

import (
	"context"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// statements reads the text of every statement from the source of the package.
func statements(t *testing.T) []string {
	t.Helper()
	verb := regexp.MustCompile(`^\s*(SELECT|INSERT|UPDATE|DELETE|WITH)\s`)
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if text, err := strconv.Unquote(lit.Value); err == nil && verb.MatchString(text) {
					all = append(all, text)
				}
			}
			return true
		})
	}
	return all
}

// anything binds a one to each parameter.
func anything(query string) (args []any) {
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(`:([a-z]+)`).FindAllStringSubmatch(query, -1) {
		if !seen[m[1]] {
			args = append(args, p(m[1], 1))
		}
		seen[m[1]] = true
	}
	return args
}

// scans are the only walks through a whole table or index that a statement may
// take, each with its reason.
var scans = map[string]string{
	"SCAN outbox USING COVERING INDEX outbox_waiting": "only rows that wait",
	"SCAN outbox USING INDEX outbox_refused":          "only rows that were refused, newest first, to a limit",
	"SCAN ping USING INDEX ping_due":                  "only pings that wait, the first one",
	"SCAN q":                                          "the rooms found by outbox_waiting",
	"SCAN collective":                                 "lists all of them",
	"SCAN (subquery-4)":                               "the lots of one unit, found by its key",
	"SCAN (subquery-6)":                               "the tags of one unit, found by its key",
	"SCAN code":                                       "a handful of codes, none older than a day",
	"SCAN sqlite_master":                              "the head of the file, at opening",
}

// broad is a search that the collective alone narrows, in a table that grows: as
// bad as a scan where there is but one collective.
var broad = regexp.MustCompile(`^SEARCH (entry|inbox|outbox|ping|unit|unit_lot|unit_tag|photo|e|o|i|u|v|l|t)\b.*\(collective=\?\)$`)

// wholeLog reports whether a statement reads all entries on purpose, to verify
// the chain, or only the last one by the end of the key.
func wholeLog(query string) bool {
	return strings.Contains(query, "digest, hash") || strings.Contains(query, "max(number)")
}

// allPosts reports whether a statement goes through all posts on purpose, once,
// for a name that is to be forgotten.
func allPosts(query string) bool { return strings.Contains(query, "instr(CAST(post AS TEXT), :name)") }

func TestNoStatementWalksAGrowingTable(t *testing.T) {
	db, err := Open(context.Background(), t.TempDir(), Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	all := statements(t)
	if len(all) < 50 {
		t.Fatalf("found only %d statements", len(all))
	}
	err = db.View(context.Background(), func(tx *Tx) error {
		for _, query := range all {
			steps, err := each(tx, func(s scanner) (step string, err error) {
				var id, parent, unused int
				return step, s.Scan(&id, &parent, &unused, &step)
			}, `EXPLAIN QUERY PLAN `+query, anything(query)...)
			if err != nil {
				t.Errorf("%s\n%v", query, err)
			}
			for _, step := range steps {
				if _, ok := scans[step]; strings.HasPrefix(step, "SCAN") && !ok && !allPosts(query) || strings.Contains(step, "AUTOMATIC") {
					t.Errorf("%s\n%s", query, step)
				}
				if broad.MatchString(step) && !strings.Contains(step, "unit_standing") && // only units that are still there
					!strings.Contains(query, "LIMIT 1") && !wholeLog(query) {
					t.Errorf("%s\nreads a whole collective: %s", query, step)
				}
				if strings.Contains(step, "TEMP B-TREE") && !strings.Contains(query, "FROM (SELECT DISTINCT room") && !strings.Contains(query, "FROM ping WHERE fired_ms") {
					t.Errorf("%s\nsorts: %s", query, step)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestTablesAreStrict(t *testing.T) {
	db, err := Open(context.Background(), t.TempDir(), Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	err = db.View(context.Background(), func(tx *Tx) error {
		tables, err := each(tx, func(s scanner) (name string, err error) { return name, s.Scan(&name) },
			`SELECT name FROM sqlite_schema WHERE type = 'table'`)
		if err != nil {
			return err
		}
		for _, name := range tables {
			var strict bool
			if err := tx.row(`SELECT strict FROM pragma_table_list WHERE name = :name`, p("name", name)).Scan(&strict); err != nil {
				return err
			}
			if !strict {
				t.Errorf("table %s is not strict", name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
