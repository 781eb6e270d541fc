package rehearse

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// Error is a line of a script that cannot be played.
type Error struct {
	Line int // from 1
	Text string
	Why  string
}

func (e *Error) Error() string {
	return fmt.Sprintf("line %d: %.*q: %s", e.Line, longestShown, e.Text, e.Why)
}

// longestShown is how many characters of a line an error repeats.
const longestShown = 80

// step is one line of a script. The cases are say, tap, advance and until.
//
//sumtype:decl
type step interface{ step() }

type say struct {
	voice voice
	text  string
}

type tap struct {
	voice voice
	label string
}

type advance struct {
	by    time.Duration
	power power
}

type until struct{ at clock }

func (say) step()     {}
func (tap) step()     {}
func (advance) step() {}
func (until) step()   {}

// power tells whether the bot runs while the clock moves.
type power uint8

const (
	up power = iota + 1
	down
)

// voice is who speaks where and how.
type voice struct {
	who                string // lower case
	in                 string // a word for a room; empty if none was given
	sent               *clock
	reply, edit, photo bool
}

// clock is a time of day.
type clock struct{ hour, minute int }

const (
	robin   = "robin"
	room    = "room"
	room2   = "room2"
	other   = "other"
	private = "private"
)

// longest is how far one line may move the clock: enough for a shelf life.
const longest = 3660 * 24 * time.Hour

// parse reads one line. A nil step is a comment or an empty line.
func parse(text string) (step, error) {
	text = strings.TrimSpace(text)
	if text == "" || strings.HasPrefix(text, "//") {
		return nil, nil
	}
	switch text[0] {
	case '<':
		return parseVoiced(text)
	case '+':
		return parseAdvance(text)
	case '@':
		return parseUntil(text)
	}
	return parseSpoken(voice{who: robin}, text)
}

func parseVoiced(text string) (step, error) {
	first, _ := utf8.DecodeRuneInString(text[1:])
	if !unicode.IsLetter(first) {
		return parseSpoken(voice{who: robin}, text)
	}
	head, rest, closed := strings.Cut(text[1:], ">")
	if !closed {
		return nil, errors.New("no > behind the speaker")
	}
	words := strings.Fields(strings.ToLower(head))
	v := voice{who: words[0]}
	if !isName(v.who) || isOption(v.who) {
		return nil, fmt.Errorf("%q is no name for a speaker", words[0])
	}
	for _, w := range words[1:] {
		if err := v.add(w); err != nil {
			return nil, err
		}
	}
	return parseSpoken(v, strings.TrimSpace(rest))
}

func isName(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsMark(r) && !unicode.IsDigit(r) && r != '-' && r != '_'
	})
}

func isOption(w string) bool {
	return slices.Contains([]string{room, room2, other, private, "reply", "edit", "photo"}, w)
}

// add takes one word behind the speaker's name.
func (v *voice) add(w string) error {
	again := false
	switch w {
	case room, room2, other, private:
		again, v.in = v.in != "", w
	case "reply":
		again, v.reply = v.reply, true
	case "edit":
		again, v.edit = v.edit, true
	case "photo":
		again, v.photo = v.photo, true
	default:
		at, err := parseClock(w)
		if err != nil {
			return err
		}
		again, v.sent = v.sent != nil, &at
	}
	if again {
		return fmt.Errorf("%q is one too many", w)
	}
	return nil
}

// parseSpoken reads what follows the speaker: a tap or a message.
func parseSpoken(v voice, text string) (step, error) {
	if strings.HasPrefix(text, "[") {
		label, closed := strings.CutSuffix(text[1:], "]")
		switch {
		case !closed:
			return nil, errors.New("no ] at the end of the button")
		case strings.TrimSpace(label) == "":
			return nil, errors.New("no label between the brackets")
		case v.reply || v.edit || v.photo:
			return nil, errors.New("a tap is no reply or edit and has no photo")
		}
		return tap{voice: v, label: strings.TrimSpace(label)}, nil
	}
	if text == "" && !v.photo {
		return nil, errors.New("nothing is said")
	}
	return say{voice: v, text: strings.ReplaceAll(text, `\n`, "\n")}, nil
}

var (
	moveShape = regexp.MustCompile(`^\+[0-9][0-9A-Za-z.]*$`)
	moveParts = regexp.MustCompile(`^\+(?:([0-9]+)d)?(?:([0-9]+)h)?(?:([0-9]+)m)?(?:([0-9]+)s)?$`)
	hourShape = regexp.MustCompile(`^@[0-9]+([:.][0-9]*)?$`)
	hourParts = regexp.MustCompile(`^([0-9]{1,2}):([0-9]{2})$`)
)

// parseAdvance takes a line for a move of the clock if its first word is one,
// or if it is a single word that looks like one.
func parseAdvance(text string) (step, error) {
	first, rest := firstWord(text)
	by, err := parseMove(first)
	switch {
	case !moveShape.MatchString(first), err != nil && rest != "" && rest != "down":
		return parseSpoken(voice{who: robin}, text)
	case err != nil:
		return nil, err
	case rest == "":
		return advance{by: by, power: up}, nil
	case rest == "down":
		return advance{by: by, power: down}, nil
	}
	return nil, fmt.Errorf("%q behind a move of the clock, which can only be down", rest)
}

func parseMove(word string) (time.Duration, error) {
	parts := moveParts.FindStringSubmatch(word)
	if parts == nil || word == "+" {
		return 0, errors.New("a move of the clock is like +45s, +90m, +2h30m or +3d")
	}
	var by time.Duration
	for i, unit := range []time.Duration{24 * time.Hour, time.Hour, time.Minute, time.Second} {
		n, err := strconv.ParseInt("0"+parts[i+1], 10, 32)
		if err != nil || time.Duration(n) > longest/unit {
			return 0, errors.New("a move of the clock over ten years")
		}
		by += time.Duration(n) * unit
	}
	return by, nil
}

// parseUntil takes a line for a time of day if its first word has a colon in
// it or if there is no other word.
func parseUntil(text string) (step, error) {
	first, rest := firstWord(text)
	colon := strings.Contains(first, ":")
	if !hourShape.MatchString(first) || rest != "" && !colon {
		return parseSpoken(voice{who: robin}, text)
	}
	at, err := parseClock(first[1:])
	if err != nil {
		return nil, err
	}
	if rest != "" {
		return nil, fmt.Errorf("%q behind a time of day", rest)
	}
	return until{at: at}, nil
}

func firstWord(text string) (first, rest string) {
	end := strings.IndexFunc(text, unicode.IsSpace)
	if end < 0 {
		return text, ""
	}
	return text[:end], strings.TrimSpace(text[end:])
}

func parseClock(w string) (clock, error) {
	parts := hourParts.FindStringSubmatch(w)
	if parts == nil {
		return clock{}, fmt.Errorf("%q is neither a way of speaking nor a time of day", w)
	}
	hour, _ := strconv.Atoi(parts[1])
	minute, _ := strconv.Atoi(parts[2])
	if hour > 23 || minute > 59 {
		return clock{}, fmt.Errorf("there is no %s on the clock", w)
	}
	return clock{hour, minute}, nil
}

// next is the first such time of day after t, in t's zone.
func (c clock) next(t time.Time) time.Time {
	for day := 0; ; day++ {
		if at := c.on(t, day); at.After(t) {
			return at
		}
	}
}

// last is the latest such time of day up to t, in t's zone.
func (c clock) last(t time.Time) time.Time {
	for day := 0; ; day-- {
		if at := c.on(t, day); !at.After(t) {
			return at
		}
	}
}

func (c clock) on(t time.Time, day int) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day()+day, c.hour, c.minute, 0, 0, t.Location())
}
