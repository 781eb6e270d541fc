package phrase

func (l *lexer) when(i int) int { return i }
func (l *lexer) mend()          {}
