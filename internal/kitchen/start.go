package kitchen

import (
	"slices"
	"strconv"
	"time"
)

// StartPrefix begins the keys of all pings for a start.
const StartPrefix = "start/"

// StartMet says that a start which somebody waited for has happened: a run was
// put on.
type StartMet struct {
	No EntryNo `json:"no"`
}

func (StartMet) entry() {}

// Start is a start that is still waited for.
type Start struct {
	StartWanted
	No EntryNo
}

// FoldStarts lists the starts that are still waited for, in the order they were
// wanted.
func FoldStarts(records []Record) []Start {
	var waiting []Start
	for _, r := range records {
		if e, ok := r.Entry.(StartWanted); ok {
			waiting = append(waiting, Start{StartWanted: e, No: r.No})
		}
		if e, ok := r.Entry.(StartMet); ok {
			waiting = slices.DeleteFunc(waiting, func(s Start) bool { return s.No == e.No })
		}
	}
	return waiting
}

// Reckoned is the start in the kitchen as it is now: what takes longer than when
// it was wanted must be lit earlier.
func (s Start) Reckoned(k Settings) Start {
	if p, err := k.Work(s.Order); err == nil && p.Takes() > 0 {
		s.Start = s.OutBy.Add(-p.Takes()).Truncate(time.Minute)
	}
	return s
}

// Wants is the ping of a start that is waited for, in the room where it was
// wanted.
func (s Start) Wants() []Ping {
	key := StartPrefix + strconv.Itoa(int(s.No))
	return []Ping{{Key: key + "/now", Due: s.Start, Kind: StartNow, Loudness: Due, To: s.For, Room: s.Room, About: key}}
}
