package kitchen

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/unit"
)

// clock is a time of day on Monday 2 March 2026, or with a day in front: "2 08:30"
// is the second day.
func clock(s string) time.Time {
	day := 1
	if rest, ok := strings.CutPrefix(s, "2 "); ok {
		day, s = 2, rest
	}
	t, err := time.Parse("15:04", s)
	if err != nil {
		panic(err)
	}
	return time.Date(2026, 3, 1+day, t.Hour(), t.Minute(), 0, 0, time.UTC)
}

// teller writes records down, each told when it happened.
type teller struct{ records []Record }

func (l *teller) say(hhmm string, by MemberNo, e Entry) *teller {
	l.records = append(l.records, Record{No: EntryNo(len(l.records) + 1), By: by, At: clock(hhmm), Written: clock(hhmm), Entry: e})
	return l
}

const (
	ana MemberNo = 1
	jo  MemberNo = 2
	mik MemberNo = 3
)

// begun is run 12 with an order, put on at nine by Ana in the big pot, or, without
// items, of seven quarts: 90 minutes and 3 l.
func begun(items ...Item) *teller {
	if len(items) == 0 {
		items = []Item{{Count: 7, Container: jar(1)}}
	}
	l := &teller{}
	return l.say("09:00", ana, RunBegun{Run: 12, Cooker: "big pot", Order: order(items...), Cook: ana, Room: 7})
}

func always(s Settings) func(time.Time) Settings { return func(time.Time) Settings { return s } }

func pot(changes ...Change) Settings {
	return Settings{}.With(append([]Change{bigPot()}, changes...)...)
}

func (l *teller) run(t testing.TB, s Settings) Run {
	t.Helper()
	r, err := FoldRun(l.records, always(s))
	if err != nil {
		t.Fatalf("FoldRun: %v", err)
	}
	return r
}

func psi(p float64) *unit.GaugeKPa {
	g := unit.PSI(p)
	return &g
}

func hm(t time.Time) string {
	if t.IsZero() {
		return "-"
	}
	if t.Day() != 2 {
		return t.Format("2.1. 15:04")
	}
	return t.Format("15:04")
}

// story prints what a run says of itself, for comparison.
func story(r Run, s Settings) string {
	var b strings.Builder
	for _, st := range r.Steps {
		by := fmt.Sprintf("by %d", st.By)
		if !st.Seen {
			by = "not seen"
		}
		what := st.Kind.String()
		if st.Prep != 0 {
			what += " " + st.Prep.String()
		}
		fmt.Fprintf(&b, "%s %s, %s\n", hm(st.At), what, by)
	}
	for _, o := range r.Off {
		fmt.Fprintf(&b, "off %s: %s, %v of %v, %v before\n", hm(o.At), o.Outcome, o.Credit.Hold, o.Wanted, o.Credit.Broken)
	}
	for _, st := range r.Strays {
		fmt.Fprintf(&b, "stray %s %s: %T\n", hm(st.Record.At), st.Record.Entry.(RunEntry).kind(), st.Why)
	}
	fmt.Fprintf(&b, "%s since %s, cook %d\n", r.Stage, hm(r.Since), r.Cook)
	b.WriteString(due(r.Wants(s)))
	return b.String()
}

// due prints pings, a chain in a line up to its third repeat, without the notes
// about the shelf weeks later.
func due(pings []Ping) string {
	var lines []string
	for _, p := range pings {
		if p.Kind.Daily() {
			continue // weeks later: see TestShelfLimits
		}
		if p.Key != p.Chain() {
			rooms := ""
			if n, _ := strconv.Atoi(p.Key[strings.LastIndex(p.Key, "/")+1:]); n > 3 {
				continue
			}
			if p.Kind == WhoIsThere {
				rooms = " everybody"
			}
			if p.Kind != ProbablyCool {
				lines[len(lines)-1] += ", " + hm(p.Due) + rooms
			}
			continue
		}
		at := hm(p.Due)
		if p.Kind == ProbablyCool {
			at = "then" // as the forecast has it: see TestProbablyCool
		}
		lines = append(lines, fmt.Sprintf("ping %s %s to %d, %s: %s", at, p.Kind, p.To, p.Loudness, p.Key))
	}
	return strings.Join(lines, "\n")
}

func checkStory(t *testing.T, r Run, s Settings, want string) {
	t.Helper()
	got := strings.TrimSpace(story(r, s))
	want = strings.TrimSpace(strings.ReplaceAll(want, "\n\t\t\t", "\n"))
	if diff := cmp.Diff(strings.Split(want, "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("(-want +got):\n%s\n%s", diff, got)
	}
}

// The stories are what people tell of a cook, and what the run makes of it.
func TestStories(t *testing.T) {
	tests := []struct {
		name    string
		kitchen Settings
		told    *teller
		want    string
	}{
		{
			"a run told step by step", pot(),
			begun().say("09:05", ana, HeatOn{}).say("09:30", ana, Steam{}).say("09:41", ana, VentClosed{}).
				say("09:46", ana, AtPressure{}),
			`09:00 begun, by 1
			09:05 heat on, by 1
			09:30 steam, by 1
			09:41 vent closed, by 1
			09:46 at pressure, by 1
			at pressure since 09:46, cook 1
			ping 11:11 hold nearly over to 1, due: run/12/hold-nearly/1
			ping 11:16 hold over to 1, guard: run/12/hold-over/1, 11:21, 11:26, 11:31 everybody`,
		},
		{
			"at pressure is the first that anybody says", pot(),
			begun().say("10:05", jo, AtPressure{Gauge: unit.PSI(15)}),
			`09:00 begun, by 1
			10:05 heat on, not seen
			10:05 steam, not seen
			10:05 vent closed, not seen
			10:05 at pressure, by 2
			at pressure since 10:05, cook 1
			ping 11:30 hold nearly over to 1, due: run/12/hold-nearly/1
			ping 11:35 hold over to 1, guard: run/12/hold-over/1, 11:40, 11:45, 11:50 everybody`,
		},
		{
			"zero, and nobody said heat off", pot(),
			begun().say("10:00", ana, AtPressure{}).say("12:40", jo, AtZero{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			12:40 heat off, not seen
			12:40 zero, by 2
			off 12:40: unseen, 0s of 1h30m0s, 0s before
			cooling since 12:40, cook 1
			ping then probably cool to 1, due: run/12/probably-cool/1`,
		},
		{
			"heat off before the hold is over", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:10", jo, HeatOff{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			11:10 heat off, by 2
			off 11:10: early, 1h10m0s of 1h30m0s, 0s before
			falling since 11:10, cook 1
			ping 11:55 check zero to 1, guard: run/12/zero/1, 12:15, 12:35, 12:50 everybody`,
		},
		{
			"the hold was over when the heat went off", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:31", ana, HeatOff{}).say("12:20", ana, AtZero{}).say("12:30", ana, OutOfPot{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			11:31 heat off, by 1
			12:20 zero, by 1
			12:30 out of the pot, by 1
			off 11:31: held, 1h31m0s of 1h30m0s, 0s before
			cooling since 12:20, cook 1
			ping then probably cool to 1, due: run/12/probably-cool/1`,
		},
		{
			"lost and back: the hold starts again, and the water is short", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:40", jo, PressureLost{Gauge: psi(11)}).say("10:50", jo, PressureBack{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:40 lost pressure, by 2
			10:50 back at pressure, by 2
			at pressure since 10:50, cook 1
			ping 12:15 hold nearly over to 1, due: run/12/hold-nearly/2
			ping 12:20 hold over to 1, guard: run/12/hold-over/2, 12:25, 12:30, 12:35 everybody
			ping 10:50 water short to 1, guard: run/12/water/2, 12:00, 12:05, 12:10 everybody`,
		},
		{
			"back, and nobody said it was lost", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:20", ana, GaugeRead{unit.PSI(15)}).say("10:50", jo, PressureBack{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:20 gauge read, by 1
			10:50 lost pressure, not seen
			10:50 back at pressure, by 2
			at pressure since 10:50, cook 1
			ping 12:15 hold nearly over to 1, due: run/12/hold-nearly/2
			ping 12:20 hold over to 1, guard: run/12/hold-over/2, 12:25, 12:30, 12:35 everybody
			ping 10:50 water short to 1, guard: run/12/water/2, 12:00, 12:05, 12:10 everybody`,
		},
		{
			"a reading that is too low is a loss", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:20", ana, GaugeRead{unit.PSI(13.5)}).say("10:30", ana, GaugeRead{unit.PSI(15)}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:20 gauge read, by 1
			10:20 lost pressure, by 1
			10:30 gauge read, by 1
			10:30 back at pressure, by 1
			at pressure since 10:30, cook 1
			ping 11:55 hold nearly over to 1, due: run/12/hold-nearly/2
			ping 12:00 hold over to 1, guard: run/12/hold-over/2, 12:05, 12:10, 12:15 everybody`,
		},
		{
			"dropped to 11 for 4 min", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:20", ana, Dipped{To: psi(11), For: 4 * time.Minute}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:20 dipped, by 1
			at pressure since 10:24, cook 1
			ping 11:49 hold nearly over to 1, due: run/12/hold-nearly/2
			ping 11:54 hold over to 1, guard: run/12/hold-over/2, 11:59, 12:04, 12:09 everybody`,
		},
		{
			"dropped to 14.5 is no loss", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:20", ana, Dipped{To: psi(14.5), For: 4 * time.Minute}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:20 dipped, by 1
			at pressure since 10:00, cook 1
			ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1
			ping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody`,
		},
		{
			"two people say heat off", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:31", jo, HeatOff{}).say("11:30", ana, HeatOff{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			11:30 heat off, by 1
			off 11:30: held, 1h30m0s of 1h30m0s, 0s before
			stray 11:31 heat off: kitchen.AlreadySo
			falling since 11:30, cook 1
			ping 12:15 check zero to 1, guard: run/12/zero/1, 12:35, 12:55, 13:10 everybody`,
		},
		{
			"lit again after a heat off too soon", pot(),
			begun().say("10:00", ana, AtPressure{}).say("10:30", jo, HeatOff{}).say("10:35", ana, HeatOn{}).say("10:40", ana, AtPressure{}).
				say("12:10", ana, HeatOff{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			10:30 heat off, by 2
			10:35 heat on, by 1
			10:40 steam, not seen
			10:40 vent closed, not seen
			10:40 at pressure, by 1
			12:10 heat off, by 1
			off 10:30: early, 30m0s of 1h30m0s, 0s before
			off 12:10: held, 1h30m0s of 1h30m0s, 30m0s before
			falling since 12:10, cook 1
			ping 12:55 check zero to 1, guard: run/12/zero/2, 13:15, 13:35, 13:50 everybody`,
		},
		{
			"called off with the flame on", pot(),
			begun().say("09:10", ana, HeatOn{}).say("09:30", jo, CalledOff{}),
			`09:00 begun, by 1
			09:10 heat on, by 1
			09:30 called off, by 2
			called off since 09:30, cook 1
			ping 09:35 still hot to 1, guard: run/12/still-hot/1, 09:40, 09:45, 09:50 everybody`,
		},
		{
			"soaked jars: each step ends the one before", pot(MethodIs{Vessel: Jar, Method: Soaked}),
			begun().say("09:00", jo, PrepBegun{Soaking}).say("21:10", jo, PrepBegun{Simmering}).say("21:30", jo, PrepEnded{}),
			`09:00 begun, by 1
			09:00 preparation begun soaking, by 2
			21:10 preparation ended soaking, not seen
			21:10 preparation begun simmering, by 2
			21:30 preparation ended simmering, by 2
			preparing since 09:00, cook 1
			ping 3.3. 09:30 wet grain stands to 2, due: run/12/wet-grain/2`,
		},
		{
			"jo sees to it, and says not yet", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:32", jo, PingAnswered{"run/12/hold-over/1", AnswerGotIt}).
				say("11:36", jo, PingAnswered{"run/12/hold-over/1/again/1", AnswerNotYet}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			11:32 took over, by 2
			at pressure since 10:00, cook 2
			ping 11:25 hold nearly over to 2, due: run/12/hold-nearly/1
			ping 11:41 hold over to 2, guard: run/12/hold-over/1, 11:46, 11:51, 11:56 everybody`,
		},
		{
			"a thumb is no answer", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:32", jo, PingAnswered{"run/12/hold-over/1", AnswerSeen}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			at pressure since 10:00, cook 1
			ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1
			ping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody`,
		},
		{
			"a tap on done is heat off", pot(),
			begun().say("10:00", ana, AtPressure{}).say("11:33", jo, PingAnswered{"run/12/hold-over/1/again/1", AnswerDone}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			11:33 heat off, by 2
			off 11:33: held, 1h33m0s of 1h30m0s, 0s before
			falling since 11:33, cook 1
			ping 12:18 check zero to 1, guard: run/12/zero/1, 12:38, 12:58, 13:13 everybody`,
		},
		{
			"mixed containers take the longest hold", pot(HoldIs{bag(3), 150 * time.Minute}),
			begun(Item{Count: 4, Container: jar(1)}, Item{Count: 1, Container: bag(3)}).say("10:00", ana, AtPressure{}),
			`09:00 begun, by 1
			10:00 heat on, not seen
			10:00 steam, not seen
			10:00 vent closed, not seen
			10:00 at pressure, by 1
			at pressure since 10:00, cook 1
			ping 12:25 hold nearly over to 1, due: run/12/hold-nearly/1
			ping 12:30 hold over to 1, guard: run/12/hold-over/1, 12:35, 12:40, 12:45 everybody`,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { checkStory(t, tt.told.run(t, tt.kitchen), tt.kitchen, tt.want) })
	}
}
