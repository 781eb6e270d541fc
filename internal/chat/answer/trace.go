package answer

import (
	"fmt"
	"slices"
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/picture"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// trace tells what came from what, with a picture where that is more than a phone shows.
func (t *turn) trace(i phrase.Trace, ctx scene) (chat.Post, error) {
	k, err := t.kinship()
	if err != nil {
		return chat.Post{}, err
	}
	view, found, err := k.traced(i, ctx)
	if err != nil {
		return chat.Post{}, err
	}
	t.said = i.String()
	if !found {
		return wording.NothingTraced(i.Culture), nil
	}
	if view.Contrast, err = k.contrast(view); err != nil {
		return chat.Post{}, err
	}
	tree := forest(view)
	size := 0
	for _, b := range tree {
		size += b.Size()
	}
	if !wording.TreeTooTall(size) {
		return wording.Trace(view), nil
	}
	png, err := picture.DrawTree(drawnTree(view, tree))
	if err != nil {
		return chat.Post{}, fmt.Errorf("draw a tree: %w", err)
	}
	view.Drawn = true
	post := wording.Trace(view)
	post.Files = []chat.File{{Name: wording.TreeFile(view), Type: "image/png", Data: png}}
	return post, nil
}

// traced gathers what is asked of; false when nobody used that name.
func (k *kinship) traced(i phrase.Trace, ctx scene) (wording.TraceView, bool, error) {
	switch {
	case i.Culture != "":
		return k.ofCulture(i.Culture)
	case i.Tag != "":
		return k.several("#"+i.Tag, func() ([]store.UnitRow, error) { return k.t.book.UnitsTagged(i.Tag, mostKin+1) })
	case i.Lot.Name != "":
		return k.several(wording.LotLabel(i.Lot.What, i.Lot.Name), func() ([]store.UnitRow, error) { return k.ofLot(i.Lot) })
	}
	refs, label, err := k.t.unitsTraced(i.Of, ctx)
	if err != nil {
		return wording.TraceView{}, false, err
	}
	if len(refs) == 1 {
		return k.ofUnit(refs[0])
	}
	return k.several(label, func() ([]store.UnitRow, error) { return k.t.book.UnitRows(refs) })
}

// mostContrasted is of how many loads it is looked up what stood beside.
const mostContrasted = 12

// contrast is what stood beside the units of a culture, or of a load, in the loads in
// which some of them went bad; nil where none did.
func (k *kinship) contrast(v wording.TraceView) (*kitchen.Contrast, error) {
	of := v.Units
	if v.Of.IsUnit() {
		return nil, nil
	}
	if v.Of != (kitchen.Node{}) {
		of = v.Lineage.Tree(v.Of).Units()
	}
	loads := v.Lineage.BadLoads(of)
	if len(loads) == 0 || len(loads) > mostContrasted {
		return nil, nil
	}
	var beside []kitchen.Unit
	for _, no := range loads {
		rows, err := k.t.book.UnitsOfLoad(no)
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			u, err := k.t.asTold(r)
			if err != nil {
				return nil, err
			}
			beside = append(beside, u)
		}
	}
	c := kitchen.ContrastOf(of, beside)
	return &c, nil
}

// view is a view of what was gathered.
func (k *kinship) view() wording.TraceView {
	return wording.TraceView{Lineage: k.lineage(), Cut: k.cut, Now: k.t.arrived()}
}

// ofCulture traces a culture by its name, or all of a species.
func (k *kinship) ofCulture(name string) (wording.TraceView, bool, error) {
	names := []string{name}
	_, known := k.cultures.Named(name, k.t.m.At)
	if !known {
		names = append(names, ofSpecies(k.cultures, name)...)
	}
	for _, n := range names {
		if err := k.backOf(n); err != nil {
			return wording.TraceView{}, false, err
		}
	}
	if err := k.forward(names, nil); err != nil {
		return wording.TraceView{}, false, err
	}
	v := k.view()
	if len(names) > 1 {
		v.Label, v.Units = name, k.allOf(v.Lineage, names)
		return v, true, nil
	}
	n, ok := v.Lineage.Find(name)
	v.Of = n
	return k.withKin(v), ok, nil
}

// allOf are the units that came from cultures of these names.
func (k *kinship) allOf(l kitchen.Lineage, names []string) []kitchen.UnitRef {
	var out []kitchen.UnitRef
	for _, name := range names {
		if n, ok := l.Find(name); ok {
			out = append(out, l.Tree(n).Units()...)
		}
	}
	return othersThan(nil, out)
}

// ofUnit traces one unit.
func (k *kinship) ofUnit(ref kitchen.UnitRef) (wording.TraceView, bool, error) {
	if err := k.grown(ref); err != nil {
		return wording.TraceView{}, false, err
	}
	if err := k.forward(nil, []kitchen.UnitRef{ref}); err != nil {
		return wording.TraceView{}, false, err
	}
	v := k.view()
	v.Of = kitchen.UnitNode(ref)
	return k.withKin(v), true, nil
}

// withKin gathers the whole tree that a node stands in, unless that is too much: then
// it is left at what came from it.
func (k *kinship) withKin(v wording.TraceView) wording.TraceView {
	root := v.Lineage.Root(v.Of)
	if k.cut || onlySpecies(root) {
		return v
	}
	whole := *k
	whole.units = slices.Clone(k.units)
	if err := whole.forwardOf(v.Lineage, root); err != nil || whole.cut {
		return v
	}
	v.Lineage = whole.lineage()
	return v
}

// several traces units that share something.
func (k *kinship) several(label string, read func() ([]store.UnitRow, error)) (wording.TraceView, bool, error) {
	units, err := k.add(read())
	if err != nil {
		return wording.TraceView{}, false, err
	}
	if err := k.back(units); err != nil {
		return wording.TraceView{}, false, err
	}
	refs := refsOf(units)
	if len(units) > mostKin {
		k.cut = true
	} else if err := k.forward(nil, refs); err != nil {
		return wording.TraceView{}, false, err
	}
	v := k.view()
	v.Label, v.Units = label, refs
	return v, true, nil
}

// ofLot lists the units of a lot, whichever way its name was said: rye lot 3, lot 3.
func (k *kinship) ofLot(lot kitchen.LotSaid) ([]store.UnitRow, error) {
	last := lot.Name[strings.LastIndexByte(lot.Name, ' ')+1:]
	head, _, _ := strings.Cut(lot.Name, " ")
	for _, name := range []string{lot.Name, "lot " + lot.Name, head + " lot " + last, last, "lot " + last} {
		rows, err := k.t.book.UnitsOfLot(lot.What, name, mostKin+1)
		if err != nil || len(rows) > 0 {
			return rows, err
		}
	}
	return nil, nil
}

// forest is what the picture shows: the tree that a node stands in, or of several
// units what they came from with them below.
func forest(v wording.TraceView) []kitchen.Tree {
	l := v.Lineage
	if v.Of != (kitchen.Node{}) {
		if root := l.Root(v.Of); !onlySpecies(root) {
			return []kitchen.Tree{l.Tree(root)}
		}
		return []kitchen.Tree{l.Tree(v.Of)}
	}
	var out []kitchen.Tree
	place := map[kitchen.Node]int{}
	for _, ref := range v.Units {
		n := kitchen.UnitNode(ref)
		parent, ok := l.Back(n)
		if ok && parent.IsUnit() && slices.Contains(v.Units, parent.Unit) {
			continue // it stands below that
		}
		if !ok {
			out = append(out, l.Tree(n))
			continue
		}
		if _, seen := place[parent]; !seen {
			place[parent] = len(out)
			out = append(out, kitchen.Tree{Node: parent})
		}
		at := &out[place[parent]]
		at.Branches = append(at.Branches, l.Tree(n))
	}
	return out
}

// mostDrawn is how many branches are handed to the picture.
const mostDrawn = 4000

// drawnTree is a forest as the picture shows it.
func drawnTree(v wording.TraceView, trees []kitchen.Tree) picture.Tree {
	out := picture.Tree{Title: wording.TreeTitle(v), More: wording.TreeMore}
	left := mostDrawn
	for _, tree := range trees {
		out.Roots = append(out.Roots, branch(v, tree, &left))
	}
	return out
}

func branch(v wording.TraceView, tree kitchen.Tree, left *int) picture.Branch {
	name, state, place := wording.NodeWords(v.Lineage, tree.Node, v.Now)
	b := picture.Branch{Name: name, State: state, Place: place, Fate: fate(v.Lineage, tree.Node)}
	for _, below := range tree.Branches {
		if *left--; *left < 0 {
			break
		}
		b.Below = append(b.Below, branch(v, below, left))
	}
	return b
}

// fate is how the picture marks a unit or culture.
func fate(l kitchen.Lineage, n kitchen.Node) picture.Fate {
	if u, ok := l.Unit(n); ok {
		switch {
		case u.Loss.What != 0:
			return picture.Lost
		case u.State == kitchen.UnitSuspect:
			return picture.Doubtful
		case u.State.Stands() || u.State == kitchen.InCook:
			return picture.Stands
		}
		return picture.Away
	}
	if c, ok := l.Culture(n); ok && c.How == kitchen.CultureWentBad {
		return picture.Lost
	}
	return picture.Source
}
