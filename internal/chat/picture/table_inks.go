package picture

import "image/color"

// Inks. The colours are ours; their contrast to white stands beside them.
var (
	paper     = color.RGBA{0xff, 0xff, 0xff, 0xff}
	black     = color.RGBA{0x16, 0x16, 0x16, 0xff} // 18
	grey      = color.RGBA{0x55, 0x55, 0x55, 0xff} // 7.5
	silver    = color.RGBA{0x8f, 0x8f, 0x8f, 0xff} // 3.2
	faint     = color.RGBA{0xdc, 0xdc, 0xdc, 0xff} // the grid, which nobody must see
	pale      = color.RGBA{0xbc, 0xd9, 0xec, 0xff} // the band, between lines that are seen
	blue      = color.RGBA{0x0b, 0x62, 0xa0, 0xff} // 6.4
	vermilion = color.RGBA{0xb5, 0x3f, 0x00, 0xff} // 5.6
)

// inks lists them.
func inks() []color.RGBA {
	return []color.RGBA{paper, black, grey, silver, faint, pale, blue, vermilion}
}
