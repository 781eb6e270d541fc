package chat

import (
	"fmt"
	"strings"
)

// Plain prints a post as plain text in lines of at most width columns, the
// last without a line break. It is the reference for every other renderer:
// the terminal, rehearsals and Matrix's fallback bodies show it.
//
// Each block stands on lines of its own and no line is empty. Paragraphs wrap
// at spaces, never at a no-break space, which is printed as a space
// afterwards. Tables are at most 28 columns wide. After the text come the
// files as <name, bytes>, then the buttons as [label] on a last line, which
// wraps between buttons. Widths are those of the display, so a wide character
// counts as two; a width under 4 is taken as 4. Only a single character wider
// than its place can stick out. What a leaf holds goes through [Clean], so it
// can neither begin a line nor move the cursor.
func Plain(p Post, width int) string { return Styled(p, width, Style{}) }

// Style is what to print around bold text. The zero value prints nothing.
type Style struct{ Bold, Unbold string }

// Styled is [Plain] with bold text set off as the style says. A style ends
// before each line break and begins anew after it, and it takes no columns.
func Styled(p Post, width int, style Style) string {
	width = max(width, minWidth)
	var lines []line
	for _, b := range p.Blocks {
		lines = append(lines, blockLines(b, width)...)
	}
	for _, f := range p.Files {
		name := fmt.Sprintf("<%s, %d>", f.Name, len(f.Data))
		lines = append(lines, wrap(atoms(run{text: name}), width)...)
	}
	lines = append(lines, buttonLines(p.Buttons, width)...)
	printed := make([]string, len(lines))
	for i, l := range lines {
		printed[i] = l.print(style)
	}
	return strings.Join(printed, "\n")
}

// minWidth leaves room for a list mark and one wide character.
const minWidth = 4

func blockLines(b Block, width int) []line {
	switch b := b.(type) {
	case Para:
		return wrap(atoms(runs(b)...), width)
	case Table:
		return tableLines(b, min(width, tableWidth))
	case List:
		var lines []line
		for _, item := range b {
			wrapped := wrap(atoms(runs(item)...), width-2)
			lines = append(lines, prefixed(wrapped, "- ", "  ")...)
		}
		return lines
	case Quote:
		return quoteLines(string(b), width)
	}
	panic(fmt.Sprintf("chat: block %T", b))
}

// quoteLines keeps the lines of the quoted text, for somebody else's message
// may well be a list. Every one of them carries the mark.
func quoteLines(text string, width int) []line {
	var lines []line
	for text := range strings.Lines(text) {
		wrapped := wrap(atoms(run{text: text}), width-2)
		lines = append(lines, prefixed(wrapped, "> ", "> ")...)
	}
	return lines
}

func prefixed(lines []line, first, rest string) []line {
	mark := first
	for i, l := range lines {
		lines[i] = append(atoms(run{text: mark}), l...)
		mark = rest
	}
	return lines
}

// buttonLines sets buttons one after the other and wraps inside a label only
// if it is too long for a line of its own.
func buttonLines(buttons []Button, width int) []line {
	var lines []line
	var current line
	for _, b := range buttons {
		label := wrap(atoms(run{text: "[" + strings.TrimSpace(Clean(b.Label)) + "]"}), width)
		if len(current) > 0 && len(label) == 1 && current.width()+1+label[0].width() <= width {
			current = append(append(current, atoms(run{text: " "})...), label[0]...)
			continue
		}
		if len(current) > 0 {
			lines = append(lines, current)
		}
		lines = append(lines, label[:len(label)-1]...)
		current = label[len(label)-1]
	}
	if len(current) > 0 {
		lines = append(lines, current)
	}
	return lines
}

// run is a stretch of text in one weight.
type run struct {
	text string
	bold bool
}

func runs(spans []Span) []run {
	out := make([]run, len(spans))
	for i, s := range spans {
		out[i] = spanRun(s)
	}
	return out
}

func spanRun(s Span) run {
	switch s := s.(type) {
	case Text:
		return run{text: string(s)}
	case Bold:
		return run{text: string(s), bold: true}
	case Code:
		return run{text: string(s)}
	case Mention:
		return run{text: s.String()}
	case When:
		return run{text: s.String()}
	}
	panic(fmt.Sprintf("chat: span %T", s))
}
