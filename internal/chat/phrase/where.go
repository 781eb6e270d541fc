package phrase

var whereGrammar = grammar{
	kind: KindWhereIs,
	examples: []string{
		"where is 12.3", "wheres 12.3", "where did 12.3 go", "where are 12.1-4", "where are the jars of 12", "where are the suspect ones of 12",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("where is", "where's", "wheres", "where are", "where did", "where has", "where have", "where do i find", "where can i find", "where does", "where do", "where was", "who has",
			"who took", "where to find", "which place is", "place of")
		if !ok {
			return nil, c, false
		}
		of, d, ok := d.meant(Meant{})
		if !ok {
			return nil, c, false
		}
		d = d.over("gone", "go", "gone to", "went", "now", "then", "stand", "standing", "stands", "kept", "live", "at", "right now", "again", "put", "moved", "moved to", "been", "been put", "these days")
		d.bare = !of.sure // people ask so of the bus, too
		d.plain = of.sure
		return WhereIs{Of: of.Meant}, d, (of.sure || of.wholeRun() || of.Vessel != 0 || of.State != 0) && d.parted().ends()
	},
}

// String prints the question so that it parses back.
func (w WhereIs) String() string { return "where is " + w.Of.String() }
