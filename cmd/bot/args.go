package main

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"ryebell/internal/chat/rehearse"
)

// command is what the program is asked to do.
type command uint8

const (
	cmdServe command = iota + 1
	cmdCheck
	cmdVersion
	cmdHelp
	cmdRehearse
)

// subcommands are the commands that have a name. Rehearsing is a flag, for it is
// the same chat on another book.
func subcommands() map[string]command {
	return map[string]command{"serve": cmdServe, "check": cmdCheck, "version": cmdVersion, "help": cmdHelp}
}

// options is what the command line says.
type options struct {
	command command
	// stage is when and where a rehearsal begins; the zero value unless the command
	// line says it.
	stage   rehearse.Options
	noColor bool
}

// usageError is the error of a command line that can't be followed.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func usagef(format string, args ...any) error { return usageError{fmt.Sprintf(format, args...)} }

// flags is the command line as typed.
type flags struct {
	help, version, rehearse, noColor bool
	start, zone                      string
}

func (f *flags) set() *flag.FlagSet {
	fs := flag.NewFlagSet("bot", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.BoolVar(&f.help, "help", false, "")
	fs.BoolVar(&f.help, "h", false, "")
	fs.BoolVar(&f.version, "version", false, "")
	fs.BoolVar(&f.rehearse, "rehearse", false, "")
	fs.BoolVar(&f.noColor, "no-color", false, "")
	fs.StringVar(&f.start, "start", "", "")
	fs.StringVar(&f.zone, "tz", "", "")
	return fs
}

// parseArgs reads the command line. Flags may stand on either side of the
// subcommand. The error is a usageError.
func parseArgs(args []string) (options, error) {
	var f flags
	fs := f.set()
	name := ""
	for rest := args; ; {
		if err := fs.Parse(rest); err != nil {
			return options{}, flagError(fs, err)
		}
		if fs.NArg() == 0 {
			break
		}
		if name != "" {
			return options{}, usagef("%q is one word too many after %s", fs.Arg(0), name)
		}
		name, rest = fs.Arg(0), fs.Args()[1:]
	}
	return f.options(name)
}

// flagError says what is wrong with a flag, and names the nearest one to an
// unknown.
func flagError(fs *flag.FlagSet, err error) error {
	name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -")
	if !unknown {
		return usageError{err.Error()}
	}
	var names []string
	fs.VisitAll(func(f *flag.Flag) { names = append(names, f.Name) })
	name = strings.TrimPrefix(name, "-")
	return usagef("no such flag --%s: did you mean --%s?", name, nearest(name, names))
}

// options makes sense of what was typed.
func (f flags) options(name string) (options, error) {
	o := options{noColor: f.noColor}
	var err error
	if o.command, err = f.command(name); err != nil {
		return options{}, err
	}
	if o.command != cmdRehearse {
		if f.start != "" || f.zone != "" {
			return options{}, usageError{"--start and --tz go with --rehearse"}
		}
		return o, nil
	}
	if f.start == "" && f.zone == "" {
		return o, nil
	}
	if o.stage.Start, o.stage.Zone, err = rehearse.Begin(f.start, f.zone); err != nil {
		return options{}, usageError{err.Error()}
	}
	return o, nil
}

// command is the one that the flags or the subcommand ask for.
func (f flags) command(name string) (command, error) {
	c, known := subcommands()[name]
	switch {
	case f.help:
		return cmdHelp, nil
	case f.version:
		return cmdVersion, nil
	case name == "" && f.rehearse:
		return cmdRehearse, nil
	case name == "":
		return cmdServe, nil
	case !known:
		return 0, unknownCommand(name)
	case f.rehearse:
		return 0, usagef("--rehearse stands alone, without %s", name)
	}
	return c, nil
}

func unknownCommand(name string) error {
	var names []string
	for n := range subcommands() {
		names = append(names, n)
	}
	slices.Sort(names)
	return usagef("no such subcommand %s: did you mean %s?", name, nearest(name, names))
}
