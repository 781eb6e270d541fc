package phrase

import (
	"pgregory.net/rapid"

	"ryebell/internal/kitchen"
)

// anyFollowing is something said about an order just planned.
func anyFollowing(t *rapid.T) Intent {
	if m := anyDeadline(t); m != nil {
		return StartAt{*m}
	}
	return pick[Intent](t, "following", Add{Order: anyOrder(t), OutBy: anyDeadline(t)}, Drop{anyContainer(t), Named}, Drop{anyContainer(t), Others},
		Drop{kitchen.Container{Vessel: kitchen.Jar}, Named}, Drop{kitchen.Container{Vessel: kitchen.Bag}, Others})
}
