package lethality_test

import (
	"fmt"
	"time"

	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/unit"
)

// A run at 1600 m: 40 min at 15 psi, a dip to 11 psi and back within 8 min, and
// 90 min more. Two figures are all that the readings are worth.
func ExampleFromGauge() {
	readings := []lethality.GaugeReading{
		{After: 0, Gauge: unit.PSI(15)},
		{After: 40 * time.Minute, Gauge: unit.PSI(15)},
		{After: 44 * time.Minute, Gauge: unit.PSI(11)},
		{After: 48 * time.Minute, Gauge: unit.PSI(15)},
		{After: 138 * time.Minute, Gauge: unit.PSI(15)},
	}
	f0, err := lethality.FromGauge(readings, 1600)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("F0 of the steam: about %.0f min\n", f0.Minutes())
	// Output:
	// F0 of the steam: about 67 min
}

// Ten degrees less take ten times as long.
func ExampleEquivalent() {
	fmt.Println(lethality.Equivalent(15*time.Minute, 121.1, 111.1))
	// Output:
	// 2h30m0s
}
