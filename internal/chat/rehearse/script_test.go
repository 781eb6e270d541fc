package rehearse

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

func TestParse(t *testing.T) {
	opt := cmp.AllowUnexported(say{}, tap{}, advance{}, until{}, voice{}, clock{})
	said := func(text string) step { return say{voice{who: robin}, text} }
	for text, want := range map[string]step{
		"":                          nil,
		"   ":                       nil,
		"// a comment":              nil,
		"3 bags 5lb agar":           said("3 bags 5lb agar"),
		"  3 bags \r":               said("3 bags"),
		`3 bags\n4 jars`:            said("3 bags\n4 jars"),
		"<ana> who's cooking":       say{voice{who: "ana"}, "who's cooking"},
		"<Ana private> what now":    say{voice{who: "ana", in: "private"}, "what now"},
		"<ana reply>46C":            say{voice{who: "ana", reply: true}, "46C"},
		"<ana edit> no, 4 bags":     say{voice{who: "ana", edit: true}, "no, 4 bags"},
		"<ana 14:05> heat off":      say{voice{who: "ana", sent: &clock{14, 5}}, "heat off"},
		"<ana photo> 12.3 green":    say{voice{who: "ana", photo: true}, "12.3 green"},
		"<ana photo>":               say{voice{who: "ana", photo: true}, ""},
		"<ana room2 reply 9:05> ok": say{voice{who: "ana", in: "room2", reply: true, sent: &clock{9, 5}}, "ok"},
		"<josé-2 other> <3":         say{voice{who: "josé-2", in: "other"}, "<3"},
		"[Cook it]":                 tap{voice{who: robin}, "Cook it"},
		"<jo> [Cook it]":            tap{voice{who: "jo"}, "Cook it"},
		"<jo private> [ [a] ]":      tap{voice{who: "jo", in: "private"}, "[a]"},
		"+45s":                      advance{45 * time.Second, up},
		"+90m":                      advance{90 * time.Minute, up},
		"+2h30m":                    advance{150 * time.Minute, up},
		"+3d":                       advance{72 * time.Hour, up},
		"+1d2h3m4s":                 advance{26*time.Hour + 3*time.Minute + 4*time.Second, up},
		"+40m   down":               advance{40 * time.Minute, down},
		"@18:30":                    until{clock{18, 30}},
		"<3 you all":                said("<3 you all"),
		"< 5 kg left":               said("< 5 kg left"),
		"<- that one":               said("<- that one"),
		"+ 2 more bags":             said("+ 2 more bags"),
		"+2 bags":                   said("+2 bags"),
		"+2kg rye":                  said("+2kg rye"),
		"+1, me too":                said("+1, me too"),
		"@ana look":                 said("@ana look"),
		"@ 7 bags":                  said("@ 7 bags"),
		"@7 bags a load":            said("@7 bags a load"),
		"12 [big pot]":              said("12 [big pot]"),
	} {
		got, err := parse(text)
		if err != nil {
			t.Errorf("parse(%q): %v", text, err)
		}
		if diff := cmp.Diff(want, got, opt); diff != "" {
			t.Errorf("parse(%q) (-want +got):\n%s", text, diff)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for text, why := range map[string]string{
		"<ana who's cooking":     "no >",
		"<ana>":                  "nothing is said",
		"<ana loud> hey":         `"loud" is neither`,
		"<ana 25:00> hey":        "no 25:00",
		"<ana 1405> hey":         `"1405" is neither`,
		"<ana room2 other> hey":  `"other" is one too many`,
		"<ana reply reply> hey":  "one too many",
		"<ana 9:00 9:05> hey":    "one too many",
		"<private> hey":          "no name",
		"<a.b> hey":              "no name",
		"<ana reply> [Cook it]":  "a tap is no reply",
		"<ana edit> [Cook it]":   "a tap is no reply",
		"<ana> [Cook it":         "no ]",
		"[Cook it":               "no ]",
		"[Cook it] now":          "no ]",
		"[ ]":                    "no label",
		"+90":                    "is like",
		"+90x":                   "is like",
		"+90M":                   "is like",
		"+1.5h":                  "is like",
		"+90x down":              "is like",
		"+30m2h":                 "is like",
		"+2kg":                   "is like",
		"+90m dwon":              "can only be down",
		"+4000d":                 "over ten years",
		"+99999999999999999999s": "over ten years",
		"@25:00":                 "no 25:00",
		"@18:3":                  "neither",
		"@18.30":                 "neither",
		"@18":                    "neither",
		"@18:30 down":            "behind a time of day",
	} {
		got, err := parse(text)
		if err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("parse(%q) = %v, %v; want an error with %q", text, got, err, why)
		}
	}
}

func TestClockAroundMidnightAndSummerTime(t *testing.T) {
	lisbon, err := time.LoadLocation("Europe/Lisbon")
	if err != nil {
		t.Fatal(err)
	}
	at := time.Date(2026, 3, 28, 9, 0, 0, 0, lisbon)
	for _, c := range []struct {
		clock      clock
		next, last string
	}{
		{clock{9, 0}, "2026-03-29T09:00:00+01:00", "2026-03-28T09:00:00Z"},
		{clock{9, 1}, "2026-03-28T09:01:00Z", "2026-03-27T09:01:00Z"},
		{clock{8, 59}, "2026-03-29T08:59:00+01:00", "2026-03-28T08:59:00Z"},
		{clock{0, 0}, "2026-03-29T00:00:00Z", "2026-03-28T00:00:00Z"},
	} {
		next, last := c.clock.next(at).Format(time.RFC3339), c.clock.last(at).Format(time.RFC3339)
		if next != c.next || last != c.last {
			t.Errorf("%v: next %s, last %s; want %s, %s", c.clock, next, last, c.next, c.last)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"3 bags", "<ana room2 reply 14:05> x", "[Cook it]", "+2h30m down", "@18:30", "// x", "<3"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := parse(text)
		if err != nil && s != nil {
			t.Errorf("parse(%q) = %v and %v", text, s, err)
		}
		if a, ok := s.(advance); ok && (a.by < 0 || a.by > 4*longest) {
			t.Errorf("parse(%q) moves the clock by %v", text, a.by)
		}
		again, errAgain := parse("  " + strings.TrimSpace(text) + "\t")
		if opt := cmp.AllowUnexported(say{}, tap{}, advance{}, until{}, voice{}, clock{}); cmp.Diff(s, again, opt) != "" || (err == nil) != (errAgain == nil) {
			t.Errorf("parse(%q) depends on the spaces around it", text)
		}
	})
}
