package phrase

import (
	"sync"

	"ryebell/internal/kitchen"
)

// signWords are what people say of a unit that shows a sign; the first of them prints
// it. Things are what can be in or on a unit: "trich in 12.3".
var signWords = [...]struct {
	sign   kitchen.Sign
	words  []string
	things []string
}{
	{kitchen.LooksFine, []string{
		"fine", "ok", "okay", "good", "healthy", "clean", "alright", "all right", "great", "fine after all", "ok after all", "okay after all", "good after all", "not contaminated", "not green",
		"normal", "fine again", "ok again", "good again", "not contaminated after all", "not bad", "not bad after all", "no contam", "no contamination", "not mouldy", "nice", "perfect", "happy",
		"not wet", "not wet after all", "not green after all", "doing fine", "doing ok", "doing well", "alive after all", "all good", "beautiful", "lovely",
	}, nil},
	{kitchen.LooksOdd, []string{
		"odd", "weird", "strange", "suspicious", "suspect", "dodgy", "funny", "iffy", "fishy", "not right", "not good", "doubtful", "questionable", "brown", "brownish", "discoloured", "discolored",
		"looks off", "look off", "smells off", "smell off", "is off", "not so good", "not great", "grey", "gray", "unsure", "not sure", "sus",
	}, []string{"something odd", "something weird", "something strange", "something funny", "brown spots", "brown patch", "a brown spot", "grey spots", "spots", "a spot", "a dark spot", "dark spots"}},
	{kitchen.LooksWet, []string{
		"wet", "wet at the bottom", "wet on the bottom", "wet in the bottom", "soggy", "damp", "too wet", "wet spots", "wet at bottom", "wet bottom", "wet at the sides", "wet on one side", "wet kernels",
		"cloudy", "clouded", "clouded over", "gone cloudy", "milky", "turbid", "wet in the middle", "wet in one corner", "wet in a corner", "moist", "watery",
	}, []string{"wet spot", "wet spots", "wet patch", "wet patches", "water at the bottom", "water", "standing water", "pooling", "moisture at the bottom", "a puddle", "wet kernels"}},
	{kitchen.Slimy, []string{
		"slimy", "slimey", "slime", "wet rot", "gooey", "glassy", "grey-brown", "grey - brown", "mucky", "snotty", "slimy at the bottom", "sludgy", "greasy", "slimy kernels", "glassy kernels",
	}, []string{"slime", "wet rot", "goo", "sludge", "slimy kernels", "glassy kernels"}},
	{kitchen.SourSmell, []string{
		"sour", "smells sour", "smell sour", "sour smell", "smells rotten", "smells like rotten apple", "smells like rotten apples", "smells of rotten apple", "smells of rotten apples", "rotten apple", "rotten apples",
		"dirty socks", "smells foul", "foul", "stinks", "stinky", "stink", "smells like vinegar", "smells of vinegar", "rancid", "smells bad", "smells like dirty socks", "smells of dirty socks",
		"smells awful", "smells like feet", "smells like puke", "smells terrible", "smelly", "smells disgusting", "smells like socks", "smells sweet", "smells like apple", "smells of apple",
		"smells like apples", "smells of apples", "sour at the bottom", "smells a bit sour", "soured", "gone sour", "went sour", "smells nasty", "reeks", "vinegary", "smelled bad", "smelt bad", "smelled off", "smelt off", "smelled sour", "smelt sour",
		"smelled rotten", "smelled foul", "stank", "smelled awful", "smelled like vinegar", "smelled of vinegar",
	}, []string{"sour smell", "bad smell", "foul smell", "a bad smell", "a sour smell"}},
	{kitchen.GreenMould, []string{
		"green", "trich", "trichoderma", "forest green", "greenish", "green mould", "green mold", "green spot", "green spots", "green patch", "green patches", "green stuff", "gone green", "going green",
		"all green", "green in one corner", "green in a corner", "green at the bottom", "green on top", "tric", "trick", "green dots", "trichy",
	}, []string{
		"trich", "trichoderma", "green", "green mould", "green mold", "green stuff", "green spot", "green spots", "green patch", "green patches", "something green", "green dots", "forest green", "tric", "trick",
	}},
	{kitchen.BlueGreenDust, []string{
		"blue-green", "blue - green", "blue green", "bluegreen", "blue / green", "blue mould", "blue mold", "penicillium", "aspergillus", "green dust", "blue dust", "dusty green", "bluish green",
		"teal", "turquoise", "green blue", "blueish green", "blueish", "bluish", "powdery green", "blue - green dust", "blue green dust", "blue / green dust", "dusty", "blue spots",
	}, []string{"blue mould", "blue mold", "penicillium", "aspergillus", "green dust", "blue dust", "blue - green dust", "blue green dust", "blue spots", "blue - green mould", "blue green mould", "blue green mold", "blue - green mold", "blue - green"}},
	{kitchen.BlackHeads, []string{
		"black heads", "pin mould", "pin mold", "black pin mould", "black pin mold", "black pins", "black dots", "black specks", "whiskers", "grey whiskers", "gray whiskers", "hairy", "rhizopus", "mucor",
		"black mould", "black mold", "black", "black spots", "bread mould", "bread mold", "whiskery", "black whiskers", "black pinheads",
	}, []string{
		"pin mould", "pin mold", "black pin mould", "black pin mold", "black pins", "black dots", "black specks", "whiskers", "grey whiskers", "rhizopus", "mucor", "black mould", "black mold", "black spots",
		"bread mould", "bread mold", "black heads", "black pinheads", "black",
	}},
	{kitchen.PinkFluff, []string{
		"pink", "orange", "red fluff", "pink fluff", "orange fluff", "lipstick", "neurospora", "orange mould", "orange mold", "pinkish", "pink mould", "pink mold", "pink spots", "red", "lipstick mould", "lipstick mold",
		"pink spot", "red mould", "red mold", "reddish",
	}, []string{"pink", "red fluff", "pink fluff", "orange fluff", "lipstick", "neurospora", "orange mould", "orange mold", "pink mould", "pink mold", "pink spots", "something pink", "lipstick mould", "lipstick mold", "a pink spot", "orange"}},
	{kitchen.Cobweb, []string{"cobweb", "cobwebs", "cobweb mould", "cobweb mold", "webby", "cobwebby", "dactylium", "cobweb all over", "grey web", "hypomyces", "spider webs", "spiderweb"}, []string{
		"cobweb", "cobwebs", "cobweb mould", "cobweb mold", "dactylium", "grey web", "hypomyces", "a web",
	}},
	{kitchen.YeastySmell, []string{
		"yeasty", "smells yeasty", "yeast", "smells of beer", "smells like beer", "smells of bread", "smells like bread", "beery", "boozy", "smells of alcohol", "smells like alcohol", "creamy", "smells boozy",
		"smells like yeast", "smells of yeast", "smells like booze", "smells of booze", "fermented", "fermenting", "smells fermented", "smells like wine", "smells of wine", "smells like a brewery",
	}, []string{"yeast", "a beer smell", "yeasty smell", "beer smell", "bread smell"}},
	{kitchen.YellowDrops, []string{
		"yellow drops", "yellow liquid", "yellow juice", "yellow droplets", "brown drops", "yellow water", "metabolites", "metabolite", "yellow puddle", "amber drops", "yellow - brown drops", "yellow brown drops",
		"drops", "droplets", "exudate", "yellow", "yellowish", "yellow spots", "amber liquid", "brown liquid", "yellow ooze", "yellow stuff", "golden drops",
	}, []string{
		"yellow liquid", "yellow drops", "yellow juice", "yellow droplets", "brown drops", "yellow water", "metabolites", "metabolite", "a yellow puddle", "amber drops", "drops", "droplets", "exudate", "amber liquid",
		"brown liquid", "yellow ooze", "yellow stuff", "yellow", "liquid", "golden drops",
	}},
	{kitchen.Stalled, []string{
		"stalled", "stuck", "stopped growing", "not moving", "no progress", "stalling", "has stalled", "not growing any more", "not growing anymore", "doesn't move", "not growing further", "stopped", "hasn't moved",
		"hasn't changed", "not progressing", "growth stopped", "doesn't grow any more", "going nowhere", "stopped half way", "stopped halfway", "at a standstill", "won't finish", "not finishing",
	}, []string{"no progress", "no more growth", "no further growth"}},
	{kitchen.NothingGrew, []string{
		"not growing", "nothing grew", "nothing", "nothing happening", "nothing happens", "nothing happened", "no growth", "nothing growing", "dead", "no sign of life", "no signs of life", "no mycelium", "didn't take", "did not take",
		"hasn't taken", "never took off", "no life", "is dead", "nothing grows", "isn't growing", "doesn't grow", "no growth at all", "not taking", "nothing to see",
		"nothing at all", "nothing going on", "shows nothing", "not started", "died", "has died", "died off", "have died", "is dying",
	}, []string{
		"nothing", "nothing happening", "nothing growing", "no growth", "no sign of life", "no signs of life", "no mycelium", "no life", "nothing grew", "nothing grows", "nothing happened", "no growth at all",
		"nothing at all", "nothing going on", "nothing to see", "nothing happens",
	}},
	{kitchen.Bulging, []string{
		"bulging", "bloated", "swollen", "puffed up", "blown up", "ballooning", "inflated", "bulged", "lid bulging", "lid is bulging", "puffy", "like a balloon", "tight as a drum", "bulges", "ballooned", "under pressure inside", "swelling",
	}, nil},
	{kitchen.Leaking, []string{
		"leaking", "leaks", "leaky", "leaked", "burst", "torn", "a hole", "pinhole", "ripped", "has a hole", "leaking at the seal", "a pinhole", "seal open", "split open", "dripping", "holes", "leak", "seal leaks", "punctured", "leaking fluid",
	}, []string{"a hole", "hole", "pinhole", "a pinhole", "a leak", "leak", "a tear"}},
	{kitchen.WentBad, []string{
		"contaminated", "contam", "mouldy", "moldy", "mould", "mold", "bad", "gone bad", "went bad", "rotten", "rotting", "spoiled", "spoilt", "infected", "contamination", "contams", "bacteria", "bacterial", "nasty", "gross",
		"lost to contam", "got contam", "has contam", "foul and contaminated", "gone mouldy", "went mouldy", "bacterial contam", "contaminted", "contamed", "toast", "ruined", "gone off", "went off", "yuck",
	}, []string{"contam", "contamination", "mould", "mold", "bacteria", "contams", "some contam", "bacterial contam", "something growing that shouldn't", "fuzz"}},
}

// The words for signs by how they are used: of a unit that shows it, or of what is in
// or on one.
var (
	signsShown = sync.OnceValue(func() glossary[kitchen.Sign] {
		g := glossary[kitchen.Sign]{}
		for _, s := range signWords {
			g.add(s.sign, s.words...)
		}
		return g
	})
	signsInside = sync.OnceValue(func() glossary[kitchen.Sign] {
		g := glossary[kitchen.Sign]{}
		for _, s := range signWords {
			g.add(s.sign, s.things...)
		}
		return g
	})
)

// signText is the word that prints a sign.
func signText(s kitchen.Sign) string {
	for _, w := range signWords {
		if w.sign == s {
			return w.words[0]
		}
	}
	panic(s)
}

// toneWords stand before what a unit is or shows and change nothing in it.
var toneWords = sync.OnceValue(func() glossary[bool] {
	g := glossary[bool]{}
	g.add(true, "looks", "look", "looking", "looks like", "looked", "smelled", "smelt", "smelled like", "smelled of", "smelt of", "smells", "smell", "smells like", "smells of", "is", "are", "was", "were", "went", "gone", "going", "has gone", "turned", "turning", "turns", "got", "getting",
		"gets", "has", "have", "had", "seems", "seem", "seems to be", "feels", "shows", "showing", "a bit", "a bit of", "bit", "bit of", "a little", "a little bit", "slightly", "kind of", "kinda", "sort of", "very", "really", "so",
		"totally", "completely", "some", "lots of", "a lot of", "full of", "with", "definitely", "maybe", "probably", "i think", "it's", "its", "there's", "there is", "theres", "now", "already", "still", "too", "pretty",
		"quite", "rather", "starting to go", "starting to", "starting to look", "a", "an", "sadly", "apparently", "today", "has been", "have been", "just", "turned out", "suddenly", "again", "has a", "has some",
		"they are", "they're", "also", "looking a bit", "has got", "has turned", "are all", "is all", "both", "beginning to", "started to", "and", "appears", "much")
	return g
})
