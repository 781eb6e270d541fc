package kitchen

import (
	"slices"
	"strconv"
	"time"
)

// suspectAgain is after how long a suspect unit is looked at again.
const suspectAgain = 48 * time.Hour

// UnitsDue is a ping of a load with the units that it is about.
type UnitsDue struct {
	Ping
	Units []UnitNo
}

// Wants are the pings that the units want: a look at those that are suspect, to who
// said so, and the ages that cooked grain reaches on the shelf. Units that were
// suspected by one person within an hour share a ping.
func (u Units) Wants() []UnitsDue {
	return append(u.looks(), u.shelf()...)
}

// lookTogether is within what time units that look suspect are looked at again
// together.
const lookTogether = time.Hour

func (u Units) looks() []UnitsDue {
	var doubts []UnitStep
	suspect := u.In(UnitSuspect)
	slices.SortStableFunc(suspect, func(a, b UnitNo) int { return u.doubt(a).At.Compare(u.doubt(b).At) })
	var out []UnitsDue
	for _, n := range suspect {
		d := u.doubt(n)
		i := slices.IndexFunc(doubts, func(first UnitStep) bool { return first.By == d.By && d.At.Sub(first.At) <= lookTogether })
		if i < 0 {
			doubts, out = append(doubts, d), append(out, u.look(d.By, d.At, n))
			continue
		}
		out[i].Units = append(out[i].Units, n)
	}
	return out
}

// doubt is when a unit was last said to look suspect.
func (u Units) doubt(n UnitNo) UnitStep {
	s, _ := u.All[n-1].LastStep(SaidSuspect)
	return s
}

// look is keyed by the first unit of those that are looked at together and by when it
// was said, so that another doubt asks anew.
func (u Units) look(by MemberNo, at time.Time, of UnitNo) UnitsDue {
	key := u.Run.Prefix() + "look/" + strconv.Itoa(int(of)) + "/" + strconv.FormatInt(at.Unix(), 10)
	return UnitsDue{
		Ping:  Ping{Key: key, Due: at.Add(suspectAgain), Kind: LookAgain, Loudness: DuePing, To: by, Room: u.Room, About: u.Run.Subject()},
		Units: []UnitNo{of},
	}
}

// shelf notes the age of the cooked grain that stands, under the keys of
// [Run.Wants], whose place these take.
func (u Units) shelf() []UnitsDue {
	var out []UnitsDue
	for i, l := range shelfLimits {
		units := u.where(func(x Unit) bool { return x.waits() && (!l.bagsAlone || x.Container.Vessel == Bag) })
		if len(units) == 0 || u.Cool.IsZero() {
			continue
		}
		due := u.Cool.AddDate(0, l.months, l.days)
		out = append(out, UnitsDue{
			Ping: Ping{
				Key: u.Run.Prefix() + "shelf/" + strconv.Itoa(i+1), Due: due, Kind: l.kind, Loudness: NotePing, About: u.Run.Subject(),
			},
			Units: units,
		})
	}
	return out
}

// waits reports whether the unit is cooked grain that waits for a culture. A blank
// waits for none.
func (u Unit) waits() bool { return u.State == UnitCooked && !u.Blank }
