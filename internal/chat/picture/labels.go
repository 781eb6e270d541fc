package picture

import (
	"image"
	"math"
	"slices"
)

// air is the least distance of a label from what it must not touch, in pixels.
const air = 8

// columns says, for each column of the picture, which rows a curve covers; a
// column that it doesn't reach has an empty span.
type columns [width]struct{ top, bottom int }

// cover adds what lies between two lines that run from left to right through the
// same columns.
func (c *columns) cover(upper, lower []point) {
	for i := 1; i < len(upper); i++ {
		for x := int(upper[i-1].x); x <= int(upper[i].x)+1 && x < width; x++ {
			top := int(min(between(upper[i-1], upper[i], x), between(upper[i-1], upper[i], x+1)))
			bottom := int(max(between(lower[i-1], lower[i], x), between(lower[i-1], lower[i], x+1))) + 1
			if at := &c[x]; at.top == at.bottom {
				at.top, at.bottom = top, bottom
			} else {
				at.top, at.bottom = min(at.top, top), max(at.bottom, bottom)
			}
		}
	}
}

// between is the row of the line from a to b at a column, held at its ends.
func between(a, b point, column int) float64 {
	if b.x <= a.x {
		return b.y
	}
	share := min(max((float64(column)-a.x)/(b.x-a.x), 0), 1)
	return a.y + share*(b.y-a.y)
}

// meets reports whether a rectangle touches the curve.
func (c *columns) meets(r image.Rectangle) bool {
	for x := max(r.Min.X, 0); x < min(r.Max.X, width); x++ {
		if at := c[x]; at.top < at.bottom && at.top < r.Max.Y && r.Min.Y < at.bottom {
			return true
		}
	}
	return false
}

// places knows which parts of the plot are taken.
type places struct {
	plot  image.Rectangle
	taken []image.Rectangle
	curve columns
}

// take marks a rectangle as taken.
func (p *places) take(r image.Rectangle) { p.taken = append(p.taken, r) }

// free reports whether a label has its air in a box.
func (p *places) free(box image.Rectangle) bool {
	return p.clear(box) && !p.curve.meets(box.Inset(-air))
}

// clear reports whether a label in a box has its air but for the curve.
func (p *places) clear(box image.Rectangle) bool {
	return box.In(p.plot) && !slices.ContainsFunc(p.taken, box.Inset(-air).Overlaps)
}

// first is the first of the boxes that is free.
func (p *places) first(boxes []image.Rectangle) (image.Rectangle, bool) {
	i := slices.IndexFunc(boxes, p.free)
	if i < 0 {
		return image.Rectangle{}, false
	}
	return boxes[i], true
}

// over is the first of the boxes with nothing but the curve behind it.
func (p *places) over(boxes []image.Rectangle) (image.Rectangle, bool) {
	i := slices.IndexFunc(boxes, p.clear)
	if i < 0 {
		return image.Rectangle{}, false
	}
	return boxes[i], true
}

// textBox is the box of a line of text with its upper left corner at x, y.
func textBox(x, y, wide int) image.Rectangle { return image.Rect(x, y, x+wide, y+lineHeight) }

// around lists boxes around a mark, the clearest first.
func around(at point, radius, wide int) []image.Rectangle {
	x, y, off := int(math.Round(at.x)), int(math.Round(at.y)), radius+rim+air+2
	left, right, up, down := x-off-wide, x+off, y-off-lineHeight, y+off
	beside := y - lineHeight/2
	return []image.Rectangle{
		textBox(right, up+off/2, wide), textBox(right, beside, wide), textBox(x-wide/2, up, wide),
		textBox(left, down-off/2, wide), textBox(left, beside, wide), textBox(x-wide/2, down, wide),
		textBox(left, up+off/2, wide), textBox(right, down-off/2, wide),
	}
}

// along lists boxes on both sides of a level line between two columns: below it from
// the left, then above it from the right, since what cools runs from the upper left to
// the lower right.
func along(row, left, right, wide int) []image.Rectangle {
	const stride = 12
	var below, above []image.Rectangle
	for x := left + 2*air; x+wide <= right; x += stride {
		below = append(below, textBox(x, row+air+4, wide))
		above = append(above, textBox(x, row-air-4-lineHeight, wide))
	}
	slices.Reverse(above)
	return append(below, above...)
}

// spread sets labels of the given widths in a row, each as near under its place as the
// others let it; the one in the middle is served first. They must fit between left and
// right with gaps between them.
func spread(centres []float64, wides []int, left, right, gap int) []int {
	at := make([]int, len(centres))
	for i, c := range centres {
		at[i] = int(math.Round(c)) - wides[i]/2
	}
	middle := len(at) / 2
	for i := middle - 1; i >= 0; i-- {
		at[i] = min(at[i], at[i+1]-gap-wides[i])
	}
	for i := middle + 1; i < len(at); i++ {
		at[i] = max(at[i], at[i-1]+wides[i-1]+gap)
	}
	edge := left
	for i := range at {
		at[i] = max(at[i], edge)
		edge = at[i] + wides[i] + gap
	}
	edge = right
	for i := len(at) - 1; i >= 0; i-- {
		at[i] = min(at[i], edge-wides[i])
		edge = at[i] - gap
	}
	return at
}
