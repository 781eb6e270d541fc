package phrase

import "ryebell/internal/kitchen"

// Names are the names that this collective gave: what a word can mean beyond
// the vocabulary.
type Names struct {
	Cookers []string
	Members []string
	// Cultures are those that a limit was set for.
	Cultures []string
	// Sources are the names of the cultures in the book, living ones first; Units the
	// own names of the units that stand, Places where they stand.
	Sources []string
	Units   []string
	Places  []string
	// Quarts says whose quarts and pints are meant.
	Quarts kitchen.Measure
}

// Parsed is what a text was understood as. At most one of the fields is set;
// all empty means: chatter, nothing was meant for the bot.
type Parsed struct {
	// Intents holds the one clear reading; several when several things were
	// said in one breath ("we're at 1600 m, 3 bags 5lb agar").
	Intents []Intent
	// Ask is set when the text means one of several things, or lacks something
	// without which nothing can be answered.
	Ask *Question
	// Near is set when the text was nearly understood.
	Near *Near
	// Bare is set for words that people also say to each other ("now", "yes",
	// "thanks", a bare number): they count only where they fit.
	Bare Bareness
	// Mended lists words that were taken for a misspelling, as read.
	Mended []string
}

// Bareness says whether a text is also said between people.
type Bareness uint8

// The zero Bareness is a text plainly meant for the bot when it parses.
const (
	// Plainly meant: it parses as a whole and people don't say it to each other.
	Plainly Bareness = iota
	// Loosely said: "thanks", "hi", "undo that", "now".
	Loosely
)

// Question is the one short question that settles a text.
type Question struct {
	Gap Gap
	// About is the part of the text in question, as typed: "16 quarts".
	About string
	// Options are the likely answers, likeliest first, at most four.
	Options []Option
}

// Option is one answer to a question: Label in a word or two of the
// vocabulary, Say the whole sentence that it completes the text to.
type Option struct {
	Label string
	Say   string
}

// Gap is what a question asks for.
type Gap uint8

// The gaps.
const (
	// WhichSize: "5 jars".
	WhichSize Gap = iota + 1
	// WhichVessel: "3 5lb": of what?
	WhichVessel
	// MoistureOrRatio: "2 kg at 45%".
	MoistureOrRatio
	// WhichRoute: two routes for one item.
	WhichRoute
	// WhichGrain: two grains for one item, or a word near two grains.
	WhichGrain
	// PotOrJars: "big pot holds 16 quarts".
	PotOrJars
	// JarWeightOrVolume: "2 8-ounce jars".
	JarWeightOrVolume
	// EachOrTogether: "2 jars (about 4 cups)".
	EachOrTogether
	// WhichScale: "60" on a bag, of which scale is meant.
	WhichScale
	// WhichHalf: half of the day not said, both possible.
	WhichHalf
	// WhichWord: a misspelt word near two known ones.
	WhichWord
	// WhichLength: "altitude 1600" of metres or feet.
	WhichLength
)

// Near is a text that was nearly understood.
type Near struct {
	Trouble Trouble
	// Got is the part understood, printed back; Missed the part not, as typed;
	// each clipped to 60 characters.
	Got, Missed string
	// Example is the nearest sentence that would have worked, made of what was
	// understood.
	Example string
	// Topic is the subject of the help that the words name as well, if they do:
	// "jars" is the beginning of an order, or a question about jars.
	Topic kitchen.Topic
	// Cooked is what the text says of units that nothing is on yet: "blue" is a culture
	// then, and else a colour. Nil for nothing.
	Cooked Intent
}

// Trouble says why a text was only nearly understood.
type Trouble uint8

// The troubles.
const (
	// LeftOver: part of the text fits nowhere.
	LeftOver Trouble = iota + 1
	// WrongUnit: a unit that cannot size this thing ("3 bags 5 km").
	WrongUnit
	// NotWhole: a count that is not a whole number ("2.5 bags").
	NotWhole
	// NotSuited: a grain that will not do ("cracked corn").
	NotSuited
	// Incomplete: the beginning of something ("bags").
	Incomplete
	// TooLong: more than 4,096 characters.
	TooLong
	// Bound: "over 4 oz", "10 to 20 kg": a bound or range where one number is needed.
	Bound
	// Numberless: a new culture without a number or a name ("new lc from plate 2").
	Numberless
	// TooMany: more than 20 kinds of things in one order.
	TooMany
)
