package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// shelf is to come.
func (t *turn) shelf(_ phrase.Shelf) (chat.Post, error) { return wording.NotUnderstood(), nil }

// whereIs is to come.
func (t *turn) whereIs(_ phrase.WhereIs, _ scene) (chat.Post, error) {
	return wording.NotUnderstood(), nil
}
