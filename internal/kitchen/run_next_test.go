package kitchen

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/unit"
)

func TestNext(t *testing.T) {
	soaks := pot(MethodIs{Vessel: Jar, Method: Soaked})
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	tests := []struct {
		name    string
		kitchen Settings
		told    *teller
		want    string // the first two
	}{
		{"put on", pot(), begun(), "heat on, water put in"},
		{"put on, to be soaked", soaks, begun(), "heat on, preparation begun soaking"},
		{"soaking", soaks, begun().say("09:10", jo, PrepBegun{Soaking}), "preparation ended soaking, preparation begun simmering"},
		{"drying over", soaks, begun().say("09:10", jo, PrepBegun{Drying}).say("09:50", jo, PrepEnded{}), "heat on, water put in"},
		{"heating", pot(), begun().say("09:10", ana, HeatOn{}), "steam, water put in"},
		{"venting", pot(), begun().say("09:10", ana, Steam{}), "vent closed, gauge read"},
		{"rising", pot(), begun().say("09:10", ana, VentClosed{}), "at pressure, gauge read"},
		{"at pressure", pot(), held(), "heat off, lost pressure"},
		{"lost", pot(), held().say("10:10", ana, PressureLost{}), "back at pressure, heat off"},
		{"falling", pot(), held().say("11:30", ana, HeatOff{}), "zero, gauge read"},
		{"cooling", pot(), held().say("12:30", ana, AtZero{}), "out of the pot, temperature read"},
		{"out", pot(), held().say("12:30", ana, OutOfPot{}), "temperature read, water left"},
		{"called off hot", pot(), held().say("10:10", ana, CalledOff{}), "heat off, zero"},
		{"called off and down", pot(), held().say("10:10", ana, CalledOff{}).say("10:20", ana, HeatOff{}).say("11:00", ana, AtZero{}), "out of the pot, water left"},
	}
	for _, tt := range tests {
		var words []string
		r := tt.told.run(t, tt.kitchen)
		for _, c := range r.Next() {
			w := c.Kind.String()
			if c.Prep != 0 {
				w += " " + c.Prep.String()
			}
			words = append(words, w)
		}
		if got := strings.Join(words[:min(2, len(words))], ", "); got != tt.want {
			t.Errorf("%s: next %s, want %s", tt.name, got, tt.want)
		}
	}
}

// How deep a loss went is only offered while it can be told.
func TestDepthIsOfferedLate(t *testing.T) {
	offers := func(l *teller) bool {
		return slices.ContainsFunc(l.run(t, pot()).Next(), func(c Choice) bool { return c.Kind == KindDipped })
	}
	if offers(begun().say("12:30", ana, AtZero{})) {
		t.Error("offered where nothing was lost")
	}
	if !offers(begun().say("10:00", ana, PressureLost{}).say("12:30", ana, AtZero{})) {
		t.Error("not offered while nobody knows")
	}
}

func TestFreesCooker(t *testing.T) {
	for _, tt := range []struct {
		name string
		told *teller
		now  string
		want string
	}{
		{"at pressure: 90 and 45 min", begun().say("10:00", ana, AtPressure{}), "10:10", "12:15"},
		{"overdue", begun().say("10:00", ana, AtPressure{}), "12:00", "12:45"},
		{"lost: 5, 90 and 45 min from now", begun().say("10:00", ana, PressureLost{}), "10:10", "12:30"},
		{"heating at 9:10: 25, 10, 5, 90 and 45 min", begun().say("09:10", ana, HeatOn{}), "09:20", "12:05"},
		{"falling", begun().say("10:00", ana, HeatOff{}), "10:10", "10:45"},
		{"it was opened", begun().say("09:10", ana, HeatOff{}).say("10:00", ana, AtZero{}), "12:00", "10:00"},
	} {
		if got, ok := tt.told.run(t, pot()).FreesCooker(clock(tt.now)); !ok || !got.Equal(clock(tt.want)) {
			t.Errorf("%s: %s %v, want %s", tt.name, hm(got), ok, tt.want)
		}
	}
	if _, ok := begun().run(t, pot()).FreesCooker(clock("10:00")); ok {
		t.Error("a run that isn't lit holds no cooker")
	}
}

// A person with wet hands can do a whole run by the first button alone.
func TestARunByTheFirstButton(t *testing.T) {
	say := map[Kind]RunEntry{
		KindHeatOn: HeatOn{}, KindSteam: Steam{}, KindVentClosed: VentClosed{}, KindAtPressure: AtPressure{}, KindHeatOff: HeatOff{},
		KindAtZero: AtZero{}, KindOutOfPot: OutOfPot{}, KindTempRead: TempRead{Temp: 26, Where: Middle},
	}
	r := begun().run(t, pot())
	for at := clock("09:10"); r.Stage != StageCool; at = at.Add(100 * time.Minute) {
		next := r.Next()[0].Kind
		var err error
		if r, err = r.Apply(Record{By: ana, At: at, Written: at, Entry: say[next]}, pot()); err != nil {
			t.Fatalf("%v after %v: %v", next, r.Stage, err)
		}
	}
	if len(r.Steps) != 9 || slices.ContainsFunc(r.Steps, func(s Step) bool { return !s.Seen }) || r.Off[0].Outcome != Held {
		t.Errorf("steps %+v, off %+v", r.Steps, r.Off)
	}
}

func TestBoard(t *testing.T) {
	numbered := func(no RunNo, l *teller) Run {
		b := l.records[0].Entry.(RunBegun)
		b.Run = no
		if no == 4 {
			b.Cook, b.Cooker = 0, "small pot"
		}
		l.records[0].Entry = b
		return l.run(t, pot(CookerIs{Name: "small pot"}))
	}
	runs := []Run{
		numbered(1, begun().say("12:00", ana, AtZero{}).say("13:00", jo, TempRead{Temp: 70})),
		numbered(2, begun().say("09:10", ana, PrepBegun{Draining})),
		numbered(3, begun().say("11:45", ana, AtPressure{})),
		numbered(4, begun().say("13:00", ana, Steam{})),
		numbered(5, begun().say("09:10", ana, CalledOff{})),
		numbered(6, begun().say("11:00", ana, AtPressure{}).say("13:01", ana, TookOver{Member: mik}).say("13:02", ana, HeatOff{})),
	}
	var got []string
	for _, row := range Board(runs, clock("13:20")) {
		line := fmt.Sprintf("%v %d %s, %v: %v", row.Run, row.Cook, row.Cooker, row.Stage, row.Left)
		if row.Newest != nil {
			line = fmt.Sprintf("%v %d %s, %v: a forecast, %v", row.Run, row.Cook, row.Cooker, row.Stage, row.Newest.Temp)
		}
		got = append(got, line)
	}
	want := []string{
		"#4 0 small pot, venting: -10m0s", "#3 1 big pot, at pressure: -5m0s", "#6 3 big pot, falling: 27m0s",
		"#2 1 big pot, preparing: -3h40m0s", "#1 1 big pot, cooling: a forecast, 70",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("board (-want +got):\n%s", diff)
	}
}

// A hand-over changes nothing until it is accepted.
func TestHandOver(t *testing.T) {
	offered := begun().say("10:00", ana, AtPressure{}).say("10:10", ana, HandOffered{To: jo})
	if r := offered.run(t, pot()); r.Cook != ana || r.Offered != jo {
		t.Errorf("offered: cook %d, offered %d", r.Cook, r.Offered)
	}
	r := offered.say("10:12", jo, HandAccepted{}).run(t, pot())
	if p := r.Wants(pot())[0]; r.Cook != jo || r.Offered != 0 || p.To != jo {
		t.Errorf("accepted: cook %d, offered %d, ping to %d", r.Cook, r.Offered, p.To)
	}
	if r := begun().say("10:10", ana, TookOver{Member: mik}).run(t, pot()); r.Cook != mik {
		t.Errorf("taken over by %d", r.Cook)
	}
}

// Four bags and four quarts in a pot of seven quarts or three 5 lb bags: two loads,
// and the second one asks for the water.
func TestOrders(t *testing.T) {
	p := mustWork(t, pot(), order(Item{Count: 4, Container: bag(5), Route: Agar}, Item{Count: 1, Container: jar(1), Route: LiquidCulture}, Item{Count: 3, Container: jar(1), Route: Agar}))
	want := []Order{
		{Cooker: "big pot", Items: []Item{{Count: 3, Container: bag(5), Route: Agar}}},
		{Cooker: "big pot", Items: []Item{{Count: 1, Container: bag(5), Route: Agar}, {Count: 1, Container: jar(1), Route: LiquidCulture}, {Count: 3, Container: jar(1), Route: Agar}}},
	}
	if diff := cmp.Diff(want, p.Orders()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	five := mustWork(t, pot(), order(Item{Count: 4, Container: bag(5), Route: Agar}, Item{Count: 1, Container: bag(5), Route: LiquidCulture}))
	want5 := []Item{{Count: 1, Container: bag(5), Route: Agar}, {Count: 1, Container: bag(5), Route: LiquidCulture}}
	if diff := cmp.Diff(want5, five.Orders()[1].Items); diff != "" {
		t.Errorf("what is left of five bags (-want +got):\n%s", diff)
	}
	second := Record{No: 1, At: clock("15:00"), Entry: RunBegun{Run: 13, Cooker: "big pot", Order: want[1], Cook: ana, Follows: 12}}
	r, err := FoldRun([]Record{second}, always(pot()))
	if err != nil || len(r.Asks()) != 1 || r.Asks()[0] != (Ask{HowMuchWater, 1}) || r.Units() != 5 {
		t.Errorf("second load asks %+v, has %d units, %v", r.Asks(), r.Units(), err)
	}
	r = r.With(Record{No: 2, At: clock("15:01"), Entry: WaterIn{Water: unit.Litres(3)}}, pot())
	if len(r.Asks()) != 0 {
		t.Errorf("topped up, and it asks %+v", r.Asks())
	}
}

// Whoever is not named is asked for.
func TestNobodyNamed(t *testing.T) {
	l := begun()
	b := l.records[0].Entry.(RunBegun)
	b.Cook = 0
	l.records[0].Entry = b
	r := l.say("10:00", jo, AtPressure{}).run(t, pot())
	if asks := r.Asks(); len(asks) != 1 || asks[0].What != WhoCooks {
		t.Errorf("asks %+v", asks)
	}
	for _, p := range r.Wants(pot()) {
		if p.To != 0 || p.Room != 7 {
			t.Errorf("%s goes to %d in room %d", p.Key, p.To, p.Room)
		}
	}
}

// Every stage can be reached, each kind of entry may follow somewhere, and the
// diagram is that of the table.
func TestDiagram(t *testing.T) {
	reached := map[Stage]bool{StagePlanned: true, StageCool: true}
	said := map[Kind]bool{KindRunBegun: true}
	for _, s := range Stages() {
		for _, m := range follows[s] {
			reached[m.to], said[m.kind] = true, true
		}
	}
	for _, s := range Stages() {
		if !reached[s] {
			t.Errorf("nothing leads to %v", s)
		}
	}
	for k := KindRunBegun; k <= KindPingAnswered; k++ {
		if !said[k] && !slices.Contains(anytime, k) {
			t.Errorf("%v follows nothing", k)
		}
		if k.String() == "" {
			t.Errorf("kind %d has no words", k)
		}
	}
	golden := filepath.Join("testdata", "run.mermaid")
	if *update {
		if err := os.WriteFile(golden, []byte(Diagram()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), Diagram()); diff != "" {
		t.Errorf("%s (-want +got), -update writes it:\n%s", golden, diff)
	}
}

var update = flag.Bool("update", false, "write the golden files anew")

// TestBagFilledDry: a bag that is called by the dry grain in it is larger wetted,
// and takes the course and the cooling of what is in it.
func TestBagFilledDry(t *testing.T) {
	cooking := func(basis Basis) Run {
		return begun(Item{Count: 2, Container: bag(4.5), Basis: basis}).say("10:00", ana, AtPressure{}).
			say("13:00", ana, HeatOff{}).say("14:00", ana, AtZero{}).run(t, pot())
	}
	wetted, dry := cooking(Wetted), cooking(DryBasis)
	if !(dry.course().Fall > wetted.course().Fall && dry.course().Heat > wetted.course().Heat) {
		t.Errorf("filled dry %+v, wetted %+v: want a slower course", dry.course(), wetted.course())
	}
	coolWetted, _ := wetted.ProbablyCool()
	coolDry, _ := dry.ProbablyCool()
	if !coolDry.After(coolWetted) {
		t.Errorf("filled dry it is cool by %v, wetted by %v: want it later", coolDry, coolWetted)
	}
}
