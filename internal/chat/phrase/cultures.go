package phrase

// String prints the telling so that it parses back.
func (MakeCulture) String() string { return "" }

// String prints the telling so that it parses back.
func (EndCulture) String() string { return "" }

// String prints the question so that it parses back.
func (Cultures) String() string { return "" }
