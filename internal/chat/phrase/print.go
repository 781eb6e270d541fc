package phrase

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// plain prints a number without an exponent, as short as it reads back.
func plain(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }

// exactly prints the shortest number that a unit turns into want: what was
// typed, and not what the arithmetic made of it.
func exactly(want, about float64, of func(n float64) float64) (string, bool) {
	for digits := 1; digits <= 17; digits++ {
		n, err := strconv.ParseFloat(strconv.FormatFloat(about, 'g', digits, 64), 64)
		if err == nil && of(n) == want {
			return plain(n), true
		}
	}
	return "", false
}

// maxTyped is the longest number worth another unit.
const maxTyped = 8

// style is a unit to print in.
type style struct {
	name string
	of   func(n float64) float64
}

// shortest prints a quantity in the unit that needs the fewest digits; the
// first of the units is the base unit, which always fits.
func shortest(v float64, units []style) string {
	number, name := plain(v), units[0].name
	for _, u := range units[1:] {
		if n, ok := exactly(v, v/u.of(1), u.of); ok && len(n) < len(number) && len(n) <= maxTyped {
			number, name = n, u.name
		}
	}
	return number + " " + name
}

var (
	massUnits = []style{
		{"g", func(n float64) float64 { return n }},
		{"kg", func(n float64) float64 { return float64(unit.Kilograms(n)) }},
		{"lb", func(n float64) float64 { return float64(unit.Pounds(n)) }},
	}
	volumeUnits = []style{
		{"l", func(n float64) float64 { return n }},
		{"ml", func(n float64) float64 { return float64(unit.Millilitres(n)) }},
	}
	pressureUnits = []style{
		{"kPa", func(n float64) float64 { return n }},
		{"psi", func(n float64) float64 { return float64(unit.PSI(n)) }},
		{"bar", func(n float64) float64 { return float64(unit.Bar(n)) }},
	}
	lengthUnits = []style{
		{"m", func(n float64) float64 { return n }},
		{"ft", func(n float64) float64 { return float64(unit.Feet(n)) }},
	}
)

func massText(g unit.Grams) string        { return shortest(float64(g), massUnits) }
func volumeText(l unit.Litres) string     { return shortest(float64(l), volumeUnits) }
func pressureText(p unit.GaugeKPa) string { return shortest(float64(p), pressureUnits) }
func lengthText(m unit.Metres) string     { return shortest(float64(m), lengthUnits) }
func fractionText(f unit.Fraction) string { return percentText(float64(f)) }
func temperatureText(t unit.Celsius) string {
	if n, ok := exactly(float64(t), t.Fahrenheit(), func(n float64) float64 { return float64(unit.Fahrenheit(n)) }); ok &&
		len(n) < len(plain(float64(t))) {
		return n + " °F"
	}
	return plain(float64(t)) + " °C"
}

func percentText(f float64) string {
	if n, ok := exactly(f, f*100, func(n float64) float64 { return float64(unit.Percent(n)) }); ok {
		return n + "%"
	}
	return plain(f*100) + "%"
}

// durationText prints a length of time in minutes, or in seconds where minutes
// don't come out even.
func durationText(d time.Duration) string {
	if d%time.Minute == 0 {
		return strconv.FormatInt(int64(d/time.Minute), 10) + " min"
	}
	return plain(d.Seconds()) + " sec"
}

func routeText(r kitchen.Route) string {
	switch r {
	case kitchen.LiquidCulture:
		return "lc"
	case kitchen.Agar:
		return "agar"
	case kitchen.GrainToGrain:
		return "g2g"
	case kitchen.Spores:
		return "spores"
	}
	panic(fmt.Sprintf("phrase: no route %d", r))
}

// containerText prints a kind of container: "5 lb bags", "500 ml jars".
func containerText(c kitchen.Container) string {
	noun := "jars"
	if c.Vessel == kitchen.Bag {
		noun = "bags"
	}
	switch {
	case c.Volume > 0:
		return jarText(c.Volume) + " " + noun
	case c.Weight > 0:
		return massText(c.Weight) + " " + noun
	}
	return noun
}

// jarNames are the sizes of jars by name: what String, which knows no
// collective, prints in millilitres.
var jarNames = [...]struct {
	name         string
	us, imperial unit.Litres
}{
	{"half pint", unit.USPints(0.5), unit.ImperialPints(0.5)},
	{"pint", unit.USPints(1), unit.ImperialPints(1)},
	{"quart", unit.USQuarts(1), unit.ImperialQuarts(1)},
	{"half gallon", unit.USGallons(0.5), unit.ImperialGallons(0.5)},
	{"gallon", unit.USGallons(1), unit.ImperialGallons(1)},
}

// inMeasure is the jar of that volume as the other measure has it; 0 for one that
// has no name.
func inMeasure(v unit.Litres, imperial bool) unit.Litres {
	for _, j := range jarNames {
		switch {
		case j.us != v && j.imperial != v:
		case imperial:
			return j.imperial
		default:
			return j.us
		}
	}
	return 0
}

// sizedBags are bags with the size before the word: "3 5 lb bags".
var sizedBags = regexp.MustCompile(`(^|[^\d.] )(\d+) (\d+(?:\.\d+)? (?:lb|kg|g)) (bags?)\b`)

// readable puts the names of jars in place of their volumes, for a collective
// that measures so, and the size of bags behind them: "3 bags 5 lb".
func readable(s string, m kitchen.Measure) string {
	if strings.Contains(s, " bag") {
		s = sizedBags.ReplaceAllString(s, "$1$2 $4 $3")
	}
	for _, j := range jarNames {
		if !strings.Contains(s, "l jar") {
			break
		}
		v := j.us
		if m == kitchen.Imperial {
			v = j.imperial
		}
		s = strings.ReplaceAll(s, " "+volumeText(v)+" jar", " "+j.name+" jar")
	}
	return s
}

// legible rounds the long figures of an example, which is there to be read.
func legible(s string) string { return longFigures.ReplaceAllStringFunc(s, shortFigure) }

// longFigures are amounts with more digits than anybody weighs or pours.
var longFigures = regexp.MustCompile(`\b\d+\.\d{4,} (?:l|ml|lb|kg|g)\b`)

// shortFigure rounds such an amount to three digits, or as many as keep it within a
// thousandth.
func shortFigure(amount string) string {
	number, of, _ := strings.Cut(amount, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || v == 0 {
		return amount
	}
	for digits := 3; ; digits++ {
		n, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
		if err != nil || math.Abs(n-v) <= v/1000 {
			return plain(n) + " " + of
		}
	}
}

// jarText prints the size of a jar.
func jarText(v unit.Litres) string { return volumeText(v) }

// itemText prints an item with all that was said of it.
func itemText(it kitchen.Item) string {
	var b strings.Builder
	c := it.Container
	loose := c.Vessel == 0 && !c.Sized()
	if !loose {
		kind := containerText(c)
		if it.Count == 1 {
			kind = strings.TrimSuffix(kind, "s")
		}
		b.WriteString(strconv.Itoa(it.Count) + " " + kind)
	}
	if it.Mass != 0 {
		if !loose {
			b.WriteString(" with ")
		}
		b.WriteString(massText(it.Mass))
		b.WriteString(basisText(it.Basis))
		if !loose {
			b.WriteString(" each")
		}
	}
	b.WriteString(attributesText(it))
	return strings.TrimSpace(b.String())
}

func basisText(b kitchen.Basis) string {
	switch b {
	case 0:
		return ""
	case kitchen.Wetted:
		return " wet"
	case kitchen.DryBasis:
		return " dry"
	}
	panic(fmt.Sprintf("phrase: no basis %d", b))
}

// attributesText prints what can be said of any item, each after a space.
func attributesText(it kitchen.Item) string {
	s := ""
	if it.Grain != 0 {
		s += " " + it.Grain.String()
	}
	if it.Route != 0 {
		s += " " + routeText(it.Route)
	}
	if it.Moisture != 0 || it.Parched {
		s += " at " + fractionText(it.Moisture) + " moisture"
	}
	if it.Ratio != 0 {
		s += " ratio " + plain(float64(it.Ratio))
	}
	if it.Gypsum != 0 {
		s += " gypsum " + fractionText(it.Gypsum)
	}
	if it.NoGypsum {
		s += " without gypsum"
	}
	return s
}

// orderText prints an order.
func orderText(o kitchen.Order) string {
	items := make([]string, len(o.Items))
	for i, it := range o.Items {
		items[i] = itemText(it)
	}
	s := strings.Join(items, " + ")
	if o.Cooker != "" {
		s += " in the " + o.Cooker
	}
	if o.Hold != 0 {
		s += ", hold " + durationText(o.Hold)
	}
	return s
}

// outByText prints a deadline behind an intent, nothing for none.
func outByText(m *Moment) string {
	if m == nil {
		return ""
	}
	return " out by " + momentText(*m)
}

// momentText prints a moment in a form that the lexer reads back.
func momentText(m Moment) string {
	switch {
	case m.Now:
		return "now"
	case m.Shift > 0:
		return "in " + durationText(m.Shift)
	case m.Shift < 0:
		return durationText(-m.Shift) + " ago"
	}
	parts := make([]string, 0, 2)
	if m.Day.Said {
		parts = append(parts, dayText(m.Day))
	}
	if m.Clock != nil {
		parts = append(parts, clockText(*m.Clock))
	}
	return strings.Join(parts, " ")
}

func clockText(c ClockTime) string {
	switch {
	case c.Hour == 24 && !c.Half:
		return "midnight"
	case !c.Half:
		return fmt.Sprintf("%d:%02d", c.Hour, c.Minute)
	case c.Hour == 0:
		return fmt.Sprintf("00:%02d", c.Minute)
	case c.Hour < 12:
		return fmt.Sprintf("%d:%02dam", c.Hour, c.Minute)
	case c.Hour == 12:
		return fmt.Sprintf("12:%02dpm", c.Minute)
	}
	return fmt.Sprintf("%d:%02d", c.Hour, c.Minute)
}

func dayText(d Day) string {
	switch {
	case d.NextWeek && d.HasWeekday:
		return "next week " + strings.ToLower(d.Weekday.String())
	case d.Last && d.HasWeekday:
		return "last " + strings.ToLower(d.Weekday.String())
	case d.Next && d.HasWeekday:
		return "next " + strings.ToLower(d.Weekday.String())
	case d.HasWeekday && d.Date == 0:
		return strings.ToLower(d.Weekday.String())
	case d.HasWeekday && d.Month == 0:
		return fmt.Sprintf("%s %s", strings.ToLower(d.Weekday.String()), nth(d.Date))
	case d.HasWeekday:
		weekday := strings.ToLower(d.Weekday.String()) // it may not be that of the date: whoever resolves it asks
		d.HasWeekday = false
		return weekday + " " + dayText(d)
	case d.Date != 0 && d.Month == 0:
		return "the " + nth(d.Date)
	case d.Year != 0:
		return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
	case d.Date != 0:
		return fmt.Sprintf("%d %s", d.Date, strings.ToLower(d.Month.String()))
	case d.Shift == 0:
		return "today"
	case d.Shift == 1:
		return "tomorrow"
	case d.Shift == -1:
		return "yesterday"
	case d.Shift > 0:
		return fmt.Sprintf("in %d days", d.Shift)
	}
	return fmt.Sprintf("%d days ago", -d.Shift)
}

func nth(n int) string {
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return strconv.Itoa(n) + suffix
}

// whole returns a count as an int, when it is one.
func whole(n float64) (int, bool) {
	if n != math.Trunc(n) || math.Abs(n) > 1e9 {
		return 0, false
	}
	return int(n), true
}
