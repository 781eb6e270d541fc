// Package outbox carries the posts that the book holds to the doors. A post is a
// row, written in the transaction of the turn that it answers; this package sends
// the row through its door and marks it once the platform has confirmed.
//
// The one idea to have understood: a row is lost by no crash. It is marked after
// it was sent, so a crash in between sends it again. A door that can tell a repeat
// makes an idempotency key from the row, and nothing comes twice; through another
// door one post may, at most one of each room in a crash. That is why a row is
// marked at once.
//
// Rows go out in order within a room, and the next goes when the last is marked.
// Rooms don't wait for each other: a bounded number of posts is on its way through
// a door at once, and some of these berths are kept free for posts that guard a hot
// cooker, which overtake. Of several waiting rows for one slot the newest
// is sent alone.
//
// The package does not know what it carries, and decides nothing about whom
// it goes to.
package outbox
