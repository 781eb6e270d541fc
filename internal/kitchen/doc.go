// Package kitchen is the trade: what a collective can own, do and say to have
// happened, and what follows from it.
//
// The one idea to have understood: nothing here is changed, it is derived. The
// book is a list of entries. [Settings] is a fold of the entries that change
// the kitchen, a [Plan] is worked out from an [Order] and the settings in force,
// and the pings that ought to exist are worked out from the state ([Settings]
// aside, by a method Wants). The same entries always give the same kitchen.
//
// A [Run] is the fold of what was said of one load. What counts is when things
// happened, not when they were told: entries may be late, twice, out of order and
// by several people, and give the same run. A step that nobody reported is filled in
// by a later one and marked as not seen. What may follow what is one table, from
// which refusals, buttons ([Run.Next]) and the state diagram ([Diagram]) are made.
//
// The package is pure: it reads no clock, opens no file and builds no sentence.
// What cannot be done comes back as a [Refusal], which is data; the sentence is
// made elsewhere.
package kitchen
