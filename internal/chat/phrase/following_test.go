package phrase

import (
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// anyFollowing is something said about an order just planned.
func anyFollowing(t *rapid.T) Intent {
	if m := anyDeadline(t); m != nil {
		return StartAt{*m}
	}
	if rapid.Bool().Draw(t, "usual") {
		return Usual{OutBy: anyDeadline(t), Cooker: pick(t, "cooker", "", "big pot"), Times: rapid.IntRange(0, 9).Draw(t, "times"), Fix: pick(t, "fix", kitchen.Item{},
			kitchen.Item{Count: 6}, kitchen.Item{Grain: grain.Millet}, kitchen.Item{Route: kitchen.Agar, Count: 4}, anyItem(t, anyGrain(t), anyRoute(t)),
			kitchen.Item{Count: 2, Container: kitchen.Container{Vessel: kitchen.Jar}}, kitchen.Item{Container: anyContainer(t)})}
	}
	return pick[Intent](t, "following", PlanIt{}, PlanIt{OutBy: anyDeadline(t)}, PlanIt{Cooker: "big pot"}, Why{Part: PartWater, Which: Which{Cooker: "big pot"}}, Why{Part: PartHold, Of: kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(5)}}, Cook{Load: 2}, Cook{Load: NextLoad, Cooker: "big pot"}, Why{Part: PartHold}, Why{Part: PartWater}, Why{Part: PartAmounts}, Add{Order: anyOrder(t), OutBy: anyDeadline(t)}, Drop{anyContainer(t), Named}, Drop{anyContainer(t), Others},
		Drop{kitchen.Container{Vessel: kitchen.Jar}, Named}, Drop{kitchen.Container{Vessel: kitchen.Bag}, Others})
}
