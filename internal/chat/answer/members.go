package answer

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// freeName is a name that nobody else here has: the second Ana is Ana 2.
func (t *turn) freeName(name string) string {
	if name = strings.TrimSpace(name); name == "" {
		name = "Somebody"
	}
	free := name
	for n := 2; slices.ContainsFunc(t.names.Members, func(m string) bool { return strings.EqualFold(m, free) }); n++ {
		free = name + " " + strconv.Itoa(n)
	}
	return free
}

// members lists who is here.
func (t *turn) members() (chat.Post, error) {
	all, err := t.book.Members()
	if err != nil {
		return chat.Post{}, err
	}
	var people []wording.Person
	for _, m := range all {
		if m.Name != "" && m.Left.IsZero() {
			people = append(people, wording.Person{Name: m.Name, Role: m.Role})
		}
	}
	return wording.Members(people), nil
}

// giveRole makes somebody a steward, or a grower again. Somebody always stays a
// steward.
func (t *turn) giveRole(i phrase.GiveRole) (chat.Post, error) {
	if t.member.Role != kitchen.Steward {
		return chat.Post{}, kitchen.NotSteward{}
	}
	found, err := t.book.MembersNamed(i.Member)
	if err != nil {
		return chat.Post{}, err
	}
	if len(found) != 1 {
		return chat.Post{}, kitchen.NoSuchMember{Name: i.Member}
	}
	who := found[0]
	if who.Role == i.Role {
		return wording.SameRole(who.Name, who.Role), nil
	}
	if i.Role == kitchen.Grower {
		if err := t.stewardRemains(who.No); err != nil {
			return chat.Post{}, err
		}
	}
	return wording.RoleGiven(who.Name, i.Role), t.setRole(who.No, i.Role)
}

// stewardRemains refuses to take the role from the only steward.
func (t *turn) stewardRemains(without kitchen.MemberNo) error {
	all, err := t.book.Members()
	if err != nil {
		return err
	}
	for _, m := range all {
		if m.No != without && m.Role == kitchen.Steward && m.Name != "" && m.Left.IsZero() {
			return nil
		}
	}
	return kitchen.LastSteward{}
}

func (t *turn) setRole(no kitchen.MemberNo, role kitchen.Role) error {
	if err := t.book.SetRole(no, role); err != nil {
		return err
	}
	return t.write(membersSubject, kitchen.RoleGiven{Member: no, Role: role}, "")
}

// longestName, in characters, leaves room on a line of a post for what is said of
// somebody.
const longestName = 30

// called is what somebody is called in the book, by the name they have or want.
func called(name string) string {
	runes := []rune(strings.TrimSpace(chat.Clean(name)))
	return strings.TrimSpace(string(runes[:min(len(runes), longestName)]))
}

// rename gives the speaker another name, if nobody else has it.
func (t *turn) rename(i phrase.Rename) (chat.Post, error) {
	name := called(i.Name)
	if name == "" {
		return wording.NotUnderstood(), nil
	}
	taken, err := t.book.MembersNamed(name)
	if err != nil {
		return chat.Post{}, err
	}
	for _, m := range taken {
		if m.No != t.member.No {
			return chat.Post{}, kitchen.NameTaken{Name: name}
		}
	}
	return wording.Renamed(name), t.book.RenameMember(t.member.No, name)
}

// forget drops the speaker's name, account and words, once they have typed their
// name to confirm it.
func (t *turn) forget(i phrase.Forget) (chat.Post, error) {
	if i.Name == "" {
		return wording.AskForget(t.member.Name), nil
	}
	if !strings.EqualFold(strings.TrimSpace(i.Name), t.member.Name) {
		return wording.WrongName(t.member.Name), nil
	}
	if err := t.mayLeave(); err != nil {
		return chat.Post{}, err
	}
	if err := t.dropStarts(func(w kitchen.StartWanted) bool { return w.For == t.member.No }); err != nil {
		return chat.Post{}, err
	}
	if err := t.write(membersSubject, kitchen.Forgotten{Member: t.member.No}, ""); err != nil {
		return chat.Post{}, err
	}
	t.forgotten = true
	return wording.Forgotten(), nil
}

// mayLeave refuses to let the only steward go while others stay behind.
func (t *turn) mayLeave() error {
	if t.member.Role != kitchen.Steward {
		return nil
	}
	all, err := t.book.Members()
	if err != nil {
		return err
	}
	for _, m := range all {
		if m.No != t.member.No && m.Name != "" && m.Left.IsZero() {
			return t.stewardRemains(t.member.No)
		}
	}
	return nil
}

// newCode gives a steward a code for one more room.
func (t *turn) newCode() (chat.Post, error) {
	if t.member.Role != kitchen.Steward {
		return chat.Post{}, kitchen.NotSteward{}
	}
	code, hash := freshCode()
	c := store.Code{Purpose: store.Joining, Collective: t.room.Collective, Expires: t.m.Arrived.Add(24 * time.Hour)}
	return wording.Code(code), t.tx.PutCode(hash, c)
}

// claimAgain answers a code said in a room that has a book already. It isn't
// used up.
func (t *turn) claimAgain(phrase.Claim) (chat.Post, error) { return wording.AlreadyClaimed(), nil }

// syncRole makes a member's role what the entries that count say.
func (t *turn) syncRole(no kitchen.MemberNo) error {
	records, err := t.book.Standing(membersSubject)
	if err != nil {
		return err
	}
	role := kitchen.Grower
	for _, r := range records {
		if given, ok := r.Entry.(kitchen.RoleGiven); ok && given.Member == no {
			role = given.Role
		}
	}
	return t.book.SetRole(no, role)
}

// firstRole is the role of somebody who is met for the first time: a grower, but
// the steward where none is left.
func (t *turn) firstRole() (kitchen.Role, error) {
	err := t.stewardRemains(0)
	if errors.As(err, new(kitchen.LastSteward)) && t.room.Kind == store.HomeRoom {
		return kitchen.Steward, nil
	}
	return kitchen.Grower, orNoSteward(err)
}

// orNoSteward passes over the refusal that no steward is left.
func orNoSteward(err error) error {
	if errors.As(err, new(kitchen.LastSteward)) {
		return nil
	}
	return err
}
