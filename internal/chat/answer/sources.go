package answer

import (
	"slices"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// culturesBegun are the cultures of a collective at the beginning of a transaction.
func (a *Answerer) culturesBegun(book *store.Book) (kitchen.Cultures, error) {
	return a.sources.at(book, kitchen.CulturesSubject, culturesOf)
}

// culturesNow are the cultures of the collective, those too that this turn has
// written of.
func (t *turn) culturesNow() (kitchen.Cultures, error) {
	if t.wrote[kitchen.CulturesSubject] {
		return culturesOf(t.book)
	}
	return t.a.culturesBegun(t.book)
}

func culturesOf(book *store.Book) (kitchen.Cultures, error) {
	records, err := book.Standing(kitchen.CulturesSubject)
	return kitchen.FoldCultures(records), err
}

// given sets the names that the collective gave to its cultures, its units and the
// places where they stand. Cultures that have ended come last.
func (t *turn) given() error {
	cultures, err := t.a.culturesBegun(t.book)
	if err != nil {
		return err
	}
	var ended []string
	for _, c := range slices.Backward(cultures.All) {
		if c.At(t.m.At) {
			t.names.Sources = append(t.names.Sources, c.Name)
		} else {
			ended = append(ended, c.Name)
		}
	}
	t.names.Sources = append(t.names.Sources, ended...)
	rows, err := t.book.StandingUnits()
	for _, r := range rows {
		if r.Name != "" {
			t.names.Units = append(t.names.Units, r.Name)
		}
		if r.Place != "" && !slices.Contains(t.names.Places, r.Place) {
			t.names.Places = append(t.names.Places, r.Place)
		}
	}
	return err
}
