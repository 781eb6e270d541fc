package console

import (
	"io"
	"sync/atomic"
	"unicode/utf8"
)

const (
	// keyInterrupt is what Ctrl-C sends in raw mode, where it is no signal.
	keyInterrupt = 3
	keyEscape    = 0x1b
	keyDelete    = 0x7f
)

// The marks that a terminal puts around what is pasted.
const (
	pasteStart = "\x1b[200~"
	pasteEnd   = "\x1b[201~"
)

// keyboard reads keys for the line editor and gives it only what it can take: keys
// by the one name it knows of each, no sequence that it would take for text, and of
// what is pasted text and line ends alone. It notes whether Ctrl-C was typed, since
// the editor reports it as the end of input, just like Ctrl-D.
type keyboard struct {
	from        io.Reader
	interrupted atomic.Bool

	raw     []byte // read and not understood yet
	keys    []byte // for the editor
	err     error
	pasting bool
	ended   bool // the last key pasted was the first half of a line end
}

// Read blocks until there is a whole key.
func (k *keyboard) Read(p []byte) (int, error) {
	for len(k.keys) == 0 {
		if k.err != nil {
			return 0, k.err
		}
		buf := make([]byte, 256)
		n, err := k.from.Read(buf)
		k.raw, k.err = append(k.raw, buf[:n]...), err
		for len(k.raw) > 0 {
			used := k.next()
			if used == 0 {
				break
			}
			k.raw = k.raw[used:]
		}
	}
	n := copy(p, k.keys)
	k.keys = k.keys[n:]
	return n, nil
}

// next takes one key and tells how many bytes it had; zero if it isn't whole yet.
func (k *keyboard) next() int {
	if k.raw[0] == keyEscape {
		return k.sequence()
	}
	if !utf8.FullRune(k.raw) {
		return 0
	}
	r, size := utf8.DecodeRune(k.raw)
	switch {
	case k.pasting:
		k.pasted(r)
	case r == utf8.RuneError:
		k.keys = append(k.keys, '?') // the editor would wait for the rest of it
	default:
		if r == keyInterrupt {
			k.interrupted.Store(true)
		}
		k.keys = append(k.keys, k.raw[:size]...)
	}
	return size
}

// pasted takes a character of pasted text. Keys in it do nothing: a text that holds
// Ctrl-D must not end the program.
func (k *keyboard) pasted(r rune) {
	second := k.ended && r == '\n'
	k.ended = r == '\r'
	switch {
	case second:
	case r == '\r', r == '\n':
		k.keys = append(k.keys, '\r')
	case r == '\t':
		k.keys = append(k.keys, ' ')
	case r == utf8.RuneError:
		k.keys = append(k.keys, '?')
	case r >= ' ' && r != keyDelete:
		k.keys = utf8.AppendRune(k.keys, r)
	}
}

// longestSequence is more than any key sends.
const longestSequence = 32

// sequence takes what begins with an escape. A lone one is dropped, and what is no
// sequence after all is typed.
func (k *keyboard) sequence() int {
	if len(k.raw) < 2 {
		return 0
	}
	switch k.raw[1] {
	case '[':
		for i := 2; i < len(k.raw) && i < longestSequence; i++ {
			switch c := k.raw[i]; {
			case c >= 0x40 && c <= 0x7e:
				k.press(string(k.raw[:i+1]))
				return i + 1
			case c < 0x20 || c > 0x7e:
				return i
			}
		}
		if len(k.raw) >= longestSequence {
			return longestSequence
		}
		return 0
	case 'O':
		if len(k.raw) < 3 {
			return 0
		}
		k.press("\x1b[" + string(k.raw[2:3]))
		return 3
	}
	return 1
}

// press gives the editor a key in the form that it knows; others do nothing.
func (k *keyboard) press(sequence string) {
	if k.pasting && sequence != pasteEnd {
		return
	}
	switch sequence {
	case pasteStart, pasteEnd:
		k.pasting, k.ended = sequence == pasteStart, false
	case "\x1b[1~", "\x1b[7~":
		sequence = "\x1b[H"
	case "\x1b[4~", "\x1b[8~":
		sequence = "\x1b[F"
	case "\x1b[1;5C":
		sequence = "\x1b[1;3C"
	case "\x1b[1;5D":
		sequence = "\x1b[1;3D"
	case "\x1b[A", "\x1b[B", "\x1b[C", "\x1b[D", "\x1b[H", "\x1b[F", "\x1b[3~", "\x1b[1;3C", "\x1b[1;3D":
	default:
		return
	}
	k.keys = append(k.keys, sequence...)
}
