package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// arrive is to come.
func (t *turn) arrive(_ phrase.Arrive) (chat.Post, error) { return wording.NotUnderstood(), nil }
