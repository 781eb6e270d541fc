package grain_test

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/grain"
)

func TestDryDensityIsTheTradeWeight(t *testing.T) {
	named := map[string]grain.Kind{"corn, shelled": grain.Maize, "grain sorghum (milo)": grain.Sorghum}
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "bulk_density.csv") {
		name := row.Text("grain")
		kind, ok := named[name]
		if !ok {
			kind, ok = grain.Named(name)
		}
		if !ok {
			t.Errorf("no kind for %q", name)
			continue
		}
		perCubicMetre := float64(kind.DryDensity()) * 1000
		row.WithinShare("kg_per_m3_computed", perCubicMetre, 1e-5)
		if row.Text("kg_per_m3_published") != "" {
			row.WithinShare("kg_per_m3_published", perCubicMetre, row.Float("tol_rel"))
		}
	}
}

func TestEveryKindIsComplete(t *testing.T) {
	if n := len(grain.All()); n != 9 {
		t.Fatalf("got %d kinds, want 9", n)
	}
	for _, k := range grain.All() {
		y := k.SoakedYield()
		if !(1 < y.Lo && y.Lo <= y.Mid && y.Mid <= y.Hi && y.Hi < 2.5) {
			t.Errorf("%v: yield %+v", k, y)
		}
		if mean := (y.Lo + y.Hi) / 2; math.Abs(float64(mean-y.Mid)) > 1e-12 {
			t.Errorf("%v: middle yield %v, want %v", k, y.Mid, mean)
		}
		if m := k.StorageMoisture(); m < 0.08 || m > 0.155 {
			t.Errorf("%v: storage moisture %v", k, m)
		}
		if d := k.DryDensity(); d < 0.4 || d > 0.9 {
			t.Errorf("%v: dry density %v", k, d)
		}
		if s := k.Simmer(); s.Lo > s.Hi || s.Hi.Minutes() > 90 {
			t.Errorf("%v: simmer %+v", k, s)
		}
	}
}

// TestYields holds the middle yields, which plans use, against the mean of the
// ranges that growers report (common practice, no publication).
func TestYields(t *testing.T) {
	want := map[grain.Kind]float64{
		grain.Rye: 1.925, grain.Wheat: 1.8, grain.Oats: 2.05, grain.Millet: 1.7, grain.Sorghum: 1.8,
		grain.Maize: 1.7, grain.Barley: 1.95, grain.BrownRice: 1.6, grain.Birdseed: 1.7,
	}
	for k, mid := range want {
		if got := float64(k.SoakedYield().Mid); math.Abs(got-mid) > 1e-9 {
			t.Errorf("%v: got %v, want %v", k, got, mid)
		}
	}
}

// TestWordsMeanOneThing finds a word that means two kinds, or that is accepted
// and refused at once.
func TestWordsMeanOneThing(t *testing.T) {
	owner := map[string]string{}
	claim := func(word, by string) {
		if word != strings.ToLower(word) || strings.TrimSpace(word) != word || word == "" {
			t.Errorf("%s: %q is not a plain lower-case word", by, word)
		}
		if other, taken := owner[word]; taken {
			t.Errorf("%q belongs to %s and %s", word, other, by)
		}
		owner[word] = by
	}
	for _, k := range grain.All() {
		for _, w := range k.Synonyms() {
			claim(w, k.String())
		}
		for _, w := range k.Misspellings() {
			claim(w, k.String()+" misspelt")
		}
		for _, w := range k.Unsuited() {
			claim(w, "what "+k.String()+" isn't")
		}
		if first := k.Synonyms()[0]; first != k.String() {
			t.Errorf("%v: the first synonym is %q", k, first)
		}
	}
	for word, kind := range map[string]grain.Kind{
		"popcorn": grain.Maize, "corn": grain.Maize, "milo": grain.Sorghum, "wbs": grain.Birdseed,
		"rye berries": grain.Rye, "wheat berries": grain.Wheat, "horse oats": grain.Oats,
		"proso": grain.Millet, "brown rice": grain.BrownRice, "jowar": grain.Sorghum,
	} {
		if owner[word] != kind.String() {
			t.Errorf("%q means %q, want %v", word, owner[word], kind)
		}
	}
	for _, word := range []string{"cracked corn", "pearl barley", "rolled oats", "rye grass"} {
		if !strings.HasPrefix(owner[word], "what ") {
			t.Errorf("%q is not named as unsuited", word)
		}
	}
}

func TestListsAreTheCallers(t *testing.T) {
	for _, list := range []func() []string{grain.Rye.Synonyms, grain.Rye.Misspellings, grain.Rye.Unsuited} {
		before := slices.Clone(list())
		list()[0] = "scribbled over"
		if !slices.Equal(before, list()) {
			t.Errorf("a caller's writing shows: %q", list())
		}
	}
}

func TestKindsKeepTheirNumbersAndNames(t *testing.T) {
	// Books hold these; a change would rename the past.
	want := []string{
		"rye", "wheat", "oats", "millet", "sorghum", "maize", "barley", "brown rice", "birdseed",
	}
	var got []string
	for i, k := range grain.All() {
		if int(k) != i+1 {
			t.Errorf("%v has number %d, want %d", k, k, i+1)
		}
		got = append(got, k.String())
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("names (-want +got):\n%s", diff)
	}
}

func TestKindAsText(t *testing.T) {
	type line struct{ Grain grain.Kind }
	for _, k := range append(grain.All(), 0) {
		stored, err := json.Marshal(line{k})
		if err != nil {
			t.Fatal(err)
		}
		var back line
		if err := json.Unmarshal(stored, &back); err != nil || back.Grain != k {
			t.Errorf("%v stored as %s came back as %v, %v", k, stored, back.Grain, err)
		}
	}
	var k grain.Kind
	if err := k.UnmarshalText([]byte("gravel")); err == nil {
		t.Error("gravel passed for a grain")
	}
	if got := grain.Kind(0).String(); got != "unsaid" {
		t.Errorf("the zero kind is called %q", got)
	}
}

func TestUnknownKindPanics(t *testing.T) {
	for _, k := range []grain.Kind{0, grain.Birdseed + 1} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("kind %d has a density", uint8(k))
				}
			}()
			k.DryDensity()
		}()
	}
}
