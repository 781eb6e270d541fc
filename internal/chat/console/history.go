package console

import (
	"os"
	"slices"
	"strings"
)

// history keeps what was typed, in memory and in a file. It is a comfort: when
// the file cannot be read or written it goes on without.
type history struct {
	path  string
	lines []string // oldest first
}

// kept is how many lines a file is cut down to when it has twice as many.
const kept = 500

func loadHistory(path string) *history {
	h := &history{path: path}
	if path == "" {
		return h
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return h
	}
	found := strings.Split(strings.TrimSpace(string(data)), "\n")
	h.lines = slices.DeleteFunc(slices.Clone(found), unkept)
	if len(h.lines) > 2*kept {
		h.lines = h.lines[len(h.lines)-kept:]
	}
	if len(h.lines) < len(found) {
		h.write(os.O_TRUNC, strings.Join(h.lines, "\n"))
	}
	return h
}

// longestKept is how long a line of the history is at most, in bytes: more was
// pasted.
const longestKept = 4096

// unkept tells the lines that no history may hold: empty ones, those that are too
// long, and those that speak of claiming or joining, since a code stands in them.
func unkept(line string) bool {
	if len(line) > longestKept {
		return true
	}
	words := strings.FieldsFunc(strings.ToLower(line), func(r rune) bool { return r < 'a' || r > 'z' })
	return strings.TrimSpace(line) == "" || slices.Contains(words, "claim") || slices.Contains(words, "join")
}

// Add keeps a line as the newest.
func (h *history) Add(line string) {
	if unkept(line) || len(h.lines) > 0 && h.lines[len(h.lines)-1] == line {
		return
	}
	h.lines = append(h.lines, line)
	h.write(os.O_APPEND, line)
}

// Len is the number of lines.
func (h *history) Len() int { return len(h.lines) }

// At is a line counted back from the newest, which is 0.
func (h *history) At(i int) string { return h.lines[len(h.lines)-1-i] }

func (h *history) write(how int, text string) {
	if h.path == "" {
		return
	}
	f, err := os.OpenFile(h.path, os.O_CREATE|os.O_WRONLY|how, 0o600)
	if err != nil {
		return
	}
	// A file made by somebody else may be open to all.
	if f.Chmod(0o600) == nil && text != "" {
		_, _ = f.WriteString(text + "\n")
	}
	_ = f.Close()
}
