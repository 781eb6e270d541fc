package load

import (
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// Defaults of a water budget. Each 100 W of heat that the pot doesn't lose boils
// off 0.16 l/h: full power for a vent takes 0.4 l in ten minutes, a weight that
// rocks 0.3 to 0.8 l/h (estimated from a latent heat of 2.2 MJ/kg). Ten minutes
// of venting are the rule of the USDA Complete Guide to Home Canning and PNW
// 421. The rest is common practice.
const (
	UsualVent                        = 10 * time.Minute
	UsualVentRate unit.LitresPerHour = 2.4
	UsualBoilOff  unit.LitresPerHour = 0.6
	UsualTakenUp  unit.Litres        = 0.3
	UsualLeft     unit.Litres        = 1
)

// Budget is where a cooker's water goes. A part that is negative counts as
// nothing.
type Budget struct {
	Vent     time.Duration      // at full heat with the weight off
	VentRate unit.LitresPerHour // boiled off while venting
	Hold     time.Duration      // under pressure, all holds of the run together
	BoilOff  unit.LitresPerHour // boiled off under pressure; the cooker's own
	TakenUp  unit.Litres        // by the load
	Left     unit.Litres        // that must remain when the heat goes off
	Maker    unit.Litres        // least amount by the maker's manual, 0 if not known
}

// UsualBudget is the budget of a hold until the cooker's own figures are known.
func UsualBudget(hold time.Duration) Budget {
	return Budget{
		Vent: UsualVent, VentRate: UsualVentRate,
		Hold: hold, BoilOff: UsualBoilOff,
		TakenUp: UsualTakenUp, Left: UsualLeft,
	}
}

// Water is how much goes into the cooker, rounded up to a tenth of a litre:
// vent + hold × boil-off + taken up + left, and at least LeastWater and what the
// maker asks for. Whether the pot takes it, below the maker's line, is for the
// caller to see.
func Water(b Budget) unit.Litres {
	need := b.before() + boiled(b.Hold, b.BoilOff)
	return RoundUp(max(need, LeastWater(b.Hold), b.Maker))
}

// LeastWater is the least water for a hold, whatever the sum says (common
// practice; 3 US quarts, 2.8 l, is the figure of the USDA Complete Guide to Home
// Canning for its short processes): 3 l to 90 min, 4 l to 150 min, 5 l for longer. No figure was
// found for holds past 240 min, where the sum decides.
func LeastWater(hold time.Duration) unit.Litres {
	switch {
	case hold <= 90*time.Minute:
		return 3
	case hold <= 150*time.Minute:
		return 4
	}
	return 5
}

// Lasts is how long a hold the water that was put in covers by the budget's
// rates, its Left untouched: 0 when it doesn't even cover the vent, the longest
// Duration when nothing boils off.
func (b Budget) Lasts(put unit.Litres) time.Duration {
	spare := float64(put - b.before())
	if !(spare > 0) {
		return 0
	}
	hours := spare / max(float64(b.BoilOff), 0)
	if hours >= math.MaxInt64/float64(time.Hour) {
		return math.MaxInt64
	}
	return time.Duration(hours * float64(time.Hour))
}

// RoundUp is the volume in whole tenths of a litre, never less than l by more
// than a millionth of a litre.
func RoundUp(l unit.Litres) unit.Litres {
	return unit.Litres(math.Ceil(float64(l)*10-1e-5) / 10)
}

// before is what must be in the pot besides the hold's boil-off.
func (b Budget) before() unit.Litres {
	return boiled(b.Vent, b.VentRate) + max(b.TakenUp, 0) + max(b.Left, 0)
}

func boiled(d time.Duration, rate unit.LitresPerHour) unit.Litres {
	return unit.Litres(max(d.Hours(), 0) * max(float64(rate), 0))
}
