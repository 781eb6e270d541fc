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
func (c cursor) species() (string, cursor, bool) {
	s, d, ok := c.surelySpecies()
	if !ok {
		return weakSpecies().take(c)
	}
	return s, d, ok
}

// surelySpecies takes the words for a species that are no colours or the like.
func (c cursor) surelySpecies() (string, cursor, bool) { return speciesTable().take(c) }

// speciesOf is the species that a name says: "oyster lc". A colour says one only beside
// what a culture lives in, "blue lc": "big blue" can be anything.
func speciesOf(name string) (string, bool) {
	for c := (cursor{s: read(name, Names{})}); !c.done(); c.i++ {
		if s, _, ok := c.surelySpecies(); ok {
			return s, true
		}
		s, d, ok := weakSpecies().take(c)
		if _, kind, _, _, noun := d.cultureNoun(); ok && noun && kind != 0 {
			return s, true
		}
	}
	return "", false
}

// Species is the canonical name of the species that a text names, whole; false for
// words that the vocabulary has none for.
func Species(text string) (string, bool) {
	c := cursor{s: read(text, Names{})}
	s, d, ok := c.species()
	return s, ok && d.done()
}
