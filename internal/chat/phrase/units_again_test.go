package phrase

import "testing"

// TestRetold has corrections of something told of units just now.
func TestRetold(t *testing.T) {
	for _, tt := range [...]struct{ was, text, want string }{
		{"12.2 green", "no, 12.3", "#12.3 is green"},
		{"12.2 green", "i meant 12.3", "#12.3 is green"},
		{"12.2 green", "sorry 12.3 i meant", "#12.3 is green"},
		{"12.2 green", "no, .3", "#12.3 is green"},
		{"12.2 green", "no, 3", "#12.3 is green"},
		{"12.2 green", "that was 12.3", "#12.3 is green"},
		{"12.2 green", "12.3 not 12.2", "#12.3 is green"},
		{"12.2 green", "not 12.2, 12.3", "#12.3 is green"},
		{"12.2 green", "no, 12.3 green", "#12.3 is green"},
		{"12.2 green", "sorry, 12.2 sour", "#12.2 is sour"},
		{"12.2 green", "no, 12.2 sour", "#12.2 is sour"},
		{"shook 12", "no, 13", "shook #13"},
		{"shook 12", "no, 12.1-3", "shook #12.1-3"},
		{"12.1-3 oyster lc 10ml", "no, shiitake", "inoculated #12.1-3 with shiitake, lc, 10 ml each"},
		{"12.1-3 oyster lc 10ml", "no, blue", "inoculated #12.1-3 with blue oyster, lc, 10 ml each"},
		{"12.1-3 oyster lc 10ml", "no, plate 7", "inoculated #12.1-3 with plate 7, 10 ml each"},
		{"12.1-3 oyster lc 10ml", "no, 5 ml", "inoculated #12.1-3 with oyster, lc, 5 ml each"},
		{"12.1-3 oyster, 12.4 shiitake", "no, king", "inoculated #12.1-3 with oyster; inoculated #12.4 with king oyster"},
		{"12.1-3 oyster, 12.4 shiitake", "no, 12.5", "inoculated #12.1-3 with oyster; inoculated #12.5 with shiitake"},
		{"12.1-3 oyster, 12.4 shiitake", "12.1-2 not 12.3", "inoculated #12.1,2 with oyster; inoculated #12.4 with shiitake"},
		{"12.2 50%", "sorry 30% not 50", "#12.2 is 30% white"},
		{"12.2 50%", "30% not 50%", "#12.2 is 30% white"},
		{"12.2 50%", "no, 30", "#12.2 is 30% white"},
		{"12.2 50%", "no, 12.3", "#12.3 is 50% white"},
		{"12.2 green", "no, yesterday", "yesterday: #12.2 is green"},
		{"12.2 green", "that was yesterday", "yesterday: #12.2 is green"},
		{"12.2 green", "it was at 14:05", "at 14:05: #12.2 is green"},
		{"12.2 green", "no, fine", "#12.2 is fine"},
		{"12.2 in the fridge", "no, on the top shelf", "moved #12.2 to top shelf"},
		{"gave 12.2 to mira", "no, to jo", "gave #12.2 to Jo"},
	} {
		was, ok := Parse(tt.was, shelfNames).Intents[0].(TellUnits)
		if !ok {
			t.Fatalf("%q is nothing told of units", tt.was)
		}
		if got, ok := Retold(tt.text, shelfNames, was); !ok || got.String() != tt.want {
			t.Errorf("%q behind %q = %v, want %q", tt.text, tt.was, got, tt.want)
		}
	}
}

// TestNotRetold has what goes on after something told of units, and mends nothing.
func TestNotRetold(t *testing.T) {
	was := Parse("12.2 green", shelfNames).Intents[0].(TellUnits)
	for _, text := range []string{
		"12.3 green", "12.3", "sorry", "no", "no way", "no, thanks", "that was fun", "that was a long day", "it was green", "sorry, 12.3 shaken", "no, i was at the shop", "no, jo did it", "actually i'm hungry", "not now", "no pressure",
		"sorry im late", "oh no", "no, 3 bags 5lb agar", "12.3 is fine too", "no, tomorrow", "i meant the other thing", "no idea", "not 12.2", "that was close", "no, 44C", "oh no, 12.3 green", "sorry, 12.3 green", "actually 12.3 green", "oops 12.3 mouldy",
	} {
		if got, ok := Retold(text, shelfNames, was); ok {
			t.Errorf("%q behind 12.2 green = %v, want nothing", text, got)
		}
	}
}

// TestOfThem has what is said of units that a post spoke of.
func TestOfThem(t *testing.T) {
	for text, want := range map[string]string{
		"its in the fridge": "moved it to fridge", "it's in the fridge": "moved it to fridge", "in the fridge": "moved it to fridge", "green": "it is green", "30%": "it is 30% white", "about 30%": "it is 30% white", "shaken": "shook it",
		"shook it": "shook it", "done": "it is grown through", "threw it": "threw it out", "threw them out": "threw it out", "binned": "threw it out", "nothing on it": "it is not growing", "trich in it": "it is green",
		"used it on straw": "used it on straw", "gave it to mira": "gave it to Mira", "green, threw it": "it is green; threw it out", "looks fine": "it is fine", "shook it yesterday": "yesterday: shook it", "moved it to the top shelf": "moved it to top shelf",
	} {
		if got, ok := OfThem(text, shelfNames); !ok || got.String() != want {
			t.Errorf("OfThem(%q) = %v, want %q", text, got, want)
		}
	}
	for _, text := range []string{"ok", "thanks", "why", "undo", "not yet", "later", "what is it", "26C", "3 bags 5lb agar", "log", "i'm at home", "seen"} {
		if got, ok := OfThem(text, shelfNames); ok {
			t.Errorf("OfThem(%q) = %v, want nothing", text, got)
		}
	}
}
