package kitchen

import "time"

// Ping is a message that a state wants sent by itself at a time. Pings are
// derived, never commanded: a state lists those it wants, and the book is made
// equal to the list.
type Ping struct {
	// Key names the ping within its collective and stays the same as long as
	// it waits for the same thing: start/17, run/12/hold-over/2. What stands
	// before the last parts is the prefix under which a state lists its own.
	Key      string
	Due      time.Time
	Kind     PingKind
	Loudness Loudness
	// To is the member it is for; zero means the whole room.
	To MemberNo
	// Room is the number of the room it goes to, as in [RoomJoined]; zero means
	// the collective's home room.
	Room int64
	// About is the subject whose entries tell what the ping says: run/12.
	About string
}

// PingKind is what a ping says.
type PingKind uint8

// StartNow says that it is time to start an order that is to be out by a time.
const (
	StartNow PingKind = iota + 1
)

// String returns the word for logs.
func (k PingKind) String() string {
	switch k {
	case StartNow:
		return "start now"
	}
	return "ping not said"
}

// Loudness is how much of a stir a ping makes. Guard pings watch over a hot
// cooker: they ring at any hour and go before all else. Due pings ring and wait
// for the morning. Notes and digests are silent.
type Loudness uint8

// The four loudnesses.
const (
	GuardPing Loudness = iota + 1
	DuePing
	NotePing
	DigestPing
)

// String returns the word for logs.
func (l Loudness) String() string {
	switch l {
	case GuardPing:
		return "guard"
	case DuePing:
		return "due"
	case NotePing:
		return "note"
	case DigestPing:
		return "digest"
	}
	return "loudness not said"
}

// Due is DuePing.
const Due = DuePing
