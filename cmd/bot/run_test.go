package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// outcome is how a start of the program came out.
type outcome struct {
	code           int
	stdout, stderr string
}

// start runs the program with a data folder of its own.
func start(t *testing.T, args, input string, env ...string) outcome {
	t.Helper()
	return startIn(t, t.Context(), t.TempDir(), args, strings.NewReader(input), env...)
}

func startIn(t *testing.T, ctx context.Context, folder, args string, in io.Reader, env ...string) outcome {
	t.Helper()
	var out, errs bytes.Buffer
	all := append(environ{"RYEBELL_DATA=" + folder, "TZ=UTC"}, env...)
	code := run(ctx, strings.Fields(args), all, in, &out, &errs)
	return outcome{code, out.String(), errs.String()}
}

func TestExitCodes(t *testing.T) {
	for _, c := range []struct {
		name, args, input string
		env               []string
		code              int
		stdout, stderr    string // parts of them; empty for nothing at all
	}{
		{name: "help", args: "--help", code: exitDone, stdout: "Examples"},
		{name: "version", args: "--version", code: exitDone, stdout: "ryebell "},
		{name: "version as a word", args: "version", code: exitDone, stdout: "ryebell "},
		{name: "nothing is said", code: exitDone},
		{name: "check before the first start", args: "check", code: exitDone, stdout: "not there yet"},
		{name: "unknown flag", args: "--rehears", code: exitUsage, stderr: "did you mean --rehearse?"},
		{name: "unknown subcommand", args: "server", code: exitUsage, stderr: "did you mean serve?"},
		{name: "unknown setting", env: []string{"RYEBELL_LOGG=info"}, code: exitConfig, stderr: "did you mean RYEBELL_LOG?"},
		{name: "wrong setting", args: "check", env: []string{"RYEBELL_LOG=loud"}, code: exitConfig, stderr: "RYEBELL_LOG"},
		{name: "nothing behind the prefix", env: []string{"RYEBELL_=x"}, code: exitConfig, stderr: "RYEBELL_: no such setting"},
		{name: "misspelt beside a rehearsal", args: "--rehearse", env: []string{"RYEBELL_=x"}, code: exitConfig, stderr: "RYEBELL_: no such setting"},
		{name: "misspelt beside the version", args: "--version", env: []string{"RYEBELL_LOGG=info"}, code: exitConfig, stderr: "did you mean RYEBELL_LOG?"},
		{name: "misspelt beside a check", args: "check", env: []string{"RYEBELL_=x"}, code: exitConfig, stderr: "RYEBELL_: no such setting"},
		{name: "misspelt beside help", args: "help", env: []string{"RYEBELL_LOGG=info"}, code: exitDone, stdout: "Examples", stderr: "did you mean RYEBELL_LOG?"},
		{name: "a rehearsal needs no settings", args: "--rehearse", env: []string{"RYEBELL_LOG=loud"}, code: exitDone},
		{name: "wrong script", args: "--rehearse", input: "\n+90x\n", code: exitFailed, stderr: "line 2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := start(t, c.args, c.input, c.env...)
			if got.code != c.code {
				t.Errorf("code %d, want %d", got.code, c.code)
			}
			for _, s := range []struct{ name, got, want string }{{"stdout", got.stdout, c.stdout}, {"stderr", got.stderr, c.stderr}} {
				if !strings.Contains(s.got, s.want) || s.want == "" && s.got != "" {
					t.Errorf("%s: got %q, want %q", s.name, s.got, s.want)
				}
			}
		})
	}
}

// A question in a pipe is answered on stdout before the program ends, and
// nothing else is printed. The book is kept: the next start knows the kitchen.
func TestPipedQuestion(t *testing.T) {
	folder := t.TempDir()
	first := startIn(t, t.Context(), folder, "", strings.NewReader("we're at 1600 m\n3 bags 5lb agar\n"))
	second := startIn(t, t.Context(), folder, "serve", strings.NewReader("3 bags 5lb agar"))
	for _, got := range []outcome{first, second} {
		if got.code != exitDone || got.stderr != "" || !strings.Contains(got.stdout, "1600") && !strings.Contains(got.stdout, "1,600") {
			t.Errorf("code %d, stderr %q, stdout:\n%s", got.code, got.stderr, got.stdout)
		}
	}
	if strings.Contains(first.stdout, "> ") {
		t.Errorf("a prompt is printed into a pipe:\n%s", first.stdout)
	}
}

func TestSecondProcessIsRefused(t *testing.T) {
	folder := t.TempDir()
	db := storetest.OpenIn(t, folder)
	got := startIn(t, t.Context(), folder, "", strings.NewReader(""))
	if got.code != exitFailed || !strings.Contains(got.stderr, "another bot already serves from "+folder) {
		t.Errorf("second process: %+v", got)
	}
	// Reading works beside it.
	if got := startIn(t, t.Context(), folder, "check", nil); got.code != exitDone || !strings.Contains(got.stdout, "is sound") {
		t.Errorf("check beside it: %+v", got)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	if got := startIn(t, t.Context(), folder, "", strings.NewReader("")); got.code != exitDone {
		t.Errorf("once the first has ended: %+v", got)
	}
}

func TestForeignFileIsLeftAlone(t *testing.T) {
	folder := t.TempDir()
	file, text := filepath.Join(folder, store.FileName), []byte(strings.Repeat("no book ", 200))
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range []string{"", "check"} {
		got := startIn(t, t.Context(), folder, args, strings.NewReader(""))
		if got.code != exitFailed || !strings.Contains(got.stdout+got.stderr, "is not a book of this program") {
			t.Errorf("%q: %+v", args, got)
		}
	}
	if after, err := os.ReadFile(file); err != nil || !bytes.Equal(after, text) {
		t.Errorf("the file was changed (%v)", err)
	}
}

// A program that is told to end answers what it has heard, and then ends with 0,
// or with 130 for Ctrl-C, though its input goes on.
func TestToldToEnd(t *testing.T) {
	for _, c := range []struct {
		cause error
		code  int
	}{{errTerminated, exitDone}, {errInterrupted, exitInterrupted}} {
		ctx, cancel := context.WithCancelCause(t.Context())
		in, keyboard := io.Pipe()
		out := &signalWriter{written: func() { cancel(c.cause) }}
		go func() { _, _ = io.WriteString(keyboard, "help\n") }()
		code := run(ctx, nil, environ{"RYEBELL_DATA=" + t.TempDir()}, in, out, io.Discard)
		if code != c.code || out.bytes == 0 {
			t.Errorf("%v: code %d, want %d; answered %d bytes", c.cause, code, c.code, out.bytes)
		}
		if err := keyboard.Close(); err != nil {
			t.Error(err)
		}
	}
}

// signalWriter counts what is written to it, and tells of it first.
type signalWriter struct {
	written func()
	bytes   int
}

func (w *signalWriter) Write(p []byte) (int, error) {
	w.written()
	w.bytes += len(p)
	return len(p), nil
}

// asProgram, set in the environment, makes this test binary the program itself.
const asProgram = "TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	os.Exit(m.Run())
}

// The signals of the system reach a process of its own.
func TestSignals(t *testing.T) {
	for _, c := range []struct {
		signal os.Signal
		code   int
	}{{syscall.SIGTERM, exitDone}, {os.Interrupt, exitInterrupted}} {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), asProgram+"=1", "RYEBELL_DATA="+t.TempDir())
		in, err := cmd.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(in, "help\n"); err != nil {
			t.Fatal(err)
		}
		if _, err := out.Read(make([]byte, 1)); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Process.Signal(c.signal); err != nil {
			t.Fatal(err)
		}
		_, _ = io.Copy(io.Discard, out)
		_ = cmd.Wait() // the code says it
		if got := cmd.ProcessState.ExitCode(); got != c.code {
			t.Errorf("%v: code %d, want %d", c.signal, got, c.code)
		}
	}
}

// Every error of the book that a person can do something about has its words.
func TestExplain(t *testing.T) {
	for _, e := range explanations() {
		got := explain(ofBook("/srv/book", e.of))
		if !strings.Contains(got, "/srv/book") || strings.Contains(got, "%") {
			t.Errorf("%v is explained as %q", e.of, got)
		}
	}
	both := ofBook("/srv/book", errors.Join(store.ErrFull, store.ErrFsync))
	if got := explain(both); !strings.Contains(got, "failed to keep") {
		t.Errorf("of two errors the lesser is explained: %q", got)
	}
}

// A rehearsal leaves nothing behind.
func TestRehearsalIsThrownAway(t *testing.T) {
	tmp := t.TempDir()
	t.Setenv("TMPDIR", tmp)
	t.Setenv("TEMP", tmp)
	if got := start(t, "--rehearse", "3 bags 5lb agar\n"); got.code != exitDone || !strings.HasPrefix(got.stdout, "09:00 bot → room\n") {
		t.Errorf("rehearsal: %+v", got)
	}
	left, err := os.ReadDir(tmp)
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}
