package answer

import (
	"slices"

	"ryebell/internal/chat/wording"

	"ryebell/internal/kitchen"
)

// growthOnce is what is expected of the units of a run, once none waits for a culture any
// more; nil before.
func (t *turn) growthOnce(no kitchen.RunNo) (*wording.ReadyLoad, error) {
	load, err := t.load(no)
	if err != nil || !load.Settled() {
		return nil, err
	}
	ready, err := t.readyOf(load, load.Standing())
	return &ready, err
}

// oldEnough reports whether what grows in a load can have grown through by now: before,
// "12 done" is said of other things.
func (t *turn) oldEnough(load kitchen.Units) bool {
	return !slices.ContainsFunc(load.Standing(), func(n kitchen.UnitNo) bool {
		u, _ := load.Unit(n)
		return !u.Inoculated.IsZero() && t.m.At.Sub(u.Inoculated) < kitchen.SoonestThrough
	})
}
