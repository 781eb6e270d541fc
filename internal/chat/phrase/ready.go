package phrase

// String prints the sentence so that it parses back.
func (ReadyWhen) String() string { return "" }
