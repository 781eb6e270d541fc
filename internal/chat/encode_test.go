package chat

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func spanGen() *rapid.Generator[Span] {
	s := rapid.String()
	return rapid.OneOf(
		rapid.Map(s, func(s string) Span { return Text(s) }),
		rapid.Map(s, func(s string) Span { return Bold(s) }),
		rapid.Map(s, func(s string) Span { return Code(s) }),
		rapid.Custom(func(t *rapid.T) Span {
			return Mention{Person{DoorName(s.Draw(t, "door")), s.Draw(t, "id"), s.Draw(t, "shown")}, s.Draw(t, "name")}
		}),
		rapid.Custom(func(t *rapid.T) Span {
			at := time.Unix(rapid.Int64Range(0, 1<<33).Draw(t, "seconds"), rapid.Int64Range(0, 999999999).Draw(t, "nanos"))
			return When{at, s.Draw(t, "zone"), rapid.SampledFrom([]WhenForm{Clock, DayClock, Day}).Draw(t, "form")}
		}),
	)
}

func blockGen() *rapid.Generator[Block] {
	s, spans := rapid.String(), rapid.SliceOf(spanGen())
	return rapid.OneOf(
		rapid.Map(spans, func(s []Span) Block { return Para(s) }),
		rapid.Map(rapid.SliceOf(spans), func(l [][]Span) Block { return List(l) }),
		rapid.Map(s, func(s string) Block { return Quote(s) }),
		rapid.Custom(func(t *rapid.T) Block {
			return Table{
				Align: rapid.SliceOf(rapid.SampledFrom([]Align{Left, Right})).Draw(t, "align"),
				Rows:  rapid.SliceOf(rapid.SliceOf(s)).Draw(t, "rows"),
			}
		}),
	)
}

func postGen() *rapid.Generator[Post] {
	s := rapid.String()
	return rapid.Custom(func(t *rapid.T) Post {
		return Post{
			Blocks: rapid.SliceOf(blockGen()).Draw(t, "blocks"),
			Buttons: rapid.SliceOf(rapid.Custom(func(t *rapid.T) Button {
				return Button{s.Draw(t, "label"), s.Draw(t, "say")}
			})).Draw(t, "buttons"),
			Files: rapid.SliceOf(rapid.Custom(func(t *rapid.T) File {
				return File{s.Draw(t, "name"), s.Draw(t, "type"), rapid.SliceOf(rapid.Byte()).Draw(t, "data"), rapid.Int64().Draw(t, "kept")}
			})).Draw(t, "files"),
			Slot:     s.Draw(t, "slot"),
			Loudness: Loudness(rapid.IntRange(0, int(Digest)).Draw(t, "loudness")),
		}
	})
}

func TestEncodeThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := postGen().Draw(t, "post")
		data, err := p.Encode()
		if err != nil {
			t.Fatal(err)
		}
		got, err := DecodePost(data)
		if err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
		if diff := cmp.Diff(p, got, cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("(-want +got):\n%s\n%s", diff, data)
		}
	})
}

// The stored form may only grow: this one was written by the first version
// and must be read for ever.
const firstForm = `{"v":1,"blocks":[` +
	`{"kind":"para","spans":[{"kind":"text","text":"a <b> & c "},{"kind":"bold","text":"x"},{"kind":"code","text":"zero"},` +
	`{"kind":"mention","text":"Ana","person":{"door":"matrix","id":"@ana:example.org","name":"ana"}},` +
	`{"kind":"when","at":"2026-03-02T15:50:00Z","zone":"Europe/Berlin","form":"day clock"}]},` +
	`{"kind":"table","align":["left","right"],"rows":[["rye","1 g"],["all"]]},` +
	`{"kind":"list","items":[[{"kind":"text","text":"one"}]]},` +
	`{"kind":"quote","text":"two\nlines"}],` +
	`"buttons":[{"label":"Why","say":"why"}],"files":[{"name":"a.csv","type":"text/csv","data":"YSxi"}],` +
	`"slot":"run/12","loudness":"guard"}`

func TestEncodeFirstForm(t *testing.T) {
	want := Post{
		Blocks: []Block{
			P("a <b> & c ", Bold("x"), Code("zero"), Mention{Person{Matrix, "@ana:example.org", "ana"}, "Ana"},
				When{time.Date(2026, 3, 2, 15, 50, 0, 0, time.UTC), "Europe/Berlin", DayClock}),
			Table{[]Align{Left, Right}, [][]string{{"rye", "1 g"}, {"all"}}},
			List{P("one")},
			Quote("two\nlines"),
		},
		Buttons: []Button{{"Why", "why"}}, Files: []File{{"a.csv", "text/csv", []byte("a,b"), 0}},
		Slot: "run/12", Loudness: Guard,
	}
	got, err := DecodePost([]byte(firstForm))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("DecodePost (-want +got):\n%s", diff)
	}
	data, err := want.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(firstForm, string(data)); diff != "" {
		t.Errorf("Encode (-want +got):\n%s", diff)
	}
}

func TestDecodePostRefuses(t *testing.T) {
	for _, data := range []string{
		"", "{", "null", `{"v":2}`, `{"blocks":[]}`,
		`{"v":1,"loudness":"loud"}`,
		`{"v":1,"blocks":[{"kind":"picture"}]}`,
		`{"v":1,"blocks":[{"kind":"table","align":["middle"]}]}`,
		`{"v":1,"blocks":[{"kind":"para","spans":[{"kind":"link"}]}]}`,
		`{"v":1,"blocks":[{"kind":"list","items":[[{"kind":"mention"}]]}]}`,
		`{"v":1,"blocks":[{"kind":"para","spans":[{"kind":"when","form":"clock"}]}]}`,
		`{"v":1,"blocks":[{"kind":"para","spans":[{"kind":"when","at":"2026-03-02T15:50:00Z","form":""}]}]}`,
	} {
		if p, err := DecodePost([]byte(data)); err == nil {
			t.Errorf("DecodePost(%s) = %v, want an error", data, p)
		}
	}
}

func TestEncodeTimeOutOfReach(t *testing.T) {
	p := Post{Blocks: []Block{P(When{time.Date(12000, 1, 1, 0, 0, 0, 0, time.UTC), "UTC", Day})}}
	if _, err := p.Encode(); err == nil {
		t.Error("the year 12000 was stored")
	}
}

func FuzzDecodePost(f *testing.F) {
	f.Add([]byte(firstForm))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := DecodePost(data)
		if err != nil {
			return
		}
		Plain(p, 40)
		again, err := p.Encode()
		if err != nil {
			t.Fatal(err)
		}
		got, err := DecodePost(again)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(p, got, cmpopts.EquateEmpty()); diff != "" {
			t.Fatal(diff)
		}
	})
}
