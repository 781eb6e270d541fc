package chat

// Photo is a picture that came with a message. Its bytes go into the book with what
// the message says, and come out again as they were: nobody decodes them.
type Photo struct {
	// Name is what the platform calls it; it decides nothing.
	Name string
	// Type is its media type by the word of the platform.
	Type string
	// Size is in bytes, also of one that the door did not fetch.
	Size int64
	// Data is the picture itself; empty for one that is larger than [MaxPhoto],
	// which a door leaves where it is.
	Data []byte
}

// MaxPhoto is the size in bytes up to which a photo is kept, MaxPhotos how many of
// one message are.
const (
	MaxPhoto  = 5 << 20
	MaxPhotos = 4
)

// TooLarge reports whether a photo is not kept for its size.
func (p Photo) TooLarge() bool { return p.Size > MaxPhoto || len(p.Data) > MaxPhoto }

// Ending is what a file of the photo's type is called at its end, with the dot. It
// is false for a type that is no picture.
func (p Photo) Ending() (string, bool) { return PhotoEnding(p.Type) }

// PhotoEnding is the end of a file's name for a media type of pictures, with the dot;
// false for any other type.
func PhotoEnding(mediaType string) (string, bool) {
	switch mediaType {
	case "image/jpeg":
		return ".jpg", true
	case "image/png":
		return ".png", true
	case "image/webp":
		return ".webp", true
	case "image/heic":
		return ".heic", true
	}
	return "", false
}
