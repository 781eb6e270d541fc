package picture_test

import (
	"bytes"
	"fmt"
	"image"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/chat/picture"
)

func more(n int) string { return fmt.Sprintf("and %d more", n) }

// leaves are so many units that came from one.
func leaves(run, n int) []picture.Branch {
	out := make([]picture.Branch, n)
	for i := range out {
		out[i] = picture.Branch{Name: fmt.Sprintf("#%d.%d", run, i+1), State: "growing", Place: "top shelf", Fate: picture.Stands}
	}
	return out
}

// badPlate is a usual tree: a plate that went on two loads, the grain of one on a third.
func badPlate() picture.Tree {
	twelve := leaves(12, 4)
	twelve[1].State, twelve[1].Fate = "went bad 9 Mar", picture.Lost
	twelve[2].State, twelve[2].Fate = "looks suspect", picture.Doubtful
	nine := leaves(9, 3)
	nine[0].State, nine[0].Place, nine[0].Fate = "used 14 Mar", "", picture.Away
	nine[2].Below = leaves(14, 5)
	seven := picture.Branch{Name: "Plate 7", State: "oyster", Place: "fridge", Fate: picture.Source, Below: append(nine, twelve...)}
	return picture.Tree{
		Title: "Plate 7 and its kin", More: more,
		Roots: []picture.Branch{{Name: "Plate 3", State: "oyster, thrown out", Fate: picture.Source, Below: []picture.Branch{seven, {Name: "Plate 8", State: "oyster", Fate: picture.Source}}}},
	}
}

func tree(t testing.TB, tr picture.Tree) *image.RGBA {
	t.Helper()
	data, err := picture.DrawTree(tr)
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, data)
}

// calmMargin fails where something is drawn at the edges of a tree.
func calmMargin(t interface{ Fatalf(string, ...any) }, img *image.RGBA) {
	inner := img.Bounds().Inset(picture.Margin - 1)
	paper := picture.Inks()["paper"]
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if !image.Pt(x, y).In(inner) && img.RGBAAt(x, y) != paper {
				t.Fatalf("something is drawn at the edge: %d, %d", x, y)
			}
		}
	}
}

func TestTreeIsAsTallAsItsRows(t *testing.T) {
	small, large := tree(t, badPlate()), tree(t, picture.Tree{Title: "t", More: more, Roots: leaves(1, 900)})
	calmMargin(t, small)
	calmMargin(t, large)
	if small.Bounds().Dx() != 1200 || small.Bounds().Dy() != picture.TreeHeight(15) {
		t.Errorf("15 rows are %v", small.Bounds())
	}
	if large.Bounds().Dy() != picture.TreeHeight(picture.MostRows) {
		t.Errorf("900 units are %v tall, want no more than %d", large.Bounds().Dy(), picture.TreeHeight(picture.MostRows))
	}
}

func TestTreeFolds(t *testing.T) {
	many := badPlate()
	many.Roots[0].Below[1].Below = leaves(20, 300)
	rows, err := picture.RowsOf(many)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(rows, "\n")
	if len(rows) != picture.MostRows {
		t.Errorf("%d rows, want %d", len(rows), picture.MostRows)
	}
	if !strings.Contains(all, "and 276 more") || !strings.Contains(all, "#14.5") {
		t.Errorf("the largest bundle is not the one that is folded:\n%s", all)
	}
}

// However a tree grows: it has no more rows than fit, and each branch is shown or counted.
func TestTreeCountsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := 0
		var grow func(depth int) picture.Branch
		grow = func(depth int) picture.Branch {
			size++
			b := picture.Branch{Name: fmt.Sprint(size), Fate: picture.Fate(rapid.IntRange(1, 5).Draw(t, "fate"))}
			most := 40
			if depth > 2 || size > 800 {
				most = 1
			}
			for range rapid.IntRange(0, most).Draw(t, "below") {
				if depth < 30 && size < 1500 {
					b.Below = append(b.Below, grow(depth+1))
				}
			}
			return b
		}
		counted := 0
		tr := picture.Tree{Title: "any", More: func(n int) string { counted += n; return "more" }}
		for range rapid.IntRange(1, 5).Draw(t, "roots") {
			tr.Roots = append(tr.Roots, grow(0))
		}
		rows, err := picture.RowsOf(tr)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			if r != "more" {
				counted++
			}
		}
		if len(rows) > picture.MostRows || counted != size {
			t.Fatalf("%d rows, %d of %d branches shown or counted", len(rows), counted, size)
		}
	})
}

func TestTreeIsTheSameEachTime(t *testing.T) {
	one, err := picture.DrawTree(badPlate())
	if err != nil {
		t.Fatal(err)
	}
	two, _ := picture.DrawTree(badPlate())
	if !bytes.Equal(one, two) {
		t.Error("the same tree is other bytes")
	}
}

// Names of any length stay within the picture, and marks differ by more than colour.
func TestTreeHoldsAnyName(t *testing.T) {
	long := strings.Repeat("Mira's very best ", 20)
	deep := picture.Branch{Name: long, State: long, Place: long, Fate: picture.Lost}
	for range 30 {
		deep = picture.Branch{Name: long, State: long, Fate: picture.Doubtful, Below: []picture.Branch{deep, {Name: "", Fate: picture.Away}}}
	}
	calmMargin(t, tree(t, picture.Tree{Title: long, More: more, Roots: []picture.Branch{deep}}))
}

func TestTreeRefuses(t *testing.T) {
	for name, tr := range map[string]picture.Tree{
		"no roots":      {Title: "t", More: more},
		"no fate":       {Title: "t", More: more, Roots: []picture.Branch{{Name: "x"}}},
		"no words":      {Title: "t", Roots: leaves(1, 1)},
		"far too large": {Title: "t", More: more, Roots: leaves(1, 6000)},
	} {
		if _, err := picture.DrawTree(tr); err == nil {
			t.Errorf("%s: drawn", name)
		}
	}
}

func BenchmarkTree(b *testing.B) {
	large := picture.Tree{Title: "t", More: more, Roots: leaves(1, 3000)}
	for name, tr := range map[string]picture.Tree{"usual": badPlate(), "large": large} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := picture.DrawTree(tr); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
