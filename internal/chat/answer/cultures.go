package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
)

// makeCulture is to come.
func (t *turn) makeCulture(_ phrase.MakeCulture) (chat.Post, error) {
	return wording.NotUnderstood(), nil
}

// endCulture is to come.
func (t *turn) endCulture(_ phrase.EndCulture) (chat.Post, error) {
	return wording.NotUnderstood(), nil
}

// cultures is to come.
func (t *turn) cultures(_ phrase.Cultures) (chat.Post, error) { return wording.NotUnderstood(), nil }
