package phrase

import "testing"

func TestVolunteer(t *testing.T) {
	for _, tt := range []struct {
		text string
		want Willing
	}{
		{"me", SaysMe},
		{"Me!", SaysMe},
		{"i can", SaysMe},
		{"I can.", SaysMe},
		{"yes, i can", SaysMe},
		{"ok i'll do it", SaysMe},
		{"I will do it", SaysMe},
		{"ill do it", SaysMe},
		{"i'll do it then", SaysMe},
		{"sure, i'm free", SaysMe},
		{"yes", SaysYes},
		{"sure", SaysYes},
		{"no", SaysNo},
		{"No.", SaysNo},
		{"i can't", SaysNo},
		{"I can’t, sorry", SaysNo},
		{"i can not", SaysNo},
		{"sorry no", SaysNo},
		{"sorry, i can't", SaysNo},
		{"no sorry", SaysNo},
		{"no, i can't", SaysNo},
		{"not me", SaysNo},
		{"can't today", SaysNo},
		{"no?", Unwilling},
		{"sorry", Unwilling},
		{"no idea", Unwilling},
		{"no bags left", Unwilling},
		{"i can't find the lid", Unwilling},
		{"i can tomorrow", Unwilling},
		{"i can bring cake", Unwilling},
		{"me?", Unwilling},
		{"me too", Unwilling},
		{"i will be late", Unwilling},
		{"i'll do it tomorrow", Unwilling},
		{"ana can", Unwilling},
		{"yes but not now", Unwilling},
		{"", Unwilling},
	} {
		if got := Volunteer(tt.text, tryNames); got != tt.want {
			t.Errorf("Volunteer(%q) = %d, want %d", tt.text, got, tt.want)
		}
	}
}
