package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/binary"
	"encoding/json"
	"fmt"

	"ryebell/internal/kitchen"
)

// link is an entry as the chain sees it: stored values, nothing decoded.
type link struct {
	no, strucker  kitchen.EntryNo // strucker is derived and not part of the hash
	by            kitchen.MemberNo
	room          RoomID
	at, written   int64
	subject, kind string
	version       int
	body, salt    []byte
	said          sql.NullString
	digest, hash  [sha256.Size]byte
}

// chainForm stands first in what is hashed. It changes when the fields or their
// order do.
const chainForm = "ryebell entry 1"

// sum is SHA-256 over the hash before and the entry: numbers as eight bytes, the
// most significant first, texts with their length before them. The typed text is
// in it as the digest of salt and text only, so that it can be blanked and the
// chain still holds.
func (k link) sum(prev [sha256.Size]byte) [sha256.Size]byte {
	buf := make([]byte, 0, 256+len(k.body))
	text := func(s []byte) {
		buf = binary.BigEndian.AppendUint64(buf, uint64(len(s)))
		buf = append(buf, s...)
	}
	text([]byte(chainForm))
	text(prev[:])
	for _, n := range []int64{int64(k.no), int64(k.by), int64(k.room), k.at, k.written, int64(k.version)} {
		buf = binary.BigEndian.AppendUint64(buf, uint64(n))
	}
	text([]byte(k.subject))
	text([]byte(k.kind))
	text(k.body)
	text(k.digest[:])
	return sha256.Sum256(buf)
}

func readLink(s scanner) (k link, err error) {
	var by, room, struck sql.NullInt64
	var digest, hash []byte
	err = s.Scan(&k.no, &k.subject, &by, &room, &k.at, &k.written, &k.kind, &k.version, &k.body,
		&k.said, &k.salt, &digest, &hash, &struck)
	k.by, k.room, k.strucker = kitchen.MemberNo(by.Int64), RoomID(room.Int64), kitchen.EntryNo(struck.Int64)
	copy(k.digest[:], digest)
	copy(k.hash[:], hash)
	return k, err
}

// VerifyChain reads the whole log of the collective and checks that every entry
// is as it was written: its hash, that of the entry before it, the numbers
// without a gap, the typed text where it was not blanked, and the marks of struck
// entries. The error wraps [ErrDamaged] and names the first entry that is not.
// Entries missing at the very end can't be noticed.
func (b *Book) VerifyChain(ctx context.Context) error {
	c := check{strikes: map[kitchen.EntryNo]kitchen.EntryNo{}, marks: map[kitchen.EntryNo]kitchen.EntryNo{}}
	for {
		if err := ctx.Err(); err != nil {
			return err
		}
		links, err := each(b.tx, readLink, `
			SELECT number, subject, member, room, at_ms, written_ms, kind, version, body,
				said, salt, digest, hash, struck_by
			FROM entry WHERE collective = :collective AND number > :no ORDER BY number LIMIT 1000`,
			b.bound(), p("no", c.last.no))
		if err != nil {
			return fmt.Errorf("%w behind entry %d: %w", ErrDamaged, c.last.no, err)
		}
		for _, k := range links {
			if err := c.next(k); err != nil {
				return fmt.Errorf("%w: entry %d: %w", ErrDamaged, c.last.no+1, err)
			}
		}
		if len(links) == 0 {
			return c.compareStrikes()
		}
	}
}

// check walks along a chain.
type check struct {
	last           head
	strikes, marks map[kitchen.EntryNo]kitchen.EntryNo // struck entry → the one that did it
}

// damage says in what an entry differs from what was written.
type damage string

func (d damage) Error() string { return string(d) }

func (c *check) next(k link) error {
	if k.no != c.last.no+1 {
		return damage("is missing")
	}
	if k.sum(c.last.hash) != k.hash {
		return damage("does not match its hash")
	}
	blanked := !k.said.Valid && len(k.salt) == 0
	if !blanked && digestOf(k.salt, k.said.String) != k.digest {
		return damage("the typed text does not match its digest")
	}
	if k.kind == "struck" {
		var s kitchen.Struck
		if err := json.Unmarshal(bytes.Clone(k.body), &s); err != nil {
			return damage("can't be read")
		}
		c.strikes[s.No] = k.no
	}
	if k.strucker != 0 {
		c.marks[k.no] = k.strucker
	}
	c.last = head{no: k.no, hash: k.hash}
	return nil
}

func (c *check) compareStrikes() error {
	for no := kitchen.EntryNo(1); no <= c.last.no; no++ {
		if c.strikes[no] != c.marks[no] {
			return fmt.Errorf("%w: entry %d: the mark of being struck is wrong", ErrDamaged, no)
		}
	}
	return nil
}
