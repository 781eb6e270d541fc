// Package store keeps the book in one SQLite file. It is the only place with
// SQL.
//
// The one idea to have understood: one turn is one [DB.Update]. The inbox mark,
// the entries, the pings that the new state wants and the posts that answer are
// written by the same transaction, so that after a crash either all of them are
// there or none. What Update returned nil for has survived a power cut.
//
// Whatever belongs to a collective is reached through [Tx.Book], which binds the
// collective in every statement: a number, name, key or tap of another
// collective finds nothing. Only what comes before a collective is known (rooms
// by address, accounts, codes) and what serves all of them (the outbox by door,
// the pings that are due) hangs on [Tx] itself.
//
// The log of entries is a hash chain per collective, see [Book.VerifyChain]. The
// posts are bytes that the store does not understand.
//
// Once begun, a transaction runs to its end whatever becomes of the caller's
// context; so the methods of Tx and Book take none. They must be used by one
// goroutine, and not after the function that got them has returned.
package store
