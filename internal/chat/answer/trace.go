package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// trace is to come.
func (t *turn) trace(_ phrase.Trace, _ scene) (chat.Post, error) { return wording.NotUnderstood(), nil }
