package store

import (
	"cmp"
	"database/sql"
	"time"

	"ryebell/internal/kitchen"
)

// unitsVersion is raised whenever a unit comes to stand in the rows otherwise than
// before for the same entries, by its columns or by how the kitchen folds it. The
// rows of loads that were written by an older one are [Book.UnitsBehind].
const unitsVersion = 3

// SaveUnits makes the rows of a load's units those that are given. The load must
// stand in the list of runs ([Book.SaveRun]).
func (b *Book) SaveUnits(us kitchen.Units) error {
	if err := b.DropUnits(us.Run); err != nil {
		return err
	}
	for _, u := range us.All {
		if err := b.addUnit(us, u); err != nil {
			return err
		}
	}
	return nil
}

// DropUnits takes away the rows of a load's units, as when it was taken back.
func (b *Book) DropUnits(no kitchen.RunNo) error {
	for _, statement := range []string{
		`DELETE FROM unit_lot WHERE collective = :collective AND run = :run`,
		`DELETE FROM unit_tag WHERE collective = :collective AND run = :run`,
		`DELETE FROM unit WHERE collective = :collective AND run = :run`,
	} {
		if _, err := b.tx.exec(statement, b.bound(), p("run", no)); err != nil {
			return err
		}
	}
	_, err := b.tx.exec(`UPDATE run SET derived = :version WHERE collective = :collective AND number = :run`,
		b.bound(), p("run", no), p("version", unitsVersion))
	return err
}

// UnitsBehind lists at most limit loads whose units were never saved, or by an older
// program that derived them otherwise: they are to be folded again and saved. Those
// that were taken back have no units.
func (b *Book) UnitsBehind(limit int) ([]kitchen.RunNo, error) {
	return each(b.tx, func(s scanner) (no kitchen.RunNo, err error) { return no, s.Scan(&no) }, `
		SELECT number FROM run INDEXED BY run_derived
		WHERE collective = :collective AND derived < :version AND state <> 3 LIMIT :limit`,
		b.bound(), p("version", unitsVersion), p("limit", limit))
}

func (b *Book) addUnit(us kitchen.Units, u kitchen.Unit) error {
	grown, _ := u.Grown() // zero where it teaches nothing
	_, err := b.tx.exec(`
		INSERT INTO unit (collective, run, number, size, begun_ms, cool_ms, arrived, vessel, litres, grams, grain,
			name, place, spot, state, stands, since_ms, teller, before, blank, cultured, inoculated_ms, inoculator,
			culture, culture_key, species, grows_key, parent_run, parent_unit, route, volume, share, remains,
			loss, loss_sign, loss_ms, loss_teller, shaken_ms, through_ms, seen_ms, shook_ms, rested_ms)
		VALUES (:collective, :run, :number, :size, :begun, :cool, :arrived, :vessel, :litres, :grams, :grain,
			:name, :place, :spot, :state, :stands, :since, :teller, :before, :blank, :cultured, :inoculated, :inoculator,
			:culture, :key, :species, :grows, :fromrun, :fromunit, :route, :volume, :share, :remains,
			:loss, :sign, :lost, :loser, :shaken, :through, :seen, :shook, :rested)`,
		b.bound(), p("run", us.Run), p("number", u.Ref.Unit), p("size", len(us.All)), p("begun", toMS(us.Begun)),
		p("cool", whenKnown(us.Cool)), p("arrived", us.Arrived), p("vessel", u.Container.Vessel),
		p("litres", float64(u.Container.Volume)), p("grams", float64(u.Container.Weight)), p("grain", u.Grain),
		p("name", u.Name), p("place", u.Place), p("spot", u.Spot), p("state", u.State), p("stands", u.State.Stands()),
		p("since", toMS(u.Since)), p("teller", u.By), p("before", u.Before), p("blank", u.Blank), p("cultured", u.Cultured),
		p("inoculated", whenKnown(u.Inoculated)), p("inoculator", u.InoculatedBy), p("culture", u.Culture),
		p("key", fold(u.Culture)), p("species", u.Species), p("grows", fold(cmp.Or(u.Species, u.Culture))), p("fromrun", orNull(u.From.Run)), p("fromunit", orNull(u.From.Unit)),
		p("route", u.Route), p("volume", float64(u.Volume)), p("share", float64(u.Share)), p("remains", float64(u.Left)),
		p("loss", u.Loss.What), p("sign", u.Loss.Sign), p("lost", whenKnown(u.Loss.At)), p("loser", u.Loss.By),
		p("shaken", whenKnown(grown.Shaken)), p("through", whenKnown(grown.Through)),
		p("seen", whenKnown(u.Seen)), p("shook", whenKnown(u.Shook)), p("rested", u.Rested.Milliseconds()))
	if err != nil {
		return err
	}
	return b.addWords(u)
}

// addWords writes the lots and tags of a unit.
func (b *Book) addWords(u kitchen.Unit) error {
	for i, l := range u.Lots {
		_, err := b.tx.exec(`
			INSERT INTO unit_lot (collective, run, number, place, kind, name, name_key)
			VALUES (:collective, :run, :number, :place, :kind, :name, :key)`,
			b.bound(), p("run", u.Ref.Run), p("number", u.Ref.Unit), p("place", i), p("kind", l.What), p("name", l.Name), p("key", fold(l.Name)))
		if err != nil {
			return err
		}
	}
	for i, tag := range u.Tags {
		_, err := b.tx.exec(`
			INSERT INTO unit_tag (collective, run, number, place, tag, tag_key)
			VALUES (:collective, :run, :number, :place, :tag, :key)`,
			b.bound(), p("run", u.Ref.Run), p("number", u.Ref.Unit), p("place", i), p("tag", tag), p("key", fold(tag)))
		if err != nil {
			return err
		}
	}
	return nil
}

// whenKnown is NULL for the zero time.
func whenKnown(t time.Time) sql.NullInt64 {
	if t.IsZero() {
		return sql.NullInt64{}
	}
	return sql.NullInt64{Int64: toMS(t), Valid: true}
}

// ifKnown is the zero time for NULL.
func ifKnown(ms sql.NullInt64) time.Time {
	if !ms.Valid {
		return time.Time{}
	}
	return fromMS(ms.Int64)
}
