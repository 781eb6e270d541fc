package phrase

import "sync"

// speciesWords are the species by their canonical names, in the words that people
// type, with the usual slips. Weak words are also colours or the like: they name a
// species only where a culture must stand.
var speciesWords = [...]struct {
	species string
	words   []string
	weak    []string
}{
	{"oyster", []string{"oyster", "oysters", "oyster mushroom", "oyster mushrooms", "ostreatus", "pleurotus", "pleurotus ostreatus", "oister", "oisters", "oystr", "oysta"}, nil},
	{"blue oyster", []string{"blue oyster", "blue oysters", "blues", "bo", "blue oister"}, []string{"blue"}},
	{"pearl oyster", []string{"pearl oyster", "pearl oysters", "pearls", "po"}, []string{"pearl"}},
	{"grey oyster", []string{"grey oyster", "grey oysters", "gray oyster", "gray oysters"}, []string{"grey", "gray"}},
	{"pink oyster", []string{"pink oyster", "pink oysters", "pinks", "djamor", "pink oister"}, []string{"pink"}},
	{"golden oyster", []string{"golden oyster", "golden oysters", "goldens", "yellow oyster", "yellow oysters", "gold oyster", "citrino", "citrinopileatus"}, []string{"golden", "yellow", "gold"}},
	{"king oyster", []string{"king oyster", "king oysters", "king", "kings", "ko", "eryngii", "trumpet", "trumpets", "king trumpet", "king trumpets", "kingoyster"}, nil},
	{"phoenix oyster", []string{"phoenix oyster", "phoenix oysters", "pulmonarius"}, []string{"phoenix"}},
	{"shiitake", []string{"shiitake", "shitake", "shiitaki", "shitaki", "shii", "shiitakes", "shitakes", "siitake", "lentinula"}, nil},
	{"lion's mane", []string{
		"lion's mane", "lions mane", "lion's main", "lions main", "lion mane", "lm", "hericium", "lionsmane", "lionsmain", "lions maine", "lion's maine", "loins mane", "lions' mane", "lion main",
	}, nil},
	{"reishi", []string{"reishi", "reishis", "ganoderma", "lingzhi", "rieshi", "reshi", "raishi"}, nil},
	{"enoki", []string{"enoki", "enokis", "enokitake", "flammulina", "velvet foot", "inoki"}, nil},
	{"maitake", []string{"maitake", "maitakes", "hen", "hen of the woods", "hens", "mitake", "grifola"}, nil},
	{"button", []string{
		"button", "buttons", "button mushroom", "button mushrooms", "white button", "champignon", "champignons", "agaricus", "bisporus", "portobello", "portobellos", "portabella", "portabello",
		"cremini", "crimini",
	}, nil},
	{"wine cap", []string{"wine cap", "wine caps", "winecap", "winecaps", "king stropharia", "stropharia", "garden giant", "garden giants"}, nil},
	{"chestnut", []string{"chestnut", "chestnuts", "chestnut mushroom", "chestnut mushrooms", "pholiota", "pholiota adiposa", "cinnamon cap", "cinnamon caps"}, nil},
	{"nameko", []string{"nameko", "namekos", "pholiota nameko"}, nil},
	{"turkey tail", []string{"turkey tail", "turkey tails", "tt", "turkeytail", "turkeytails", "trametes", "versicolor"}, nil},
	{"pioppino", []string{"pioppino", "pioppinos", "pioppini", "piopino", "black poplar", "agrocybe"}, nil},
	{"cordyceps", []string{"cordyceps", "militaris"}, nil},
	{"almond", []string{"almond agaricus", "blazei", "almond mushroom"}, nil},
}

// speciesTable finds a species by the first of its words; weakSpecies has the weak
// ones.
var (
	speciesTable = sync.OnceValue(func() glossary[string] {
		g := glossary[string]{}
		for _, s := range speciesWords {
			g.add(s.species, s.words...)
		}
		return g
	})
	weakSpecies = sync.OnceValue(func() glossary[string] {
		g := glossary[string]{}
		for _, s := range speciesWords {
			g.add(s.species, s.weak...)
		}
		return g
	})
)

// species takes the words for a species, its canonical name.
func (c cursor) species() (string, cursor, bool) { return speciesTable().take(c) }

// Species is the canonical name of the species that a text names, whole; false for
// words that the vocabulary has none for.
func Species(text string) (string, bool) {
	c := cursor{s: read(text, Names{})}
	s, d, ok := c.species()
	if !ok {
		s, d, ok = weakSpecies().take(c)
	}
	return s, ok && d.done()
}

// cultureNouns are the words with which a culture of the collective is named: plate 7,
// bottle 3.
var cultureNouns = set("plate plates dish dishes petri bottle bottles syringe syringes master masters slant slants tube tubes culture cultures strain strains vial vials lc")

// cultureName takes such a name: "plate 7", "lc 4", "grain master 5", "bottle b".
func (c cursor) cultureName() (string, cursor, bool) {
	d := c
	if e, ok := c.phrase("grain master", "agar dish", "petri dish", "spore syringe", "culture bottle", "lc bottle", "lc syringe"); ok {
		d = e
	} else if _, route := c.token().(RouteWord); route || cultureNouns[c.word(0)] {
		d = c.use(1)
	} else {
		return "", c, false
	}
	noun := c.s.words(c.i, d.i)
	e := d.over("no", "nr", "number")
	switch t := e.token().(type) {
	case Number:
		if n, ok := whole(t.Value); ok && t.Ref == nil && !t.Word && !t.Times && n > 0 {
			return noun + " " + plain(t.Value), e.use(1), true
		}
	case RunRef:
		if len(t.Ref.Units) == 0 && e.word(0)[0] == '#' {
			return noun + " " + plain(float64(t.Ref.Run)), e.use(1), true
		}
	case Word:
		if w := t.Text; len(w) == 1 && 'a' <= w[0] && w[0] <= 'z' && w != "w" && w != "n" && w != "a" && w != "i" || len(w) == 1 && w == "a" && e.use(1).settled() {
			return noun + " " + w, e.use(1), true
		}
	}
	return "", c, false
}

// words are the folded words of tokens [i, j), parted by single spaces.
func (s *sentence) words(i, j int) string {
	said := ""
	for k := i; k < j; k++ {
		if k > i {
			said += " "
		}
		said += s.said[k]
	}
	return said
}
