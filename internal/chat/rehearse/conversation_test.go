package rehearse

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
)

func TestOpen(t *testing.T) {
	for _, c := range []struct {
		name, in, want, start string
	}{
		{"nothing", "", "", ""},
		{"a script", "3 bags\n-- say --x\nno", "3 bags\n-- say --x\nno\n", ""},
		{"a mark further down is said", "3 bags\n4 bags\n-- say --\n", "3 bags\n4 bags\n-- say --\n", ""},
		{
			"a conversation", "\nWhat it is about.\n-- say --\n3 bags\n-- posts --\n09:00 bot\n-- say --\nwhy\n-- log --\n1\n",
			"\n\n\n3 bags\n\n\n\nwhy\n\n\n", "",
		},
		{"it begins elsewhere", "About.\n-- start --\n--tz\n Europe/Lisbon\n-- say --\n3 bags", "\n\n\n\n\n3 bags\n", "--tz Europe/Lisbon"},
		{"no comment", "-- say --\nhelp\n", "\nhelp\n", ""},
		{"nothing but a start", "-- start --\n--tz UTC", "\n\n", "--tz UTC"},
	} {
		for _, in := range []io.Reader{strings.NewReader(c.in), io.MultiReader(strings.NewReader(c.in))} {
			s, err := Open(in)
			if err != nil {
				t.Fatal(err)
			}
			got, err := io.ReadAll(s)
			if diff := cmp.Diff(c.want, string(got)); diff != "" || err != nil {
				t.Errorf("%s: %v, -want +got\n%s", c.name, err, diff)
			}
			if got := strings.Join(s.Start, " "); got != c.start {
				t.Errorf("%s: start %q, want %q", c.name, got, c.start)
			}
		}
	}
	broken := errors.New("broken")
	if _, err := Open(iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("a failing read: %v", err)
	}
}

// A script can be typed: the first line is there before the second was written.
func TestOpenWaitsForNoSecondLine(t *testing.T) {
	in, out := io.Pipe()
	defer in.Close()
	go func() { _, _ = io.WriteString(out, "3 bags\n") }()
	s, err := Open(in)
	if err != nil {
		t.Fatal(err)
	}
	line := make([]byte, 20)
	if n, err := s.Read(line); string(line[:n]) != "3 bags\n" || err != nil {
		t.Errorf("got %q, %v", line[:n], err)
	}
}
