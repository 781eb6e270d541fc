package cooling

import (
	"errors"
	"fmt"
	"math"
	"time"

	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// Place is where a thermometer was, or where a temperature is asked for.
type Place uint8

// The places of a container.
const (
	// Skin is the outside of the bag or jar, in the middle of its widest side.
	Skin Place = iota + 1
	// Between is the fold between two containers that touch: nearer the middle.
	Between
	// Core is the middle of the grain.
	Core
)

// String is the place's name for logs.
func (p Place) String() string {
	switch p {
	case Skin:
		return "skin"
	case Between:
		return "between"
	case Core:
		return "core"
	}
	panic(fmt.Sprintf("cooling: no place %d", uint8(p)))
}

// Spacing is how the containers stand once they are out of the pot.
type Spacing uint8

// The spacings; the zero value is Close, what a small kitchen does.
const (
	Close   Spacing = iota // a hand's breadth or less
	Apart                  // free on all sides
	Crowded                // touching, or many in a small room
	Unsaid                 // nobody said: between close and apart, and less sure
)

// String is the spacing's name for logs.
func (s Spacing) String() string {
	switch s {
	case Close:
		return "close"
	case Apart:
		return "apart"
	case Crowded:
		return "crowded"
	case Unsaid:
		return "unsaid"
	}
	panic(fmt.Sprintf("cooling: no spacing %d", uint8(s)))
}

// free is the share of a free surface's coefficient that is left.
func (s Spacing) free() float64 {
	switch s {
	case Close:
		return freeBase * freeClose
	case Apart:
		return freeBase
	case Crowded:
		return freeBase * freeCrowded
	case Unsaid:
		return freeBase * (1 + freeClose) / 2
	}
	panic(fmt.Sprintf("cooling: no spacing %d", uint8(s)))
}

// Room is what is believed of the air around, over the whole of the cooling: a
// temperature and its standard deviation. The zero Room is UnknownRoom.
type Room struct {
	Mid   unit.Celsius
	Doubt unit.Kelvins
}

// UnknownRoom is 20 ± 3 °C: nobody said.
func UnknownRoom() Room { return Room{Mid: 20, Doubt: 3} }

// ToldRoom is what a room is over the hours after somebody told t of it: 1 ± 1.5 K
// colder, since it is warm from cooking then and cools at night. No source.
func ToldRoom(t unit.Celsius) Room { return Room{Mid: t - 1, Doubt: 1.5} }

// UsualError is the standard deviation of a kitchen thermometer pressed to a bag.
const UsualError unit.Kelvins = 0.8

// How much a reading of another unit of the run may differ in its time scale:
// standard deviations of the logarithm. No source.
const (
	SameSizeSpread  = 0.1
	OtherSizeSpread = 0.2
)

// Reading is what a thermometer showed, After zero pressure.
type Reading struct {
	After time.Duration
	Temp  unit.Celsius
	Place Place
	// Error is the standard deviation of the thermometer; UsualError if zero.
	Error unit.Kelvins
	// Spread is how far the unit's time scale may lie from that of the one asked
	// about; zero for that one itself.
	Spread float64
	// Body is that of the unit where it is of another size; else zero.
	Body Body
}

// Question is what a forecast is made from. Times count from zero pressure.
type Question struct {
	Body      Body
	Elevation unit.Metres // of the kitchen, for its boiling point
	Room      Room
	Spacing   Spacing
	// Lifted is when the containers came out of the pot; nil if they are in it and
	// nobody says when they won't be. A time to come asks what would be.
	Lifted   *time.Duration
	Readings []Reading // in any order
	Limit    unit.Celsius
	Prior    Prior // zero: Usual
}

// The limits that a forecast takes.
const (
	LowestLimit  unit.Celsius = 1
	HighestLimit unit.Celsius = 60
)

// widestPrior bounds a time scale and its spread, in ln time: a factor of 7.
const widestPrior = 2

// Horizon is the longest time that a forecast counts: what isn't cool by then
// won't be.
const Horizon = 14 * 24 * time.Hour

// checked puts in what is left out and finds what can't be.
func (q Question) checked() (Question, unit.Celsius, error) {
	if q.Room == (Room{}) {
		q.Room = UnknownRoom()
	}
	if q.Prior == (Prior{}) {
		q.Prior = Usual()
	}
	if q.Spacing == Unsaid {
		q.Prior.Spread = math.Hypot(q.Prior.Spread, unsaidSpread)
	}
	boiling, err := steam.BoilingPoint(q.Elevation)
	if err != nil {
		return q, 0, err
	}
	if q.Body.Zero() {
		return q, 0, noBody()
	}
	if err := unit.Check(unit.Temperature, q.Limit, LowestLimit, HighestLimit); err != nil {
		return q, 0, err
	}
	return q, boiling, errors.Join(
		unit.Check(unit.Temperature, q.Room.Mid, -40, HighestLimit),
		unit.Check(unit.Temperature, unit.Celsius(q.Room.Doubt), 0, 20),
		unit.Check(unit.TimeScale, q.Prior.Spread, 0, widestPrior),
		unit.Check(unit.TimeScale, q.Prior.Slower, -widestPrior, widestPrior),
	)
}

// noBody says that none was given.
func noBody() error { return unit.Check(unit.Volume, 0, SmallestBody, LargestBody) }
