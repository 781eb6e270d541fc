package kitchen

import (
	"slices"
	"strings"
	"time"
)

// Node is what a lineage is made of: a unit, a culture of the book by its number, or
// a culture that only its name is known of. Just one of the fields is set.
type Node struct {
	Unit    UnitRef
	Culture EntryNo
	Name    string // in lower case
}

// UnitNode is the node of a unit.
func UnitNode(u UnitRef) Node { return Node{Unit: u} }

// IsUnit reports whether it is a unit.
func (n Node) IsUnit() bool { return n.Unit != UnitRef{} }

// Lineage says of all units and cultures what came from what. Each has one parent at
// most, and none is its own ancestor, so they are trees.
type Lineage struct {
	cultures Cultures
	byName   map[string][]Culture // the oldest first
	byNo     map[EntryNo]Culture
	units    map[UnitRef]*Unit
	size     map[RunNo]int
	order    []UnitRef
	parent   map[Node]Node
	children map[Node][]Node
}

// NewLineage links loads and cultures. What would make something its own ancestor is
// left unlinked.
func NewLineage(loads []Units, cultures Cultures) Lineage {
	l := unlinked(cultures)
	for _, load := range loads {
		for i := range load.All {
			l.add(&load.All[i], len(load.All))
		}
	}
	return l.linked()
}

// KeptUnit is a unit as the book keeps it, without its steps, and how many its load has.
type KeptUnit struct {
	Unit
	Size int
}

// NewLineageOf links some units, of which nothing but how they are is known, with all
// cultures: what came from what among these, see [NewLineage].
func NewLineageOf(units []KeptUnit, cultures Cultures) Lineage {
	l := unlinked(cultures)
	for i := range units {
		if l.units[units[i].Ref] == nil {
			l.add(&units[i].Unit, units[i].Size)
		}
	}
	return l.linked()
}

func unlinked(cultures Cultures) Lineage {
	l := Lineage{
		cultures: cultures, byName: map[string][]Culture{}, byNo: map[EntryNo]Culture{}, units: map[UnitRef]*Unit{},
		size: map[RunNo]int{}, parent: map[Node]Node{}, children: map[Node][]Node{},
	}
	for _, c := range cultures.All {
		l.byName[strings.ToLower(c.Name)] = append(l.byName[strings.ToLower(c.Name)], c)
		l.byNo[c.No] = c
	}
	return l
}

// add takes a unit in. It is large, and there are tens of thousands: it is not copied.
func (l *Lineage) add(u *Unit, size int) {
	l.size[u.Ref.Run] = size
	l.units[u.Ref] = u
	l.order = append(l.order, u.Ref)
}

// linked is the lineage with its links.
func (l Lineage) linked() Lineage {
	slices.SortFunc(l.order, compareUnits)
	for _, c := range l.cultures.All {
		switch {
		case c.FromUnit != UnitRef{}:
			l.link(Node{Culture: c.No}, UnitNode(c.FromUnit))
		case c.Parent != 0:
			l.link(Node{Culture: c.No}, Node{Culture: c.Parent})
		case c.From != "":
			l.link(Node{Culture: c.No}, l.meant(c.From, c.Made))
		}
	}
	for _, ref := range l.order {
		if from, ok := l.sourceOf(*l.units[ref]); ok {
			l.link(UnitNode(ref), from)
		}
	}
	return l
}

func compareUnits(a, b UnitRef) int {
	if a.Run != b.Run {
		return int(a.Run - b.Run)
	}
	return int(a.Unit - b.Unit)
}

// sourceOf is what was put on a unit, where that was said.
func (l Lineage) sourceOf(u Unit) (Node, bool) {
	switch {
	case u.From != UnitRef{}:
		return UnitNode(u.From), true
	case u.Culture == "":
		return Node{}, false
	}
	at := u.Inoculated
	if s, ok := u.LastStep(SaidInoculated); ok && at.IsZero() {
		at = s.At
	} else if at.IsZero() {
		at = u.Since // nobody said when, and its steps aren't known
	}
	return l.meant(u.Culture, at), true
}

// meant is the culture that a name meant at a time. One that the book got to know
// later is taken for it when there was none of that name by then: people put it on
// first and write it down after.
func (l Lineage) meant(name string, at time.Time) Node {
	same := l.byName[strings.ToLower(name)]
	for _, c := range slices.Backward(same) {
		if !c.Made.After(at) {
			return Node{Culture: c.No}
		}
	}
	if len(same) > 0 {
		return Node{Culture: same[0].No}
	}
	return Node{Name: strings.ToLower(name)}
}

func (l Lineage) link(child, parent Node) {
	if l.descends(parent, child) {
		return
	}
	l.parent[child] = parent
	l.children[parent] = append(l.children[parent], child)
}

// descends reports whether a node is, or comes from, another.
func (l Lineage) descends(n, ancestor Node) bool {
	for ok := true; ok; n, ok = l.parent[n] {
		if n == ancestor {
			return true
		}
	}
	return false
}

// Unit is the unit of a node; false for cultures, and for a unit that the book
// doesn't have.
func (l Lineage) Unit(n Node) (Unit, bool) {
	u, ok := l.units[n.Unit]
	if !ok {
		return Unit{}, false
	}
	return *u, true
}

// Culture is the culture of a node; false for units, and for a mere name.
func (l Lineage) Culture(n Node) (Culture, bool) {
	c, ok := l.byNo[n.Culture]
	return c, ok && n.Culture != 0
}

// Find is what a name of a culture means now: the newest of that name, or what only
// units tell of. False for a name that nobody used.
func (l Lineage) Find(name string) (Node, bool) {
	if same := l.byName[strings.ToLower(name)]; len(same) > 0 {
		return Node{Culture: same[len(same)-1].No}, true
	}
	n := Node{Name: strings.ToLower(name)}
	_, ok := l.children[n]
	return n, ok
}

// Meant is the culture that a name meant at a time: see [Lineage.Inoculating].
func (l Lineage) Meant(name string, at time.Time) Node { return l.meant(name, at) }

// Back is one step back: what a node was taken of.
func (l Lineage) Back(n Node) (Node, bool) {
	p, ok := l.parent[n]
	return p, ok
}

// Forward is one step forward: what was taken of a node, cultures first.
func (l Lineage) Forward(n Node) []Node { return slices.Clone(l.children[n]) }

// Line is the way back from a node, its parent first.
func (l Lineage) Line(n Node) []Node {
	var out []Node
	for p, ok := l.parent[n]; ok; p, ok = l.parent[p] {
		out = append(out, p)
	}
	return out
}

// Root is where a node comes from, as far back as is known; itself when nothing is.
func (l Lineage) Root(n Node) Node {
	if line := l.Line(n); len(line) > 0 {
		return line[len(line)-1]
	}
	return n
}

// Siblings are what came from the same parent beside a node.
func (l Lineage) Siblings(n Node) []Node {
	p, ok := l.parent[n]
	if !ok {
		return nil
	}
	return slices.DeleteFunc(l.Forward(p), func(s Node) bool { return s == n })
}

// Tree is a node with what came from it.
type Tree struct {
	Node     Node
	Branches []Tree
}

// Tree is all that came from a node. That of its [Lineage.Root] is the whole tree.
func (l Lineage) Tree(n Node) Tree {
	t := Tree{Node: n}
	for _, c := range l.children[n] {
		t.Branches = append(t.Branches, l.Tree(c))
	}
	return t
}

// Size is how many nodes are in a tree.
func (t Tree) Size() int {
	n := 1
	for _, b := range t.Branches {
		n += b.Size()
	}
	return n
}

// Units lists the units of a tree by their numbers.
func (t Tree) Units() []UnitRef {
	var out []UnitRef
	t.collect(&out)
	slices.SortFunc(out, compareUnits)
	return out
}

func (t Tree) collect(out *[]UnitRef) {
	if t.Node.IsUnit() {
		*out = append(*out, t.Node.Unit)
	}
	for _, b := range t.Branches {
		b.collect(out)
	}
}

// OfLot lists the units that a lot went into.
func (l Lineage) OfLot(what LotKind, name string) []UnitRef {
	var out []UnitRef
	for _, ref := range l.order {
		if slices.ContainsFunc(l.units[ref].Lots, func(x UnitLot) bool { return x.What == what && sameName(x.Name, name) }) {
			out = append(out, ref)
		}
	}
	return out
}

// OldGeneration is from which generation on grain a warning is due: most who make
// spawn stop before it (P. Stamets, Growing Gourmet and Medicinal Mushrooms, 3rd ed.,
// pp. 123, 126-127, by quotation).
const OldGeneration = 4

// Generation is how many times the culture of a node has been put from one thing on
// grain: 1 for the first unit of a plate or a bottle, 0 for these and for what has no
// culture. Each step from grain to grain adds one, and a culture taken of a unit goes
// on from there.
func (l Lineage) Generation(n Node) int {
	from, linked := l.Back(n)
	if u, ok := l.Unit(n); n.IsUnit() {
		switch {
		case linked:
			return l.Generation(from) + 1
		case ok && u.Cultured:
			return 1
		}
		return 0
	}
	c, known := l.Culture(n)
	switch {
	case known && c.Generation > 0:
		return c.Generation
	case linked:
		return l.Generation(from)
	case known && c.Kind == GrainMaster:
		return 1
	}
	return 0
}

// Parentage is what is worth saying of what is put on units.
type Parentage struct {
	Parent Node
	// Known is false for a culture that the book only has the name of.
	Known bool
	// Generation is the one of the units, Species what grows on the parent, where that is
	// known.
	Generation int
	Species    string
	// Ended is when the culture, or the parent unit, had come to its end before; zero
	// for not.
	Ended time.Time
	// Young is set for a parent unit that nobody has called grown through.
	Young bool
	// Bad is set for a parent that is suspect or has been lost.
	Bad bool
	// Tainted is the name, or the number, of what the parent came from that went bad;
	// empty for nothing.
	Tainted string
}

// Inoculating says where units would come from, or refuses: a parent that is not in
// the book, that nothing grew on by then, or that comes from them.
func (l Lineage) Inoculating(run RunNo, e Inoculated, at time.Time) (Parentage, error) {
	if e.From == (UnitRef{}) {
		if e.Culture == "" {
			return Parentage{Generation: 1}, nil
		}
		n := l.meant(e.Culture, at)
		c, known := l.Culture(n)
		p := Parentage{Parent: n, Known: known, Generation: l.Generation(n) + 1, Species: c.Species}
		if known && !c.Ended.IsZero() && !c.Ended.After(at) {
			p.Ended = c.Ended
		}
		p.Bad = known && c.How == CultureWentBad
		p.Tainted = l.taint(n)
		return p, nil
	}
	parent, err := l.grown(e.From, at)
	if err != nil {
		return Parentage{}, err
	}
	n := UnitNode(e.From)
	for _, u := range e.Units {
		if ref := (UnitRef{Run: run, Unit: u}); l.descends(n, UnitNode(ref)) {
			return Parentage{}, OwnAncestor{Unit: ref}
		}
	}
	p := Parentage{Parent: n, Known: true, Generation: l.Generation(n) + 1, Species: parent.Species, Bad: parent.State == UnitSuspect || parent.Loss.What != 0}
	p.Tainted = l.taint(n)
	p.Young = parent.State == UnitInoculated || parent.State == UnitGrowing
	if !parent.State.Stands() && !parent.Since.After(at) {
		p.Ended = parent.Since
	}
	return p, nil
}

// Making refuses a culture taken of a unit that is not in the book, that nothing grew
// on by then, or that comes from a culture of that very name.
func (l Lineage) Making(e CultureMade, at time.Time) error {
	if e.FromUnit == (UnitRef{}) {
		return nil
	}
	if _, err := l.grown(e.FromUnit, at); err != nil {
		return err
	}
	if l.descends(UnitNode(e.FromUnit), Node{Name: strings.ToLower(e.Name)}) {
		return OwnAncestor{Culture: e.Name}
	}
	return nil
}

// grown is a unit that a culture was on at a time.
func (l Lineage) grown(ref UnitRef, at time.Time) (Unit, error) {
	size, ok := l.size[ref.Run]
	if !ok {
		return Unit{}, NoSuchRun{Run: ref.Run}
	}
	u, ok := l.units[ref]
	if !ok {
		return Unit{}, NoSuchUnit{Ref: ref.Ref(), Has: size}
	}
	if !u.Cultured || u.Inoculated.After(at) {
		return Unit{}, UnitNotYet{Unit: ref, Said: SaidInoculated, State: u.State, Blank: u.Blank}
	}
	return *u, nil
}
