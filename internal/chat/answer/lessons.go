package answer

import (
	"math"
	"reflect"

	"ryebell/internal/kitchen"
)

// lessons are what loads have taught of others: how they cool, and how they grow.
type lessons struct {
	cooled []kitchen.Cooled
	grown  []kitchen.Grown
}

func (t *turn) lessons() (lessons, error) {
	cooled, err := t.book.CooledBefore(math.MaxInt32, teaches)
	if err != nil {
		return lessons{}, err
	}
	grown, err := grownBefore(t.book)
	return lessons{cooled, grown}, err
}

// saveTaught writes what this turn touched. When that teaches something new of others,
// or takes a lesson back, their pings are worked out anew, too.
func (t *turn) saveTaught() error {
	if len(t.touched) == 0 {
		return nil
	}
	was, err := t.lessons()
	if err != nil {
		return err
	}
	if err := t.saveRuns(); err != nil {
		return err
	}
	now, err := t.lessons()
	if err != nil {
		return err
	}
	t.grown = now.grown
	clear(t.touched)
	if !reflect.DeepEqual(was.cooled, now.cooled) {
		if err := t.touchCooling(); err != nil {
			return err
		}
	}
	if !reflect.DeepEqual(was.grown, now.grown) {
		if err := t.touchGrowing(); err != nil {
			return err
		}
	}
	return t.saveRuns()
}

// touchCooling has the runs that cool forecast anew.
func (t *turn) touchCooling() error {
	open, err := t.book.OpenRuns()
	for _, r := range open {
		delete(t.runs, r.No)
		t.touched[r.No] = true
	}
	return err
}

// touchGrowing has the loads in which something grows forecast anew.
func (t *turn) touchGrowing() error {
	rows, err := t.book.StandingUnits()
	for _, r := range rows {
		if r.State == kitchen.UnitInoculated || r.State == kitchen.UnitGrowing {
			t.touched[r.Ref.Run] = true
		}
	}
	return err
}
