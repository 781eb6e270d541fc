package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"os/signal"
	"syscall"
)

// The exit codes. A program that was told to end (SIGTERM) has done its work.
const (
	exitDone        = 0
	exitFailed      = 1
	exitUsage       = 2
	exitConfig      = 3
	exitInterrupted = 130
)

// The reasons, other than a failure, for which the program ends early.
var (
	errTerminated  = errors.New("told to end")
	errInterrupted = errors.New("interrupted")
)

// program is one start of the program with all it has of the outside.
type program struct {
	env    environ
	stdin  io.Reader
	stdout *output
	stderr io.Writer
}

// run is the whole program. It returns the exit code, after it has told the
// person on stderr what went wrong.
func run(ctx context.Context, args []string, env environ, stdin io.Reader, stdout, stderr io.Writer) int {
	ctx, stop := watchSignals(ctx)
	defer stop()
	p := program{env: env, stdin: stdin, stdout: &output{to: stdout}, stderr: stderr}
	err := p.dispatch(ctx, args)
	if failed := p.stdout.failure(); failed != nil && !fatal(err) {
		err = failed // what else went wrong came of it
	}
	if err == nil || ctx.Err() != nil && errors.Is(err, context.Canceled) {
		err = ended(ctx)
	}
	return p.report(err)
}

// watchSignals gives a context that ends when the process is asked to, with the
// reason as its cause.
func watchSignals(ctx context.Context) (context.Context, func()) {
	ctx, cancel := context.WithCancelCause(ctx)
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	done := make(chan struct{})
	go func() {
		defer close(done)
		select {
		case s := <-signals:
			if s == os.Interrupt {
				cancel(errInterrupted)
			} else {
				cancel(errTerminated)
			}
		case <-ctx.Done():
		}
	}()
	return ctx, func() {
		signal.Stop(signals)
		cancel(nil)
		<-done
	}
}

// ended is what the program was interrupted by, if that is worth a code of its
// own.
func ended(ctx context.Context) error {
	if errors.Is(context.Cause(ctx), errInterrupted) {
		return errInterrupted
	}
	return nil
}

// dispatch does what the command line asks for.
func (p program) dispatch(ctx context.Context, args []string) error {
	o, err := parseArgs(args)
	if err != nil {
		return err
	}
	switch o.command {
	case cmdHelp:
		p.warn()
		_, err := io.WriteString(p.stdout, helpText())
		return err
	case cmdVersion:
		return p.known(func() error {
			_, err := fmt.Fprintln(p.stdout, versionLine())
			return err
		})
	case cmdRehearse:
		return p.known(func() error { return p.rehearse(ctx, o) })
	case cmdCheck:
		return p.configured(func(c config) error { return p.check(ctx, c) })
	case cmdServe:
		return p.configured(func(c config) error { return p.serve(ctx, c, o) })
	}
	panic(fmt.Sprintf("command %d", o.command))
}

// configured reads the settings and goes on with them.
func (p program) configured(next func(config) error) error {
	c, err := loadConfig(p.env, os.ReadFile)
	if err == nil {
		err = checkFolder(c.Data)
	}
	if err != nil {
		return err
	}
	return next(c)
}

// known goes on with what needs no settings, unless one was misspelt.
func (p program) known(next func() error) error {
	if err := errors.Join(unknown(settings(), p.env)...); err != nil {
		return configError{err}
	}
	return next()
}

// warn tells of misspelt settings somebody who asks for help.
func (p program) warn() {
	for _, err := range unknown(settings(), p.env) {
		fmt.Fprintf(p.stderr, "bot: %v\n", err)
	}
}

// logger writes what is logged from that level on.
func logger(w io.Writer, level slog.Level) *slog.Logger {
	return slog.New(slog.NewTextHandler(w, &slog.HandlerOptions{Level: level}))
}

// report says on stderr what went wrong and returns the code for it.
func (p program) report(err error) int {
	var usage usageError
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errInterrupted):
		return exitInterrupted
	case errors.As(err, &usage):
		fmt.Fprintf(p.stderr, "bot: %v\nSee bot --help.\n", err)
		return exitUsage
	case errors.As(err, new(configError)):
		fmt.Fprintf(p.stderr, "bot: the configuration is wrong:\n%v\nSee bot --help for every setting.\n", err)
		return exitConfig
	}
	fmt.Fprintf(p.stderr, "bot: %v\n", explain(err))
	return exitFailed
}
