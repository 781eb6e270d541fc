package phrase

// Class is what the vocabulary knows of a word that has no token of its own.
type Class uint8

// The classes; Unknown is a word that the vocabulary doesn't have.
const (
	Unknown Class = iota
	// Filler carries nothing: please, the, for, of, some, ok.
	Filler
	// Asking begins a question: how, what, when, which, can, is.
	Asking
	// Greeting is hi, hello, morning.
	Greeting
	// Thanking is thanks, thx, cheers.
	Thanking
	// Agreeing is yes, ok; Denying is no, not, nope.
	Agreeing
	Denying
	// Joining is and, plus, or, with.
	Joining
	// Pronoun is i, we, you, it, that.
	Pronoun
	// Trade is a word that some intent needs: holds, cook, reading, gauge.
	Trade
	// Calendar is a word of days and hours that made no moment by itself:
	// march, sat, now, morning.
	Calendar
	// Measuring is a unit without a number: degrees, psi, pounds.
	Measuring
	// Ordinal is first, second, 3rd.
	Ordinal
	// Everyday is one of the commonest words of English, known so that it is
	// never taken for a misspelling of something else.
	Everyday
)
