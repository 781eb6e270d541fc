package answer

import (
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// asTold is a unit of the book as it stands once this turn has told of its load.
func (t *turn) asTold(r store.UnitRow) (kitchen.Unit, error) {
	if !t.touched[r.Ref.Run] {
		return r.Unit, nil
	}
	load, err := t.load(r.Ref.Run)
	if err != nil {
		return kitchen.Unit{}, err
	}
	if u, ok := load.Unit(r.Ref.Unit); ok {
		return u, nil
	}
	return r.Unit, nil
}

// unitsTraced are the units that are to be traced, and what they are called.
func (t *turn) unitsTraced(of phrase.Meant, ctx scene) ([]kitchen.UnitRef, string, error) {
	targets, err := t.meantUnits(meaning{of: of, at: t.m.At}, ctx)
	if err != nil {
		return nil, "", err
	}
	var out []kitchen.UnitRef
	label := ""
	for _, g := range targets {
		load, err := t.load(g.run)
		if err != nil {
			return nil, "", err
		}
		if len(g.units) == 0 {
			for _, u := range load.All {
				out = append(out, u.Ref)
			}
		}
		for _, n := range g.units {
			if _, ok := load.Unit(n); !ok {
				return nil, "", kitchen.NoSuchUnit{Ref: kitchen.UnitRef{Run: g.run, Unit: n}.Ref(), Has: len(load.All)}
			}
			out = append(out, kitchen.UnitRef{Run: g.run, Unit: n})
		}
		if label != "" {
			label += ", "
		}
		label += g.ref().String()
	}
	return out, label, nil
}
