// Package lines reads what is typed or piped in line by line, however long a line
// is. No line is an error: of one that is too long the beginning is kept.
package lines

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"strings"
)

const (
	// longest is how much of a line is kept, in bytes.
	longest = 64 << 10
	// longestSaid is how much of a message is handed on, in characters. It is more
	// than anybody reads, so that the answer can say that it was too much.
	longestSaid = 5000
)

// Reader reads lines.
type Reader struct{ from *bufio.Reader }

// NewReader reads lines from r.
func NewReader(r io.Reader) *Reader { return &Reader{bufio.NewReaderSize(r, longest)} }

// Next is the next line, without its end and as valid UTF-8. What of a line goes
// beyond 64 KiB is dropped. The last line may lack its end. The error is io.EOF
// behind the last line, or that of the reader.
func (r *Reader) Next() (string, error) {
	line, err := r.from.ReadSlice('\n')
	text := string(line)
	for errors.Is(err, bufio.ErrBufferFull) {
		_, err = r.from.ReadSlice('\n')
	}
	if err != nil && (text == "" || !errors.Is(err, io.EOF)) {
		return "", err
	}
	return strings.ToValidUTF8(strings.TrimSuffix(strings.TrimSuffix(text, "\n"), "\r"), "\uFFFD"), nil
}

// Ahead is the line that Next will give, if all of it has been read already
// together with the one before: it waits for nothing.
func (r *Reader) Ahead() (string, bool) {
	got, _ := r.from.Peek(r.from.Buffered()) // what is there already can be had
	line, _, whole := bytes.Cut(got, []byte("\n"))
	return strings.TrimSuffix(string(line), "\r"), whole
}

// Said cuts a message that is too long to be read at all, after 5,000 characters.
func Said(text string) string {
	count := 0
	for i := range text {
		if count == longestSaid {
			return text[:i]
		}
		count++
	}
	return text
}
