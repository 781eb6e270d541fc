package main

import (
	"errors"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat/rehearse"
)

func TestParseArgs(t *testing.T) {
	lisbon, err := time.LoadLocation("Europe/Lisbon")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args string
		want options
	}{
		{"", options{command: cmdServe}},
		{"serve", options{command: cmdServe}},
		{"--no-color", options{command: cmdServe, noColor: true}},
		{"serve --no-color", options{command: cmdServe, noColor: true}},
		{"--no-color check", options{command: cmdCheck, noColor: true}},
		{"version", options{command: cmdVersion}},
		{"--version", options{command: cmdVersion}},
		{"-version serve", options{command: cmdVersion}},
		{"--help", options{command: cmdHelp}},
		{"-h", options{command: cmdHelp}},
		{"help", options{command: cmdHelp}},
		{"check --help", options{command: cmdHelp}},
		{"--rehearse", options{command: cmdRehearse}},
		{
			"--rehearse --tz Europe/Lisbon --start 2026-07-01T18:30",
			options{command: cmdRehearse, stage: rehearse.Options{Start: time.Date(2026, 7, 1, 18, 30, 0, 0, lisbon), Zone: lisbon}},
		},
	} {
		got, err := parseArgs(strings.Fields(c.args))
		if err != nil {
			t.Errorf("%q: %v", c.args, err)
			continue
		}
		if !got.stage.Start.Equal(c.want.stage.Start) {
			t.Errorf("%q starts at %v, want %v", c.args, got.stage.Start, c.want.stage.Start)
		}
		if got.stage.Zone.String() != c.want.stage.Zone.String() {
			t.Errorf("%q is in %v, want %v", c.args, got.stage.Zone, c.want.stage.Zone)
		}
		got.stage, c.want.stage = rehearse.Options{}, rehearse.Options{}
		if got != c.want {
			t.Errorf("%q = %+v, want %+v", c.args, got, c.want)
		}
	}
}

func TestParseArgsErrors(t *testing.T) {
	for _, c := range []struct{ args, want string }{
		{"--rehears", "no such flag --rehears: did you mean --rehearse?"},
		{"--nocolor", "no such flag --nocolor: did you mean --no-color?"},
		{"-verson", "no such flag --verson: did you mean --version?"},
		{"chek", "no such subcommand chek: did you mean check?"},
		{"serve check", `"check" is one word too many after serve`},
		{"serve --rehearse", "--rehearse stands alone, without serve"},
		{"--start", "flag needs an argument"},
		{"--tz Europe/Lisbon", "--start and --tz go with --rehearse"},
		{"--rehearse --tz Lisbon", `no time zone "Lisbon"`},
		{"--rehearse --start noon", `no start "noon"`},
	} {
		_, err := parseArgs(strings.Fields(c.args))
		if !errors.As(err, new(usageError)) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %q", c.args, err, c.want)
		}
	}
}

// Every flag, subcommand and setting stands in the help, examples first.
func TestHelpIsComplete(t *testing.T) {
	help := helpText()
	for name := range subcommands() {
		if !strings.Contains(help, name) {
			t.Errorf("subcommand %s is not in the help", name)
		}
	}
	for _, f := range []string{"--help", "--version", "--rehearse", "--start", "--tz", "--no-color"} {
		if !strings.Contains(help, "\n  "+f) {
			t.Errorf("flag %s is not in the help", f)
		}
	}
	for _, s := range settings() {
		if !strings.Contains(help, "\n  "+s.name) || !strings.Contains(help, s.fallback) {
			t.Errorf("setting %s is not in the help", s.name)
		}
	}
	if strings.Index(help, "Examples") > strings.Index(help, "Usage") {
		t.Error("the examples don't come first")
	}
	for line := range strings.Lines(help) {
		if len(line) > 81 {
			t.Errorf("line is over 80 columns: %q", line)
		}
	}
}

func TestVersionOf(t *testing.T) {
	commit := []debug.BuildSetting{{Key: "vcs.revision", Value: "ab12"}, {Key: "vcs.modified", Value: "true"}}
	for _, c := range []struct {
		info debug.BuildInfo
		want string
	}{
		{debug.BuildInfo{GoVersion: "go1.26.8"}, "ryebell (devel), commit unknown, go1.26.8"},
		{
			debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v0.1.0"}, Settings: commit},
			"ryebell v0.1.0, commit ab12 with changes, go1.26.8",
		},
		{
			debug.BuildInfo{GoVersion: "go1.26.8", Main: debug.Module{Version: "v0.1.0"}, Settings: commit[:1]},
			"ryebell v0.1.0, commit ab12, go1.26.8",
		},
	} {
		if got := versionOf(&c.info); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
