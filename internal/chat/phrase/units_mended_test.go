package phrase

import "testing"

// TestMoreOfUnits has what was silent or only nearly read of units once.
func TestMoreOfUnits(t *testing.T) {
	for text, want := range map[string]string{
		"12.2 - 40%": "#12.2 is 40% white", "12.10 - 5%": "#12.10 is 5% white", "12.2: 40%": "#12.2 is 40% white", "#12.2 - 40%": "#12.2 is 40% white",
		"lost 12.3 to trich": "#12.3 is green", "lost 12.3": "#12.3 is contaminated", "we lost 12.1-2 to green mould": "#12.1,2 is green", "12.3 died": "#12.3 is not growing",
		"1.2 oyster was yesterday": "yesterday: inoculated #1.2 with oyster", "12.1-4 oyster, that was yesterday": "yesterday: inoculated #12.1-4 with oyster",
		"inoculated 12.1-4 this morning with oyster, 10 ml per jar": "today: inoculated #12.1-4 with oyster, 10 ml each",
		"third jar of 12 green": "#12.3 is green", "the 2nd bag of 12 is done": "#12.2 is grown through", "12 first two jars oyster": "inoculated #12.1,2 with oyster",
		"first two jars of 12 oyster":           "inoculated #12.1,2 with oyster",
		"12.3, 12.1, 12.2 oyster in that order": "inoculated #12.3,1,2 with oyster", "one after the other: 12.3, 12.1, 12.2 oyster": "inoculated #12.3,1,2 with oyster",
		"12.1-4 oyster, a quarter plate each": "inoculated #12.1-4 with oyster, agar", "a quarter plate each on 12.1-4": "inoculated #12.1-4 with agar",
		"12.1-4 a quarter plate each": "inoculated #12.1-4 with agar", "used #12": "used #12",

		"broke 12.3": "threw #12.3 out", "i broke 12.3": "threw #12.3 out", "12.3 broke": "threw #12.3 out", "12.2 pinning": "#12.2 is grown through", "no growth yet in 12.3": "#12.3 is 0% white",
		"12.1 mostly white": "#12.1 is 80% white", "12.1 is a bit white": "#12.1 is 10% white", "12.1 nearly white": "#12.1 is 90% white", "12.1 on teh shelf": "moved #12.1 to shelf", "12.1 is in the frigde": "moved #12.1 to fridge",
		"12.1 in the fridge since 1.2.": "february 1: moved #12.1 to fridge", "12.1 in the fridge since 20.2.2026": "2026-02-20: moved #12.1 to fridge",

		"throw 12.4 out": "threw #12.4 out", "bin 12.1": "threw #12.1 out", "toss 12.1-2": "threw #12.1,2 out", "give 12.1 to lena": "gave #12.1 to Lena", "give jo 12.1": "gave #12.1 to Jo",
		"move 12.1 to the fridge": "moved #12.1 to fridge", "use 12.1 on straw": "used #12.1 on straw", "bin #12": "threw #12 out", "threw 12.2, smelled bad": "threw #12.2 out; #12.2 is sour", "12.2 smelt sour": "#12.2 is sour",
		"oh no, 12.3 green": "#12.3 is green", "sorry, 12.3 green": "#12.3 is green", "ugh, lost 12.3": "#12.3 is contaminated",
	} {
		p := Parse(text, shelfNames)
		if len(p.Intents) != 1 || p.Bare == Loosely || p.Intents[0].String() != want {
			t.Errorf("Parse(%q) = %s, want %s", text, understood(p), want)
			continue
		}
		back(t, p.Intents[0])
	}
}

// TestWholeRunsLoosely holds that a bare number of a run counts only where it fits.
func TestWholeRunsLoosely(t *testing.T) {
	for text, want := range map[string]string{
		"12 done": "AnswerPing: #12 done", "12 is done": "AnswerPing: #12 done", "used 12": "TellUnits: used #12", "gave 12 to mira": "TellUnits: gave #12 to Mira", "where are the jars": "WhereIs: where is the jars",
	} {
		if p := Parse(text, shelfNames); understood(p) != "(loosely) "+want {
			t.Errorf("Parse(%q) = %s, want (loosely) %s", text, understood(p), want)
		}
	}
}

// TestColourOfCooked holds that a colour alone can be a culture of units without one.
func TestColourOfCooked(t *testing.T) {
	p := Parse("12.3 blue", shelfNames)
	if p.Near == nil || p.Near.Cooked == nil || p.Near.Cooked.String() != "inoculated #12.3 with blue oyster" {
		t.Errorf("12.3 blue = %s", understood(p))
	}
	if p := Parse("12.2 firty percent", shelfNames); p.Near == nil || p.Near.Cooked != nil {
		t.Errorf("12.2 firty percent = %s", understood(p))
	}
}

// lostChatter is talk with the words that tell of units that are lost, used or counted.
var lostChatter = []string{
	"lost 12 pounds", "lost 12.3 kg since may", "lost 3 to 2", "we lost the match 3 - 2", "lost my keys", "first jar of honey", "second bag of 12 apples", "the third man", "my cat died", "it died", "in that order", "one by one",
	"a quarter plate each", "half a plate of pasta each", "12 done and dusted", "12 done, 8 to go", "used 12 eggs", "gave 12 euros to mira", "12.2 - 40", "sales are up 12.2 - 40% more than may", "20 - 40% off", "i broke my leg", "broke 12 eggs", "i fell", "he fell", "it fell", "the pin fell", "mostly white wine", "a bit white in the face", "whose is that", "broke up with 2 of them", "since 8.10 pm", "since 1.2.", "12 broke",
	"throw it out", "give it to lena", "bin day", "move over", "bin it", "toss it", "move it to the fridge", "use it on straw", "use 12 eggs", "throw 12 out", "move 3 to the fridge", "give me 2", "use 2 of them", "hand it to jo",
	"move the bags to the car", "throw the jars out", "give jo 12", "use 12.5 kg of flour", "move 12.3 km north",
	"lost in town", "1.2 was yesterday", "oh no, 12 green apples", "sorry, 12.3 km", "today: 12 done", "so, used 12 eggs",
}

func TestLostChatter(t *testing.T) {
	for _, text := range lostChatter {
		if p := Parse(text, shelfNames); p.Bare != Loosely && (len(p.Intents) > 0 || p.Ask != nil || p.Near != nil) {
			t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
		}
	}
}
