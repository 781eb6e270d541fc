package kitchen

import (
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
		{"nobody", falling(), "ping 12:15 check zero to 1, guard: run/12/zero/1, 12:35, 12:55"},
		{
			"not yet, three times",
			falling().say("12:16", jo, PingAnswered{"run/12/zero/1", AnswerNotYet}).say("12:37", jo, PingAnswered{"run/12/zero/1", AnswerNotYet}).
				say("13:00", ana, PingAnswered{"run/12/zero/1", AnswerNotYet}),
			"ping 13:20 check zero to 1, guard: run/12/zero/1, 13:40, 14:00",
		},
		{
			"jo has got it",
			falling().say("12:16", jo, PingAnswered{"run/12/zero/1", AnswerGotIt}),
			"ping 12:36 check zero to 2, guard: run/12/zero/1, 12:56, 13:16",
		},
		{"done", falling().say("12:16", jo, PingAnswered{"run/12/zero/1/again/1", AnswerDone}), "ping 3.3. 00:16 probably cool to 1, due: run/12/probably-cool/1, 3.3. 12:16"},
		{
			"a thumb changes nothing",
			held().say("11:31", ana, PingAnswered{"run/12/hold-over/1", AnswerSeen}),
			"ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\nping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody",
		},
		{
			"an answer to the hold before is none to this one",
			held().say("11:31", ana, PingAnswered{"run/12/hold-over/1", AnswerNotYet}).say("11:33", ana, PressureLost{}).
				say("11:35", ana, WaterIn{Water: 4}).say("11:40", ana, PressureBack{}),
			"ping 13:05 hold nearly over to 1, due: run/12/hold-nearly/2\nping 13:10 hold over to 1, guard: run/12/hold-over/2, 13:15, 13:20, 13:25 everybody",
		},
		{
			"short of water, and known to be",
			begun().say("09:50", ana, WaterIn{Water: 2.4}).say("10:00", ana, AtPressure{}).say("10:02", ana, PingAnswered{"run/12/water/1", AnswerNotYet}),
			"ping 11:25 hold nearly over to 1, due: run/12/hold-nearly/1\nping 11:30 hold over to 1, guard: run/12/hold-over/1, 11:35, 11:40, 11:45 everybody\n" +
				"ping 11:00 water short to 1, guard: run/12/water/1, 11:05, 11:10 everybody",
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
			"ping 22:25 probably cool to 1, due: run/12/probably-cool/1, 3.3. 10:25",
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
		{"the flame is off", hot().say("10:33", ana, HeatOff{}), "ping 11:18 check zero to 1, guard: run/12/zero/1, 11:38, 11:58"},
		{"so says a tap", hot().say("10:36", ana, PingAnswered{"run/12/still-hot/1", AnswerDone}), "ping 11:21 check zero to 1, guard: run/12/zero/1, 11:41, 12:01"},
		{"down", hot().say("10:33", ana, HeatOff{}).say("11:20", ana, AtZero{}), ""},
		{
			"off before it was called off",
			begun().say("10:00", ana, AtPressure{}).say("10:30", jo, HeatOff{}).say("10:40", ana, CalledOff{}),
			"ping 11:15 check zero to 1, guard: run/12/zero/1, 11:35, 11:55",
		},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, due(tt.told.run(t, pot()).Wants(pot()))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
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
