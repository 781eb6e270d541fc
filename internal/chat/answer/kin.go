package answer

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// endangered are the kin of units that were just lost and that still stand: what came
// from them, and what came from the same parent. It is said once for each; nil when
// there is nothing to warn of.
func (t *turn) endangered(run kitchen.RunNo, units []kitchen.UnitNo) (*wording.KinView, error) {
	var refs []kitchen.UnitRef
	for _, n := range units {
		refs = append(refs, kitchen.UnitRef{Run: run, Unit: n})
	}
	k, err := t.kinship()
	if err != nil {
		return nil, err
	}
	lost, err := k.some(refs)
	if err != nil {
		return nil, err
	}
	if err := k.back(lost); err != nil {
		return nil, err
	}
	l := k.lineage()
	for _, ref := range refs {
		if parent, ok := l.Back(kitchen.UnitNode(ref)); ok && !onlySpecies(parent) {
			if err := k.forwardOf(l, parent); err != nil {
				return nil, err
			}
		}
	}
	if err := k.forward(nil, refs); err != nil {
		return nil, err
	}
	return t.kinOf(k.lineage(), refs)
}

// kinOf is the warning for units that were lost, where it was not said before.
func (t *turn) kinOf(l kitchen.Lineage, lost []kitchen.UnitRef) (*wording.KinView, error) {
	var v wording.KinView
	var parents, from []string
	for _, ref := range lost {
		n := kitchen.UnitNode(ref)
		kin := l.Endangered(n)
		if below := len(kin.Below) + len(kin.Used) + len(kin.Cultures); below > 0 {
			if news, err := t.tellOnce("kin/of/" + ref.String()); err != nil {
				return nil, err
			} else if news == wording.New {
				from = append(from, ref.String())
				if err := t.below(&v, l, kin); err != nil {
					return nil, err
				}
			}
		}
		parent, ok := l.Back(n)
		if !ok || onlySpecies(parent) || len(kin.Beside) == 0 {
			continue
		}
		news, err := t.tellOnce("kin/" + nodeKey(parent))
		if err != nil {
			return nil, err
		}
		if name := wording.NodeName(l, parent); news == wording.New {
			parents, v.Beside = append(parents, name), append(v.Beside, kin.Beside...)
		}
	}
	v.Parent, v.Of = strings.Join(parents, ", "), strings.Join(from, ", ")
	v.Beside, v.Below = othersThan(lost, v.Beside), othersThan(lost, v.Below)
	if v.None() {
		return nil, nil
	}
	return &v, nil
}

// mostAway is of how many loads it is said on what they were used.
const mostAway = 3

// below adds to a warning what came from something that went bad: what stands, what was
// used on what, and the cultures that were taken of it.
func (t *turn) below(v *wording.KinView, l kitchen.Lineage, k kitchen.Kin) error {
	v.Below = append(v.Below, k.Below...)
	for _, n := range k.Cultures {
		if name := wording.NodeName(l, n); !slices.Contains(v.Cultures, name) {
			v.Cultures = append(v.Cultures, name)
		}
	}
	for _, ref := range k.Used {
		on := ""
		if len(v.Away) < mostAway {
			load, err := t.load(ref.Run)
			if err != nil {
				return err
			}
			if u, ok := load.Unit(ref.Unit); ok {
				on = usedOn(u)
			}
		}
		v.UsedOn(on, ref)
	}
	return nil
}

// usedOn is what a unit was used on, as far as it was said.
func usedOn(u kitchen.Unit) string {
	for _, s := range slices.Backward(u.Steps) {
		if e, ok := s.Entry.(kitchen.UnitsUsed); ok && e.On != "" {
			return e.On
		}
	}
	return ""
}

// nodeKey names a node in a note.
func nodeKey(n kitchen.Node) string {
	switch {
	case n.IsUnit():
		return n.Unit.String()
	case n.Culture != 0:
		return fmt.Sprintf("culture/%d", n.Culture)
	}
	return "name/" + n.Name
}

// othersThan are the units that are not among those, each once, in their order.
func othersThan(those, units []kitchen.UnitRef) []kitchen.UnitRef {
	var out []kitchen.UnitRef
	for _, u := range units {
		if !slices.Contains(those, u) && !slices.Contains(out, u) {
			out = append(out, u)
		}
	}
	slices.SortFunc(out, func(a, b kitchen.UnitRef) int {
		if a.Run != b.Run {
			return int(a.Run - b.Run)
		}
		return int(a.Unit - b.Unit)
	})
	return out
}

// tainted is what came of cultures which went bad: what lives, what was used, what was
// taken of it; nil for nothing.
func (t *turn) tainted(bad []kitchen.Culture) (*wording.KinView, error) {
	k, err := t.kinship()
	if err != nil {
		return nil, err
	}
	var names []string
	for _, c := range bad {
		names = append(names, c.Name)
	}
	if err := k.forward(names, nil); err != nil {
		return nil, err
	}
	l := k.lineage()
	v := wording.KinView{Of: strings.Join(names, ", ")}
	for _, c := range bad {
		n := kitchen.Node{Culture: c.No}
		if err := t.below(&v, l, l.Endangered(n)); err != nil {
			return nil, err
		}
		// What it taints is said now, and not again for each unit of it.
		if _, err := t.tellOnce("kin/" + nodeKey(n)); err != nil {
			return nil, err
		}
	}
	if v.Below = othersThan(nil, v.Below); v.None() {
		return nil, nil
	}
	return &v, nil
}

// inoculating says where units come from that something is put on, or refuses: see
// [kitchen.Lineage.Inoculating].
func (t *turn) inoculating(run kitchen.RunNo, e kitchen.Inoculated, at time.Time) (kitchen.Parentage, error) {
	k, err := t.kinship()
	if err != nil {
		return kitchen.Parentage{}, err
	}
	if e.From == (kitchen.UnitRef{}) {
		err = k.backOf(e.Culture)
	} else {
		err = k.grown(e.From)
	}
	if err != nil {
		return kitchen.Parentage{}, err
	}
	return k.lineage().Inoculating(run, e, at.Add(sameMinute))
}

// grown gathers a unit that something is taken of, with what it came from; of one that
// isn't there its load.
func (k *kinship) grown(ref kitchen.UnitRef) error {
	units, err := k.some([]kitchen.UnitRef{ref})
	if err == nil && len(units) == 0 {
		units, err = k.add(k.t.book.UnitsOfLoad(ref.Run))
	}
	if err != nil {
		return err
	}
	return k.back(units)
}
