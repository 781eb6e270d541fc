package load_test

import (
	"fmt"
	"time"

	"ryebell/internal/calc/load"
)

// A pot of seven quarts or three 5 lb bags is asked to take four bags and four
// quarts: two loads, and a long day.
func Example() {
	pot := load.Capacity[string]{"quart": 7, "bag": 3}
	loads, err := load.Pack([]load.Item[string]{{Class: "quart", Count: 4}, {Class: "bag", Count: 4}}, pot)
	if err != nil {
		fmt.Println(err)
		return
	}
	var course []load.Durations
	for _, l := range loads {
		fmt.Println(l)
		course = append(course, load.BagLoad(150*time.Minute))
	}
	_, finish := load.Clock(course)
	fmt.Println("done after", finish)
	// Output:
	// [{bag 3}]
	// [{bag 1} {quart 4}]
	// done after 10h15m0s
}

// Two bags leave room for two quarts.
func ExampleRoom() {
	pot := load.Capacity[string]{"quart": 7, "bag": 3}
	n, err := load.Room(load.Load[string]{{Class: "bag", Count: 2}}, "quart", pot)
	fmt.Println(n, err)
	// Output:
	// 2 <nil>
}

// 150 minutes in a pot that boils off the usual 0.6 l an hour.
func ExampleWater() {
	fmt.Printf("%.1f l\n", load.Water(load.UsualBudget(150*time.Minute)))
	// Output:
	// 4.0 l
}
