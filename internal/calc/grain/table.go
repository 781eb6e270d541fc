package grain

import (
	"time"

	"ryebell/internal/calc/unit"
)

// usualMoisture is the default for every kind; see Kind.StorageMoisture.
const usualMoisture unit.Fraction = 0.12

// facts is what is assumed of one kind.
type facts struct {
	name         string
	moisture     unit.Fraction
	density      unit.KgPerLitre
	yield        Yield
	simmer       Simmer
	synonyms     []string
	misspellings []string
	unsuited     []string
}

// table is read only. Densities are pounds per US bushel where the trade has
// one; yields and times are common practice.
var table = [...]facts{
	Rye: {
		name: "rye", moisture: usualMoisture, density: unit.PoundsPerUSBushel(56),
		yield: between(1.8, 2.05), simmer: minutes(45, 60),
		synonyms: []string{
			"rye", "rye berry", "rye berries", "ryeberries", "rye grain", "rye grains",
			"whole rye", "whole rye berries", "cereal rye", "winter rye",
		},
		misspellings: []string{"rey", "rye beries"},
		unsuited:     []string{"rye grass", "ryegrass", "rye grass seed", "rye flakes", "rolled rye", "rye flour"},
	},
	Wheat: {
		name: "wheat", moisture: usualMoisture, density: unit.PoundsPerUSBushel(60),
		yield: between(1.7, 1.9), simmer: minutes(45, 60),
		synonyms: []string{
			"wheat", "wheat berry", "wheat berries", "wheatberry", "wheatberries", "wheat grain",
			"whole wheat", "hard red", "hard red wheat", "triticale",
		},
		misspellings: []string{"weat", "wheet"},
		unsuited:     []string{"wheat flour", "wheat bran", "wheat straw", "cracked wheat", "bulgur"},
	},
	Oats: {
		name: "oats", moisture: usualMoisture, density: unit.PoundsPerUSBushel(32),
		yield: between(1.9, 2.2), simmer: minutes(45, 45),
		synonyms: []string{
			"oats", "oat", "whole oats", "horse oats", "feed oats", "race horse oats",
			"racehorse oats", "hulled oats",
		},
		misspellings: []string{"oates"},
		unsuited:     []string{"rolled oats", "oat flakes", "oatmeal", "instant oats", "oat bran"},
	},
	Millet: {
		name: "millet", moisture: usualMoisture, density: unit.PoundsPerUSBushel(50),
		yield: between(1.6, 1.8), simmer: minutes(20, 30),
		synonyms: []string{
			"millet", "millets", "white millet", "proso", "proso millet", "foxtail",
			"foxtail millet",
		},
		misspellings: []string{"millett", "milet"},
		unsuited:     []string{"millet flakes", "millet flour"},
	},
	Sorghum: {
		name: "sorghum", moisture: usualMoisture, density: unit.PoundsPerUSBushel(56),
		yield: between(1.7, 1.9), simmer: minutes(30, 45),
		synonyms: []string{
			"sorghum", "milo", "grain sorghum", "red milo", "white milo", "jowar",
		},
		misspellings: []string{"sorgum", "sorghom"},
		unsuited:     []string{"sorghum flour", "sorghum syrup"},
	},
	Maize: {
		name: "maize", moisture: usualMoisture, density: unit.PoundsPerUSBushel(56),
		yield: between(1.6, 1.8), simmer: minutes(45, 75),
		synonyms: []string{
			"maize", "corn", "popcorn", "pop corn", "whole corn", "feed corn", "field corn",
			"whole maize",
		},
		misspellings: []string{"popcron"},
		unsuited: []string{
			"cracked corn", "cracked maize", "corn meal", "cornmeal", "sweet corn", "sweetcorn",
			"corn cob", "corn cobs", "microwave popcorn",
		},
	},
	Barley: {
		name: "barley", moisture: usualMoisture, density: unit.PoundsPerUSBushel(48),
		yield: between(1.8, 2.1), simmer: minutes(30, 45),
		synonyms:     []string{"barley", "whole barley", "feed barley", "hulled barley"},
		misspellings: []string{"barly"},
		unsuited:     []string{"pearl barley", "pearled barley", "barley flakes", "barley malt", "malted barley"},
	},
	BrownRice: {
		// 0.75 to 0.80 kg/l from memory, no bushel weight read.
		name: "brown rice", moisture: usualMoisture, density: 0.775,
		yield:        between(1.4, 1.8),
		synonyms:     []string{"brown rice", "rice", "whole rice", "wholegrain rice"},
		misspellings: []string{"brwon rice"},
		unsuited:     []string{"white rice", "instant rice", "puffed rice", "rice flour", "brown rice flour"},
	},
	Birdseed: {
		// 0.6 to 0.7 kg/l from memory: composition differs from sack to sack.
		name: "birdseed", moisture: usualMoisture, density: 0.65,
		yield: between(1.6, 1.8), simmer: minutes(20, 30),
		synonyms: []string{
			"birdseed", "bird seed", "bird seeds", "wbs", "wild bird seed", "wild birdseed",
			"finch mix",
		},
		misspellings: []string{"birdsead"},
		unsuited:     []string{"sunflower seed", "sunflower seeds", "suet"},
	},
}

// between makes a yield with the mean of lo and hi as its middle.
func between(lo, hi unit.Yield) Yield { return Yield{Lo: lo, Mid: (lo + hi) / 2, Hi: hi} }

func minutes(lo, hi int) Simmer {
	return Simmer{Lo: time.Duration(lo) * time.Minute, Hi: time.Duration(hi) * time.Minute}
}
