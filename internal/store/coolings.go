package store

import (
	"ryebell/internal/kitchen"
)

func readCooled(s scanner) (c kitchen.Cooled, err error) {
	err = s.Scan(&c.Run, &c.Cooker, &c.Container.Vessel, &c.Container.Volume, &c.Container.Weight, &c.Past.Slower, &c.Past.Spread, &c.Blind, &c.Measured)
	return c, err
}

// SaveCooled keeps what a run has shown of how its load cools, or changes it.
func (b *Book) SaveCooled(c kitchen.Cooled) error {
	_, err := b.tx.exec(`
		INSERT INTO cooling (collective, run, cooker, vessel, litres, grams, slower, spread, blind, measured)
		VALUES (:collective, :run, :cooker, :vessel, :litres, :grams, :slower, :spread, :blind, :measured)
		ON CONFLICT (collective, run) DO UPDATE SET
			cooker = excluded.cooker, vessel = excluded.vessel, litres = excluded.litres, grams = excluded.grams,
			slower = excluded.slower, spread = excluded.spread, blind = excluded.blind, measured = excluded.measured`,
		b.bound(), p("run", c.Run), p("cooker", c.Cooker), p("vessel", c.Container.Vessel),
		p("litres", float64(c.Container.Volume)), p("grams", float64(c.Container.Weight)),
		p("slower", c.Past.Slower), p("spread", c.Past.Spread), p("blind", c.Blind), p("measured", c.Measured))
	return err
}

// DropCooled forgets what a run had shown, since its entries no longer do.
func (b *Book) DropCooled(run kitchen.RunNo) error {
	_, err := b.tx.exec(`DELETE FROM cooling WHERE collective = :collective AND run = :run`, b.bound(), p("run", run))
	return err
}

// CooledBefore lists what at most limit runs before one have shown, the newest
// first.
func (b *Book) CooledBefore(run kitchen.RunNo, limit int) ([]kitchen.Cooled, error) {
	return each(b.tx, readCooled, `
		SELECT run, cooker, vessel, litres, grams, slower, spread, blind, measured
		FROM cooling WHERE collective = :collective AND run < :run ORDER BY run DESC LIMIT :limit`,
		b.bound(), p("run", run), p("limit", limit))
}
