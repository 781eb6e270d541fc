package kitchen

import "strings"

// growsThrough is after how many days a unit of a species is expected grown through,
// at the earliest and the latest (common practice, no source).
func growsThrough(species string, v Vessel) (lo, hi int) {
	slow := strings.Contains(species, "shiitake") || strings.Contains(species, "maitake")
	switch {
	case slow && v == Bag:
		return 20, 45
	case slow:
		return 16, 35
	case v == Bag:
		return 12, 25
	}
	return 8, 21
}

// keepsChilled is how many days grown spawn keeps in the fridge, at least and at most
// (common practice, no source).
func keepsChilled(string) (lo, hi int) { return 28, 56 }

// growsLike is the species that a variety grows like.
func growsLike(species string) string {
	switch s := strings.ToLower(species); s {
	case "blue oyster", "pearl oyster", "grey oyster":
		return "oyster"
	}
	return species
}
