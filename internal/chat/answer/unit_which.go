package answer

import (
	"cmp"
	"errors"
	"slices"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// target is units of one load; no units means all of it.
type target struct {
	run   kitchen.RunNo
	units []kitchen.UnitNo
}

func (g target) ref() kitchen.Ref { return kitchen.Ref{Run: g.run, Units: g.units} }

// meaning is what a message says of which units are meant.
type meaning struct {
	of phrase.Meant
	// entry is what is told of them; nil for a question.
	entry kitchen.UnitEntry
	at    time.Time
	// before are the units that were named earlier in the same breath.
	before []target
}

// meantUnits are the units that are meant, load by load. An error is a
// [kitchen.Refusal], or a [whichLoad] when several can be meant.
func (t *turn) meantUnits(m meaning, ctx scene) ([]target, error) {
	switch {
	case len(m.of.Refs) > 0:
		return t.namedRefs(m)
	case len(m.of.Names) > 0:
		return t.unitsCalled(m.of.Names)
	case m.of.Rest && len(m.before) > 0:
		return t.narrowed(target{run: m.before[len(m.before)-1].run}, m)
	}
	if isMeant(m.of) {
		if targets, err := t.answeredUnits(m, ctx); len(targets) > 0 || err != nil {
			return targets, err
		}
		if len(m.before) > 0 {
			return m.before[len(m.before)-1:], nil
		}
	}
	if ctx.run != 0 {
		return t.narrowed(target{run: ctx.run, units: m.of.Units}, m)
	}
	if len(m.before) > 0 {
		return t.narrowed(target{run: m.before[len(m.before)-1].run, units: m.of.Units}, m)
	}
	return t.likeliest(m)
}

// isMeant reports whether nothing at all was said of which units are meant.
func isMeant(of phrase.Meant) bool {
	return len(of.Units) == 0 && of.Vessel == 0 && of.Count == 0 && !of.Rest && of.State == 0
}

// namedRefs are the units of the loads that were named, each load once.
func (t *turn) namedRefs(m meaning) ([]target, error) {
	var out []target
	for _, r := range m.of.Refs {
		targets, err := t.narrowed(target{run: r.Run, units: r.Units}, m)
		if err != nil {
			return nil, err
		}
		for _, g := range targets {
			i := slices.IndexFunc(out, func(o target) bool { return o.run == g.run })
			switch {
			case i < 0:
				out = append(out, g)
			case len(out[i].units) == 0 || len(g.units) == 0:
				out[i].units = nil
			default:
				out[i].units = append(slices.Clone(out[i].units), g.units...)
			}
		}
	}
	return out, nil
}

// narrowed is a target without what was said not to be meant. All of a load means
// those of its units that the entry can be about: that still stand, and for a
// culture those that are no blank and have none.
func (t *turn) narrowed(g target, m meaning) ([]target, error) {
	load, err := t.load(g.run)
	if err != nil {
		return nil, err
	}
	if m.of.Vessel == 0 && len(m.of.Except) == 0 && !m.of.Rest && m.of.State == 0 {
		if len(g.units) == 0 && m.entry != nil {
			g.units = load.Fit(m.entry)
		}
		return []target{g}, nil
	}
	units := g.units
	if len(units) == 0 {
		for _, u := range load.All {
			units = append(units, u.Ref.Unit)
		}
		if m.entry != nil {
			if fit := load.Fit(m.entry); len(fit) > 0 {
				units = fit
			}
		}
	}
	kept := slices.DeleteFunc(slices.Clone(units), func(n kitchen.UnitNo) bool {
		u, ok := load.Unit(n)
		return ok && (m.of.Vessel != 0 && u.Container.Vessel != m.of.Vessel || m.of.State != 0 && u.State != m.of.State) ||
			slices.Contains(m.of.Except, n) || m.of.Rest && slices.ContainsFunc(m.before, func(b target) bool { return b.run == g.run && slices.Contains(b.units, n) })
	})
	if len(kept) == 0 {
		return nil, kitchen.NoneMeant{Run: g.run}
	}
	return []target{{run: g.run, units: kept}}, nil
}

// unitsCalled are the units of these own names, of those that stand.
func (t *turn) unitsCalled(names []string) ([]target, error) {
	rows, err := t.book.StandingUnits()
	if err != nil {
		return nil, err
	}
	var out []target
	for _, name := range names {
		var called []kitchen.UnitRef
		for _, r := range rows {
			if strings.EqualFold(r.Name, name) {
				called = append(called, r.Ref)
			}
		}
		switch len(called) {
		case 0:
			return nil, kitchen.NoSuchUnitName{Name: name}
		case 1:
			out = append(out, target{run: called[0].Run, units: []kitchen.UnitNo{called[0].Unit}})
		default:
			return nil, kitchen.UnitNameShared{Name: name, Units: called}
		}
	}
	return out, nil
}

// likeliest are the units of the only load of which it can be so; of several the
// speaker's own, else it is asked.
func (t *turn) likeliest(m meaning) ([]target, error) {
	rows, err := t.book.StandingUnits()
	if err != nil {
		return nil, err
	}
	var nos []kitchen.RunNo
	for _, r := range rows {
		if len(nos) == 0 || nos[len(nos)-1] != r.Ref.Run {
			nos = append(nos, r.Ref.Run)
		}
	}
	var can []candidate
	for _, no := range nos {
		c, ok, err := t.candidate(no, m)
		if err != nil {
			return nil, err
		}
		if ok {
			can = append(can, c)
		}
	}
	switch {
	case len(can) == 0:
		return nil, kitchen.NoneMeant{}
	case len(can) == 1 && len(can[0].units) > 1 && m.entry != nil && isMeant(m.of) && ofOne(m.entry):
		return nil, whichLoad{oneByOne(can[0])}
	case len(can) == 1:
		return []target{can[0].target}, nil
	}
	return nil, whichLoad{can}
}

// candidate is a load that can be meant.
type candidate struct {
	target
	load kitchen.Units
}

// candidate is a load with the units of it that can be meant; false for none.
func (t *turn) candidate(no kitchen.RunNo, m meaning) (candidate, bool, error) {
	targets, err := t.narrowed(target{run: no, units: m.of.Units}, m)
	var why kitchen.Refusal
	if errors.As(err, &why) {
		return candidate{}, false, nil
	}
	if err != nil {
		return candidate{}, false, err
	}
	load, err := t.load(no)
	if err != nil {
		return candidate{}, false, err
	}
	g := targets[0]
	if m.of.Count != 0 && len(g.units) != m.of.Count {
		return candidate{}, false, nil
	}
	if m.entry == nil {
		return candidate{g, load}, true, nil
	}
	_, taking, err := load.Apply(t.recordOf(load, m.entry, g.units, m.at))
	if errors.As(err, &why) {
		return candidate{}, false, nil
	}
	return candidate{g, load}, len(taking.Not) == 0, err
}

// whichLoad says that units of several loads can be meant: it is asked.
type whichLoad struct{ can []candidate }

func (whichLoad) Error() string { return "several loads can be meant" }

// mostAsked is how many loads a question offers: the newest.
const mostAsked = 3

// whichUnits asks which load is meant by what was told; false for any other error.
func (t *turn) whichUnits(err error, i phrase.TellUnits) (chat.Post, bool) {
	if errors.As(err, new(whichLoad)) {
		t.kind, t.said = whichKind, i.String() // a number is the answer
	}
	return t.whichLoads(err, func(r kitchen.Ref) string {
		return toldOf(i, phrase.Meant{Refs: []kitchen.Ref{r}}).String()
	})
}

// whichLoads asks which load is meant, each offered with the sentence that says so;
// false for any other error.
func (t *turn) whichLoads(err error, whole func(kitchen.Ref) string) (chat.Post, bool) {
	var several whichLoad
	if !errors.As(err, &several) {
		return chat.Post{}, false
	}
	can := slices.Clone(several.can)
	slices.SortStableFunc(can, func(a, b candidate) int { return cmp.Compare(b.run, a.run) })
	var options []wording.LoadOption
	for _, c := range can[:min(len(can), mostAsked)] {
		options = append(options, wording.LoadOption{Load: c.load, Units: c.units, Say: whole(c.ref())})
	}
	return wording.WhichLoad(options, len(can), t.arrived()), true
}
