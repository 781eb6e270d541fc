package answer

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base32"
	"errors"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// triesAnHour is how many wrong codes one room may say in an hour.
const triesAnHour = 5

// longestClaim is how much of a text in an unclaimed room is looked at.
const longestClaim = 80

// freshCode draws a one-time code of 80 random bits, and the hash that the book
// keeps of it.
func freshCode() (code string, hash []byte) {
	var raw [10]byte
	_, _ = rand.Read(raw[:]) // never fails: see crypto/rand
	s := base32.StdEncoding.EncodeToString(raw[:])
	code = s[:4] + "-" + s[4:8] + "-" + s[8:12] + "-" + s[12:]
	return code, hashOf(code)
}

// hashOf is the hash of a code as people type it: case and dashes aside.
func hashOf(code string) []byte {
	plain := strings.ToUpper(strings.NewReplacer("-", "", " ", "").Replace(code))
	sum := sha256.Sum256([]byte(plain))
	return sum[:]
}

// ClaimCode draws the code with which the operator's first room is claimed. An
// earlier one that was not used is void.
func (a *Answerer) ClaimCode(ctx context.Context, now time.Time) (string, error) {
	code, hash := freshCode()
	return code, a.db.Update(ctx, func(tx *store.Tx) error {
		if err := tx.DropCodes(store.Claiming); err != nil {
			return err
		}
		return tx.PutCode(hash, store.Code{Purpose: store.Claiming, Expires: now.Add(24 * time.Hour)})
	})
}

// Foundation is a room that gets a book without a code: the terminal's, a
// rehearsal's.
type Foundation struct {
	Room   chat.Room
	Person chat.Person
	At     time.Time
}

// Found gives a room a collective of its own with the person as its steward,
// unless it has one.
func (a *Answerer) Found(ctx context.Context, f Foundation) error {
	return a.db.Update(ctx, func(tx *store.Tx) error {
		_, err := tx.Room(string(f.Room.Door), f.Room.ID)
		if !errors.Is(err, store.ErrNotFound) {
			return err
		}
		id, err := tx.NewCollective("", f.At)
		if err != nil {
			return err
		}
		return a.settleRoom(tx, id, chat.Message{Room: f.Room, From: f.Person, At: f.At, Arrived: f.At}, kitchen.Steward)
	})
}

// Admit makes a room a further one of the collective that another belongs to.
func (a *Answerer) Admit(ctx context.Context, like, more chat.Room, at time.Time) error {
	return a.db.Update(ctx, func(tx *store.Tx) error {
		home, err := tx.Room(string(like.Door), like.ID)
		if err != nil {
			return err
		}
		_, err = tx.Room(string(more.Door), more.ID)
		if !errors.Is(err, store.ErrNotFound) {
			return err
		}
		_, err = addRoom(tx.Book(home.Collective), more, at)
		return err
	})
}

// addRoom adds a group to a collective: the first becomes its home.
func addRoom(book *store.Book, room chat.Room, at time.Time) (store.RoomID, error) {
	kind := store.FurtherRoom
	if _, err := book.HomeRoom(); errors.Is(err, store.ErrNotFound) {
		kind = store.HomeRoom
	} else if err != nil {
		return 0, err
	}
	id, err := book.AddRoom(store.RoomRow{Door: string(room.Door), Address: room.ID, Kind: kind, Joined: at})
	if err != nil {
		return 0, err
	}
	_, err = book.Append(store.Line{
		Room: id, At: at, Written: at, Subject: membersSubject, Entry: kitchen.RoomJoined{Room: int64(id)},
	})
	return id, err
}

// settleRoom adds the room of a message to a collective, and the speaker with a
// role.
func (a *Answerer) settleRoom(tx *store.Tx, id store.CollectiveID, m chat.Message, role kitchen.Role) error {
	book := tx.Book(id)
	if _, err := addRoom(book, m.Room, m.At); err != nil {
		return err
	}
	room, err := tx.Room(string(m.Room.Door), m.Room.ID)
	if err != nil {
		return err
	}
	t := a.newTurn(tx, m, room)
	if err := t.prepare(); err != nil {
		return err
	}
	if err := t.meet(); err != nil {
		return err
	}
	if role == kitchen.Steward && t.member.Role != kitchen.Steward {
		return t.setRole(t.member.No, role)
	}
	return nil
}

// unclaimed handles a message in a room that belongs to nobody: a private talk
// with a member, or a code. At anything else it is deaf, and keeps nothing.
func (a *Answerer) unclaimed(tx *store.Tx, m chat.Message) (*turn, error) {
	if m.Audience == chat.Private {
		return a.private(tx, m)
	}
	if len(m.Text) > longestClaim {
		return nil, nil
	}
	intents := phrase.Parse(m.Text, phrase.Names{}).Intents
	if len(intents) != 1 {
		return nil, nil
	}
	claim, ok := intents[0].(phrase.Claim)
	if !ok {
		return nil, nil
	}
	return nil, a.claimed(tx, m, claim)
}

// private opens a private room for somebody who is a member of a collective; of
// several, the one they have known longest.
func (a *Answerer) private(tx *store.Tx, m chat.Message) (*turn, error) {
	seats, err := tx.Account(string(m.From.Door), m.From.ID)
	if err != nil || len(seats) == 0 {
		return nil, err
	}
	book := tx.Book(seats[0].Collective)
	_, err = book.AddRoom(store.RoomRow{
		Door: string(m.Room.Door), Address: m.Room.ID, Kind: store.PrivateRoom, Member: seats[0].Member, Joined: m.At,
	})
	if err != nil {
		return nil, err
	}
	return a.begin(tx, m)
}

// claimed takes a code said in an unclaimed room. A wrong one gets no answer
// there, since the room is nobody's, and is counted.
func (a *Answerer) claimed(tx *store.Tx, m chat.Message, claim phrase.Claim) error {
	door, address := string(m.Room.Door), m.Room.ID
	tries, err := tx.CodeTries(door, address, m.Arrived)
	if err != nil || tries >= triesAnHour {
		return err
	}
	code, err := tx.TakeCode(hashOf(claim.Code), m.Arrived)
	if errors.Is(err, store.ErrNotFound) {
		a.log.Warn("wrong code", "door", door)
		return tx.MissCode(door, address, m.Arrived)
	}
	if err != nil {
		return err
	}
	role, post := kitchen.Steward, wording.Claimed()
	if code.Purpose == store.Joining {
		role, post = kitchen.Grower, wording.RoomAdded()
	} else if code.Collective, err = firstCollective(tx, m.At); err != nil {
		return err
	}
	if err := a.settleRoom(tx, code.Collective, m, role); err != nil {
		return err
	}
	t, err := a.begin(tx, m)
	if err != nil {
		return err
	}
	if fresh, err := t.claim(); err != nil || !fresh {
		return err
	}
	t.kind = otherKind
	if err := t.settle(); err != nil {
		return err
	}
	return t.queue(post)
}

// firstCollective is the collective that a claimed room founds; what was done in
// the terminal before goes over to the first.
func firstCollective(tx *store.Tx, at time.Time) (store.CollectiveID, error) {
	all, err := tx.Collectives()
	if err != nil {
		return 0, err
	}
	if len(all) == 1 {
		rooms, err := tx.Book(all[0]).Rooms()
		if err != nil {
			return 0, err
		}
		if onlyTerminal(rooms) {
			return all[0], nil
		}
	}
	return tx.NewCollective("", at)
}

func onlyTerminal(rooms []store.RoomRow) bool {
	for _, r := range rooms {
		if chat.DoorName(r.Door) != chat.Console {
			return false
		}
	}
	return true
}
