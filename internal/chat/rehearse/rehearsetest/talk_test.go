package rehearsetest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const good = `The echo answers at once and again after an hour.
-- start --
--tz Europe/Berlin --start 2026-07-01T10:00
-- say --
3 bags
+10m
-- posts --
10:00 bot → room
  3 bags
-- due --
09:00
`

// later is good with a second exchange.
var later = strings.Replace(good, "-- due --\n09:00\n", `-- say --
+2h
-- posts --
11:00 bot → room
  again: 3 bags
-- due --
(none)
`, 1)

// verdict stands in for a test, to see what it is told.
type verdict struct {
	testing.TB
	failed string
}

func (v *verdict) Errorf(format string, args ...any) { v.failed += fmt.Sprintf(format, args...) }

func file(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "a.txtar")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestTalkThatHolds(t *testing.T) {
	for _, text := range []string{good, later} {
		Talk(t, file(t, text), Check, echo)
	}
}

func TestTalkThatDiffers(t *testing.T) {
	for _, text := range []string{
		strings.Replace(good, "  3 bags", "  4 bags", 1),
		strings.Replace(good, "-- posts --\n10:00 bot → room\n  3 bags\n", "", 1),
		strings.Replace(good, "09:00", "09:01", 1),
		good + "09:30\n",
	} {
		v := &verdict{TB: t}
		if Talk(v, file(t, text), Check, echo); !strings.Contains(v.failed, "-want +got") {
			t.Errorf("no difference seen in\n%s", text)
		}
	}
}

func TestUpdateRewritesAllButWhatIsSaid(t *testing.T) {
	for _, want := range []string{good, later} {
		stale := strings.NewReplacer("  3 bags", "  old", "09:00", "old", "(none)", "old").Replace(want)
		name := file(t, stale)
		Talk(t, name, Update, echo)
		got, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, string(got)); diff != "" {
			t.Errorf("updated file (-want +got):\n%s", diff)
		}
	}
}

func TestUpdateMakesMissingPosts(t *testing.T) {
	name := file(t, strings.Replace(good, "-- posts --\n10:00 bot → room\n  3 bags\n", "", 1))
	Talk(t, name, Update, echo)
	if got, err := os.ReadFile(name); err != nil || string(got) != good {
		t.Errorf("got %q, %v", got, err)
	}
}

// broken is told of what Talk cannot even play.
type broken struct {
	testing.TB
	fatal string
}

func (b *broken) Fatalf(format string, args ...any) {
	b.fatal = fmt.Sprintf(format, args...)
	panic(b)
}

func TestTalkRefusesBrokenFiles(t *testing.T) {
	for text, want := range map[string]string{
		"only a comment\n":                         "no part in which anything is said",
		"-- posts --\n-- say --\nx\n":              `a part "posts" behind ""`,
		"-- say --\nx\n-- posts --\n-- posts --\n": `a part "posts" behind "posts"`,
		"-- say --\nx\n-- note --\n":               `a part "note" behind "say"`,
		"-- say --\nx\n-- due --\n-- say --\nx\n":  `a part "say" behind "due"`,
		"-- say --\nx\n-- log --\n":                "cannot tell its log",
		"-- say --\nx\n<ana lound> x\n":            "line 2",
		"-- start --\n--tz Nowhere\n-- say --\n":   "Nowhere",
		"-- start --\n--speed 2\n-- say --\n":      "speed",
		"-- start --\n--tz UTC 9\n-- say --\n":     `"9" among the flags`,
	} {
		if got := fatal(t, file(t, text)); !strings.Contains(got, want) {
			t.Errorf("%q: told %q, want %q in it", text, got, want)
		}
	}
}

func fatal(t *testing.T, name string) string {
	t.Helper()
	b := &broken{TB: t}
	func() {
		defer func() {
			if r := recover(); r != nil && r != any(b) {
				panic(r)
			}
		}()
		Talk(b, name, Check, echo)
	}()
	return b.fatal
}
