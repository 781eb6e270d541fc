package wording

import (
	"slices"
	"strconv"
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// units is how the units of a run stand, those alike together: Units: 1-4 growing, 5
// cooked, the blank. Nothing while nobody has told of one.
func (v LogView) units() chat.Para {
	if _, told := newestTold(v.Units); !told {
		return nil
	}
	var words []string
	alike := map[string][]kitchen.UnitNo{}
	for _, u := range v.Units.All {
		w := unitStands(u)
		if len(alike[w]) == 0 {
			words = append(words, w)
		}
		alike[w] = append(alike[w], u.Ref.Unit)
	}
	var parts []string
	for _, w := range words {
		parts = append(parts, numbersOf(alike[w])+" "+w)
	}
	return say("Units: " + strings.Join(parts, "; ") + ".")
}

// unitTaps offers the story of the unit that was told of last.
func (v LogView) unitTaps() []chat.Button {
	u, told := newestTold(v.Units)
	if !told {
		return nil
	}
	return []chat.Button{tap("Log "+u.Ref.String(), "log "+u.Ref.String())}
}

// newestTold is the unit that somebody told of last; false when nobody told of any.
func newestTold(units kitchen.Units) (newest kitchen.Unit, told bool) {
	last := kitchen.UnitStep{}
	for _, u := range units.All {
		for _, st := range u.Steps {
			if st.Entry != nil && st.Kind != kitchen.SaidArrived && (!told || st.At.After(last.At)) {
				newest, last, told = u, st, true
			}
		}
	}
	return newest, told
}

// numbersOf prints numbers of units with those in a row as a range: 1-4, 6.
func numbersOf(units []kitchen.UnitNo) string {
	units = slices.Sorted(slices.Values(units))
	var parts []string
	for i := 0; i < len(units); {
		j := i
		for j+1 < len(units) && units[j+1] == units[j]+1 {
			j++
		}
		part := strconv.Itoa(int(units[i]))
		if j > i {
			part += "-" + strconv.Itoa(int(units[j]))
		}
		parts = append(parts, part)
		i = j + 1
	}
	return strings.Join(parts, ", ")
}
