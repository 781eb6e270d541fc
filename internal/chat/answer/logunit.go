package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// logUnit is to come.
func (t *turn) logUnit(_ phrase.LogUnit, _ scene) (chat.Post, error) {
	return wording.NotUnderstood(), nil
}
