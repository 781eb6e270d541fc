package store

import (
	"cmp"
	"database/sql"
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"ryebell/internal/kitchen"
)

// UnitRow is a unit as it is now, with what its load says of it. It has no Steps:
// these are in the entries.
type UnitRow struct {
	kitchen.Unit
	// Begun is when the run began; of what arrived, from when its age counts.
	Begun time.Time
	// Cool is from when the load counts as cool; zero for one that isn't so far.
	Cool time.Time
	// Arrived is set for one that no run made.
	Arrived bool
	// Size is how many units the load has.
	Size int
}

func readUnit(s scanner) (u UnitRow, err error) {
	var collective, begun, since, rested int64
	var cool, inoculated, fromRun, fromUnit, lost, seen, shook sql.NullInt64
	var lots, tags string
	err = s.Scan(&collective, &u.Ref.Run, &u.Ref.Unit, &u.Size, &begun, &cool, &u.Arrived, &u.Container.Vessel, &u.Container.Volume,
		&u.Container.Weight, &u.Grain, &u.Name, &u.Place, &u.Spot, &u.State, &since, &u.By, &u.Before, &u.Blank, &u.Cultured,
		&inoculated, &u.InoculatedBy, &u.Culture, &u.Species, &fromRun, &fromUnit, &u.Route, &u.Volume, &u.Share, &u.Left,
		&u.Loss.What, &u.Loss.Sign, &lost, &u.Loss.By, &seen, &shook, &rested, &lots, &tags)
	if err != nil {
		return UnitRow{}, err
	}
	u.Begun, u.Since, u.Cool, u.Inoculated, u.Loss.At = fromMS(begun), fromMS(since), ifKnown(cool), ifKnown(inoculated), ifKnown(lost)
	u.Seen, u.Shook, u.Rested = ifKnown(seen), ifKnown(shook), time.Duration(rested)*time.Millisecond
	u.From = kitchen.UnitRef{Run: kitchen.RunNo(fromRun.Int64), Unit: kitchen.UnitNo(fromUnit.Int64)}
	if err := words(lots, &u.Lots); err != nil {
		return UnitRow{}, fmt.Errorf("lots of %s: %w", u.Ref, err)
	}
	if err := words(tags, &u.Tags); err != nil {
		return UnitRow{}, fmt.Errorf("tags of %s: %w", u.Ref, err)
	}
	return u, nil
}

// words reads what SQLite has gathered as JSON; nil for none.
func words[T any](text string, into *[]T) error {
	if text == "[]" {
		return nil
	}
	return json.Unmarshal([]byte(text), into)
}

// eachOf is [each] for one question asked of several things, one after the other.
func eachOf[K, T any](tx *Tx, asked []K, read func(scanner) (T, error), query string, args func(K) []any) (all []T, err error) {
	for _, k := range asked {
		some, err := each(tx, read, query, args(k)...)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}

// inOrder puts units that several questions gave in the order of their numbers, each
// once.
func inOrder(rows []UnitRow, err error) ([]UnitRow, error) {
	slices.SortFunc(rows, func(a, b UnitRow) int {
		return cmp.Or(cmp.Compare(a.Ref.Run, b.Ref.Run), cmp.Compare(a.Ref.Unit, b.Ref.Unit))
	})
	return slices.CompactFunc(rows, func(a, b UnitRow) bool { return a.Ref == b.Ref }), err
}

// Each question finds its units by an index, and reads the view of them.

// StandingUnits lists all units that are still there, by load and number.
func (b *Book) StandingUnits() ([]UnitRow, error) {
	return each(b.tx, readUnit, `
		SELECT v.* FROM unit i INDEXED BY unit_standing
		CROSS JOIN unit_row v ON v.collective = i.collective AND v.run = i.run AND v.number = i.number
		WHERE i.collective = :collective AND i.stands = 1 ORDER BY i.run, i.number`, b.bound())
}

// UnitsOfLoad lists the units of a load by number.
func (b *Book) UnitsOfLoad(no kitchen.RunNo) ([]UnitRow, error) {
	return each(b.tx, readUnit, `SELECT * FROM unit_row WHERE collective = :collective AND run = :run ORDER BY number`,
		b.bound(), p("run", no))
}

// UnitRows lists those of the units that there are, by load and number.
func (b *Book) UnitRows(refs []kitchen.UnitRef) ([]UnitRow, error) {
	return inOrder(eachOf(b.tx, refs, readUnit,
		`SELECT * FROM unit_row WHERE collective = :collective AND run = :run AND number = :number`, b.boundTo))
}

// UnitsTakenOf lists the units that were inoculated from any of these, grain to
// grain, by load and number.
func (b *Book) UnitsTakenOf(refs []kitchen.UnitRef) ([]UnitRow, error) {
	return inOrder(eachOf(b.tx, refs, readUnit, `
		SELECT v.* FROM unit i INDEXED BY unit_parent
		CROSS JOIN unit_row v ON v.collective = i.collective AND v.run = i.run AND v.number = i.number
		WHERE i.collective = :collective AND i.parent_run = :run AND i.parent_unit = :number`, b.boundTo))
}

// UnitsOfCultures lists the units on which a culture of any of these names was put,
// the newest of each name up to a limit, by load and number. Case makes no difference;
// an empty name finds nothing.
func (b *Book) UnitsOfCultures(names []string, limit int) ([]UnitRow, error) {
	return inOrder(eachOf(b.tx, names, readUnit, `
		SELECT v.* FROM unit i INDEXED BY unit_culture
		CROSS JOIN unit_row v ON v.collective = i.collective AND v.run = i.run AND v.number = i.number
		WHERE i.collective = :collective AND i.culture_key = :key AND i.culture_key <> ''
		ORDER BY i.run DESC, i.number DESC LIMIT :limit`,
		func(name string) []any { return []any{b.bound(), p("key", fold(name)), p("limit", limit)} }))
}

// UnitsOfLot lists the units that a lot went into, the newest up to a limit, by load
// and number. Case makes no difference.
func (b *Book) UnitsOfLot(kind kitchen.LotKind, name string, limit int) ([]UnitRow, error) {
	return inOrder(each(b.tx, readUnit, `
		SELECT v.* FROM unit_lot i INDEXED BY unit_lot_name
		CROSS JOIN unit_row v ON v.collective = i.collective AND v.run = i.run AND v.number = i.number
		WHERE i.collective = :collective AND i.kind = :kind AND i.name_key = :key
		ORDER BY i.run DESC, i.number DESC LIMIT :limit`,
		b.bound(), p("kind", kind), p("key", fold(name)), p("limit", limit)))
}

// UnitsTagged lists the units that a tag is on, the newest up to a limit, by load and
// number. Case makes no difference.
func (b *Book) UnitsTagged(tag string, limit int) ([]UnitRow, error) {
	return inOrder(each(b.tx, readUnit, `
		SELECT v.* FROM unit_tag i INDEXED BY unit_tag_name
		CROSS JOIN unit_row v ON v.collective = i.collective AND v.run = i.run AND v.number = i.number
		WHERE i.collective = :collective AND i.tag_key = :key
		ORDER BY i.run DESC, i.number DESC LIMIT :limit`,
		b.bound(), p("key", fold(tag)), p("limit", limit)))
}

// boundTo binds a unit.
func (b *Book) boundTo(r kitchen.UnitRef) []any {
	return []any{b.bound(), p("run", r.Run), p("number", r.Unit)}
}

// GrownRow is a unit that was seen grown through, for the times of later ones: see
// [kitchen.Unit.Grown].
type GrownRow struct {
	Ref kitchen.UnitRef
	// Species is what grows on it or, unsaid, the name of its culture.
	Species   string
	Container kitchen.Container
	Route     kitchen.Route
	// Inoculated is when the culture was put on, Shaken when it was first shaken beside
	// the mixing, zero for never; Through when it was first said to be grown through.
	Inoculated, Shaken, Through time.Time
	Arrived                     bool
}

func readGrown(s scanner) (g GrownRow, err error) {
	var inoculated, shaken, through sql.NullInt64
	err = s.Scan(&g.Ref.Run, &g.Ref.Unit, &g.Species, &g.Container.Vessel, &g.Container.Volume, &g.Container.Weight, &g.Route,
		&inoculated, &shaken, &through, &g.Arrived)
	g.Inoculated, g.Shaken, g.Through = ifKnown(inoculated), ifKnown(shaken), ifKnown(through)
	return g, err
}

// GrownUnits lists the units that were seen grown through, of which it is known when
// they were inoculated and that did not go bad: of each species the newest up to a
// limit, so that one that is seldom grown keeps its record.
func (b *Book) GrownUnits(each int) ([]GrownRow, error) {
	species, err := b.grownSpecies()
	if err != nil {
		return nil, err
	}
	return eachOf(b.tx, species, readGrown, `
		SELECT run, number, iif(species <> '', species, culture), vessel, litres, grams, route, inoculated_ms, shaken_ms, through_ms, arrived
		FROM unit INDEXED BY unit_through
		WHERE collective = :collective AND grows_key = :species AND through_ms IS NOT NULL AND inoculated_ms IS NOT NULL
		ORDER BY through_ms DESC, run DESC, number DESC LIMIT :limit`,
		func(key string) []any { return []any{b.bound(), p("species", key), p("limit", each)} })
}

// grownSpecies lists what ever grew through, looked up one after the other, so that not
// all that grew is walked.
func (b *Book) grownSpecies() (all []string, err error) {
	for last := ""; ; {
		next, err := each(b.tx, func(s scanner) (key string, err error) { return key, s.Scan(&key) }, `
			SELECT grows_key FROM unit INDEXED BY unit_through
			WHERE collective = :collective AND grows_key > :last AND through_ms IS NOT NULL ORDER BY grows_key LIMIT 1`,
			b.bound(), p("last", last))
		if err != nil || len(next) == 0 {
			return all, err
		}
		last = next[0]
		all = append(all, last)
	}
}

// ArrivedSince lists the loads that no run made of which something stands, or was lost
// since an instant.
func (b *Book) ArrivedSince(since time.Time) ([]kitchen.RunNo, error) {
	return each(b.tx, func(s scanner) (no kitchen.RunNo, err error) { return no, s.Scan(&no) }, `
		SELECT number FROM run r WHERE collective = :collective AND arrived = 1 AND EXISTS (
			SELECT 1 FROM unit u WHERE u.collective = r.collective AND u.run = r.number AND (u.stands = 1 OR u.loss_ms >= :since))
		ORDER BY number`,
		b.bound(), p("since", toMS(since)))
}
