package chat

import (
	"strings"

	"github.com/rivo/uniseg"
)

// atom is what a line is never broken within: one character as a reader sees
// it (a grapheme cluster), or several tied by no-break spaces.
type atom struct {
	text  string
	width int
	bold  bool
}

func (a atom) isSpace() bool { return a.text == " " }

// line is what stands between two line breaks.
type line []atom

func (l line) width() int {
	var w int
	for _, a := range l {
		w += a.width
	}
	return w
}

func (l line) print(style Style) string {
	var b strings.Builder
	marks := map[bool]string{true: style.Bold, false: style.Unbold}
	bold := false
	for _, a := range l {
		if a.bold != bold {
			b.WriteString(marks[a.bold])
			bold = a.bold
		}
		b.WriteString(a.text)
	}
	if bold {
		b.WriteString(style.Unbold)
	}
	return noBreak.Replace(b.String())
}

// noBreak turns the spaces that have done their work of tying into plain
// ones, so that what is printed can be searched and copied.
var noBreak = strings.NewReplacer("\u00a0", " ", "\u202f", " ")

// atoms cuts runs into characters. The runs are joined first, for a mark at
// the head of one may belong to the last letter of the run before.
func atoms(runs ...run) line {
	var joined strings.Builder
	var ends []int
	for _, r := range runs {
		joined.WriteString(Clean(r.text))
		ends = append(ends, joined.Len())
	}
	rest, state, at, current := joined.String(), -1, 0, 0
	var out line
	for rest != "" {
		for at >= ends[current] {
			current++
		}
		var cluster string
		var width int
		cluster, rest, width, state = uniseg.FirstGraphemeClusterInString(rest, state)
		out = append(out, atom{text: cluster, width: width, bold: runs[current].bold})
		at += len(cluster)
	}
	return out
}

// wrap breaks text into lines of at most width columns. Spaces at the ends of
// lines are dropped. Text without anything to show makes no line.
func wrap(text line, width int) []line {
	var lines []line
	var current, gap line
	for len(text) > 0 {
		if text[0].isSpace() {
			gap, text = append(gap, text[0]), text[1:]
			continue
		}
		n := wordEnd(text)
		word := text[:n]
		text = text[n:]
		switch {
		case len(current) == 0:
			current = append(current, word...)
		case current.width()+gap.width()+word.width() <= width:
			current = append(append(current, gap...), word...)
		default:
			lines = append(lines, current)
			current = append(line(nil), word...)
		}
		gap = nil
		if current.width() > width {
			full := chop(current, width)
			lines = append(lines, full[:len(full)-1]...)
			current = full[len(full)-1]
		}
	}
	if len(current) > 0 {
		lines = append(lines, current)
	}
	return tidy(lines)
}

// tidy drops no-break spaces that stand at the end of a line, and lines that
// held nothing else.
func tidy(lines []line) []line {
	kept := lines[:0]
	for _, l := range lines {
		for len(l) > 0 && noBreak.Replace(l[len(l)-1].text) == " " {
			l = l[:len(l)-1]
		}
		if len(l) > 0 {
			kept = append(kept, l)
		}
	}
	return kept
}

func wordEnd(text line) int {
	for i, a := range text {
		if a.isSpace() {
			return i
		}
	}
	return len(text)
}

// chop breaks a word that is too long for a line, beside a no-break space
// only if what it ties is too long as well.
func chop(word line, width int) []line {
	var lines []line
	var current line
	used := 0
	for _, part := range tied(word, width) {
		w := part.width()
		if len(current) > 0 && used+w > width {
			lines, current, used = append(lines, current), nil, 0
		}
		current, used = append(current, part...), used+w
	}
	return append(lines, current)
}

// tied groups the characters of a word by the no-break spaces between them.
func tied(word line, width int) []line {
	var parts []line
	var part line
	for i, a := range word {
		part = append(part, a)
		ties := isTie(a) || i+1 < len(word) && isTie(word[i+1])
		if ties && i+1 < len(word) {
			continue
		}
		if part.width() <= width {
			parts = append(parts, part)
		} else {
			for _, single := range part {
				parts = append(parts, line{single})
			}
		}
		part = nil
	}
	return parts
}

func isTie(a atom) bool {
	return strings.HasPrefix(a.text, "\u00a0") || strings.HasPrefix(a.text, "\u202f") || strings.HasPrefix(a.text, "\u2060")
}
