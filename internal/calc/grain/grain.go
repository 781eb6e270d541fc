package grain

import (
	"fmt"
	"slices"
	"time"

	"ryebell/internal/calc/unit"
)

// Kind is a kind of grain; the zero Kind means that none was said. The order
// never changes, new kinds go to the end.
type Kind uint8

// The kinds, the most usual first. Birdseed is a mixture, led by millet.
const (
	Rye Kind = iota + 1
	Wheat
	Oats
	Millet
	Sorghum
	Maize
	Barley
	BrownRice
	Birdseed
)

// Yield is how many times its dry weight a grain weighs once soaked, simmered
// and drained: the usual low, middle and high figure.
type Yield struct{ Lo, Mid, Hi unit.Yield }

// Simmer is how long a grain simmers when it starts dry: the usual shortest and
// longest time. Both are zero for a grain that usually isn't simmered.
type Simmer struct{ Lo, Hi time.Duration }

// All lists every kind in the order of the constants. The slice is the
// caller's.
func All() []Kind {
	kinds := make([]Kind, 0, len(table)-1)
	for k := Rye; int(k) < len(table); k++ {
		kinds = append(kinds, k)
	}
	return kinds
}

// Named finds the kind whose String is name.
func Named(name string) (Kind, bool) {
	for _, k := range All() {
		if k.String() == name {
			return k, true
		}
	}
	return 0, false
}

// String is the canonical name, one or two lower-case words; "unsaid" for the
// zero Kind.
func (k Kind) String() string {
	if k == 0 {
		return "unsaid"
	}
	return k.facts().name
}

// StorageMoisture is the water in the grain as bought, wet basis: 12 % for every
// kind until the collective knows better. Cereals are kept at 12 to 14 % (IRRI
// Rice Knowledge Bank, "Moisture content for safe storage"); a point more or
// less moves the final moisture by about 0.7 point.
func (k Kind) StorageMoisture() unit.Fraction { return k.facts().moisture }

// DryDensity is the bulk density of the dry grain as bought. It is not that of
// wetted grain, for which no table exists.
func (k Kind) DryDensity() unit.KgPerLitre { return k.facts().density }

// SoakedYield is drained weight over dry weight (common practice; the middle is
// the mean of the usual range).
func (k Kind) SoakedYield() Yield { return k.facts().yield }

// Simmer is the usual simmering time from dry (common practice). Maize is
// simmered after a day's soaking.
func (k Kind) Simmer() Simmer { return k.facts().simmer }

// Synonyms lists what growers call the grain, lower case, singular and plural
// as usual, the canonical name first. The slice is the caller's.
func (k Kind) Synonyms() []string { return slices.Clone(k.facts().synonyms) }

// Misspellings lists frequent wrong spellings that are too short, or too far
// off, to be mended by likeness. The slice is the caller's.
func (k Kind) Misspellings() []string { return slices.Clone(k.facts().misspellings) }

// Unsuited lists things that share the grain's name and won't do: broken,
// pearled, rolled, or another plant. For a kind answer, never as a synonym. The
// slice is the caller's.
func (k Kind) Unsuited() []string { return slices.Clone(k.facts().unsuited) }

// MarshalText writes the canonical name, and nothing for the zero Kind.
func (k Kind) MarshalText() ([]byte, error) {
	if k == 0 {
		return nil, nil
	}
	return []byte(k.facts().name), nil
}

// UnmarshalText reads what MarshalText wrote; any other name is an error.
func (k *Kind) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*k = 0
		return nil
	}
	named, ok := Named(string(text))
	if !ok {
		return fmt.Errorf("grain: no kind named %q", text)
	}
	*k = named
	return nil
}

// facts panics for a kind that doesn't exist, and for the zero Kind: a plan
// needs a grain, and which one is the caller's business.
func (k Kind) facts() *facts {
	if k == 0 || int(k) >= len(table) {
		panic(fmt.Sprintf("grain: no kind %d", uint8(k)))
	}
	return &table[k]
}
