package answer

import (
	"slices"
	"strings"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// mostKin is how many units are gathered for one answer, before it is cut.
const mostKin = 600

// kinship gathers what came from what, generation by generation, so that of a book of
// years only what is asked of is read.
type kinship struct {
	t        *turn
	cultures kitchen.Cultures
	units    []kitchen.KeptUnit
	have     map[kitchen.UnitRef]bool
	// named are the names of cultures whose units were read, taken the units of which it
	// was read what was taken of them.
	named map[string]bool
	taken map[kitchen.UnitRef]bool
	// cut is set when there is more than was gathered.
	cut bool
}

func (t *turn) kinship() (*kinship, error) {
	cultures, err := t.culturesNow()
	return &kinship{
		t: t, cultures: cultures, have: map[kitchen.UnitRef]bool{}, named: map[string]bool{}, taken: map[kitchen.UnitRef]bool{},
	}, err
}

// lineage links what was gathered.
func (k *kinship) lineage() kitchen.Lineage { return kitchen.NewLineageOf(k.units, k.cultures) }

// add takes rows in, and returns those that are new.
func (k *kinship) add(rows []store.UnitRow, err error) ([]kitchen.Unit, error) {
	if err != nil {
		return nil, err
	}
	var fresh []kitchen.Unit
	for _, r := range rows {
		if k.have[r.Ref] {
			continue
		}
		k.have[r.Ref] = true
		u, err := k.t.asTold(r)
		if err != nil {
			return nil, err
		}
		k.units, fresh = append(k.units, kitchen.KeptUnit{Unit: u, Size: r.Size}), append(fresh, u)
	}
	return fresh, nil
}

// some gathers those of the units that there are.
func (k *kinship) some(refs []kitchen.UnitRef) ([]kitchen.Unit, error) {
	return k.add(k.t.book.UnitRows(refs))
}

// back gathers what units came from, to the beginning.
func (k *kinship) back(units []kitchen.Unit) error {
	for len(units) > 0 {
		var parents []kitchen.UnitRef
		seen := map[string]bool{}
		for _, u := range units {
			if u.From != (kitchen.UnitRef{}) {
				parents = append(parents, u.From)
			} else if u.Culture != "" {
				parents = append(parents, k.behind(u.Culture, seen)...)
			}
		}
		var err error
		if units, err = k.some(parents); err != nil {
			return err
		}
	}
	return nil
}

// behind are the units that cultures of a name come from, some cultures back.
func (k *kinship) behind(name string, seen map[string]bool) []kitchen.UnitRef {
	if key := strings.ToLower(name); seen[key] {
		return nil
	} else {
		seen[key] = true
	}
	var out []kitchen.UnitRef
	for _, c := range k.cultures.All {
		switch {
		case !strings.EqualFold(c.Name, name):
		case c.FromUnit != kitchen.UnitRef{}:
			out = append(out, c.FromUnit)
		case c.From != "":
			out = append(out, k.behind(c.From, seen)...)
		}
	}
	return out
}

// backOf gathers what a culture came from.
func (k *kinship) backOf(name string) error {
	units, err := k.some(k.behind(name, map[string]bool{}))
	if err != nil {
		return err
	}
	return k.back(units)
}

// forward gathers all that came from cultures and units, until there are too many.
func (k *kinship) forward(names []string, refs []kitchen.UnitRef) error {
	for len(names)+len(refs) > 0 {
		names, refs = k.further(names, refs)
		of, err := k.ofNames(names)
		if err != nil {
			return err
		}
		taken, err := k.t.book.UnitsTakenOf(refs)
		if err != nil {
			return err
		}
		rows := append(of, taken...)
		if _, err := k.add(rows, nil); err != nil {
			return err
		}
		// What was gathered on the way back, too: nothing was gone on from yet.
		next := make([]kitchen.UnitRef, len(rows))
		for i, r := range rows {
			next[i] = r.Ref
		}
		names, refs = k.madeFrom(names, append(slices.Clone(refs), next...)), next
		if len(k.units) > mostKin {
			k.cut = len(names)+len(refs) > 0 || len(of) > mostKin
			return nil
		}
	}
	return nil
}

// ofNames are the units of cultures, of one after the other until there are too many.
func (k *kinship) ofNames(names []string) ([]store.UnitRow, error) {
	var rows []store.UnitRow
	for _, name := range names {
		of, err := k.t.book.UnitsOfCultures([]string{name}, mostKin+1)
		if err != nil {
			return nil, err
		}
		if rows = append(rows, of...); len(rows) > mostKin {
			break
		}
	}
	return rows, nil
}

// further are the names and units that were not gone on from before.
func (k *kinship) further(names []string, refs []kitchen.UnitRef) ([]string, []kitchen.UnitRef) {
	var freshNames []string
	for _, n := range names {
		if key := strings.ToLower(n); !k.named[key] {
			k.named[key] = true
			freshNames = append(freshNames, n)
		}
	}
	var freshRefs []kitchen.UnitRef
	for _, r := range refs {
		if !k.taken[r] {
			k.taken[r] = true
			freshRefs = append(freshRefs, r)
		}
	}
	return freshNames, freshRefs
}

// madeFrom are the names of the cultures that were made from any of these.
func (k *kinship) madeFrom(names []string, refs []kitchen.UnitRef) []string {
	var out []string
	from := map[string]bool{}
	for _, n := range names {
		from[strings.ToLower(n)] = true
	}
	units := map[kitchen.UnitRef]bool{}
	for _, r := range refs {
		units[r] = true
	}
	for _, c := range k.cultures.All {
		if from[strings.ToLower(c.From)] || units[c.FromUnit] {
			out = append(out, c.Name)
		}
	}
	return out
}

// forwardOf gathers what came from a node of a lineage.
func (k *kinship) forwardOf(l kitchen.Lineage, n kitchen.Node) error {
	if n.IsUnit() {
		return k.forward(nil, []kitchen.UnitRef{n.Unit})
	}
	if c, ok := l.Culture(n); ok {
		return k.forward([]string{c.Name}, nil)
	}
	return k.forward([]string{n.Name}, nil)
}

func refsOf(units []kitchen.Unit) []kitchen.UnitRef {
	out := make([]kitchen.UnitRef, len(units))
	for i, u := range units {
		out[i] = u.Ref
	}
	return out
}

// onlySpecies reports whether a node is no culture of the collective, but only what
// grows: what has that in common is no kin.
func onlySpecies(n kitchen.Node) bool {
	_, species := kitchen.SpeciesNamed(n.Name)
	return n.Name != "" && species
}
