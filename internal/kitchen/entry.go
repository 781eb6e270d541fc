package kitchen

import "time"

// Entry is one thing that was said to have happened. The cases are the changes
// of the kitchen ([Change]), what is said of runs ([RunEntry]), of units
// ([UnitEntry]), of cultures, of bookings and of gear, and the types of this file.
//
//sumtype:decl
type Entry interface{ entry() }

// Record is an entry as it stands in the book: who said it, when it happened,
// when it was written.
type Record struct {
	No      EntryNo
	By      MemberNo
	At      time.Time
	Written time.Time
	Entry   Entry
}

// Struck takes back an earlier entry: it stays in the book and no longer counts.
type Struck struct {
	No EntryNo `json:"no"`
}

// StartWanted says that somebody wants to be told when to start an order so
// that it is out in time.
type StartWanted struct {
	Order Order     `json:"order"`
	Start time.Time `json:"start"`
	OutBy time.Time `json:"out_by"`
	For   MemberNo  `json:"for"`
	// Room is where to ping, as in [RoomJoined].
	Room int64 `json:"room"`
}

// Role is what a member may do beyond talking.
type Role uint8

// A steward may change the kitchen, name other stewards and give out codes.
const (
	Grower Role = iota + 1
	Steward
)

// String returns the word for logs and the book.
func (r Role) String() string {
	switch r {
	case Grower:
		return "grower"
	case Steward:
		return "steward"
	}
	return "role not said"
}

// MemberJoined says that somebody was first seen in a room of the collective.
type MemberJoined struct {
	Member MemberNo `json:"member"`
}

// RoleGiven says that a member now has a role.
type RoleGiven struct {
	Member MemberNo `json:"member"`
	Role   Role     `json:"role"`
}

// Forgotten says that a member asked to be forgotten: the name and the account
// are gone, the number stays.
type Forgotten struct {
	Member MemberNo `json:"member"`
}

// RoomJoined says that a chat room now belongs to the collective.
type RoomJoined struct {
	Room int64 `json:"room"`
}

func (Struck) entry()       {}
func (StartWanted) entry()  {}
func (MemberJoined) entry() {}
func (RoleGiven) entry()    {}
func (Forgotten) entry()    {}
func (RoomJoined) entry()   {}
