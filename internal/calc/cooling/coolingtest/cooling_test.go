package coolingtest

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

func seeded(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 4)) }

// drawn draws a cooling whose container and seed rapid chooses.
func drawn(t *rapid.T) Cooling {
	c := rapid.SampledFrom(Containers()).Draw(t, "container")
	return Draw(seeded(rapid.Uint64().Draw(t, "seed")), c)
}

func toLimit(t rapid.TB, c Cooling) time.Duration {
	t.Helper()
	got, ok := c.Run(c.LimitTold).ToLimit(c.LimitTold)
	if !ok {
		t.Fatalf("%v: not down to %.1f °C in %v: %+v", c.Container, c.LimitTold, longest, c)
	}
	return got
}

// The proof of the coarse grid: against one three times as fine in each direction
// and nine times in time, the time to the limit is off by under 2 %, 0.6 % on average.
func TestCoarseAgainstFine(t *testing.T) {
	worst, sum, n := 0.0, 0.0, 0
	for seed := range uint64(3) {
		for _, container := range Containers() {
			c := Draw(seeded(100+seed), container)
			fine, _ := c.run(c.LimitTold, 3).ToLimit(c.LimitTold)
			off := math.Abs(toLimit(t, c).Seconds()/fine.Seconds() - 1)
			if off > 0.02 {
				t.Errorf("%v, seed %d: off by %.2f %% of %v", container, seed, 100*off, fine)
			}
			worst, sum, n = max(worst, off), sum+off, n+1
		}
	}
	mean := sum / float64(n)
	t.Logf("coarse against fine, %d coolings: mean %.2f %%, worst %.2f %%", n, 100*mean, 100*worst)
	if mean > 0.006 {
		t.Errorf("off by %.2f %% on average", 100*mean)
	}
}

// Skins and cores of the whole curve, coarse against fine: within a kelvin and a
// half, but for the quarter of an hour after lifting out, when the outermost cell is too thick for
// what happens in it.
func TestCoarseSkins(t *testing.T) {
	for _, container := range Containers() {
		c := Draw(seeded(7), container)
		coarse, fine := c.Run(c.LimitTold), c.run(c.LimitTold, 2)
		for n := 5; n < min(len(coarse.Skin), len(fine.Skin)); n++ {
			if out := time.Duration(n)*Step - c.LiftedOut; out >= 0 && out < 15*time.Minute {
				continue
			}
			skin := math.Abs(float64(coarse.Skin[n] - fine.Skin[n]))
			core := math.Abs(float64(coarse.Core[n] - fine.Core[n]))
			if skin > 1.5 || core > 0.5 {
				t.Errorf("%v after %v: skin off by %.2f K, core by %.2f K", container, time.Duration(n)*Step, skin, core)
				break
			}
		}
	}
}

// Body and pot together lose what the room gets, in the pot, out of it, and over
// the lifting; only the pot's own heat stays behind with the pot.
func TestHeatOfTheKitchenIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawn(t)
		c.Pot.Bodies = 1
		p := c.begin(1)
		pot := func() float64 { return p.cooling.Pot.Heat * p.pot }
		before := p.stored() + pot()
		for now := time.Duration(0); now < 6*time.Hour; now += Step {
			p.advance(now)
		}
		if got := before - p.stored() - pot(); math.Abs(got-p.lost) > 1e-9*before {
			t.Fatalf("lost %.8g J, the room got %.8g J", got, p.lost)
		}
	})
}

// An empty pot with a constant coefficient cools as exp(−hAt/C).
func TestEmptyPot(t *testing.T) {
	pot := Pot{Heat: 12000, Area: 0.4, Outer: Face{Share: 1, Contact: 10}}
	at := 100.0
	for range 3600 {
		at, _ = pot.step(at, 1, 20, 0)
	}
	if want := 20 + 80*math.Exp(-10*0.4*3600/12000.0); math.Abs(at-want) > 0.01 {
		t.Errorf("got %.3f °C, want %.3f °C", at, want)
	}
}

// The core is the warmest place, and lies between the room's lowest and the start.
func TestOrderOfPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawn(t)
		curve := c.Run(c.LimitTold)
		lowest := slices.Min(curve.Room)
		for n, core := range curve.Core {
			skin, between := curve.Skin[n], curve.Between[n]
			if core > c.Start+0.2 || skin > between+1e-9 || between > core+0.2 || skin < lowest {
				t.Fatalf("after %v: core %.2f, between %.2f, skin %.2f °C; start %.2f, room down to %.2f",
					time.Duration(n)*Step, core, between, skin, c.Start, lowest)
			}
		}
	})
}

// still takes away what goes by the clock.
func still(c Cooling) Cooling {
	c.Room = Room{Day: c.Room.Day}
	c.Draught = Draught{}
	return c
}

// What holds 1.4 times the heat takes 1.4 times as long, where nothing else goes by
// the clock.
func TestSlowness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := still(drawn(t))
		if c.LiftedOut != Never {
			c.LiftedOut = 0
		}
		usual := toLimit(t, c)
		c.Slowness = 1.4
		if got := toLimit(t, c).Seconds() / usual.Seconds(); math.Abs(got-1.4) > 0.015 {
			t.Fatalf("took %.4f times as long, want 1.4", got)
		}
	})
}

// Whatever hinders the heat makes it last longer.
func TestHindrances(t *testing.T) {
	for name, hinder := range map[string]func(*Cooling){
		"side hidden":   func(c *Cooling) { c.Body.Side.Share *= 0.5 },
		"warmed air":    func(c *Cooling) { c.Warmed += 0.1 },
		"no draught":    func(c *Cooling) { c.Draught = Draught{} },
		"foil around":   func(c *Cooling) { c.Body.Side.Emissivity = 0.1 },
		"lid":           func(c *Cooling) { c.Body.Top.Resistance += 0.2 },
		"warmer room":   func(c *Cooling) { c.Room.Day += 0.3 },
		"warm night":    func(c *Cooling) { c.Room.NightDrop = 0 },
		"less conducts": func(c *Cooling) { c.Body.Conductivity *= 0.8 },
		"more heat":     func(c *Cooling) { c.Body.HeatCapacity *= 1.2 },
	} {
		for seed := range uint64(3) {
			for _, container := range Containers() {
				c := Draw(seeded(200+seed), container)
				hindered := c
				hinder(&hindered)
				if a, b := toLimit(t, c), toLimit(t, hindered); b < a-time.Second {
					t.Errorf("%s: %v, seed %d: %v without, %v with", name, container, seed, a, b)
				}
			}
		}
	}
}

// The same seed, the same cooling.
func TestSameSeed(t *testing.T) {
	for _, container := range Containers() {
		a, b := Draw(seeded(3), container), Draw(seeded(3), container)
		if a != b {
			t.Fatalf("%v: %+v and %+v", container, a, b)
		}
		if !slices.Equal(a.Run(27).Core, b.Run(27).Core) {
			t.Errorf("%v: two curves of one cooling", container)
		}
		if c := Draw(seeded(4), container); a == c {
			t.Errorf("%v: one cooling of two seeds", container)
		}
	}
}

func TestRoom(t *testing.T) {
	r := Room{Day: 20, NightDrop: 4, Warmth: 2, Fades: time.Hour, ZeroAt: 18 * time.Hour}
	for _, c := range []struct {
		after time.Duration
		want  unit.Celsius
	}{
		{0, 22},
		{time.Hour, 20 + 2/math.E},
		{4 * time.Hour, 20 + 2*0.0183156},  // 22:00
		{8 * time.Hour, 18 + 2*0.00033546}, // 02:00
		{12 * time.Hour, 16},               // 06:00
		{14 * time.Hour, 18},               // 08:00
		{16 * time.Hour, 20},               // 10:00
		{36 * time.Hour, 16},               // 06:00 again
	} {
		if got := r.At(c.after); math.Abs(float64(got-c.want)) > 1e-4 {
			t.Errorf("after %v %.5f °C, want %.5f", c.after, got, c.want)
		}
	}
}

func TestToLimit(t *testing.T) {
	c := Curve{Core: []unit.Celsius{40, 30, 26, 25}}
	for _, k := range []struct {
		limit unit.Celsius
		want  time.Duration
		ok    bool
	}{{45, 0, true}, {30, Step, true}, {28, Step + Step/2, true}, {25, 3 * Step, true}, {24, 0, false}} {
		if got, ok := c.ToLimit(k.limit); got != k.want || ok != k.ok {
			t.Errorf("to %v: %v, %v; want %v, %v", k.limit, got, ok, k.want, k.ok)
		}
	}
	if got := c.CoreAt(Step + Step/4); math.Abs(float64(got)-29) > 1e-9 {
		t.Errorf("between two points %v, want 29", got)
	}
	if c.CoreAt(-time.Hour) != 40 || c.CoreAt(time.Hour) != 25 {
		t.Error("outside the curve it isn't its ends")
	}
}

func BenchmarkRun(b *testing.B) {
	for _, container := range Containers() {
		b.Run(container.String(), func(b *testing.B) {
			rng := seeded(1)
			for b.Loop() {
				c := Draw(rng, container)
				c.Run(c.LimitTold)
			}
		})
	}
}
