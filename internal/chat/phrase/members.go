package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

var membersGrammar = grammar{
	kind: KindMembers,
	examples: []string{
		"members",
		"who's in",
		"make ana a steward",
		"ana is no longer steward",
		"call me Jo",
		"claim K7Q2-M9XD",
		"code for another room",
		"forget me",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		for _, m := range [...]func(cursor) (Intent, cursor, bool){whoIsIn, codeWanted, promoted, demoted, renamed, claimed, forgotten} {
			if in, d, ok := m(c); ok {
				return in, d, true
			}
		}
		return nil, c, false
	},
}

// String prints the question so that it parses back.
func (Members) String() string { return "members" }

// String prints the wish so that it parses back.
func (NewCode) String() string { return "code for another room" }

// String prints the order so that it parses back.
func (g GiveRole) String() string {
	if g.Role == kitchen.Steward {
		return "make " + g.Member + " a steward"
	}
	return g.Member + " is no longer steward"
}

// String prints the wish so that it parses back.
func (r Rename) String() string { return "call me " + r.Name }

// String prints the code so that it parses back.
func (k Claim) String() string { return "claim " + k.Code }

// String prints the wish so that it parses back.
func (f Forget) String() string {
	if f.Name == "" {
		return "forget me"
	}
	return "forget " + f.Name
}

func whoIsIn(c cursor) (Intent, cursor, bool) {
	d, ok := c.phrase("members", "who's in", "whos in", "who is in", "who's a member", "who is a member", "list members", "show members", "the members",
		"who are the members", "who is here", "who's steward", "who is steward", "whos steward", "stewards")
	return Members{}, d, ok
}

func codeWanted(c cursor) (Intent, cursor, bool) {
	d, ok := c.over("give", "me", "us", "a", "we", "i", "need", "want", "new", "can", "get", "the").phrase("code for another room", "new code", "code for a room",
		"code for a new room", "code for a second room", "room code", "join code", "code please", "code for the other room", "code for joining",
		"invite code", "code for my other room", "code to join", "code for another chat")
	return NewCode{}, d, ok && d.ends()
}

// member takes a name: of a member, or one word that could be one.
func (c cursor) member() (string, cursor, bool) {
	switch t := c.token().(type) {
	case Name:
		return t.Text, c.use(1), t.Of == MemberName
	case Word:
		for _, name := range c.s.names.Members {
			if strings.EqualFold(name, t.Text) {
				return name, c.use(1), true
			}
		}
		if t.Class == Unknown || t.Class == Everyday {
			return strings.ToLower(c.s.typed(c.i, c.i+1)), c.use(1), true
		}
	}
	return "", c, false
}

func promoted(c cursor) (Intent, cursor, bool) {
	if d, ok := c.phrase("make"); ok {
		if name, e, ok := d.member(); ok {
			if f, ok := e.phrase("a steward", "steward", "the steward", "steward too", "a steward too"); ok {
				return GiveRole{name, kitchen.Steward}, f, true
			}
		}
		return nil, c, false
	}
	name, d, ok := c.member()
	if !ok {
		return nil, c, false
	}
	d, ok = d.phrase("is steward", "is a steward", "is steward now", "is now steward", "is now a steward", "should be steward", "is a steward now",
		"is steward too", "becomes steward", "should be a steward")
	return GiveRole{name, kitchen.Steward}, d, ok
}

func demoted(c cursor) (Intent, cursor, bool) {
	name, d, ok := c.member()
	if !ok {
		return nil, c, false
	}
	d, ok = d.phrase("is no longer steward", "is no longer a steward", "is not steward", "is not a steward", "isn't steward", "is not steward any more",
		"is not a steward any more", "isn't steward anymore", "is not steward anymore", "no longer steward", "is a grower", "is grower again", "is just a grower",
		"isn't a steward anymore", "isn't a steward any more")
	return GiveRole{name, kitchen.Grower}, d, ok
}

// longestName is the most words of a name that somebody wants to be called.
const longestName = 3

func renamed(c cursor) (Intent, cursor, bool) {
	if c.length("my name is mud") > 0 {
		return nil, c, false // a saying
	}
	d, ok := c.phrase("call me", "my name is", "rename me", "rename me to", "i am called", "i'm called", "name me")
	if !ok {
		return nil, c, false
	}
	name, d, ok := d.freeName()
	return Rename{name}, d, ok
}

// freeName takes up to three words as a name, as they were typed. It must be the
// end of what is said: "call me when you're back" names nobody.
func (c cursor) freeName() (string, cursor, bool) {
	d := c
	for d.i < c.i+longestName && !d.ends() {
		switch t := d.token().(type) {
		case Name:
		case Word:
			if d.i > c.i && t.Class != Unknown || notNames[t.Text] || t.Class == Pronoun || t.Class == Asking {
				return "", c, false
			}
		default:
			return "", c, false
		}
		d = d.use(1)
	}
	d.quoted = [2]int{c.i, d.i}
	return strings.Join(strings.Fields(c.s.typed(c.i, d.i)), " "), d, d.i > c.i && d.ends()
}

// ends reports whether nothing more is said than please.
func (c cursor) ends() bool { return c.over("please", "pls", "plz").parted().done() }

// notNames are words after "call me" that name nobody.
var notNames = set("back later when if tomorrow tonight today maybe please now crazy at a an the asap sometime soon anytime not no yes ok before after once")

func claimed(c cursor) (Intent, cursor, bool) {
	d, ok := c.phrase("claim", "join", "code is", "the code is")
	if !ok {
		return nil, c, false
	}
	// As typed first: a code may begin like a word that would be passed over.
	for {
		if code, e, ok := d.code(); ok {
			return Claim{code}, e, true
		}
		e, ok := d.phrase("with", "code", "the", ":", "room", "is")
		if !ok {
			return nil, c, false
		}
		d = d.skip(e.i - d.i)
	}
}

// code takes everything up to the next space as typed: letters, digits and
// hyphens, at least one of them a digit or all in capitals.
func (c cursor) code() (string, cursor, bool) {
	if c.done() {
		return "", c, false
	}
	start := c.token().Extent().Start
	rest := c.s.text[start:]
	end := strings.IndexFunc(rest, func(r rune) bool {
		return r != '-' && (r < '0' || r > '9') && (r < 'A' || r > 'Z') && (r < 'a' || r > 'z')
	})
	if end < 0 {
		end = len(rest)
	}
	code := strings.TrimRight(rest[:end], "-")
	if len(code) < 4 || len(code) > 40 || !strings.ContainsAny(code, "0123456789-") && code != strings.ToUpper(code) {
		return "", c, false
	}
	d := c
	for !d.done() && d.token().Extent().Start < start+len(code) {
		d = d.use(1)
	}
	d.quoted = [2]int{c.i, d.i}
	return code, d, d.i > c.i
}

func forgotten(c cursor) (Intent, cursor, bool) {
	d, ok := c.phrase("forget me", "please forget me", "delete me", "remove me", "forget all about me")
	if ok {
		return Forget{}, d, d.ends()
	}
	d, ok = c.phrase("forget")
	if !ok {
		return nil, c, false
	}
	name, d, ok := d.freeName()
	if _, known := c.ahead(1).(Name); !known && ok {
		w, _ := c.ahead(1).(Word)
		ok = w.Class == Unknown
	}
	return Forget{name}, d, ok
}
