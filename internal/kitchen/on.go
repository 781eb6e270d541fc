package kitchen

import "time"

// AlreadyOn says that this plan is on already: a tap that came twice, or a next
// load whose cooker isn't free. More is how many loads of it are still to come.
type AlreadyOn struct {
	Run   RunNo
	By    MemberNo
	At    time.Time
	More  int
	Stage Stage
}

// TooLongHere says that a plan can't be cooked with this cooker at this height.
type TooLongHere struct{ Hold Hold }

// NoSuchTime says that no instant is meant by what was said: the 30th of February,
// or a Tuesday that is none.
type NoSuchTime struct{ Said string }

// NoHour says that a time is needed where only a day was said.
type NoHour struct{ Said string }

// NeverTold says that nothing of a kind was told of a run, so that its time can't be
// corrected; Said is zero for nothing at all.
type NeverTold struct {
	Run  RunNo
	Said Kind
}

// TakenBackAlready says that what a post was about was taken back before.
type TakenBackAlready struct{}

func (AlreadyOn) refusal()        {}
func (TooLongHere) refusal()      {}
func (NoSuchTime) refusal()       {}
func (NoHour) refusal()           {}
func (NeverTold) refusal()        {}
func (TakenBackAlready) refusal() {}

func (AlreadyOn) Error() string        { return "plan is on already" }
func (TooLongHere) Error() string      { return "hold past the limit here" }
func (NoSuchTime) Error() string       { return "no such time" }
func (NoHour) Error() string           { return "day without an hour" }
func (NeverTold) Error() string        { return "never told" }
func (TakenBackAlready) Error() string { return "taken back already" }

// KindOf is what an entry about a run says, without its figures.
func KindOf(e RunEntry) Kind { return e.kind() }
