package unit

// Exact: the inch is 25.4 mm, the foot 12 inches (NIST SP 811, appendix B).
const (
	metresPerInch       = 0.0254
	metresPerFoot       = 12 * metresPerInch
	centimetresPerMetre = 100
)

// Metres is a length, or a height over the sea, in metres.
type Metres float64

// Feet makes a length of ft feet, 0.3048 m each (exact).
func Feet(ft float64) Metres { return Metres(ft * metresPerFoot) }

// Inches makes a length of in inches, 25.4 mm each (exact).
func Inches(in float64) Metres { return Metres(in * metresPerInch) }

// Centimetres makes a length of cm centimetres.
func Centimetres(cm float64) Metres { return Metres(cm / centimetresPerMetre) }

// Feet is the length in feet.
func (m Metres) Feet() float64 { return float64(m) / metresPerFoot }

// Inches is the length in inches.
func (m Metres) Inches() float64 { return float64(m) / metresPerInch }

// Centimetres is the length in centimetres.
func (m Metres) Centimetres() float64 { return float64(m) * centimetresPerMetre }
