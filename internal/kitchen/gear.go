package kitchen

import (
	"slices"
	"strings"
	"time"
)

// GearSubject is what is said of cookers' parts is about, and GearPrefix begins
// the keys of the pings.
const (
	GearSubject = "gear"
	GearPrefix  = "gear/"
)

// Part is a part of a cooker that is looked at. It is wider than a byte since JSON
// writes a list of bytes as one text.
type Part uint16

// The parts. The gas is the bottle on the stove, the stove its flame or its power;
// the valve is the one for safety, which is looked at after any overpressure.
const (
	Gasket Part = iota + 1
	Vent
	Gas
	Gauge
	Stove
	Valve
)

// String returns the word for logs and the book.
func (p Part) String() string {
	switch p {
	case Gasket:
		return "gasket"
	case Vent:
		return "vent"
	case Gas:
		return "gas"
	case Gauge:
		return "gauge"
	case Stove:
		return "stove"
	case Valve:
		return "safety valve"
	}
	return "part not said"
}

// GearFailed says that a part failed: the gasket leaked, the gas ran out, the vent
// was blocked, the gauge stuck. Run is the run it happened to; zero for none. How
// much a gauge is off is [GaugeReads].
type GearFailed struct {
	Cooker string `json:"cooker"`
	Part   Part   `json:"part"`
	Run    RunNo  `json:"run,omitzero"`
}

// GearChecked says that parts were looked at, mended or replaced, and are well.
type GearChecked struct {
	Cooker string `json:"cooker"`
	Parts  []Part `json:"parts"`
}

// Heats reports whether a pot gets no heat once the part has failed.
func (p Part) Heats() bool { return p == Gas || p == Stove }

// GearEntry is an entry about the parts of a cooker: the types of this file and
// [GaugeReads].
//
//sumtype:decl
type GearEntry interface {
	Entry
	gear()
}

func (GearFailed) entry()  {}
func (GearChecked) entry() {}

func (GearFailed) gear()  {}
func (GearChecked) gear() {}
func (GaugeReads) gear()  {}

// Gear is what is known of the parts of one cooker.
type Gear struct {
	Cooker string
	// Checked is when each part was last looked at, Failed when it failed since.
	Checked, Failed map[Part]time.Time
	// Told is when the cooker was first heard of here.
	Told time.Time
}

// FoldGear is what these records tell of the parts of each cooker, in the order of
// when it happened. Records of other things are passed over.
func FoldGear(records []Record) []Gear {
	records = slices.Clone(records)
	slices.SortStableFunc(records, func(a, b Record) int { return a.At.Compare(b.At) })
	var all []Gear
	for _, r := range records {
		entry, ok := r.Entry.(GearEntry)
		if !ok {
			continue
		}
		switch e := entry.(type) {
		case GearFailed:
			g := gearOf(&all, e.Cooker, r.At)
			g.Failed[e.Part] = r.At
		case GearChecked:
			g := gearOf(&all, e.Cooker, r.At)
			for _, p := range e.Parts {
				g.Checked[p] = r.At
				delete(g.Failed, p)
			}
		case GaugeReads:
			gearOf(&all, e.Cooker, r.At).Checked[Gauge] = r.At
		}
	}
	return all
}

func gearOf(all *[]Gear, cooker string, at time.Time) *Gear {
	i := slices.IndexFunc(*all, func(g Gear) bool { return sameName(g.Cooker, cooker) })
	if i < 0 {
		i = len(*all)
		*all = append(*all, Gear{Cooker: cooker, Checked: map[Part]time.Time{}, Failed: map[Part]time.Time{}, Told: at})
	}
	return &(*all)[i]
}

// GearAsk is what to look at before a cooker is put on.
type GearAsk struct {
	Cooker string
	// Parts are due today, Failed are those that failed and weren't mended.
	Parts, Failed []Part
}

// daily lists the parts that are looked at before the first cook of a day.
var daily = []Part{Gasket, Vent, Gas}

// GearDue is what to look at before a cook begins in a cooker: gasket, vent and gas
// before the first of a day, and whatever failed before any. Earlier are the runs
// that were begun in it. False when there is nothing to ask.
func GearDue(cooker string, known []Gear, earlier []Run, now time.Time, zone *time.Location) (GearAsk, bool) {
	ask := GearAsk{Cooker: cooker}
	var g Gear
	if i := slices.IndexFunc(known, func(g Gear) bool { return sameName(g.Cooker, cooker) }); i >= 0 {
		g = known[i]
	}
	first := !slices.ContainsFunc(earlier, func(r Run) bool {
		lit, ok := r.LastStep(KindHeatOn)
		return ok && sameName(r.Cooker, cooker) && sameDay(lit.At, now, zone)
	})
	for _, p := range []Part{Gasket, Vent, Gas, Gauge, Stove, Valve} {
		checked, looked := g.Checked[p]
		if _, bad := g.Failed[p]; bad {
			ask.Failed = append(ask.Failed, p)
		} else if first && slices.Contains(daily, p) && !(looked && sameDay(checked, now, zone)) {
			ask.Parts = append(ask.Parts, p)
		}
	}
	return ask, len(ask.Parts)+len(ask.Failed) > 0
}

func sameDay(a, b time.Time, zone *time.Location) bool {
	ay, am, ad := a.In(zone).Date()
	by, bm, bd := b.In(zone).Date()
	return ay == by && am == bm && ad == bd
}

// Wants is the yearly ping to have a dial gauge checked, a year after it last was or
// the cooker was first heard of. A weight doesn't drift.
func (g Gear) Wants(k CookerIs) []Ping {
	if k.Gauge == Weight {
		return nil
	}
	last := g.Told
	if at, ok := g.Checked[Gauge]; ok {
		last = at
	}
	about := GearPrefix + strings.ReplaceAll(strings.ToLower(g.Cooker), "/", " ")
	return []Ping{{Key: about + "/gauge", Due: last.AddDate(1, 0, 0), Kind: GaugeCheckDue, Loudness: NotePing, About: about}}
}
