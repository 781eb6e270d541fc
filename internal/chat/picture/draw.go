package picture

import (
	"image"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
)

// Rows and distances of a chart of a cooling, in pixels.
const (
	titleTop = 36
	flagTop  = 92 // of the row between title and plot
	plotTop  = 150
	plotEnd  = 762
	tick     = 12
	hourTop  = 776
	dayTop   = 828

	gutter     = 18 // between the degrees and the plot
	inset      = 20 // of the data from the sides of the plot: half a mark has room
	labelStrip = 72 // below the data, for the labels of the window
	slant      = 18 // of that, where lines lead to labels
	labelGap   = 28
)

// Marks, in pixels.
const (
	markRadius  = 13
	smallRadius = 9  // where there are many
	fewMarks    = 16 // up to which they are drawn large
	rim         = 4
	diamondSize = 22
	midThick    = 7
	edgeThick   = 3
	barThick    = 16
	limitThick  = 5
)

// coolingChart is a chart while it is drawn.
type coolingChart struct {
	Cooling
	*sheet
	frame
	places places
}

// layout finds the frame. The degrees on the left decide how much is left for it.
func (c Cooling) layout(l letters) frame {
	f := frame{scale: c.Scale}
	f.from, f.to = c.span()
	f.low, f.high = c.temperatures()
	wide := l.width(f.scale.symbol())
	for _, n := range f.degrees() {
		wide = max(wide, l.width(degreeLabel(n)))
	}
	f.plot = image.Rect(margin+wide+gutter, plotTop, width-margin-inset, plotEnd)
	f.data = image.Rect(f.plot.Min.X+inset, plotTop, f.plot.Max.X-inset, plotEnd)
	if c.Window.shown() {
		f.data.Max.Y -= labelStrip
	}
	return f
}

// draw draws what lies below first.
func (c Cooling) draw(s *sheet) {
	ch := coolingChart{Cooling: c, sheet: s, frame: c.layout(s.plain)}
	ch.places.plot = ch.plot
	title := s.bold.fit(c.Title, width-2*margin)
	s.write(s.bold, title, textBox(margin, titleTop, 0), black)
	ch.drawDegrees()
	ch.drawDays()
	ch.drawHours()
	ch.drawBand()
	ch.drawLimit()
	ch.drawMiddle()
	ch.drawNow()
	ch.drawWindow()
	ch.drawReadings()
	ch.writeLabels()
}

// degrees are the ticks of temperature, in the scale of the axis.
func (f frame) degrees() []float64 {
	return degreeTicks(f.scale.degrees(f.low), f.scale.degrees(f.high))
}

// degreeLabel is a whole number of degrees, with a minus that is seen.
func degreeLabel(n float64) string {
	return strings.Replace(strconv.Itoa(int(math.Round(n))), "-", "−", 1)
}

func (ch *coolingChart) drawDegrees() {
	right := ch.plot.Min.X - gutter
	symbol := ch.scale.symbol()
	ch.write(ch.plain, symbol, textBox(right-ch.plain.width(symbol), flagTop, 0), grey)
	for _, n := range ch.degrees() {
		y := int(math.Round(ch.y(ch.scale.reading(n))))
		ch.block(image.Rect(ch.plot.Min.X, y-1, ch.plot.Max.X, y+1), faint)
		label := degreeLabel(n)
		ch.write(ch.plain, label, textBox(right-ch.plain.width(label), y-lineHeight/2+3, 0), black)
	}
	ch.block(image.Rect(ch.plot.Min.X, ch.plot.Max.Y, ch.plot.Max.X, ch.plot.Max.Y+3), grey)
}

// label is a text with its box.
type label struct {
	text string
	box  image.Rectangle
}

// under is a label that is centred on a column, moved so that it stays in the picture.
func (ch *coolingChart) under(text string, column float64, top, widest int) label {
	text = ch.plain.fit(text, widest)
	wide := ch.plain.width(text)
	box := textBox(int(math.Round(column))-wide/2, top, wide)
	return label{text, shift(box, margin, width-margin-overhang)}
}

// hours are the ticks of time: the finest whose labels stand apart.
func (ch *coolingChart) hours() (ticks []time.Time, labels []label) {
	const widest = 300
	for _, step := range hourSteps() {
		ticks, labels = rounds(ch.from, ch.to, step, mostHours+1), nil
		if len(ticks) > mostHours {
			continue
		}
		for _, at := range ticks {
			labels = append(labels, ch.under(ch.Clock(at), ch.x(at), hourTop, widest))
		}
		if apart(labels) {
			break
		}
	}
	return ticks, labels
}

// apart reports whether labels in a row keep a distance.
func apart(labels []label) bool {
	for i := 1; i < len(labels); i++ {
		if labels[i].box.Min.X < labels[i-1].box.Max.X+labelGap {
			return false
		}
	}
	return true
}

func (ch *coolingChart) drawHours() {
	ticks, labels := ch.hours()
	for _, at := range ticks {
		x := int(math.Round(ch.x(at)))
		ch.block(image.Rect(x-1, ch.plot.Max.Y, x+2, ch.plot.Max.Y+tick), grey)
	}
	var last label
	for _, l := range labels {
		if !apart([]label{last, l}) && last.text != "" {
			continue
		}
		ch.block(l.box, paper)
		ch.write(ch.plain, l.text, l.box, black)
		last = l
	}
}

// spill is how many times as wide as its day the name of a day may be.
const spill = 1.3

// drawDays draws a line where a day begins, and names each day that is long enough
// on the axis.
func (ch *coolingChart) drawDays() {
	starts := midnights(ch.from, ch.to)
	for _, at := range starts {
		x := int(math.Round(ch.x(at)))
		ch.block(image.Rect(x-1, ch.plot.Min.Y, x+1, dayTop+lineHeight), silver)
	}
	edges := append(append([]time.Time{ch.from}, starts...), ch.to)
	var row []label
	for i, begin := range edges[:len(edges)-1] {
		// The first and the last may use the sides of the picture, too.
		left, right := int(ch.x(begin))+air, int(ch.x(edges[i+1]))-air
		if i == 0 {
			left = margin
		}
		if i == len(edges)-2 {
			right = width - margin
		}
		day := ch.under(ch.Day(begin), (ch.x(begin)+ch.x(edges[i+1]))/2, dayTop, ch.plot.Dx()/2)
		day.box = shift(shift(day.box, left, right), margin, width-margin-overhang)
		if float64(day.box.Dx()) <= spill*float64(right-left) {
			row = append(row, day)
		}
	}
	ch.writeApart(row)
}

// shift moves a box sideways until it lies between two columns, or, if it is wider,
// begins at the first.
func shift(box image.Rectangle, left, right int) image.Rectangle {
	by := min(0, right-box.Max.X)
	by = max(by, left-box.Min.X)
	return box.Add(image.Pt(by, 0))
}

// writeApart writes those labels of a row that leave room for each other, from the
// left.
func (ch *coolingChart) writeApart(row []label) {
	right := 0
	for _, l := range row {
		if l.text == "" || l.box.Min.X < right {
			continue
		}
		ch.block(l.box, paper)
		ch.write(ch.plain, l.text, l.box, grey)
		right = l.box.Max.X + labelGap
	}
}

// curve is one line of the forecast.
func (ch *coolingChart) curve(of func(Moment) unit.Celsius) []point {
	line := make([]point, len(ch.Forecast.Moments))
	for i, m := range ch.Forecast.Moments {
		line[i] = point{ch.x(m.At), ch.y(of(m))}
	}
	return line
}

func low(m Moment) unit.Celsius  { return m.Low }
func mid(m Moment) unit.Celsius  { return m.Mid }
func high(m Moment) unit.Celsius { return m.High }

func (ch *coolingChart) drawBand() {
	upper, lower := ch.curve(high), ch.curve(low)
	if len(upper) == 0 {
		return
	}
	ch.places.curve.cover(upper, lower)
	outline := slices.Clone(upper)
	for _, p := range slices.Backward(lower) {
		outline = append(outline, p)
	}
	ch.fill(pale, outline)
	ch.stroke(upper, edgeThick, blue)
	ch.stroke(lower, edgeThick, blue)
}

func (ch *coolingChart) drawMiddle() { ch.stroke(ch.curve(mid), midThick, blue) }

// limitRow is the row of the limit.
func (ch *coolingChart) limitRow() int { return int(math.Round(ch.y(ch.Limit.At))) }

func (ch *coolingChart) drawLimit() {
	const dash, gap = 26, 14
	y := ch.limitRow()
	line := image.Rect(ch.plot.Min.X, y-limitThick/2, ch.plot.Max.X, y-limitThick/2+limitThick)
	ch.dashes(line, dash, gap, vermilion)
	ch.places.take(line)
}

func (ch *coolingChart) drawNow() {
	const dash, gap = 8, 8
	if ch.Now == (Instant{}) || !ch.holds(ch.Now.At) {
		return
	}
	x := int(math.Round(ch.x(ch.Now.At)))
	line := image.Rect(x-2, ch.plot.Min.Y, x+2, ch.data.Max.Y)
	ch.dashes(line, dash, gap, black)
	ch.places.take(line)
	l := ch.under(ch.Now.Label, ch.x(ch.Now.At), flagTop, ch.plot.Dx())
	l.box = l.box.Add(image.Pt(max(0, ch.plot.Min.X-l.box.Min.X), 0))
	ch.write(ch.plain, l.text, l.box, black)
}
