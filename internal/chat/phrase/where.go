package phrase

import "ryebell/internal/kitchen"

var whereGrammar = grammar{
	kind: KindWhereIs,
	examples: []string{
		"where is 12.3", "wheres 12.3", "where did 12.3 go", "where are 12.1-4",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("where is", "where's", "wheres", "where are", "where did", "where has", "where have", "where do i find", "where can i find", "where does", "where do", "where was", "who has",
			"who took", "where to find", "which place is", "place of")
		if !ok {
			return nil, c, false
		}
		of, d, ok := whereMeant(d)
		if !ok {
			return nil, c, false
		}
		d = d.over("gone", "go", "gone to", "went", "now", "then", "stand", "standing", "stands", "kept", "live", "at", "right now", "again", "put", "moved", "moved to", "been", "been put", "these days")
		d.plain = true
		return WhereIs{Of: of}, d, d.parted().ends()
	},
}

// String prints the question so that it parses back.
func (w WhereIs) String() string { return "where is " + meantText(w.Of) }

// whereMeant takes the units that are asked for.
func whereMeant(c cursor) (Meant, cursor, bool) {
	for _, d := range [...]cursor{c, c.over("the", "our", "my")} {
		if name, e, ok := d.ownUnit(); ok {
			return Meant{Names: []string{name}}, e, true
		}
	}
	d := c.over("the", "our", "all of", "my", "unit", "units")
	switch t := d.token().(type) {
	case RunRef:
		return Meant{Refs: []kitchen.Ref{t.Ref}}, d.use(1), true
	case Number:
		if t.Ref != nil {
			return Meant{Refs: []kitchen.Ref{*t.Ref}}, d.use(1), true
		}
	}
	return Meant{}, c, false
}

func meantText(m Meant) string {
	if len(m.Names) > 0 {
		return m.Names[0]
	}
	return m.Refs[0].String()
}
