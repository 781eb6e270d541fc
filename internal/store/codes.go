package store

import (
	"database/sql"
	"time"
)

// Purpose is what a one-time code is good for.
type Purpose uint8

// A claiming code makes a room the first of a collective, a joining code makes
// it a further room of one.
const (
	Claiming Purpose = iota + 1
	Joining
)

// String returns the word for logs.
func (p Purpose) String() string {
	switch p {
	case Claiming:
		return "claim"
	case Joining:
		return "join"
	}
	return "purpose not said"
}

// Code is what a one-time code opens. The book knows only the hash of the code
// itself.
type Code struct {
	Purpose    Purpose
	Collective CollectiveID // zero for a collective still to be founded
	Expires    time.Time
}

// PutCode keeps a code under its hash until it is taken or expires.
func (tx *Tx) PutCode(hash []byte, c Code) error {
	_, err := tx.exec(`
		INSERT INTO code (hash, purpose, collective, expires_ms)
		VALUES (:hash, :purpose, :collective, :expires)`,
		p("hash", hash), p("purpose", c.Purpose), p("collective", orNull(c.Collective)), p("expires", toMS(c.Expires)))
	return err
}

// TakeCode uses a code up. [ErrNotFound] means that there is no such code, that
// it was used, or that it has expired.
func (tx *Tx) TakeCode(hash []byte, now time.Time) (c Code, err error) {
	if _, err := tx.exec(`DELETE FROM code WHERE expires_ms <= :now`, p("now", toMS(now))); err != nil {
		return Code{}, err
	}
	var collective sql.NullInt64
	var expires int64
	err = tx.row(`DELETE FROM code WHERE hash = :hash RETURNING purpose, collective, expires_ms`, p("hash", hash)).
		Scan(&c.Purpose, &collective, &expires)
	c.Collective, c.Expires = CollectiveID(collective.Int64), fromMS(expires)
	return c, err
}

// DropCodes withdraws all codes for a purpose, as when the operator is shown a
// new claiming code.
func (tx *Tx) DropCodes(purpose Purpose) error {
	_, err := tx.exec(`DELETE FROM code WHERE purpose = :purpose`, p("purpose", purpose))
	return err
}

// CodeTries counts the wrong codes said in a room within this hour (UTC).
func (tx *Tx) CodeTries(door, address string, now time.Time) (tries int, err error) {
	err = tx.row(`
		SELECT coalesce(sum(tries), 0) FROM code_try
		WHERE hour = :hour AND door = :door AND address = :address`,
		p("hour", hourOf(now)), p("door", door), p("address", address)).Scan(&tries)
	return tries, err
}

// MissCode counts one wrong code more, and forgets the counts of earlier hours.
func (tx *Tx) MissCode(door, address string, now time.Time) error {
	if _, err := tx.exec(`DELETE FROM code_try WHERE hour < :hour`, p("hour", hourOf(now))); err != nil {
		return err
	}
	_, err := tx.exec(`
		INSERT INTO code_try (door, address, hour, tries) VALUES (:door, :address, :hour, 1)
		ON CONFLICT (hour, door, address) DO UPDATE SET tries = tries + 1`,
		p("door", door), p("address", address), p("hour", hourOf(now)))
	return err
}

func hourOf(t time.Time) int64 { return t.Unix() / 3600 }
