package unit_test

import (
	"fmt"

	"ryebell/internal/calc/unit"
)

// What people say becomes a base unit once, and what is shown comes from it.
func Example() {
	bag := unit.Pounds(5)
	fmt.Printf("a 5 lb bag: %.0f g\n", bag)

	jar := unit.USQuarts(1)
	fmt.Printf("a quart jar: %.0f ml\n", jar.Millilitres())

	air := unit.Pascals(83523.5) // at 1600 m
	fmt.Printf("15 psi up there: %.1f kPa\n", unit.PSI(15).Above(air))

	fmt.Printf("115 °F: %.1f °C\n", unit.Fahrenheit(115))
	// Output:
	// a 5 lb bag: 2268 g
	// a quart jar: 946 ml
	// 15 psi up there: 186.9 kPa
	// 115 °F: 46.1 °C
}
