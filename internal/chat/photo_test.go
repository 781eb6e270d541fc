package chat_test

import (
	"testing"

	"ryebell/internal/chat"
)

func TestPhotoTooLarge(t *testing.T) {
	for name, c := range map[string]struct {
		photo chat.Photo
		want  bool
	}{
		"as large as may be":            {chat.Photo{Size: chat.MaxPhoto, Data: make([]byte, chat.MaxPhoto)}, false},
		"a byte more":                   {chat.Photo{Size: chat.MaxPhoto + 1}, true},
		"larger than the platform says": {chat.Photo{Size: 10, Data: make([]byte, chat.MaxPhoto+1)}, true},
	} {
		if got := c.photo.TooLarge(); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestPhotoEnding(t *testing.T) {
	for mediaType, want := range map[string]string{
		"image/jpeg": ".jpg", "image/png": ".png", "image/webp": ".webp", "image/heic": ".heic",
		"image/svg+xml": "", "text/html": "", "application/pdf": "", "": "", "IMAGE/PNG": "",
	} {
		got, ok := chat.Photo{Type: mediaType}.Ending()
		if got != want || ok != (want != "") {
			t.Errorf("%q: %q, %v, want %q", mediaType, got, ok, want)
		}
	}
}
