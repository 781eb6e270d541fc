package picture_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat/picture"
)

func TestWhatCannotBeDrawn(t *testing.T) {
	nan, inf := unit.Celsius(math.NaN()), unit.Celsius(math.Inf(1))
	for _, c := range []struct {
		name, want string
		change     func(*picture.Cooling)
	}{
		{"inverted", "ends before it begins", func(c *picture.Cooling) { c.From, c.To = c.To, c.From }},
		{"no span", "ends before it begins", func(c *picture.Cooling) { c.To = c.From }},
		{"seconds", "time axis of 59s", func(c *picture.Cooling) {
			*c = picture.Cooling{
				From: c.From, To: c.From.Add(59 * time.Second), Limit: c.Limit, Scale: c.Scale, Clock: c.Clock, Day: c.Day,
				Readings: []picture.Reading{{At: c.From, Temp: 20, Trust: picture.Believed}},
			}
		}},
		{"nine days", "time axis of 216h", func(c *picture.Cooling) { c.To = c.From.Add(9 * 24 * time.Hour) }},
		{"a reading of last year", "time axis of 87", func(c *picture.Cooling) { c.Readings[0].At = c.From.AddDate(-1, 0, 0) }},
		{"nothing", "no forecast and no reading", func(c *picture.Cooling) { c.Forecast, c.Readings = picture.Forecast{}, nil }},
		{"one moment", "forecast of 1 moments", func(c *picture.Cooling) { c.Forecast.Moments = c.Forecast.Moments[:1] }},
		{"moments out of order", "moment 1 is not after", func(c *picture.Cooling) { c.Forecast.Moments[1].At = c.From }},
		{"a range upside down", "moment 3 has no range", func(c *picture.Cooling) { c.Forecast.Moments[3].Low = 99 }},
		{"a moment without a number", "moment 3 has no range", func(c *picture.Cooling) { c.Forecast.Moments[3].Mid = nan }},
		{"a moment too hot", "moment 3 has no range", func(c *picture.Cooling) { c.Forecast.Moments[3].High = inf }},
		{"a reading without a number", "reading 0 is out of range", func(c *picture.Cooling) { c.Readings[0].Temp = nan }},
		{"a reading too hot", "reading 0 is out of range", func(c *picture.Cooling) { c.Readings[0].Temp = 301 }},
		{"an odd reading without end", "reading 1 is no number", func(c *picture.Cooling) { c.Readings[1].Temp = inf }},
		{"a reading of no trust", "reading 2 has no trust", func(c *picture.Cooling) { c.Readings[2].Trust = 0 }},
		{"a limit without a number", "limit out of range", func(c *picture.Cooling) { c.Limit.At = nan }},
		{"a window out of order", "window is out of order", func(c *picture.Cooling) { c.Window.Likely.At = c.To }},
		{"no scale", "no scale", func(c *picture.Cooling) { c.Scale = 0 }},
		{"no clock", "no names for hours", func(c *picture.Cooling) { c.Clock = nil }},
		{"no day", "no names for hours", func(c *picture.Cooling) { c.Day = nil }},
	} {
		chart := evening(t)
		c.change(&chart)
		if got, err := picture.DrawCooling(chart); err == nil || !strings.Contains(err.Error(), c.want) || got != nil {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
	}
}

func TestHoursAreWholeOnTheWall(t *testing.T) {
	at := func(place, text string) time.Time {
		got, err := time.ParseInLocation("2006-01-02 15:04", text, zone(t, place))
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	for _, c := range []struct {
		name, place, from string
		span              time.Duration
		want              string
	}{
		{"an evening", "Europe/Lisbon", "2026-03-02 17:10", 8 * time.Hour, "18:00 20:00 22:00 00:00"},
		{"twelve minutes", "Europe/Lisbon", "2026-03-02 17:10", 12 * time.Minute, "17:10 17:12 17:14 17:16 17:18 17:20 17:22"},
		{"three quarters off", "Asia/Kathmandu", "2026-03-02 17:10", 5 * time.Hour, "18:00 19:00 20:00 21:00 22:00"},
		// The clocks go forward from 01:00 to 02:00.
		{"an hour skipped", "Europe/Lisbon", "2026-03-28 22:30", 5 * time.Hour, "23:00 00:00 02:00 03:00 04:00"},
		// The clocks go back from 02:00 to 01:00.
		{"an hour repeated", "Europe/Lisbon", "2026-10-24 23:30", 5 * time.Hour, "00:00 01:00 01:00 02:00 03:00"},
		{"two days", "Europe/Lisbon", "2026-10-24 13:20", 48 * time.Hour, "00:00 12:00 00:00 12:00"},
	} {
		chart := evening(t)
		chart.From = at(c.place, c.from)
		chart.To = chart.From.Add(c.span)
		chart.Forecast, chart.Window = picture.Forecast{}, picture.Window{}
		chart.Readings = []picture.Reading{{At: chart.From, Temp: 90, Trust: picture.Believed}}
		got, err := picture.HoursOf(chart)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Fields(c.want), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestDaysBeginWhereTheWallSaysSo(t *testing.T) {
	for _, c := range []struct{ name, place, from, want string }{
		{"two midnights", "Europe/Lisbon", "2026-03-02T17:10:00Z", "03 00:00, 04 00:00"},
		// Clocks go forward at midnight there: Sunday 29 March 2026 begins at 01:00.
		{"no midnight", "Asia/Beirut", "2026-03-28T12:00:00Z", "29 01:00, 30 00:00"},
		// Clocks go back from 01:00 to 00:00: midnight comes twice, the day begins once.
		{"midnight twice", "Atlantic/Azores", "2026-10-24T12:00:00Z", "25 00:00, 26 00:00"},
		// Clocks go back from midnight to 23:00: that midnight is none.
		{"an hour of yesterday again", "Asia/Beirut", "2026-10-24T12:00:00Z", "25 00:00, 26 00:00"},
	} {
		from, err := time.Parse(time.RFC3339, c.from)
		if err != nil {
			t.Fatal(err)
		}
		from = from.In(zone(t, c.place))
		var got []string
		for _, at := range picture.Midnights(from, from.Add(48*time.Hour)) {
			got = append(got, at.Format("02 15:04"))
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}

func TestDegreeTicksAreFewAndRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-300, 700).Draw(t, "low")
		high := low + rapid.Float64Range(10, 900).Draw(t, "range")
		ticks := picture.DegreeTicks(low, high)
		if len(ticks) < 2 || len(ticks) > 6 || ticks[0] < low || ticks[len(ticks)-1] > high {
			t.Fatalf("%v … %v: %v", low, high, ticks)
		}
		step := ticks[1] - ticks[0]
		if low <= ticks[0]-step || high >= ticks[len(ticks)-1]+step {
			t.Fatalf("%v … %v: %v leave a part without", low, high, ticks)
		}
	})
	if got := picture.DegreeLabel(-20); got != "−20" {
		t.Errorf("%q", got)
	}
}

func TestLabelsInARowStayApartAndInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		centres := rapid.SliceOfN(rapid.Float64Range(100, 1150), 3, 3).Draw(t, "centres")
		slices.Sort(centres)
		wides := rapid.SliceOfN(rapid.IntRange(0, 320), 3, 3).Draw(t, "widths")
		at := picture.Spread(centres, wides, 100, 1150, 28)
		for i := range at {
			if at[i] < 100 || at[i]+wides[i] > 1150 || i > 0 && at[i] < at[i-1]+wides[i-1]+28 {
				t.Fatalf("%v of widths %v lie at %v", centres, wides, at)
			}
		}
	})
	if got := picture.Spread([]float64{300, 600, 900}, []int{100, 100, 100}, 100, 1150, 28); !slices.Equal(got, []int{250, 550, 850}) {
		t.Errorf("labels with room are not under their places: %v", got)
	}
}

func TestTextsFit(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"22:40", "22:40"},
		{"27\u00a0°C", "27 °C"},
		{" two\nlines\t", "two lines"},
		{"Ana 🍄\u200d", "Ana"},
		{"Łukasz's пакет, 3½ λ — “ok” …", "Łukasz's пакет, 3½ λ — “ok” …"},
		{"e\u0301", "é"},
		{"a\xffb", "a\ufffdb"},
		{strings.Repeat("i", 300), strings.Repeat("i", 53) + "…"},
		{"", ""},
	} {
		got, _, err := picture.Fit(c.text, 600)
		if err != nil {
			t.Fatal(err)
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

func TestTextsNeverRunOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, widest := rapid.String().Draw(t, "text"), rapid.IntRange(0, 800).Draw(t, "widest")
		if got, wide, err := picture.Fit(text, widest); err != nil || wide > widest {
			t.Fatalf("%q within %d: %q of %d, %v", text, widest, got, wide, err)
		}
	})
}
