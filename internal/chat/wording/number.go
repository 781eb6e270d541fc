package wording

import (
	"math"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// nb keeps a number and its unit on one line.
const nb = "\u00a0"

// whole prints a number without decimals, thousands parted by commas.
func whole(v float64) string {
	s := strconv.FormatFloat(math.Abs(math.Round(v)), 'f', 0, 64)
	var b strings.Builder
	if math.Round(v) < 0 {
		b.WriteByte('-')
	}
	for i, d := range s {
		if i > 0 && (len(s)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(d)
	}
	return b.String()
}

// upTo prints a number with at most so many decimals and no zeros behind.
func upTo(decimals int, v float64) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	before, after, pointed := strings.Cut(s, ".") // of the rounded figure, for 999.96 is 1,000
	if n, err := strconv.ParseFloat(before, 64); err == nil && math.Abs(n) >= 1000 {
		s = whole(n)
		if pointed {
			s += "." + after
		}
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// isRound reports whether a value is a whole number of the given parts, to a
// millionth: it was then most likely said in that unit.
func isRound(v float64, parts float64) bool {
	n := v * parts
	return v > 0 && math.Abs(n-math.Round(n)) < 1e-6*math.Max(1, n)
}

func grams(g unit.Grams) string { return whole(float64(g)) + nb + "g" }

// weighed prints a mass that was rounded to a step of the scale, or is too small
// for whole grams.
func weighed(g unit.Grams) string {
	if g >= 1000 {
		return grams(g)
	}
	return upTo(1, float64(g)) + nb + "g"
}

// kilos prints a larger mass as a shopper would say it.
func kilos(g unit.Grams) string {
	if g < 1000 {
		return grams(g)
	}
	return upTo(2, g.Kilograms()) + nb + "kg"
}

// massAsSaid prints a mass in the unit in which it is a round number: pounds,
// kilograms, ounces, else grams.
func massAsSaid(g unit.Grams) string {
	switch {
	case isRound(g.Pounds(), 4):
		return upTo(2, g.Pounds()) + nb + "lb"
	case isRound(g.Kilograms(), 100):
		return kilos(g)
	case isRound(g.Ounces(), 4):
		return upTo(2, g.Ounces()) + nb + "oz"
	case isRound(g.Pounds(), 100):
		return upTo(2, g.Pounds()) + nb + "lb"
	}
	return upTo(1, float64(g)) + nb + "g"
}

func litres(l unit.Litres) string { return upTo(1, float64(l)) + nb + "L" }

func percent(f unit.Fraction) string { return whole(f.Percent()) + nb + "%" }

// finePercent keeps a decimal, for shares that are a few per cent.
func finePercent(f unit.Fraction) string { return upTo(1, f.Percent()) + nb + "%" }

func ratio(r unit.Ratio) string { return strconv.FormatFloat(float64(r), 'f', 2, 64) }

// exact prints a factor of a sum so that the sum can be done again: two decimals,
// up to four where they count.
func exact(f float64) string {
	s := strconv.FormatFloat(f, 'f', 4, 64)
	for strings.HasSuffix(s, "0") && len(s)-strings.IndexByte(s, '.') > 3 {
		s = s[:len(s)-1]
	}
	return s
}

func psi(g unit.GaugeKPa) string { return upTo(1, g.PSI()) + nb + "psi" }

func minutes(d time.Duration) string { return whole(d.Minutes()) + nb + "min" }

// span prints a length of time as people say it: 50 min, 4 h, 2 h 35 min.
func span(d time.Duration) string {
	h, m := int(d/time.Hour), int(d%time.Hour/time.Minute)
	switch {
	case h == 0:
		return minutes(d)
	case m == 0:
		return strconv.Itoa(h) + nb + "h"
	}
	return strconv.Itoa(h) + nb + "h" + nb + strconv.Itoa(m) + nb + "min"
}

// height prints an elevation in the unit in which it is a round number.
func height(m unit.Metres) string {
	if !isRound(math.Abs(float64(m)), 1) && isRound(math.Abs(m.Feet()), 1) {
		return upTo(0, m.Feet()) + nb + "ft"
	}
	return upTo(0, float64(m)) + nb + "m"
}

// warmth prints a temperature; in °F where that is the round number.
func warmth(c unit.Celsius) string {
	if inFahrenheit(c) {
		return upTo(0, c.Fahrenheit()) + nb + "°F"
	}
	return upTo(1, float64(c)) + nb + "°C"
}

// inFahrenheit reports whether a temperature was said in that scale.
func inFahrenheit(c unit.Celsius) bool {
	return c != 0 && !isRound(math.Abs(float64(c)), 2) && isRound(math.Abs(c.Fahrenheit()), 1)
}

// celsius prints a temperature that was worked out.
func celsius(c unit.Celsius) string { return upTo(1, float64(c)) + nb + "°C" }

// jarSize names the volume of a jar: quart, pint, half gallon, 500 ml.
func jarSize(l unit.Litres) string {
	for _, named := range []struct {
		volume unit.Litres
		name   string
	}{
		{unit.USHalfPints(1), "half pint"},
		{unit.USPints(1), "pint"},
		{unit.USQuarts(1), "quart"},
		{unit.USGallons(0.5), "half gallon"},
		{unit.USGallons(1), "gallon"},
		{unit.ImperialPints(1), "imperial pint"},
		{unit.ImperialQuarts(1), "imperial quart"},
	} {
		if math.Abs(float64(l/named.volume)-1) < 1e-6 {
			return named.name
		}
	}
	switch {
	case isRound(l.Millilitres(), 1) && l < 1:
		return upTo(0, l.Millilitres()) + nb + "ml"
	case isRound(float64(l), 100):
		return upTo(2, float64(l)) + nb + "L"
	case isRound(l.USPints(), 4):
		return upTo(2, l.USPints()) + nb + "pint"
	case isRound(l.USFluidOunces(), 4):
		return upTo(2, l.USFluidOunces()) + nb + "fl" + nb + "oz"
	}
	return upTo(0, l.Millilitres()) + nb + "ml"
}

// one names a single container: quart jar, 5 lb bag.
func one(c kitchen.Container) string {
	switch c.Vessel {
	case kitchen.Jar:
		if c.Volume > 0 {
			return jarSize(c.Volume) + nb + "jar"
		}
		if c.Weight > 0 {
			return "jar of " + massAsSaid(c.Weight)
		}
		return "jar"
	case kitchen.Bag:
		if c.Weight > 0 {
			return massAsSaid(c.Weight) + nb + "bag"
		}
		return "bag"
	case 0:
		return "loose grain"
	}
	panic("vessel " + c.Vessel.String())
}

// many names a number of containers: 3 bags of 5 lb, 4 quart jars, 8 jars of
// 500 ml.
func many(n int, c kitchen.Container) string {
	if c.Vessel == 0 {
		return "loose grain"
	}
	size, named := "", ""
	switch {
	case c.Vessel == kitchen.Jar && c.Volume > 0:
		if size = jarSize(c.Volume); size[0] < '0' || size[0] > '9' {
			size, named = "", size+nb
		}
	case c.Weight > 0:
		size = massAsSaid(c.Weight)
	}
	s := plural(n, named+c.Vessel.String())
	if size != "" {
		s += " of " + size
	}
	return s
}

// plural adds an s to a noun when there isn't just one.
func plural(n int, noun string) string {
	if n == 1 {
		return "1" + nb + noun
	}
	return whole(float64(n)) + nb + noun + "s"
}

// plain puts common spaces where a line must not break: for what is to be typed.
func plain(s string) string { return strings.ReplaceAll(s, nb, " ") }

// The containers that examples speak of.
const (
	quart  unit.Litres = 0.946352946
	fiveLb unit.Grams  = 2267.96185
)

const fifteenPSI unit.GaugeKPa = 103.4213594

// millis is a small volume, as people measure cultures: 10 ml.
func millis(l unit.Litres) string { return upTo(1, float64(l)*1000) + nb + "ml" }
