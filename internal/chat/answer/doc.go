// Package answer is the responder: what comes in through a door becomes entries,
// pings and posts.
//
// The one idea to have understood: one message is one transaction. [Answerer.Turn]
// marks the event as handled, lets the handler of what was meant write its
// entries, makes the pings equal to what the state now wants and queues the
// answer, all in one [store.DB.Update]; so what was answered is in the book, and
// an event that comes twice is answered once. [Answerer.Ping] does the same for a
// ping that is due.
//
// A handler resolves (which plan, which member, which instant), asks the kitchen
// and hands the typed result to wording. It does no arithmetic and builds no
// sentence.
package answer
