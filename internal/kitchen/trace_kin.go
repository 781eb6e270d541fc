package kitchen

import "slices"

// Kin are the units that a bad one may have tainted, or share its taint.
type Kin struct {
	// Below came from it, Beside from the same parent, with what came from those: what
	// still stands.
	Below, Beside []UnitRef
	// Used came from it and was used or given away since.
	Used []UnitRef
	// Cultures were taken of it, or of what came from it, and haven't ended.
	Cultures []Node
}

// None reports whether there is nothing to warn of.
func (k Kin) None() bool { return len(k.Below)+len(k.Beside)+len(k.Used)+len(k.Cultures) == 0 }

// Endangered are the kin of a node that nobody has called lost, for the one warning when
// it turns out bad.
func (l Lineage) Endangered(n Node) Kin {
	var k Kin
	for _, c := range l.children[n] {
		t := l.Tree(c)
		k.Below = append(k.Below, l.standing(t)...)
		k.Used = append(k.Used, l.thoseOf(t, func(u *Unit) bool {
			return u.Loss.What == 0 && (u.State == UnitUsed || u.State == UnitGiven)
		})...)
		l.kept(t, &k.Cultures)
	}
	for _, s := range l.Siblings(n) {
		k.Beside = append(k.Beside, l.standing(l.Tree(s))...)
	}
	for _, refs := range [][]UnitRef{k.Below, k.Beside, k.Used} {
		slices.SortFunc(refs, compareUnits)
	}
	return k
}

func (l Lineage) standing(t Tree) []UnitRef {
	return l.thoseOf(t, func(u *Unit) bool { return u.State.Lives() })
}

func (l Lineage) thoseOf(t Tree, is func(*Unit) bool) []UnitRef {
	return slices.DeleteFunc(t.Units(), func(r UnitRef) bool {
		u, ok := l.units[r]
		return !ok || !is(u)
	})
}

// kept collects the cultures of a tree that haven't ended.
func (l Lineage) kept(t Tree, out *[]Node) {
	if c, ok := l.Culture(t.Node); ok && c.Ended.IsZero() {
		*out = append(*out, t.Node)
	}
	for _, b := range t.Branches {
		l.kept(b, out)
	}
}

// Tainted is the nearest of what a node came from that went bad; false for none.
func (l Lineage) Tainted(n Node) (Node, bool) {
	for _, up := range l.Line(n) {
		if c, ok := l.Culture(up); ok && c.How == CultureWentBad {
			return up, true
		}
		if u, ok := l.Unit(up); ok && u.Loss.What == UnitContaminated {
			return up, true
		}
	}
	return Node{}, false
}

// taint is what [Lineage.Tainted] is called.
func (l Lineage) taint(n Node) string {
	up, ok := l.Tainted(n)
	if c, is := l.Culture(up); is {
		return c.Name
	}
	if ok {
		return up.Unit.String()
	}
	return ""
}

// Contrast is what stood beside units in the loads in which some of them went bad. It
// tells a bad cook from a bad culture: all of a load with its blank is the cook, all of
// one culture the culture (common practice).
type Contrast struct {
	// Blanks are how many blanks stayed clean, BadBlanks those that went bad.
	Blanks    int
	BadBlanks []UnitRef
	// Others is of how many units with something else on them BadOthers went bad.
	Others, BadOthers int
}

// BadLoads are the loads in which some of these units went bad, in their order.
func (l Lineage) BadLoads(of []UnitRef) []RunNo {
	var out []RunNo
	for _, ref := range of {
		if u, ok := l.units[ref]; ok && u.Loss.What == UnitContaminated && !slices.Contains(out, ref.Run) {
			out = append(out, ref.Run)
		}
	}
	slices.Sort(out)
	return out
}

// ContrastOf sets units against all those of the loads in which some went bad. A blank
// that looks suspect is not counted.
func ContrastOf(of []UnitRef, load []Unit) Contrast {
	var c Contrast
	for _, u := range load {
		bad := u.Loss.What == UnitContaminated
		switch {
		case u.Blank && bad:
			c.BadBlanks = append(c.BadBlanks, u.Ref)
		case u.Blank && u.State == UnitCooked:
			c.Blanks++
		case u.Cultured && !slices.Contains(of, u.Ref):
			c.Others++
			if bad {
				c.BadOthers++
			}
		}
	}
	slices.SortFunc(c.BadBlanks, compareUnits)
	return c
}
