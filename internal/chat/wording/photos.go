package wording

import (
	"strconv"
	"strings"

	"ryebell/internal/chat"
)

// PhotosView is what became of the photos of a message that wrote something.
type PhotosView struct {
	Kept int
	// TooLarge and TooMany are over what is kept, Unknown are no pictures of a type
	// that is.
	TooLarge, TooMany, Unknown int
}

// WithPhotos says in an answer what became of the photos, in front of its next step.
func WithPhotos(p chat.Post, v PhotosView) chat.Post {
	var parts []string
	add := func(n int, one, many string) {
		switch {
		case n == 1:
			parts = append(parts, one)
		case n > 1:
			parts = append(parts, strconv.Itoa(n)+many)
		}
	}
	add(v.Kept, "Photo kept.", " photos kept.")
	add(v.TooLarge, "Photo too large: not kept, "+strconv.Itoa(chat.MaxPhoto>>20)+nb+"MB at most.", " photos too large: not kept, "+strconv.Itoa(chat.MaxPhoto>>20)+nb+"MB at most.")
	add(v.TooMany, "One more not kept: "+strconv.Itoa(chat.MaxPhotos)+" a message.", " more not kept: "+strconv.Itoa(chat.MaxPhotos)+" a message.")
	add(v.Unknown, "One is no photo: not kept.", " are no photos: not kept.")
	return beforeNext(p, say(strings.Join(parts, " ")))
}

// PhotosNotKept says in an answer that nothing was written which photos could be kept
// with.
func PhotosNotKept(p chat.Post, n int) chat.Post {
	what := "Photo"
	if n > 1 {
		what += "s"
	}
	return beforeNext(p, say(what+" not kept: nothing was written."))
}

// PhotoAlone is for a photo that nothing was said with.
func PhotoAlone() chat.Post {
	return lines("**Photo not kept**: nothing was said with it.", "Next: send it with what it shows, like `12.3 green`")
}

// beforeNext puts a paragraph into a post, in front of the next step if it names one.
func beforeNext(p chat.Post, para chat.Para) chat.Post {
	blocks, tail := p.Blocks, []chat.Block(nil)
	if n := len(blocks) - 1; n >= 0 && isNext(blocks[n]) {
		blocks, tail = blocks[:n:n], blocks[n:]
	}
	p.Blocks = append(append(blocks[:len(blocks):len(blocks)], para), tail...)
	return p
}

func isNext(b chat.Block) bool {
	para, ok := b.(chat.Para)
	if !ok || len(para) == 0 {
		return false
	}
	text, ok := para[0].(chat.Text)
	return ok && strings.HasPrefix(string(text), "Next:")
}
