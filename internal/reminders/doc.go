// Package reminders makes the book's pings fall due. What should be pinged is
// derived elsewhere and stands in the book as rows with a due time; this package
// waits for those times.
//
// It has three verbs. [Reminders.Next] says when the next row is due,
// [Reminders.FireDue] fires what is due at a given instant, and [Reminders.Run]
// is the loop over the two that sleeps in between. A rehearsal calls the first
// two with its own time and never the third.
//
// The one idea to have understood: the clock on the wall counts. Go's timers
// stand still while a machine sleeps, so Run never sleeps long without looking
// up, and compares wall times only. A row that fell due meanwhile fires at once.
//
// A [Calendar] says when something recurs, in the collective's own time zone. It
// only works out instants: what is to happen then is a row like any other.
package reminders
