package wording

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// tale is what was told of the units of a load, the first of it on 3 March.
type tale struct {
	run     kitchen.Run
	records []kitchen.Record
}

// on says that something happened at nine of a day of March, which may be over its end.
func (l *tale) on(day int, by kitchen.MemberNo, e kitchen.UnitEntry) *tale {
	at := time.Date(2026, 3, day, 9, len(l.records), 0, 0, time.UTC)
	l.records = append(l.records, kitchen.Record{No: kitchen.EntryNo(100 + len(l.records)), By: by, At: at, Written: at, Entry: e})
	return l
}

// view is one unit as of a day of March, story what is told of it.
func (l *tale) view(t testing.TB, no kitchen.UnitNo, day int, photos ...LogPhoto) LogUnitView {
	t.Helper()
	units, err := kitchen.FoldArrived(l.records)
	if l.run.No != 0 {
		units, err = kitchen.FoldUnits(l.run, l.records), nil
	}
	if err != nil {
		t.Fatal(err)
	}
	u, ok := units.Unit(no)
	if !ok || len(units.Strays) > 0 {
		t.Fatalf("unit %d: %v, strays %+v", no, ok, units.Strays)
	}
	return LogUnitView{Story: Story{Run: l.run, Photos: photos, Now: time.Date(2026, 3, day, 12, 0, 0, 0, time.UTC), Who: name}, Unit: u}
}

func (l *tale) story(t testing.TB, no kitchen.UnitNo, day int, photos ...LogPhoto) chat.Post {
	t.Helper()
	return LogUnit(l.view(t, no, day, photos...))
}

func tellOf(t *testing.T) *tale { return &tale{run: standing(t, 12, jars())} }

func numbered(n ...kitchen.UnitNo) []kitchen.UnitNo { return n }

// The story of a unit, as it reads.
func TestLogUnit(t *testing.T) {
	third := numbered(3)
	arrived := &tale{}
	arrived.on(3, ana, kitchen.Arrived{
		Run: 9, Order: kitchen.Order{Items: []kitchen.Item{{Count: 4, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}, Grain: grain.Rye}}},
		Since: time.Date(2026, 2, 3, 9, 0, 0, 0, time.UTC), Culture: "oyster", From: "Kim",
	}).on(5, jo, kitchen.UnitsUsed{Units: third, On: "straw"})
	for _, tt := range []struct {
		name string
		post chat.Post
		want string
	}{
		{
			"only cooked", tellOf(t).story(t, 3, 4), `
#12.3 cooked: quart jar.
2 Mar: cooked, big pot, held 90 min.
`,
		},
		{
			"a good one, to its end",
			tellOf(t).on(3, ana, kitchen.Inoculated{Units: third, Culture: "blue lc", Species: "blue oyster", Route: kitchen.LiquidCulture, Volume: 0.01}).
				on(9, jo, kitchen.Shaken{Units: third}).on(12, jo, kitchen.GrowthSeen{Units: third, Share: 0.6}).on(16, jo, kitchen.GrownThrough{Units: third}).
				on(16, jo, kitchen.UnitsMoved{Units: third, Place: "fridge"}).on(20, ana, kitchen.UnitsUsed{Units: third, Share: 0.5, On: "straw"}).
				on(21, mika, kitchen.UnitsUsed{Units: third, On: "sawdust"}).story(t, 3, 22), `
#12.3 used: quart jar, blue lc (blue oyster).
2 Mar: cooked, big pot, held 90 min.
3 Mar: Ana put blue lc on it, LC, 10 ml.
9 Mar: Jo shook it.
12 Mar: Jo saw 60 % overgrown.
16 Mar: Jo saw it grown through, moved it: fridge.
20 Mar: Ana used 50 % on straw.
21 Mar: Mika used the rest on sawdust.
`,
		},
		{
			"one that soured, with a photo",
			tellOf(t).on(3, ana, kitchen.Inoculated{Units: third, From: kitchen.UnitRef{Run: 9, Unit: 2}}).on(6, jo, kitchen.SignSeen{Units: third, Sign: kitchen.LooksWet}).
				on(8, jo, kitchen.SignSeen{Units: third, Sign: kitchen.SourSmell}).on(8, ana, kitchen.UnitsDiscarded{Units: third}).
				story(t, 3, 9, LogPhoto{7, "image/jpeg", time.Date(2026, 3, 8, 9, 0, 0, 0, time.UTC)}), `
#12.3 thrown out, contaminated: quart jar, grain of #9.2.
2 Mar: cooked, big pot, held 90 min.
3 Mar: Ana put grain of #9.2 on it.
6 Mar: Jo saw it look wet.
8 Mar: Jo smelt it sour. Ana threw it out.
One photo, of 8 Mar.
`,
		},
		{
			"what nobody saw",
			tellOf(t).on(9, jo, kitchen.GrowthSeen{Units: third, Share: 0.3}).story(t, 3, 9), `
#12.3 growing 30 %: quart jar.
2 Mar: cooked, big pot, held 90 min.
9 Mar: inoculated by then, not seen. Jo saw 30 % overgrown.
`,
		},
		{
			"a name, a place, lots and tags, and the blank",
			tellOf(t).on(3, ana, kitchen.UnitNamed{Unit: 3, Name: "Bag `A`"}).on(3, ana, kitchen.BlankSet{Units: third}).
				on(3, ana, kitchen.LotSaid{What: kitchen.GrainLot, Name: "rye lot 3"}).on(3, ana, kitchen.UnitsTagged{Units: third, Tags: []string{"soak24"}}).
				on(3, ana, kitchen.UnitsStood{Units: third, Where: kitchen.InnerOnes}).on(4, jo, kitchen.UnitsMoved{Units: third, Place: "shelf 2"}).story(t, 3, 9), "\n" +
				"#12.3 Bag `A`, cooked, the blank: quart jar.\n" +
				"It stands: shelf 2; in the load: in the middle; grain: rye lot 3; #soak24.\n" +
				"2 Mar: cooked, big pot, held 90 min.\n" +
				"3 Mar: Ana left it as the blank.\n" +
				"4 Mar: Jo moved it: shelf 2.\n",
		},
		{
			"one that no run made", arrived.story(t, 3, 9), `
#9.3 used: quart jar, rye, oyster.
3 Feb: not cooked here, from Kim, with oyster on it; nobody here saw its cook.
5 Mar: Jo used it on straw.
`,
		},
	} {
		got := chat.Plain(chat.Post{Blocks: tt.post.Blocks}, 200) + "\n"
		if diff := cmp.Diff(strings.TrimPrefix(tt.want, "\n"), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
		understood(t, tt.post)
	}
}

// A long story keeps its beginning and its end, and counts what lies between.
func TestLogUnitLong(t *testing.T) {
	l := tellOf(t).on(3, ana, kitchen.Inoculated{Units: numbered(3), Culture: "oyster"})
	for day := 8; day < 36; day += 3 {
		l.on(day, jo, kitchen.Shaken{Units: numbered(3)}).on(day+1, jo, kitchen.GrowthSeen{Units: numbered(3), Share: 0.3})
	}
	post := l.on(38, jo, kitchen.SignSeen{Units: numbered(3), Sign: kitchen.GreenMould}).story(t, 3, 39)
	got := chat.Plain(post, phone)
	want := `#12.3 contaminated: quart jar, oyster.
2 Mar: cooked, big pot, held 90 min.
3 Mar: Ana put oyster on it.
8 Mar to 29 Mar: shaken 8 times and
growth seen 7 times.
30 Mar: Jo saw 30 % overgrown.
1 Apr: Jo shook it.
2 Apr: Jo saw 30 % overgrown.
4 Apr: Jo shook it.
5 Apr: Jo saw 30 % overgrown.
7 Apr: Jo saw green mould.
[Log #12] [Trace #12.3]`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

// A story gives up its middle first, then the day of the culture, and never its end.
func TestLogUnitFolds(t *testing.T) {
	for days, want := range map[int][]fold{0: nil, 1: nil, 2: nil, 3: {{1, 2}}, 4: {{1, 3}}, 6: {{2, 4}, {2, 5}, {1, 5}}} {
		var got []fold
		for f := range folds(days) {
			got = append(got, f)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%d days fold as %v, want %v", days, got, want)
		}
	}
}

// However long it is, a story fits the screen, its last day is told, and at most
// four photos are shown, the newest last.
func TestLogUnitFits(t *testing.T) {
	all := kitchen.Signs()
	rapid.Check(t, func(rt *rapid.T) {
		l := tellOf(t).on(3, ana, kitchen.Inoculated{Units: numbered(3), Culture: "the culture with a very long name"})
		day := 3
		for range rapid.IntRange(0, 30).Draw(rt, "steps") {
			day += rapid.IntRange(0, 3).Draw(rt, "days")
			l.on(day, jo, rapid.SampledFrom([]kitchen.UnitEntry{
				kitchen.Shaken{Units: numbered(3)},
				kitchen.GrowthSeen{Units: numbered(3), Share: 0.4},
				kitchen.SignSeen{Units: numbered(3), Sign: all[0]},
				kitchen.SignSeen{Units: numbered(3), Sign: kitchen.LooksOdd},
				kitchen.UnitsMoved{Units: numbered(3), Place: "the upper shelf in the hall"},
			}).Draw(rt, "said"))
		}
		var photos []LogPhoto
		for i := range rapid.IntRange(0, 9).Draw(rt, "photos") {
			photos = append(photos, LogPhoto{int64(i + 1), "image/png", time.Date(2026, 3, 3, 9, i, 0, 0, time.UTC)})
		}
		post := l.on(day+1, ana, kitchen.UnitsDiscarded{Units: numbered(3)}).story(t, 3, day+2, photos...)
		shown := chat.Plain(chat.Post{Blocks: post.Blocks, Buttons: post.Buttons}, phone)
		if n := strings.Count(shown, "\n") + 1; n > screen {
			rt.Errorf("%d lines:\n%s", n, shown)
		}
		if !strings.Contains(shown, "threw it out") {
			rt.Errorf("the end is missing:\n%s", shown)
		}
		if len(post.Files) != min(len(photos), shownPhotos) || len(photos) > 0 && post.Files[len(post.Files)-1].Kept != photos[len(photos)-1].ID {
			rt.Errorf("%d photos, shown %+v", len(photos), post.Files)
		}
	})
}

// Of several units it is told how each stands, and what was told of it last.
func TestLogUnits(t *testing.T) {
	l := tellOf(t).on(3, ana, kitchen.Inoculated{Units: numbered(1, 2), Culture: "oyster"}).on(9, jo, kitchen.GrowthSeen{Units: numbered(1), Share: 0.3}).
		on(10, jo, kitchen.SignSeen{Units: numbered(2), Sign: kitchen.GreenMould})
	post := LogUnits([]LogUnitView{l.view(t, 1, 12), l.view(t, 2, 12), l.view(t, 3, 12)})
	want := `#12.1 growing 30 %. 9 Mar: Jo saw 30 %
overgrown.
#12.2 contaminated. 10 Mar: Jo saw green
mould.
#12.3 cooked. 2 Mar: cooked, big pot,
held 90 min.
Next: one of them, like log #12.1
[Log #12.1] [Log #12.2] [Log #12.3]`
	if diff := cmp.Diff(want, chat.Plain(post, phone)); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	understood(t, post)
	var all []LogUnitView
	for no := kitchen.UnitNo(1); no <= 7; no++ {
		all = append(all, l.view(t, no, 12))
	}
	shown := chat.Plain(LogUnits(all), phone)
	if n := strings.Count(shown, "\n") + 1; n > screen || !strings.Contains(shown, "And 3 more.") {
		t.Errorf("%d lines:\n%s", n, shown)
	}
}

// Every sign and every kind that a story tells has its words.
func TestLogUnitWords(t *testing.T) {
	said := map[string]bool{}
	for _, s := range kitchen.Signs() {
		if w := saw(s); said[w] {
			t.Errorf("%q stands for two signs", w)
		} else {
			said[w] = true
		}
	}
	for k := kitchen.SaidArrived; k <= kitchen.SaidGone; k++ {
		if inUnitStory(k) && betweenWord(k) == "" {
			t.Errorf("%s has no word", k)
		}
	}
}
