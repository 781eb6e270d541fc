package coolingtest

import (
	"math"

	"ryebell/internal/calc/unit"
)

// Body is one container of grain, as the solver sees it: SI units throughout. It
// is a cylinder when Radius is set, else a brick of the edges Across, Deep and
// Height.
type Body struct {
	Radius, Across, Deep, Height unit.Metres

	Conductivity float64 // W/(m K) at 60 °C
	Steaming     float64 // share by which it is higher at 100 than at 20 °C, 0 or more
	HeatCapacity float64 // J/(m³ K), voids included
	Glass        float64 // J/(m² K) of wall around the sides, 0 for a bag

	// The faces. A cylinder has no Back; the round is its Side. A brick's Side are
	// the two faces at the ends of Across, its Back the two at the ends of Deep.
	Side, Back, Top, Bottom Face
}

// IsJar reports whether the body is a cylinder.
func (b Body) IsJar() bool { return b.Radius > 0 }

// Volume is in litres.
func (b Body) Volume() unit.Litres {
	floor := float64(b.Across * b.Deep)
	if b.IsJar() {
		floor = math.Pi * float64(b.Radius*b.Radius)
	}
	return unit.Litres(1000 * floor * float64(b.Height))
}

// Face says how a face loses heat. What the outer surface at temperature s gives
// to surroundings at a is Share·[Contact + Film·|s−a|^¼ + radiation]·(s−a);
// Resistance lies between that surface and the grain.
type Face struct {
	Share      float64 // of the face that is free, 0 to 1; 0 loses nothing
	Contact    float64 // W/(m² K), constant
	Film       float64 // W/(m² K^1.25), natural convection
	Emissivity float64 // 0 to 1
	Resistance float64 // m² K/W
}

// stefanBoltzmann is in W/(m² K⁴), exact since 2019 to the digits given (CODATA).
const (
	stefanBoltzmann = 5.670374419e-8
	zeroCelsius     = 273.15
)

// coefficient is in W/(m² K), for an outer surface at s in surroundings at a, both
// °C. A draught, in W/(m² K), reaches only faces that the air washes.
func (f Face) coefficient(s, a, draught float64) float64 {
	h := f.Contact
	if f.Film > 0 {
		h += draught + f.Film*math.Sqrt(math.Sqrt(math.Abs(s-a)))
	}
	if f.Emissivity > 0 {
		ks, ka := s+zeroCelsius, a+zeroCelsius
		h += f.Emissivity * stefanBoltzmann * (ks*ks + ka*ka) * (ks + ka)
	}
	return f.Share * h
}

// inPot is the face while the pot is closed: vapour and air wash it all alike, and
// what lies between it and the grain stays.
func (f Face) inPot(share, inside float64) Face {
	return Face{Share: share, Contact: inside, Resistance: f.Resistance}
}

// conductivity is in W/(m K) at t in °C. The vapour's part grows with the square
// of the way from 20 to 100 °C: slow at first, as the vapour pressure does.
func (b Body) conductivity(t float64) float64 {
	hot := max(t-20, 0) / 80
	return b.Conductivity * (1 + b.Steaming*hot*hot) / (1 + b.Steaming/4)
}
