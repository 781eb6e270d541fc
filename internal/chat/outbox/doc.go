// Package outbox carries the posts that the book holds to the doors. A post is a
// row, written in the transaction of the turn that it answers; this package sends
// the row through its door and marks it once the platform has confirmed.
//
// The one idea to have understood: a row is lost by no crash. It is marked after
// it was sent, so a crash in between sends it again. A door that can tell a repeat
// makes an idempotency key from the row, and nothing comes twice; through another
// door one post may, at most one in each crash. That is why a sent row is marked
// at once, in a transaction of its own. What was postponed or refused is marked
// together with others, since nothing is repeated when that mark is lost.
//
// Rows go out in order within a room; rooms don't wait for each other. Posts that
// guard a hot cooker overtake. Of several waiting rows for one slot the newest
// is sent alone.
//
// The package does not know what it carries, and decides nothing about whom
// it goes to.
package outbox
