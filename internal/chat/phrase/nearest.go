package phrase

import (
	"slices"
	"strconv"
)

// Nearest is a sentence that works, near to a text that nothing could be made of, by
// the words in it: what stands on a shelf, or a culture. False for other talk.
func Nearest(text string, names Names) (string, bool) { return read(text, names).nearest() }

// hereWords are said of what is there, or came here.
var hereWords = set(`shelf shelves fridge old since have got bought here arrived already left found there stock`)

func (s *sentence) nearest() (string, bool) {
	var noun string
	var counts, here bool
	for c := (cursor{s: s}); !c.done(); c.i++ {
		switch t := c.token().(type) {
		case VesselWord:
			counts = true
		case Quantity:
			_, volume := t.sense(Volume)
			counts = counts || volume
		}
		here = here || hereWords[c.word(0)]
		if _, _, species := c.surelySpecies(); species {
			here = true
		}
		if n, kind, _, _, ok := c.cultureNoun(); ok && kind != 0 && noun == "" {
			noun = n
		}
	}
	switch {
	case counts && here:
		return arriveGrammar.examples[0], true
	case noun != "":
		return "new " + noun + " " + strconv.Itoa(s.names.nextOf(noun)) + ", blue oyster", true
	}
	return "", false
}

// writingKinds are kinds that write: put together, what was read of a text in pieces
// says something that nobody said.
var writingKinds = []Kind{KindTell, KindTellUnits, KindArrive, KindMakeCulture, KindEndCulture}

// scattered reports whether a text was read in pieces of which one would write.
func (r reading) scattered() bool {
	if len(r.kinds) < 2 {
		return false
	}
	writes := func(k Kind) bool { return slices.Contains(writingKinds, k) }
	return slices.ContainsFunc(r.kinds, writes) && slices.ContainsFunc(r.kinds, func(k Kind) bool { return k != r.kinds[0] })
}
