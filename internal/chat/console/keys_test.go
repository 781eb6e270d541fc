package console

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
	"testing/synctest"

	"github.com/google/go-cmp/cmp"
)

func TestKeys(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"text", "3 bags é\r", "3 bags é\r"},
		{"Home in four ways", "\x1b[H|\x1b[1~|\x1b[7~|\x1bOH", "\x1b[H|\x1b[H|\x1b[H|\x1b[H"},
		{"End in four ways", "\x1b[F|\x1b[4~|\x1b[8~|\x1bOF", "\x1b[F|\x1b[F|\x1b[F|\x1b[F"},
		{"arrows of a keypad", "\x1bOA\x1bOB\x1bOC\x1bOD", "\x1b[A\x1b[B\x1b[C\x1b[D"},
		{"by words", "\x1b[1;5C\x1b[1;5D\x1b[1;3C", "\x1b[1;3C\x1b[1;3D\x1b[1;3C"},
		{"keys that do nothing", "\x1b[5~a\x1b[15~b\x1bOPc\x1b[200;7Rd", "abcd"},
		{"a lone escape before text", "\x1b4 jars", "4 jars"},
		{"no sequence after all", "\x1b[\x04x", "\x04x"},
		{"a sequence without end", "\x1b[" + strings.Repeat("1", 400) + "x", strings.Repeat("1", 370) + "x"},
		{"broken text", "a\xffb\xef\xbf\xbdc", "a?b?c"},
		{"a paste", "\x1b[200~a\tb\r\nc\nd\r\x1b[201~e", "\x1b[200~a b\rc\rd\r\x1b[201~e"},
		{"keys in a paste", "\x1b[200~\x03a\x04\x01\x7f\x1b[31mb\x1b[A\x1b\xff\x1b[201~", "\x1b[200~ab?\x1b[201~"},
		{"an end without a start", "a\x1b[201~b", "a\x1b[201~b"},
	} {
		for how, from := range map[string]io.Reader{
			"at once": strings.NewReader(c.in), "byte by byte": iotest.OneByteReader(strings.NewReader(c.in)),
		} {
			k := &keyboard{from: from}
			got, err := io.ReadAll(k)
			if diff := cmp.Diff(c.want, string(got)); diff != "" || err != nil || k.interrupted.Load() {
				t.Errorf("%s, %s: %v, interrupted %v, -want +got\n%s", c.name, how, err, k.interrupted.Load(), diff)
			}
		}
	}
}

// What is pasted is some lines, whatever it holds, and never the end.
func TestPaste(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := sit(t, Config{})
		s.press("\x1b[200~3 bags\n2 quarts\x03\x04\r\n\x1b[201~")
		for _, want := range []string{"3 bags", "2 quarts"} {
			if got := <-s.heard; got != want {
				t.Errorf("heard %q, want %q", got, want)
			}
		}
		s.press("no, \x1b[200~4 bags\x1b[201~\r")
		if got := <-s.heard; got != "no, 4 bags" {
			t.Errorf("heard %q", got)
		}
		s.press("\x1b[200~" + strings.Repeat("x", 9000) + "\n\x1b[201~")
		if got := <-s.heard; len(got) != 5000 {
			t.Errorf("heard %d characters of 9,000, want 5,000", len(got))
		}
		s.press("\x04")
		if err := <-s.ended; err != nil || !strings.HasSuffix(s.out.String(), "\x1b[?2004l\r\n") {
			t.Errorf("Ctrl-D: %v; paste mode is left on: %q", err, s.out.String()[len(s.out.String())-20:])
		}
	})
}

// A half-typed line is still there after a look at the history, and Home and End
// move in it.
func TestHalfTypedLine(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := sit(t, Config{})
		s.press("old\r")
		<-s.heard
		s.press("ag\x1b[A\x1b[B\x1b[1~3 b\x1bOFar\r")
		if got := <-s.heard; got != "3 bagar" {
			t.Errorf("heard %q, want 3 bagar", got)
		}
		s.press("\x03")
		if err := <-s.ended; !errors.Is(err, ErrInterrupted) {
			t.Errorf("Ctrl-C: %v", err)
		}
	})
}

func FuzzKeys(f *testing.F) {
	f.Add([]byte("a\x1b[200~b\x1b[201~\x1bOH\x1b["))
	f.Fuzz(func(t *testing.T, in []byte) {
		// A key never stops the reading; the editor gets whole runes.
		got, err := io.ReadAll(&keyboard{from: iotest.HalfReader(strings.NewReader(string(in)))})
		if err != nil || strings.ToValidUTF8(string(got), "") != string(got) {
			t.Errorf("%q gives %q, %v", in, got, err)
		}
	})
}
