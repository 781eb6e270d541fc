package wording

import (
	"slices"
	"strings"

	"ryebell/internal/chat"
)

// say is a paragraph of text in which **bold** and `code` are marked. Words of
// people (names they gave) take the place of each {}: nothing in them is a mark.
func say(text string, theirs ...string) chat.Para {
	var p chat.Para
	for text != "" {
		i := strings.IndexAny(text, "*`{")
		if i < 0 {
			return append(p, chat.Text(text))
		}
		if i > 0 {
			p = append(p, chat.Text(text[:i]))
		}
		var span chat.Span
		span, text, theirs = marked(text[i:], theirs)
		p = append(p, span)
	}
	return p
}

// marked reads the marked span that a text begins with; a mark that is never
// closed is plain text.
func marked(text string, theirs []string) (chat.Span, string, []string) {
	if rest, ok := strings.CutPrefix(text, "{}"); ok && len(theirs) > 0 {
		return chat.Text(theirs[0]), rest, theirs[1:]
	}
	if inner, rest, ok := strings.Cut(strings.TrimPrefix(text, "**"), "**"); ok && strings.HasPrefix(text, "**") {
		bold, left := filled(inner, theirs)
		return chat.Bold(bold), rest, left
	}
	if inner, rest, ok := strings.Cut(text[1:], "`"); ok && text[0] == '`' {
		return chat.Code(inner), rest, theirs
	}
	return chat.Text(text[:1]), text[1:], theirs
}

// filled puts words of people in the place of each {}.
func filled(text string, theirs []string) (string, []string) {
	var b strings.Builder
	for len(theirs) > 0 {
		before, rest, ok := strings.Cut(text, "{}")
		if !ok {
			break
		}
		b.WriteString(before + theirs[0])
		text, theirs = rest, theirs[1:]
	}
	return b.String() + text, theirs
}

// tap is a button whose label is what it says.
func tap(label, sentence string) chat.Button { return chat.Button{Label: label, Say: sentence} }

// lines makes a post of paragraphs, one sentence or two in each; empty ones are
// left out.
func lines(texts ...string) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	for _, t := range texts {
		if t != "" {
			post.Blocks = append(post.Blocks, say(t))
		}
	}
	return post
}

// with adds buttons to a post.
func with(p chat.Post, buttons ...chat.Button) chat.Post {
	p.Buttons = append(p.Buttons, buttons...)
	return p
}

// listed joins words as in a sentence: a, b and c.
func listed(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// ButtonsBeside are the buttons of two answers in one post: those of what was said
// last first, each once, at most three, Undo behind the rest. Two with one label say
// of which run they are.
func ButtonsBeside(last, before []chat.Button) []chat.Button {
	var all, undo []chat.Button
	for _, b := range append(last[:len(last):len(last)], before...) {
		switch {
		case slices.Contains(all, b) || slices.Contains(undo, b):
		case b.Say == "undo":
			undo = append(undo, b)
		default:
			all = append(all, b)
		}
	}
	all = append(all, undo...)
	all = all[:min(len(all), maxButtons)]
	named := slices.Clone(all)
	for i, b := range all {
		twin := slices.ContainsFunc(all, func(other chat.Button) bool { return other != b && other.Label == b.Label })
		if no, ok := runIn(b.Say); ok && twin {
			named[i].Label = no + " " + lower(b.Label)
		}
	}
	return named
}

// runIn is the run that a sentence names.
func runIn(say string) (string, bool) {
	for _, w := range strings.Fields(say) {
		if strings.HasPrefix(w, "#") {
			return w, true
		}
	}
	return "", false
}
