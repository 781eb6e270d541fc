package phrase

import "testing"

// chatter is talk between people of a kitchen: none of it is for the bot.
var chatter = []string{
	"anyone want pizza", "lol my kid ate the label", "see you at 5 then", "5 min", "lol 3 bags", "the bags are on the table",
	"i bought 3 bags of chips", "did you feed the cat", "we need 2 kg of flour for the bread", "can you bring the big pot tomorrow",
	"the pot is yours", "who has the key", "rye bread is great", "i had corn for lunch", "my room is cold", "the room smells of popcorn",
	"back in 10", "be there at 8", "i'm out by the gate", "why not", "why did he leave", "why is the door open", "help me carry this",
	"help yourself to the soup", "who's in for a beer", "who's in tonight", "call me later", "call me when you're back",
	"join us for dinner", "forget it", "forget about the oats", "now is good", "not now", "now that's a big jar", "no idea", "no way",
	"no problem", "no, i was at work", "sorry i'm late", "sorry about the mess", "make it quick", "make that call please", "hold on",
	"hold my beer", "hold the door", "thanks to you we made it", "hi is the door open", "happy birthday", "the usual suspects",
	"same here", "same as always", "ready by the door", "out for lunch", "out at the farm", "undo the zip for me",
	"cook dinner tonight?", "cook it yourself", "kitchen is a mess", "the kitchen floor is wet", "settings on my phone are weird",
	"first come first served", "i came second", "one of us should go", "two more minutes", "3 people are coming", "about 20 kids",
	"he is 2 m tall", "it's 30 C outside", "we are at the lake", "we're at my place", "at 1600 then", "the 5 lb cat is on my jar",
	"jo has 3 bags and a suitcase", "i ate a quart of ice cream", "two pints please, and a coke", "a pint after work?",
	"agar is expensive", "the agar plates look nice", "i love rye", "corn prices are up 10%", "50% off at the shop", "water is wet",
	"rain at 5", "big pot of soup for 8 people", "that pot holds a lot", "the old cooker is broken", "we cook at ana's tonight",
	"we use the back door", "we soak up the sun", "round of beers?", "zone out", "leave 2 jars for tom", "i have 2 kids",
	"i have 5 bags in the car", "got 3 jars of honey from mum", "how many people are coming", "how far is it", "i weigh 80 kg",
	"80 kg is a lot", "2 kg of apples at the market", "the bag weighs 12 kg, careful", "12 bags of cement arrived", "dial it down",
	"max is here", "jars!!!", "4 of us", "haha 100%", "100% agree", "it takes 2 hours", "takes 7 years", "rated r", "no gypsum in the wall",
	"don't forget ana", "ana is great", "ana is a teacher", "make ana a sandwich", "claim your prize", "code is hard", "the code",
	"can we have pizza and 2 bags of crisps", "need 4 eggs", "buy 3 lb of butter", "who wants 2 jars of pickles",
	"and 2 bags of chips", "also can you bring milk", "and 5 min", "+1", "out by 3 people", "ready for 8 people", "drop the kids at school",
	"without the car", "just the two of us", "only bags of chips", "start at the beginning", "we need 3 bags of ice", "he took 5 jars home", "some bags are torn", "3 jars broke today",
}

func TestChatter(t *testing.T) {
	for _, text := range chatter {
		p := Parse(text, tryNames)
		if p.Bare == Loosely { // people's words: they count only where they fit
			continue
		}
		if len(p.Intents) > 0 || p.Ask != nil || p.Near != nil && p.Near.Trouble == LeftOver {
			t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
		}
	}
}
