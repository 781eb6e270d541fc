package unit

// A pound-force per square inch follows from the exact pound, inch and standard
// gravity 9.80665 m/s² (NIST SP 811, appendix B); the standard atmosphere is
// exactly 101 325 Pa. The conventional inch of mercury (0 °C) is rounded by its
// source to 3386.39 Pa.
const (
	kPaPerPSI            = gramsPerPound / 1000 * 9.80665 / (0.0254 * 0.0254) / 1000
	kPaPerBar            = 100
	kPaPerAtmosphere     = 101.325
	kPaPerInchOfMercury  = 3.38639
	pascalsPerKilopascal = 1000
)

// GaugeKPa is a pressure over the surrounding air, in kilopascals: what the
// gauge on a lid shows.
type GaugeKPa float64

// AbsoluteKPa is a pressure over nothing, in kilopascals.
type AbsoluteKPa float64

// PSI makes a gauge pressure of psi pounds-force per square inch.
func PSI(psi float64) GaugeKPa { return GaugeKPa(psi * kPaPerPSI) }

// Bar makes a gauge pressure of bar bars, 100 kPa each.
func Bar(bar float64) GaugeKPa { return GaugeKPa(bar * kPaPerBar) }

// KPa makes a gauge pressure of kpa kilopascals.
func KPa(kpa float64) GaugeKPa { return GaugeKPa(kpa) }

// Pascals makes an absolute pressure of pa pascals.
func Pascals(pa float64) AbsoluteKPa { return AbsoluteKPa(pa / pascalsPerKilopascal) }

// Atmospheres makes an absolute pressure of n standard atmospheres.
func Atmospheres(n float64) AbsoluteKPa { return AbsoluteKPa(n * kPaPerAtmosphere) }

// InchesOfMercury makes an absolute pressure of n conventional inches of
// mercury, good to 2e-5: barometers of weather reports.
func InchesOfMercury(n float64) AbsoluteKPa { return AbsoluteKPa(n * kPaPerInchOfMercury) }

// Above is the absolute pressure of a gauge reading taken in air of pressure
// atm. It is the only way from one to the other.
func (g GaugeKPa) Above(atm AbsoluteKPa) AbsoluteKPa { return AbsoluteKPa(g) + atm }

// Over is the gauge pressure that p shows in air of pressure atm; negative when
// p is under it.
func (p AbsoluteKPa) Over(atm AbsoluteKPa) GaugeKPa { return GaugeKPa(p - atm) }

// PSI is the gauge pressure in pounds-force per square inch.
func (g GaugeKPa) PSI() float64 { return float64(g) / kPaPerPSI }

// Bar is the gauge pressure in bars.
func (g GaugeKPa) Bar() float64 { return float64(g) / kPaPerBar }

// PSI is the absolute pressure in pounds-force per square inch.
func (p AbsoluteKPa) PSI() float64 { return float64(p) / kPaPerPSI }

// Pascals is the absolute pressure in pascals.
func (p AbsoluteKPa) Pascals() float64 { return float64(p) * pascalsPerKilopascal }
