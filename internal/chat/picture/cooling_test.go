package picture_test

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"maps"
	"math"
	"slices"
	"sync"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat/picture"
)

// drawn is a chart as somebody sees it, with the places of its axes.
type drawn struct {
	*image.RGBA
	picture.Frame
	inks map[string]color.RGBA
}

func chart(t testing.TB, c picture.Cooling) drawn {
	t.Helper()
	data, err := picture.DrawCooling(c)
	if err != nil {
		t.Fatal(err)
	}
	frame, err := picture.FrameOf(c)
	if err != nil {
		t.Fatal(err)
	}
	return drawn{decoded(t, data), frame, picture.Inks()}
}

// decoded is the picture in a PNG.
func decoded(t testing.TB, data []byte) *image.RGBA {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	rgba := image.NewRGBA(img.Bounds())
	draw.Draw(rgba, rgba.Bounds(), img, image.Point{}, draw.Src)
	return rgba
}

// is reports whether a pixel has an ink.
func (d drawn) is(x, y float64, ink string) bool {
	return d.RGBAAt(int(math.Round(x)), int(math.Round(y))) == d.inks[ink]
}

// share is the part of a row of the plot that has an ink.
func (d drawn) share(y float64, ink string) float64 {
	n := 0
	for x := d.Plot.Min.X; x < d.Plot.Max.X; x++ {
		if d.is(float64(x), y, ink) {
			n++
		}
	}
	return float64(n) / float64(d.Plot.Dx())
}

// emptyMargin fails where something is drawn at the edges.
func emptyMargin(t testing.TB, img *image.RGBA) {
	t.Helper()
	if size := img.Bounds().Size(); size != image.Pt(1200, 900) {
		t.Fatalf("the picture has %v pixels", size)
	}
	inner := img.Bounds().Inset(picture.Margin)
	paper := picture.Inks()["paper"]
	for y := range 900 {
		for x := range 1200 {
			if !image.Pt(x, y).In(inner) && img.RGBAAt(x, y) != paper {
				t.Fatalf("something is drawn at the edge: %d, %d", x, y)
			}
		}
	}
}

func TestNothingIsCutOff(t *testing.T) {
	all := samples(t)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		t.Run(name, func(t *testing.T) { emptyMargin(t, chart(t, all[name]).RGBA) })
	}
}

func TestLimitIsDrawnAtItsHeight(t *testing.T) {
	for _, limit := range []unit.Celsius{24, 27, 30, 60} {
		c := evening(t)
		c.Limit.At, c.Window = limit, picture.Window{}
		d := chart(t, c)
		if got := d.share(d.Y(limit), "vermilion"); got < 0.5 {
			t.Errorf("limit %v: %.2f of its row is the limit's", limit, got)
		}
		for _, off := range []float64{-6, 6} {
			if got := d.share(d.Y(limit)+off, "vermilion"); got > 0.01 {
				t.Errorf("limit %v: %.2f of the row %v away is the limit's", limit, got, off)
			}
		}
	}
}

// The axis is a scale: its lines lie at their degrees, evenly, warmer above.
func TestDegreesLieAtTheirHeight(t *testing.T) {
	c := evening(t)
	for _, step := range []struct {
		scale picture.Scale
		lines []unit.Celsius
	}{
		{picture.InCelsius, []unit.Celsius{20, 40, 60, 80, 100}},
		{picture.InFahrenheit, []unit.Celsius{
			unit.Fahrenheit(75), unit.Fahrenheit(100), unit.Fahrenheit(125), unit.Fahrenheit(150), unit.Fahrenheit(175), unit.Fahrenheit(200),
		}},
	} {
		c.Scale = step.scale
		d := chart(t, c)
		for i, at := range step.lines {
			if got := d.share(d.Y(at), "faint") + d.share(d.Y(at)-1, "faint"); got < 0.5 {
				t.Errorf("scale %v: %.2f of the row of %.1f °C is a line", step.scale, got, at)
			}
			if i > 0 && d.Y(at) >= d.Y(step.lines[i-1]) {
				t.Errorf("scale %v: %.1f °C is not above the one before", step.scale, at)
			}
		}
	}
}

func TestReadingsLieAtTheirPlace(t *testing.T) {
	c := evening(t)
	d := chart(t, c)
	for _, r := range c.Readings {
		x, y := d.X(r.At), d.Y(r.Temp)
		middle := map[picture.Trust]string{picture.Believed: "black", picture.Odd: "paper"}[r.Trust]
		if !d.is(x, y, middle) {
			t.Errorf("%s: its middle is not %s", r.Label, middle)
		}
		for _, off := range []float64{-11, 11} {
			if !d.is(x+off, y, "black") || !d.is(x, y+off, "black") {
				t.Errorf("%s: no rim %v from its middle", r.Label, off)
			}
		}
		if d.is(x-15, y, "black") || d.is(x, y+15, "black") {
			t.Errorf("%s: black outside its mark", r.Label)
		}
	}
	// By hand from the axis, which has eight hours.
	if got, want := d.X(c.From.Add(2*time.Hour)), float64(d.Data.Min.X)+float64(d.Data.Dx())/4; math.Abs(got-want) > 0.5 {
		t.Errorf("two hours of eight lie at column %v, want %v", got, want)
	}
}

func TestReadingsBeyondTheAxisAreArrowsAtItsEdge(t *testing.T) {
	c := evening(t)
	usual := chart(t, c)
	c.Readings = append(c.Readings, picture.Reading{At: c.From.Add(time.Hour), Temp: 1150, Trust: picture.Odd})
	d := chart(t, c)
	if usual.Y(27) != d.Y(27) || usual.Y(100) != d.Y(100) {
		t.Error("a typing mistake squeezes the axis")
	}
	x := int(d.X(c.From.Add(time.Hour)))
	tip, base := 0, 0
	for y := d.Data.Min.Y; y < d.Data.Min.Y+40; y++ {
		wide := 0
		for off := -20; off <= 20; off++ {
			if d.is(float64(x+off), float64(y), "black") {
				wide++
			}
		}
		if wide > 0 && tip == 0 {
			tip = y
		}
		if wide > 15 {
			base = y
		}
	}
	if tip == 0 || base-tip < 15 {
		t.Errorf("no arrow that points up: tip in row %d, base in row %d", tip, base)
	}
}

func TestBandLiesBetweenItsLines(t *testing.T) {
	c := evening(t)
	c.Readings, c.Window, c.Now, c.Forecast.Label = nil, picture.Window{}, picture.Instant{}, ""
	d := chart(t, c)
	for i, m := range c.Forecast.Moments {
		if d.Y(m.Low)-d.Y(m.High) < 40 || math.Abs(d.Y(m.Low)-d.Y(27)) < 20 || math.Abs(d.Y(m.High)-d.Y(27)) < 20 {
			continue
		}
		x := d.X(m.At)
		switch {
		case !d.is(x, d.Y(m.Mid), "blue"):
			t.Errorf("moment %d: its middle is not on the line", i)
		case !d.is(x, (d.Y(m.Mid)+d.Y(m.High))/2, "pale") || !d.is(x, (d.Y(m.Mid)+d.Y(m.Low))/2, "pale"):
			t.Errorf("moment %d: the band is not filled", i)
		case !d.is(x, d.Y(m.High), "blue") || !d.is(x, d.Y(m.Low), "blue"):
			t.Errorf("moment %d: no edge of the band", i)
		case d.is(x, d.Y(m.High)-5, "pale") || d.is(x, d.Y(m.Low)+5, "pale"):
			t.Errorf("moment %d: the band is wider than it should be", i)
		}
	}
	for y := range 900 {
		for x := range 1200 {
			if !image.Pt(x, y).In(d.Plot) && d.is(float64(x), float64(y), "pale") {
				t.Fatalf("the band leaves the axes at %d, %d", x, y)
			}
		}
	}
}

func TestWindowIsABarOnTheLimit(t *testing.T) {
	c := evening(t)
	d := chart(t, c)
	row := d.Y(27) - 6 // beside the line of the limit, within the bar
	w := c.Window
	for x := d.X(w.From.At); x <= d.X(w.To.At); x++ {
		if near := math.Abs(x - d.X(w.Likely.At)); (near < 13 || near > 23) && !d.is(x, row, "vermilion") {
			t.Fatalf("the bar has a hole at column %v", x)
		}
	}
	if d.is(d.X(w.From.At)-8, row, "vermilion") || d.is(d.X(w.To.At)+8, row, "vermilion") {
		t.Error("the bar is longer than the window")
	}
	if !d.is(d.X(w.Likely.At), d.Y(27)-19, "vermilion") {
		t.Error("no mark at the likely time")
	}
}

func TestNowIsAColumn(t *testing.T) {
	c := evening(t)
	d, dark := chart(t, c), 0
	for y := d.Data.Min.Y; y < d.Data.Max.Y; y++ {
		if d.is(d.X(c.Now.At), float64(y), "black") {
			dark++
		}
	}
	if dark < 200 {
		t.Errorf("now has %d dark pixels", dark)
	}
	c.Now = picture.Instant{}
	without := chart(t, c)
	if bytes.Equal(d.Pix, without.Pix) {
		t.Error("without now the picture is the same")
	}
	for _, off := range []time.Time{c.To.Add(time.Second), c.From.Add(-time.Second)} {
		c.Now = picture.Instant{At: off, Label: "now"}
		if !bytes.Equal(chart(t, c).Pix, without.Pix) {
			t.Errorf("now is drawn, though %v lies off the axis", off)
		}
	}
}

func TestSameChartSameBytes(t *testing.T) {
	c := evening(t)
	want, err := picture.DrawCooling(c)
	if err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			if got, err := picture.DrawCooling(c); err != nil || !bytes.Equal(got, want) {
				t.Errorf("another picture, %d bytes, %v", len(got), err)
			}
		})
	}
	group.Wait()
	if len(want) > 60_000 {
		t.Errorf("%d bytes: the palette has gone", len(want))
	}
}

func TestAxisGrowsToHoldTheData(t *testing.T) {
	c := evening(t)
	c.To = c.From.Add(time.Hour)
	d := chart(t, c)
	if x := d.X(c.Window.To.At); x > float64(d.Data.Max.X) {
		t.Errorf("the window ends at column %v, the data at %d", x, d.Data.Max.X)
	}
	if x := d.X(c.From); x < float64(d.Data.Min.X) {
		t.Errorf("the axis begins at column %v", x)
	}
}

// WCAG 2.1, "relative luminance" and "contrast ratio".
func contrast(a, b color.RGBA) float64 {
	luminance := func(c color.RGBA) float64 {
		linear := func(v uint8) float64 {
			s := float64(v) / 255
			if s <= 0.03928 {
				return s / 12.92
			}
			return math.Pow((s+0.055)/1.055, 2.4)
		}
		return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	}
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// What must be read or seen stands off from what it lies on, also in grey.
func TestContrast(t *testing.T) {
	inks := picture.Inks()
	for _, c := range []struct {
		ink, on string
		want    float64
	}{
		{"black", "paper", 4.5},
		{"grey", "paper", 4.5},
		{"blue", "paper", 4.5},
		{"vermilion", "paper", 4.5},
		{"silver", "paper", 3},
		{"black", "pale", 4.5},
		{"blue", "pale", 3},
		{"vermilion", "pale", 3},
		{"black", "blue", 2.5},
		{"black", "vermilion", 2.5},
	} {
		if got := contrast(inks[c.ink], inks[c.on]); got < c.want {
			t.Errorf("%s on %s: %.2f, want %.1f", c.ink, c.on, got, c.want)
		}
	}
}
