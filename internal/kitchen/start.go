package kitchen

import "strconv"

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
// wanted. A member waits for one start at a time: the last one wanted.
func FoldStarts(records []Record) []Start {
	var waiting []Start
	for _, r := range records {
		if e, ok := r.Entry.(StartWanted); ok {
			waiting = append(without(waiting, func(s Start) bool { return s.For == e.For }), Start{StartWanted: e, No: r.No})
		}
		if e, ok := r.Entry.(StartMet); ok {
			waiting = without(waiting, func(s Start) bool { return s.No == e.No })
		}
	}
	return waiting
}

func without(all []Start, drop func(Start) bool) []Start {
	var kept []Start
	for _, s := range all {
		if !drop(s) {
			kept = append(kept, s)
		}
	}
	return kept
}

// Wants is the ping of a start that is waited for, in the room where it was
// wanted.
func (s Start) Wants() []Ping {
	key := StartPrefix + strconv.Itoa(int(s.No))
	return []Ping{{Key: key, Due: s.Start, Kind: StartNow, Loudness: Due, To: s.For, Room: s.Room, About: key}}
}
