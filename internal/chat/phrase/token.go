package phrase

import (
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/kitchen"
)

// Extent is the part of the text a token was read from, in bytes: [Start, End).
type Extent struct{ Start, End int }

// Token is a word of the message with its meaning, as far as the word alone
// tells. The cases are the types of this file. A grammar looks for the few it
// can use, so that its switches need not name them all.
type Token interface {
	Extent() Extent
	// TakenFor is the word that a misspelt one was taken for, if it was.
	TakenFor() string
	token()
}

// at is embedded in every token.
type at struct {
	ext Extent
	as  string
}

func (a at) token() {}

// Extent returns the bytes of the text that the token was read from.
func (a at) Extent() Extent { return a.ext }

// TakenFor returns the word that a misspelt one was taken for, and nothing for
// one spelt right.
func (a at) TakenFor() string { return a.as }

// Number is a number without a unit. Whole tells 3 and 3.0 from three and a half.
type Number struct {
	at
	Value float64
	Whole bool
	// Word is true when it was spelt out or an article: "three", "a dozen", "a".
	Word bool
	// Times is true for 3x, x3 and 3 x: it can only be a count.
	Times bool
	// Mixed is true for a whole number, a space and a fraction, "3 1/2", which
	// in front of a jar can also be a count and a size.
	Mixed bool
	// Ref is set for a number such as 12.3 that can also be unit 3 of run 12.
	Ref *kitchen.Ref
}

// Unclear is a number that nobody can read for sure, such as 1000,100 or
// 1/2,3 or 2mil: no grammar takes it for an amount. A unit beside it belongs
// to it.
type Unclear struct{ at }

// Range is two numbers or a bound where one is needed: 10-20 kg, over 4 oz. A
// missing end is infinite. Senses are those of the unit, if there was one, with
// the Value of one such unit for Length, Mass and the like (zero for
// temperatures, which have no common factor).
type Range struct {
	at
	Lo, Hi float64
	Senses []Sense
}

// Percent is a number with a per cent sign or word.
type Percent struct {
	at
	Value float64
}

// Dimension is what a unit measures.
type Dimension uint8

// The dimensions people type. A unit such as "c" (cup or degrees Celsius), "m"
// (metres or minutes), "oz" (of weight or fluid) or "#" has several.
const (
	Mass Dimension = iota + 1
	Volume
	Temperature
	Pressure
	Length
	Duration
	Money
	// Other is what nothing here is measured in: miles an hour, watts.
	Other
)

// Sense is one meaning of a quantity: in grams, litres, degrees Celsius,
// kilopascals gauge, metres, seconds, or the currency named by Unit.
type Sense struct {
	Dim   Dimension
	Value float64
	// Unit is the canonical name of the unit typed: "lb", "quart", "psi", "ft".
	Unit string
}

// Quantity is a number with a unit. Senses holds every meaning it can have,
// the usual one first; a grammar asks for the dimension it needs.
type Quantity struct {
	at
	Number float64
	Senses []Sense
	// Mixed is as in [Number]: "3 1/2 gallon" before jars can be three of a half.
	Mixed bool
}

// RunRef is #12, 12.1-4, #12.3.
type RunRef struct {
	at
	Ref kitchen.Ref
}

// Tag is a free word with a # in front, #soak24: without it, folded.
type Tag struct {
	at
	Text string
}

// When is a time of day, a day, a time gone by or to come: see [Moment].
type When struct {
	at
	Moment Moment
}

// Period is a length of time: 2h30m, 90 min, an hour and a half.
type Period struct {
	at
	Length time.Duration
}

// Interval is a from–to: 10-14, 10am to 2pm, sat 10-14.
type Interval struct {
	at
	From, To Moment
}

// VesselWord is jar, jars, bag, bags; or a word that says the size as well, such
// as pints or quarts, when a jar is meant (Container then has the size).
type VesselWord struct {
	at
	Container kitchen.Container
}

// GrainWord names a grain.
type GrainWord struct {
	at
	Grain grain.Kind
}

// Unsuited is a grain that won't do, such as cracked corn.
type Unsuited struct {
	at
	Name string
}

// RouteWord names a route of inoculation.
type RouteWord struct {
	at
	Route kitchen.Route
}

// Name is a name of this collective: of a cooker, member, lot or culture.
type Name struct {
	at
	Of   NameKind
	Text string // as the collective writes it
}

// NameKind says what a name names.
type NameKind uint8

// The kinds of names that a collective gives.
const (
	CookerName NameKind = iota + 1
	MemberName
)

// Word is any other word, folded; Class is what the vocabulary knows of it.
type Word struct {
	at
	Text  string // folded: lower case, straight quotes, normal width
	Class Class
	// Mended lists the known words that an unknown one is a misspelling of, when
	// there are several. With one alone the token is that word's.
	Mended []string
}

// Mark is punctuation that can separate or divide: , + & ; : ? ! . / ( ) - # %
// and a line break.
type Mark struct {
	at
	Rune rune
}
