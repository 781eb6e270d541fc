package phrase_test

import (
	"testing"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat/phrase"
)

func TestRemeasured(t *testing.T) {
	tests := []struct {
		text string
		was  unit.Celsius
		want string // empty where it mends no reading
	}{
		{"no, 44C", 46, "#12 44 °C"},
		{"no 44", 46, "#12 is 44 C"},
		{"no, 118", unit.Fahrenheit(115), "#12 is 118 F"},
		{"no, 70", unit.Fahrenheit(115), "#12 is 70 F"},
		{"sorry, it was 43.5", 46, "#12 is 43.5 C"},
		{"oops - 44", 46, "#12 is 44 C"},
		{"make it 48C not 49", 49, "#12 48 °C"},
		{"no, 44 not 46", 46, "#12 is 44 C"},
		{"no, #12.3 43", 44, "#12.3 43 °C"},
		{"no, 44C between the bags", 46, "#12 44 °C between the bags"},
		{"no, 4 bags", 46, ""},
		{"no", 46, ""},
		{"44C", 46, ""},
		{"make it rye", 46, ""},
		{"not now", 46, ""},
	}
	for _, tt := range tests {
		got, ok := phrase.Remeasured(tt.text, phrase.Names{}, 12, tt.was)
		if got != tt.want || ok != (tt.want != "") {
			t.Errorf("Remeasured(%q, was %v) = %q, %v, want %q", tt.text, tt.was, got, ok, tt.want)
		}
	}
}
