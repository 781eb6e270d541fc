package kitchen

import (
	"slices"

	"ryebell/internal/calc/unit"
)

// The limits of grain for a culture (common practice, no source).
const (
	// MaxCoolLimit is the warmest grain that any culture may be put on: warmer grain
	// kills it.
	MaxCoolLimit unit.Celsius = 30
	// MinCoolLimit is the coldest limit that is taken for one.
	MinCoolLimit unit.Celsius = 10

	// UsualCoolLimit is that of a collective which has set none, where the room is
	// no warmer than usual.
	UsualCoolLimit unit.Celsius = 27

	overRoom unit.Kelvins = 3
)

// CoolLimit is the temperature under which a culture may be put on the grain: 27 °C,
// or 3 °C over the room if that is higher, or the collective's own if that is lower.
// Never over 30 °C.
func (s Settings) CoolLimit() unit.Celsius { return s.CoolLimitFor("") }

// CoolLimitFor is [Settings.CoolLimit] for a culture, which may have a lower one of
// its own. The empty name and one that nobody gave a limit to have the collective's.
func (s Settings) CoolLimitFor(culture string) unit.Celsius {
	limit := s.usualCoolLimit()
	for _, own := range s.CoolLimits {
		if own.Culture == "" || sameName(own.Culture, culture) {
			limit = min(limit, own.Temp)
		}
	}
	return limit
}

// UsualCoolLimit is the limit of a collective that has set none.
func (s Settings) usualCoolLimit() unit.Celsius {
	return max(UsualCoolLimit, min(MaxCoolLimit, s.RoomTemp().Plus(overRoom)))
}

// Cultures lists the cultures that a limit was set for, by name.
func (s Settings) Cultures() []string {
	var names []string
	for _, l := range s.CoolLimits {
		if l.Culture != "" {
			names = append(names, l.Culture)
		}
	}
	return names
}

// KnowsCulture reports whether a culture has a limit of its own.
func (s Settings) KnowsCulture(name string) bool {
	return slices.ContainsFunc(s.CoolLimits, func(l CoolLimitIs) bool { return l.Culture != "" && sameName(l.Culture, name) })
}

// NeverSoCool reports whether grain can't come down to a limit, for the room is as
// warm.
func (s Settings) NeverSoCool(limit unit.Celsius) bool { return s.Room != nil && limit <= *s.Room }

// checkCoolLimit refuses a limit that kills, and one that no kitchen waits for.
func checkCoolLimit(c CoolLimitIs) error {
	if c.Temp > MaxCoolLimit {
		return KillsCulture{Limit: c.Temp}
	}
	return checkRange(LimitOfCool, float64(c.Temp), float64(MinCoolLimit), float64(MaxCoolLimit))
}
