package picture

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"
	"strings"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
)

// Letters are measured in pixels.
const (
	textSize  = 42
	titleSize = 48
	// lineHeight is that of a box around a line of text: letters reach rise over the
	// line they stand on, and hang at most fall below it, except for accents on
	// capitals, which use the air between lines.
	rise       = 34
	fall       = 10
	lineHeight = rise + fall
)

// mostLetters is how many letters of a string are looked at.
const mostLetters = 200

// letters are a font in one size.
type letters struct {
	font *sfnt.Font
	face font.Face
	buf  *sfnt.Buffer
}

func plainLetters(size float64) (letters, error) { return newLetters(goregular.TTF, size) }

func boldLetters(size float64) (letters, error) { return newLetters(gobold.TTF, size) }

func newLetters(ttf []byte, size float64) (letters, error) {
	f, err := opentype.Parse(ttf)
	if err != nil {
		return letters{}, fmt.Errorf("read a font: %w", err)
	}
	// 72 dots per inch: a point is a pixel.
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return letters{}, fmt.Errorf("size a font: %w", err)
	}
	return letters{font: f, face: face, buf: &sfnt.Buffer{}}, nil
}

// width is how wide a string is, in whole pixels.
func (l letters) width(text string) int { return font.MeasureString(l.face, text).Ceil() }

// fit is text as it can be drawn within so many pixels: on one line, of letters that
// the font has, and cut with an ellipsis where it is too long.
func (l letters) fit(text string, widest int) string {
	runes := []rune(l.clean(text))
	if len(runes) <= mostLetters && l.width(string(runes)) <= widest {
		return string(runes)
	}
	for n := min(len(runes), mostLetters); n > 0; n-- {
		if cut := strings.TrimSpace(string(runes[:n])) + "…"; l.width(cut) <= widest {
			return cut
		}
	}
	return ""
}

// clean makes one line of a text. Letters and digits that the font lacks stay, and
// become boxes; other signs that it lacks go.
func (l letters) clean(text string) string {
	var b strings.Builder
	seen := 0
	for _, r := range norm.NFC.String(text[:min(len(text), 8*mostLetters)]) {
		switch {
		case seen > mostLetters:
			continue
		case unicode.IsSpace(r):
			r = ' '
		case !unicode.IsPrint(r):
			continue
		case !unicode.IsLetter(r) && !unicode.IsDigit(r) && !l.has(r):
			continue
		}
		seen++
		b.WriteRune(r)
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// has reports whether the font draws a letter.
func (l letters) has(r rune) bool {
	i, err := l.font.GlyphIndex(l.buf, r)
	return err == nil && i != 0
}

// write draws text into a box, from its left edge.
func (s *sheet) write(l letters, text string, box image.Rectangle, ink color.RGBA) {
	l.draw(s.img, text, box, ink)
}

// The paper shows so many pixels around letters that stand on something.
const (
	halo  = 4
	sides = 8 // to which the letters are moved for it
)

// writeOver draws text into a box, with a rim of paper around each letter.
func (s *sheet) writeOver(l letters, text string, box image.Rectangle, ink color.RGBA) {
	shape := image.NewAlpha(box.Inset(-2 * halo))
	l.draw(shape, text, box, color.RGBA{A: 0xff})
	for i := range sides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		to := shape.Bounds().Add(image.Pt(int(math.Round(halo*cos)), int(math.Round(halo*sin))))
		draw.DrawMask(s.img, to, image.NewUniform(paper), image.Point{}, shape, shape.Bounds().Min, draw.Over)
	}
	draw.DrawMask(s.img, shape.Bounds(), image.NewUniform(ink), image.Point{}, shape, shape.Bounds().Min, draw.Over)
}

// draw draws text into a box of an image.
func (l letters) draw(on draw.Image, text string, box image.Rectangle, ink color.RGBA) {
	d := font.Drawer{Dst: on, Src: image.NewUniform(ink), Face: l.face, Dot: fixed.P(box.Min.X, box.Min.Y+rise)}
	d.DrawString(text)
}
