package phrase

// String prints the sentence so that it parses back.
func (TellUnits) String() string { return "" }
