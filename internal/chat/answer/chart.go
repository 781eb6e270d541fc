package answer

import (
	"fmt"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/picture"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// chart answers with the picture of how a run cools; the words below it say the same.
func (t *turn) chart(i phrase.Chart, ctx scene) (chat.Post, error) {
	run, err := t.whichCools(i.Which, ctx)
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	post := t.ofCool(run, wording.CoolYet(wording.CoolView{Run: run, Now: t.arrived(), Limit: t.settings.CoolLimit()}))
	c, known := run.Cooling()
	if !known {
		return post, nil
	}
	png, err := picture.DrawCooling(charted(run, c, t.arrived()))
	if err != nil {
		return chat.Post{}, fmt.Errorf("draw the cooling of %v: %w", run.No, err)
	}
	post.Files = []chat.File{{Name: wording.ChartFile(run.No), Type: "image/png", Data: png}}
	return post, nil
}

// What a chart shows: at most so long, in so many moments, and a while after what it
// is about.
const (
	longestChart = 7 * day
	moments      = 96
	afterwards   = time.Hour
	day          = 24 * time.Hour
)

// charted is a run's cooling as the picture shows it.
func charted(run kitchen.Run, c kitchen.Cooling, now time.Time) picture.Cooling {
	words := wording.ChartOf(run, c, now)
	from := c.Zero.In(now.Location())
	end := c.To
	if c.Never() {
		end = endlessly(c, now)
	}
	if last, read := run.NewestReading(); read && last.At.After(end) {
		end = last.At
	}
	if now.After(end) && run.Stage == kitchen.StageCooling {
		end = now
	}
	if end = end.Add(afterwards); end.Sub(from) > longestChart {
		end = from.Add(longestChart)
	}
	p := picture.Cooling{
		Title: words.Title, From: from, To: end, Now: picture.Instant{At: now, Label: words.Now},
		Forecast: picture.Forecast{Label: words.Middle},
		Limit:    picture.Line{At: c.Limit, Label: words.Limit}, Scale: picture.InCelsius, Clock: wording.ChartClock, Day: wording.ChartDay,
	}
	if words.Fahrenheit {
		p.Scale = picture.InFahrenheit
	}
	if !c.To.After(end) {
		p.Window = picture.Window{
			From: picture.Instant{At: c.From, Label: words.From}, Likely: picture.Instant{At: c.Likely, Label: words.Likely},
			To: picture.Instant{At: c.To, Label: words.To},
		}
	}
	for i := range moments + 1 {
		at := from.Add(end.Sub(from) * time.Duration(i) / moments)
		w := c.Middle(at)
		p.Forecast.Moments = append(p.Forecast.Moments, picture.Moment{At: at, Low: w.Lo, Mid: w.Mid, High: w.Hi})
	}
	p.Readings = chartedReadings(run, c, end, words)
	return p
}

// endlessly is where the picture of a load ends that may not get to the limit: past the
// likely time, if that is near, and else past now.
func endlessly(c kitchen.Cooling, now time.Time) time.Time {
	if c.Likely.After(now) && c.Likely.Sub(now) < 2*day {
		return c.Likely.Add(day / 2)
	}
	return now.Add(day)
}

func chartedReadings(run kitchen.Run, c kitchen.Cooling, end time.Time, words wording.ChartWords) []picture.Reading {
	var out []picture.Reading
	for _, r := range run.Readings {
		mark := picture.Reading{At: r.At, Temp: r.Temp, Trust: picture.Believed, Label: words.Reading(r)}
		for _, o := range c.Odd {
			if o.Reading.No == r.No {
				mark.Trust, mark.Label = picture.Odd, words.Odd(r)
			}
		}
		if !r.At.After(end) && !r.At.Before(c.Zero) {
			out = append(out, mark)
		}
	}
	return out
}
