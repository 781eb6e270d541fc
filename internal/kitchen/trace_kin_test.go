package kitchen

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What was made from a culture that went bad is tainted, as far down as it goes.
func TestTainted(t *testing.T) {
	loads, cultures := farm(t)
	cultures, err := cultures.Apply(Record{No: 50, By: ana, At: clock("09:00").AddDate(0, 0, 27), Written: clock("09:00").AddDate(0, 0, 27), Entry: CultureEnded{Name: "plate 3", How: CultureWentBad}})
	if err != nil {
		t.Fatal(err)
	}
	l := NewLineage(loads, cultures)
	for name, want := range map[string]string{"plate 7": "plate 3", "lc 5": "plate 3", "plate 3": "", "oyster": ""} {
		n, _ := l.Find(name)
		if got := l.taint(n); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	p, err := l.Inoculating(3, Inoculated{Units: ones(2), Culture: "plate 7"}, clock("09:00").AddDate(0, 0, 28))
	if err != nil || p.Tainted != "plate 3" || p.Bad {
		t.Errorf("plate 7 put on: %+v, %v", p, err)
	}
}

// A clean blank clears the cook, a bad one convicts it; what has another culture on and
// is clean points to the culture.
func TestContrast(t *testing.T) {
	unit := func(n UnitNo, cultured bool, loss UnitState) Unit {
		x := Unit{Ref: UnitRef{1, n}, Cultured: cultured, State: UnitCooked, Loss: Loss{What: loss}}
		if cultured {
			x.State = UnitGrowing
		}
		if loss != 0 {
			x.State = loss
		}
		return x
	}
	blank := func(n UnitNo, loss UnitState) Unit {
		x := unit(n, false, loss)
		x.Blank = true
		return x
	}
	suspect := blank(5, 0)
	suspect.State = UnitSuspect
	of := []UnitRef{{1, 1}, {1, 2}}
	for _, tt := range []struct {
		name string
		load []Unit
		want Contrast
	}{
		{"alone", []Unit{unit(1, true, UnitContaminated), unit(2, true, 0)}, Contrast{}},
		{"a clean blank", []Unit{unit(1, true, UnitContaminated), blank(3, 0)}, Contrast{Blanks: 1}},
		{"a bad blank", []Unit{unit(1, true, UnitContaminated), blank(3, UnitContaminated)}, Contrast{BadBlanks: []UnitRef{{1, 3}}}},
		{"a suspect blank", []Unit{unit(1, true, UnitContaminated), suspect}, Contrast{}},
		{"other cultures", []Unit{unit(1, true, UnitContaminated), unit(3, true, 0), unit(4, true, UnitContaminated), unit(5, false, 0)}, Contrast{Others: 2, BadOthers: 1}},
		{"one that nothing grew on", []Unit{unit(3, true, UnitDead)}, Contrast{Others: 1}},
	} {
		if diff := cmp.Diff(tt.want, ContrastOf(of, tt.load)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

func TestBadLoads(t *testing.T) {
	loads, cultures := farm(t, func(run RunNo, l *teller) {
		if run == 2 {
			l.day(26, "10:00", jo, SignSeen{ones(3), GreenMould})
		} else if run == 3 {
			l.day(36, "10:00", jo, SignSeen{ones(1), NothingGrew})
		}
	})
	l := NewLineage(loads, cultures)
	plate, _ := l.Find("plate 7")
	if diff := cmp.Diff([]RunNo{2}, l.BadLoads(l.Tree(plate).Units())); diff != "" {
		t.Error(diff)
	}
}
