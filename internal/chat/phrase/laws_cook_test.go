package phrase

import (
	"reflect"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

func anyWhich(t *rapid.T) Which {
	return pick(t, "which", Which{}, Which{}, Which{Run: 12}, Which{Run: 3}, Which{Cooker: "big pot"}, Which{Cooker: "old canner"}, Which{Mine: true})
}

// anyTime is a time at which something can have happened.
func anyTime(t *rapid.T) *Moment {
	switch rapid.IntRange(0, 3).Draw(t, "time") {
	case 0:
		return nil
	case 1:
		return &Moment{Shift: -time.Duration(rapid.IntRange(1, 300).Draw(t, "minutes")) * time.Minute}
	case 2:
		return &Moment{Clock: &ClockTime{Hour: rapid.IntRange(1, 12).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute")}}
	}
	return &Moment{
		Clock: &ClockTime{Hour: rapid.IntRange(0, 23).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute"), Half: true},
		Day:   pick(t, "day", Day{}, Day{Said: true, Shift: -1}, Day{Said: true, HasWeekday: true, Weekday: time.Sunday}),
	}
}

func anyGauge(t *rapid.T) unit.GaugeKPa {
	return pick(t, "gauge", unit.PSI(15), unit.PSI(8.5), unit.Bar(1), unit.KPa(103))
}

// anyTold is one thing told of a run.
func anyTold(t *rapid.T) kitchen.RunEntry {
	g := anyGauge(t)
	litres := pick(t, "litres", unit.Litres(1), unit.Litres(0.5), unit.Litres(3.25), unit.USQuarts(2))
	switch rapid.IntRange(0, 10).Draw(t, "told") {
	case 0, 1, 2:
		return pick(t, "stages", stages[:]...).entry
	case 3:
		return pick(t, "preparing", preparing[:]...).entry
	case 4:
		return pick[kitchen.RunEntry](t, "gauge told", kitchen.AtPressure{Gauge: g}, kitchen.GaugeRead{Gauge: g}, kitchen.PressureBack{Gauge: g})
	case 5:
		return kitchen.PressureLost{Gauge: &g}
	case 6:
		return kitchen.Dipped{To: &g, For: time.Duration(rapid.IntRange(0, 180).Draw(t, "for")) * time.Minute}
	case 7:
		return pick[kitchen.RunEntry](t, "dip", kitchen.Dipped{For: 90 * time.Second}, kitchen.Dipped{For: 4 * time.Minute}, kitchen.Dipped{To: &g, For: 90 * time.Second})
	case 8:
		return pick[kitchen.RunEntry](t, "water", kitchen.WaterLeft{Water: litres}, kitchen.WaterIn{Water: litres}, kitchen.WaterIn{Water: litres, Added: true}, kitchen.WaterLeft{})
	}
	temp := pick(t, "temp", unit.Celsius(46), unit.Fahrenheit(115), unit.Celsius(24.5), unit.Celsius(-3))
	return kitchen.TempRead{Temp: temp, Where: pick(t, "where", kitchen.Place(0), kitchen.Skin, kitchen.Between, kitchen.Middle)}
}

func anyTelling(t *rapid.T) Intent {
	in := Tell{Which: anyWhich(t), When: anyTime(t), Entries: []kitchen.RunEntry{anyTold(t)}}
	if rapid.Bool().Draw(t, "two") {
		_, dip := in.Entries[0].(kitchen.Dipped)
		e := anyTold(t)
		if _, back := e.(kitchen.PressureBack); !reflect.DeepEqual(e, in.Entries[0]) && !(dip && back) { // a dip says that it came back
			in.Entries = append(in.Entries, e)
		}
	}
	if r, ok := in.Entries[0].(kitchen.TempRead); ok && in.Which.Run != 0 && len(in.Entries) == 1 && rapid.Bool().Draw(t, "unit") {
		r.Units = []kitchen.UnitNo{3, 4, 6}
		in.Entries[0] = r
	}
	// A unit of "mine" is not something that people say.
	if rapid.IntRange(0, 9).Draw(t, "of units") == 0 && !in.Which.Mine {
		read := func(c unit.Celsius, units ...kitchen.UnitNo) kitchen.RunEntry {
			return kitchen.TempRead{Temp: c, Units: units}
		}
		second := read(43.5, 2)
		if in.Which.Run != 0 { // without its run one unit can be named, not several
			second = read(43.5, 2, 3)
		}
		return Tell{Which: in.Which, Entries: []kitchen.RunEntry{read(41, 1), second}[:1+rapid.IntRange(0, 1).Draw(t, "more")]}
	}
	return in
}

func anyInterval(t *rapid.T) Interval {
	day := pick(t, "day", Day{}, Day{Said: true, Shift: 1}, Day{Said: true, HasWeekday: true, Weekday: time.Saturday}, Day{Said: true, Month: time.July, Date: 4})
	from := ClockTime{Hour: rapid.IntRange(0, 23).Draw(t, "from"), Minute: 30, Half: true}
	to := ClockTime{Hour: (from.Hour + rapid.IntRange(1, 9).Draw(t, "to")) % 24, Half: true}
	return Interval{From: Moment{Day: day, Clock: &from}, To: Moment{Day: day, Clock: &to}}
}

// anyOfCookDay is an intent of a day of cooking beside what is told of a run.
func anyOfCookDay(t *rapid.T) Intent {
	w := anyWhich(t)
	at := anyTime(t)
	cooker := pick(t, "cooker", "", "big pot", "old canner")
	switch rapid.IntRange(0, 8).Draw(t, "of the day") {
	case 0:
		if at == nil {
			at = &Moment{Clock: &ClockTime{Hour: 14, Minute: 5, Half: true}}
		}
		return ShiftTime{Which: w, Kind: pick(t, "kind", 0, kitchen.KindSteam, kitchen.KindHeatOff, kitchen.KindTempRead, kitchen.KindAtZero), To: *at, FromThere: at.Shift != 0 && rapid.Bool().Draw(t, "from there")}
	case 1:
		return TakeOver{Which: w, Who: pick(t, "who", "", "Ana", "Tom")}
	case 2:
		return HandOver{Which: w, To: pick(t, "to", "", "Ana", "Jo"), When: anyDeadline(t)}
	case 3:
		return pick[Intent](t, "asked", CoolYet{Which: w, By: anyDeadline(t), For: pick(t, "for", "", "", "enoki", "lion's mane")}, CoolYet{By: &Moment{Day: Day{Said: true}, Clock: &ClockTime{Hour: 24, Half: true}}},
			CoolYet{Which: Which{Run: 12}, For: "strainless"}, CoolYet{Which: Which{Run: 12}, Unit: 3, By: anyDeadline(t)}, Log{Which: w}, Log{Mine: true}, anyLogUnit(t), Steps{Which: w}, Bookings{})
	case 4:
		return Book{Cooker: cooker, When: anyInterval(t), Soak: rapid.Bool().Draw(t, "soak")}
	case 5:
		return Unbook{When: pick(t, "when", nil, &Moment{Day: Day{Said: true, HasWeekday: true, Weekday: time.Saturday}}, &Moment{Day: Day{Said: true, Shift: 1}})}
	case 6:
		if rapid.Bool().Draw(t, "late") {
			return GearTold{Entry: kitchen.GearFailed{Cooker: cooker, Part: kitchen.Gas}, When: anyTime(t)}
		}
		return GearTold{Entry: pick[kitchen.GearEntry](t, "gear", kitchen.GearFailed{Cooker: cooker, Part: kitchen.Gasket}, kitchen.GearFailed{Run: 12, Part: kitchen.Gas}, kitchen.GearFailed{Part: kitchen.Stove}, kitchen.GearFailed{Part: kitchen.Valve},
			kitchen.GearFailed{Part: kitchen.Vent}, kitchen.GearFailed{Cooker: cooker, Part: kitchen.Gauge}, kitchen.GearChecked{Cooker: cooker, Parts: []kitchen.Part{kitchen.Gauge}},
			kitchen.GearChecked{Cooker: cooker, Parts: []kitchen.Part{kitchen.Gasket, kitchen.Vent, kitchen.Gas}})}
	case 7:
		from := kitchen.TimeOfDay(rapid.IntRange(0, 1439).Draw(t, "from"))
		to := kitchen.TimeOfDay(rapid.IntRange(0, 1439).Draw(t, "to"))
		if from == to {
			from, to = 0, 0
		}
		return Quiet{From: from, To: to, Everybody: rapid.Bool().Draw(t, "all")}
	}
	return pick[Intent](t, "answer", AnswerPing{How: kitchen.AnswerSeen}, AnswerPing{How: kitchen.AnswerNotYet, Burning: true, Which: w}, AnswerPing{How: kitchen.AnswerDone}, AnswerPing{How: kitchen.AnswerNotYet}, AnswerPing{How: kitchen.AnswerGotIt}, AnswerPing{How: kitchen.AnswerNotYet, Which: Which{Run: 12}}, WhyPing{}, WhyPing{None: true},
		PingsWhere{kitchen.InRoom}, PingsWhere{kitchen.InPrivate})
}
