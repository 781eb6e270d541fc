package kitchen

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"ryebell/internal/calc/cooling/coolingtest"
	"ryebell/internal/calc/unit"
)

// simulated is how many coolings the test plays; more find rarer mistakes.
const simulated = 400 / slowness

// Nobody is told that a load is cool while its middle is over the limit, in more
// than one cooling of a hundred. The coolings are those of another, richer model;
// somebody measures whenever a ping asks for it, and nowhere else.
func TestToldCool(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 3))
	var wrong, told, readings int
	var over unit.Kelvins
	var late []time.Duration
	for i := range simulated {
		kinds := coolingtest.Containers()
		c := coolingtest.Draw(rng, kinds[i%len(kinds)])
		at, n, end, limit := tellCool(t, c, rng, i)
		readings += n
		if end == nil {
			continue
		}
		told++
		if core := end.CoreAt(at); core > limit {
			wrong++
			over = max(over, core.Minus(limit))
		}
		was, _ := end.ToLimit(limit)
		late = append(late, at-was)
	}
	slices.Sort(late)
	t.Logf("%d of %d told; %d too early, by at most %.1f K; half of them within %v, after %.1f readings", told, simulated, wrong, over, late[len(late)/2].Round(time.Minute), float64(readings)/float64(simulated))
	if told < simulated*98/100 {
		t.Errorf("only %d of %d were ever told", told, simulated)
	}
	if wrong*100 > told {
		t.Errorf("%d of %d were told too early", wrong, told)
	}
}

// tellCool plays a cooling until its run is cool, measured whenever a ping asks.
func tellCool(t *testing.T, c coolingtest.Cooling, rng *rand.Rand, seed int) (time.Duration, int, *coolingtest.Curve, unit.Celsius) {
	zero := clock("12:00")
	s := pot()
	if seed%2 == 0 {
		s = pot(RoomTemperature{c.RoomTold})
	}
	curve := c.Run(s.CoolLimit())
	place := []Place{Skin, Skin, Between}[seed%3]
	r := begun(itemOf(c.Container)).say("12:00", ana, AtZero{}).run(t, s)
	tell := func(e RunEntry, after time.Duration) {
		next, err := r.Apply(Record{By: ana, At: zero.Add(after), Written: zero.Add(after), No: EntryNo(100 + len(r.Steps)), Entry: e}, s)
		if err != nil {
			t.Fatalf("%T after %v: %v", e, after, err)
		}
		r = next
	}
	if c.LiftedOut < 48*time.Hour {
		tell(OutOfPot{}, c.LiftedOut)
	}
	for n := range 40 {
		want := r.Wants(s)
		if len(want) == 0 {
			t.Fatal("nothing asks for a reading")
		}
		after := want[0].Due.Sub(zero)
		if after < c.LiftedOut && c.LiftedOut < 48*time.Hour {
			after = c.LiftedOut + 20*time.Minute
		}
		temp := curve.ReadSkin(after, rng)
		if place == Between {
			temp = curve.ReadBetween(after, rng)
		}
		tell(TempRead{Temp: temp, Where: place}, after)
		if r.Stage == StageCool {
			return after, n + 1, &curve, s.CoolLimit()
		}
	}
	return 0, 40, nil, 0
}

func itemOf(c coolingtest.Container) Item {
	switch c {
	case coolingtest.Pint:
		return Item{Count: 7, Container: jar(0.473)}
	case coolingtest.Quart:
		return Item{Count: 7, Container: jar(0.946)}
	case coolingtest.HalfGallon:
		return Item{Count: 4, Container: jar(1.89)}
	case coolingtest.Bag3lb:
		return Item{Count: 3, Container: bag(3)}
	case coolingtest.Bag5lb:
		return Item{Count: 3, Container: bag(5)}
	case coolingtest.Bag6lb:
		return Item{Count: 3, Container: bag(6)}
	}
	panic(c)
}
