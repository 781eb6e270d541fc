package kitchen

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
)

// shelfDay is midnight of a day of November 2026.
func shelfDay(d int) time.Time { return time.Date(2026, 11, d, 0, 0, 0, 0, time.UTC) }

func anyShelfUnit(t *rapid.T) ShelfUnit {
	day := func(name string) time.Time { return shelfDay(rapid.IntRange(-100, 30).Draw(t, name)) }
	u := ShelfUnit{Begun: day("begun"), Cool: day("cool"), Arrived: rapid.Bool().Draw(t, "arrived")}
	u.Ref = UnitRef{Run: RunNo(rapid.IntRange(1, 30).Draw(t, "run")), Unit: UnitNo(rapid.IntRange(1, 9).Draw(t, "unit"))}
	u.State, u.Since = rapid.SampledFrom(UnitStates()).Draw(t, "state"), day("since")
	u.Container = rapid.SampledFrom([]Container{{Vessel: Jar, Volume: 1}, {Vessel: Jar, Volume: 0.5}, {Vessel: Bag, Weight: 2000}}).Draw(t, "container")
	u.Place = rapid.SampledFrom([]string{"", "fridge", "shelf 2"}).Draw(t, "place")
	u.Grain = rapid.SampledFrom([]grain.Kind{0, grain.Rye, grain.Oats}).Draw(t, "grain")
	if u.Cultured = u.State != UnitCooked; u.Cultured {
		u.Culture = rapid.SampledFrom([]string{"", "plate 7", "oyster"}).Draw(t, "culture")
		u.Species = rapid.SampledFrom([]string{"", "oyster", "Oyster", "shiitake", "blue oyster"}).Draw(t, "species")
		u.Inoculated = day("inoculated")
	} else {
		u.Blank = rapid.Bool().Draw(t, "blank")
	}
	return u
}

// TestShelfGroups holds that every unit that stands is in one group, that the counts add
// up, and that in each the oldest comes first.
func TestShelfGroups(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units, now := rapid.SliceOfN(rapid.Custom(anyShelfUnit), 0, 40).Draw(t, "units"), shelfDay(25)
		s := ShelfOf(units, now)
		standing, grouped, byPart := 0, 0, 0
		for _, u := range units {
			if u.State.Stands() {
				standing++
			}
		}
		for _, g := range s.Groups {
			grouped += len(g.Units)
			for i, u := range g.Units {
				part, ok := u.Part(now)
				if !ok || part != g.Part || u.Container != g.Container {
					t.Fatalf("%s %s stands among %s %v", u.Ref, u.State, g.Part, g.Container)
				}
				if i > 0 && u.Aged().Before(g.Units[i-1].Aged()) {
					t.Errorf("%s stands behind a younger one", u.Ref)
				}
			}
		}
		for i, g := range s.Groups {
			for _, other := range s.Groups[:i] {
				if g.Part == other.Part && g.Container == other.Container && sameName(g.Species, other.Species) {
					t.Errorf("two groups of %s %s %v", g.Part, g.Species, g.Container)
				}
			}
		}
		for _, p := range ShelfParts() {
			byPart += s.Count(p)
		}
		if grouped != standing || byPart != standing || s.Count() != standing {
			t.Errorf("%d units stand; %d are in groups, %d in parts, %d are counted", standing, grouped, byPart, s.Count())
		}
	})
}

// TestShelfOnly holds that what is looked for and the rest are all, for each state.
func TestShelfOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SliceOfN(rapid.Custom(anyShelfUnit), 0, 40).Draw(t, "units")
		jars := ShelfOnly{Container: Container{Vessel: Jar}}.Of(units)
		bags := ShelfOnly{Container: Container{Vessel: Bag}}.Of(units)
		if len(jars)+len(bags) != len(units) {
			t.Errorf("%d jars and %d bags of %d units", len(jars), len(bags), len(units))
		}
		for _, u := range (ShelfOnly{Grain: grain.Rye, Usual: grain.Rye}).Of(units) {
			if u.Grain == grain.Oats {
				t.Errorf("%s of oats counts as rye", u.Ref)
			}
		}
		for _, u := range (ShelfOnly{Place: "the Fridge"}).Of(units) {
			if u.Place != "fridge" {
				t.Errorf("%s stands in %q", u.Ref, u.Place)
			}
		}
		if all := (ShelfOnly{}).Of(units); len(all) != len(units) {
			t.Errorf("nothing looked for lets through %d of %d", len(all), len(units))
		}
	})
}

func TestShelfDue(t *testing.T) {
	jarOf := func(s UnitState, since int) ShelfUnit {
		u := ShelfUnit{Cool: shelfDay(since), Begun: shelfDay(since)}
		u.Ref, u.State, u.Since, u.Container = UnitRef{Run: 1, Unit: 1}, s, shelfDay(since), Container{Vessel: Jar, Volume: 1}
		u.Cultured, u.Inoculated, u.Species = s != UnitCooked, shelfDay(since), "oyster"
		return u
	}
	bag := jarOf(UnitCooked, 2)
	bag.Container = Container{Vessel: Bag, Weight: 2000}
	chilled := jarOf(UnitGrown, 2)
	chilled.Place = "the beer fridge"
	blank := jarOf(UnitCooked, -90)
	blank.Blank = true
	hot := jarOf(UnitCooked, 26)
	for name, c := range map[string]struct {
		unit ShelfUnit
		part ShelfPart
		due  ShelfDue
	}{
		"cooked three weeks":             {jarOf(UnitCooked, 2), ShelfCooked, 0},
		"cooked a month":                 {jarOf(UnitCooked, -7), ShelfCooked, DueCheck},
		"cooked three months":            {jarOf(UnitCooked, -70), ShelfCooked, DueUse},
		"a bag of three weeks":           {bag, ShelfCooked, DueCheck},
		"a blank of three months":        {blank, ShelfBlank, 0},
		"still hot":                      {hot, ShelfCooling, 0},
		"inoculated yesterday":           {jarOf(UnitInoculated, 24), ShelfInoculated, 0},
		"growing for six weeks":          {jarOf(UnitGrowing, -17), ShelfGrowing, DueGrown},
		"grown through for a week":       {jarOf(UnitGrown, 18), ShelfReady, 0},
		"grown through for three weeks":  {jarOf(UnitGrown, 2), ShelfReady, DueUse},
		"the same, in the fridge":        {chilled, ShelfReady, 0},
		"suspect":                        {jarOf(UnitSuspect, 24), ShelfSuspect, DueLookAgain},
		"contaminated and still there":   {jarOf(UnitContaminated, 24), ShelfLost, DueThrowOut},
		"dead, and nobody threw it out":  {jarOf(UnitDead, 24), ShelfLost, DueThrowOut},
		"thrown out, which asks nothing": {jarOf(UnitDiscarded, 24), 0, 0},
	} {
		now := shelfDay(25)
		if part, _ := c.unit.Part(now); part != c.part || c.unit.Due(now) != c.due {
			t.Errorf("%s: %s, %s; want %s, %s", name, part, c.unit.Due(now), c.part, c.due)
		}
	}
}

// TestFirst holds that what keeps least long is used first: of two grown jars that in
// the warm before the older one in the fridge.
func TestFirst(t *testing.T) {
	jarAt := func(no UnitNo, since int, place string) ShelfUnit {
		u := ShelfUnit{}
		u.Ref, u.State, u.Since, u.Place, u.Cultured, u.Species = UnitRef{Run: 1, Unit: no}, UnitGrown, shelfDay(since), place, true, "oyster"
		return u
	}
	s := ShelfOf([]ShelfUnit{jarAt(1, 3, "fridge"), jarAt(2, 8, ""), jarAt(3, 6, "")}, shelfDay(12))
	var got []UnitNo
	for _, u := range s.First(ShelfReady) {
		got = append(got, u.Ref.Unit)
	}
	if want := []UnitNo{3, 2, 1}; !cmp.Equal(got, want) {
		t.Errorf("used in the order %v, want %v", got, want)
	}
}

// TestShelfKeepsAsPingsDo holds that the shelf counts the same days for spawn, by the name
// of its place and what grows, as the ping that asks for a decision.
func TestShelfKeepsAsPingsDo(t *testing.T) {
	for _, place := range []string{"", "shelf 2", "cooked shelf", "fridge", "Ana's fridge", "mini-fridge", "wine chiller", "the cooler", "cold room"} {
		for _, species := range []string{"oyster", "pink oyster", "shiitake"} {
			u := Unit{State: UnitGrown, Since: shelfDay(2), Place: place, Cultured: true, Species: species}
			u.Steps = []UnitStep{{Kind: SaidGrownThrough, At: u.Since, Seen: true}}
			k, e := u.keeps(), ShelfUnit{Unit: u}.Expected()
			if !k.surely.Equal(e.Look) || !k.until.Equal(e.By) {
				t.Errorf("%s in %q: the shelf says %s to %s, the ping %s to %s", species, place, e.Look, e.By, k.surely, k.until)
			}
		}
	}
}
