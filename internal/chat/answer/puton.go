package answer

import (
	"slices"

	"ryebell/internal/kitchen"
)

// allPutOn reports whether no unit of a run waits for a culture any more: the blank waits
// for none.
func (t *turn) allPutOn(no kitchen.RunNo) (bool, error) {
	load, err := t.load(no)
	waits := func(u kitchen.Unit) bool {
		return u.State == kitchen.InCook || u.State == kitchen.UnitCooked && !u.Blank
	}
	return len(load.All) > 0 && !slices.ContainsFunc(load.All, waits), err
}

// oldEnough reports whether what grows in a load can have grown through by now: before,
// "12 done" is said of other things.
func (t *turn) oldEnough(load kitchen.Units) bool {
	return !slices.ContainsFunc(load.Standing(), func(n kitchen.UnitNo) bool {
		u, _ := load.Unit(n)
		return !u.Inoculated.IsZero() && t.m.At.Sub(u.Inoculated) < kitchen.SoonestThrough
	})
}
