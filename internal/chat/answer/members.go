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

// rename gives the speaker another name, if nobody else has it.
func (t *turn) rename(i phrase.Rename) (chat.Post, error) {
	name := strings.TrimSpace(chat.Clean(i.Name))
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
	if t.member.Role == kitchen.Steward {
		if err := t.stewardRemains(t.member.No); err != nil {
			return chat.Post{}, err
		}
	}
	if err := t.write(membersSubject, kitchen.Forgotten{Member: t.member.No}, ""); err != nil {
		return chat.Post{}, err
	}
	t.forgotten = true
	return wording.Forgotten(), nil
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

// undo takes back the speaker's last turn that wrote something, or, in a reply,
// what the post replied to had written.
func (t *turn) undo(ctx scene) (chat.Post, error) {
	turn, by, err := t.undoable(ctx)
	if err != nil {
		return chat.Post{}, err
	}
	entries, err := t.book.EntriesOf(turn)
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.undoRoles(entries); err != nil {
		return chat.Post{}, err
	}
	if err := t.strike(turn); err != nil {
		return chat.Post{}, err
	}
	if err := t.loadSettings(); err != nil {
		return chat.Post{}, err
	}
	for _, e := range entries {
		if given, ok := e.Entry.(kitchen.RoleGiven); ok && counts(e) {
			who, err := t.book.Member(given.Member)
			return wording.UndoneRole(who.Name, given.Role), err
		}
		if words, ok := t.undone(e); ok {
			return wording.Undone(words, by), nil
		}
	}
	return chat.Post{}, kitchen.NothingToUndo{}
}

// undoable is the turn that an undo is about, and whose it is when it isn't the
// speaker's own.
func (t *turn) undoable(ctx scene) (turn store.InboxID, by string, err error) {
	if ctx.turn != nil {
		entries, err := t.book.EntriesOf(ctx.turn.ID)
		if err != nil {
			return 0, "", err
		}
		if slices.ContainsFunc(entries, counts) {
			return t.othersTurn(*ctx.turn)
		}
	}
	last, err := t.book.LastEntryOf(t.member.No, t.room.ID, 0)
	for ; err == nil; last, err = t.book.LastEntryOf(t.member.No, t.room.ID, last.No) {
		if counts(last) && last.Inbox != 0 && last.Inbox != t.owner {
			return last.Inbox, "", nil
		}
	}
	if errors.Is(err, store.ErrNotFound) {
		return 0, "", kitchen.NothingToUndo{}
	}
	return 0, "", err
}

// counts reports whether an entry can be taken back and hasn't been.
func counts(e store.Logged) bool { return e.StruckBy == 0 && strikable(e.Entry) }

// othersTurn allows undoing the turn behind a post that was replied to. What
// changed the kitchen, only a steward takes back for somebody else.
func (t *turn) othersTurn(turn store.Turn) (store.InboxID, string, error) {
	if turn.Member == t.member.No {
		return turn.ID, "", nil
	}
	if turn.Kind == setKind && t.member.Role != kitchen.Steward {
		return 0, "", kitchen.NotSteward{}
	}
	who, err := t.book.Member(turn.Member)
	return turn.ID, who.Name, err
}

// undone says what a struck entry was; false for one that is not worth a word.
func (t *turn) undone(e store.Logged) (string, bool) {
	if !counts(e) {
		return "", false
	}
	if c, ok := e.Entry.(kitchen.Change); ok {
		return wording.UndoneChange(c, t.settings), true
	}
	if run, ok := e.Entry.(kitchen.RunBegun); ok {
		return wording.UndoneRun(run.Run), true
	}
	return wording.UndoneStart(), is[kitchen.StartWanted](e.Entry)
}

// undoRoles gives back the role that a struck entry had changed.
func (t *turn) undoRoles(entries []store.Logged) error {
	for _, e := range entries {
		given, ok := e.Entry.(kitchen.RoleGiven)
		if !ok || e.StruckBy != 0 {
			continue
		}
		back := kitchen.Steward
		if given.Role == kitchen.Steward {
			back = kitchen.Grower
			if err := t.stewardRemains(given.Member); err != nil {
				return err
			}
		}
		if err := t.book.SetRole(given.Member, back); err != nil {
			return err
		}
	}
	return nil
}
