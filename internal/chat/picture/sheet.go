package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"

	"golang.org/x/image/vector"
)

// The size of a chart, in pixels. Nothing is drawn within margin of its edges.
const (
	width  = 1200
	height = 900
	margin = 24
	// overhang is how far the ink of a glyph can reach beyond its advance.
	overhang = 2
)

// point is a place in the picture; x to the right, y downwards.
type point struct{ x, y float64 }

// sheet is a picture that is being drawn, with its letters.
type sheet struct {
	img         *image.RGBA
	plain, bold letters
}

// newSheet is an empty sheet for a chart.
func newSheet() (*sheet, error) { return newSheetOf(height) }

// newSheetOf is an empty sheet so many pixels tall. Letters keep a state, so each sheet
// has its own.
func newSheetOf(tall int) (*sheet, error) {
	s := &sheet{img: image.NewRGBA(image.Rect(0, 0, width, tall))}
	var err error
	if s.plain, err = plainLetters(textSize); err != nil {
		return nil, err
	}
	if s.bold, err = boldLetters(titleSize); err != nil {
		return nil, err
	}
	s.block(s.img.Bounds(), paper)
	return s, nil
}

// encode is the sheet as a PNG.
func (s *sheet) encode() ([]byte, error) { return s.encodeAt(png.DefaultCompression) }

// encodeAt is the sheet as a PNG that is packed so tightly.
func (s *sheet) encodeAt(level png.CompressionLevel) ([]byte, error) {
	var buf bytes.Buffer
	encoder := png.Encoder{CompressionLevel: level}
	if err := encoder.Encode(&buf, s.thrifty()); err != nil {
		return nil, fmt.Errorf("encode a picture: %w", err)
	}
	return buf.Bytes(), nil
}

// mostColours is how many a picture with a palette can have.
const mostColours = 256

// thrifty is the sheet with a palette, a third of the bytes of the whole and quicker
// to encode. The inks stay as they are, the shades between them, at the edges of
// shapes, are rounded. If there are still too many, it is the sheet itself.
func (s *sheet) thrifty() image.Image {
	small := image.NewPaletted(s.img.Bounds(), nil)
	index := map[color.RGBA]uint8{}
	for _, ink := range inks() {
		index[ink] = uint8(len(small.Palette))
		small.Palette = append(small.Palette, ink)
	}
	// Most pixels are like the one before: no need to look those up. Nor rows.
	last, at := paper, index[paper]
	for y := range s.img.Rect.Dy() {
		row, inks := s.img.Pix[y*s.img.Stride:(y+1)*s.img.Stride], small.Pix[y*width:(y+1)*width]
		if y > 0 && bytes.Equal(row, s.img.Pix[(y-1)*s.img.Stride:y*s.img.Stride]) {
			copy(inks, small.Pix[(y-1)*width:y*width])
			continue
		}
		for x := range inks {
			if c := (color.RGBA{row[4*x], row[4*x+1], row[4*x+2], 0xff}); c != last {
				known := false
				if at, known = index[c]; !known {
					at, known = enter(index, &small.Palette, c)
				}
				if !known {
					return s.img
				}
				last = c
			}
			inks[x] = at
		}
	}
	return small
}

// enter gives a shade the place of its rounded self in a palette, if there is one left.
func enter(index map[color.RGBA]uint8, palette *color.Palette, c color.RGBA) (at uint8, ok bool) {
	const coarse = 15
	round := color.RGBA{c.R / coarse * coarse, c.G / coarse * coarse, c.B / coarse * coarse, 0xff}
	at, known := index[round]
	switch {
	case known:
	case len(*palette) == mostColours:
		return 0, false
	default:
		at = uint8(len(*palette))
		*palette = append(*palette, round)
		index[round] = at
	}
	index[c] = at
	return at, true
}

// block fills a rectangle.
func (s *sheet) block(r image.Rectangle, ink color.RGBA) {
	draw.Draw(s.img, r, image.NewUniform(ink), image.Point{}, draw.Src)
}

// fill fills closed outlines that all turn the same way round, so that they add up
// where they overlap.
func (s *sheet) fill(ink color.RGBA, outlines ...[]point) {
	r := bounds(outlines).Intersect(s.img.Bounds())
	if r.Empty() {
		return
	}
	z := vector.NewRasterizer(r.Dx(), r.Dy())
	for _, o := range outlines {
		for i, p := range o {
			x, y := float32(p.x-float64(r.Min.X)), float32(p.y-float64(r.Min.Y))
			if i == 0 {
				z.MoveTo(x, y)
				continue
			}
			z.LineTo(x, y)
		}
		z.ClosePath()
	}
	z.Draw(s.img, r, image.NewUniform(ink), image.Point{})
}

// bounds is the smallest rectangle of whole pixels around outlines.
func bounds(outlines [][]point) image.Rectangle {
	var r image.Rectangle
	for _, o := range outlines {
		for _, p := range o {
			x, y := int(math.Floor(p.x)), int(math.Floor(p.y))
			r = r.Union(image.Rect(x, y, x+2, y+2))
		}
	}
	return r
}

// corners is how many corners a disc has; its edge is off a circle's by less than
// a tenth of a pixel.
const corners = 40

// disc is the outline of a disc.
func disc(c point, radius float64) []point {
	outline := make([]point, corners)
	for i := range outline {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		outline[i] = point{c.x + radius*cos, c.y + radius*sin}
	}
	return outline
}

// diamond is the outline of a square that stands on a corner.
func diamond(c point, radius float64) []point {
	return []point{{c.x + radius, c.y}, {c.x, c.y + radius}, {c.x - radius, c.y}, {c.x, c.y - radius}}
}

// stroke draws a line through points, its joints round.
func (s *sheet) stroke(line []point, thick float64, ink color.RGBA) {
	var outlines [][]point
	for i, b := range line {
		outlines = append(outlines, disc(b, thick/2))
		if i == 0 {
			continue
		}
		a := line[i-1]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		if long == 0 {
			continue
		}
		// The same turn as a disc's, whatever the direction.
		nx, ny := (b.y-a.y)/long*thick/2, -(b.x-a.x)/long*thick/2
		outlines = append(outlines, []point{{a.x + nx, a.y + ny}, {b.x + nx, b.y + ny}, {b.x - nx, b.y - ny}, {a.x - nx, a.y - ny}})
	}
	s.fill(ink, outlines...)
}

// dashes fills a rectangle with dashes along its longer side.
func (s *sheet) dashes(r image.Rectangle, dash, gap int, ink color.RGBA) {
	for at := 0; at < max(r.Dx(), r.Dy()); at += dash + gap {
		piece := image.Rect(r.Min.X+at, r.Min.Y, r.Min.X+at+dash, r.Max.Y)
		if r.Dy() > r.Dx() {
			piece = image.Rect(r.Min.X, r.Min.Y+at, r.Max.X, r.Min.Y+at+dash)
		}
		s.block(piece.Intersect(r), ink)
	}
}
