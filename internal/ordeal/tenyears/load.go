package tenyears

import (
	"fmt"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// load is a run, or what arrived, with the time that it is cool.
type load struct {
	no          kitchen.RunNo
	begun, cool time.Time
	arrived     *kitchen.Arrived
	calledOff   bool
	cook        kitchen.MemberNo
	cooker      string
	order       kitchen.Order
	units       []*glass
	groups      []*group
	// apart says that people tell of each unit by itself.
	apart   bool
	records []kitchen.Record
}

// group are units that the same was put on.
type group struct {
	at      time.Time
	entry   kitchen.Inoculated
	members []*glass
}

// glass is a unit with its fate. Times that never come are zero.
type glass struct {
	ref        kitchen.UnitRef
	species    string
	generation int
	blank      bool
	inoculated time.Time
	odd, fine  time.Time // looked odd, and didn't after all
	through    time.Time
	half       time.Time // half of it used
	bad        time.Time
	sign       kitchen.Sign
	gone       time.Time
	how        end
	parent     bool // others were inoculated from it
}

// end is how a unit goes.
type end uint8

const (
	used end = iota + 1
	given
	lost
	thrown
)

func (l *life) newLoad(at time.Time) *load {
	ld := &load{no: kitchen.RunNo(len(l.loads) + 1), begun: at, cook: l.somebody(), apart: l.likely(0.5)}
	l.loads = append(l.loads, ld)
	return ld
}

// fill is an order of one or two kinds of containers, eight in the mean.
func (l *life) fill(ld *load) {
	kinds := containers()
	first := l.chance.IntN(len(kinds))
	items := []kitchen.Item{{Count: l.between(4, 8), Container: kinds[first], Grain: grain.Kind(l.between(1, 3)), Route: kitchen.Agar}}
	if l.likely(0.5) {
		items = append(items, kitchen.Item{Count: l.between(2, 6), Container: kinds[(first+1)%len(kinds)], Grain: items[0].Grain, Route: kitchen.Agar})
	}
	ld.order = kitchen.Order{Items: items, Cooker: ld.cooker}
	for _, it := range items {
		for range it.Count {
			ld.units = append(ld.units, &glass{ref: kitchen.UnitRef{Run: ld.no, Unit: kitchen.UnitNo(len(ld.units) + 1)}})
		}
	}
}

// arrive has units come from somewhere else.
func (l *life) arrive(at time.Time) {
	ld := l.newLoad(at)
	kind := grown()[l.chance.IntN(len(grown()))]
	ld.order = kitchen.Order{Items: []kitchen.Item{{Count: l.between(2, 6), Container: containers()[l.chance.IntN(4)]}}}
	ld.arrived = &kitchen.Arrived{
		Run: ld.no, Order: ld.order, Culture: kind.name, Species: kind.name, State: kitchen.UnitGrowing, From: "the farm", Room: int64(l.room),
	}
	for i := range ld.order.Items[0].Count {
		u := &glass{ref: kitchen.UnitRef{Run: ld.no, Unit: kitchen.UnitNo(i + 1)}, species: kind.name, generation: 1, inoculated: at}
		l.fate(ld, u)
		ld.units = append(ld.units, u)
	}
	ld.cool = at
	l.of(ld, 0, "bought "+kind.name, *ld.arrived)
}

// of tells of a load, minutes after it was begun.
func (l *life) of(ld *load, minutes int, said string, e kitchen.Entry) *told {
	return l.about(ld, ld.begun.Add(time.Duration(minutes)*time.Minute), said, e)
}

func (l *life) about(ld *load, at time.Time, said string, e kitchen.Entry) *told {
	by := ld.cook
	if l.likely(0.15) {
		by = l.somebody()
	}
	t := l.tell(ld.no.Subject(), at, by, fmt.Sprint(said, " ", ld.no), e)
	t.load = ld
	return t
}

// cook is a run from the order to the cool load, and what is put on it.
func (l *life) cook(at time.Time) {
	ld := l.newLoad(at)
	ld.cooker = cookers()[int(ld.no)%len(cookers())]
	l.fill(ld)
	l.ahead(ld)
	t := l.of(ld, 0, "cook", kitchen.RunBegun{Run: ld.no, Cooker: ld.cooker, Order: ld.order, Cook: ld.cook, Room: int64(l.room)})
	t.by = ld.cook
	l.prepare(ld)
	if l.likely(0.01) {
		ld.calledOff, ld.units = true, nil
		l.of(ld, 70, "called off", kitchen.CalledOff{})
		return
	}
	zero := l.pressure(ld)
	l.coolDown(ld, zero)
	l.lots(ld)
	l.inoculate(ld)
}

func (l *life) prepare(ld *load) {
	if l.likely(0.7) {
		l.of(ld, 3, "simmering", kitchen.PrepBegun{What: kitchen.Simmering})
		l.of(ld, 25, "draining", kitchen.PrepBegun{What: kitchen.Draining})
		l.of(ld, 35, "drying", kitchen.PrepBegun{What: kitchen.Drying})
		l.of(ld, 55, "dry", kitchen.PrepEnded{})
	}
	l.of(ld, 60, "3 l in the pot", kitchen.WaterIn{Water: 3})
}

// pressure is from the flame to zero, which comes so many minutes after the beginning.
func (l *life) pressure(ld *load) (zero int) {
	l.of(ld, 65, "heat on", kitchen.HeatOn{})
	l.of(ld, 85, "steam", kitchen.Steam{})
	l.of(ld, 95, "weight on", kitchen.VentClosed{})
	l.of(ld, 105, "at pressure", kitchen.AtPressure{Gauge: unit.PSI(15)})
	hold := l.between(100, 150)
	for m := 15; m < hold-5; m += 25 {
		l.late(l.of(ld, 105+m, "15 psi", kitchen.GaugeRead{Gauge: unit.PSI(float64(150+l.between(-3, 4)) / 10)}))
	}
	if l.likely(0.1) {
		gauge := unit.PSI(11)
		l.of(ld, 126, "lost pressure", kitchen.PressureLost{Gauge: &gauge})
		l.of(ld, 129, "back", kitchen.PressureBack{Gauge: unit.PSI(15)})
		hold += 30
	}
	if l.likely(0.3) {
		l.of(ld, 105+hold-2, "got it", kitchen.PingAnswered{Key: ld.no.Prefix() + "hold-over/1", How: kitchen.AnswerGotIt})
	}
	l.of(ld, 105+hold, "heat off", kitchen.HeatOff{})
	zero = 105 + hold + l.between(40, 60)
	l.late(l.of(ld, zero, "zero", kitchen.AtZero{}))
	return zero
}

// coolDown is from zero until the middle is at room temperature the next morning.
func (l *life) coolDown(ld *load, zero int) {
	l.late(l.of(ld, zero+30, "out of the pot", kitchen.OutOfPot{}))
	l.late(l.of(ld, zero+32, "a litre left", kitchen.WaterLeft{Water: unit.Litres(l.between(8, 16)) / 10}))
	for i, temp := range []int{l.between(74, 82), l.between(58, 66), l.between(44, 50), l.between(36, 40)} {
		l.late(l.of(ld, zero+60+100*i, fmt.Sprint(temp, " C"), kitchen.TempRead{Temp: unit.Celsius(temp), Where: kitchen.Skin}))
	}
	cool := zero + l.between(19, 23)*60
	ld.cool = ld.begun.Add(time.Duration(cool) * time.Minute)
	if l.likely(0.05) {
		return // nobody says that it is cool
	}
	l.of(ld, cool, "cool", kitchen.TempRead{Temp: unit.Celsius(l.between(19, 22)), Where: kitchen.Middle})
}

// lots says what went into the load: the lots change every two weeks or so, lids
// twice a year.
func (l *life) lots(ld *load) {
	age := int(ld.begun.Sub(l.begun) / day)
	l.of(ld, 61, "rye lot", kitchen.LotSaid{What: kitchen.GrainLot, Name: lotAt(age)})
	if ld.order.Items[0].Container.Vessel == kitchen.Bag {
		l.of(ld, 62, "bags", kitchen.LotSaid{What: kitchen.BagLot, Name: fmt.Sprint("box ", age/45+1)})
	} else if l.likely(0.5) {
		l.of(ld, 62, "lids", kitchen.LotSaid{What: kitchen.LidLot, Name: fmt.Sprint("lids ", age/60+1)})
	}
	if l.likely(0.1) {
		l.of(ld, 63, "in the middle", kitchen.UnitsStood{Units: []kitchen.UnitNo{1, 2}, Where: kitchen.InnerOnes})
	}
}

// lotAt is the lot of grain in use on a day of the book.
func lotAt(age int) string { return fmt.Sprint("rye lot ", age/14+1) }
