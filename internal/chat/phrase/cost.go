package phrase

// The cost of a reading, in points. A reading is taken when it costs at most
// costTaken; above that it was nearly understood, or it is chatter. Known words
// that a grammar uses, and filler, are free.
const (
	// costUnknown is a word or number that no grammar had a use for. One alone
	// spoils a reading: a word not understood can turn the meaning round.
	costUnknown = 10
	// costMended is a word that was taken for a misspelling of a known one.
	costMended = 2
	// costFiller is charged for each word of filler over freeFiller and
	// fillerShare to each word with a meaning: kitchen talk is short, and long
	// messages are for people.
	costFiller  = 1
	freeFiller  = 12
	fillerShare = 1
	// costTaken is the most that a reading may cost.
	costTaken = 9
)

const (
	// maxRunes is the longest text that is read at all.
	maxRunes = 4096
	// maxQuoted is the most of a text that is quoted back.
	maxQuoted = 60
	// maxItems is the most kinds of things in one order.
	maxItems = 20
	// maxSegments is the most that is said in one breath.
	maxSegments = 12
	// maxUnknown ends the search: so many words unknown is chatter.
	maxUnknown = 4
	// nearUsed and nearShare say when a text was nearly understood: at least so
	// many words with a meaning, and so many to each one without.
	nearUsed  = 3
	nearShare = 2
)
