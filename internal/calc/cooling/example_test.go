package cooling_test

import (
	"fmt"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/unit"
)

// Three bags of 5 lb, at zero at 17:10, lifted out at 18:00: when, and what a reading
// of the skin at 21:30 says.
func Example() {
	zero := time.Date(2026, time.March, 2, 17, 10, 0, 0, time.UTC)
	lifted := 50 * time.Minute
	bag, err := cooling.Bag(unit.Pounds(5))
	if err != nil {
		fmt.Println(err)
		return
	}
	q := cooling.Question{
		Body: bag, Elevation: 250, Room: cooling.ToldRoom(20), Spacing: cooling.Close,
		Lifted: &lifted, Limit: 27,
	}
	say := func() {
		f, err := cooling.New(q)
		if err != nil {
			fmt.Println(err)
			return
		}
		clock := func(d time.Duration) string { return zero.Add(d.Round(30 * time.Minute)).Format("Mon 15:04") }
		c := f.Cool()
		fmt.Printf("about %s, between %s and %s\n", clock(c.Mid), clock(c.Lo), clock(c.Hi))
		core := f.At(cooling.Core, 260*time.Minute)
		fmt.Printf("at 21:30 the core is at about %.0f °C\n", core.Mid)
	}
	say()
	q.Readings = append(q.Readings, cooling.Reading{After: 260 * time.Minute, Temp: 39, Place: cooling.Skin})
	say()
	// Output:
	// about Tue 05:10, between Tue 02:40 and Tue 08:40
	// at 21:30 the core is at about 60 °C
	// about Tue 06:40, between Tue 04:10 and Tue 10:10
	// at 21:30 the core is at about 63 °C
}

// Two and a half hours at 15 psi: the middle of the same bag, by conduction alone.
func ExampleHeated() {
	bag, err := cooling.Bag(unit.Pounds(5))
	if err != nil {
		fmt.Println(err)
		return
	}
	heat, err := cooling.Heated(bag, 20, []lethality.TemperatureReading{
		{After: 0, Steam: 100}, {After: 20 * time.Minute, Steam: 121}, {After: 170 * time.Minute, Steam: 121},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("at least %.0f °C in the middle\n", heat.End)
	// Output:
	// at least 93 °C in the middle
}
