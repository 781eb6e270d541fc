package phrase

// String prints the sentence so that it parses back.
func (LogUnit) String() string { return "" }
