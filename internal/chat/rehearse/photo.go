package rehearse

import (
	"encoding/binary"
	"hash/crc32"

	"ryebell/internal/chat"
)

// photo is a picture of one grey dot that carries its name, so that no two of a
// rehearsal are the same bytes. It is a PNG of the parts that the standard asks for
// (W3C, Portable Network Graphics, third edition, section 5) and always the same.
func photo(name string) chat.Photo {
	data := []byte("\x89PNG\r\n\x1a\n")
	data = pngPart(data, "IHDR", []byte{0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0}) // 1 by 1, 8 bits of grey
	data = pngPart(data, "tEXt", []byte("Title\x00"+name))
	data = pngPart(data, "IDAT", greyDot)
	data = pngPart(data, "IEND", nil)
	return chat.Photo{Name: name + ".png", Type: "image/png", Size: int64(len(data)), Data: data}
}

// greyDot is one line of one dot, not compressed (RFC 1950 and 1951): two bytes of
// head, one stored block of two bytes, the check sum (Adler-32).
var greyDot = []byte{0x78, 0x01, 0x01, 2, 0, 0xfd, 0xff, 0, 0x80, 0x00, 0x82, 0x00, 0x81}

// pngPart adds a part with its length and check sum.
func pngPart(to []byte, kind string, data []byte) []byte {
	to = binary.BigEndian.AppendUint32(to, uint32(len(data)))
	from := len(to)
	to = append(append(to, kind...), data...)
	return binary.BigEndian.AppendUint32(to, crc32.ChecksumIEEE(to[from:]))
}
