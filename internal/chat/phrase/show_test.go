package phrase

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// show prints tokens for tables: numbers and words as they are, the rest with a
// sign for its kind.
func show(tokens []Token) string {
	var b []string
	for _, t := range tokens {
		b = append(b, showOne(t))
	}
	return strings.Join(b, " | ")
}

func showOne(t Token) string {
	num := func(v float64) string { return strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) }
	senses := func(all []Sense) string {
		var s []string
		for _, one := range all {
			s = append(s, num(one.Value)+"="+one.Unit)
		}
		return strings.Join(s, "/")
	}
	switch t := t.(type) {
	case Number:
		s := "n" + num(t.Value)
		if t.Times {
			s += "x"
		}
		if t.Mixed {
			s += "+"
		}
		if t.Ref != nil {
			s += t.Ref.String()
		}
		return s
	case Unclear:
		return "unclear"
	case Percent:
		return num(t.Value) + "%"
	case Range:
		return num(t.Lo) + ".." + num(t.Hi) + " " + senses(t.Senses)
	case Quantity:
		s := "q" + num(t.Number) + " " + senses(t.Senses)
		if t.Mixed {
			s += "+"
		}
		return s
	case RunRef:
		return t.Ref.String()
	case Tag:
		return "#" + t.Text
	case When:
		return "at(" + t.Moment.String() + ")"
	case Period:
		return t.Length.String()
	case Interval:
		return "over(" + t.String() + ")"
	case VesselWord:
		return strings.TrimSpace(fmt.Sprintf("%v %s", t.Container.Vessel, strings.TrimSuffix(num(float64(t.Container.Volume)*1000)+" ml", "0 ml")))
	case GrainWord:
		return "grain:" + t.Grain.String()
	case Unsuited:
		return "unsuited:" + t.Name
	case RouteWord:
		return "route:" + t.Route.String()
	case Name:
		return "name:" + t.Text
	case Word:
		if len(t.Mended) > 0 {
			return t.Text + "?" + strings.Join(t.Mended, "/")
		}
		return t.Text
	case Mark:
		return string(t.Rune)
	}
	panic(t)
}
