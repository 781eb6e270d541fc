package picture

import (
	"image"
	"image/color"
	"time"

	"ryebell/internal/calc/unit"
)

// Margin is the part of the picture at its edges that stays empty.
const Margin = margin

// Frame says where things lie in a chart.
type Frame struct {
	Plot, Data image.Rectangle
	X          func(time.Time) float64
	Y          func(unit.Celsius) float64
}

// FrameOf is the frame of a chart that can be drawn.
func FrameOf(c Cooling) (Frame, error) {
	s, err := newSheet()
	if err != nil {
		return Frame{}, err
	}
	f := c.layout(s.plain)
	return Frame{f.plot, f.data, f.x, f.y}, nil
}

// Inks by name.
func Inks() map[string]color.RGBA {
	return map[string]color.RGBA{
		"paper": paper, "black": black, "grey": grey, "silver": silver, "faint": faint,
		"pale": pale, "blue": blue, "vermilion": vermilion,
	}
}

// Fit and Width are those of the plain letters.
func Fit(text string, widest int) (fitted string, wide int, err error) {
	l, err := plainLetters(textSize)
	if err != nil {
		return "", 0, err
	}
	fitted = l.fit(text, widest)
	return fitted, l.width(fitted), nil
}

// HoursOf lists the labels of the time axis.
func HoursOf(c Cooling) ([]string, error) {
	s, err := newSheet()
	if err != nil {
		return nil, err
	}
	ch := coolingChart{Cooling: c, sheet: s, frame: c.layout(s.plain)}
	_, labels := ch.hours()
	var texts []string
	for _, l := range labels {
		texts = append(texts, l.text)
	}
	return texts, nil
}

// Functions that have rules of their own.
var (
	Rounds      = rounds
	Midnights   = midnights
	DegreeTicks = degreeTicks
	Spread      = spread
	DegreeLabel = degreeLabel
)

// MostRows and TreeHeight are those of a tree.
const MostRows = mostRows

var TreeHeight = treeHeight

// RowsOf lists the words of the rows of a tree.
func RowsOf(t Tree) ([]string, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	var out []string
	for _, r := range t.rows() {
		if r.fate == 0 {
			out = append(out, r.state)
		} else {
			out = append(out, r.name)
		}
	}
	return out, nil
}
