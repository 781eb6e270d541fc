package hydration_test

import (
	"fmt"

	"ryebell/internal/calc/hydration"
	"ryebell/internal/calc/unit"
)

// Three bags of 5 lb wetted grain, to be inoculated from agar (0.46), shown in
// steps of the kitchen's scale.
func Example() {
	bag, err := hydration.Measured(unit.Pounds(5), 0.46)
	if err != nil {
		fmt.Println(err)
		return
	}
	shown := hydration.Round(bag, 5)
	fmt.Printf("each: %.0f g dry + %.0f g water = %.0f g\n", shown.Dry, shown.Water, shown.Wetted)

	all := bag.Times(3)
	fmt.Printf("together: %.2f kg dry, %.2f kg water\n", all.Dry.Kilograms(), all.Water.Kilograms())

	moisture, _ := hydration.Moisture(0.46, 0.12)
	fmt.Printf("moisture: %.1f %%\n", moisture.Percent())
	fmt.Printf("dividing by 1.4 overshoots by %.1f %%\n", 100*(hydration.ShortcutOvershoot(0.46)-1))
	// Output:
	// each: 1555 g dry + 715 g water = 2270 g
	// together: 4.66 kg dry, 2.14 kg water
	// moisture: 39.7 %
	// dividing by 1.4 overshoots by 4.3 %
}

// Eight kilograms of dry rye, 3 lb bags, liquid culture (0.40): how many?
func ExampleContainers() {
	bag, err := hydration.Measured(unit.Pounds(3), 0.40)
	if err != nil {
		fmt.Println(err)
		return
	}
	n, left := hydration.Containers(unit.Kilograms(8), bag.Dry)
	fmt.Printf("%d bags, %.0f g left\n", n, left)
	// Output:
	// 8 bags, 224 g left
}

// Jars the other way: soaked rye drains at some 1.9 times its dry weight.
func ExampleSoaked() {
	fill := hydration.JarFill(unit.USQuarts(1), 0.30, 0.68)
	jar, err := hydration.Soaked(fill, 1.9)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("a quart holds %.0f g, that is %.0f g dry\n", jar.Wetted, jar.Dry)
	// Output:
	// a quart holds 450 g, that is 237 g dry
}
