package wording

import (
	"testing"

	"ryebell/internal/chat"
)

// What is said of photos, as it reads.
func TestPhotos(t *testing.T) {
	answer := lines("**#12.3** green.", "Next: throw it out.")
	for _, tt := range []struct {
		view PhotosView
		want string
	}{
		{PhotosView{Kept: 1}, "Photo kept."},
		{PhotosView{Kept: 3}, "3 photos kept."},
		{PhotosView{TooLarge: 1}, "Photo too large: not kept, 5 MB at most."},
		{PhotosView{Kept: 1, TooLarge: 2}, "Photo kept. 2 photos too large: not kept, 5 MB at most."},
		{PhotosView{Kept: 4, TooMany: 1}, "4 photos kept. One more not kept: 4 a message."},
		{PhotosView{Kept: 4, TooMany: 3}, "4 photos kept. 3 more not kept: 4 a message."},
		{PhotosView{Unknown: 1}, "One is no photo: not kept."},
	} {
		if got, want := chat.Plain(WithPhotos(answer, tt.view), 200), "#12.3 green.\n"+tt.want+"\nNext: throw it out."; got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
	if got, want := chat.Plain(PhotosNotKept(lines("Which one?"), 2), 200), "Which one?\nPhotos not kept: nothing was written."; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if n := len(answer.Blocks); n != 2 {
		t.Errorf("the answer itself was changed: %d blocks", n)
	}
}
