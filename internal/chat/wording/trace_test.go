package wording_test

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

func traceDay(d int) time.Time { return time.Date(2026, time.March, d, 9, 0, 0, 0, time.UTC) }

func unitAt(run kitchen.RunNo, n kitchen.UnitNo) kitchen.UnitRef {
	return kitchen.UnitRef{Run: run, Unit: n}
}

// grownOn is a unit with a culture, or the grain of another, on it.
func grownOn(ref kitchen.UnitRef, s kitchen.UnitState, culture string, from kitchen.UnitRef, place string) kitchen.KeptUnit {
	u := kitchen.Unit{Ref: ref, State: s, Since: traceDay(9), Cultured: true, Inoculated: traceDay(5), Culture: culture, From: from, Species: "oyster", Place: place, Left: 1}
	if s == kitchen.UnitContaminated {
		u.Loss = kitchen.Loss{What: s, At: traceDay(9)}
	}
	return kitchen.KeptUnit{Unit: u, Size: 6}
}

func records(entries ...kitchen.Entry) []kitchen.Record {
	var out []kitchen.Record
	for i, e := range entries {
		out = append(out, kitchen.Record{No: kitchen.EntryNo(i + 1), By: 1, At: traceDay(2 + i), Written: traceDay(2 + i), Entry: e})
	}
	return out
}

// badPlate is plate 7 from plate 3, which went on five units, and the grain of one on
// three more.
func badPlate() kitchen.Lineage {
	none := kitchen.UnitRef{}
	units := []kitchen.KeptUnit{
		grownOn(unitAt(1, 1), kitchen.UnitGrown, "plate 7", none, "fridge"),
		grownOn(unitAt(1, 2), kitchen.UnitContaminated, "plate 7", none, "top shelf"),
		grownOn(unitAt(1, 3), kitchen.UnitContaminated, "plate 7", none, "top shelf"),
		grownOn(unitAt(1, 4), kitchen.UnitGrowing, "plate 7", none, "top shelf"),
		grownOn(unitAt(1, 5), kitchen.UnitUsed, "plate 7", none, ""),
		grownOn(unitAt(2, 1), kitchen.UnitGrowing, "", unitAt(1, 1), ""),
		grownOn(unitAt(2, 2), kitchen.UnitSuspect, "", unitAt(1, 1), ""),
	}
	return kitchen.NewLineageOf(units, kitchen.FoldCultures(records(
		kitchen.CultureMade{Name: "plate 3", Kind: kitchen.Plate, From: "Mira"}, kitchen.CultureMade{Name: "plate 7", Kind: kitchen.Plate, From: "plate 3"},
	)))
}

// read is a post as it stands on a phone, and fails where it is no phone's.
func onPhone(t testing.TB, p chat.Post) string {
	t.Helper()
	text := chat.Plain(p, 40)
	if n := strings.Count(text, "\n") + 1; n > 13 { // a file has a line too
		t.Errorf("%d lines:\n%s", n, text)
	}
	return strings.ReplaceAll(text, "\u00a0", " ")
}

func TestTraceWords(t *testing.T) {
	l := badPlate()
	plate, _ := l.Find("plate 7")
	for name, tt := range map[string]struct {
		v     wording.TraceView
		wants []string
	}{
		"a culture": {wording.TraceView{Of: plate}, []string{
			"Plate 7: 2 of 7 lost, in 2 loads.", "It came from plate 3, that from Mira.", "It went on 5 units, from there on 2\nmore:",
			"2 went bad and still stand: #1.2,3 (top\nshelf).", "1 looks suspect: #2.2.", "2 are growing: #1.4 (top shelf), #2.1.", "1 is grown through: #1.1 (fridge).", "1 was used: #1.5.", "Next: look at #1.1,4, #2.1,2.", "[Trace plate 3]",
		}},
		"a bad culture beside clean ones": {wording.TraceView{Of: plate, Contrast: &kitchen.Contrast{Blanks: 1, Others: 2}}, []string{
			"Beside it the blank and 2 units of\nanother culture stayed clean: likely\nplate 7, or how it was put on.",
		}},
		"all cultures bad": {wording.TraceView{Of: plate, Contrast: &kitchen.Contrast{Blanks: 1, Others: 3, BadOthers: 2}}, []string{"Beside it 2 of 3 with something else on\nwent bad, too: likely not plate 7 alone."}},
		"a bad blank":      {wording.TraceView{Of: plate, Contrast: &kitchen.Contrast{BadBlanks: []kitchen.UnitRef{unitAt(1, 6)}}}, []string{"The blank #1.6 went bad: look at the\ncook first."}},
		"a clean blank":    {wording.TraceView{Of: plate, Contrast: &kitchen.Contrast{Blanks: 2}}, []string{"Beside it 2 blanks stayed clean: likely\nnot the cook."}},
		"a unit": {wording.TraceView{Of: kitchen.UnitNode(unitAt(1, 1))}, []string{
			"#1.1: grown through, fridge.", "It came from plate 7, that from plate 3,\nthat from Mira. Generation 1.", "4 units more came from plate 7, 2 of 4\nlost; still standing: #1.4.", "Its grain went on 2 units:", "[Trace plate 7] [Log #1.1]",
		}},
		"a lot": {wording.TraceView{Label: "rye lot 3", Units: []kitchen.UnitRef{unitAt(1, 1), unitAt(1, 2)}}, []string{
			"Rye lot 3: 1 of 2 lost.", "On them: plate 7 (2).", "Their grain went on 2 units more:\n#2.1,2, none of 2 lost.",
		}},
		"nothing": {wording.TraceView{Label: "#soak24"}, []string{"No unit in the book has #soak24."}},
	} {
		tt.v.Lineage, tt.v.Now = l, traceDay(20)
		text := onPhone(t, wording.Trace(tt.v))
		for _, want := range tt.wants {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in:\n%s", name, want, text)
			}
		}
	}
}

// However many units came from something, it is told on one screen and counts them all.
func TestTraceFitsAScreen(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var units []kitchen.KeptUnit
		for i := range rapid.IntRange(0, 60).Draw(rt, "units") {
			ref, from, culture := unitAt(kitchen.RunNo(1+i/7), kitchen.UnitNo(1+i%7)), kitchen.UnitRef{}, "plate 7"
			if i > 0 && rapid.Bool().Draw(rt, "grain") {
				from, culture = units[rapid.IntRange(0, i-1).Draw(rt, "from")].Ref, ""
			}
			place := rapid.SampledFrom([]string{"", "fridge", "the top shelf in the cellar by the door"}).Draw(rt, "place")
			units = append(units, grownOn(ref, rapid.SampledFrom(kitchen.UnitStates()).Draw(rt, "state"), culture, from, place))
		}
		l := kitchen.NewLineageOf(units, kitchen.FoldCultures(records(kitchen.CultureMade{Name: "plate 7"})))
		n, _ := l.Find("plate 7")
		if len(units) > 0 && rapid.Bool().Draw(rt, "of a unit") {
			n = kitchen.UnitNode(units[rapid.IntRange(0, len(units)-1).Draw(rt, "which")].Ref)
		}
		text := chat.Plain(wording.Trace(wording.TraceView{Lineage: l, Of: n, Drawn: true, Now: traceDay(20)}), 40)
		if lines := strings.Count(text, "\n") + 1; lines > 12 {
			rt.Fatalf("%d lines:\n%s", lines, text)
		}
	})
}

func TestCultureWords(t *testing.T) {
	all := kitchen.FoldCultures(records(
		kitchen.CultureMade{Name: "plate 3", Kind: kitchen.Plate, Species: "oyster"},
		kitchen.CultureMade{Name: "lc 4", Kind: kitchen.LiquidBottle, From: "plate 3", Volume: 0.5, Owner: 2},
		kitchen.CultureMade{Name: "big blue", Kind: kitchen.GrainMaster, From: "plate 3", Generation: 3},
		kitchen.CultureEnded{Name: "plate 3", How: kitchen.CultureWentBad},
	))
	l := kitchen.NewLineageOf(nil, all)
	who := func(kitchen.MemberNo) string { return "Jo" }
	view := func(i int) wording.CultureView {
		return wording.CultureView{Culture: all.All[i], Lineage: l, Now: traceDay(9), Who: who}
	}
	bad := view(0)
	bad.Kin = &wording.KinView{Of: "plate 3", Below: []kitchen.UnitRef{unitAt(1, 1), unitAt(1, 2), unitAt(1, 3)}}
	for name, tt := range map[string]struct {
		post chat.Post
		want string
	}{
		"made":  {wording.CultureMade(view(1)), "LC 4 is in the book.\nOyster, from plate 3, 500 ml, Jo's, made\n3 Mar."},
		"old":   {wording.CultureMade(view(2)), "Grain it goes on is generation 4: most\nstop at 3."},
		"ended": {wording.CultureEnded(bad), "Plate 3 went bad, Thu 09:00.\nFrom plate 3 came #1.1-3, which still\nstand. Look at them first."},
		"one":   {wording.Culture(view(2)), "Big blue: 5 days old.\nMaster, oyster, from plate 3, generation\n3, made 4 Mar."},
		"list":  {wording.Cultures(wording.CulturesView{All: all, Lineage: l, Now: traceDay(9), Who: who}), "2 cultures, newest first:\nBig blue oyster, 5 days, generation 3;\nplate 3 went bad\nLC 4 oyster, 6 days, 500 ml, Jo; plate 3\nwent bad\n1 more ended, 1 of them bad."},
		"none":  {wording.Cultures(wording.CulturesView{Kind: kitchen.Syringe, Now: traceDay(9)}), "No syringe in the book that is still\nthere."},
	} {
		if text := onPhone(t, tt.post); !strings.Contains(text, tt.want) {
			t.Errorf("%s: no %q in:\n%s", name, tt.want, text)
		}
	}
}
