package cooling_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/cooling/coolingtest"
)

var simulated = flag.Int("coolings", 2000, "how many coolings the calibration draws")

// mostReadings is how many readings a forecast of the calibration has at most.
const mostReadings = 3

// trial is one simulated cooling, and what would be asked of it.
type trial struct {
	question cooling.Question // with all readings
	curve    coolingtest.Curve
	took     time.Duration // truth: until the core is at the limit
}

// bodyOf is what the bot makes of what people say: the name of the container.
func bodyOf(t tester, c coolingtest.Container) cooling.Body {
	switch c {
	case coolingtest.Pint:
		return jar(t, 0.5)
	case coolingtest.Quart:
		return jar(t, 1)
	case coolingtest.HalfGallon:
		return jar(t, 2)
	case coolingtest.Bag3lb:
		return bag(t, 3)
	case coolingtest.Bag5lb:
		return bag(t, 5)
	case coolingtest.Bag6lb:
		return bag(t, 6)
	}
	panic(fmt.Sprintf("no container %d", uint8(c)))
}

// draw cools one container in a kitchen of its own.
func draw(t tester, rng *rand.Rand, c coolingtest.Container) trial {
	return cook(t, rng, coolingtest.DrawKitchen(rng), c)
}

// cook cools one container in a kitchen and has its skin read three times, early,
// in the middle and late by the forecast.
func cook(t tester, rng *rand.Rand, kitchen coolingtest.Kitchen, c coolingtest.Container) trial {
	run := kitchen.Draw(rng, c)
	q := cooling.Question{
		Body: bodyOf(t, c), Elevation: kitchen.Elevation, Limit: run.LimitTold,
		Room: cooling.ToldRoom(run.RoomTold), Spacing: cooling.Apart,
	}
	if run.Close {
		q.Spacing = cooling.Close
	}
	if run.LiftedOut != coolingtest.Never {
		q.Lifted = &run.LiftedOut
	}
	curve := run.Run(q.Limit)
	took, cool := curve.ToLimit(q.Limit)
	if !cool {
		took = cooling.Horizon
	}
	if q.Lifted == nil { // nobody can read it
		return trial{q, curve, took}
	}
	mid := forecast(t, q).Cool().Mid
	for _, from := range [mostReadings]float64{0.2, 0.45, 0.7} {
		share := from + 0.2*rng.Float64()
		at := max(time.Duration(share*float64(mid)), run.LiftedOut+20*time.Minute)
		n := len(q.Readings)
		if at > curve.End() || n > 0 && at <= q.Readings[n-1].After {
			break
		}
		q.Readings = append(q.Readings, cooling.Reading{After: at, Temp: curve.ReadSkin(at, rng), Place: cooling.Skin})
	}
	return trial{q, curve, took}
}

// tally counts how forecasts did.
type tally struct {
	held, before, after int       // inside the range, or on which side of it
	off, width          []float64 // ln(middle/truth), ln(far end/near end)
}

func (c *tally) add(f *cooling.Forecast, took time.Duration) {
	cool := f.Cool()
	switch {
	case took < cool.Lo:
		c.before++
	case took > cool.Hi:
		c.after++
	default:
		c.held++
	}
	c.off = append(c.off, math.Log(float64(cool.Mid)/float64(took)))
	c.width = append(c.width, math.Log(float64(cool.Hi)/float64(cool.Lo)))
}

func (c *tally) share() float64 { return float64(c.held) / float64(len(c.off)) }

// late is the median of the middle over the truth, less one.
func (c *tally) late() float64 { return math.Expm1(median(c.off)) }

func (c *tally) String() string {
	n := float64(len(c.off))
	return fmt.Sprintf("%4d  %3.0f %%  %2.0f %%  %2.0f %%   %+5.1f %%   ×%.2f", len(c.off),
		100*c.share(), 100*float64(c.before)/n, 100*float64(c.after)/n, 100*c.late(), math.Exp(median(c.width)))
}

func median(v []float64) float64 {
	s := slices.Sorted(slices.Values(v))
	return s[len(s)/2]
}

// TestCalibration holds forecasts against coolings in another and richer model: for
// each container, and for those never lifted out, with none to three readings of
// the skin. The ranges hold 80 ± 5 %, give or take two standard deviations of the
// count, and the middle is not early: 2 % for all together, 6 % in any group.
func TestCalibration(t *testing.T) {
	containers := coolingtest.Containers()
	rng := rand.New(rand.NewPCG(4, 20261125))
	groups := []string{"all", "never lifted", "apart", "close"}
	var asked, odd int
	tables := map[string]*[mostReadings + 1]tally{}
	for _, c := range containers {
		groups = append(groups, c.String())
	}
	for _, g := range groups {
		tables[g] = &[mostReadings + 1]tally{}
	}
	for i := range *simulated {
		c := containers[i%len(containers)]
		one := draw(t, rng, c)
		in := []string{"all", c.String(), one.question.Spacing.String()}
		if one.question.Lifted == nil {
			in = []string{"never lifted"}
		}
		for n := range len(one.question.Readings) + 1 {
			q := one.question
			q.Readings = q.Readings[:n]
			f := forecast(t, q)
			for _, g := range in {
				tables[g][n].add(f, one.took)
			}
			asked += n
			odd += len(f.Odd())
		}
	}
	t.Logf("called odd: %d of %d", odd, asked)
	if float64(odd) > 0.002*float64(asked) {
		t.Errorf("%d of %d readings were called odd", odd, asked)
	}
	t.Log("readings        group     n  held  before after  late    far/near")
	for _, g := range groups {
		for n := range tables[g] {
			c := &tables[g][n]
			if len(c.off) == 0 {
				continue
			}
			t.Logf("%d %20s  %v", n, g, c)
			allowed := 0.05 + 2*math.Sqrt(0.8*0.2/float64(len(c.off)))
			if math.Abs(c.share()-0.8) > allowed {
				t.Errorf("%s, %d readings: %.1f %% held, want 80 ± %.1f", g, n, 100*c.share(), 100*allowed)
			}
			earliest := -0.06
			if g == "all" {
				earliest = -0.02
			}
			if c.late() < earliest {
				t.Errorf("%s, %d readings: the middle is early by %.1f %%", g, n, -100*c.late())
			}
		}
	}
}

// TestSlowKitchens: kitchens whose bags hold 40 % more heat. The table shows how the
// ranges narrow over ten runs, of which each had two readings; from the fifth on
// they hold, and are narrower than the first.
func TestSlowKitchens(t *testing.T) {
	const runs = 11
	rng := rand.New(rand.NewPCG(6, 20261125))
	var table [runs]tally
	for range *simulated / 50 {
		kitchen := coolingtest.DrawKitchen(rng)
		kitchen.Slowness = 1.4
		var past []cooling.Past
		for i := 0; i < runs; {
			one := cook(t, rng, kitchen, coolingtest.Bag5lb)
			if one.question.Lifted == nil {
				continue // another place, another prior
			}
			q := one.question
			q.Prior = cooling.Learn(cooling.Usual(), past)
			q.Readings = nil
			table[i].add(forecast(t, q), one.took)
			i++
			if p, said, err := cooling.Observe(one.question); err != nil {
				t.Fatal(err)
			} else if said {
				past = append(past, p)
			}
		}
	}
	for i := range table {
		t.Logf("after %2d runs  %v", i, &table[i])
	}
	var later tally
	for _, c := range table[5:] {
		later.held += c.held
		later.off = append(later.off, c.off...)
		later.width = append(later.width, c.width...)
	}
	allowed := 0.05 + 2*math.Sqrt(0.8*0.2/float64(len(later.off)))
	if math.Abs(later.share()-0.8) > allowed {
		t.Errorf("from the fifth run on %.0f %% held, want 80 ± %.1f", 100*later.share(), 100*allowed)
	}
	if before, after := median(table[0].width), median(later.width); after > 0.95*before {
		t.Errorf("ranges %.2f wide, before any run %.2f", after, before)
	}
}
