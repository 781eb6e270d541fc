package kitchen

import (
	"strconv"
	"time"

	"ryebell/internal/calc/unit"
)

// UnitRef names one unit: #12.3. The zero UnitRef names none.
type UnitRef struct {
	Run  RunNo  `json:"run"`
	Unit UnitNo `json:"unit"`
}

// String prints it as people write it.
func (u UnitRef) String() string { return u.Run.String() + "." + strconv.Itoa(int(u.Unit)) }

// Ref is the same as a reference that can hold more units.
func (u UnitRef) Ref() Ref { return Ref{Run: u.Run, Units: []UnitNo{u.Unit}} }

// UnitEntry is an entry about units of a load, under the subject of its run. The
// units are said one by one, in the order in which they were named: which were
// meant by all of 12 is settled when it is told. The cases are the types of this
// file.
//
//sumtype:decl
type UnitEntry interface {
	Entry
	// told is what the entry says of each of its units.
	told() UnitKind
	// of are the units it is about; none for all of the load.
	of() []UnitNo
}

// Arrived says that units which no run made are on the shelf: bought, brought, or
// older than the book. They stand under a number of the runs' own series and nobody
// has seen them cooked.
type Arrived struct {
	Run   RunNo `json:"run"`
	Order Order `json:"order"`
	// Since is from when their age counts: when they were inoculated or cooked, as
	// far as anybody knows; zero for when it was told.
	Since time.Time `json:"since,omitzero"`
	// Culture is what grows on them; empty for cooked grain.
	Culture string `json:"culture,omitzero"`
	// Species is what that is, where the culture has a name of its own.
	Species string `json:"species,omitzero"`
	// State is how far they were; zero for cooked, with a culture for inoculated.
	State UnitState `json:"state,omitzero"`
	// From is who they came from, in the words of who told it.
	From string `json:"from,omitzero"`
	// Room is where it was told, as in [RoomJoined].
	Room int64 `json:"room,omitzero"`
}

// Inoculated says that a culture was put on units. Either Culture names it or From
// is the grown unit that it was taken of, grain to grain; neither when nobody said.
type Inoculated struct {
	Units   []UnitNo `json:"units"`
	Culture string   `json:"culture,omitzero"`
	From    UnitRef  `json:"from,omitzero"`
	// Species is what grows on them, as far as it was known when it was told.
	Species string `json:"species,omitzero"`
	Route   Route  `json:"route,omitzero"`
	// Volume is how much went into each.
	Volume unit.Litres `json:"l,omitzero"`
}

// BlankSet says that units are left without a culture, to tell the cook from it.
type BlankSet struct {
	Units []UnitNo `json:"units"`
}

// GrowthSeen says how much of the grain is overgrown by eye. All of it is grown
// through.
type GrowthSeen struct {
	Units []UnitNo      `json:"units"`
	Share unit.Fraction `json:"share"`
}

// Shaken says that units were shaken.
type Shaken struct {
	Units []UnitNo `json:"units"`
}

// SignSeen says what units look or smell like.
type SignSeen struct {
	Units []UnitNo `json:"units"`
	Sign  Sign     `json:"sign"`
}

// GrownThrough says that units are ready to be used.
type GrownThrough struct {
	Units []UnitNo `json:"units"`
}

// UnitsUsed says that units were used, On what is in the words of who told it. Share
// is how much of each whole unit went into it; zero for all that was left.
type UnitsUsed struct {
	Units []UnitNo      `json:"units"`
	On    string        `json:"on,omitzero"`
	Share unit.Fraction `json:"share,omitzero"`
}

// UnitsGiven says that units went to somebody outside.
type UnitsGiven struct {
	Units []UnitNo `json:"units"`
	To    string   `json:"to,omitzero"`
}

// UnitsDiscarded says that units were thrown out.
type UnitsDiscarded struct {
	Units []UnitNo `json:"units"`
}

// UnitsGone says that units are no more, and nobody knows how.
type UnitsGone struct {
	Units []UnitNo `json:"units"`
}

// UnitsMoved says where units stand now, by the collective's own name of the place.
type UnitsMoved struct {
	Units []UnitNo `json:"units"`
	Place string   `json:"place"`
}

// UnitNamed gives a unit a name of its own. An empty name takes it away.
type UnitNamed struct {
	Unit UnitNo `json:"unit"`
	Name string `json:"name,omitzero"`
}

// UnitsTagged puts free words on units, without the # they are typed with. No Units
// means all of the load.
type UnitsTagged struct {
	Units []UnitNo `json:"units,omitempty"`
	Tags  []string `json:"tags"`
}

// Spot is where a unit stood in its load.
type Spot uint8

// The spots. The inner ones heat up last.
const (
	TopLayer Spot = iota + 1
	BottomLayer
	InnerOnes
	OuterOnes
)

// String returns the word for logs and the book.
func (s Spot) String() string {
	switch s {
	case TopLayer:
		return "top"
	case BottomLayer:
		return "bottom"
	case InnerOnes:
		return "inner"
	case OuterOnes:
		return "outer"
	}
	return "spot not said"
}

// UnitsStood says where units stood in the cooker.
type UnitsStood struct {
	Units []UnitNo `json:"units"`
	Where Spot     `json:"where"`
}

// LotKind is what a lot is a batch of.
type LotKind uint8

// The kinds of lots that a load is made of.
const (
	GrainLot LotKind = iota + 1
	BagLot
	LidLot // a kind of lid or filter
)

// String returns the word for logs and the book.
func (k LotKind) String() string {
	switch k {
	case GrainLot:
		return "grain"
	case BagLot:
		return "bags"
	case LidLot:
		return "lids or filters"
	}
	return "lot not said"
}

// LotSaid says which lot went into a load, by the name that the collective gives it.
// No Units means all of the load.
type LotSaid struct {
	Units []UnitNo `json:"units,omitempty"`
	What  LotKind  `json:"what"`
	Name  string   `json:"name"`
}

func (Arrived) entry()        {}
func (Inoculated) entry()     {}
func (BlankSet) entry()       {}
func (GrowthSeen) entry()     {}
func (Shaken) entry()         {}
func (SignSeen) entry()       {}
func (GrownThrough) entry()   {}
func (UnitsUsed) entry()      {}
func (UnitsGiven) entry()     {}
func (UnitsDiscarded) entry() {}
func (UnitsGone) entry()      {}
func (UnitsMoved) entry()     {}
func (UnitNamed) entry()      {}
func (UnitsTagged) entry()    {}
func (UnitsStood) entry()     {}
func (LotSaid) entry()        {}

func (Arrived) of() []UnitNo          { return nil }
func (e Inoculated) of() []UnitNo     { return e.Units }
func (e BlankSet) of() []UnitNo       { return e.Units }
func (e GrowthSeen) of() []UnitNo     { return e.Units }
func (e Shaken) of() []UnitNo         { return e.Units }
func (e SignSeen) of() []UnitNo       { return e.Units }
func (e GrownThrough) of() []UnitNo   { return e.Units }
func (e UnitsUsed) of() []UnitNo      { return e.Units }
func (e UnitsGiven) of() []UnitNo     { return e.Units }
func (e UnitsDiscarded) of() []UnitNo { return e.Units }
func (e UnitsGone) of() []UnitNo      { return e.Units }
func (e UnitsMoved) of() []UnitNo     { return e.Units }
func (e UnitNamed) of() []UnitNo      { return []UnitNo{e.Unit} }
func (e UnitsTagged) of() []UnitNo    { return e.Units }
func (e UnitsStood) of() []UnitNo     { return e.Units }
func (e LotSaid) of() []UnitNo        { return e.Units }

func (Arrived) told() UnitKind        { return SaidArrived }
func (Inoculated) told() UnitKind     { return SaidInoculated }
func (BlankSet) told() UnitKind       { return SaidBlank }
func (Shaken) told() UnitKind         { return SaidShaken }
func (e SignSeen) told() UnitKind     { return e.Sign.says() }
func (GrownThrough) told() UnitKind   { return SaidGrownThrough }
func (UnitsGiven) told() UnitKind     { return SaidGiven }
func (UnitsDiscarded) told() UnitKind { return SaidDiscarded }
func (UnitsGone) told() UnitKind      { return SaidGone }
func (UnitsMoved) told() UnitKind     { return SaidMoved }
func (UnitNamed) told() UnitKind      { return SaidNamed }
func (UnitsTagged) told() UnitKind    { return SaidTagged }
func (UnitsStood) told() UnitKind     { return SaidStood }
func (LotSaid) told() UnitKind        { return SaidLot }

func (e GrowthSeen) told() UnitKind {
	if e.Share >= 1 {
		return SaidGrownThrough
	}
	return SaidGrowth
}

func (e UnitsUsed) told() UnitKind {
	if e.Share > 0 && e.Share < 1 {
		return SaidPartUsed
	}
	return SaidUsed
}

// ofUnits is the entry about other units.
func ofUnits(e UnitEntry, units []UnitNo) UnitEntry {
	switch e := e.(type) {
	case Arrived:
		return e
	case Inoculated:
		e.Units = units
		return e
	case BlankSet:
		return BlankSet{units}
	case GrowthSeen:
		e.Units = units
		return e
	case Shaken:
		return Shaken{units}
	case SignSeen:
		e.Units = units
		return e
	case GrownThrough:
		return GrownThrough{units}
	case UnitsUsed:
		e.Units = units
		return e
	case UnitsGiven:
		e.Units = units
		return e
	case UnitsDiscarded:
		return UnitsDiscarded{units}
	case UnitsGone:
		return UnitsGone{units}
	case UnitsMoved:
		e.Units = units
		return e
	case UnitNamed:
		e.Unit = units[0]
		return e
	case UnitsTagged:
		e.Units = units
		return e
	case UnitsStood:
		e.Units = units
		return e
	case LotSaid:
		e.Units = units
		return e
	}
	panic("entry of units without units")
}
