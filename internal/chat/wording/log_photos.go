package wording

import (
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
)

// LogPhoto is a photo that a story is told with.
type LogPhoto struct {
	ID   int64 // of the photo in the book
	Type string
	At   time.Time // when what came with it happened
}

// shownPhotos is how many photos a story shows.
const shownPhotos = 4

// photosShown says which photos come with a story.
func photosShown(all []LogPhoto, now time.Time) chat.Para {
	switch n := len(all); {
	case n == 0:
		return nil
	case n == 1:
		return say("One photo, of " + dateOf(now, all[0].At) + ".")
	case n <= shownPhotos:
		return say(strconv.Itoa(n) + " photos, the newest last.")
	default:
		return say("The newest " + strconv.Itoa(shownPhotos) + " of " + strconv.Itoa(n) + " photos.")
	}
}

// photoFiles are the newest photos of what has a number such as #12.3, each named
// after it and its day.
func photoFiles(no string, all []LogPhoto, now time.Time) []chat.File {
	first := max(0, len(all)-shownPhotos)
	var out []chat.File
	for i, p := range all[first:] {
		ending, ok := chat.PhotoEnding(p.Type)
		if !ok {
			continue
		}
		name := strings.TrimPrefix(no, "#") + "-" + p.At.In(now.Location()).Format(time.DateOnly) + "-" + strconv.Itoa(first+i+1) + ending
		out = append(out, chat.File{Name: name, Type: p.Type, Kept: p.ID})
	}
	return out
}
