package kitchen

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

func growing(species string, c Container, r Route) Unit {
	return Unit{
		Ref: UnitRef{12, 1}, Container: c, State: UnitInoculated, Cultured: true, Inoculated: clock("09:00"),
		Culture: "plate 7", Species: species, Route: r, Left: 1,
	}
}

// after prints when something is expected in days: 10.6 (8.0 to 14.0).
func (e Expected) after(at time.Time) string {
	days := func(t time.Time) float64 { return t.Sub(at).Hours() / 24 }
	return fmt.Sprintf("%.1f (%.1f to %.1f) of %d", days(e.About), days(e.From), days(e.To), e.Runs)
}

// The figures by hand, from the table of species and the factors beside it.
func TestGrowthOf(t *testing.T) {
	cold := unit.Celsius(19) // 3 under 22: 1.07^3 = 1.225
	for _, tt := range []struct {
		name, species string
		in            Container
		by            Route
		room          *unit.Celsius
		shake, want   string
	}{
		{"a quart, as the table", "oyster", jar(1), LiquidCulture, nil, "4.2 (3.0 to 6.0) of 0", "10.6 (8.0 to 14.0) of 0"},
		{"a variety", "Blue Oyster", jar(1), LiquidCulture, nil, "4.2 (3.0 to 6.0) of 0", "10.6 (8.0 to 14.0) of 0"},
		{"a bag, as the table", "oyster", bag(5), LiquidCulture, nil, "4.2 (3.0 to 6.0) of 0", "14.7 (12.0 to 18.0) of 0"},
		{"agar, a quarter longer", "oyster", jar(1), Agar, nil, "5.3 (3.8 to 7.5) of 0", "13.2 (10.0 to 17.5) of 0"},
		{"grain, a quarter less", "oyster", jar(1), GrainToGrain, nil, "3.2 (2.2 to 4.5) of 0", "7.9 (6.0 to 10.5) of 0"},
		{"spores", "oyster", jar(1), Spores, nil, "6.4 (4.5 to 9.0) of 0", "15.9 (12.0 to 21.0) of 0"},
		{"a colder room", "oyster", jar(1), LiquidCulture, &cold, "5.2 (3.7 to 7.4) of 0", "13.0 (9.8 to 17.2) of 0"},
		{"cold, but not to enoki", "enoki", jar(1), LiquidCulture, &cold, "6.3 (5.0 to 8.0) of 0", "16.7 (14.0 to 20.0) of 0"},
		{"no column for bags", "golden oyster", bag(5), 0, nil, "4.2 (3.0 to 6.0) of 0", "13.8 (10.4 to 18.2) of 0"},
		{"a name that nobody knows", "velvet foot of ours", jar(1), 0, nil, "6.7 (5.0 to 9.0) of 0", "15.9 (12.0 to 21.0) of 0"},
	} {
		g, ok := GrowthOf(growing(tt.species, tt.in, tt.by), nil, Settings{Room: tt.room})
		if !ok {
			t.Fatalf("%s: nothing expected", tt.name)
		}
		if got := g.Shake.after(clock("09:00")); got != tt.shake {
			t.Errorf("%s: shake %s, want %s", tt.name, got, tt.shake)
		}
		if got := g.Through.after(clock("09:00")); got != tt.want {
			t.Errorf("%s: through %s, want %s", tt.name, got, tt.want)
		}
		if longer := float64(g.Unshaken.About.Sub(clock("09:00"))) / float64(g.Through.About.Sub(clock("09:00"))); math.Abs(longer-4.0/3) > 1e-6 {
			t.Errorf("%s: unshaken %.3f times as long", tt.name, longer)
		}
		if _, known := SpeciesNamed(tt.species); g.Known != known || g.Named != tt.species {
			t.Errorf("%s: known %v, named %q", tt.name, g.Known, g.Named)
		}
	}
}

func TestGrowthOfNothing(t *testing.T) {
	is := func(change func(*Unit)) Unit {
		u := growing("oyster", jar(1), Agar)
		change(&u)
		return u
	}
	for name, u := range map[string]Unit{
		"no date":       is(func(u *Unit) { u.Inoculated = time.Time{} }),
		"blank":         is(func(u *Unit) { u.Blank = true }),
		"cooked":        is(func(u *Unit) { u.State = UnitCooked }),
		"through":       is(func(u *Unit) { u.State = UnitGrown }),
		"used":          is(func(u *Unit) { u.State = UnitUsed }),
		"contaminated":  is(func(u *Unit) { u.State = UnitContaminated }),
		"filled":        sealed().day(9, "09:00", jo, GrowthSeen{ones(1), 0.2}).units(t).All[0],
		"arrived today": arrived(t, Arrived{Run: 13, Order: order(Item{Count: 1, Container: jar(1)}), Culture: "oyster"}).All[0],
	} {
		if g, ok := GrowthOf(u, nil, Settings{}); ok {
			t.Errorf("%s: %+v", name, g)
		}
	}
	dated := arrived(t, Arrived{Run: 13, Order: order(Item{Count: 1, Container: jar(1)}), Culture: "oyster", Since: clock("08:00")}).All[0]
	if g, ok := GrowthOf(dated, nil, Settings{}); !ok || g.Through.after(clock("08:00")) != "10.6 (8.0 to 14.0) of 0" {
		t.Errorf("arrived with its date: %+v %v", g, ok)
	}
}

func arrived(t testing.TB, e Arrived) Units {
	t.Helper()
	u, err := FoldArrived((&teller{}).say("10:00", ana, e).records)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// A shake on the day of inoculating mixes; one later is the first.
func TestGrowthShaken(t *testing.T) {
	l := sealed().say("21:00", ana, Inoculated{Units: ones(1, 2), Species: "oyster"}).say("21:10", ana, Shaken{ones(1, 2)})
	u := l.units(t).All[0]
	g, _ := GrowthOf(u, nil, Settings{})
	if g.Shaken || g.ThroughAt(g.Shake.To.Add(time.Hour)) != g.Unshaken || g.ThroughAt(g.Shake.From) != g.Through {
		t.Errorf("%+v", g)
	}
	u = l.day(6, "10:00", jo, Shaken{ones(1)}).units(t).All[0]
	if g, _ = GrowthOf(u, nil, Settings{}); !g.Shaken || g.ThroughAt(g.Shake.To.Add(time.Hour)) != g.Through {
		t.Errorf("%+v", g)
	}
}

func TestGrownIsRecorded(t *testing.T) {
	l := sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3), Culture: "plate 7", Species: "oyster", Route: Agar}).
		day(6, "10:00", jo, Shaken{ones(1)}).day(8, "10:00", jo, Shaken{ones(1)}).
		day(13, "10:00", jo, GrownThrough{ones(1, 2, 3)}).day(14, "10:00", jo, GrowthSeen{ones(1), 0.8}).day(15, "10:00", jo, GrownThrough{ones(1)}).
		day(15, "10:00", jo, SignSeen{ones(3), GreenMould}).day(15, "11:00", jo, GrownThrough{ones(4)})
	var got []Grown
	for _, u := range l.units(t).All {
		if g, ok := u.Grown(); ok {
			got = append(got, g)
		}
	}
	at := func(d int, hhmm string) time.Time { return clock(hhmm).AddDate(0, 0, d-1) }
	one := Grown{Unit: UnitRef{12, 1}, Species: "oyster", Container: jar(1), Route: Agar, Inoculated: at(1, "21:00"), Shaken: at(5, "10:00"), Through: at(12, "10:00")}
	two := one
	two.Unit, two.Shaken = UnitRef{12, 2}, time.Time{}
	if diff := cmp.Diff([]Grown{one, two}, got); diff != "" {
		t.Error(diff)
	}
}

func grown(run RunNo, species string, in Container, by Route, days float64) Grown {
	at := clock("09:00").AddDate(0, -3, 0)
	day := func(n float64) time.Time { return at.Add(time.Duration(n * 24 * float64(time.Hour))) }
	return Grown{Unit: UnitRef{run, 1}, Species: species, Container: in, Route: by, Inoculated: at, Shaken: day(days / 3), Through: day(days)}
}

// Their own record counts as soon as there is one run of the species, whatever it was
// grown in.
func TestGrowthFromRecord(t *testing.T) {
	usual, _ := GrowthOf(growing("oyster", jar(1), LiquidCulture), nil, Settings{})
	about := func(past ...Grown) (float64, int) {
		g, _ := GrowthOf(growing("oyster", jar(1), LiquidCulture), past, Settings{})
		return g.Through.About.Sub(clock("09:00")).Hours() / 24, g.Runs()
	}
	one, runs := about(grown(3, "blue oyster", jar(1), LiquidCulture, 16))
	if before := usual.Through.About.Sub(clock("09:00")).Hours() / 24; runs != 1 || one < before+2 || one > 16 {
		t.Errorf("one run of 16 days: %.1f of %d", one, runs)
	}
	if same, runs := about(grown(3, "shiitake", jar(1), LiquidCulture, 30)); runs != 0 || math.Abs(same-10.583) > 0.01 {
		t.Errorf("another species: %.2f of %d", same, runs)
	}
	// 16 days by agar are 12.8 by liquid culture, and a bag takes 1.389 times as long.
	agar, _ := about(grown(3, "oyster", jar(1), Agar, 20))
	bagged, _ := about(grown(3, "oyster", bag(5), LiquidCulture, 16*math.Sqrt(12*18/8.0/14)))
	still := grown(3, "oyster", jar(1), LiquidCulture, 16*4.0/3)
	still.Shaken = time.Time{}
	alone, _ := about(still)
	still.Shaken = still.Inoculated.Add(time.Hour)
	mixed, _ := about(still)
	for name, got := range map[string]float64{"agar": agar, "a bag": bagged, "unshaken": alone, "mixed": mixed} {
		if math.Abs(got-one) > 0.01 {
			t.Errorf("%s: about %.2f, want %.2f", name, got, one)
		}
	}
	if named, runs := about(grown(12, "oyster", jar(1), LiquidCulture, 16)); runs != 0 {
		t.Errorf("it learnt from itself: %.1f of %d", named, runs)
	}
	g, _ := GrowthOf(growing("our own", jar(1), 0), []Grown{grown(4, "Our own", jar(1), 0, 9)}, Settings{})
	if g.Runs() != 1 || g.Known {
		t.Errorf("a name of their own: %+v", g)
	}
}

func TestGrowthProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom(append(SpeciesNames(), "blue oyster", "anything")).Draw(rt, "species")
		var past []Grown
		for run := range rapid.IntRange(0, 4).Draw(rt, "runs") {
			past = append(past, grown(RunNo(run+1), name, bag(3), Agar, rapid.Float64Range(5, 60).Draw(rt, "days")))
		}
		of := func(c Container, r Route, s Settings) Growth {
			g, ok := GrowthOf(growing(name, c, r), past, s)
			if !ok || !g.Through.From.Before(g.Through.About) || !g.Through.About.Before(g.Through.To) || !g.Shake.From.Before(g.Shake.To) {
				rt.Fatalf("%v %+v", ok, g)
			}
			return g
		}
		small, big := rapid.Float64Range(0.5, 8).Draw(rt, "lb"), rapid.Float64Range(1, 2).Draw(rt, "times")
		a, b := of(bag(small), LiquidCulture, Settings{}), of(bag(small*big), LiquidCulture, Settings{})
		if b.Through.About.Before(a.Through.About) {
			rt.Errorf("a bag %.2f times as big is quicker", big)
		}
		grain, agar := of(bag(small), GrainToGrain, Settings{}), of(bag(small), Agar, Settings{})
		less := 1 - float64(grain.Through.About.Sub(clock("09:00")))/float64(agar.Through.About.Sub(clock("09:00")))
		if less < 0.3 || less > 0.5 || !a.Through.About.After(grain.Through.About) || !a.Through.About.Before(agar.Through.About) {
			rt.Errorf("grain to grain %.2f quicker than agar, liquid culture between", less)
		}
		room := unit.Celsius(rapid.Float64Range(10, 30).Draw(rt, "room"))
		if c := of(bag(small), LiquidCulture, Settings{Room: &room}); c.Through.About.Before(a.Through.About) {
			rt.Errorf("quicker at %v", room)
		}
	})
}

// What an expectation comes from gives it again: usual, times the factors, is the range
// where nothing grew before; each own run is named once.
func TestGrowthBy(t *testing.T) {
	room := unit.Celsius(19) // 3 under 22: 1.07^3 = 1.225
	u := growing("oyster", jar(1), Agar)
	g, _ := GrowthOf(u, nil, Settings{Room: &room})
	if got := fmt.Sprintf("%.3f %.3f %.3f %v %v", g.By.Route, g.By.Cold, g.By.Unshaken, g.By.RoomTold, g.By.Runs); got != "1.250 1.225 1.333 true []" {
		t.Errorf("comes from %s", got)
	}
	if from := u.Inoculated.Add(g.By.Usual.Times(g.By.Route * g.By.Cold).From); from.Sub(g.Through.From).Abs() > time.Minute {
		t.Errorf("from %v, its working says %v", g.Through.From, from)
	}
	var past []Grown
	for _, ref := range []UnitRef{{9, 2}, {7, 1}, {9, 1}} {
		past = append(past, Grown{Unit: ref, Species: "oyster", Container: jar(1), Inoculated: clock("09:00"), Through: clock("09:00").AddDate(0, 0, 12)})
	}
	past = append(past, Grown{Unit: UnitRef{5, 1}, Species: "enoki", Container: jar(1), Inoculated: clock("09:00"), Through: clock("09:00").AddDate(0, 0, 12)})
	g, _ = GrowthOf(u, past, Settings{})
	if diff := cmp.Diff([]RunNo{7, 9}, g.By.Runs); diff != "" || g.By.RoomTold {
		t.Errorf("rests on other runs (-want +got):\n%s", diff)
	}
}
