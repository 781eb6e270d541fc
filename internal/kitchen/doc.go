// Package kitchen is the trade: what a collective can own, do and say to have
// happened, and what follows from it.
//
// The one idea to have understood: nothing here is changed, it is derived. The
// book is a list of entries. [Settings] is a fold of the entries that change
// the kitchen, a [Plan] is worked out from an [Order] and the settings in force,
// and the pings that ought to exist are worked out from the state ([Settings]
// aside, by a method Wants). The same entries always give the same kitchen.
//
// The package is pure: it reads no clock, opens no file and builds no sentence.
// What cannot be done comes back as a [Refusal], which is data; the sentence is
// made elsewhere.
package kitchen
