package grain_test

import (
	"fmt"

	"ryebell/internal/calc/grain"
)

// What a plan assumes of oats as long as the collective has not weighed its own.
func Example() {
	k := grain.Oats
	y := k.SoakedYield()
	fmt.Printf("%v: %.0f %% moisture as bought, %.2f kg/l dry\n",
		k, k.StorageMoisture().Percent(), k.DryDensity())
	fmt.Printf("soaked it weighs %.2f times as much (%.2f to %.2f)\n", y.Mid, y.Lo, y.Hi)
	// Output:
	// oats: 12 % moisture as bought, 0.41 kg/l dry
	// soaked it weighs 2.05 times as much (1.90 to 2.20)
}
