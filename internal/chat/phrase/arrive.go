package phrase

// String prints the sentence so that it parses back.
func (Arrive) String() string { return "" }
