package main

import (
	"fmt"
	"runtime/debug"
	"strings"
	"text/tabwriter"
)

const helpHead = `Ryebell: a chat bot for growers who make grain spawn together.

Examples
  bot                           open the chat here, in the terminal
  echo '3 bags 5lb agar' | bot  one question, one answer
  bot --rehearse < script       play a script on a book that is thrown away
  bot check                     what could be wrong, in plain words

Usage
  bot [flags] [serve | check | version | help]
  From the source: go run ./cmd/bot in place of bot

Subcommands
  serve    answer in the terminal (the default)
  check    look at the settings and the book; works beside a running bot
  version  print version, commit and Go

Flags
  --rehearse       play a script: what people say, taps, and a clock that moves
                   only when told. Lines like
                     3 bags 5lb agar       said by the default member
                     <ana> who's cooking   said by Ana
                     [Cook it]             that button of the newest post
                     +90m                  the clock moves on
                   or a conversation with what was posted in it, as kept in
                   cmd/bot/testdata/talk: then its "-- say --" parts are the
                   script and its "-- start --" part the two flags below
  --start "2026-03-02 09:00"
                   when the rehearsal begins
  --tz UTC         its time zone, like Europe/Lisbon
  --no-color       plain text; so do NO_COLOR and TERM=dumb
  --version        print version, commit and Go
  --help           print this

Settings, from the environment
`

const helpTail = `
Ends with 0 done, 1 failed, 2 called wrongly, 3 settings wrong, 130 Ctrl-C.
`

func helpText() string {
	var b strings.Builder
	b.WriteString(helpHead)
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, s := range settings() {
		fmt.Fprintf(w, "  %s\t%s\n", s.name, s.what)
		fmt.Fprintf(w, "  \t%s (default: %s)\n", s.format, s.fallback)
		if s.secret {
			fmt.Fprintf(w, "  \tor a file that holds it: %s_FILE\n", s.name)
		}
	}
	w.Flush()
	b.WriteString(helpTail)
	return b.String()
}

// versionLine says which program this is: version, commit and Go.
func versionLine() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "ryebell, built without its version"
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	version, commit, changed := info.Main.Version, "unknown", ""
	if version == "" {
		version = "(devel)"
	}
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			commit = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = " with changes"
		}
	}
	return fmt.Sprintf("ryebell %s, commit %s%s, %s", version, commit, changed, info.GoVersion)
}
