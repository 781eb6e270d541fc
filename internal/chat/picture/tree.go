package picture

import (
	"errors"
	"fmt"
	"image"
	"image/png"
)

// What a tree can hold.
const (
	// mostRows is how many rows are drawn; what is more is folded into counts.
	mostRows = 40
	// mostBranches is how many are looked at.
	mostBranches = 5_000
	// mostSteps is how far a row is moved to the right; deeper ones stand below each other.
	mostSteps = 9
	// fewest is how many of a bundle of leaves stay where the others are folded.
	fewest = 3
)

// Tree is what came from what, drawn as a list in which what came from something stands
// below it and further to the right.
type Tree struct {
	Title string
	// Roots are where it begins; at least one.
	Roots []Branch
	// More names so many branches that have no room.
	More func(n int) string
}

// Branch is one thing in a tree, with all that came from it.
type Branch struct {
	// Name is written first, then State and Place; these may be empty.
	Name, State, Place string
	Fate               Fate
	Below              []Branch
}

// Fate is how something fared, which its mark shows by shape and by colour.
type Fate uint8

// The fates: a source is a square, what stands a disc, what is in doubt a hollow
// diamond, what was lost a crossed disc, what is away a ring.
const (
	Source Fate = iota + 1
	Stands
	Doubtful
	Lost
	Away
)

// DrawTree draws the tree as a PNG of 1200 pixels in width, as tall as its rows need. Of a
// tree with more than 40 rows the largest bundles are folded into a count. It is an
// error if there are no roots, too many branches, a fate is not set, or More isn't.
func DrawTree(t Tree) ([]byte, error) {
	if err := t.check(); err != nil {
		return nil, fmt.Errorf("draw a tree: %w", err)
	}
	rows := t.rows()
	s, err := newSheetOf(treeHeight(len(rows)))
	if err != nil {
		return nil, fmt.Errorf("draw a tree: %w", err)
	}
	drawTree(s, t.Title, rows)
	return s.encodeAt(png.BestSpeed) // it is mostly paper, and somebody waits for it
}

func (t Tree) check() error {
	if len(t.Roots) == 0 {
		return errors.New("no roots")
	}
	if t.More == nil {
		return errors.New("no words for more")
	}
	n := 0
	for _, b := range t.Roots {
		if err := b.check(&n); err != nil {
			return err
		}
	}
	return nil
}

func (b Branch) check(n *int) error {
	if *n++; *n > mostBranches {
		return fmt.Errorf("more than %d branches", mostBranches)
	}
	if b.Fate < Source || b.Fate > Away {
		return fmt.Errorf("branch %d has no fate", *n)
	}
	for _, c := range b.Below {
		if err := c.check(n); err != nil {
			return err
		}
	}
	return nil
}

// treeRow is a line of the picture. A fold has words alone.
type treeRow struct {
	name, state string
	fate        Fate
	depth       int
}

// folding is a branch while it is decided what has room.
type folding struct {
	Branch
	below []*folding
	// hidden is how many branches below are folded away.
	hidden int
	up     *folding
}

func fold(b Branch, up *folding, rows *int) *folding {
	f := &folding{Branch: b, up: up}
	*rows++
	for _, c := range b.Below {
		f.below = append(f.below, fold(c, f, rows))
	}
	return f
}

// size is how many branches a subtree has, folded ones too.
func (f *folding) size() int {
	n := 1 + f.hidden
	for _, c := range f.below {
		n += c.size()
	}
	return n
}

// bundle reports whether all below are leaves, as far as they are shown.
func (f *folding) bundle() bool {
	for _, c := range f.below {
		if len(c.below) > 0 {
			return false
		}
	}
	return len(f.below) > 0
}

// bundles lists them in the order of the tree.
func (f *folding) bundles(out *[]*folding) {
	if f.bundle() {
		*out = append(*out, f)
		return
	}
	for _, c := range f.below {
		c.bundles(out)
	}
}

// largest is the bundle with most in it, of several the first.
func (f *folding) largest() *folding {
	var all []*folding
	f.bundles(&all)
	largest := all[0]
	for _, b := range all {
		if len(b.below) > len(largest.below) {
			largest = b
		}
	}
	return largest
}

// shorten folds as many as it must of a bundle that is over rows too long, and returns
// by how many rows it is shorter. A small one goes as a whole.
func (f *folding) shorten(over int) int {
	switch has := len(f.below); {
	case has > over+fewest+1:
		return f.keep(has - over - 1)
	case has > fewest+1:
		return f.keep(fewest)
	}
	return f.keep(0)
}

// keep folds all but the first n below, and returns by how many rows that is shorter.
func (f *folding) keep(n int) int {
	rows := -1 // the row that says how many
	if f.hidden > 0 {
		rows = 0
	}
	for _, c := range f.below[n:] {
		f.hidden += c.size()
		rows++
		if c.hidden > 0 {
			rows++
		}
	}
	f.below = f.below[:n]
	return rows
}

// rows are the lines of the picture.
func (t Tree) rows() []treeRow {
	n := 0
	top := &folding{}
	for _, b := range t.Roots {
		top.below = append(top.below, fold(b, top, &n))
	}
	for n > mostRows && len(top.below) > 0 {
		n -= top.largest().shorten(n - mostRows)
	}
	var out []treeRow
	top.lines(t.More, -1, &out)
	return out
}

// lines adds the lines of what is below.
func (f *folding) lines(more func(int) string, depth int, out *[]treeRow) {
	if f.up != nil || depth >= 0 {
		state := f.State
		if f.Place != "" {
			if state != "" {
				state += ", "
			}
			state += f.Place
		}
		*out = append(*out, treeRow{name: f.Name, state: state, fate: f.Fate, depth: depth})
	}
	for _, c := range f.below {
		c.lines(more, depth+1, out)
	}
	if f.hidden > 0 {
		*out = append(*out, treeRow{state: more(f.hidden), depth: depth + 1})
	}
}

// Rows and distances of a tree, in pixels.
const (
	treeTop    = 104 // of the first row, below the title
	rowHeight  = 62
	stepWide   = 54
	markWide   = 44 // from the left end of a row to its words
	treeRadius = 13
	twigThick  = 3
)

// treeHeight is how tall a picture of so many rows is.
func treeHeight(rows int) int { return treeTop + rows*rowHeight + margin }

// drawTree draws the rows: first the twigs, then what stands on them.
func drawTree(s *sheet, title string, rows []treeRow) {
	s.write(s.bold, s.bold.fit(title, width-2*margin), textBox(margin, titleTop, 0), black)
	for i := range rows {
		s.twigs(rows, i)
	}
	for i, r := range rows {
		s.treeRow(r, i)
	}
}

// place is the middle of the mark of a row.
func (r treeRow) place(i int) (x, y int) {
	return margin + treeRadius + 3 + min(r.depth, mostSteps)*stepWide, treeTop + i*rowHeight + lineHeight/2
}

// twigs draws the line down from a row to what is below it, and the lines across.
func (s *sheet) twigs(rows []treeRow, i int) {
	x, y := rows[i].place(i)
	last := y
	for j := i + 1; j < len(rows) && rows[j].depth > rows[i].depth; j++ {
		if rows[j].depth != rows[i].depth+1 {
			continue
		}
		to, at := rows[j].place(j)
		if to > x { // beyond the deepest step they stand below each other
			s.block(image.Rect(x-twigThick/2, at-twigThick/2, to, at-twigThick/2+twigThick), silver)
		}
		last = at
	}
	s.block(image.Rect(x-twigThick/2, y, x-twigThick/2+twigThick, last+twigThick/2+1), silver)
}

// treeRow writes one row.
func (s *sheet) treeRow(r treeRow, i int) {
	x, y := r.place(i)
	left := x - treeRadius + markWide
	right := width - margin
	if r.fate == 0 {
		s.write(s.plain, s.plain.fit(r.state, right-left), textBox(left, y-lineHeight/2, 0), grey)
		return
	}
	s.treeMark(r.fate, point{float64(x), float64(y)})
	gap := s.plain.width("  ")
	state := s.plain.clean(r.state)
	room := right - left
	// The name comes first: it may take all but a third that the state needs.
	name := s.plain.fit(r.name, max(room-gap-s.plain.width(state), room*2/3-gap))
	s.write(s.plain, name, textBox(left, y-lineHeight/2, 0), black)
	left += s.plain.width(name) + gap
	ink := grey
	if r.fate == Lost {
		ink = vermilion
	}
	s.write(s.plain, s.plain.fit(state, right-left), textBox(left, y-lineHeight/2, 0), ink)
}

// treeMark draws how something fared.
func (s *sheet) treeMark(f Fate, at point) {
	const r = treeRadius
	switch f {
	case Source:
		s.block(image.Rect(int(at.x)-r, int(at.y)-r, int(at.x)+r, int(at.y)+r), black)
	case Stands:
		s.fill(blue, disc(at, r))
	case Doubtful:
		s.fill(vermilion, diamond(at, r+3))
		s.fill(paper, diamond(at, r-3))
	case Lost:
		s.fill(vermilion, disc(at, r))
		s.stroke([]point{{at.x - 6, at.y - 6}, {at.x + 6, at.y + 6}}, 4, paper)
		s.stroke([]point{{at.x - 6, at.y + 6}, {at.x + 6, at.y - 6}}, 4, paper)
	case Away:
		s.fill(grey, disc(at, r))
		s.fill(paper, disc(at, r-5))
	}
}
