package duration_test

import (
	"math"
	"os"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/duration"
)

const day = 24 * time.Hour

// The rows and their source: testdata/SOURCES.md.
func TestGiven(t *testing.T) {
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "normal_update.csv") {
		prior := duration.Normal{Mean: row.Float("prior_mean"), SD: row.Float("prior_sd")}
		got := prior.Given(duration.Normal{Mean: row.Float("observed"), SD: row.Float("observed_sd")})
		row.Within("posterior_mean", got.Mean, max(row.Float("tol_abs"), 1e-6))
		row.Within("posterior_sd", got.SD, max(row.Float("tol_abs"), 1e-6))
	}
}

func TestPredictUsual(t *testing.T) {
	got := duration.Predict(duration.Range{From: 8 * day, To: 18 * day}, nil)
	if got.About != 12*day || near(got.From, 8*day) > 1e-4 || near(got.To, 18*day) > 1e-4 || got.Runs != 0 {
		t.Errorf("%+v", got)
	}
}

// By hand: ln 8 and ln 18 lie 0.8109 apart, so the usual standard deviation is 0.3164,
// two thirds of whose square is between kitchens. A first run of 18 days then counts
// for two thirds: ln 12 + 2/3 (ln 18 - ln 12) = ln 15.72.
func TestPredictFirstRun(t *testing.T) {
	usual := duration.Range{From: 8 * day, To: 18 * day}
	got := duration.Predict(usual, []duration.Seen{{Took: 18 * day, Run: 4}, {Took: 18 * day, Run: 4}})
	if want := time.Duration(15.7244 * float64(day)); near(got.About, want) > 1e-4 || got.Runs != 1 {
		t.Errorf("about %v, want %v, of %d runs", got.About, want, got.Runs)
	}
	// Posterior variance 0.1001*(2/3)*(1/3) = 0.02225, with the scatter of runs 0.03337:
	// sd 0.23584, and e^(1.28155*0.23584) = 1.3529.
	if r := float64(got.To) / float64(got.About); math.Abs(r-1.3529) > 2e-4 {
		t.Errorf("to %.4f times as long", r)
	}
}

func near(a, b time.Duration) float64 { return math.Abs(math.Log(float64(a) / float64(b))) }

func days(rt *rapid.T, label string) time.Duration {
	return time.Duration(rapid.Float64Range(1, 60).Draw(rt, label) * float64(day))
}

func usual(rt *rapid.T) duration.Range {
	from := days(rt, "from")
	return duration.Range{From: from, To: time.Duration(float64(from) * rapid.Float64Range(1, 4).Draw(rt, "wide"))}
}

func seen(rt *rapid.T) []duration.Seen {
	return rapid.SliceOfN(rapid.Custom(func(rt *rapid.T) duration.Seen {
		return duration.Seen{Took: days(rt, "took"), Run: rapid.IntRange(1, 5).Draw(rt, "run")}
	}), 0, 12).Draw(rt, "seen")
}

func TestPredictProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		u, s := usual(rt), seen(rt)
		f := duration.Predict(u, s)
		if f.From > f.About || f.About > f.To {
			rt.Fatalf("out of order: %+v", f)
		}
		low, high := math.Log(float64(f.About)/float64(f.From)), math.Log(float64(f.To)/float64(f.About))
		if math.Abs(low-high) > 1e-4 || high < math.Log1p(float64(duration.Narrowest))-1e-4 {
			rt.Errorf("uneven or too narrow: %+v", f)
		}
		least, most := duration.Predict(u, nil).About, duration.Predict(u, nil).About
		for _, x := range s {
			least, most = min(least, x.Took), max(most, x.Took)
		}
		if f.About < least-time.Second || f.About > most+time.Second {
			rt.Errorf("about %v lies outside of all that is known, %v to %v", f.About, least, most)
		}
		twice := duration.Predict(u.Times(2), doubled(s))
		if near(twice.About, 2*f.About) > 1e-4 || near(twice.To, 2*f.To) > 1e-4 {
			rt.Errorf("twice as long all through: %+v, of %+v", twice, f)
		}
	})
}

func doubled(s []duration.Seen) []duration.Seen {
	out := make([]duration.Seen, 0, len(s))
	for _, x := range s {
		out = append(out, duration.Seen{Took: 2 * x.Took, Run: x.Run})
	}
	return out
}

// Six jars of one run say no more than one of them.
func TestRunsCountOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		u, took := usual(rt), days(rt, "took")
		var many []duration.Seen
		for range rapid.IntRange(1, 9).Draw(rt, "units") {
			many = append(many, duration.Seen{Took: took, Run: 3})
		}
		if one, all := duration.Predict(u, many[:1]), duration.Predict(u, many); one != all {
			rt.Errorf("one %+v, all %+v", one, all)
		}
	})
}

// The more runs say one thing, the nearer to it and the narrower.
func TestMoreRunsTellMore(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		u, took := usual(rt), days(rt, "took")
		before := duration.Predict(u, nil)
		var s []duration.Seen
		for run := range rapid.IntRange(1, 12).Draw(rt, "runs") {
			s = append(s, duration.Seen{Took: took, Run: run})
			now := duration.Predict(u, s)
			if near(now.About, took) > near(before.About, took)+1e-4 {
				rt.Errorf("%d runs: further from %v: %v after %v", run+1, took, now.About, before.About)
			}
			if near(now.To, now.About) > near(before.To, before.About)+1e-4 {
				rt.Errorf("%d runs: wider: %+v after %+v", run+1, now, before)
			}
			before = now
		}
	})
}

// Runs that lie far apart widen the range.
func TestScatterWidens(t *testing.T) {
	u := duration.Range{From: 8 * day, To: 14 * day}
	of := func(took ...time.Duration) float64 {
		var s []duration.Seen
		for i, d := range took {
			s = append(s, duration.Seen{Took: d, Run: i})
		}
		f := duration.Predict(u, s)
		return float64(f.To) / float64(f.From)
	}
	if calm, wild := of(10*day, 10*day, 10*day), of(5*day, 10*day, 20*day); wild < 1.5*calm {
		t.Errorf("wild %.2f, calm %.2f", wild, calm)
	}
}

func TestNothingTaken(t *testing.T) {
	u := duration.Range{From: 8 * day, To: 14 * day}
	if got, want := duration.Predict(u, []duration.Seen{{Took: 0, Run: 1}, {Took: -day, Run: 2}}), duration.Predict(u, nil); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got := u.Times(0.5); got != (duration.Range{From: 4 * day, To: 7 * day}) {
		t.Errorf("%+v", got)
	}
}
