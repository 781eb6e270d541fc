package coolingtest_test

import (
	"fmt"
	"math/rand/v2"
	"time"

	"ryebell/internal/calc/cooling/coolingtest"
)

// A bag is drawn in a kitchen, cooled, and read twice.
func Example() {
	rng := rand.New(rand.NewPCG(2, 0))
	kitchen := coolingtest.DrawKitchen(rng)
	cooling := kitchen.Draw(rng, coolingtest.Bag5lb)
	curve := cooling.Run(cooling.LimitTold)

	took, _ := curve.ToLimit(cooling.LimitTold)
	fmt.Printf("lifted out after %v, cool after %v\n", cooling.LiftedOut.Round(time.Minute), took.Round(time.Hour))
	for _, after := range []time.Duration{4 * time.Hour, 8 * time.Hour} {
		fmt.Printf("%v: skin reads %.0f °C, core is at %.0f °C\n", after, curve.ReadSkin(after, rng), curve.CoreAt(after))
	}
	// Output:
	// lifted out after 22m0s, cool after 14h0m0s
	// 4h0m0s: skin reads 35 °C, core is at 68 °C
	// 8h0m0s: skin reads 26 °C, core is at 42 °C
}
