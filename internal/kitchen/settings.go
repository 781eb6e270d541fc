package kitchen

import (
	"cmp"
	"math"
	"slices"
	"sort"
	"strings"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/hydration"
	"ryebell/internal/calc/unit"
)

// Defaults of a kitchen that has said nothing (common practice, no source, but
// where another is named). Each is shown as such when the working is asked for.
const (
	defaultRoom      unit.Celsius    = 20
	defaultStep      unit.Grams      = 5
	defaultHeadspace unit.Fraction   = 0.30
	wettedDensity    unit.KgPerLitre = 0.68 // loose wetted grain, 0.60 to 0.75
	defaultRatio     unit.Ratio      = 0.43 // no route said, and grain to grain
)

// Settings are the kitchen as its changes have made it. What nobody said is
// zero, and the methods below give the default for it.
type Settings struct {
	Elevation    *unit.Metres
	Room         *unit.Celsius
	RoomAt       time.Time // when Room was told: an old reading is less sure
	CoolLimits   []CoolLimitIs
	Cookers      []CookerIs
	Holds        []HoldIs
	Methods      []MethodIs
	Step         unit.Grams
	Fills        []JarFill
	Yields       []YieldIs
	Ratios       []RatioIs
	UsualGrain   grain.Kind
	UsualOrder   *Order
	Gypsum       unit.Fraction
	BagBasis     Basis
	Headspace    *unit.Fraction
	StoredAt     []StorageMoisture
	Zone         string
	Measure      Measure
	CookingGauge unit.GaugeKPa
	GaugeErrors  []GaugeReads
	Quiet        []QuietHours
	Private      []PingsPrivate
	Digest       *DigestIs
	// RestDays is for how many days cooked grain rests before a culture goes on it; 0 until
	// somebody says otherwise.
	RestDays int
}

// FoldSettings is the kitchen that these records leave: what was said to hold
// from later on counts over what held before, whichever was written first.
// Records that change nothing here are passed over; struck ones must not be
// among them.
func FoldSettings(records []Record) Settings {
	var s Settings
	for _, r := range changesByTime(records) {
		s.take(r)
	}
	return s
}

// SettingsAt is the kitchen that these records had made by any instant, those of
// that very instant among them: what a run of yesterday is told with. Records are
// taken as in [FoldSettings]. What it returns may be called from several
// goroutines.
func SettingsAt(records []Record) func(time.Time) Settings {
	sorted := changesByTime(records)
	states := make([]Settings, len(sorted)+1) // states[n] is the kitchen after n changes
	for i, r := range sorted {
		states[i+1] = states[i].With()
		states[i+1].take(r)
	}
	return func(t time.Time) Settings {
		n := sort.Search(len(sorted), func(i int) bool { return sorted[i].At.After(t) })
		return states[n]
	}
}

// changesByTime is the records that change the kitchen, in the order in which
// they came to hold; those of one instant in the order of the book.
func changesByTime(records []Record) []Record {
	var out []Record
	for _, r := range records {
		if _, ok := r.Entry.(Change); ok {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(a, b Record) int {
		return cmp.Or(a.At.Compare(b.At), cmp.Compare(a.No, b.No))
	})
	return out
}

// take makes the change of a record, if it is one.
func (s *Settings) take(r Record) {
	c, ok := r.Entry.(Change)
	if !ok {
		return
	}
	c.change(s)
	if _, room := c.(RoomTemperature); room {
		s.RoomAt = r.At
	}
}

// With is the kitchen after some changes more. It knows no time at which they were
// told: [Settings.RoomAt] stays as it was.
func (s Settings) With(changes ...Change) Settings {
	s.CoolLimits = slices.Clone(s.CoolLimits)
	s.Cookers = slices.Clone(s.Cookers)
	s.Holds = slices.Clone(s.Holds)
	s.Methods = slices.Clone(s.Methods)
	s.Fills = slices.Clone(s.Fills)
	s.Yields = slices.Clone(s.Yields)
	s.Ratios = slices.Clone(s.Ratios)
	s.StoredAt = slices.Clone(s.StoredAt)
	s.GaugeErrors = slices.Clone(s.GaugeErrors)
	s.Quiet = slices.Clone(s.Quiet)
	s.Private = slices.Clone(s.Private)
	for _, c := range changes {
		c.change(&s)
	}
	return s
}

// Height is the kitchen's elevation; sea level until it is said.
func (s Settings) Height() unit.Metres { return orElse(s.Elevation, 0) }

// RoomTemp is how warm the room is; 20 °C until it is said.
func (s Settings) RoomTemp() unit.Celsius { return orElse(s.Room, defaultRoom) }

// Empty is the share of a jar that stays empty; 30 % until it is said.
func (s Settings) Empty() unit.Fraction { return orElse(s.Headspace, defaultHeadspace) }

// ScaleStep is the step that weights are shown in; 5 g until it is said.
func (s Settings) ScaleStep() unit.Grams {
	if s.Step > 0 {
		return s.Step
	}
	return defaultStep
}

// GrainMeant is the grain when none is said: the usual one, at first rye.
func (s Settings) GrainMeant() grain.Kind {
	if s.UsualGrain != 0 {
		return s.UsualGrain
	}
	return grain.Rye
}

// MethodFor is the way a vessel is filled; measured until they say otherwise.
func (s Settings) MethodFor(v Vessel) Method {
	for _, m := range slices.Backward(s.Methods) {
		if m.Vessel == 0 || m.Vessel == v {
			return m.Method
		}
	}
	return Measured
}

// RatioFor is the water per dry grain for a route, grain and vessel, and whether
// it is the collective's own. Of their own the closest fits, of equally close
// ones the newest. Defaults by route are common practice.
func (s Settings) RatioFor(r Route, g grain.Kind, v Vessel) (unit.Ratio, Origin) {
	best, at := -1, -1
	for i, own := range s.Ratios {
		score := fit(own.Route, r) + fit(own.Grain, g) + fit(own.Vessel, v)
		if score >= 0 && score >= best {
			best, at = score, i
		}
	}
	if at >= 0 {
		return s.Ratios[at].Ratio, Own
	}
	switch r {
	case LiquidCulture, Spores:
		return 0.40, Default
	case Agar:
		return 0.46, Default
	case GrainToGrain, 0:
		return defaultRatio, Default
	}
	return defaultRatio, Default
}

// fit scores one field of a setting: 1 when it names what is wanted, 0 when it
// names nothing, far below when it names something else.
func fit[T comparable](own, wanted T) int {
	var unsaid T
	switch own {
	case unsaid:
		return 0
	case wanted:
		return 1
	}
	return -10
}

// YieldFor is how many times its dry weight soaked and drained grain weighs, and
// whether the collective has weighed it.
func (s Settings) YieldFor(g grain.Kind) (unit.Yield, Origin) {
	for _, y := range slices.Backward(s.Yields) {
		if y.Grain == g || y.Grain == 0 {
			if k, err := hydration.YieldOf(y.Dry, y.Drained); err == nil {
				return k, Own
			}
		}
	}
	return g.SoakedYield().Mid, Default
}

// StorageMoistureOf is how moist a grain is as bought.
func (s Settings) StorageMoistureOf(g grain.Kind) (unit.Fraction, Origin) {
	for _, m := range slices.Backward(s.StoredAt) {
		if m.Grain == g || m.Grain == 0 {
			return m.Moisture, Own
		}
	}
	return g.StorageMoisture(), Default
}

// FillOf is the wetted grain in a jar filled their way: as they weighed it, else
// as densely as the jar nearest in size that they weighed, else by volume,
// headspace and the bulk density of wetted grain.
func (s Settings) FillOf(c Container) (unit.Grams, Origin) {
	g, origin, _ := s.fill(c)
	return g, origin
}

// fill is FillOf with the other jar that the density was taken from.
func (s Settings) fill(c Container) (unit.Grams, Origin, JarFill) {
	var nearest JarFill
	apart := math.Inf(1)
	for _, f := range s.Fills {
		if f.Container.Same(c) {
			return f.Wetted, Own, JarFill{}
		}
		if f.Container.Volume <= 0 {
			continue
		}
		if d := math.Abs(math.Log(float64(f.Container.Volume / c.Volume))); d < apart {
			nearest, apart = f, d
		}
	}
	if nearest.Wetted > 0 {
		return nearest.Wetted * unit.Grams(c.Volume/nearest.Container.Volume), Own, nearest
	}
	return hydration.JarFill(c.Volume, s.Empty(), wettedDensity), Default, JarFill{}
}

// CookerNamed finds a cooker by its name, case aside. The empty name finds the
// only cooker there is, and fails when there are several.
func (s Settings) CookerNamed(name string) (CookerIs, bool) {
	if name == "" {
		if len(s.Cookers) == 1 {
			return s.Cookers[0], true
		}
		return CookerIs{}, false
	}
	i := slices.IndexFunc(s.Cookers, func(c CookerIs) bool { return strings.EqualFold(c.Name, name) })
	if i < 0 {
		return CookerIs{}, false
	}
	return s.Cookers[i], true
}

// TrueGauge is the pressure in a cooker when its gauge shows something.
func (s Settings) TrueGauge(k CookerIs, shown unit.GaugeKPa) unit.GaugeKPa {
	for _, g := range slices.Backward(s.GaugeErrors) {
		if sameName(g.Cooker, k.Name) || g.Cooker == "" && len(s.Cookers) <= 1 {
			return max(0, shown+g.Low)
		}
	}
	return shown
}

// QuietFor is the quiet hours of a member, else of the collective, else 22 to 7 by
// default; see [QuietHours.None].
func (s Settings) QuietFor(m MemberNo) (QuietHours, Origin) {
	for _, who := range []MemberNo{m, 0} {
		for _, q := range slices.Backward(s.Quiet) {
			if q.Member == who {
				return q, Own
			}
		}
	}
	return QuietHours{From: 22 * 60, To: 7 * 60}, Default
}

// PingsFor is where a member wants the pings that are for them alone.
func (s Settings) PingsFor(m MemberNo) Audience {
	for _, p := range slices.Backward(s.Private) {
		if p.Member == m {
			return p.Where
		}
	}
	return InRoom
}

// CookerNames lists the cookers that have a name.
func (s Settings) CookerNames() []string {
	var names []string
	for _, c := range s.Cookers {
		if c.Name != "" {
			names = append(names, c.Name)
		}
	}
	return names
}

// Origin tells where a number comes from.
type Origin uint8

// A number was Said in the message, is the collective's Own, or a Default.
const (
	Said Origin = iota + 1
	Own
	Default
)

func orElse[T any](p *T, otherwise T) T {
	if p != nil {
		return *p
	}
	return otherwise
}
