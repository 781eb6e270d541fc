package answer

import (
	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// takeOver makes somebody the one who watches a run.
func (t *turn) takeOver(i phrase.TakeOver, ctx scene) (chat.Post, error) {
	who := t.member.No
	if i.Who != "" {
		m, err := t.named(i.Who)
		if err != nil {
			return chat.Post{}, err
		}
		who = m.No
	}
	run, err := t.which(i.Which, ctx, func(r kitchen.Run) bool { return r.Cook != who })
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	if run.Cook == who && run.Offered == 0 {
		last, err := t.lastPing(run.No)
		if err != nil {
			return chat.Post{}, err
		}
		if who == t.member.No && !last.Fired.IsZero() && t.m.At.Sub(last.Fired) <= pingStands {
			return t.tellOf(run, []kitchen.RunEntry{kitchen.PingAnswered{Key: last.Key, How: kitchen.AnswerGotIt}}, t.m.At)
		}
	}
	var e kitchen.RunEntry = kitchen.TookOver{Member: who}
	if run.Offered == who && who == t.member.No {
		e = kitchen.HandAccepted{}
	}
	return t.tellOf(run, []kitchen.RunEntry{e}, t.m.At)
}

// handOver asks somebody to take a run, or anybody.
func (t *turn) handOver(i phrase.HandOver, ctx scene) (chat.Post, error) {
	run, err := t.which(i.Which, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() })
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	var to kitchen.MemberNo
	if i.To != "" {
		m, err := t.named(i.To)
		if err != nil {
			return chat.Post{}, err
		}
		to = m.No
	}
	return t.tellOf(run, []kitchen.RunEntry{kitchen.HandOffered{To: to}}, t.m.At)
}

// named finds the one member of a name.
func (t *turn) named(name string) (store.Member, error) {
	found, err := t.book.MembersNamed(name)
	if err != nil {
		return store.Member{}, err
	}
	if len(found) != 1 {
		return store.Member{}, kitchen.NoSuchMember{Name: name}
	}
	return found[0], nil
}
