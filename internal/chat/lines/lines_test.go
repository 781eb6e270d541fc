package lines_test

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"unicode/utf8"

	"ryebell/internal/chat/lines"
)

func TestNext(t *testing.T) {
	long := strings.Repeat("x", 64<<10)
	for _, c := range []struct {
		name, in string
		want     []string
	}{
		{"nothing", "", nil},
		{"ends", "a\nb\r\n\nlast", []string{"a", "b", "", "last"}},
		{"no UTF-8", "a\xffb\n", []string{"a\uFFFDb"}},
		{"too long, then another", long + strings.Repeat("y", 3<<20) + "\nnext\n", []string{long, "next"}},
		{"too long, the last", long + "yy", []string{long}},
		{"exactly as long", long[1:] + "\nnext", []string{long[1:], "next"}},
		{"one byte more", long + "\nnext", []string{long, "next"}},
	} {
		for _, in := range []io.Reader{strings.NewReader(c.in), iotest.HalfReader(strings.NewReader(c.in))} {
			r := lines.NewReader(in)
			for i, want := range c.want {
				if got, err := r.Next(); got != want || err != nil {
					t.Errorf("%s: line %d is %d bytes %.20q, %v; want %d bytes %.20q", c.name, i, len(got), got, err, len(want), want)
				}
			}
			if got, err := r.Next(); !errors.Is(err, io.EOF) {
				t.Errorf("%s: behind the end: %q, %v", c.name, got, err)
			}
		}
	}
}

func TestNextFails(t *testing.T) {
	broken := errors.New("broken")
	r := lines.NewReader(io.MultiReader(strings.NewReader("a\nhalf"), iotest.ErrReader(broken)))
	if got, err := r.Next(); got != "a" || err != nil {
		t.Errorf("got %q, %v", got, err)
	}
	if got, err := r.Next(); !errors.Is(err, broken) {
		t.Errorf("got %q, %v; want the error of the reader", got, err)
	}
}

func TestAhead(t *testing.T) {
	r := lines.NewReader(strings.NewReader("a\r\nb\r\nlast"))
	for _, want := range []string{"b", "", ""} {
		if _, err := r.Next(); err != nil {
			t.Fatal(err)
		}
		if got, whole := r.Ahead(); whole != (want != "") || whole && got != want {
			t.Errorf("ahead: %q, %v; want %q", got, whole, want)
		}
	}
	// It doesn't wait for what hasn't come yet.
	in, out := io.Pipe()
	defer in.Close()
	go func() { _, _ = io.WriteString(out, "a\nhalf a li") }()
	r = lines.NewReader(in)
	if _, err := r.Next(); err != nil {
		t.Fatal(err)
	}
	if got, whole := r.Ahead(); whole {
		t.Errorf("ahead of a pipe: %q", got)
	}
}

func TestSaid(t *testing.T) {
	if got := lines.Said(strings.Repeat("é", 9000)); utf8.RuneCountInString(got) != 5000 || !utf8.ValidString(got) {
		t.Errorf("%d characters of 9,000, want 5,000", utf8.RuneCountInString(got))
	}
	if got := lines.Said("short"); got != "short" {
		t.Errorf("got %q", got)
	}
}
