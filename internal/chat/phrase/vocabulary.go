package phrase

import (
	"strings"
	"sync"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/kitchen"
)

// entry is what the vocabulary has of one word. A word can be several things:
// may is a month and an everyday word, second a unit and an ordinal.
type entry struct {
	class  Class
	number numeral
	// value is that of a number word.
	value   float64
	measure *measure
	vessel  kitchen.Vessel
	day     dayWord
	// weekday and month are set by the words for them; both from 1 (Sunday is 1).
	weekday int
	month   time.Month
	// loose is true for the short names of days and months that are also words.
	loose bool
	// phrases begin with the word, the longest first; one of a single word has no
	// rest.
	phrases []saying
	// timely words are those of which every time has one, or a colon.
	timely bool
	// person is true for first names.
	person bool
	// firm words are never what a misspelt word is taken for.
	firm bool
}

// saying is a meaning in one or more words: rest are those behind the first.
type saying struct {
	rest  []string
	token func(at) Token
}

// numeral is how a number word joins with others.
type numeral uint8

const (
	ones numeral = iota + 1
	teens
	tens
	hundred
	thousand
	huge
	dozen
	couple
	part // half, quarter, third
	article
)

// dayWord is a word that moves or names a part of the day.
type dayWord uint8

const (
	today dayWord = iota + 1
	tomorrow
	yesterday
	tonight
	morning
	afternoon
	evening
	night
	noon
	midnight
)

var numerals = map[string]entry{
	"one": {number: ones, value: 1}, "two": {number: ones, value: 2}, "three": {number: ones, value: 3},
	"four": {number: ones, value: 4}, "five": {number: ones, value: 5}, "six": {number: ones, value: 6},
	"seven": {number: ones, value: 7}, "eight": {number: ones, value: 8}, "nine": {number: ones, value: 9},
	"ten": {number: teens, value: 10}, "eleven": {number: teens, value: 11}, "twelve": {number: teens, value: 12},
	"thirteen": {number: teens, value: 13}, "fourteen": {number: teens, value: 14}, "fifteen": {number: teens, value: 15},
	"sixteen": {number: teens, value: 16}, "seventeen": {number: teens, value: 17}, "eighteen": {number: teens, value: 18},
	"nineteen": {number: teens, value: 19}, "twenty": {number: tens, value: 20}, "thirty": {number: tens, value: 30},
	"forty": {number: tens, value: 40}, "fourty": {number: tens, value: 40}, "fifty": {number: tens, value: 50},
	"sixty": {number: tens, value: 60}, "seventy": {number: tens, value: 70}, "eighty": {number: tens, value: 80},
	"ninety":  {number: tens, value: 90},
	"hundred": {number: hundred, value: 100}, "thousand": {number: thousand, value: 1000},
	"million": {number: huge, value: 1e6}, "millions": {number: huge, value: 1e6}, "mil": {number: huge, value: 1e6},
	"mio": {number: huge, value: 1e6}, "billion": {number: huge, value: 1e9}, "bn": {number: huge, value: 1e9},
	"trillion": {number: huge, value: 1e12}, "hundreds": {number: huge, value: 100}, "thousands": {number: huge, value: 1000},
	"dozen": {number: dozen, value: 12}, "dozens": {number: huge, value: 12}, "couple": {number: couple, value: 2},
	"pair": {number: couple, value: 2},
	"half": {number: part, value: 1. / 2}, "third": {number: part, value: 1. / 3}, "thirds": {number: part, value: 1. / 3},
	"quarter": {number: part, value: 1. / 4}, "quarters": {number: part, value: 1. / 4},
	"fourth": {number: part, value: 1. / 4}, "fourths": {number: part, value: 1. / 4},
	"halves": {number: part, value: 1. / 2}, "fifth": {number: part, value: 1. / 5}, "fifths": {number: part, value: 1. / 5},
	"eighth": {number: part, value: 1. / 8}, "eighths": {number: part, value: 1. / 8},
	"a": {number: article, value: 1, class: Filler}, "an": {number: article, value: 1, class: Filler},
}

var vessels = map[string]kitchen.Vessel{
	"jar": kitchen.Jar, "jars": kitchen.Jar, "bag": kitchen.Bag, "bags": kitchen.Bag, "bgs": kitchen.Bag,
	"bag's": kitchen.Bag, "jar's": kitchen.Jar,
}

var routes = map[kitchen.Route][]string{
	kitchen.LiquidCulture: {"lc", "lcs", "liquid culture", "liquid cultures", "lc's"},
	kitchen.Agar:          {"agar", "agars", "agar wedge", "agar wedges", "agar plate", "agar plates"},
	kitchen.GrainToGrain:  {"g2g", "gtg", "grain to grain", "grain 2 grain", "grain too grain", "grain transfer", "grain transfers"},
	kitchen.Spores: {
		"spores", "spore", "spore syringe", "spore syringes", "mss", "multispore", "multi spore", "spore print",
		"spore prints",
	},
}

var days = map[string]dayWord{
	"today": today, "tomorrow": tomorrow, "tmrw": tomorrow, "tmr": tomorrow, "tmrow": tomorrow, "tomorow": tomorrow,
	"yesterday": yesterday, "yday": yesterday, "tonight": tonight, "tonite": tonight, "morning": morning,
	"afternoon": afternoon, "arvo": afternoon, "evening": evening, "eve": evening, "night": night,
	"noon": noon, "midday": noon, "midnight": midnight, "midnite": midnight,
}

// weekdays has the long names and the short ones; those in looseDays mean a day
// only beside a number or another word of time.
var weekdays = [...]string{
	"sunday sundays sun", "monday mondays mon", "tuesday tuesdays tue tues", "wednesday wednesdays wed weds",
	"thursday thursdays thu thur thurs", "friday fridays fri", "saturday saturdays sat",
}

var months = [...]string{
	"january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul", "august aug",
	"september sep sept", "october oct", "november nov", "december dec",
}

const looseDays = "sun sat mon may march mar wed august jan dec"

// vocabulary is every word known, by its folded spelling.
var vocabulary = sync.OnceValue(func() map[string]*entry {
	v := make(builder, 2048)
	for w := range strings.FieldsSeq(people) {
		v.of(w).person = true
	}
	for _, c := range classes {
		for w := range strings.FieldsSeq(c.words) {
			if e := v.of(w); e.class == Unknown {
				e.class = c.class
			}
		}
	}
	for w, n := range numerals {
		e := v.of(w)
		e.number, e.value = n.number, n.value
	}
	for i := range measures {
		for w := range strings.FieldsSeq(measures[i].words) {
			e := v.of(w)
			e.measure = &measures[i]
			v.class(e, Measuring)
		}
	}
	for w, vessel := range vessels {
		v.of(w).vessel = vessel
	}
	v.calendar()
	v.grains()
	for route, words := range routes {
		for _, w := range words {
			v.say(w, func(a at) Token { return RouteWord{a, route} })
		}
	}
	for _, f := range strings.Fields(firm) {
		v.of(f).firm = true
	}
	for w := range strings.FieldsSeq(people) {
		v.class(v.of(w), Everyday)
	}
	v.units()
	for w := range strings.FieldsSeq(timely) {
		v.of(w).timely = true
	}
	for _, e := range v {
		e.timely = e.timely || e.day != 0 || e.weekday != 0 || e.month != 0
	}
	return v
})

type builder map[string]*entry

func (v builder) of(w string) *entry {
	if v[w] == nil {
		v[w] = &entry{}
	}
	return v[w]
}

func (v builder) class(e *entry, c Class) {
	if e.class == Unknown {
		e.class = c
	}
}

func (v builder) calendar() {
	for w, d := range days {
		e := v.of(w)
		e.day = d
		v.class(e, Calendar)
	}
	for i, words := range weekdays {
		for w := range strings.FieldsSeq(words) {
			e := v.of(w)
			e.weekday = i + 1
			v.class(e, Calendar)
		}
	}
	for i, words := range months {
		for w := range strings.FieldsSeq(words) {
			e := v.of(w)
			e.month = time.Month(i + 1)
			v.class(e, Calendar)
		}
	}
	for w := range strings.FieldsSeq(looseDays) {
		v.of(w).loose = true
	}
}

func (v builder) grains() {
	for _, k := range grain.All() {
		for _, w := range k.Synonyms() {
			v.say(w, func(a at) Token { return GrainWord{a, k} })
		}
		for _, w := range k.Misspellings() {
			if e := v[w]; e == nil { // barely and maze are words
				v.say(w, func(a at) Token { return GrainWord{a, k} })
			}
		}
		for _, w := range k.Unsuited() {
			v.say(w, func(a at) Token { return Unsuited{a, w} })
		}
	}
}

// say adds a meaning in one or more words. The words behind the first become
// known too, so that they are never mended.
func (v builder) say(words string, token func(at) Token) {
	w := strings.Fields(words)
	for _, rest := range w[1:] {
		v.class(v.of(rest), Trade)
	}
	e := v.of(w[0])
	v.class(e, Trade)
	i := 0
	for i < len(e.phrases) && len(e.phrases[i].rest) >= len(w)-1 {
		i++
	}
	e.phrases = append(e.phrases, saying{})
	copy(e.phrases[i+1:], e.phrases[i:])
	e.phrases[i] = saying{w[1:], token}
}

// units makes the words for what is told of units known. Those of species can be what a
// misspelt word is taken for.
func (v builder) units() {
	learn := func(class Class, phrases ...string) {
		for _, p := range phrases {
			for w := range strings.FieldsSeq(p) {
				if len(w) >= leastUnitWord && isLetter(rune(w[0])) {
					v.class(v.of(w), class)
				}
			}
		}
	}
	for _, s := range speciesWords {
		learn(Trade, s.species)
		learn(Everyday, s.words...)
	}
	for _, s := range signWords {
		learn(Everyday, s.words...)
		learn(Everyday, s.things...)
	}
	for w := range placeNouns {
		learn(Everyday, w)
	}
	learn(Everyday, moreUnitWords)
}

// leastUnitWord is the shortest word that would be mended.
const leastUnitWord = 3

// moreUnitWords are others that are spelt right.
const moreUnitWords = `incubation incubate incubating incubated binned tossed chucked dumped trashed composted wedge wedges syringe shaken stored shelved donated lent squirted injected inoced noced
	uninoculated control innermost outermost inner outer layer sawdust`
