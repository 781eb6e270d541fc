package wording

import (
	"slices"
	"strings"

	"ryebell/internal/chat"
)

// screen is how many lines of 40 columns a post takes at most, buttons and all.
const (
	screen = 12
	phone  = 40
)

// need says how badly a paragraph is needed on a screen that is too small for
// all of them.
type need uint8

const (
	must need = iota + 1
	should
	may
)

// sheet is a post in the making: paragraphs in the order in which they are read.
// When they don't fit a screen the least needed go, the last of them first.
type sheet struct {
	rows    []row
	next    chat.Para
	buttons []chat.Button
}

type row struct {
	need need
	text chat.Para
}

// add puts a paragraph on the sheet; an empty one is left out, and one that stands
// there already.
func (s *sheet) add(n need, p chat.Para) {
	i := slices.IndexFunc(s.rows, func(r row) bool { return slices.Equal(r.text, p) })
	switch {
	case len(p) == 0:
	case i >= 0:
		s.rows[i].need = min(s.rows[i].need, n)
	default:
		s.rows = append(s.rows, row{n, p})
	}
}

// then is the one next step: it stands last.
func (s *sheet) then(p chat.Para, buttons ...chat.Button) { s.next, s.buttons = p, buttons }

// post is the sheet without what doesn't fit.
func (s *sheet) post(l chat.Loudness) chat.Post {
	rows := slices.Clone(s.rows)
	for {
		p := s.put(rows, l)
		if tall(p) <= screen {
			return p
		}
		last := -1
		for i, r := range rows {
			if r.need > must && (last < 0 || r.need >= rows[last].need) {
				last = i
			}
		}
		if last < 0 {
			return p
		}
		rows = slices.Delete(rows, last, last+1)
	}
}

func (s *sheet) put(rows []row, l chat.Loudness) chat.Post {
	p := chat.Post{Loudness: l, Buttons: s.buttons}
	for _, r := range rows {
		p.Blocks = append(p.Blocks, r.text)
	}
	if len(s.next) > 0 {
		p.Blocks = append(p.Blocks, s.next)
	}
	return p
}

// whole reports whether all of it fits a screen.
func (s *sheet) whole() bool { return tall(s.put(s.rows, chat.Answer)) <= screen }

// tall is how many lines a post takes on a phone.
func tall(p chat.Post) int { return strings.Count(chat.Plain(p, phone), "\n") + 1 }

// fits reports whether a paragraph more would still be on the screen.
func (s *sheet) fits(p chat.Para) bool {
	return tall(s.put(append(slices.Clone(s.rows), row{may, p}), chat.Answer)) <= screen
}

// undoable offers to take back what was said, last, where a button is left for it.
func (s *sheet) undoable() {
	offered := slices.ContainsFunc(s.buttons, func(b chat.Button) bool { return b.Say == "undo" })
	if !offered && len(s.buttons) < maxButtons {
		s.buttons = append(s.buttons, tap("Undo", "undo"))
	}
}

// maxButtons is how many buttons a post has.
const maxButtons = 3
