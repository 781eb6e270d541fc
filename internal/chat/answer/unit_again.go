package answer

import (
	"errors"
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// ofThem is what was understood where units were just spoken of: the correction of what
// was told of them, else, in a reply, what is told of those that the post spoke of. A
// colour alone is a culture where nothing is on the units yet.
func (t *turn) ofThem(p phrase.Parsed, ctx scene) (phrase.Parsed, error) {
	if again, mends, err := t.retold(ctx); mends || err != nil {
		return again, err
	}
	if again, settles, err := t.numbered(ctx); settles || err != nil {
		return again, err
	}
	if p.Near != nil && p.Near.Cooked != nil {
		return t.coloured(p)
	}
	if !ctx.post || len(p.Intents) > 0 && p.Bare == phrase.Plainly {
		return p, nil
	}
	if len(p.Intents) == 1 && ctx.ping != "" {
		if _, answers := p.Intents[0].(phrase.AnswerPing); answers {
			return p, nil // "done" is what was asked for
		}
	}
	if speaks, err := t.speaksOfUnits(ctx); err != nil || !speaks {
		return p, err
	}
	if told, ok := phrase.OfThem(t.text, t.names); ok {
		p = phrase.Parsed{Intents: []phrase.Intent{told}}
	}
	return p, nil
}

// numbered takes the numbers of units for the answer to which of them something was told
// of, and reports whether they are.
func (t *turn) numbered(ctx scene) (phrase.Parsed, bool, error) {
	turn := ctx.turn
	if turn == nil && !ctx.post && t.member.No != 0 && t.m.Edits == "" {
		last, err := t.book.LastTurn(t.room.ID, t.member.No)
		if err != nil && !errors.Is(err, store.ErrNotFound) {
			return phrase.Parsed{}, false, err
		}
		if err == nil && t.m.At.Sub(last.At) <= questionLasts {
			turn = &last
		}
	}
	if turn == nil || turn.Kind != whichKind {
		return phrase.Parsed{}, false, nil
	}
	of, ok := phrase.UnitsAlone(t.text, t.names)
	if !ok {
		return phrase.Parsed{}, false, nil
	}
	for _, in := range phrase.Parse(turn.Said, t.names).Intents {
		if told, ok := in.(phrase.TellUnits); ok {
			right := toldOf(told, of)
			t.text = right.String()
			return phrase.Parsed{Intents: []phrase.Intent{right}, Bare: phrase.Loosely}, true, nil
		}
	}
	return phrase.Parsed{}, false, nil
}

// toldOf is something told with the units of those parts that named none.
func toldOf(i phrase.TellUnits, of phrase.Meant) phrase.TellUnits {
	whole := phrase.TellUnits{When: i.When}
	for _, p := range i.Parts {
		if len(p.Of.Refs) == 0 && len(p.Of.Names) == 0 {
			p.Of = of
		}
		whole.Parts = append(whole.Parts, p)
	}
	return whole
}

// speaksOfUnits reports whether the post answered spoke of units.
func (t *turn) speaksOfUnits(ctx scene) (bool, error) {
	if ctx.ping != "" {
		asks, err := t.unitsAsked(ctx)
		return len(asks) > 0, err
	}
	spoken, err := t.spokenUnits(ctx)
	return len(spoken) > 0, err
}

// retold takes "no, 12.3" behind something told of units for what was meant, and reports
// whether it was.
func (t *turn) retold(ctx scene) (phrase.Parsed, bool, error) {
	if t.m.Edits != "" || t.member.No == 0 {
		return phrase.Parsed{}, false, nil
	}
	turn, entries, err := t.unitsLately(ctx)
	if err != nil || len(entries) == 0 {
		return phrase.Parsed{}, false, err
	}
	for _, in := range phrase.Parse(turn.Said, t.names).Intents {
		was, tells := in.(phrase.TellUnits)
		if !tells {
			continue
		}
		if right, ok := phrase.Retold(t.text, t.names, was); ok {
			t.text, t.mends = right.String(), entries
			return phrase.Parsed{Intents: []phrase.Intent{right}, Bare: phrase.Loosely}, true, nil
		}
	}
	return phrase.Parsed{}, false, nil
}

// unitsLately is what the speaker told of units last here, if they told or changed
// nothing since; of a post replied to, what was told for it.
func (t *turn) unitsLately(ctx scene) (store.Turn, []store.Logged, error) {
	if ctx.post {
		if ctx.turn == nil || ctx.turn.Kind != unitsKind {
			return store.Turn{}, nil, nil
		}
		entries, err := t.toldOfUnits(*ctx.turn)
		return *ctx.turn, entries, err
	}
	turns, err := t.book.Turns(t.room.ID, t.member.No, lookBack)
	if err != nil {
		return store.Turn{}, nil, err
	}
	for _, turn := range turns {
		if turn.ID == t.owner {
			continue
		}
		if t.m.At.Sub(turn.At) > sceneLasts || turn.Kind == planKind || turn.Kind == reverseKind || turn.Kind == setKind {
			break
		}
		entries, err := t.book.EntriesOf(turn.ID)
		if err != nil {
			return turn, nil, err
		}
		if slices.ContainsFunc(entries, counts) || len(entries) == 0 && turn.Kind == otherKind && turn.Said == "" {
			entries, err = t.toldOfUnits(turn) // nothing of what was refused: "no, 12.3" may be about that
			return turn, entries, err
		}
	}
	return store.Turn{}, nil, nil
}

// toldOfUnits is what a turn told of units and still counts; nothing where it told
// anything else.
func (t *turn) toldOfUnits(turn store.Turn) ([]store.Logged, error) {
	entries, err := t.book.EntriesOf(turn.ID)
	if err != nil || turn.Kind != unitsKind {
		return nil, err
	}
	var told []store.Logged
	for _, e := range entries {
		if !counts(e) {
			continue
		}
		if _, ok := e.Entry.(kitchen.UnitEntry); !ok || is[kitchen.Arrived](e.Entry) {
			return nil, nil
		}
		told = append(told, e)
	}
	return told, nil
}

// mendsAnswered takes what an edited message had told for what is told anew, where the
// edit was asked about and this is the answer: until then it stood.
func (t *turn) mendsAnswered(ctx scene) error {
	if len(t.mends) > 0 || ctx.turn == nil || ctx.turn.Kind != whichKind {
		return nil
	}
	entries, err := t.book.EntriesOf(ctx.turn.ID)
	for _, e := range entries {
		if _, told := e.Entry.(kitchen.UnitEntry); told && counts(e) && !is[kitchen.Arrived](e.Entry) {
			t.mends = append(t.mends, e)
		}
	}
	return err
}

// withoutMended takes back what is told anew.
func (t *turn) withoutMended() error {
	for i := len(t.mends) - 1; i >= 0; i-- {
		if err := t.strikeOne(t.mends[i]); err != nil {
			return err
		}
	}
	t.replaced = t.mends
	return nil
}

// bringBackUnits writes anew what a turn had taken back to tell it otherwise, for the
// turn that had told it.
func (t *turn) bringBackUnits(turn []store.Logged) error {
	for _, e := range turn {
		struck, ok := e.Entry.(kitchen.Struck)
		if !ok {
			continue
		}
		old, err := t.book.Entry(struck.No)
		if err != nil {
			return err
		}
		if _, told := old.Entry.(kitchen.UnitEntry); !told || old.Inbox == e.Inbox {
			continue
		}
		line := old.Line
		line.Written = t.m.Arrived
		if old.No, err = t.appendLine(line); err != nil {
			return err
		}
		t.stands = append(t.stands, old)
	}
	return nil
}

// coloured takes a colour alone for a culture, where nothing is on the units it is said of.
func (t *turn) coloured(p phrase.Parsed) (phrase.Parsed, error) {
	tell, _ := p.Near.Cooked.(phrase.TellUnits)
	for _, part := range tell.Parts {
		for _, r := range part.Of.Refs {
			load, err := t.load(r.Run)
			if errors.As(err, new(kitchen.NoSuchRun)) {
				return p, nil
			}
			if err != nil {
				return p, err
			}
			units := r.Units
			if len(units) == 0 {
				units = load.Standing()
			}
			for _, n := range units {
				if u, ok := load.Unit(n); !ok || u.State != kitchen.UnitCooked || u.Blank {
					return p, nil
				}
			}
		}
	}
	return phrase.Parsed{Intents: []phrase.Intent{tell}}, nil
}

// namedWhole reports whether words are said of a whole run by its bare number, "12 done",
// "used 12", and whether they fit there: people say them of twelve of anything.
func (t *turn) namedWhole(p phrase.Parsed) (named, fits bool, err error) {
	if len(p.Intents) != 1 || p.Bare != phrase.Loosely {
		return false, false, nil
	}
	if i, ok := p.Intents[0].(phrase.AnswerPing); ok {
		if i.Which.Run == 0 || i.How != kitchen.AnswerDone {
			return false, false, nil
		}
		grows, open, err := t.growsNow(i.Which.Run)
		return !open, grows, err
	}
	i, ok := p.Intents[0].(phrase.TellUnits)
	if !ok || len(t.mends) > 0 || len(i.Parts) != 1 || len(i.Parts[0].Of.Refs) == 0 {
		return false, false, nil
	}
	fits, err = t.fitsWhole(i.Parts[0])
	return true, fits, err
}

// fitsWhole reports whether what is said of a whole run by its bare number can be so.
func (t *turn) fitsWhole(p phrase.UnitsPart) (bool, error) {
	load, err := t.load(p.Of.Refs[0].Run)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	if !load.Arrived && !cultured(load) {
		run, err := t.runOrNone(load.Run)
		return err == nil && run.Has(t.member.No), err // who cooked it has it in mind
	}
	_, taking, err := load.Apply(t.recordOf(load, p.Entry, load.Fit(p.Entry), t.m.At))
	if errors.As(err, new(kitchen.Refusal)) {
		return false, nil
	}
	return err == nil && len(taking.Early) == 0, err
}

// growsNow reports whether something grows in a run whose cook is over, or whether that
// is still on.
func (t *turn) growsNow(no kitchen.RunNo) (grows, open bool, err error) {
	load, err := t.load(no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return false, false, nil
	}
	if err != nil || load.Grows(load.Standing()) {
		return err == nil && t.oldEnough(load), false, err
	}
	run, err := t.runOrNone(no)
	return false, err == nil && run.No != 0 && !run.Stage.Over(), err
}

// unitsDone takes "12 done" of a run in which something grows for its units, which are
// grown through.
func (t *turn) unitsDone(i phrase.AnswerPing, ctx scene) (chat.Post, bool, error) {
	if i.How != kitchen.AnswerDone || i.Which.Run == 0 {
		return chat.Post{}, false, nil
	}
	grows, _, err := t.growsNow(i.Which.Run)
	if err != nil || !grows {
		return chat.Post{}, false, err
	}
	post, err := t.tellUnits(ofRun(i.Which.Run, kitchen.GrownThrough{}), ctx)
	return post, true, err
}

// ofRun is something told of all of a run.
func ofRun(no kitchen.RunNo, e kitchen.UnitEntry) phrase.TellUnits {
	return phrase.TellUnits{Parts: []phrase.UnitsPart{{Of: phrase.Meant{Refs: []kitchen.Ref{{Run: no}}}, Entry: e}}}
}

// runUsed takes "used 12" of a run that nobody has inoculated for a word about the run:
// it is gone.
func (t *turn) runUsed(i phrase.TellUnits, ctx scene) (chat.Post, bool, error) {
	p := i.Parts[0]
	used, ok := p.Entry.(kitchen.UnitsUsed)
	if !ok || used.On != "" || used.Share != 0 || len(i.Parts) != 1 || len(p.Of.Refs) != 1 || len(p.Of.Refs[0].Units) > 0 || p.Of.Vessel != 0 || p.Of.State != 0 || p.Of.Rest || len(p.Of.Except) > 0 {
		return chat.Post{}, false, nil
	}
	load, err := t.load(p.Of.Refs[0].Run)
	if err != nil || load.Arrived || cultured(load) {
		return chat.Post{}, false, err
	}
	post, err := t.tell(phrase.Tell{Which: phrase.Which{Run: load.Run}, Entries: []kitchen.RunEntry{kitchen.RunGone{}}, When: i.When}, ctx)
	return post, true, err
}

// nearlyOfUnits says how what was told of units without their number is told with it,
// or how what its words are about is told.
func (t *turn) nearlyOfUnits() (chat.Post, bool, error) {
	told, ok := phrase.OfThem(t.text, t.names)
	if !ok {
		like, ok := phrase.Nearest(t.text, t.names)
		return wording.Near(phrase.Near{Trouble: phrase.LeftOver, Missed: t.text, Example: like}), ok, nil
	}
	rows, err := t.book.StandingUnits()
	if err != nil || len(rows) == 0 {
		return chat.Post{}, false, err
	}
	like := toldOf(told, phrase.Meant{Refs: []kitchen.Ref{rows[len(rows)-1].Ref.Ref()}})
	return wording.Near(phrase.Near{Trouble: phrase.Incomplete, Missed: t.text, Example: like.String()}), true, nil
}

// cultured reports whether a culture was put on any unit of a load.
func cultured(load kitchen.Units) bool {
	return slices.ContainsFunc(load.All, func(u kitchen.Unit) bool { return u.Cultured })
}
