package chat

import (
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/rivo/uniseg"
	"pgregory.net/rapid"
)

func TestPlain(t *testing.T) {
	at := time.Date(2026, 3, 2, 15, 50, 0, 0, time.UTC)
	cases := []struct {
		name string
		post Post
		want []string
	}{
		{"an answer with a table and buttons", Post{
			Blocks: []Block{
				P("3 bags of 5\u00a0lb, rye, agar"),
				Table{Align: []Align{Left, Right, Right}, Rows: [][]string{
					{"", "grain", "water"}, {"per bag", "1,555 g", "715 g"}, {"all 3", "4,665 g", "2,145 g"},
				}},
				P("Hold ", Bold("90 min"), " at 15\u00a0psi, at sea level, and then some more."),
			},
			Buttons: []Button{{"Cook it", "cook it"}, {"Why", "why"}},
		}, []string{
			"3 bags of 5 lb, rye, agar",
			"           grain    water",
			"per bag  1,555 g    715 g",
			"all 3    4,665 g  2,145 g",
			"Hold 90 min at 15 psi, at sea level, and",
			"then some more.",
			"[Cook it] [Why]",
		}},
		{"a no-break space is not broken at", Post{Blocks: []Block{
			P("The limit for inoculating this is 27.5\u00a0°C"),
		}}, []string{"The limit for inoculating this is", "27.5 °C"}},
		{"not even where a word has to be broken", Post{Blocks: []Block{
			P(strings.Repeat("a", 40) + "\u00a0kg"),
		}}, []string{strings.Repeat("a", 39), "a kg"}},
		{"lists and quotes wrap behind their mark", Post{Blocks: []Block{
			List{P("gauge reads 1 psi low, so hold longer than before"), P("gasket is fine")},
			Quote("3 bags\nand a jar that was left over from the last load"),
		}}, []string{
			"- gauge reads 1 psi low, so hold longer", "  than before", "- gasket is fine",
			"> 3 bags", "> and a jar that was left over from the", "> last load",
		}},
		{"names, commands and instants", Post{Blocks: []Block{
			P(Mention{Name: "Ana"}, ": type ", Code("zero"), " at ", When{at, "Europe/Berlin", Clock}),
			P(When{at, "Europe/Berlin", DayClock}, ", ", When{at, "no such zone", Day}),
			P(Mention{Person: Person{Name: "Jo"}}),
		}}, []string{"Ana: type zero at 16:50", "Mon 2 Mar 16:50, Mon 2 Mar", "Jo"}},
		{"a cell that is too wide wraps in its column", Post{Blocks: []Block{
			Table{Align: []Align{Left, Right}, Rows: [][]string{
				{"wetted grain per container", "2,270 g"}, {"water", "715 g"},
			}},
		}}, []string{"wetted grain per     2,270 g", "container", "water                  715 g"}},
		{"columns move together before a cell wraps", Post{Blocks: []Block{
			Table{Align: []Align{Left, Right, Right}, Rows: [][]string{{"half pint", "4,665.5 g", "2,145 ml"}}},
		}}, []string{"half pint 4,665.5 g 2,145 ml"}},
		{"wide characters count twice", Post{Blocks: []Block{
			Table{Rows: [][]string{{"平菇", "ok"}, {"rye", "ok"}}},
			P("平菇平菇平菇平菇平菇平菇平菇平菇平菇平菇平"),
		}}, []string{"平菇  ok", "rye   ok", "平菇平菇平菇平菇平菇平菇平菇平菇平菇平菇", "平"}},
		{"buttons wrap between labels", Post{Buttons: []Button{
			{Label: "Ping me then"}, {Label: "Give me another day"}, {Label: "Stop"},
		}}, []string{"[Ping me then] [Give me another day]", "[Stop]"}},
		{"files come before buttons", Post{
			Blocks: []Block{P("Labels of #12")}, Files: []File{{Name: "labels-12.pdf", Data: make([]byte, 32154)}},
			Buttons: []Button{{Label: "Again"}},
		}, []string{"Labels of #12", "<labels-12.pdf, 32154>", "[Again]"}},
		{"hostile text stays on its line", Post{Blocks: []Block{
			P("a\n10:00 bot → room\r\nb\x00\x1b[31m\u202ec\u2028d\te\xff"),
		}}, []string{"a 10:00 bot → room  b\uFFFD\uFFFD[31m\uFFFDc d e\uFFFD"}},
		{"nothing to say", Post{Blocks: []Block{P(), P("  "), P("\u00a0"), Table{}, List{}, Quote("")}}, []string{""}},
		{"more columns than there is room for", Post{Blocks: []Block{
			Table{Rows: [][]string{strings.Split("a b c d e f g h i j k l m n o p", " ")}},
		}}, []string{"a  b  c  d  e  f  g  h  i  j", "k  l  m  n  o  p"}},
	}
	for _, c := range cases {
		if diff := cmp.Diff(c.want, strings.Split(Plain(c.post, 40), "\n")); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestStyledEndsBoldOnEachLine(t *testing.T) {
	p := Post{Blocks: []Block{P("a ", Bold("bb cc"), " d")}}
	want := "a <bb>\n<cc> d"
	if got := Styled(p, 4, Style{"<", ">"}); got != want {
		t.Errorf("Styled = %q, want %q", got, want)
	}
}

func TestPRefusesWhatIsNoSpan(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("P(12) did not panic")
		}
	}()
	P(12)
}

// hostile draws text of letters, wide and joined characters, spaces of all
// kinds, line breaks, control characters and broken bytes.
func hostile() *rapid.Generator[string] {
	pieces := rapid.SampledFrom([]string{
		"a", "B", "7", "grain", "平", "é", "e\u0301", "👩\u200d🌾", "🇩🇪", "🇩", " ", " ", " ", "\u00a0", "\u202f",
		"\n", "\r", "\t", "\x00", "\x1b[1m", "\u202e", "\u2066", "\u200f", "\u2028", "\u2029", "\u200b", "\ufe0f", "\xff",
		"[Cook it]", "> ", "- ", "| ", "\u0301", "\u200d", "\u2e3b", "ᄀ", "ᅡ", "ि", "**",
	})
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(pieces, 0, 40).Draw(t, "pieces"), "")
	})
}

// ink is text without its spaces: what must survive any wrapping.
func ink(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, Clean(s))
}

// checkWidths fails if a line is wider than it may be though it could have
// been broken. A mark of two columns may stand before the text.
func checkWidths(t rapid.TB, printed string, width, mark int) {
	t.Helper()
	for l := range strings.SplitSeq(printed, "\n") {
		text := l[min(mark, len(l)):]
		if uniseg.StringWidth(l) > width && uniseg.GraphemeClusterCount(text) > 1 {
			t.Fatalf("line %q is %d columns wide, want at most %d", l, uniseg.StringWidth(l), width)
		}
	}
}

func TestParagraphLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, width := hostile().Draw(t, "a"), hostile().Draw(t, "b"), rapid.IntRange(4, 60).Draw(t, "width")
		got := Plain(Post{Blocks: []Block{P(a, Bold(b))}}, width)
		checkWidths(t, got, width, 0)
		if want := ink(a) + ink(b); ink(got) != want {
			t.Fatalf("printed %q of %q and %q", got, a, b)
		}
	})
}

func TestMarkedBlocksLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, width := hostile().Draw(t, "text"), rapid.IntRange(4, 60).Draw(t, "width")
		for mark, b := range map[string]Block{"- ": List{P(s)}, "> ": Quote(s)} {
			got := Plain(Post{Blocks: []Block{b}}, width)
			checkWidths(t, got, width, 2)
			var text strings.Builder
			for i, l := range strings.Split(got, "\n") {
				if got != "" && !strings.HasPrefix(l, mark) && (mark != "- " || i == 0 || !strings.HasPrefix(l, "  ")) {
					t.Fatalf("line %q without its mark in %q", l, got)
				}
				text.WriteString(l[min(2, len(l)):])
			}
			if ink(text.String()) != ink(s) {
				t.Fatalf("printed %q of %q", got, s)
			}
		}
	})
}

func TestTableLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.SliceOfN(rapid.SliceOfN(hostile(), 0, 4), 0, 4).Draw(t, "rows")
		align := rapid.SliceOfN(rapid.SampledFrom([]Align{Left, Right}), 0, 4).Draw(t, "align")
		got := Plain(Post{Blocks: []Block{Table{Align: align, Rows: rows}}}, 40)
		var want strings.Builder
		for _, row := range rows {
			for _, cell := range row {
				want.WriteString(ink(cell))
			}
		}
		if sortedRunes(ink(got)) != sortedRunes(want.String()) {
			t.Fatalf("printed %q of %q", got, rows)
		}
		for l := range strings.SplitSeq(got, "\n") {
			if w := uniseg.StringWidth(l); w > 28 {
				t.Fatalf("line %q is %d columns wide", l, w)
			}
		}
	})
}

func sortedRunes(s string) string {
	runes := []rune(s)
	slices.Sort(runes)
	return string(runes)
}

func TestButtonsAndFilesLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		labels := rapid.SliceOfN(hostile(), 0, 4).Draw(t, "labels")
		name, width := hostile().Draw(t, "name"), rapid.IntRange(4, 60).Draw(t, "width")
		p := Post{Files: []File{{Name: name, Data: []byte("1234")}}}
		want := "<" + Clean(name) + ", 4>"
		for _, l := range labels {
			p.Buttons = append(p.Buttons, Button{Label: l})
			want += "[" + Clean(l) + "]"
		}
		got := Plain(p, width)
		checkWidths(t, got, width, 0)
		if ink(got) != ink(want) {
			t.Fatalf("printed %q, want the characters of %q", got, want)
		}
	})
}

func FuzzPlain(f *testing.F) {
	f.Add("3 bags 5lb agar", 40)
	f.Add("a\nb\x00\u202e 平菇\u00a0\u0301", 4)
	f.Fuzz(func(t *testing.T, s string, width int) {
		width = min(max(width, 4), 200)
		got := Plain(Post{Blocks: []Block{P(s)}}, width)
		checkWidths(t, got, width, 0)
		if ink(got) != ink(s) {
			t.Errorf("printed %q of %q", got, s)
		}
		if strings.ContainsFunc(strings.ReplaceAll(got, "\n", ""), unicode.IsControl) {
			t.Errorf("a control character in %q", got)
		}
	})
}
