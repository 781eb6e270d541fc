package picture_test

import (
	"encoding/binary"
	"math"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat/picture"
)

// dough is bytes that a chart is made from; when they are used up it gives zeros.
type dough []byte

func (d *dough) number() uint64 {
	var word [8]byte
	n := copy(word[:], *d)
	*d = (*d)[n:]
	return binary.LittleEndian.Uint64(word[:])
}

// temp is any number at all, or, mostly, a temperature of a kitchen.
func (d *dough) temp() unit.Celsius {
	n := d.number()
	if n%7 == 0 {
		return unit.Celsius(math.Float64frombits(n))
	}
	return unit.Celsius(n%4_000)/10 - 100
}

// instant is one near from, or, seldom, anywhere in time.
func (d *dough) instant(from time.Time) time.Time {
	n := d.number()
	if n%31 == 0 {
		return time.Unix(int64(n), 0)
	}
	return from.Add(time.Duration(n % uint64(60*time.Hour)))
}

func (d *dough) cooling(title, label string, zones []*time.Location) picture.Cooling {
	// From 1900 on, also when the clocks had odd seconds.
	from := time.Unix(int64(d.number()%6e9)-2.2e9, int64(d.number()%1e9)).In(zones[d.number()%uint64(len(zones))])
	instant := func() picture.Instant { return picture.Instant{At: d.instant(from), Label: label} }
	c := picture.Cooling{
		Title: title, From: from, To: d.instant(from), Now: instant(),
		Limit: picture.Line{At: d.temp(), Label: label}, Scale: picture.Scale(d.number() % 3),
		Clock: func(at time.Time) string { return at.Format("15:04") + label }, Day: day,
	}
	c.Forecast.Label = label
	for at, n := from, d.number()%12; n > 0; n-- {
		low := d.temp()
		c.Forecast.Moments = append(c.Forecast.Moments, picture.Moment{
			At: at, Low: low, Mid: low + unit.Celsius(d.number()%9), High: low + unit.Celsius(d.number()%90),
		})
		at = at.Add(time.Duration(d.number() % uint64(20*time.Hour)))
	}
	for n := d.number() % 12; n > 0; n-- {
		c.Readings = append(c.Readings, picture.Reading{
			At: d.instant(from), Temp: d.temp(), Trust: picture.Trust(d.number()%2) + picture.Believed, Label: label,
		})
	}
	if d.number()%2 == 0 {
		c.Window = picture.Window{From: picture.Instant{At: from, Label: label}, Likely: instant()}
		c.Window.To = picture.Instant{At: c.Window.Likely.At.Add(time.Duration(d.number() % uint64(9*time.Hour))), Label: label}
	}
	return c
}

// Whatever comes, there is a picture with an empty margin, or an error.
func FuzzDrawCooling(f *testing.F) {
	zones := []*time.Location{time.UTC, zone(f, "Europe/Lisbon"), zone(f, "Asia/Kathmandu"), zone(f, "Atlantic/Azores"), time.FixedZone("odd", -12345)}
	f.Add("#12: 3 bags", "22:40", []byte("a cooling"))
	f.Add("", "", []byte{})
	f.Add("🍄\n\xff", "nów – λ", []byte("0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789abcdefghijklmnopqrstuvwxyz"))
	f.Fuzz(func(t *testing.T, title, label string, data []byte) {
		d := dough(data)
		got, err := picture.DrawCooling(d.cooling(title, label, zones))
		if err != nil {
			return
		}
		emptyMargin(t, decoded(t, got))
	})
}

func BenchmarkDrawCooling(b *testing.B) {
	c := evening(b)
	size := 0
	for b.Loop() {
		got, err := picture.DrawCooling(c)
		if err != nil {
			b.Fatal(err)
		}
		size = len(got)
	}
	b.ReportMetric(float64(size), "png-bytes")
}
