package kitchen

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
)

// CulturesSubject is what cultures are about.
const CulturesSubject = "cultures"

// CultureKind is what a culture lives in.
type CultureKind uint8

// The kinds.
const (
	LiquidBottle CultureKind = iota + 1
	Plate
	GrainMaster
	Syringe
)

// CultureKinds lists them all.
func CultureKinds() []CultureKind { return []CultureKind{LiquidBottle, Plate, GrainMaster, Syringe} }

// String returns the word for logs and the book.
func (k CultureKind) String() string {
	switch k {
	case LiquidBottle:
		return "liquid culture"
	case Plate:
		return "plate"
	case GrainMaster:
		return "grain master"
	case Syringe:
		return "syringe"
	}
	return "kind not said"
}

// Route is the way a culture of the kind is put on grain; zero where the kind was not
// said.
func (k CultureKind) Route() Route {
	switch k {
	case LiquidBottle:
		return LiquidCulture
	case Plate:
		return Agar
	case GrainMaster:
		return GrainToGrain
	case Syringe:
		return Spores
	}
	return 0
}

// CultureEntry is an entry about cultures. The cases are the types of this file.
//
//sumtype:decl
type CultureEntry interface {
	Entry
	culture()
}

// CultureMade says that a culture was made, or came here. Fields beside the name that
// were not said are zero.
type CultureMade struct {
	Name    string      `json:"name"`
	Kind    CultureKind `json:"kind,omitzero"`
	Species string      `json:"species,omitzero"`
	// From is the name of the culture it was taken of, FromUnit a grown unit. Neither
	// for one that came from outside.
	From     string   `json:"from,omitzero"`
	FromUnit UnitRef  `json:"fromUnit,omitzero"`
	Owner    MemberNo `json:"owner,omitzero"`
	// Volume is how much there is of a liquid.
	Volume unit.Litres `json:"l,omitzero"`
	// Made is when; zero for when it was told.
	Made time.Time `json:"made,omitzero"`
	// Generation is how many times it was carried from grain to grain before it came
	// here, where that is known.
	Generation int `json:"generation,omitzero"`
}

// CultureEnd is what became of a culture.
type CultureEnd uint8

// The ends.
const (
	CultureUsedUp CultureEnd = iota + 1
	CultureThrownOut
	CultureWentBad
)

// String returns the word for logs and the book.
func (e CultureEnd) String() string {
	switch e {
	case CultureUsedUp:
		return "used up"
	case CultureThrownOut:
		return "thrown out"
	case CultureWentBad:
		return "contaminated"
	}
	return "end not said"
}

// CultureEnded says that a culture is no more.
type CultureEnded struct {
	Name string     `json:"name"`
	How  CultureEnd `json:"how,omitzero"`
}

func (CultureMade) entry()    {}
func (CultureEnded) entry()   {}
func (CultureMade) culture()  {}
func (CultureEnded) culture() {}

// Culture is a culture as far as its entries tell. Its number is that of the entry
// that made it: a name can be given again once the one before has ended.
type Culture struct {
	No       EntryNo
	Name     string
	Kind     CultureKind
	Species  string
	Owner    MemberNo
	Volume   unit.Litres
	Made     time.Time
	By       MemberNo
	FromUnit UnitRef
	// From is the name of its parent, Parent its number; zero for a parent that the
	// book doesn't know.
	From   string
	Parent EntryNo
	// Transfers is how many cultures lie between it and the first that is known.
	Transfers int
	// Generation is how many times it was on grain before, where that was said: see
	// [Lineage.Generation].
	Generation int
	Ended      time.Time
	How        CultureEnd
	EndedBy    MemberNo
}

// At reports whether the culture was there at a time.
func (c Culture) At(at time.Time) bool {
	return !c.Made.After(at) && (c.Ended.IsZero() || c.Ended.After(at))
}

// Cultures are the cultures of a collective, the oldest first.
type Cultures struct {
	All    []Culture
	Strays []CultureStray

	told []cultureTold
	// byName and byNo are where in All a culture stands, by its name in lower case, the
	// oldest first, and by its number; roots the names that their lines go
	// back to: see put.
	byName map[string][]int
	byNo   map[EntryNo]int
	roots  map[EntryNo]string
}

// CultureStray is a record that can't be so beside the others, and why.
type CultureStray struct {
	Record Record
	Why    Refusal

	seq int
}

type cultureTold struct {
	Record
	seq int
}

// when is when it happened: a culture is as old as it was made.
func (t cultureTold) when() time.Time {
	if m, ok := t.Entry.(CultureMade); ok && !m.Made.IsZero() {
		return m.Made
	}
	return t.At
}

// FoldCultures are the cultures that these records tell of. They may come in any
// order; struck ones must not be among them, and others are passed over. What can't
// be so becomes a stray. No culture is its own ancestor.
func FoldCultures(records []Record) Cultures {
	var c Cultures
	for _, r := range records {
		if _, ok := r.Entry.(CultureEntry); ok {
			c.told = append(c.told, cultureTold{Record: r, seq: len(c.told)})
		}
	}
	return c.fold()
}

func (c Cultures) fold() Cultures {
	c.All, c.Strays = nil, nil
	c.byName, c.byNo, c.roots = map[string][]int{}, map[EntryNo]int{}, map[EntryNo]string{}
	told := slices.Clone(c.told)
	slices.SortStableFunc(told, func(a, b cultureTold) int {
		place := func(t cultureTold) int { return int(telling{Record: t.Record}.place()) }
		return cmp.Or(a.when().Compare(b.when()), cmp.Compare(place(a), place(b)), cmp.Compare(a.seq, b.seq))
	})
	for _, t := range told {
		if why := c.take(t); why != nil {
			c.Strays = append(c.Strays, CultureStray{Record: t.Record, Why: why, seq: t.seq})
		}
	}
	return c
}

func (c *Cultures) take(t cultureTold) Refusal {
	switch e := t.Entry.(CultureEntry).(type) {
	case CultureMade:
		return c.made(e, t)
	case CultureEnded:
		return c.ended(e, t)
	}
	panic("culture without an entry")
}

func (c *Cultures) made(e CultureMade, t cultureTold) Refusal {
	at := t.when()
	if old, ok := c.Named(e.Name, at); ok && old.At(at) {
		return CultureKnown{Name: old.Name, Made: old.Made}
	}
	made := Culture{
		No: t.No, Name: e.Name, Kind: e.Kind, Species: e.Species, Owner: e.Owner, Volume: e.Volume, Made: at, By: t.By,
		FromUnit: e.FromUnit, From: e.From, Generation: e.Generation,
	}
	root := e.From
	if parent, ok := c.Named(e.From, at); ok && e.From != "" {
		root = c.roots[parent.No]
		made.Parent, made.Transfers = parent.No, parent.Transfers+1
		made.Species = firstSet(e.Species, parent.Species)
	} else if e.From != "" {
		made.Transfers = 1
	}
	if root != "" && sameName(root, e.Name) {
		return OwnAncestor{Culture: e.Name}
	}
	c.put(made, root)
	return nil
}

// put adds a culture, whose line goes back to a name that the book doesn't know more of;
// an empty one for a line that begins with a culture from outside.
func (c *Cultures) put(made Culture, root string) {
	key := strings.ToLower(made.Name)
	c.byName[key] = append(c.byName[key], len(c.All))
	c.byNo[made.No], c.roots[made.No] = len(c.All), root
	c.All = append(c.All, made)
}

func (c *Cultures) ended(e CultureEnded, t cultureTold) Refusal {
	old, ok := c.Named(e.Name, t.At)
	switch {
	case !ok:
		return NoSuchCulture{Name: e.Name}
	case !old.Ended.IsZero():
		return CultureOver{Name: old.Name, Ended: old.Ended}
	}
	i := c.byNo[old.No]
	c.All[i].Ended, c.All[i].How, c.All[i].EndedBy = t.At, e.How, t.By
	return nil
}

// Named is the culture that a name meant at a time: the newest of that name made by
// then, ended or not.
func (c Cultures) Named(name string, at time.Time) (Culture, bool) {
	for _, i := range slices.Backward(c.byName[strings.ToLower(name)]) {
		if !c.All[i].Made.After(at) {
			return c.All[i], true
		}
	}
	return Culture{}, false
}

// Numbered is the culture of a number.
func (c Cultures) Numbered(no EntryNo) (Culture, bool) {
	i, ok := c.byNo[no]
	if !ok || no == 0 {
		return Culture{}, false
	}
	return c.All[i], true
}

// Apply are the cultures once a record more is in the book, which has its number. A
// [Refusal] says why it can't be so; they are then as they were.
func (c Cultures) Apply(rec Record) (Cultures, error) {
	e, ok := rec.Entry.(CultureEntry)
	if !ok {
		panic("entry of something else than cultures")
	}
	t := cultureTold{Record: rec, seq: len(c.told)}
	if t.when().After(rec.Written.Add(clockSkew)) {
		return c, InFuture{At: t.when(), Told: rec.Written}
	}
	if m, made := e.(CultureMade); made {
		if err := checkRange(CultureVolume, float64(m.Volume), 0, maxCulture); err != nil {
			return c, err
		}
	}
	next := c
	next.told = append(slices.Clone(c.told), t)
	next = next.fold()
	for _, s := range next.Strays {
		if s.seq == t.seq || !slices.ContainsFunc(c.Strays, func(o CultureStray) bool { return o.seq == s.seq }) {
			return c, s.Why
		}
	}
	return next, nil
}

// maxCulture is the largest bottle of liquid culture that a kitchen has, in litres
// (common practice, no source).
const maxCulture = 20
