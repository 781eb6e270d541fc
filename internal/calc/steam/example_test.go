package steam_test

import (
	"fmt"

	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// The same 15 psi at the sea and at 1600 m, and what would make up for it.
func Example() {
	sea, err := steam.Temperature(unit.PSI(15), 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	high, err := steam.Temperature(unit.PSI(15), 1600)
	if err != nil {
		fmt.Println(err)
		return
	}
	gauge, err := steam.GaugeFor(sea, 1600)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("15 psi: %.1f °C at the sea, %.1f °C at 1600 m\n", sea, high)
	fmt.Printf("%.1f psi would be as hot up there\n", gauge.PSI())
	// Output:
	// 15 psi: 121.0 °C at the sea, 118.1 °C at 1600 m
	// 17.6 psi would be as hot up there
}
