package kitchen

import (
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// Route is the way a culture will be put on the grain. It decides how wet the
// grain should be.
type Route uint8

// The routes; the zero Route means that none was said.
const (
	LiquidCulture Route = iota + 1
	Agar
	GrainToGrain
	Spores
)

// Routes lists them all.
func Routes() []Route { return []Route{LiquidCulture, Agar, GrainToGrain, Spores} }

// String returns the word for logs and the book.
func (r Route) String() string {
	switch r {
	case LiquidCulture:
		return "liquid culture"
	case Agar:
		return "agar"
	case GrainToGrain:
		return "grain to grain"
	case Spores:
		return "spores"
	}
	return "route not said"
}

// Method is the way grain gets its water.
type Method uint8

// Measured grain takes a weighed amount of water, in the container or simmered
// in until it is gone. Soaked grain takes what it will from plenty of water and
// is drained.
const (
	Measured Method = iota + 1
	Soaked
)

// String returns the word for logs and the book.
func (m Method) String() string {
	switch m {
	case Measured:
		return "measured"
	case Soaked:
		return "soaked"
	}
	return "method not said"
}

// Item is one line of what somebody wants: so many containers of a kind, or an
// amount of loose grain. Zero fields were not said.
type Item struct {
	// Count is the number of containers; 1 for loose grain.
	Count     int       `json:"count"`
	Container Container `json:"container,omitzero"`
	// Mass is the mass of grain in each container where it was said apart from
	// the container's size (four bags, 2.5 kg wet in each), or the loose amount.
	Mass  unit.Grams `json:"mass,omitzero"`
	Basis Basis      `json:"basis,omitzero"`

	Grain grain.Kind `json:"grain,omitzero"`
	Route Route      `json:"route,omitzero"`
	// Moisture (wet basis) or Ratio (water per dry grain) where one was said;
	// never both.
	Moisture unit.Fraction `json:"moisture,omitzero"`
	Ratio    unit.Ratio    `json:"ratio,omitzero"`
	// Parched is set when no moisture, or no water, was asked for in so many
	// words, which a zero can't tell from nothing said. It is refused.
	Parched bool `json:"parched,omitzero"`
	// Gypsum is a share of the dry grain; NoGypsum takes none even where the
	// kitchen usually does.
	Gypsum   unit.Fraction `json:"gypsum,omitzero"`
	NoGypsum bool          `json:"noGypsum,omitzero"`
}

// Order is what somebody wants cooked.
type Order struct {
	Items []Item `json:"items"`
	// Cooker is the name of the cooker wanted, if one was said.
	Cooker string `json:"cooker,omitzero"`
	// Hold is the hold asked for with the order; zero takes the kitchen's.
	Hold time.Duration `json:"hold,omitzero"`
}

// Merged is the order with the items that differ in nothing but their number, or in
// the amount of loose grain, made one.
func (o Order) Merged() Order {
	items := make([]Item, 0, len(o.Items))
	at := make(map[Item]int, len(o.Items))
	for _, it := range o.Items {
		kind := it
		if kind.Count = 0; it.loose() {
			kind.Mass = 0
		}
		i, ok := at[kind]
		switch {
		case !ok:
			at[kind] = len(items)
			items = append(items, it)
		case it.loose():
			items[i].Mass += it.Mass
		default:
			items[i].Count += it.Count
		}
	}
	o.Items = items
	return o
}

// Supply is grain at hand, for a plan worked out the other way round: as many
// containers as it fills. Container.Sized may be false for several sizes at
// once (Containers then lists them all).
type Supply struct {
	Dry        unit.Grams  `json:"dry"`
	Containers []Container `json:"containers"`
	Grain      grain.Kind  `json:"grain,omitzero"`
	Route      Route       `json:"route,omitzero"`
}
