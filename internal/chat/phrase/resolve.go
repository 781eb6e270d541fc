package phrase

import (
	"cmp"
	"slices"
	"time"
)

// Resolve says which instants m can mean, said at that time in that zone: none
// when there's no such day (29 february 2027, last monday looking Forward),
// several when it can be either, the likeliest first. None is to be asked about,
// never passed over. A weekday that isn't that of its date (friday 3 march, a
// tuesday) gives both: the date, and that weekday nearest to it. Looking Back
// the latest fitting instant that has passed is meant, Forward the next one to
// come; 10:30 is the morning's then, but 9:30 either's. A time of day that the
// clock change left out stands for the one as long after the change; of one that
// it brought twice both are given. A day without a time of day is its first
// instant, except that days counted from now (3 days ago) keep the time: see
// [Moment] for who may take it.
func (m Moment) Resolve(said time.Time, dir Direction) []time.Time {
	switch {
	case m.Now:
		return []time.Time{said}
	case !m.Day.Said && m.Clock == nil:
		return []time.Time{said.Add(m.Shift)}
	case !m.Day.Said:
		return m.Clock.looking(dir).nearest(said, dir)
	}
	var found []time.Time
	for _, d := range m.Day.dates(said, dir) {
		switch {
		case m.Clock != nil:
			for _, c := range m.Clock.looking(dir).readings() {
				found = append(found, instants(d, c.Hour, c.Minute, said.Location())...)
			}
		case m.Day.counted():
			found = append(found, instants(d, said.Hour(), said.Minute(), said.Location())[0])
		default:
			found = append(found, instants(d, 0, 0, said.Location())[0])
		}
	}
	if m.Clock == nil {
		return found
	}
	return inDirection(found, said, dir)
}

// inDirection drops what lies on the wrong side of the message, unless that is
// everything: then it was said so, and whoever asked sees it.
func inDirection(found []time.Time, said time.Time, dir Direction) []time.Time {
	fit := slices.DeleteFunc(slices.Clone(found), func(t time.Time) bool { return !fits(t, said, dir) })
	if len(fit) == 0 {
		return found
	}
	return fit
}

// fits reports whether t lies where dir looks. Now itself is past.
func fits(t, said time.Time, dir Direction) bool {
	switch dir {
	case Back:
		return !t.After(said)
	case Forward:
		return t.After(said)
	}
	panic(dir)
}

// nearest gives the instants of a time of day without a day.
func (c ClockTime) nearest(said time.Time, dir Direction) []time.Time {
	var found []time.Time
	today := dateOf(said)
	for _, r := range c.readings() {
		for day := -1; day <= 1; day++ {
			for _, t := range instants(today.plus(day), r.Hour, r.Minute, said.Location()) {
				if fits(t, said, dir) {
					found = append(found, t)
				}
			}
		}
	}
	slices.SortFunc(found, func(a, b time.Time) int { return cmp.Compare(a.Sub(said).Abs(), b.Sub(said).Abs()) })
	switch {
	case len(found) == 0:
		return nil
	case dir == Forward && !c.Half && len(found) > 1:
		return found[:2]
	}
	return slices.DeleteFunc(found, func(t time.Time) bool { return t.Sub(found[0]).Abs() > time.Hour+time.Minute })
}

// looking is c as a time to come is meant: from ten on it's that of 24 hours,
// since nobody cooks until 22:30 and calls it 10:30.
func (c ClockTime) looking(dir Direction) ClockTime {
	if dir == Forward && c.Hour >= 10 && c.Hour <= 12 {
		c.Half = true
	}
	return c
}

// readings are the times of day that c can be, the likelier first: by day rather
// than by night.
func (c ClockTime) readings() []ClockTime {
	switch {
	case c.Half:
		return []ClockTime{c}
	case c.Hour == 24:
		return []ClockTime{{Hour: 24, Half: true}, {Half: true}}
	}
	morning := ClockTime{Hour: c.Hour % 12, Minute: c.Minute, Half: true}
	later := morning.otherHalf()
	if morning.Hour >= 7 {
		return []ClockTime{morning, later}
	}
	return []ClockTime{later, morning}
}

// date is a day of the calendar.
type date struct {
	year  int
	month time.Month
	day   int
}

func dateOf(t time.Time) date {
	y, m, d := t.Date()
	return date{y, m, d}
}

// noon is an instant in UTC that has this date: for counting days, nothing else.
func (d date) noon() time.Time { return time.Date(d.year, d.month, d.day, 12, 0, 0, 0, time.UTC) }

func (d date) plus(days int) date { return dateOf(d.noon().AddDate(0, 0, days)) }

func (d date) valid() bool { return d == dateOf(d.noon()) }

func (d date) weekday() time.Weekday { return d.noon().Weekday() }

// before reports whether d lies before e.
func (d date) before(e date) bool { return d.noon().Before(e.noon()) }

// instants gives the moments at which clocks in loc show that time: one, two
// where it comes twice, and where it is left out the one as long after the
// change as it would have been.
func instants(d date, hour, minute int, loc *time.Location) []time.Time {
	wall := time.Date(d.year, d.month, d.day, hour, minute, 0, 0, time.UTC)
	_, before := wall.Add(-26 * time.Hour).In(loc).Zone()
	_, after := wall.Add(26 * time.Hour).In(loc).Zone()
	first := wall.Add(-time.Duration(before) * time.Second).In(loc)
	second := wall.Add(-time.Duration(after) * time.Second).In(loc)
	shows := func(t time.Time) bool {
		return t.Hour() == wall.Hour() && t.Minute() == minute && dateOf(t) == dateOf(wall)
	}
	switch {
	case before == after || shows(first) && !shows(second):
		return []time.Time{first}
	case shows(second) && !shows(first):
		return []time.Time{second}
	case !shows(first):
		return []time.Time{first} // left out
	}
	if second.Before(first) {
		first, second = second, first
	}
	return []time.Time{first, second}
}

// counted reports whether the day was counted from that of the message, so that
// without a time of day it keeps the message's.
func (d Day) counted() bool { return !d.HasWeekday && d.Date == 0 }

// dates are the days of the calendar that d can be, the likeliest first.
func (d Day) dates(said time.Time, dir Direction) []date {
	today := dateOf(said)
	switch {
	case d.Last && dir == Forward, (d.Next || d.NextWeek) && dir == Back:
		return nil
	case d.Month != 0:
		return d.ofMonth(today, dir)
	case d.Date != 0:
		return d.ofAnyMonth(today, dir)
	case d.NextWeek:
		monday := today.plus(-(int(today.weekday()) + 6) % 7)
		return []date{monday.plus(7 + (int(d.Weekday)+6)%7)}
	case d.HasWeekday:
		return d.ofWeek(today, dir)
	case d.Months != 0:
		return []date{today.plusMonths(d.Months)}
	}
	return []date{today.plus(d.Shift)}
}

// plusMonths keeps to the end of a shorter month: a month from 31 January is 28
// February.
func (d date) plusMonths(n int) date {
	first := time.Date(d.year, d.month+time.Month(n), 1, 12, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return date{first.Year(), first.Month(), min(d.day, last)}
}

// ofWeek finds a weekday. On that day itself both it and the one a week off can
// be meant; "next friday" is that of next week to most, the next one to others.
func (d Day) ofWeek(today date, dir Direction) []date {
	ahead := (int(d.Weekday) - int(today.weekday()) + 7) % 7
	switch dir {
	case Back:
		switch {
		case ahead == 0 && d.Last:
			return []date{today.plus(-7)}
		case ahead == 0:
			return []date{today, today.plus(-7)}
		}
		return []date{today.plus(ahead - 7)}
	case Forward:
		sunday := (7 - int(today.weekday())) % 7 // weeks begin on monday
		switch {
		case d.Next && ahead == 0:
			return []date{today.plus(7)}
		case d.Next && ahead <= sunday:
			return []date{today.plus(ahead + 7), today.plus(ahead)}
		case ahead == 0 && !d.Next:
			return []date{today, today.plus(7)}
		}
		return []date{today.plus(ahead)}
	}
	panic(dir)
}

// ofMonth finds 19 june, in the year said or the next one that has it in the
// direction.
func (d Day) ofMonth(today date, dir Direction) []date {
	if d.Year != 0 {
		return d.orWeekday(date{d.Year, d.Month, d.Date}, today, dir)
	}
	step := 1
	if dir == Back {
		step = -1
	}
	for n := range 9 { // 29 february may be eight years off
		at := date{today.year + step*n, d.Month, d.Date}
		if at.valid() && (at == today || at.before(today) == (dir == Back)) {
			return d.orWeekday(at, today, dir)
		}
	}
	return nil
}

// ofAnyMonth finds the 14th, or the next 14th that is a thursday.
func (d Day) ofAnyMonth(today date, dir Direction) []date {
	step := 1
	if dir == Back {
		step = -1
	}
	for n := range 12 * 4 {
		first := date{today.year, today.month, 1}.plusMonths(step * n)
		at := date{first.year, first.month, d.Date}
		if at.valid() && (at == today || at.before(today) == (dir == Back)) && (!d.HasWeekday || at.weekday() == d.Weekday) {
			return []date{at}
		}
	}
	return nil
}

// orWeekday is the date, and when the weekday said with it is another's, that
// weekday nearest to it as well, on the same side of today.
func (d Day) orWeekday(at, today date, dir Direction) []date {
	switch {
	case !at.valid():
		return nil
	case !d.HasWeekday || at.weekday() == d.Weekday:
		return []date{at}
	}
	off := (int(d.Weekday) - int(at.weekday()) + 7) % 7
	if off > 3 {
		off -= 7
	}
	near := at.plus(off)
	switch {
	case dir == Forward && near.before(today) && !at.before(today):
		near = near.plus(7)
	case dir == Back && today.before(near) && !today.before(at):
		near = near.plus(-7)
	}
	return []date{at, near}
}

// Stretch is an interval settled: from one instant to a later one.
type Stretch struct{ From, To time.Time }

// Resolve says which stretches of time v can mean, as [Moment.Resolve] does. The
// end is the first after the beginning.
func (v Interval) Resolve(said time.Time, dir Direction) []Stretch {
	var found []Stretch
	for _, from := range v.From.Resolve(said, dir) {
		if v.To.Clock == nil {
			continue
		}
		if to := v.To.Clock.nearest(from, Forward); len(to) > 0 {
			found = append(found, Stretch{from, to[0]})
		}
	}
	return found
}
