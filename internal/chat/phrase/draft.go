package phrase

import (
	"slices"
	"strconv"
	"strings"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// finished makes the item of what was read. The amount is the size of a bag, of
// a jar known by weight, or loose grain: dry when a grain stands beside it.
func (d draft) finished() kitchen.Item {
	it := d.item
	if d.amount == nil {
		return it
	}
	m, _ := d.amount.sense(Mass)
	mass := unit.Grams(m.Value)
	switch {
	case d.basis != 0 || it.Container.Volume > 0:
		it.Mass, it.Basis = mass, d.basis
	case it.Container.Vessel != 0 || d.counted:
		it.Container.Weight = mass
	default:
		it.Mass, it.Basis = mass, kitchen.Wetted
		if it.Grain != 0 {
			it.Basis = kitchen.DryBasis
		}
	}
	if !d.counted && it.Container.Vessel == 0 {
		it.Count = 1
	}
	return it
}

// String prints the draft so that it reads back, with all that is open in it.
func (d draft) String() string {
	it := d.finished()
	if d.behind != nil && d.amount != nil {
		it.Container.Weight, it.Mass, it.Basis = 0, 0, 0
	} else if d.behind != nil {
		it.Container.Volume = 0
	}
	bare := it
	bare.Grain, bare.Route, bare.Moisture, bare.Ratio, bare.Gypsum, bare.Parched, bare.NoGypsum = 0, 0, 0, 0, 0, false, false
	s := itemText(bare)
	switch {
	case d.counted && !it.Container.Sized() && it.Container.Vessel == 0:
		s = strconv.Itoa(it.Count)
	case it.Container.Vessel == 0 && it.Container.Weight > 0:
		s = strconv.Itoa(it.Count) + " " + massText(it.Container.Weight)
	case d.ounces():
		s = strconv.Itoa(it.Count) + " " + plain(d.amount.Number) + " oz jars"
	case d.behind != nil && d.amount != nil:
		m, _ := d.amount.sense(Mass)
		s += " (about " + massText(unit.Grams(m.Value)) + basisText(d.basis) + ")"
	case d.behind != nil:
		s += " (about " + volumeText(d.item.Container.Volume) + ")"
	}
	for _, g := range d.grains {
		s += " " + g.String()
	}
	for _, r := range d.routes {
		s += " " + routeText(r)
	}
	if d.share != nil {
		s += " at " + plain(d.share.Value) + "%"
	}
	it.Grain, it.Route = 0, 0
	s += attributesText(it)
	if d.tail != "" {
		s += " " + d.tail
	}
	return s
}

// ounces reports whether a jar was sized in ounces, of weight or fluid.
func (d draft) ounces() bool {
	if d.amount == nil || d.item.Container.Vessel != kitchen.Jar || d.item.Container.Volume > 0 {
		return false
	}
	_, both := d.amount.sense(Volume)
	return both
}

// heaviestJar is the most that can be meant as the weight of a jar.
const heaviestJar unit.Grams = 20_000

// trouble is what makes an item impossible whatever else is said of it.
func (d draft) trouble(s *sentence) *Near {
	it := d.finished()
	c := it.Container
	near := func(t Trouble) *Near { return &Near{Trouble: t, Got: s.typed(d.from, d.to)} }
	switch {
	case c.Vessel == kitchen.Bag && c.Volume > 0, c.Vessel == kitchen.Jar && (c.Weight > heaviestJar || it.Mass > heaviestJar):
		return near(WrongUnit)
	case !d.counted && c.Vessel != 0, d.counted && it.Count <= 0 && c.Vessel == 0:
		return near(Incomplete)
	}
	return nil
}

// example makes a sentence that works of what was understood.
func (d draft) example() string {
	it := d.finished()
	c := &it.Container
	if it.Count <= 0 && (c.Vessel != 0 || it.Mass == 0) {
		it.Count = 3
	}
	switch {
	case c.Vessel == kitchen.Jar && (!c.Sized() && it.Mass == 0 || c.Weight > heaviestJar):
		c.Volume, c.Weight = unit.USQuarts(1), 0
	case c.Vessel == kitchen.Bag && (!c.Sized() && it.Mass == 0 || c.Volume > 0):
		c.Volume, c.Weight = 0, unit.Pounds(5)
	case c.Vessel == 0 && it.Mass == 0:
		*c = kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(5)}
	}
	return itemText(it)
}

// openItem is a question about an item, and how a reply settles it.
type openItem struct {
	gap     Gap
	options []string
	settle  func(d draft, reply cursor) (draft, cursor, bool)
}

// question is what an item leaves open, the weightiest first; nil when it is
// complete. An impossible count is complete: it is refused as such.
func (d draft) question(w wish) *openItem {
	c := d.finished().Container
	switch {
	case d.counted && d.item.Count <= 0:
		return nil
	case d.counted && c.Vessel == 0 && !d.loose():
		return &openItem{WhichVessel, []string{"bags", "jars"}, settleVessel}
	case d.behind != nil:
		return &openItem{EachOrTogether, []string{"each", "together"}, settleEach}
	case d.ounces():
		return &openItem{JarWeightOrVolume, []string{"weight", "volume"}, settleOunces}
	case c.Vessel != 0 && !c.Sized() && d.amount == nil && d.item.Mass == 0:
		return &openItem{WhichSize, w.sizes(c.Vessel), settleSize}
	case len(d.routes) > 1:
		return &openItem{WhichRoute, routeLabels(d.routes), settleRoute}
	case len(d.grains) > 1:
		return &openItem{WhichGrain, grainLabels(d.grains), settleGrain}
	case d.share != nil:
		return &openItem{MoistureOrRatio, []string{"moisture", "water ratio"}, settleShare}
	}
	return nil
}

// loose reports whether the item is an amount of grain in no vessel.
func (d draft) loose() bool { return d.item.Container == (kitchen.Container{}) && !d.counted }

// sizes are the likely sizes of a vessel, those used elsewhere in the order
// first.
func (w wish) sizes(v kitchen.Vessel) []string {
	usual := []string{"quart", "pint", "half gallon", "litre"}
	if v == kitchen.Bag {
		usual = []string{"5 lb", "3 lb", "10 lb", "2.5 kg"}
	}
	var sizes []string
	for _, d := range w.drafts {
		if c := d.finished().Container; c.Vessel == v && c.Sized() {
			label := legible(strings.TrimSpace(readable(" "+containerText(c), w.s.names.Quarts)))
			sizes = append(sizes, strings.TrimSuffix(label, " "+v.String()+"s"))
		}
	}
	for _, label := range usual {
		if !slices.Contains(sizes, label) {
			sizes = append(sizes, label)
		}
	}
	return sizes
}

func routeLabels(routes []kitchen.Route) []string {
	labels := make([]string, len(routes))
	for i, r := range routes {
		labels[i] = routeText(r)
	}
	return labels
}

func grainLabels(grains []grain.Kind) []string {
	labels := make([]string, len(grains))
	for i, g := range grains {
		labels[i] = g.String()
	}
	return labels
}

func settleVessel(d draft, reply cursor) (draft, cursor, bool) {
	c, e, ok := reply.vessel()
	d.item.Container.Vessel = c.Vessel
	return d, e, ok && !c.Sized()
}

func settleEach(d draft, reply cursor) (draft, cursor, bool) {
	size := d.behind
	d.behind = nil
	if e, ok := reply.phrase("each", "per jar", "per bag", "every one", "apiece", "ea"); ok {
		return d, e, true
	}
	e, ok := reply.phrase("together", "all together", "all", "in all", "total", "in total", "altogether")
	if m, mass := size.sense(Mass); mass {
		share := *size
		share.Number /= float64(max(1, d.item.Count))
		share.Senses = []Sense{{Mass, m.Value / float64(max(1, d.item.Count)), "g"}}
		d.amount = &share
		return d, e, ok
	}
	d.item.Container.Volume = rounded(d.item.Container.Volume / unit.Litres(max(1, d.item.Count)))
	return d, e, ok && d.item.Container.Volume >= smallestJar
}

// rounded is a volume without the last digits of a sum: a third of three quarts
// is a quart.
func rounded(v unit.Litres) unit.Litres {
	n, err := strconv.ParseFloat(strconv.FormatFloat(float64(v), 'g', 9, 64), 64)
	if err != nil {
		panic(err) // what was printed reads back
	}
	return unit.Litres(n)
}

func settleOunces(d draft, reply cursor) (draft, cursor, bool) {
	if e, ok := reply.phrase("weight", "by weight", "weigh", "grain"); ok {
		m, _ := d.amount.sense(Mass)
		d.item.Container.Weight, d.amount = unit.Grams(m.Value), nil
		return d, e, true
	}
	e, ok := reply.phrase("volume", "by volume", "fluid", "fluid ounces", "jar", "brim")
	v, _ := d.amount.sense(Volume)
	d.item.Container.Volume, d.amount = unit.Litres(v.Value), nil
	return d, e, ok
}

// settleSize takes "quart", "500 ml", "5 lb ones".
func settleSize(d draft, reply cursor) (draft, cursor, bool) {
	c, e, ok := sizeOf(reply, d.item.Container.Vessel)
	d.item.Container = c
	return d, e, ok
}

// sizeOf reads the size of a vessel, "quart" as one quart, and the word for the
// vessel behind it.
func sizeOf(reply cursor, v kitchen.Vessel) (kitchen.Container, cursor, bool) {
	if c, e, ok := reply.vessel(); ok && c.Sized() && c.Vessel == v {
		return c, e.noun(v), true
	}
	q, ok := reply.token().(Quantity)
	if !ok {
		reply = cursor{s: read("1 "+reply.left(), reply.s.names)}
		if q, ok = reply.token().(Quantity); !ok {
			return kitchen.Container{}, reply, false
		}
	}
	e := reply.use(1).noun(v)
	volume, isVolume := q.sense(Volume)
	mass, isMass := q.sense(Mass)
	switch {
	case v == kitchen.Jar && isVolume:
		return kitchen.Container{Vessel: v, Volume: unit.Litres(volume.Value)}, e, true
	case isMass:
		return kitchen.Container{Vessel: v, Weight: unit.Grams(mass.Value)}, e, true
	}
	return kitchen.Container{}, e, false
}

// noun takes what names a vessel behind its size.
func (c cursor) noun(v kitchen.Vessel) cursor {
	c = c.over("each", "ea", "apiece", "size", "sized")
	if k, e, ok := c.vessel(); ok && k == (kitchen.Container{Vessel: v}) {
		return e
	}
	return c.over("one", "ones")
}

func settleRoute(d draft, reply cursor) (draft, cursor, bool) {
	r, ok := reply.token().(RouteWord)
	d.item.Route, d.routes = r.Route, []kitchen.Route{r.Route}
	return d, reply.use(1), ok
}

func settleGrain(d draft, reply cursor) (draft, cursor, bool) {
	g, ok := reply.token().(GrainWord)
	d.item.Grain, d.grains = g.Grain, []grain.Kind{g.Grain}
	return d, reply.use(1), ok
}

// settleShare takes what the share is of, or another share.
func settleShare(d draft, reply cursor) (draft, cursor, bool) {
	if p, ok := reply.token().(Percent); ok {
		d.share, reply = &p, reply.use(1)
		if !isMoist(reply.word(0)) && !isRatio(reply.word(0)) {
			return d, reply, true
		}
	}
	share := unit.Percent(d.share.Value)
	d.share, d.item.Parched = nil, share <= 0
	if isMoist(reply.word(0)) {
		d.item.Moisture = share
		return d, reply.use(1), true
	}
	e, ok := reply.phrase("water", "ratio", "water ratio", "water per grain", "per grain", "hydration")
	d.item.Ratio = unit.Ratio(share)
	return d, e, ok
}
