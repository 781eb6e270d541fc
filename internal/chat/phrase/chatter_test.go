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
	"one pint too many", "4 pints please", "3 gallons", "i have 8 kg of apples", "3 bags popcorn for the movie", "5 bags of rice for the party",
	"3 pints and a bag of chips", "2 bags of oats in the car", "2 of the 5lb bags burst", "5 bags, 3 euros each", "4 lb turkey out by 18:00", "i'll be out by 20:30",
	"get out by noon", "were at 300 km now, home by 8", "1 kg rye flour", "3 bags of wheat flour 5 lb", "room 12 please", "my name is mud", "ping me",
	"how much for a bag", "max 15 psi", "the pot takes 7 litres",
	"and 2 bags of chips", "also can you bring milk", "and 5 min", "+1", "out by 3 people", "ready for 8 people", "drop the kids at school",
	"without the car", "just the two of us", "only bags of chips", "start at the beginning", "not that, the other", "change the channel", "swap seats with me", "next time", "second thoughts", "use up the milk",
	"split the bill in 3", "cake instead", "we need 3 bags of ice", "he took 5 jars home", "some bags are torn", "3 jars broke today",
}

// stageChatter is talk with the words of the cook day in it.
var stageChatter = []string{
	"it's getting hot in here", "the steam train museum is nice", "zero chance", "i lost pressure in my tyre", "done with work", "what now lol",
	"i let off some steam at the gym", "steam deck arrived", "full steam ahead with the garden", "we have zero eggs left", "zero degrees outside today", "my boss puts me under pressure",
	"no pressure", "blood pressure is up again", "i work well under pressure", "the heat is killing me", "turn the heating off when you leave", "is the heat off?", "did you turn it off",
	"he turned it off and left", "lights off at ten please", "i'm off to the shop", "day off tomorrow", "the lid of my coffee cup is off again", "who took the lid", "the bags are out of stock",
	"jars are out of stock", "take the bins out", "i'm out of milk", "the party is called off", "they called off the match", "call it a day", "next week is fine", "next time then", "next to the door",
	"how long is a piece of string", "how long have you lived here", "how long was the meeting", "when can i see you", "when is the party", "when is dinner ready", "is the beer cool yet",
	"that's cool", "cool story", "cool, see you then", "it's 31 degrees in the sun", "it was 40 C in the car", "i have a fever, 38.5 C", "water was at 24 C in the lake", "back at 5", "back at home",
	"back in the room", "we hit 100 on the road", "he hit 15 people with that mail", "i'll be at 15 main street", "at 8 then", "gas prices are up", "gas station on the left", "the gas man comes at 9",
	"my gauge is off today, need coffee", "new bottle of wine", "checked the mail", "i checked out of the hotel", "log in to the wifi", "put a log on the fire", "i cooked 3 runs of pasta",
	"my runs this week were slow", "book the table for 8", "i booked a flight saturday 10-14", "can i have the car sunday 9-12", "can i have 12 of them", "cancel my gym saturday", "quiet please", "it's so quiet here",
	"keep quiet from now on", "not yet convinced", "not yet born", "done deal", "on it like a car bonnet", "i've got it from ebay", "i've got 12 euros", "i've got two kids", "ana has a cold",
	"ana takes the bus", "tom takes sugar", "can someone take the dog out", "can someone take me home", "who can take a photo", "seen that movie", "have you seen ana", "i saw it in the news", "the drain is blocked",
	"drain the pasta", "soak the beans", "soaking wet from the rain", "simmer down", "simmering with rage", "dry your tears", "drying my hair", "added 1 L of oil to the car", "1 litre of milk left in the fridge",
	"3 litres in my car", "poured 2 l of paint", "dropped to my knees", "prices dropped to 11 euros", "dropped for a coffee", "my phone dropped to 8 percent", "weight on my shoulders", "i lost weight on holiday",
	"the weight is on your shoulders", "why did you ping the server", "pings are 30 ms here", "still at work", "still at 15 percent", "steps are icy", "watch your steps", "show me the log file",
	"the story of my life", "between the two of us", "between you and me", "31 people between the bags and the door", "12 is a nice number", "12 at the table", "she is 31", "my daughter is 12",
	"#1 fan", "12.3 is the new version", "the reading was boring", "i'm reading 12 books", "let's do it later", "can we do it later", "can we do it tomorrow morning",
	"chart hits", "the learning curve of this", "how good are your bags", "can i trust your brother", "why is ana so late", "why so serious", "it reads well", "41 on the bus", "42 and 44", "it says 41 on the box",
	"the speed limit is 50", "limit of the card is 50", "is it cool enough for the kids", "when can i put the kids on the bus", "can i put the bags in the car", "when can ana go on holiday", "cool enough for a swim?",
	"the room is lovely", "room 12", "its 18 of them", "kitchen is 3 doors down", "skin cream", "big pot", "in the small pot", "the big pot is yours, cook it well", "middle of nowhere", "how warm is it outside", "how much water do you drink", "how long for the pizza", "how long does the bus take", "what's ana doing", "how is she doing", "what is tom up to", "status of the order", "go figure", "big pot 14-16 people", "its back at the shop", "it's back in stock", "it's back in 10", "both of us", "both are cute", "both kids are at 15 main street", "both at the lake", "turn off heat in the car when you leave", "the middle one is mine",
}

func TestStageChatter(t *testing.T) {
	for _, text := range stageChatter {
		p := Parse(text, tryNames)
		if p.Bare == Loosely {
			continue
		}
		if len(p.Intents) > 0 || p.Ask != nil || p.Near != nil {
			t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
		}
	}
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
