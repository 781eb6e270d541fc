package picture_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat/picture"
)

// zone loads a place's clocks.
func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

func clock(at time.Time) string { return at.Format("15:04") }

func twelve(at time.Time) string { return at.Format("3:04 pm") }

func day(at time.Time) string { return at.Format("Mon 2 Jan") }

// decay is a forecast from 100 °C towards 20 °C with a time scale, its range wider
// the later it is, in n moments.
func decay(from time.Time, span, scale time.Duration, n int) []picture.Moment {
	moments := make([]picture.Moment, n)
	for i := range moments {
		at := span * time.Duration(i) / time.Duration(n-1)
		temp := func(stretch float64) unit.Celsius {
			return unit.Celsius(20 + 80*math.Exp(-at.Hours()/(scale.Hours()*stretch)))
		}
		moments[i] = picture.Moment{At: from.Add(at), Low: temp(0.8), Mid: temp(1), High: temp(1.25)}
	}
	return moments
}

// evening is a usual chart: a run that cools from 17:10 on, measured three times, one of
// them wrong.
func evening(t testing.TB) picture.Cooling {
	zero := time.Date(2026, time.March, 2, 17, 10, 0, 0, zone(t, "Europe/Lisbon"))
	after := func(d time.Duration) time.Time { return zero.Add(d) }
	instant := func(at time.Time) picture.Instant { return picture.Instant{At: at, Label: clock(at)} }
	reading := func(d time.Duration, temp unit.Celsius) picture.Reading {
		return picture.Reading{At: after(d), Temp: temp, Trust: picture.Believed, Label: fmt.Sprintf("%.0f", temp)}
	}
	likely := instant(after(6*time.Hour + 5*time.Minute))
	likely.Label = "about " + likely.Label
	return picture.Cooling{
		Title: "#12: 3 bags, 5 lb", From: zero, To: after(8 * time.Hour),
		Now:      picture.Instant{At: after(4*time.Hour + 25*time.Minute), Label: "now"},
		Forecast: picture.Forecast{Moments: decay(zero, 8*time.Hour, 150*time.Minute, 60), Label: "the middle, 4 of 5"},
		Readings: []picture.Reading{
			reading(2*time.Hour, 52),
			{At: after(3 * time.Hour), Temp: 88, Trust: picture.Odd, Label: "88?"},
			reading(4*time.Hour+20*time.Minute, 33),
		},
		Limit: picture.Line{At: 27, Label: "27 °C"},
		Window: picture.Window{
			From: instant(after(4*time.Hour + 52*time.Minute)), Likely: likely,
			To: instant(after(7*time.Hour + 37*time.Minute)),
		},
		Scale: picture.InCelsius, Clock: clock, Day: day,
	}
}

// samples are charts of every sort, by name.
func samples(t testing.TB) map[string]picture.Cooling {
	all := map[string]picture.Cooling{"evening": evening(t)}
	c := evening(t)
	c.Readings, c.Window, c.Now = nil, picture.Window{}, picture.Instant{}
	all["no readings"] = c

	c = evening(t)
	c.Scale, c.Clock, c.Limit.Label = picture.InFahrenheit, twelve, "limit 80 °F"
	c.Window.From.Label, c.Window.Likely.Label, c.Window.To.Label = "10:02 pm", "11:15 pm", "12:47 am"
	all["fahrenheit"] = c

	c = evening(t)
	c.Readings = nil
	for i := range 40 {
		at := c.From.Add(time.Duration(i) * 11 * time.Minute)
		temp := unit.Celsius(20 + 80*math.Exp(-at.Sub(c.From).Hours()/2.5) + 2*math.Sin(float64(i)))
		c.Readings = append(c.Readings, picture.Reading{At: at, Temp: temp, Trust: picture.Believed, Label: fmt.Sprintf("%.0f", temp)})
	}
	all["many readings"] = c

	c = evening(t)
	c.To = c.From.Add(12 * time.Minute)
	c.Forecast.Moments = decay(c.From, 12*time.Minute, 4*time.Minute, 30)
	for i := range c.Readings {
		c.Readings[i].At = c.From.Add(time.Duration(i+2) * 2 * time.Minute)
	}
	c.Now.At = c.From.Add(6*time.Minute + 30*time.Second)
	c.Window.From.At, c.Window.Likely.At, c.Window.To.At = c.From.Add(8*time.Minute), c.From.Add(9*time.Minute), c.From.Add(11*time.Minute)
	all["minutes"] = c

	c = evening(t)
	c.Forecast.Moments = decay(c.From.Add(4*time.Hour), 5*time.Minute, 150*time.Minute, 5)
	all["short band"] = c

	c = evening(t)
	c.From = time.Date(2026, time.October, 24, 13, 20, 0, 0, c.From.Location()) // clocks go back on the 25th
	c.To = c.From.Add(48 * time.Hour)
	c.Forecast.Moments = decay(c.From, 48*time.Hour, 14*time.Hour, 90)
	for i := range c.Readings {
		c.Readings[i].At = c.From.Add(time.Duration(i+1) * 8 * time.Hour)
	}
	c.Now.At = c.From.Add(26 * time.Hour)
	c.Window.From.At, c.Window.Likely.At, c.Window.To.At = c.From.Add(27*time.Hour), c.From.Add(34*time.Hour), c.From.Add(43*time.Hour)
	all["two days"] = c

	c = evening(t)
	c.Readings = append(c.Readings,
		picture.Reading{At: c.From.Add(time.Hour), Temp: 1150, Trust: picture.Odd, Label: "1150"},
		picture.Reading{At: c.From.Add(5*time.Hour + 30*time.Minute), Temp: -400, Trust: picture.Odd, Label: "−400"})
	all["typing mistakes"] = c

	c = evening(t)
	c.Readings = []picture.Reading{
		{At: c.From, Temp: 300, Trust: picture.Believed, Label: "300"}, {At: c.To, Temp: -100, Trust: picture.Believed, Label: "−100"},
	}
	all["hot and cold"] = c

	c = evening(t)
	c.Title = "#12: 3 bags, 5 lb, and a name that somebody thought of who had plenty of time 🍄"
	c.Limit.Label = "at most 27 °C, but Ana would rather wait until it is 24 °C in the middle"
	c.Now.Label = "nów Åççents"
	c.Window.From.Label, c.Window.Likely.Label, c.Window.To.Label = "not before two past ten", "with luck at a quarter past eleven", "surely at thirteen to one"
	all["long words"] = c
	return all
}
