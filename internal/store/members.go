package store

import (
	"database/sql"
	"encoding/json"
	"errors"
	"strings"
	"time"

	"golang.org/x/text/unicode/norm"

	"ryebell/internal/kitchen"
)

// Book is what belongs to one collective, within a transaction.
type Book struct {
	tx *Tx
	id CollectiveID
}

// Book binds a collective. One that doesn't exist has an empty book that can't
// be written.
func (tx *Tx) Book(c CollectiveID) *Book { return &Book{tx: tx, id: c} }

// Collective is the number of the collective that the book belongs to.
func (b *Book) Collective() CollectiveID { return b.id }

func (b *Book) bound() sql.NamedArg { return p("collective", b.id) }

// Name is what the collective is called.
func (b *Book) Name() (name string, err error) {
	err = b.tx.row(`SELECT name FROM collective WHERE id = :collective`, b.bound()).Scan(&name)
	return name, err
}

// Rename gives the collective another name.
func (b *Book) Rename(name string) error {
	return b.tx.change(`UPDATE collective SET name = :name WHERE id = :collective`, b.bound(), p("name", name))
}

// Member is somebody who is or was in a room of the collective.
type Member struct {
	No     kitchen.MemberNo
	Name   string // empty once forgotten
	Role   kitchen.Role
	Joined time.Time
	Left   time.Time // zero while they are there
}

func readMember(s scanner) (m Member, err error) {
	var joined int64
	var left sql.NullInt64
	err = s.Scan(&m.No, &m.Name, &m.Role, &joined, &left)
	m.Joined = fromMS(joined)
	if left.Valid {
		m.Left = fromMS(left.Int64)
	}
	return m, err
}

// fold is the form in which names are compared.
func fold(name string) string { return strings.ToLower(norm.NFKC.String(name)) }

// AddMember takes somebody in under the next number.
func (b *Book) AddMember(name string, role kitchen.Role, at time.Time) (no kitchen.MemberNo, err error) {
	err = b.tx.row(`
		INSERT INTO member (collective, number, name, folded, role, joined_ms)
		SELECT :collective, coalesce(max(number), 0) + 1, :name, :folded, :role, :at
		FROM member WHERE collective = :collective
		RETURNING number`,
		b.bound(), p("name", name), p("folded", fold(name)), p("role", role), p("at", toMS(at))).Scan(&no)
	return no, err
}

// Member gives a member by number, a forgotten one without a name.
func (b *Book) Member(no kitchen.MemberNo) (Member, error) {
	return readMember(b.tx.row(`
		SELECT number, name, role, joined_ms, left_ms
		FROM member WHERE collective = :collective AND number = :no`, b.bound(), p("no", no)))
}

// Members lists all that ever were, by number.
func (b *Book) Members() ([]Member, error) {
	return each(b.tx, readMember, `
		SELECT number, name, role, joined_ms, left_ms
		FROM member WHERE collective = :collective ORDER BY number`, b.bound())
}

// MembersNamed lists those of a name, upper and lower case and width aside.
func (b *Book) MembersNamed(name string) ([]Member, error) {
	if name == "" {
		return nil, nil
	}
	return each(b.tx, readMember, `
		SELECT number, name, role, joined_ms, left_ms
		FROM member WHERE collective = :collective AND folded = :folded ORDER BY number`,
		b.bound(), p("folded", fold(name)))
}

// MemberByAccount finds the member that an account of a platform belongs to.
func (b *Book) MemberByAccount(door, external string) (Member, error) {
	return readMember(b.tx.row(`
		SELECT m.number, m.name, m.role, m.joined_ms, m.left_ms
		FROM account a JOIN member m ON m.collective = a.collective AND m.number = a.member
		WHERE a.door = :door AND a.external = :external AND a.collective = :collective`,
		b.bound(), p("door", door), p("external", external)))
}

// Account is a member's account on a platform.
type Account struct{ Door, External string }

// AccountsOf lists the accounts of a member.
func (b *Book) AccountsOf(no kitchen.MemberNo) ([]Account, error) {
	return each(b.tx, func(s scanner) (a Account, err error) { return a, s.Scan(&a.Door, &a.External) }, `
		SELECT door, external FROM account
		WHERE collective = :collective AND member = :no ORDER BY door, external`, b.bound(), p("no", no))
}

// LinkAccount says that an account belongs to a member; one that belonged to
// another member of this collective changes hands.
func (b *Book) LinkAccount(no kitchen.MemberNo, a Account) error {
	_, err := b.tx.exec(`
		INSERT INTO account (door, external, collective, member) VALUES (:door, :external, :collective, :no)
		ON CONFLICT (door, external, collective) DO UPDATE SET member = excluded.member`,
		b.bound(), p("no", no), p("door", a.Door), p("external", a.External))
	return err
}

// RenameMember gives a member another name.
func (b *Book) RenameMember(no kitchen.MemberNo, name string) error {
	return b.tx.change(`
		UPDATE member SET name = :name, folded = :folded WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no), p("name", name), p("folded", fold(name)))
}

// SetRole gives a member another role. The entry that says so is the caller's.
func (b *Book) SetRole(no kitchen.MemberNo, role kitchen.Role) error {
	return b.tx.change(`UPDATE member SET role = :role WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no), p("role", role))
}

// Leave says that a member is in no room of the collective any more.
func (b *Book) Leave(no kitchen.MemberNo, at time.Time) error {
	return b.tx.change(`UPDATE member SET left_ms = :at WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no), p("at", toMS(at)))
}

// Return says that a member who had left is back.
func (b *Book) Return(no kitchen.MemberNo) error {
	return b.tx.change(`UPDATE member SET left_ms = NULL WHERE collective = :collective AND number = :no`,
		b.bound(), p("no", no))
}

// ForgetMember drops the name, the accounts and the private rooms of a member and
// blanks what they typed, what was understood of it and what was answered, and
// every post that was sent and names them: pings, stories of runs. The photos that
// they sent are deleted. The
// entries stay, under the number; the salts go too, so that nobody can try texts
// against the digests. A goodbye in private must be queued before: a private room
// keeps its address until nothing waits for it.
func (b *Book) ForgetMember(no kitchen.MemberNo, at time.Time) error {
	m, err := b.Member(no)
	if err != nil {
		return err
	}
	if err := b.Leave(no, at); err != nil {
		return err
	}
	return errors.Join(
		b.forgetNamed(m.Name),
		b.forget(`UPDATE member SET name = '', folded = '' WHERE collective = :collective AND number = :no`, no),
		b.forget(`DELETE FROM account WHERE collective = :collective AND member = :no`, no),
		b.forget(`UPDATE entry INDEXED BY entry_speaker SET said = NULL, salt = x'' WHERE collective = :collective AND member = :no`, no),
		b.forget(`
			UPDATE outbox SET post = x'', wire = NULL WHERE state <> 1 AND collective = :collective AND inbox IN
				(SELECT id FROM inbox WHERE collective = :collective AND member = :no)`, no),
		b.forgetPhotos(no),
		b.forget(`UPDATE inbox SET said = '', asked = '' WHERE collective = :collective AND member = :no`, no),
		b.leavePrivateRooms(no, at),
	)
}

// forgetNamed blanks the posts that were sent and hold a name. Another's post that
// happens to hold the same letters goes with them: better one too many.
func (b *Book) forgetNamed(name string) error {
	if name == "" {
		return nil
	}
	raw, err := json.Marshal(name) // as it stands in a post
	if err != nil {
		return err
	}
	_, err = b.tx.exec(`
		UPDATE outbox SET post = x'', wire = NULL
		WHERE state <> 1 AND collective = :collective AND instr(CAST(post AS TEXT), :name) > 0`,
		b.bound(), p("name", string(raw[1:len(raw)-1])))
	return err
}

func (b *Book) forget(query string, no kitchen.MemberNo) error {
	_, err := b.tx.exec(query, b.bound(), p("no", no))
	return err
}

func (b *Book) leavePrivateRooms(no kitchen.MemberNo, at time.Time) error {
	rooms, err := each(b.tx, func(s scanner) (id RoomID, err error) { return id, s.Scan(&id) },
		`SELECT id FROM room WHERE collective = :collective AND member = :no`, b.bound(), p("no", no))
	if err != nil {
		return err
	}
	for _, r := range rooms {
		if err := b.CloseRoom(r, at); err != nil {
			return err
		}
		if err := b.tx.dropAddress(r); err != nil {
			return err
		}
	}
	return nil
}

// dropAddress takes the address, which is the person's own, from a private room
// that was left, once nothing waits for it.
func (tx *Tx) dropAddress(room RoomID) error {
	_, err := tx.exec(`
		UPDATE room SET address = 'left/' || id
		WHERE id = :room AND kind = 3 AND closed_ms IS NOT NULL
			AND NOT EXISTS (SELECT 1 FROM outbox o WHERE o.room = :room AND o.state = 1)`, p("room", room))
	return err
}
