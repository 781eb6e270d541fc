package hold_test

import (
	"fmt"
	"time"

	"ryebell/internal/calc/hold"
	"ryebell/internal/calc/unit"
)

// The usual 90 min in a kitchen at 1600 m.
func ExampleScale() {
	s, err := hold.Scale(90*time.Minute, 1600, unit.PSI(15))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("steam of %.1f °C: %.0f min\n", s.Temperature, s.Hold.Minutes())
	fmt.Printf("or the usual time at %.1f psi, if the cooker is rated for it\n", s.SameTemperatureGauge.PSI())
	fmt.Println("beyond the limit:", s.BeyondLimit)
	// Output:
	// steam of 118.1 °C: 175 min
	// or the usual time at 17.6 psi, if the cooker is rated for it
	// beyond the limit: false
}
