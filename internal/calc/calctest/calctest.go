// Package calctest reads the published check values that the calc packages are
// held against, and compares with them. Only tests import it.
package calctest

import (
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"testing"
)

// Row is one line of check values; its columns go by the names of the first.
type Row struct {
	t       testing.TB
	where   string
	columns map[string]string
}

// Rows reads a file of comma-separated check values. A file that can't be read,
// or has no rows, ends the test.
func Rows(t testing.TB, dir fs.FS, name string) []Row {
	t.Helper()
	f, err := dir.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(lines) < 2 {
		t.Fatalf("%s: no check values", name)
	}
	rows := make([]Row, 0, len(lines)-1)
	for i, line := range lines[1:] {
		r := Row{t: t, where: fmt.Sprintf("%s:%d", name, i+2), columns: map[string]string{}}
		for j, column := range lines[0] {
			r.columns[column] = line[j]
		}
		rows = append(rows, r)
	}
	return rows
}

// Text is the content of a column; a column that doesn't exist ends the test.
func (r Row) Text(column string) string {
	r.t.Helper()
	s, ok := r.columns[column]
	if !ok {
		r.t.Fatalf("%s: no column %q", r.where, column)
	}
	return s
}

// Float is the number in a column; anything else in it ends the test.
func (r Row) Float(column string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		r.t.Fatalf("%s: column %q: %v", r.where, column, err)
	}
	return v
}

// Within fails the test unless got lies within tol of the column's number.
func (r Row) Within(column string, got, tol float64) {
	r.t.Helper()
	want := r.Float(column)
	if !(math.Abs(got-want) <= tol) {
		r.t.Errorf("%s: %s: got %.9g, want %.9g ± %g (%s)",
			r.where, column, got, want, tol, r.Text("status"))
	}
}

// WithinShare fails the test unless got lies within the share tol of the
// column's number.
func (r Row) WithinShare(column string, got, tol float64) {
	r.t.Helper()
	r.Within(column, got, tol*math.Abs(r.Float(column)))
}

// OK fails the test at this row for an error.
func (r Row) OK(err error) {
	r.t.Helper()
	if err != nil {
		r.t.Fatalf("%s: %v", r.where, err)
	}
}
