package phrase

import (
	"strings"
	"testing"
)

// TestReadShelf holds what is asked of the shelf and told of what arrived.
func TestReadShelf(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"shelf", "Shelf: shelf"},
		{"/shelf", "Shelf: shelf"},
		{"whats on the shelf?", "Shelf: shelf"},
		{"show me the shelf", "Shelf: shelf"},
		{"shelf fridge", "Shelf: shelf in fridge"},
		{"shelf oyster", "Shelf: shelf oyster"},
		{"whats oldest", "Shelf: what's oldest"},
		{"what's the oldest oyster", "Shelf: what's oldest oyster"},
		{"what's to use first", "Shelf: what's oldest"},
		{"how many oysters", "Shelf: how many oyster on the shelf"},
		{"how many ready bags do we have", "Shelf: how many grown through bags on the shelf"},
		{"any oyster spawn left??", "Shelf: how many oyster on the shelf"},
		{"do we have any lion's mane left", "Shelf: how many lion's mane on the shelf"},
		{"what's growing", "Shelf: shelf growing"},
		{"whats suspect", "Shelf: shelf suspect"},
		{"anything bad", "Shelf: anything bad"},
		{"anything bad?", "Shelf: anything bad"},
		{"cooked bags", "Shelf: shelf cooked bags"},
		{"ready oysters", "Shelf: shelf grown through oyster"},
		{"how many jars of cooked rye", "Shelf: how many cooked jars rye on the shelf"},
		{"how many 5lb bags of shiitake do we have", "Shelf: how many 5 lb bags shiitake on the shelf"},
		{"how many bags on the shelf", "Shelf: how many bags on the shelf"},
		{"whats in the fridge", "(loosely) Shelf: shelf in fridge"},
		{"how much oyster is left", "Shelf: how many oyster on the shelf"},
		{"how many of plate 7", "Shelf: how many plate 7 on the shelf"},
		{"where is 12.3", "WhereIs: where is #12.3"},
		{"wheres 12.3?", "WhereIs: where is #12.3"},
		{"where did 12.3 go", "WhereIs: where is #12.3"},
		{"where are 12.1-4 now", "WhereIs: where is #12.1-4"},
		{"4 quarts rye oyster on the shelf since 3 oct", "Arrive: on the shelf: 4 0.946352946 l jars rye, with oyster, since 3 october"},
		{"we have 6 pints of shiitake spawn from Mira", "Arrive: on the shelf: 6 0.473176473 l jars, with shiitake, by Mira"},
		{"bought 3 bags 5lb oyster spawn, grown through", "Arrive: on the shelf: 3 5 lb bags, with oyster, grown through"},
		{"got 2 quarts reishi from the market yesterday, half grown", "Arrive: on the shelf: 2 0.946352946 l jars, with reishi, 50% grown, since yesterday, by the market"},
		{"there are 5 cooked quarts rye from last week", "Arrive: on the shelf: 5 0.946352946 l jars rye, cooked, since 7 days ago"},
		{"already on the shelf: 3 quarts oyster, 2 bags 5lb king since 1 nov", "Arrive: on the shelf: 3 0.946352946 l jars, with oyster, since 1 november\\n2 5 lb bags, with king oyster, since 1 november"},
		{"on the shelf: 3 quarts rye, cooked, 3 weeks old\n2 bags 5lb plate 7 since 12 oct, in the fridge\n4 pints oats lion's mane, 30% grown", "Arrive: on the shelf: 3 0.946352946 l jars rye, cooked, since 21 days ago\\n2 5 lb bags, with plate 7, since 12 october, in fridge\\n4 0.473176473 l jars oats, with lion's mane, 30% grown"},
		{"bought 2 bags oyster spawn", "Arrive: on the shelf: 2 bags, with oyster"},
		{"4 jars of plate 7 on the shelf since november", "Arrive: on the shelf: 4 jars, with plate 7, since 1 november"},
		{"3 quarts and 2 pints oyster since 1 nov, from Mira", "Arrive: on the shelf: 3 0.946352946 l jars + 2 0.473176473 l jars, with oyster, since 1 november, by Mira"},
		{"we have 3 quarts rye on the shelf", "Arrive: on the shelf: 3 0.946352946 l jars rye"},
		{"3 quarts oyster from plate 7 on the shelf since 20 feb", "Arrive: on the shelf: 3 0.946352946 l jars, with plate 7, of oyster, since 20 february"},
		{"3 quarts from plate 31 since 20 feb", "Arrive: on the shelf: 3 0.946352946 l jars, with plate 31, since 20 february"},
		{"we have 3 quarts rye oyster from lc 4 on the shelf", "Arrive: on the shelf: 3 0.946352946 l jars rye, with lc 4, of oyster"},
		{"6 quarts oyster since 16 feb, 50%", "Arrive: on the shelf: 6 0.946352946 l jars, with oyster, 50% grown, since 16 february"},
		{"6 quarts oyster since 16 feb, half white", "Arrive: on the shelf: 6 0.946352946 l jars, with oyster, 50% grown, since 16 february"},
		{"4 quarts rye oyster half grown, inoculated 2 weeks ago", "Arrive: on the shelf: 4 0.946352946 l jars rye, with oyster, 50% grown, since 14 days ago"},
		{"4 quarts rye oyster inoculated 2 weeks ago, half grown", "Arrive: on the shelf: 4 0.946352946 l jars rye, with oyster, 50% grown, since 14 days ago"},
		{"2 quarts blank on the shelf since monday", "Arrive: on the shelf: 2 0.946352946 l jars, cooked, since monday"},
		{"3 quarts sterile rye on the shelf", "Arrive: on the shelf: 3 0.946352946 l jars rye, cooked"},
		{"bought 4 quarts oyster, arrived last week", "Arrive: on the shelf: 4 0.946352946 l jars, with oyster, since 7 days ago"},
		{"4 quarts oyster in the fridge since august", "Arrive: on the shelf: 4 0.946352946 l jars, with oyster, since 1 august, in fridge"},
		{"3 quarts oyster on the shelf since 1.2.", "Arrive: on the shelf: 3 0.946352946 l jars, with oyster, since 1 february"},
		{"3 quarts oyster on the shelf since 20.2.2026", "Arrive: on the shelf: 3 0.946352946 l jars, with oyster, since 2026-02-20"},
		{"what spoiled", "Shelf: anything bad"},
		{"losses", "(loosely) Shelf: anything bad"},
		{"where are the oysters", "Shelf: shelf oyster"},
		{"when are the oysters ready", "Shelf: how many oyster on the shelf"},
		{"what can i use", "(loosely) Shelf: what's oldest"},
		{"3 bags 5lb agar", "Plan: 3 5 lb bags agar"},
		{"i have 8 kg rye, 3lb bags, lc", "Reverse: i have 8 kg rye lc, 3 lb bags"},
		{"how many 5lb bags out of a 25 kilo sack agar", "Reverse: i have 25 kg agar, 5 lb bags"},
		{"big pot saturday 10-14", "Book: book the big pot saturday from 10:00 am to 14:00"},
		{"4 quarts oyster lc", "Plan: 4 0.946352946 l jars lc"},
		{"help shelf", "Help: help shelf"},
	} {
		if got := strings.ReplaceAll(understood(Parse(tt.text, tryNames)), "\n", `\n`); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", tt.text, got, tt.want)
		}
	}
}

// shelfChatter is talk with the words of the shelf in it: none of it is for the bot.
var shelfChatter = []string{
	"we have 3 jars of pickles", "got 2 quarts of milk from the shop yesterday", "the bags are on the shelf", "put the bags on the shelf", "3 bags on the shelf", "there are 4 bags on the shelf", "where is the key",
	"where are you", "where did ana go", "how many people are coming", "how many are you", "any milk left?", "do we have any bread", "is there any beer left", "the shelf is crooked", "off the shelf solution", "growing up is hard",
	"my kids are growing", "what's wrong", "anything else", "anything good on tv", "what's bad about it", "we have 5 kids", "bought 2 bags of chips", "got 3 bags of shopping", "she is the oldest", "the oldest trick in the book",
	"ready when you are", "are you ready", "where is jo", "where's the fridge", "it's in the fridge", "milk is in the fridge", "we have a fridge", "bought a fridge yesterday", "how many euros", "the top shelf is full", "who has the car",
	"have you got 2 quarts of milk", "there are 5 people here since yesterday", "cooked 3 bags of rice", "4 quarts of milk inoculated with yoghurt", "2 bags sterile gauze", "3 jars of jam from plate 7 of the cookbook", "half of them since august", "what spoiled the party", "where are the kids", "when are the kids ready", "are the boys ready", "what can i use for glue", "how long till dinner is ready", "where is the oyster bar", "6 quarts of milk, 50% off", "2 old jars", "i have 5 bags in the car since monday",
}

func TestShelfChatter(t *testing.T) {
	for _, text := range shelfChatter {
		p := Parse(text, tryNames)
		if p.Bare == Loosely {
			continue
		}
		if len(p.Intents) > 0 || p.Ask != nil || p.Near != nil && p.Near.Got == "" {
			t.Errorf("Parse(%q) = %s, want silence", text, understood(p))
		}
	}
}

// TestSomeUnits holds what is told of some units, nobody said which.
func TestSomeUnits(t *testing.T) {
	for text, want := range map[string]string{
		"used 2 quarts of oyster": "SomeUnits: used 2 0.946352946 l jars of oyster", "used 2 of 3 on straw": "(loosely) SomeUnits: used 2 of #3 on straw",
		"gave 2 bags of shiitake to lena": "SomeUnits: gave 2 bags of shiitake to Lena", "used a jar of plate 7": "SomeUnits: used 1 jars of plate 7", "gave one of 12 to jo": "(loosely) SomeUnits: gave 1 of #12 to Jo",
		"used half of 12.3": "TellUnits: used 50% of #12.3", "used 2 quarts of milk": "-", "gave 2 jars of jam to lena": "-",
	} {
		if got := understood(Parse(text, tryNames)); got != want {
			t.Errorf("Parse(%q) = %s, want %s", text, got, want)
		}
	}
}

// TestHelpOfNothing holds that a subject without help leads to the first page of it, and
// whose a run is to its story, where it was meant for the bot.
func TestHelpOfNothing(t *testing.T) {
	for text, want := range map[string]string{"help zzz": "(loosely) Help: help", "help yourself": "-", "help jo": "-", "help me": "Help: help", "whose is 2": "(loosely) Log: log of #2", "whose is that": "-", "who cooked dinner": "-"} {
		if got := understood(Parse(text, tryNames)); got != want {
			t.Errorf("Parse(%q) = %s, want %s", text, got, want)
		}
	}
}
