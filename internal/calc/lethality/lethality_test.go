package lethality_test

import (
	"errors"
	"math"
	"os"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

func rows(t *testing.T, name string) []calctest.Row {
	t.Helper()
	return calctest.Rows(t, os.DirFS("testdata"), name)
}

func TestRate(t *testing.T) {
	for _, row := range rows(t, "lethal_rates.csv") {
		if row.Float("ref_C") != float64(lethality.Reference) {
			t.Fatalf("the check values go by %v", row.Float("ref_C"))
		}
		got := lethality.Rate(unit.Celsius(row.Float("temp_C")))
		row.WithinShare("lethal_rate", got, row.Float("tol_rel"))
	}
}

// run is one of the invented runs of the check values.
type run struct {
	elevation unit.Metres
	steam     []lethality.TemperatureReading // only if they were temperatures
	gauge     []lethality.GaugeReading
}

func readings(t *testing.T) map[string]*run {
	t.Helper()
	runs := map[string]*run{}
	for _, row := range rows(t, "lethality_readings.csv") {
		name := row.Text("run")
		if runs[name] == nil {
			runs[name] = &run{elevation: unit.Metres(row.Float("elevation_m"))}
		}
		r := runs[name]
		after := time.Duration(row.Float("minute") * float64(time.Minute))
		switch row.Text("unit") {
		case "C":
			r.steam = append(r.steam, lethality.TemperatureReading{After: after, Steam: unit.Celsius(row.Float("value"))})
		case "psi":
			r.gauge = append(r.gauge, lethality.GaugeReading{After: after, Gauge: unit.PSI(row.Float("value"))})
		default:
			t.Fatalf("no unit %q", row.Text("unit"))
		}
	}
	return runs
}

// TestReadings holds both integrals, gauge linear and temperature linear between
// readings, against the columns of these names. The column of the trapezoid is
// that of a method the package doesn't have.
func TestReadings(t *testing.T) {
	runs := readings(t)
	for _, row := range rows(t, "lethality_expected.csv") {
		r := runs[row.Text("run")]
		if r == nil {
			t.Fatalf("no readings of run %q", row.Text("run"))
		}
		temperatures := r.steam
		for _, g := range r.gauge {
			c, err := steam.Temperature(g.Gauge, r.elevation)
			row.OK(err)
			temperatures = append(temperatures, lethality.TemperatureReading{After: g.After, Steam: c})
		}
		byTemperature, err := lethality.FromTemperatures(temperatures)
		row.OK(err)
		row.WithinShare("F0_temperature_linear", byTemperature.Minutes(), 1e-5)
		if len(r.gauge) == 0 {
			continue
		}
		byGauge, err := lethality.FromGauge(r.gauge, r.elevation)
		row.OK(err)
		row.WithinShare("F0_reading_linear", byGauge.Minutes(), 1e-5)
	}
}

// TestTwelveReductions: twelve decimal reductions at D = 0.21 min are the
// well-known 2.5 min at 121.1 °C, and ten times as long at 111.1 °C.
func TestTwelveReductions(t *testing.T) {
	minimum := time.Duration(12 * 0.21 * float64(time.Minute))
	if got := lethality.Equivalent(minimum, 121.1, 111.1); math.Abs(got.Minutes()-25.2) > 1e-6 {
		t.Errorf("at 111.1 °C: got %v, want 25.2 min", got)
	}
	if got := lethality.Equivalent(minimum, 121.1, 121.1); got != minimum {
		t.Errorf("at the same temperature: got %v, want %v", got, minimum)
	}
	if got := lethality.Equivalent(time.Hour, 1000, 0); got != math.MaxInt64 {
		t.Errorf("an endless hold: got %v", got)
	}
}

// TestAPsiOfError at 15 psi and sea level: the rate is 22 % lower a psi under
// it and 27 % higher a psi over it (computed with iapws 1.5.2).
func TestAPsiOfError(t *testing.T) {
	rate := func(psi float64) float64 {
		c, err := steam.Temperature(unit.PSI(psi), 0)
		if err != nil {
			t.Fatal(err)
		}
		return lethality.Rate(c)
	}
	for psi, want := range map[float64]float64{14: -0.22, 16: 0.27} {
		if got := rate(psi)/rate(15) - 1; math.Abs(got-want) > 0.01 {
			t.Errorf("%v psi: got %+.3f, want %+.2f", psi, got, want)
		}
	}
}

func TestFewReadings(t *testing.T) {
	one := []lethality.GaugeReading{{Gauge: unit.PSI(15)}}
	for n := range 2 {
		if got, err := lethality.FromGauge(one[:n], 0); got != 0 || err != nil {
			t.Errorf("%d readings: got %v, %v", n, got, err)
		}
	}
	if got, err := lethality.FromTemperatures(nil); got != 0 || err != nil {
		t.Errorf("no temperatures: got %v, %v", got, err)
	}
}

func TestBadReadings(t *testing.T) {
	gauge := func(kpa float64, minutes ...int) []lethality.GaugeReading {
		var rs []lethality.GaugeReading
		for _, m := range minutes {
			rs = append(rs, lethality.GaugeReading{After: time.Duration(m) * time.Minute, Gauge: unit.KPa(kpa)})
		}
		return rs
	}
	var order *lethality.OrderError
	if _, err := lethality.FromGauge(gauge(103, 0, 40, 30), 0); !errors.As(err, &order) || order.Index != 2 {
		t.Errorf("gauges out of order: got %v", err)
	}
	hot := []lethality.TemperatureReading{{After: time.Minute, Steam: 121}, {Steam: 121}}
	if _, err := lethality.FromTemperatures(hot); !errors.As(err, &order) || order.Index != 1 {
		t.Errorf("temperatures out of order: got %v", err)
	}
	var out *unit.RangeError
	if _, err := lethality.FromGauge(gauge(-3, 0, 1), 0); !errors.As(err, &out) || out.Quantity != unit.Gauge {
		t.Errorf("suction: got %v", err)
	}
	if _, err := lethality.FromGauge(gauge(103, 0, 1), 12000); !errors.As(err, &out) || out.Quantity != unit.Elevation {
		t.Errorf("a plane: got %v", err)
	}
	cold := []lethality.TemperatureReading{{Steam: unit.Celsius(math.NaN())}}
	if _, err := lethality.FromTemperatures(cold); !errors.As(err, &out) || out.Quantity != unit.Temperature {
		t.Errorf("not a temperature: got %v", err)
	}
}

func TestASteadyRunIsItsRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := unit.GaugeKPa(rapid.Float64Range(0, 150).Draw(t, "gauge"))
		m := unit.Metres(rapid.Float64Range(0, 5000).Draw(t, "elevation"))
		held := time.Duration(rapid.IntRange(1, 600).Draw(t, "minutes")) * time.Minute
		c, err := steam.Temperature(g, m)
		if err != nil {
			t.Fatal(err)
		}
		want := held.Minutes() * lethality.Rate(c)
		got, err := lethality.FromGauge([]lethality.GaugeReading{{Gauge: g}, {After: held / 3, Gauge: g}, {After: held, Gauge: g}}, m)
		if err != nil || math.Abs(got.Minutes()-want) > 1e-6*want {
			t.Errorf("%v at %v: got %v, %v, want %v min", held, c, got, err, want)
		}
	})
}

// TestMoreReadingsOfTheSameLine: a reading on the line between two others
// changes nothing.
func TestMoreReadingsOfTheSameLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := unit.GaugeKPa(rapid.Float64Range(0, 150).Draw(t, "from"))
		to := unit.GaugeKPa(rapid.Float64Range(0, 150).Draw(t, "to"))
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		ends := []lethality.GaugeReading{{Gauge: from}, {After: time.Hour, Gauge: to}}
		middle := lethality.GaugeReading{
			After: time.Duration(part * float64(time.Hour)),
			Gauge: from + (to-from)*unit.GaugeKPa(part),
		}
		whole, err := lethality.FromGauge(ends, 1600)
		if err != nil {
			t.Fatal(err)
		}
		split, err := lethality.FromGauge([]lethality.GaugeReading{ends[0], middle, ends[1]}, 1600)
		if err != nil || math.Abs(float64(split-whole)) > 1e-6*float64(whole)+1e4 {
			t.Errorf("%v, with a reading between %v, %v", whole, split, err)
		}
	})
}

func TestEquivalentLeadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := unit.Celsius(rapid.Float64Range(105, 135).Draw(t, "at"))
		instead := unit.Celsius(rapid.Float64Range(105, 135).Draw(t, "instead"))
		hold := time.Duration(rapid.IntRange(1, 600).Draw(t, "minutes")) * time.Minute
		other := lethality.Equivalent(hold, at, instead)
		if (other > hold) != (instead < at) && at != instead {
			t.Errorf("%v at %v is %v at %v", hold, at, other, instead)
		}
		back := lethality.Equivalent(other, instead, at)
		if math.Abs(float64(back-hold)) > 1e-6*float64(hold) {
			t.Errorf("%v at %v is %v at %v, and back %v", hold, at, other, instead, back)
		}
		// The definition: both have the same F0.
		if f, g := hold.Minutes()*lethality.Rate(at), other.Minutes()*lethality.Rate(instead); math.Abs(f-g) > 1e-6*f {
			t.Errorf("F0 %v and %v", f, g)
		}
	})
}
