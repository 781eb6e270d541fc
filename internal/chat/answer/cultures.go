package answer

import (
	"slices"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// makeCulture writes that cultures were made, or came here.
func (t *turn) makeCulture(i phrase.MakeCulture) (chat.Post, error) {
	owner, known, err := t.ownerMeant(i.Owner)
	if err != nil {
		return chat.Post{}, err
	}
	if !known {
		return t.nothingWritten(wording.CultureOwnerUnknown(i.Owner))
	}
	at, err := t.dayOrTime(i.When)
	if err != nil {
		return chat.Post{}, err
	}
	made := i.Made
	made.Owner = owner
	if i.When != nil {
		made.Made = at
	}
	if err := t.takenOf(&made, at); err != nil {
		return chat.Post{}, err
	}
	names := append([]string{made.Name}, i.Also...)
	for _, name := range names {
		made.Name = name
		if err := t.tellCulture(made, t.m.At); err != nil {
			return chat.Post{}, err
		}
	}
	t.said = i.String()
	view, err := t.cultureView(names, at)
	if err != nil {
		return chat.Post{}, err
	}
	if view.Already, err = t.alreadyOn(view.Culture); err != nil {
		return chat.Post{}, err
	}
	return wording.CultureMade(view), nil
}

// alreadyOn are the units that a culture's name was put on before the book knew it, which
// count as its own from now on.
func (t *turn) alreadyOn(c kitchen.Culture) ([]kitchen.UnitRef, error) {
	k, err := t.kinship()
	if err != nil {
		return nil, err
	}
	if _, err := k.add(k.ofNames([]string{c.Name})); err != nil {
		return nil, err
	}
	var out []kitchen.UnitRef
	for _, n := range k.lineage().Forward(kitchen.Node{Culture: c.No}) {
		if n.IsUnit() {
			out = append(out, n.Unit)
		}
	}
	return out, nil
}

// ownerMeant is the member that a culture belongs to; zero for nobody named, false for
// one that nobody knows.
func (t *turn) ownerMeant(name string) (kitchen.MemberNo, bool, error) {
	switch name {
	case "":
		return 0, true, nil
	case phrase.Speaker:
		return t.member.No, true, nil
	}
	found, err := t.book.MembersNamed(name)
	if err != nil || len(found) != 1 {
		return 0, false, err
	}
	return found[0].No, true, nil
}

// dayOrTime is the instant that a moment of the past means: of a day alone its end, so
// that what was done on the same day comes before.
func (t *turn) dayOrTime(m *phrase.Moment) (time.Time, error) {
	at, err := t.past(m)
	if err != nil || m == nil || !m.WholeDay() {
		return at, err
	}
	day := at.In(t.now.Location())
	end := time.Date(day.Year(), day.Month(), day.Day()+1, 0, 0, 0, 0, day.Location()).Add(-time.Minute).UTC()
	if at.Before(t.m.At) && end.After(t.m.At) {
		return t.m.At, nil
	}
	return end, nil
}

// takenOf settles what a culture was taken of: a parent by the name that the
// collective gave it, a unit with what grows on it.
func (t *turn) takenOf(made *kitchen.CultureMade, at time.Time) error {
	k, err := t.kinship()
	if err != nil {
		return err
	}
	if parent, ok := k.cultures.Named(made.From, at); ok && made.From != "" {
		made.From = parent.Name
	}
	if made.FromUnit == (kitchen.UnitRef{}) {
		return nil
	}
	if err := k.grown(made.FromUnit); err != nil {
		return err
	}
	l := k.lineage()
	if err := l.Making(*made, at.Add(sameMinute)); err != nil {
		return err
	}
	if u, ok := l.Unit(kitchen.UnitNode(made.FromUnit)); ok && made.Species == "" {
		made.Species = u.Species
	}
	return nil
}

// sameMinute is within what things told at once are put one after the other: what comes
// of a unit isn't before what was told of it in the same minute.
const sameMinute = time.Minute

// tellCulture writes an entry about a culture, if it can be so.
func (t *turn) tellCulture(e kitchen.CultureEntry, at time.Time) error {
	cultures, err := t.culturesNow()
	if err != nil {
		return err
	}
	// Its number is given when it is written: any that is not taken will do to try it.
	trial := kitchen.Record{No: unwritten, By: t.member.No, At: at, Written: t.m.Arrived, Entry: e}
	if _, err := cultures.Apply(trial); err != nil {
		return err
	}
	_, err = t.append(kitchen.CulturesSubject, e, at, t.text)
	return err
}

// unwritten stands for the number of an entry that is only tried.
const unwritten kitchen.EntryNo = 1 << 40

// cultureView is how the cultures of these names stand once they were told of.
func (t *turn) cultureView(names []string, at time.Time) (wording.CultureView, error) {
	k, err := t.kinship()
	if err != nil {
		return wording.CultureView{}, err
	}
	v := wording.CultureView{Now: t.arrived(), Who: t.who}
	for i, name := range names {
		c, ok := k.cultures.Named(name, t.latestOf(at))
		if !ok {
			return wording.CultureView{}, kitchen.NoSuchCulture{Name: name}
		}
		if i > 0 {
			v.Also = append(v.Also, c)
			continue
		}
		v.Culture = c
		if err := k.backOf(c.Name); err != nil {
			return wording.CultureView{}, err
		}
	}
	v.Lineage = k.lineage()
	v.Waiting, err = t.waiting()
	return v, err
}

// waiting is the cooked grain of the newest load that waits for a culture.
func (t *turn) waiting() (kitchen.Ref, error) {
	rows, err := t.book.StandingUnits()
	var ref kitchen.Ref
	for _, r := range rows {
		if r.State != kitchen.UnitCooked || r.Blank {
			continue
		}
		if r.Ref.Run != ref.Run {
			ref = kitchen.Ref{Run: r.Ref.Run}
		}
		ref.Units = append(ref.Units, r.Ref.Unit)
	}
	return ref, err
}

// latestOf is the later of when something happened and when it was told.
func (t *turn) latestOf(at time.Time) time.Time {
	if at.After(t.m.At) {
		return at
	}
	return t.m.At
}

// endCulture writes that cultures are no more.
func (t *turn) endCulture(i phrase.EndCulture) (chat.Post, error) {
	at, err := t.dayOrTime(i.When)
	if err != nil {
		return chat.Post{}, err
	}
	if at.After(t.m.At) {
		return chat.Post{}, kitchen.InFuture{At: at, Told: t.m.At}
	}
	cultures, err := t.culturesNow()
	if err != nil {
		return chat.Post{}, err
	}
	names := append([]string{i.Ended.Name}, i.Also...)
	for n, name := range names {
		c, ok := cultures.Named(name, at)
		if !ok {
			return t.nothingWritten(wording.NoSuchCulture(name, living(cultures)))
		}
		names[n] = c.Name
	}
	for _, name := range names {
		if err := t.tellCulture(kitchen.CultureEnded{Name: name, How: i.Ended.How}, at); err != nil {
			return chat.Post{}, err
		}
	}
	t.said = i.String()
	view, err := t.cultureView(names, at)
	if err != nil {
		return chat.Post{}, err
	}
	if i.Ended.How == kitchen.CultureWentBad {
		view.Kin, err = t.tainted(append([]kitchen.Culture{view.Culture}, view.Also...))
	}
	return wording.CultureEnded(view), err
}

// living are the names of the cultures that are there, the newest first.
func living(cultures kitchen.Cultures) []string {
	var out []string
	for _, c := range slices.Backward(cultures.All) {
		if c.Ended.IsZero() {
			out = append(out, c.Name)
		}
	}
	return out
}

// cultures lists the cultures, or tells of one.
func (t *turn) cultures(i phrase.Cultures) (chat.Post, error) {
	k, err := t.kinship()
	if err != nil {
		return chat.Post{}, err
	}
	if i.Name != "" {
		if _, ok := k.cultures.Named(i.Name, t.m.At); !ok {
			return t.trace(phrase.Trace{Culture: i.Name}, scene{})
		}
		view, err := t.cultureView([]string{i.Name}, t.m.At)
		return wording.Culture(view), err
	}
	for _, name := range living(k.cultures) {
		if err := k.backOf(name); err != nil {
			return chat.Post{}, err
		}
	}
	return wording.Cultures(wording.CulturesView{All: k.cultures, Lineage: k.lineage(), Kind: i.Kind, Now: t.arrived(), Who: t.who}), nil
}

// ofSpecies are the cultures of what grows.
func ofSpecies(cultures kitchen.Cultures, species string) []string {
	var out []string
	for _, c := range cultures.All {
		if strings.EqualFold(c.Species, species) {
			out = append(out, c.Name)
		}
	}
	return out
}
