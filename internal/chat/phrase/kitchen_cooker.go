package phrase

import (
	"math"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// cooker reads a cooker and what is said of it: "big pot takes 7 quarts or 3 5lb
// bags, max 15 psi, dial gauge".
func cooker(c cursor) (kitchen.Change, cursor, bool) {
	f := facts{}
	if k, d, ok := weHave(c); ok {
		return k, d, true
	}
	name, d, named := cookerRef(c.over(cookerArticles...))
	if !named {
		d = c
	} else {
		f.out.Name = theCooker(name)
		if _, pot, _, sized := c.over(cookerArticles...).sizedPot(); sized {
			f.out.Pot = pot
		}
	}
	f.named = named
	_, f.takes = d.mark(":")
	f.takes = f.takes && named
	n := 0
	for {
		if _, ends := d.mark(";"); ends {
			break
		}
		e, ok := f.read(d.parted())
		if !ok {
			break
		}
		d = e
		n++
	}
	if n == 0 || n == 1 && f.unit == "litre" && f.out.Name == "" {
		return nil, c, false // "the pot takes 7 litres": any pot
	}
	d.bare = n == 1 && !f.named && f.out.MaxGauge != 0 // "max 15 psi"
	if f.open != nil {
		d.ask = f.question()
	}
	return f.out, d, true
}

// weHave reads "we have a 23 quart canner", and nothing more of it.
func weHave(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.phrase("we have", "we've got", "we use", "we own", "our cooker is", "we bought", "we got", "our pot is", "ours is", "i've got", "i have", "we cook in", "it's", "our canner is")
	if !ok {
		return nil, c, false
	}
	name, pot, d, ok := d.over(cookerArticles...).sizedPot()
	return kitchen.CookerIs{Name: name, Pot: pot}, d, ok && d.parted().done()
}

// cookerArticles may stand before the name of a cooker.
var cookerArticles = []string{"the", "our", "my", "a", "an", "new"}

// facts is a cooker while it is being read.
type facts struct {
	out   kitchen.CookerIs
	named bool
	// takes is set once "takes" or "holds" was said: more of them may follow.
	takes bool
	// taking is true right behind such a kind, where one more may follow.
	taking bool
	// open is the place of a capacity that could be the volume of the pot, about
	// its words, pot what it would hold.
	open  *int
	about string
	unit  string
	pot   unit.Litres
}

// lastFact is the place of the capacity among what is read of a cooker.
const lastFact = 5

func (f *facts) read(c cursor) (cursor, bool) {
	c = c.over("it", "has", "have", "with", "is", "and", "a", "an", "the", "its", "it's", "or", "can", "w", "that", "which", "'s", "only")
	for i, read := range [...]func(*facts, cursor) (cursor, bool){
		(*facts).boilOff, (*facts).water, (*facts).gauge, (*facts).maxGauge, (*facts).potVolume, (*facts).capacity,
	} {
		if d, ok := read(f, c); ok {
			f.taking = i == lastFact
			return d, true
		}
	}
	return c, false
}

func (f *facts) capacity(c cursor) (cursor, bool) {
	if !f.named {
		return c, false
	}
	d, ok := c.phrase("takes", "holds", "fits", "does", "take", "hold", "fit", "do", "room for", "can take", "can hold", "can do", "can fit",
		"will take", "will fit", "space for")
	if _, _, fill := jarFill(c); !ok && (!f.takes || fill) {
		return c, false
	}
	holds := ok && strings.HasPrefix(d.word(-1), "hold")
	d = d.over("up", "to", "about", "only", "at", "most", "exactly")
	if k, e, most := upToJars(d); most && ok {
		f.takes = true
		f.out.Takes = append(f.out.Takes, k)
		return e, true
	}
	it := gatherOne(d)
	if it.trouble != nil || len(it.drafts) != 1 {
		return c, false
	}
	dr := it.drafts[0]
	item := dr.finished()
	if item.Container.Vessel == 0 && item.Container.Weight > 0 {
		item.Container.Vessel = kitchen.Bag // nothing else in a pot is known by its weight
	}
	if !dr.counted || item.Count <= 0 || !item.Container.Sized() || item.Grain != 0 || item.Route != 0 || dr.behind != nil || dr.ounces() {
		return c, false
	}
	if w := it.c.word(0); w == "water" || it.c.word(-1) == "water" || it.c.word(1) == "water" {
		return c, false
	}
	f.takes = true
	f.out.Takes = append(f.out.Takes, kitchen.Capacity{Count: item.Count, Container: item.Container})
	if dr.folded != nil && it.c.s.jarless(d.i, it.c.i) && bigUnit(dr.folded) && (holds || !jarOften(dr.folded)) {
		n := len(f.out.Takes) - 1
		v, _ := dr.folded.sense(Volume)
		if f.unit = v.Unit; v.Unit == "l" {
			f.unit = "litre"
		} else if v.Unit == "gal" {
			f.unit = "gallon"
		}
		f.open, f.about, f.pot = &n, strings.TrimSpace(d.s.typed(d.i, d.i+1)), unit.Litres(v.Value)
	}
	return it.c, true
}

// upToJars reads "up to 7 quarts": as a bound it has been read.
func upToJars(c cursor) (kitchen.Capacity, cursor, bool) {
	r, ok := c.token().(Range)
	n, isWhole := whole(r.Hi)
	if !ok || !math.IsInf(r.Lo, -1) || !isWhole || n < 1 {
		return kitchen.Capacity{}, c, false
	}
	d := c.use(1)
	if r.Senses == nil {
		k, e, ok := d.kind()
		return kitchen.Capacity{Count: n, Container: k}, e, ok && k.Sized()
	}
	if s := r.Senses[0]; s.Dim == Volume && jarUnit(s.Unit) {
		if v, e, jars := d.vessel(); jars && v.Vessel == kitchen.Jar && !v.Sized() {
			d = e
		}
		return kitchen.Capacity{Count: n, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}}, d, true
	}
	return kitchen.Capacity{}, c, false
}

// jarless reports whether none of the tokens [i, j) is a word for jars.
func (s *sentence) jarless(i, j int) bool {
	for ; i < j; i++ {
		if _, ok := s.toks[i].(VesselWord); ok {
			return false
		}
	}
	return true
}

// bigUnit reports whether pots are measured in the unit.
func bigUnit(q *Quantity) bool {
	s, _ := q.sense(Volume)
	return s.Unit == "quart" || s.Unit == "l" || s.Unit == "gal"
}

// jarOften reports whether what a cooker takes is counted in jars of the unit:
// litres and gallons are rather its volume.
func jarOften(q *Quantity) bool {
	s, _ := q.sense(Volume)
	return s.Unit == "quart"
}

// question asks whether jars or the pot was meant.
func (f *facts) question() *asking {
	out, open, pot := f.out, *f.open, f.pot
	return &asking{gap: PotOrJars, about: f.about, options: []string{f.unit + " jars", "pot volume"}, fill: func(reply cursor) (string, cursor, bool) {
		if e, ok := reply.phrase("pot", "the pot", "pot volume", "volume", "the volume"); ok {
			filled := out
			filled.Pot = pot
			filled.Takes = append(append([]kitchen.Capacity(nil), out.Takes[:open]...), out.Takes[open+1:]...)
			return cookerText(filled), e, true
		}
		if v, e, ok := reply.vessel(); ok && v.Vessel == kitchen.Jar {
			return cookerText(out), e.over("jars", "jar"), true
		}
		return "", reply, false
	}}
}

func (f *facts) maxGauge(c cursor) (cursor, bool) {
	d, said := c.phrase("max", "maximum", "rated", "rated for", "rated to", "rated at", "goes to", "goes up to", "max pressure", "maximum pressure",
		"rating", "up to", "is rated", "pressure max", "not over", "at most")
	d = d.over("is", "of", "at", "to", "for")
	p, e, ok := d.quantity(Pressure)
	if r, isRange := d.token().(Range); !ok && isRange && r.Lo < 0 {
		return c, false
	}
	if !ok || p.Value <= 0 {
		return c, false
	}
	g, tail := e.phrase("max", "maximum", "at most", "rating", "rated")
	if tail {
		e = g
	}
	if !said && !tail {
		return c, false
	}
	f.out.MaxGauge = unit.GaugeKPa(p.Value)
	return e, true
}

func (f *facts) gauge(c cursor) (cursor, bool) {
	if d, ok := c.phrase("dial gauge", "dial", "dial gauged"); ok && (f.named || d.i-c.i > 1) {
		f.out.Gauge = kitchen.Dial
		return d, true
	}
	d, ok := c.phrase("weighted gauge", "weight gauge", "weighted", "weight", "weights", "jiggler", "rocker", "rocking weight", "a weight")
	if ok && (f.named || d.i-c.i > 1) {
		f.out.Gauge = kitchen.Weight
		return d, true
	}
	return c, false
}

// potVolume reads "is a 23 quart pot", "volume 23 l", "16 quarts volume".
func (f *facts) potVolume(c cursor) (cursor, bool) {
	if !f.named {
		return c, false
	}
	d, said := c.phrase("volume", "pot volume", "pot", "size", "total volume")
	d = d.over("is", "of", "holds", "about", "a")
	v, e, ok := d.quantity(Volume)
	if !ok || v.Value <= 0 {
		return c, false
	}
	g, tail := e.phrase("pot", "canner", "cooker", "volume", "pot volume", "size", "in volume", "pressure cooker", "pressure canner", "autoclave", "total")
	if tail {
		e = g
	}
	is := c.word(-1) == "is" || c.word(-1) == "a"
	if !said && !tail && !is && !f.sizedAlone(c, e) {
		return c, false
	}
	if _, jars := e.token().(VesselWord); jars {
		return c, false
	}
	f.out.Pot = unit.Litres(v.Value)
	return e, true
}

// sizedAlone reports whether the volume [c, d) stands alone between commas, and
// not among the jars that go in: "dial gauge, 23 quart".
func (f *facts) sizedAlone(c, d cursor) bool {
	q, ok := c.token().(Quantity)
	if _, comma := c.back().mark(",;"); !ok || !comma || !bigUnit(&q) {
		return false
	}
	if _, ends := d.mark(",;.!"); !ends && !d.done() {
		return false
	}
	return !f.taking
}

// water reads the maker's limits: "needs 3 l water", "max fill 5 litres".
func (f *facts) water(c cursor) (cursor, bool) {
	most, d := false, c
	if e, ok := c.phrase("max fill", "max water", "maximum fill", "maximum water", "fill max", "water max", "fill line", "max fill is", "never over"); ok {
		most, d = true, e
	} else if e, ok := c.phrase("needs", "need", "min water", "minimum water", "wants", "asks for", "at least", "needs at least", "water min", "min",
		"minimum", "min fill"); ok {
		d = e
	} else {
		return c, false
	}
	least := d.word(-1)
	v, e, ok := d.over("is", "of", "about", "at least", "water").quantity(Volume)
	if !ok || v.Value <= 0 {
		return c, false
	}
	g, wet := e.phrase("water", "of water", "water in it", "of water in it", "of water under the rack", "water under the rack")
	switch {
	case most:
		f.out.MaxWater = unit.Litres(v.Value)
	case wet || least == "water" || least == "fill":
		f.out.MinWater = unit.Litres(v.Value)
	default:
		return c, false
	}
	if wet {
		e = g
	}
	return e, true
}

// boilOff reads "boils off 0.5 l an hour".
func (f *facts) boilOff(c cursor) (cursor, bool) {
	d, ok := c.phrase("boils off", "loses", "boil off", "boil-off", "boils away", "uses", "evaporates", "boil off is", "steams off")
	if !ok {
		return c, false
	}
	v, d, ok := d.over("about", "is", "of", "around").quantity(Volume)
	if !ok || v.Value <= 0 {
		return c, false
	}
	e, _ := d.over("of", "water", "per", "every", "each").mark("/")
	if p, isPeriod := e.token().(Period); isPeriod && p.Length == time.Hour {
		e = e.use(1)
	} else if e, ok = e.phrase("an hour", "hour", "h", "hr", "a hour", "hourly"); !ok {
		return c, false
	}
	f.out.BoilOff = unit.LitresPerHour(v.Value)
	return e, true
}
