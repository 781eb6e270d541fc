package hold

import (
	"math"
	"time"

	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// Limit is the longest hold that scaling may lead to: what a stove, a pot of
// water and a cook can be asked for (common practice). Only what scaling added
// is measured against it; a base that is longer by itself is not refused.
const Limit = 4 * time.Hour

// The shortest and longest base that Scale takes.
const (
	ShortestBase = time.Minute
	LongestBase  = 24 * time.Hour
)

// ReferenceGauge is the gauge pressure of the reference cycle at sea level:
// 15 psi.
func ReferenceGauge() unit.GaugeKPa { return unit.PSI(15) }

// Scaled is a hold for one kitchen.
type Scaled struct {
	// Hold is the answer: Exact rounded up to whole minutes, or the base itself
	// where scaling asks for less. A hold is never shortened.
	Hold time.Duration
	// Exact is as lethal at Temperature as the base is in the reference cycle.
	Exact time.Duration
	// Temperature is that of air-free steam at the kitchen's gauge and height.
	Temperature unit.Celsius
	// BeyondLimit says that scaling added time and led past Limit: not with this
	// cooker at this height. Hold is still the time it would take.
	BeyondLimit bool
	// SameTemperatureGauge would give the temperature of the reference cycle at
	// this height. Whether the cooker may be taken there is its rating's word.
	SameTemperatureGauge unit.GaugeKPa
}

// Scale carries a base hold of the reference cycle to an elevation and a gauge
// pressure by equal lethality of the steam (z = 10 K). At 15 psi and sea level
// it returns the base.
//
// Valid for a base from ShortestBase to LongestBase and the ranges of
// steam.Temperature; else a *unit.RangeError (for a Hold in minutes).
func Scale(base time.Duration, elevation unit.Metres, gauge unit.GaugeKPa) (Scaled, error) {
	err := unit.Check(unit.Hold, base.Minutes(), ShortestBase.Minutes(), LongestBase.Minutes())
	if err != nil {
		return Scaled{}, err
	}
	here, err := steam.Temperature(gauge, elevation)
	if err != nil {
		return Scaled{}, err
	}
	reference, err := steam.Temperature(ReferenceGauge(), 0)
	if err != nil {
		return Scaled{}, err
	}
	same, err := steam.GaugeFor(reference, elevation)
	if err != nil {
		return Scaled{}, err
	}
	exact := lethality.Equivalent(base, reference, here)
	hold := base
	if exact > base {
		hold = max(base, wholeMinutes(exact))
	}
	return Scaled{
		Hold:                 hold,
		Exact:                exact,
		Temperature:          here,
		BeyondLimit:          hold > base && hold > Limit,
		SameTemperatureGauge: same,
	}, nil
}

// wholeMinutes rounds up, and forgives a millisecond: that is the arithmetic's
// and not the kitchen's. Open steam on a high mountain asks for more than a
// Duration can count; there it rounds down, for up would come out negative.
func wholeMinutes(d time.Duration) time.Duration {
	down := d.Truncate(time.Minute)
	if d-down <= time.Millisecond || d > math.MaxInt64-time.Minute {
		return down
	}
	return down + time.Minute
}
