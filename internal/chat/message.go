package chat

import (
	"context"
	"time"
)

// DoorName names a door. It is part of every address, so that numbers of two
// platforms never meet.
type DoorName string

// The doors that Ryebell has or will have.
const (
	Console  DoorName = "console"
	Telegram DoorName = "telegram"
	Matrix   DoorName = "matrix"
)

// Room is the address of a place where people and the bot talk: the door and
// the platform's own identifier. A private conversation with one person is a
// room too.
type Room struct {
	Door DoorName
	ID   string
}

// Person is an account on a platform. Name is what the platform shows; it
// decides nothing, ID does.
type Person struct {
	Door DoorName
	ID   string
	Name string
}

// Audience tells a room of several from a talk between one person and the bot.
type Audience uint8

// The two kinds of audience.
const (
	Group Audience = iota + 1
	Private
)

// Address tells how plainly a message was meant for the bot.
type Address uint8

// A message in a group is Overheard unless it mentions the bot, is a command
// or answers one of its posts; in private and in the terminal it is Addressed.
const (
	Overheard Address = iota + 1
	Addressed
)

// Message is one thing that a person did in a room: said something, changed
// what they had said, or tapped a button.
type Message struct {
	// Event is the platform's own identifier of this event. Together with
	// the door it marks the message as handled, so that a repeat is known.
	Event string
	Room  Room
	From  Person
	// At is when it was sent, Arrived when the door handed it over. At
	// counts; both are in UTC. Of an edit, At is when the change was made.
	At, Arrived time.Time
	Audience    Audience
	Address     Address
	// Text is what was typed; empty for a tap.
	Text string
	// ReplyTo is the platform's identifier of the post this answers.
	ReplyTo string
	// Edits is the Event of the earlier message that this one replaces: of
	// several edits each names the first one, never another edit.
	Edits string
	// Tap is set when a button was tapped.
	Tap *Tap
	// Photos are the pictures that came with the message, the first one first.
	Photos []Photo
}

// Tap says which button of which outbox row was tapped. The row is looked up
// in the book of the room the tap came from, so a forged number is just
// unknown.
type Tap struct {
	Row    int64
	Button int
}

// Parcel is a post on its way to a room.
type Parcel struct {
	// Row is the outbox row. A door makes its idempotency key and the data
	// of its buttons from it. Zero is a post that is in no book and has no
	// buttons: it is sent once, and as a new post.
	Row  int64
	Room Room
	Post Post
	// Replaces is the platform's identifier of the earlier post to edit in
	// place; empty for a new post.
	Replaces string
	// ReplyTo is the platform's identifier of the message answered, if any.
	ReplyTo string
}

// Receipt is what the platform said of a delivered parcel.
type Receipt struct {
	// Post is the platform's identifier of the post now standing there.
	Post string
}

// Handler takes what comes in through a door. It returns once the message is
// committed; an error means that it was not and should be offered again.
type Handler func(context.Context, Message) error

// Door is a chat platform. Run receives until ctx ends or, in a terminal, the
// input does; Send delivers one
// parcel and reports a refusal for good as [Refused] and a request to wait as
// [RetryAfter]; any other error means: try again.
type Door interface {
	Name() DoorName
	Run(ctx context.Context, handle Handler) error
	Send(ctx context.Context, p Parcel) (Receipt, error)
}

// RetryAfter is the error of a platform that asks to wait.
type RetryAfter struct{ Wait time.Duration }

func (e RetryAfter) Error() string { return "platform asks to wait " + e.Wait.String() }

// Refused is the error of a platform that will never take this parcel. Reason
// is for the operator and holds no text of people.
type Refused struct{ Reason string }

func (e Refused) Error() string { return "platform refused: " + e.Reason }
