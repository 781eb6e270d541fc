package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// readyWhen is to come.
func (t *turn) readyWhen(_ phrase.ReadyWhen, _ scene) (chat.Post, error) {
	return wording.NotUnderstood(), nil
}
