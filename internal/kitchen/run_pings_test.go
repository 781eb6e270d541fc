package kitchen

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// A hold that is told of when it is over is asked after at once; the rooms are not
// roused because of the delay.
func TestToldLate(t *testing.T) {
	l := begun().say("10:00", ana, AtPressure{})
	l.records[1].Written = clock("13:00")
	want := "ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\n" +
		"ping 11:30 hold over to 1, guard: run/12/hold-over/1, 13:05, 13:10, 13:15 everybody"
	pings := l.run(t, pot()).Wants(pot())
	if diff := cmp.Diff(want, due(pings)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for _, p := range pings {
		if everybody := p.Kind.Reach() == EveryRoom; everybody != (p.To == 0) || p.About != "run/12" {
			t.Errorf("%s is for %d, about %s", p.Key, p.To, p.About)
		}
	}
}

// What people answer, and what becomes of the chain that they answered.
func TestAnswers(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	falling := func() *teller { return held().say("11:30", ana, HeatOff{}) }
	tests := []struct {
		name string
		told *teller
		want string
	}{
		{"nobody", falling(), "ping 12:15 check zero to 1, guard: run/12/zero/1, 12:35, 12:55, 13:10 everybody"},
		{
			"not yet, three times",
			falling().say("12:16", jo, PingAnswered{"run/12/zero/1", AnswerNotYet}).say("12:37", jo, PingAnswered{"run/12/zero/1", AnswerNotYet}).
				say("13:00", ana, PingAnswered{"run/12/zero/1", AnswerNotYet}),
			"ping 13:20 check zero to 1, guard: run/12/zero/1, 13:40, 14:00, 14:15 everybody",
		},
		{
			"jo has got it",
			falling().say("12:16", jo, PingAnswered{"run/12/zero/1", AnswerGotIt}),
			"ping 12:36 check zero to 2, guard: run/12/zero/1, 12:56, 13:16, 13:31 everybody",
		},
		{"done", falling().say("12:16", jo, PingAnswered{"run/12/zero/1/again/1", AnswerDone}), "ping then probably cool to 1, due: run/12/probably-cool/1"},
		{
			"a thumb changes nothing",
			held().say("11:31", ana, PingAnswered{"run/12/hold-over/1", AnswerSeen}),
			"ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\nping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody",
		},
		{
			"an answer to the hold before is none to this one",
			held().say("11:26", ana, PingAnswered{"run/12/hold-over/1", AnswerNotYet}).say("11:28", ana, PressureLost{}).
				say("11:35", ana, WaterIn{Water: 4}).say("11:40", ana, PressureBack{}),
			"ping 13:05 hold nearly over to 1, due: run/12/hold-nearly/2\nping 13:10 hold over to 1, guard: run/12/hold-over/2, 13:15, 13:20, 13:25 everybody",
		},
		{
			"short of water, and known to be",
			begun().say("09:50", ana, WaterIn{Water: 2.4}).say("10:00", ana, AtPressure{}).say("10:02", ana, PingAnswered{"run/12/water/1", AnswerNotYet}),
			"ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\nping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody\n" +
				"ping 11:00 water short to 1, guard: run/12/water/1, 11:05, 11:10 everybody, 11:25 everybody",
		},
		{
			"short of water, told by another, and jo watches",
			begun().say("09:50", ana, WaterIn{Water: 2.4}).say("10:00", mik, AtPressure{}).say("10:02", jo, PingAnswered{"run/12/water/1", AnswerGotIt}),
			"ping 11:25 hold nearly over to 2, due: run/12/hold-nearly/1\nping 11:30 hold over to 2, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody\n" +
				"ping 10:00 water short to 2, guard: run/12/water/1, 11:00",
		},
		{
			"short of water, and seen to",
			begun().say("09:50", ana, WaterIn{Water: 2.4}).say("10:00", ana, AtPressure{}).say("10:02", ana, PingAnswered{"run/12/water/1", AnswerDone}),
			"ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\nping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody",
		},
		{
			"measuring can wait, once", falling().say("12:20", ana, AtZero{}).say("12:21", ana, OutOfPot{}).
				say("20:25", ana, PingAnswered{"run/12/probably-cool/1", AnswerNotYet}).say("22:30", ana, PingAnswered{"run/12/probably-cool/1", AnswerNotYet}),
			"ping then probably cool to 1, due: run/12/probably-cool/1",
		},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, due(tt.told.run(t, pot()).Wants(pot()))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// Called off, a cooker stays hot: the flame is asked after, then the pressure.
func TestCalledOffHot(t *testing.T) {
	hot := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("10:30", jo, CalledOff{}) }
	tests := []struct {
		name string
		told *teller
		want string
	}{
		{"never lit", begun().say("09:30", ana, CalledOff{}), ""},
		{"at pressure", hot(), "ping 10:35 still hot to 1, guard: run/12/still-hot/1, 10:40, 10:45, 10:50 everybody"},
		{"the flame is off", hot().say("10:33", ana, HeatOff{}), "ping 11:18 check zero to 1, guard: run/12/zero/1, 11:38, 11:58, 12:13 everybody"},
		{"so says a tap", hot().say("10:36", ana, PingAnswered{"run/12/still-hot/1", AnswerDone}), "ping 11:21 check zero to 1, guard: run/12/zero/1, 11:41, 12:01, 12:16 everybody"},
		{"down", hot().say("10:33", ana, HeatOff{}).say("11:20", ana, AtZero{}), ""},
		{
			"off before it was called off",
			begun().say("10:00", ana, AtPressure{}).say("10:30", jo, HeatOff{}).say("10:40", ana, CalledOff{}),
			"ping 11:15 check zero to 1, guard: run/12/zero/1, 11:35, 11:55, 12:10 everybody",
		},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, due(tt.told.run(t, pot()).Wants(pot()))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// Who is not answered asks on: everybody, at growing gaps, for half a day. A flame
// that was lit, a weight that was put on and a pressure that was lost are asked after
// twice before; the cook of a pot that vents has two calls within ten minutes.
func TestForgotten(t *testing.T) {
	lit := func() *teller { return begun().say("09:00", ana, HeatOn{}) }
	rising := func() *teller { return begun().say("09:50", ana, VentClosed{}) }
	vents := func() *teller { return begun().say("09:50", ana, Steam{}) }
	lost := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("10:20", ana, PressureLost{}) }
	simmers := func() *teller { return begun().say("09:00", ana, PrepBegun{Simmering}) }
	tests := []struct {
		name string
		told *teller
		kind PingKind
		want string
	}{
		{"hold over", begun().say("10:00", ana, AtPressure{}), WhoIsThere, "11:45 12:00 12:30 13:30 15:30 17:30 19:30 21:30 23:30"},
		{"at zero", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}), WhoIsThere, "13:10 13:40 14:40 16:40 18:40 20:40 22:40"},
		{"called off hot", rising().say("10:00", jo, CalledOff{}), WhoIsThere, "10:20 10:35 11:05 12:05 14:05 16:05 18:05 20:05 22:05"},
		{"steam", lit(), SteamYet, "09:40 10:10"},
		{"steam, not yet", lit().say("09:41", ana, PingAnswered{"run/12/steam-yet/1", AnswerNotYet}), SteamYet, "09:56 10:26"},
		{"pressure", rising(), PressureYet, "10:10 10:40"},
		{"pressure, after steam again", rising().say("10:00", ana, Steam{}).say("10:10", ana, VentClosed{}), PressureYet, "10:30 11:00"},
		{"steam, and it came", lit().say("09:41", ana, PingAnswered{"run/12/steam-yet/1", AnswerDone}), VentOver, "09:51 10:01"},
		{"steam, everybody", lit(), WhoIsThere, "11:10 12:10 14:10 16:10 18:10 20:10"},
		{"weight on", vents(), VentOver, "10:00 10:10"},
		{"weight on, everybody", vents(), WhoIsThere, "10:30 10:50 11:30 12:50 14:50 16:50 18:50 20:50"},
		{"weight on, not yet", vents().say("10:03", ana, PingAnswered{"run/12/vent-over/1", AnswerNotYet}), VentOver, "10:08 10:18"},
		{"weight is on", vents().say("10:05", ana, VentClosed{}), VentOver, ""},
		{"simmering", simmers(), PrepOver, "09:45 09:55"},
		{"simmering, everybody", simmers(), WhoIsThere, "10:15 10:35 11:15 12:35 14:35 16:35 18:35 20:35"},
		{
			"simmering, not yet, twice", simmers().say("09:46", ana, PingAnswered{"run/12/prep/1", AnswerNotYet}).
				say("10:02", jo, PingAnswered{"run/12/prep/1", AnswerNotYet}), PrepOver, "10:17 10:27",
		},
		{"simmering is over", simmers().say("09:50", ana, PrepEnded{Simmering}), PrepOver, ""},
		{"simmering is over by a tap", simmers().say("10:16", jo, PingAnswered{"run/12/prep/1/again/2", AnswerDone}), WhoIsThere, ""},
		{"simmered, and lit", simmers().say("09:50", ana, HeatOn{}), PrepOver, ""},
		{"called off while it simmers", simmers().say("09:20", ana, CalledOff{}), StillHot, "09:25 09:30 09:35"},
		{"called off, the simmer is off", simmers().say("09:20", ana, CalledOff{}).say("09:26", ana, HeatOff{}), StillHot, ""},
		{"lost", lost(), PressureYet, "10:40 11:10"},
		{"lost, everybody", lost(), WhoIsThere, "12:10 13:10 15:10 17:10 19:10 21:10"},
		{"lost, the flame is off", lost().say("10:25", ana, HeatOff{}), PressureYet, ""},
		{"lost, and back by a tap", lost().say("10:41", ana, PingAnswered{"run/12/pressure-back/1", AnswerDone}), HoldOver, "12:11 12:16 12:21"},
		{"lost again", lost().say("10:30", ana, PressureBack{}).say("10:50", ana, PressureLost{}), PressureYet, "11:10 11:40"},
	}
	for _, tt := range tests {
		var got []string
		for _, p := range tt.told.run(t, pot()).Wants(pot()) {
			if p.Kind == tt.kind {
				got = append(got, hm(p.Due))
			}
			if p.Loudness != GuardPing && p.Kind != HoldNearlyOver && p.Kind != WetGrainStands {
				t.Errorf("%s: %s is no guard", tt.name, p.Key)
			}
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, s, tt.want)
		}
	}
}

// Who took the run over while it is prepared has the pings of it.
func TestPreparedByAnother(t *testing.T) {
	jos := func() *teller { return begun().say("09:00", jo, PrepBegun{Simmering}) }
	for name, tt := range map[string]struct {
		told *teller
		to   MemberNo
	}{
		"jo prepares": {jos(), jo}, "mik took it": {jos().say("09:20", mik, TookOver{}), mik},
		"taken before": {begun().say("08:50", mik, TookOver{}).say("09:00", jo, PrepBegun{Simmering}), jo},
	} {
		if p := tt.told.run(t, pot()).Wants(pot())[0]; p.Kind != PrepOver || p.To != tt.to {
			t.Errorf("%s: %v to %d, want %d", name, p.Kind, p.To, tt.to)
		}
	}
}

func BenchmarkFoldRun(b *testing.B) {
	for _, n := range []int{10, 1000} {
		l := begun().say("10:00", ana, AtPressure{})
		for i := range n {
			at := clock("10:00").Add(time.Duration(i+1) * 5 * time.Second)
			l.records = append(l.records, Record{No: EntryNo(i + 3), By: ana, At: at, Written: at, Entry: GaugeRead{*psi(15)}})
		}
		s := pot()
		b.Run(map[int]string{10: "10 entries", 1000: "1000 entries"}[n], func(b *testing.B) {
			for b.Loop() {
				r, err := FoldRun(l.records, always(s))
				if err != nil || len(r.Wants(s)) == 0 {
					b.Fatal(err)
				}
			}
		})
	}
}
