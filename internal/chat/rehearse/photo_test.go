package rehearse

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"
)

// The made-up photo is a picture that can be opened, the same each time and another
// for another name.
func TestPhoto(t *testing.T) {
	p := photo("photo-event-5")
	if p.Name != "photo-event-5.png" || p.Type != "image/png" || p.Size != int64(len(p.Data)) || p.TooLarge() {
		t.Errorf("%+v", p)
	}
	img, err := png.Decode(bytes.NewReader(p.Data))
	if err != nil {
		t.Fatal(err)
	}
	if got := img.Bounds(); got != image.Rect(0, 0, 1, 1) {
		t.Errorf("bounds %v", got)
	}
	if got := color.GrayModel.Convert(img.At(0, 0)); got != (color.Gray{Y: 0x80}) {
		t.Errorf("colour %v", got)
	}
	if !bytes.Equal(p.Data, photo("photo-event-5").Data) || bytes.Equal(p.Data, photo("photo-event-6").Data) {
		t.Error("a photo is not the bytes of its name")
	}
}
