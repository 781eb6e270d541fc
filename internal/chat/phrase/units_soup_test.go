package phrase

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// soup are words that what is told of units is made of.
var soup = strings.Split("12.1|12.1-4|12|#12|.3|12.10|3|and|,|;|the rest|the jars|all of|bag 2|except|of|with|w|from|into|on|in|to|is|looks|oyster|pink|king|lm|plate 7|lc|lc 4|10 ml|5cc|each|agar|g2g|1 quart|quarter plate|blank|green|wet|"+
	"sour|done|white|30%|half|shook|threw|out|used|straw|gave|mira|away|moved|the fridge|top shelf|#soak24|tag|call|bag a|rye lot 3|bag lot 7|lids|top layer|yesterday|20 min ago|nothing|trich|inoculated|did|it|them|gone|after 9 days|about|bottle 3|"+
	"9.3|old stuff|a|shaken|fine|left|put|60|bags|suspect ones|jar|rye|help|is that bad|now|at 14:05|called|12.1 to 4|but|not|stalled|4 bags of sawdust|went|given|for", "|")

// TestUnitsOfSoup holds that whatever is read of such words prints back.
func TestUnitsOfSoup(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(soup), 1, 9).Draw(t, "words"), " ")
		for _, in := range Parse(text, tryNames).Intents {
			if _, ok := in.(TellUnits); ok {
				back(t, in)
			}
		}
	})
}
