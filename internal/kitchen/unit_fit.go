package kitchen

// About is an entry about units: no units means all of the load.
func About(e UnitEntry, units []UnitNo) UnitEntry { return ofUnits(e, units) }

// Fit lists the units of a load that an entry told of all of it is about: for a
// culture, or growth, those that are no blank; for nearly all those that still stand.
func (u Units) Fit(e UnitEntry) []UnitNo {
	k := e.told()
	return u.where(func(x Unit) bool {
		if x.Blank && (k == SaidInoculated || k == SaidShaken || k.fills()) {
			return false
		}
		if k == SaidInoculated && x.Cultured && x.State != UnitDead {
			_, more := x.next(k)
			return more
		}
		_, may := x.next(k)
		return may && (x.State.Stands() || k == SaidLot || k == SaidTagged || k == SaidStood)
	})
}

// SaidBy is what an entry says of its units.
func SaidBy(e UnitEntry) UnitKind { return e.told() }

// UnitsOf are the units that an entry is about; none for all of the load.
func UnitsOf(e UnitEntry) []UnitNo { return e.of() }

// Grows reports whether a culture is on any of these units that nobody has called
// lost.
func (u Units) Grows(units []UnitNo) bool {
	for _, n := range units {
		if x, ok := u.Unit(n); ok && x.Cultured && x.State.Lives() {
			return true
		}
	}
	return false
}
