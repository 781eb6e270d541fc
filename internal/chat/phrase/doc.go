// Package phrase understands what people type. [Lex] cuts a text into tokens,
// words with their meaning; grammars, one to an intent, take tokens from a
// cursor; [Parse] picks the reading that takes most at the least cost.
//
// The one idea to have understood: nothing is guessed. A text is read as a
// whole or not at all. A gap in it becomes one [Question], whose answers are
// whole sentences ([Complete] makes one of a reply), a word too much makes it
// [Near], and talk between people is the zero [Parsed].
//
// An intent says only what was said. Which run, which instant and which cooker
// are meant is settled elsewhere, where the book is. Every intent prints back
// (String) to a sentence that reads as the same intent, so that a button can be
// a sentence.
//
// To add an intent: its type in intent.go, a file with its grammar and String,
// and one line in the registry of parse.go. The package reads no clock and does
// no I/O; time is linear in the length of the text.
package phrase
