package kitchen

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"ryebell/internal/calc/cooling/coolingtest"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// The ranges that people are told hold four times of five, to within five in a hundred
// and what so few trials tell: without a reading, and after one, two and three of the skin. The
// coolings are those of another, richer model. Nobody says how the containers stand.
func TestRangesHold(t *testing.T) {
	const readings = 4
	rng := rand.New(rand.NewPCG(3, 12))
	var held, early, judged [readings]int
	for i := range simulated {
		kinds := coolingtest.Containers()
		c := coolingtest.Draw(rng, kinds[i%len(kinds)])
		if c.LiftedOut > 3*time.Hour {
			continue
		}
		for n, of := range rangesOf(t, c, rng, i) {
			judged[n]++
			switch {
			case of.cool.After(of.to):
				early[n]++
			case !of.cool.Before(of.from):
				held[n]++
			}
		}
	}
	for n := range readings {
		share := float64(held[n]) / float64(judged[n])
		t.Logf("%d readings: %3.0f %% of %d held, %3.0f %% came later than the range", n, 100*share, judged[n], 100*float64(early[n])/float64(judged[n]))
		// 80 ± 5 %, and two standard deviations of the count.
		if off := 0.05 + 2*math.Sqrt(0.8*0.2/float64(judged[n])); math.Abs(share-0.8) > off {
			t.Errorf("after %d readings %.0f %% held", n, 100*share)
		}
	}
}

// toldRange is a range that was told, and when the middle was cool in truth.
type toldRange struct{ from, to, cool time.Time }

// rangesOf plays a cooling and lists the ranges told without a reading, after one, two
// and three.
func rangesOf(t *testing.T, c coolingtest.Cooling, rng *rand.Rand, seed int) []toldRange {
	s := pot(Elevation{Height: heightOf(c.Start)})
	if seed%2 == 0 {
		s = pot(Elevation{Height: heightOf(c.Start)}, RoomTemperature{c.RoomTold})
	}
	curve := c.Run(s.CoolLimit())
	cool, _ := curve.ToLimit(s.CoolLimit())
	zero := clock("12:00")
	l := begun(itemOf(c.Container)).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:00", ana, AtZero{})
	tell := func(e RunEntry, after time.Duration) {
		l.records = append(l.records, Record{No: EntryNo(len(l.records) + 1), By: ana, At: zero.Add(after), Written: zero.Add(after), Entry: e})
	}
	tell(OutOfPot{}, c.LiftedOut)
	var out []toldRange
	for n := range 4 {
		f := forecastOf(t, l, s)
		out = append(out, toldRange{f.From, f.To, zero.Add(cool)})
		// At 20, 40 and 60 % of the way from lifting out to cool.
		after := c.LiftedOut + time.Duration(n+1)*(cool-c.LiftedOut)/5
		tell(TempRead{Temp: curve.ReadSkin(after, rng), Where: Skin}, after)
	}
	return out
}

// heightOf is about how high a kitchen stands in which water boils so.
func heightOf(boiling unit.Celsius) unit.Metres {
	h := unit.Metres(0)
	for h < 3000 {
		if b, err := steam.BoilingPoint(h); err != nil || b <= boiling {
			break
		}
		h += 50
	}
	return h
}
