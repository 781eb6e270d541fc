package hydration

import (
	"math"

	"ryebell/internal/calc/unit"
)

// The ranges in which the sums below are asked for. They are wide: inside them
// a figure can still be a bad idea, outside it is a slip of the pen.
const (
	MinMass unit.Grams = 1
	MaxMass unit.Grams = 100e6 // a hundred tonnes

	MaxRatio unit.Ratio = 3 // water per dry grain; porridge begins near 1.5

	MinYield unit.Yield = 1 // nothing taken up
	MaxYield unit.Yield = 1 + unit.Yield(MaxRatio)
)

// Charge is what goes into a container, or into many: Dry + Water = Wetted.
type Charge struct {
	Dry    unit.Grams // grain as bought, its own moisture included
	Water  unit.Grams // added, or taken up while soaking
	Wetted unit.Grams // what the container's grain weighs in the end
}

// Measured splits wetted grain into dry grain and water at r water per dry
// grain: D = M/(1+r), W = r·D.
//
// Valid from MinMass to MaxMass and for r from 0 to MaxRatio; else a
// *unit.RangeError. The formula follows from D + W = M and W = r·D.
func Measured(wetted unit.Grams, r unit.Ratio) (Charge, error) {
	if err := check(wetted, r); err != nil {
		return Charge{}, err
	}
	dry := wetted / unit.Grams(1+r)
	return Charge{Dry: dry, Water: wetted - dry, Wetted: wetted}, nil
}

// FromDry is the charge that dry grain at hand makes at r water per dry grain.
// Ranges and errors are those of Measured.
func FromDry(dry unit.Grams, r unit.Ratio) (Charge, error) {
	if err := check(dry, r); err != nil {
		return Charge{}, err
	}
	water := unit.Grams(r) * dry
	return Charge{Dry: dry, Water: water, Wetted: dry + water}, nil
}

// Soaked splits drained grain into dry grain and the water it took up, for a
// grain that comes out at k times its dry weight: D = M/k. The water to soak in
// is not this Water but plenty.
//
// Valid from MinMass to MaxMass and for k from MinYield to MaxYield; else a
// *unit.RangeError.
func Soaked(wetted unit.Grams, k unit.Yield) (Charge, error) {
	if err := unit.Check(unit.SoakedYield, k, MinYield, MaxYield); err != nil {
		return Charge{}, err
	}
	return Measured(wetted, unit.Ratio(k-1))
}

// SoakedFromDry is the charge that dry grain at hand becomes once soaked,
// simmered and drained at k times its weight. Ranges and errors are those of
// Soaked.
func SoakedFromDry(dry unit.Grams, k unit.Yield) (Charge, error) {
	if err := unit.Check(unit.SoakedYield, k, MinYield, MaxYield); err != nil {
		return Charge{}, err
	}
	return FromDry(dry, unit.Ratio(k-1))
}

// YieldOf is the soaked yield that a collective has seen: what drained weighed
// over what it weighed dry ("5 kg rye came out 9.4" is 1.88). Masses outside
// MinMass to MaxMass and yields outside MinYield to MaxYield are a
// *unit.RangeError.
func YieldOf(dry, drained unit.Grams) (unit.Yield, error) {
	for _, m := range []unit.Grams{dry, drained} {
		if err := unit.Check(unit.Mass, m, MinMass, MaxMass); err != nil {
			return 0, err
		}
	}
	k := unit.Yield(drained / dry)
	return k, unit.Check(unit.SoakedYield, k, MinYield, MaxYield)
}

// Times is the charge of n containers like c.
func (c Charge) Times(n int) Charge {
	f := unit.Grams(n)
	return Charge{Dry: f * c.Dry, Water: f * c.Water, Wetted: f * c.Wetted}
}

// Plus is both charges together.
func (c Charge) Plus(d Charge) Charge {
	return Charge{Dry: c.Dry + d.Dry, Water: c.Water + d.Water, Wetted: c.Wetted + d.Wetted}
}

// Round shows a charge in steps of the kitchen's scale. Dry grain and water,
// which are what is weighed out, each go to the nearest step, so each is at most
// half a step off; the wetted weight is their sum and therefore adds up exactly
// and is at most one step off. (Rounding the sum too would save half a step
// there and print figures that don't add up.) A step that isn't positive leaves
// c as it is.
func Round(c Charge, step unit.Grams) Charge {
	if !(step > 0) {
		return c
	}
	dry, water := toStep(c.Dry, step), toStep(c.Water, step)
	return Charge{Dry: dry, Water: water, Wetted: dry + water}
}

// Containers is how many containers of dryEach dry grain can be filled from
// what is at hand, and what is left over, never negative. A billionth of a
// container is forgiven, so that ten times a tenth makes one. It fills none when
// dryEach isn't positive.
func Containers(atHand, dryEach unit.Grams) (n int, left unit.Grams) {
	if !(dryEach > 0) || !(atHand > 0) {
		return 0, max(atHand, 0)
	}
	whole := math.Floor(float64(atHand/dryEach) + 1e-9)
	n = int(min(whole, math.MaxInt32))
	return n, max(atHand-unit.Grams(n)*dryEach, 0)
}

// JarFill is the wetted grain in a jar: brim volume less the headspace, times
// the bulk density of wetted grain (common practice: no published density; a
// jar that the collective has weighed is better). headspace is the empty share
// of the brim volume, 0 to 1; outside it the result is that of the nearer end.
func JarFill(brim unit.Litres, headspace unit.Fraction, density unit.KgPerLitre) unit.Grams {
	filled := 1 - min(max(headspace, 0), 1)
	return density.Fill(brim * unit.Litres(filled))
}

// ShortcutOvershoot is how far the kitchen shortcut "divide the wetted weight by
// 1.4" overshoots the wanted weight when water then goes in at ratio r:
// (1+r)/1.4. It is 1 at r = 0.40 and 1.043 at 0.46.
func ShortcutOvershoot(r unit.Ratio) float64 { return (1 + float64(r)) / 1.4 }

func check(m unit.Grams, r unit.Ratio) error {
	if err := unit.Check(unit.Mass, m, MinMass, MaxMass); err != nil {
		return err
	}
	return unit.Check(unit.WaterRatio, r, 0, MaxRatio)
}

func toStep(g, step unit.Grams) unit.Grams {
	return unit.Grams(math.Round(float64(g/step))) * step
}
