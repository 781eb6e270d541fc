package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// tellUnits is to come.
func (t *turn) tellUnits(_ phrase.TellUnits, _ scene) (chat.Post, error) { return wording.NotUnderstood(), nil }
