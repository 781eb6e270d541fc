package rehearse

import (
	"flag"
	"fmt"
	"io"
	"regexp"
	"strings"

	"ryebell/internal/chat/lines"
)

// Script is what a rehearsal reads: lines of a script, or a conversation that is
// kept as a file, of which only what is said counts. It is read as it is needed,
// so that a script can be typed.
type Script struct {
	// Start holds the flags of a conversation that says when and where it begins;
	// none otherwise.
	Start []string

	from *lines.Reader
	part string // the part of the conversation at hand; empty in a script
	rest string // read and not given yet
}

// mark begins a part of a conversation.
var mark = regexp.MustCompile(`^-- (\S+) --$`)

// Open looks at the first lines. If the first that is not empty is followed by
// "-- say --" or "-- start --", or is one of these, it is a conversation: then its
// say parts joined are the script, and everything else counts as empty lines, so
// that lines keep their numbers.
func Open(r io.Reader) (*Script, error) {
	s := &Script{from: lines.NewReader(r)}
	for {
		line, err := s.from.Next()
		if err == io.EOF {
			return s, nil
		}
		if err != nil {
			return nil, fmt.Errorf("read script: %w", err)
		}
		if opens(line) {
			s.enter(line)
			break
		}
		if strings.TrimSpace(line) == "" {
			s.rest += "\n"
			continue
		}
		if next, there := s.from.Ahead(); !there || !opens(next) {
			s.rest += line + "\n"
			return s, nil
		}
		s.rest += "\n"
	}
	return s, s.begin()
}

func opens(line string) bool { return line == "-- say --" || line == "-- start --" }

// enter takes a line of a conversation, which may be the mark of a part.
func (s *Script) enter(line string) {
	m := mark.FindStringSubmatch(line)
	if m != nil {
		s.part = m[1]
	}
	if m != nil || s.part != "say" {
		line = ""
	}
	s.rest += line + "\n"
}

// begin reads the start part, if that is the part at hand.
func (s *Script) begin() error {
	for s.part == "start" {
		line, err := s.from.Next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("read script: %w", err)
		}
		if !mark.MatchString(line) {
			s.Start = append(s.Start, strings.Fields(line)...)
		}
		s.enter(line)
	}
	return nil
}

// Read gives the script, a line at most.
func (s *Script) Read(p []byte) (int, error) {
	if s.rest == "" {
		line, err := s.from.Next()
		if err != nil {
			return 0, err
		}
		if s.part == "" {
			s.rest = line + "\n"
		} else {
			s.enter(line)
		}
	}
	n := copy(p, s.rest)
	s.rest = s.rest[n:]
	return n, nil
}

// Started makes sense of the flags of a start part; none are fine.
func Started(words []string) (Options, error) {
	flags := flag.NewFlagSet("start", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	at, tz := flags.String("start", "", ""), flags.String("tz", "", "")
	if err := flags.Parse(words); err != nil {
		return Options{}, err
	}
	if flags.NArg() > 0 {
		return Options{}, fmt.Errorf("%q among the flags", flags.Arg(0))
	}
	begin, zone, err := Begin(*at, *tz)
	return Options{Start: begin, Zone: zone}, err
}
