package phrase

// String prints the sentence so that it parses back.
func (Trace) String() string { return "" }
