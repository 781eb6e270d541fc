package picture

import (
	"image"
	"image/color"
	"math"
	"slices"
)

// mostLabels is how many readings are looked at for a label.
const mostLabels = 24

// drawWindow draws the bar on the limit, and leads from it to labels below the data,
// where no curve runs.
func (ch *coolingChart) drawWindow() {
	if !ch.Window.shown() {
		return
	}
	y, top := ch.limitRow(), ch.data.Max.Y+slant
	var columns []float64
	for _, at := range ch.Window.instants() {
		columns = append(columns, ch.x(at.At))
	}
	labels := ch.windowLabels(columns)
	for i, l := range labels {
		if l.text == "" {
			continue
		}
		x := int(math.Round(columns[i]))
		foot := float64(l.box.Min.X+l.box.Max.X) / 2
		ch.dashes(image.Rect(x-1, y, x+2, ch.data.Max.Y), 6, 6, black)
		ch.stroke([]point{{float64(x) + 0.5, float64(ch.data.Max.Y)}, {foot, float64(top)}}, 3, black)
		ch.places.take(image.Rect(x-1, ch.data.Max.Y, int(foot)+2, top))
	}
	for _, l := range labels {
		ch.writeFree(l.text, l.box, black)
	}
	left, right := int(math.Round(columns[0])), int(math.Round(columns[2]))
	bar := image.Rect(left-3, y-barThick/2, right+3, y+barThick/2)
	ch.block(bar.Inset(-3), paper)
	ch.block(bar, vermilion)
	at := point{columns[1], float64(y)}
	ch.fill(paper, diamond(at, diamondSize+rim))
	ch.fill(vermilion, diamond(at, diamondSize))
	ch.places.take(bar.Union(image.Rect(int(at.x)-diamondSize, y-diamondSize, int(at.x)+diamondSize, y+diamondSize)))
}

// windowLabels sets the three labels in the strip, in their order.
func (ch *coolingChart) windowLabels(columns []float64) []label {
	left, right := ch.plot.Min.X, ch.plot.Max.X
	widest := (right-left)/3 - labelGap
	var texts []string
	var wides []int
	for _, at := range ch.Window.instants() {
		text := ch.plain.fit(at.Label, widest)
		texts, wides = append(texts, text), append(wides, ch.plain.width(text))
	}
	lefts := spread(columns, wides, left, right, labelGap)
	labels := make([]label, len(texts))
	for i, text := range texts {
		labels[i] = label{text, textBox(lefts[i], ch.data.Max.Y+slant+6, wides[i])}
	}
	return labels
}

// radius is that of the marks of readings.
func (ch *coolingChart) radius() int {
	if len(ch.Readings) > fewMarks {
		return smallRadius
	}
	return markRadius
}

// place is where a reading is drawn: at its temperature, or at the edge that it lies
// beyond.
func (ch *coolingChart) place(r Reading) (at point, beyond bool) {
	y := ch.y(r.Temp)
	top, bottom := float64(ch.data.Min.Y), float64(ch.data.Max.Y)
	reach := float64(ch.radius() + rim)
	switch {
	case y < top:
		return point{ch.x(r.At), top + reach}, true
	case y > bottom:
		return point{ch.x(r.At), bottom - reach}, true
	}
	return point{ch.x(r.At), y}, false
}

// drawReadings draws a mark for each reading, in the order given.
func (ch *coolingChart) drawReadings() {
	for _, r := range ch.Readings {
		at, beyond := ch.place(r)
		size := float64(ch.radius())
		shape := disc
		switch {
		case beyond && ch.y(r.Temp) < at.y:
			shape = arrowUp
		case beyond:
			shape = arrowDown
		}
		ch.fill(paper, shape(at, size+rim))
		ch.fill(black, shape(at, size))
		if r.Trust == Odd {
			ch.fill(paper, shape(at, size-rim))
		}
		reach := int(size) + rim
		x, y := int(math.Round(at.x)), int(math.Round(at.y))
		ch.places.take(image.Rect(x-reach, y-reach, x+reach, y+reach))
	}
}

// arrowUp is the outline of a triangle that points upwards.
func arrowUp(c point, size float64) []point {
	return []point{{c.x, c.y - size}, {c.x + size, c.y + size}, {c.x - size, c.y + size}}
}

// arrowDown is the outline of a triangle that points downwards.
func arrowDown(c point, size float64) []point {
	return []point{{c.x, c.y + size}, {c.x - size, c.y - size}, {c.x + size, c.y - size}}
}

// writeLabels writes what stands wherever there is room: the limit, which must be
// read, then the readings, then the band.
func (ch *coolingChart) writeLabels() {
	ch.writeLimitLabel()
	latest := slices.Clone(ch.Readings)
	slices.SortStableFunc(latest, func(a, b Reading) int { return b.At.Compare(a.At) })
	for i, r := range latest[:min(len(latest), mostLabels)] {
		// Where marks are many, nobody could tell whose label it is.
		if i == 0 || len(latest) <= fewMarks || r.Trust == Odd {
			ch.writeReadingLabel(r)
		}
	}
	ch.writeBandLabel()
}

// writeLimitLabel writes it beside its line, shortened to where there is room.
func (ch *coolingChart) writeLimitLabel() {
	var text string
	var boxes []image.Rectangle
	for part := 2; part <= 4; part++ {
		text = ch.plain.fit(ch.Limit.Label, ch.plot.Dx()/part)
		boxes = along(ch.limitRow(), ch.plot.Min.X, ch.plot.Max.X, ch.plain.width(text))
		if box, ok := ch.places.first(boxes); ok {
			ch.writeFree(text, box, vermilion)
			return
		}
	}
	ch.writeFree(text, ch.least(boxes), vermilion)
}

// writeReadingLabel writes it beside its mark, over the band if need be, or not at all.
func (ch *coolingChart) writeReadingLabel(r Reading) {
	at, _ := ch.place(r)
	text := ch.plain.fit(r.Label, ch.plot.Dx()/3)
	boxes := around(at, ch.radius(), ch.plain.width(text))
	box, ok := ch.places.first(boxes)
	if !ok {
		box, ok = ch.places.over(boxes)
	}
	if ok {
		ch.writeFree(text, box, black)
	}
}

// writeFree writes a text into a box of the plot and takes it.
func (ch *coolingChart) writeFree(text string, box image.Rectangle, ink color.RGBA) {
	if text == "" {
		return
	}
	ch.writeOver(ch.plain, text, box, ink)
	ch.places.take(box)
}

// least is the box that lies in the plot and on the fewest other labels; curves may
// run behind it.
func (ch *coolingChart) least(boxes []image.Rectangle) image.Rectangle {
	best, fewest := image.Rectangle{}, math.MaxInt
	for _, box := range boxes {
		hits := 0
		for _, r := range ch.places.taken {
			if r.Overlaps(box) {
				hits++
			}
		}
		if !box.In(ch.plot) {
			hits += len(ch.places.taken) + 1
		}
		if hits < fewest {
			best, fewest = box, hits
		}
	}
	return best
}

// writeBandLabel names the band close above it, as far left as there is room.
func (ch *coolingChart) writeBandLabel() {
	text := ch.plain.fit(ch.Forecast.Label, ch.plot.Dx()/2)
	wide := ch.plain.width(text)
	var boxes []image.Rectangle
	upper := ch.curve(high)
	for _, p := range upper[:len(upper)/2] {
		boxes = append(boxes, textBox(int(p.x)+2*air, int(p.y)-2*air-lineHeight, wide))
	}
	if box, ok := ch.places.first(boxes); ok {
		ch.writeFree(text, box, blue)
	}
}
