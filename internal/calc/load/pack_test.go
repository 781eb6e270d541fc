package load_test

import (
	"errors"
	"fmt"
	"math/big"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/load"
	"ryebell/internal/calc/unit"
)

type (
	capacity = load.Capacity[string]
	item     = load.Item[string]
	loaded   = load.Load[string]
)

// bigPot takes seven quarts or three 5 lb bags.
var bigPot = capacity{"quart": 7, "bag": 3, "pint": 18, "half gallon": 4}

func TestPack(t *testing.T) {
	for _, tc := range []struct {
		name     string
		items    []item
		capacity capacity
		want     []loaded
	}{
		{"nothing", nil, bigPot, nil},
		{"none of a class", []item{{"bag", 0}}, bigPot, nil},
		{"three bags", []item{{"bag", 3}}, bigPot, []loaded{{{"bag", 3}}}},
		{"a fourth bag", []item{{"bag", 4}}, bigPot, []loaded{{{"bag", 3}}, {{"bag", 1}}}},
		{
			"two bags leave room for two quarts",
			[]item{{"quart", 2}, {"bag", 2}},
			bigPot,
			[]loaded{{{"bag", 2}, {"quart", 2}}},
		},
		{
			"but not for three",
			[]item{{"quart", 3}, {"bag", 2}},
			bigPot,
			[]loaded{{{"bag", 2}, {"quart", 2}}, {{"quart", 1}}},
		},
		{
			"an exact fill",
			[]item{{"a", 1}, {"b", 1}, {"c", 1}},
			capacity{"a": 2, "b": 3, "c": 6},
			[]loaded{{{"a", 1}, {"b", 1}, {"c", 1}}},
		},
		{"forty-nine forty-ninths", []item{{"a", 49}}, capacity{"a": 49}, []loaded{{{"a", 49}}}},
		{
			"a class named twice",
			[]item{{"bag", 1}, {"quart", 1}, {"bag", 1}},
			bigPot,
			[]loaded{{{"bag", 2}, {"quart", 1}}},
		},
		{
			"equal sizes in the order said",
			[]item{{"z", 1}, {"a", 1}},
			capacity{"a": 4, "z": 4},
			[]loaded{{{"z", 1}, {"a", 1}}},
		},
		{
			"where large first alone takes three",
			[]item{{"half", 1}, {"third", 3}, {"quarter", 2}},
			capacity{"half": 2, "third": 3, "quarter": 4},
			[]loaded{{{"half", 1}, {"quarter", 2}}, {{"third", 3}}},
		},
	} {
		got, err := load.Pack(tc.items, tc.capacity)
		if diff := cmp.Diff(tc.want, got); diff != "" || err != nil {
			t.Errorf("%s: %v (-want +got):\n%s", tc.name, err, diff)
		}
	}
}

func TestRoom(t *testing.T) {
	for _, tc := range []struct {
		name  string
		load  loaded
		class string
		want  int
	}{
		{"an empty pot", nil, "quart", 7},
		{"beside two bags", loaded{{"bag", 2}}, "quart", 2},
		{"beside a bag", loaded{{"bag", 1}}, "quart", 4},
		{"beside quarts", loaded{{"quart", 2}}, "bag", 2},
		{"another of the same", loaded{{"bag", 2}}, "bag", 1},
		{"a full pot", loaded{{"bag", 3}}, "pint", 0},
		{"too much already", loaded{{"bag", 4}}, "pint", 0},
	} {
		got, err := load.Room(tc.load, tc.class, bigPot)
		if got != tc.want || err != nil {
			t.Errorf("%s: got %d %ss, %v, want %d", tc.name, got, tc.class, err, tc.want)
		}
	}
}

func TestPackRefuses(t *testing.T) {
	var none *load.NoCapacityError[string]
	_, err := load.Pack([]item{{"bag", 1}, {"bucket", 1}}, bigPot)
	if !errors.As(err, &none) || none.Class != "bucket" {
		t.Errorf("a class that nobody stated: got %v", err)
	}
	if _, err := load.Room(loaded{{"bag", 1}}, "bucket", bigPot); !errors.As(err, &none) {
		t.Errorf("room for a class that nobody stated: got %v", err)
	}
	for name, tc := range map[string]struct {
		items    []item
		capacity capacity
	}{
		"less than none":       {[]item{{"bag", -1}}, bigPot},
		"a million":            {[]item{{"bag", 1000000}}, bigPot},
		"too many together":    {[]item{{"bag", 6000}, {"quart", 6000}}, bigPot},
		"takes none":           {[]item{{"bag", 1}}, capacity{"bag": 0}},
		"takes less than none": {[]item{{"bag", 1}}, capacity{"bag": -7}},
		"takes a million":      {[]item{{"bag", 1}}, capacity{"bag": 1000000}},
	} {
		var out *unit.RangeError
		if _, err := load.Pack(tc.items, tc.capacity); !errors.As(err, &out) || out.Quantity != unit.Count {
			t.Errorf("%s: got %v", name, err)
		}
	}
	odd, items := capacity{}, []item{}
	for _, prime := range []int{9973, 9967, 9949, 9941, 9931} {
		class := fmt.Sprint(prime)
		odd[class] = prime
		items = append(items, item{class, 1})
	}
	var fine *load.FinenessError
	if _, err := load.Pack(items, odd); !errors.As(err, &fine) || fine.Classes != 5 {
		t.Errorf("five large primes: got %v", err)
	}
}

// part is the share of the pot that a load takes, in exact fractions that are
// not the package's own.
func part(l loaded, c capacity) *big.Rat {
	sum := new(big.Rat)
	for _, it := range l {
		sum.Add(sum, big.NewRat(int64(it.Count), int64(c[it.Class])))
	}
	return sum
}

func TestPackNeverOverfillsAndLosesNoUnit(t *testing.T) {
	one := big.NewRat(1, 1)
	rapid.Check(t, func(t *rapid.T) {
		items, c := draw(t, 6, 60)
		loads, err := load.Pack(items, c)
		if err != nil {
			t.Fatal(err)
		}
		want, got := map[string]int{}, map[string]int{}
		for _, it := range items {
			want[it.Class] += it.Count
		}
		for i, l := range loads {
			if len(l) == 0 || part(l, c).Cmp(one) > 0 {
				t.Errorf("load %d takes %v of the pot: %v", i, part(l, c), l)
			}
			for j, it := range l {
				got[it.Class] += it.Count
				if it.Count <= 0 || j > 0 && c[l[j-1].Class] > c[it.Class] {
					t.Errorf("load %d is not large first: %v", i, l)
				}
			}
		}
		for class, n := range want {
			if got[class] != n {
				t.Errorf("%d of %s became %d", n, class, got[class])
			}
		}
		again, err := load.Pack(items, c)
		if diff := cmp.Diff(loads, again); diff != "" || err != nil {
			t.Errorf("not the same twice: %v\n%s", err, diff)
		}
	})
}

// draw makes items of up to classes classes and up to units units each.
func draw(t *rapid.T, classes, units int) ([]item, capacity) {
	c := capacity{}
	var items []item
	for i := range rapid.IntRange(1, classes).Draw(t, "classes") {
		class := string(rune('a' + i))
		c[class] = rapid.IntRange(1, 20).Draw(t, "capacity "+class)
		items = append(items, item{class, rapid.IntRange(0, units).Draw(t, "count "+class)})
	}
	return items, c
}

// TestPackIsLeastForAKitchen compares with the least number of loads, found by
// trying everything.
func TestPackIsLeastForAKitchen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, c := draw(t, 3, 3)
		loads, err := load.Pack(items, c)
		if err != nil {
			t.Fatal(err)
		}
		var units []*big.Rat
		for _, it := range items {
			for range it.Count {
				units = append(units, big.NewRat(1, int64(c[it.Class])))
			}
		}
		if least := tryAll(units, nil, len(units)); len(loads) != least {
			t.Errorf("%v in %v: %d loads, %d do", items, c, len(loads), least)
		}
	})
}

// tryAll puts each unit into each load begun so far and into a new one.
func tryAll(units, free []*big.Rat, best int) int {
	if len(units) == 0 {
		return min(best, len(free))
	}
	for i, f := range free {
		if f.Cmp(units[0]) >= 0 {
			free[i] = new(big.Rat).Sub(f, units[0])
			best = tryAll(units[1:], free, best)
			free[i] = f
		}
	}
	if len(free)+1 <= best {
		left := new(big.Rat).Sub(big.NewRat(1, 1), units[0])
		best = tryAll(units[1:], append(free[:len(free):len(free)], left), best)
	}
	return best
}

func TestRoomIsWhatStillFits(t *testing.T) {
	one := big.NewRat(1, 1)
	rapid.Check(t, func(t *rapid.T) {
		items, c := draw(t, 4, 5)
		class := items[0].Class
		room, err := load.Room(loaded(items), class, c)
		if err != nil {
			t.Fatal(err)
		}
		with := func(n int) *big.Rat { return part(append(loaded(items), item{class, n}), c) }
		if fits := part(items, c).Cmp(one) <= 0; fits && with(room).Cmp(one) > 0 || with(room+1).Cmp(one) <= 0 {
			t.Errorf("%v in %v: room for %d of %s", items, c, room, class)
		}
	})
}

// BenchmarkPack packs a thousand units that resist, the dearest usual case.
func BenchmarkPack(b *testing.B) {
	c := capacity{"a": 2, "b": 3, "c": 5, "d": 7, "e": 11, "f": 13}
	var items []item
	for class := range c {
		items = append(items, item{class, 167})
	}
	for b.Loop() {
		if _, err := load.Pack(items, c); err != nil {
			b.Fatal(err)
		}
	}
}
