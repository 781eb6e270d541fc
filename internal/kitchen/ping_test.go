package kitchen

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func zoneNamed(t testing.TB, name string) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

// Quiet from 22 to 7. The clocks of Lisbon go forward on 29 March 2026 and back on
// 25 October, at one in the night (EU Directive 2000/84/EC): the morning is that of
// the clock on the wall.
func TestShift(t *testing.T) {
	night := QuietHours{From: 22 * 60, To: 7 * 60}
	noon := QuietHours{From: 12 * 60, To: 14*60 + 30}
	due := Ping{Key: "run/12/prep/1", Kind: PrepOver, Loudness: DuePing}
	guard := Ping{Key: "run/12/hold-over/1", Kind: HoldOver, Loudness: GuardPing}
	note := Ping{Key: "gear/pot/gauge", Kind: GaugeCheckDue, Loudness: NotePing}
	again := Ping{Key: "run/12/probably-cool/1/again/1", Kind: ProbablyCool, Loudness: DuePing}
	tests := []struct {
		name  string
		ping  Ping
		quiet QuietHours
		zone  string
		at    string
		want  string
	}{
		{"by day", due, night, "UTC", "2026-03-02T15:00:00Z", "2026-03-02T15:00:00Z"},
		{"at night", due, night, "UTC", "2026-03-02T23:10:00Z", "2026-03-03T07:00:00Z"},
		{"after midnight", due, night, "UTC", "2026-03-03T02:10:00Z", "2026-03-03T07:00:00Z"},
		{"the first minute", due, night, "UTC", "2026-03-02T22:00:00Z", "2026-03-03T07:00:00Z"},
		{"the last", due, night, "UTC", "2026-03-03T06:59:59Z", "2026-03-03T07:00:00Z"},
		{"when it is over", due, night, "UTC", "2026-03-03T07:00:00Z", "2026-03-03T07:00:00Z"},
		{"a note waits too", note, night, "UTC", "2026-03-02T23:10:00Z", "2026-03-03T07:00:00Z"},
		{"one asked for at that minute too", Ping{Key: "start/17", Kind: StartNow, Loudness: DuePing}, night, "UTC", "2026-03-02T23:10:00Z", "2026-03-02T23:10:00Z"},
		{"a guard passes", guard, night, "UTC", "2026-03-02T23:10:00Z", "2026-03-02T23:10:00Z"},
		{"none", due, QuietHours{}, "UTC", "2026-03-02T23:10:00Z", "2026-03-02T23:10:00Z"},
		{"within a day", due, noon, "UTC", "2026-03-02T13:10:00Z", "2026-03-02T14:30:00Z"},
		{"by the zone", due, night, "Asia/Kolkata", "2026-03-02T17:00:00Z", "2026-03-03T01:30:00Z"},
		{"a night of 23 hours", due, night, "Europe/Lisbon", "2026-03-28T23:00:00Z", "2026-03-29T06:00:00Z"},
		{"a night of 25 hours", due, night, "Europe/Lisbon", "2026-10-24T22:00:00Z", "2026-10-25T07:00:00Z"},
		// Those of the next morning stand twelve hours after the first.
		{"the morning after an evening", again, QuietHours{}, "UTC", "2026-03-03T08:23:00Z", "2026-03-03T08:00:00Z"},
		{"the morning after a shifted night", again, night, "UTC", "2026-03-03T12:40:00Z", "2026-03-04T08:00:00Z"},
		{"the morning after a morning", again, night, "UTC", "2026-03-03T22:00:00Z", "2026-03-04T08:00:00Z"},
		{"late sleepers", again, QuietHours{From: 22 * 60, To: 10 * 60}, "UTC", "2026-03-03T08:23:00Z", "2026-03-03T10:00:00Z"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			at, err := time.Parse(time.RFC3339, tt.at)
			if err != nil {
				t.Fatal(err)
			}
			tt.ping.Due = at
			got := Shift(tt.ping, tt.quiet, zoneNamed(t, tt.zone))
			if s := got.Due.UTC().Format(time.RFC3339); s != tt.want {
				t.Errorf("due %s, want %s", s, tt.want)
			}
			if got.Due = at; got != tt.ping {
				t.Errorf("more than the time changed: %+v", got)
			}
		})
	}
}

// Nothing that waits falls into quiet hours or is made earlier by them, and the order
// of a chain stays.
func TestShiftOnlyWaits(t *testing.T) {
	zone := zoneNamed(t, "Europe/Lisbon")
	rapid.Check(t, func(t *rapid.T) {
		quiet := QuietHours{From: TimeOfDay(rapid.IntRange(0, 1439).Draw(t, "from")), To: TimeOfDay(rapid.IntRange(3*60, 1439).Draw(t, "to"))}
		at := time.Unix(rapid.Int64Range(1_770_000_000, 1_800_000_000).Draw(t, "at"), 0).UTC()
		first := Ping{Key: "run/12/probably-cool/1", Kind: ProbablyCool, Loudness: DuePing, Due: at}
		second := first
		second.Key, second.Due = first.Key+againPart+"1", at.Add(nextDay)
		a, b := Shift(first, quiet, zone), Shift(second, quiet, zone)
		for _, p := range []Ping{a, b} {
			if quiet.Holds(p.Due.In(zone)) {
				t.Fatalf("%v lies in the quiet hours", p.Due.In(zone))
			}
		}
		if a.Due.Before(at) || !b.Due.After(a.Due) || b.Due.Sub(a.Due) > 49*time.Hour {
			t.Fatalf("%v and %v of %v", a.Due.In(zone), b.Due.In(zone), at.In(zone))
		}
	})
}

func TestQuietIsOnesOwn(t *testing.T) {
	s := Settings{}.With(QuietHours{From: 23 * 60, To: 7 * 60}, QuietHours{Member: jo, From: 60, To: 60}, PingsPrivate{jo, InPrivate}, PingsPrivate{ana, InPrivate}, PingsPrivate{ana, InRoom})
	if q, set := s.QuietFor(ana); set != Own || q.From != 23*60 {
		t.Errorf("Ana's quiet hours are the collective's: %+v %v", q, set)
	}
	if q, _ := s.QuietFor(jo); !q.None() {
		t.Error("Jo wants none")
	}
	if q, set := (Settings{}).QuietFor(ana); set != Default || q.From != 22*60 || q.To != 7*60 {
		t.Errorf("where nobody said: %+v %v", q, set)
	}
	if s.PingsFor(jo) != InPrivate || s.PingsFor(ana) != InRoom || s.PingsFor(mik) != InRoom {
		t.Errorf("pings go %v, %v, %v", s.PingsFor(jo), s.PingsFor(ana), s.PingsFor(mik))
	}
}

func TestKindsOfPings(t *testing.T) {
	words := map[string]bool{}
	for i, k := range PingKinds() {
		if int(k) != i+1 {
			t.Errorf("%v stands at %d in the list", k, i)
		}
		if w := k.String(); words[w] || strings.Contains(w, "not said") {
			t.Errorf("kind %d is called %q", k, w)
		}
		words[k.String()] = true
		if k.Reach() == 0 {
			t.Errorf("%v reaches nobody", k)
		}
		k.putOff()
	}
	if !(Ping{Kind: HoldNearlyOver, Due: clock("10:00")}).Stale(clock("10:05")) || (Ping{Kind: HoldOver, Due: clock("10:00")}).Stale(clock("15:00")) {
		t.Error("an announcement is overtaken, a guard ping never")
	}
	for _, k := range []PingKind{ProbablyCool, MeasureAgain} {
		p := Ping{Kind: k, Due: clock("10:00")}
		if p.Stale(p.Due.Add(40*time.Hour)) || !p.Stale(p.Due.Add(49*time.Hour)) {
			t.Errorf("%v makes sense for two days", k)
		}
	}
}

// Each member has quiet hours of their own; what is nearly over is not announced
// when it has been over for hours.
func TestQuieted(t *testing.T) {
	at := time.Date(2026, 3, 2, 23, 10, 0, 1_000_000, time.UTC)
	s := Settings{}.With(QuietHours{Member: 1, From: 22 * 60, To: 7 * 60})
	ping := func(key string, k PingKind, l Loudness, to MemberNo, due time.Time) Ping {
		return Ping{Key: key, Kind: k, Loudness: l, To: to, Due: due}
	}
	got := s.Quieted([]Ping{
		ping("a", HoldNearlyOver, DuePing, 1, at),
		ping("b", HoldOver, GuardPing, 1, at),
		ping("c", PrepOver, DuePing, 1, at),
		ping("d", HoldNearlyOver, DuePing, 2, at),
		ping("e", HoldNearlyOver, DuePing, 1, at.Add(8*time.Hour-14*time.Minute)),
	}, time.UTC)
	night, morning := at.Truncate(Breath), time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
	want := []Ping{
		ping("b", HoldOver, GuardPing, 1, night),
		ping("c", PrepOver, DuePing, 1, morning),
		ping("d", HoldNearlyOver, DuePing, 2, night),
		ping("e", HoldNearlyOver, DuePing, 1, morning),
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n  %v\nwant\n  %v", got, want)
	}
}

// Nobody set quiet hours: from 22 to 7 what can wait does, and the word that a hold
// is nearly over doesn't.
func TestQuietedUnasked(t *testing.T) {
	for _, tt := range []struct {
		name  string
		s     Settings
		ping  Ping
		waits bool
	}{
		{"measure one", Settings{}, Ping{Key: "a", Kind: ProbablyCool, Loudness: DuePing, To: jo}, true},
		{"for the whole room", Settings{}, Ping{Key: "a", Kind: WetGrainStands, Loudness: DuePing}, true},
		{"nearly over", Settings{}, Ping{Key: "a", Kind: HoldNearlyOver, Loudness: DuePing, To: jo}, false},
		{"a guard", Settings{}, Ping{Key: "a", Kind: CheckZero, Loudness: GuardPing, To: jo}, false},
		{"one who wants none", Settings{}.With(QuietHours{Member: jo}), Ping{Key: "a", Kind: ProbablyCool, Loudness: DuePing, To: jo}, false},
		{"nobody wants any", Settings{}.With(QuietHours{}), Ping{Key: "a", Kind: ProbablyCool, Loudness: DuePing, To: jo}, false},
	} {
		tt.ping.Due = time.Date(2026, 3, 3, 3, 30, 0, 0, time.UTC)
		want := tt.ping.Due
		if tt.waits {
			want = time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
		}
		if got := tt.s.Quieted([]Ping{tt.ping}, time.UTC); len(got) != 1 || !got[0].Due.Equal(want) {
			t.Errorf("%s: %v, want it at %v", tt.name, got, want)
		}
	}
}
