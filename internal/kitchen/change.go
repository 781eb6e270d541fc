package kitchen

import (
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// Change is an entry that changes the kitchen: one setting said. The cases are
// the types of this file; each knows what it does to the [Settings].
//
//sumtype:decl
type Change interface {
	Entry
	change(s *Settings)
}

// Elevation says how high the kitchen stands, -430 to 5,000 m.
type Elevation struct {
	Height unit.Metres `json:"m"`
}

// RoomTemperature says how warm the room is where containers cool: what anybody has
// read off a thermometer, no policy of the collective's.
type RoomTemperature struct {
	Temp unit.Celsius `json:"c"`
}

// CoolLimitIs says how warm grain may be at most when a culture goes on it, 10 to 30
// °C: whichever, or one Culture by the collective's name for it.
type CoolLimitIs struct {
	Temp    unit.Celsius `json:"c"`
	Culture string       `json:"culture,omitzero"`
}

// GaugeKind is how a cooker shows its pressure.
type GaugeKind uint8

// A dial shows it; a weight rocks when it is reached.
const (
	Dial GaugeKind = iota + 1
	Weight
)

// Capacity is how many of one container fill a cooker when nothing else is in.
type Capacity struct {
	Count     int       `json:"count"`
	Container Container `json:"container"`
}

// CookerIs names a cooker and says what was said of it; what was not said (zero)
// stays as it was. An empty Name means the collective's only cooker.
type CookerIs struct {
	Name string `json:"name,omitzero"`
	// Takes lists what fills it, one or the other: seven quarts or three 5 lb bags.
	Takes []Capacity `json:"takes,omitzero"`
	// MaxGauge is the maker's highest pressure.
	MaxGauge unit.GaugeKPa `json:"max_kpa,omitzero"`
	Gauge    GaugeKind     `json:"gauge,omitzero"`
	// Pot is the volume of the empty pot.
	Pot unit.Litres `json:"pot_l,omitzero"`
	// MinWater and MaxWater are the maker's limits for the water under the rack.
	MinWater unit.Litres `json:"min_water_l,omitzero"`
	MaxWater unit.Litres `json:"max_water_l,omitzero"`
	// BoilOff is how much water it loses an hour at pressure.
	BoilOff unit.LitresPerHour `json:"boil_off,omitzero"`
	// Fall is how long it takes from heat off to zero.
	Fall time.Duration `json:"fall,omitzero"`
}

// HoldIs sets the hold of a container as the collective wants it. It is taken
// as said, never scaled. A Container without size means every one of its vessel,
// the zero Container all.
type HoldIs struct {
	Container Container     `json:"container,omitzero"`
	Hold      time.Duration `json:"hold"`
}

// MethodIs says that a vessel (zero: every one) is filled by a method.
type MethodIs struct {
	Vessel Vessel `json:"vessel,omitzero"`
	Method Method `json:"method"`
}

// StepIs sets the scale step to which weights are shown.
type StepIs struct {
	Step unit.Grams `json:"g"`
}

// JarFill says what a jar holds, weighed by the collective: wetted grain in a
// jar filled their way.
type JarFill struct {
	Container Container  `json:"container"`
	Wetted    unit.Grams `json:"g"`
}

// YieldIs says what a weight of dry grain came out at after soaking or simmering
// and draining.
type YieldIs struct {
	Grain   grain.Kind `json:"grain,omitzero"`
	Dry     unit.Grams `json:"dry_g"`
	Drained unit.Grams `json:"drained_g"`
}

// RatioIs sets the water per dry grain for a route, grain and vessel; zero
// fields mean every one.
type RatioIs struct {
	Route  Route      `json:"route,omitzero"`
	Grain  grain.Kind `json:"grain,omitzero"`
	Vessel Vessel     `json:"vessel,omitzero"`
	Ratio  unit.Ratio `json:"ratio"`
}

// UsualGrain says which grain is meant when none is said.
type UsualGrain struct {
	Grain grain.Kind `json:"grain"`
}

// UsualOrder says what "the usual" is.
type UsualOrder struct {
	Order Order `json:"order"`
}

// GypsumIs sets the gypsum that every plan takes, as a share of the dry grain;
// zero turns it off.
type GypsumIs struct {
	Share unit.Fraction `json:"share"`
}

// BagMeans says whether a "5 lb bag" holds that much wetted grain or is filled
// with that much dry.
type BagMeans struct {
	Basis Basis `json:"basis"`
}

// HeadspaceIs sets the share of a jar that stays empty.
type HeadspaceIs struct {
	Share unit.Fraction `json:"share"`
}

// StorageMoisture says how moist grain is as bought (wet basis); a zero Grain
// means every kind.
type StorageMoisture struct {
	Grain    grain.Kind    `json:"grain,omitzero"`
	Moisture unit.Fraction `json:"moisture"`
}

// ZoneIs names the time zone of the kitchen (IANA).
type ZoneIs struct {
	Zone string `json:"zone"`
}

// MeasureIs says which quarts and pints the collective means.
type MeasureIs struct {
	Measure Measure `json:"measure"`
}

// PressureIs says at which gauge pressure the collective cooks.
type PressureIs struct {
	Gauge unit.GaugeKPa `json:"kpa"`
}

// GaugeReads says how much too low the gauge of a cooker shows; less than nothing
// when it shows too much. An empty Cooker is the only one.
type GaugeReads struct {
	Cooker string        `json:"cooker,omitzero"`
	Low    unit.GaugeKPa `json:"low_kpa"`
}

// QuietHours says between which times of day pings that can wait do wait: from
// From to To, over midnight when To is the earlier. Equal times mean never. A zero
// Member is the whole collective.
type QuietHours struct {
	Member MemberNo  `json:"member,omitzero"`
	From   TimeOfDay `json:"from"`
	To     TimeOfDay `json:"to"`
}

// PingsPrivate says whether a member wants the pings of their runs in private, or
// in the room again.
type PingsPrivate struct {
	Member MemberNo `json:"member"`
	Where  Audience `json:"where"`
}

// DigestIs says when the collective wants its weekly digest: on a day of the week
// at a time of day, 04:00 to 23:59. A zero At means never.
type DigestIs struct {
	Day time.Weekday `json:"day"`
	At  TimeOfDay    `json:"at"`
}

// RestIs says for how many days cooked grain rests before a culture goes on it, so
// that what was cooked too short shows: 1 to 14. 0 for none.
type RestIs struct {
	Days int `json:"days"`
}

// Audience is who hears a ping.
type Audience uint8

// The audiences.
const (
	InRoom Audience = iota + 1
	InPrivate
)

// String returns the word for logs and the book.
func (a Audience) String() string {
	switch a {
	case InRoom:
		return "in the room"
	case InPrivate:
		return "in private"
	}
	return "audience not said"
}

// TimeOfDay is a time on the clock, in minutes after midnight: 0 to 1439.
type TimeOfDay int

// On is that time of day on the local day of an instant.
func (t TimeOfDay) On(day time.Time) time.Time {
	y, m, d := day.Date()
	return time.Date(y, m, d, int(t)/60, int(t)%60, 0, 0, day.Location())
}
