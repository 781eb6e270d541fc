package phrase

import "testing"

// holdTokens holds the lexer to a table of texts and what [show] must say of
// their tokens.
func holdTokens(t *testing.T, table []struct{ text, want string }) {
	t.Helper()
	for _, c := range table {
		if got := show(Lex(c.text, collective)); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// The ways to write a number are those of the corpora in testdata/language; what
// two readers would read as two numbers is unclear.
func TestLexNumbers(t *testing.T) {
	holdTokens(t, []struct{ text, want string }{
		{"1.600 m", "unclear"},
		{"5.280 feet", "unclear"},
		{"1.500 g", "unclear"},
		{"over 1.600 m", "unclear"},
		{"1.500 €", "unclear"},
		{"$1.500", "unclear"},
		{"$1.50", "q1.5 1.5=$"},
		{"1.500 kg", "q1.5 1500=kg"},
		{",5 kg", "q0.5 500=kg"},
		{"3 bags ,5 lb", "n3 | bag | , | q5 2267.9619=lb"},
		{"a dozen and a half kg", "q18 18000=kg"},
		{"two point five kg", "q2.5 2500=kg"},
		{"two point two five kg", "q2.25 2250=kg"},
		{"zero point five kg", "q0.5 500=kg"},
		{"two point fifty kg", "unclear"},
		{"three fourths kg", "q0.75 750=kg"},
		{"three-quarters kg", "q0.75 750=kg"},
		{"half dozen bags", "n6 | bag"},
		{"half-dozen bags", "n6 | bag"},
		{"one-half kg", "q0.5 500=kg"},
		{"two-dozen bags", "n24 | bag"},
		{"1 and 1/2 kg", "q1.5 1500=kg+"},
		{"2 & 1/2 kg", "q2.5 2500=kg+"},
		{"2/3 of a cup", "q0.6667 0.1577=cup"},
		{"1 1/2 dozen bags", "n18 | bag"},
		{"3.0 bags", "n3 | bag"},
		{"3.000 bags", "unclear | bag"},
		{"3 (three) bags", "n3 | bag"},
		{"three (3) 5 lb bags", "n3 | q5 2267.9619=lb | bag"},
		{"3 (4) bags", "n3 | ( | n4 | ) | bag"},
		{"couple of bags", "unclear | bag"},
		{"a pair of bags", "n2 | bag"},
		{"a pair of gloves", "a | pair | of | gloves"},
		{"1 000 g", "q1000 1000=g"},
		{"1 600 m", "q1600 1600=m/96000=min"},
		{"3 500 ml jars", "n3 | q500 0.5=ml | jar"},
		{"12 500 g bags", "n12 | q500 500=g | bag"},
		{"2ish kg", "unclear"},
		{"3-ish bags", "unclear | bag"},
		{"38 ish", "n38 | ish"},
		{"12/25 kg", "unclear"},
		{"15/16 lb", "q0.9375 425.2428=lb"},
		{"1/99999999999999999999999999999 kg", "unclear"},
		{"5280'", "q5280 1609.344=ft"},
		{"5,280 '", "q5280 1609.344=ft"},
		{"'5280'", "unclear"},
		{"800 masl", "q800 800=m"},
		{"5k ft", "q5000 1524=ft"},
		{"minus 200 m", "q-200 -200=m/-12000=min"},
		{"zero meters", "q0 0=m"},
		{"we're at sea level", "we're | at | q0 0=m"},
		{"1600 m above sea level", "q1600 1600=m/96000=min | above | sea | level"},
		{"at zero", "at | zero"},
		{"three quarter pound bags", "n3 | q0.25 113.3981=lb | bag"},
	})
}

// An amount said in two units is one; two units of one kind, the smaller behind,
// are one amount; what is open upwards or downwards is a bound.
func TestLexAmounts(t *testing.T) {
	holdTokens(t, []struct{ text, want string }{
		{"5lb (2.27 kg)", "q5 2267.9619=lb"},
		{"5lb/2.3kg", "q5 2267.9619=lb"},
		{"2 kg (4.4 lb)", "q2 2000=kg"},
		{"2 kg / 4.4 lb", "q2 2000=kg"},
		{"2 kg (5.4 lb)", "unclear"},
		{"1 quart (32 oz)", "q1 0.9464=quart"},
		{"4 quarts (32 oz)", "q4 3.7854=quart"},
		{"500 ml (about a pint)", "q500 0.5=ml"},
		{"500 ml (16 oz)", "q500 0.5=ml"},
		{"32 oz (1 quart)", "q32 0.9464=fl oz"},
		{"16 oz (1 lb)", "q16 453.5924=oz"},
		{"1600 m (5250 ft)", "q1600 1600=m"},
		{"115F/46C", "q115 46.1111=°F"},
		{"1 bag (16 ounces)", "n1 | bag | ( | q16 453.5924=oz/0.4732=fl oz | )"},
		{"3 bags (5 lb)", "n3 | bag | ( | q5 2267.9619=lb | )"},
		{"2 lb / 3 lb bags", "unclear | bag"},
		{"350 g/1 quart", "q350 350=g | / | q1 0.9464=quart"},
		{"1 quart (350 g)", "q1 0.9464=quart | ( | q350 350=g | )"},
		{"2 lbs, 8 oz", "q2.5 1133.9809=lb"},
		{"2 pounds and 8 ounces", "q2.5 1133.9809=lb"},
		{"5 pounds, 12 oz", "q5.75 2608.1561=lb"},
		{"1 lb., 4 oz.", "q1.25 566.9905=lb | ."},
		{"1 lb., 4 oz. rye", "q1.25 566.9905=lb | grain:rye"},
		{"1 kg and 500 g", "q1.5 1500=kg"},
		{"1 kg and 500 g bags", "unclear | bag"},
		{"2 lb 8 oz bags", "q2.5 1133.9809=lb | bag"},
		{"2 lb 8 oz", "q2.5 1133.9809=lb"},
		{"1 quart 1 pint", "q1.5 1.4195=quart"},
		{"4 quarts 1 pint", "q4 3.7854=quart | q1 0.4732=pint"},
		{"4 quarts and 1 pint", "q4 3.7854=quart | and | q1 0.4732=pint"},
		{"2 kg+", "2..+Inf 1000=kg"},
		{"10+ pints", "10..+Inf 0.4732=pint"},
		{"3+ bags", "3..+Inf  | bag"},
		{"3+2 bags", "n3 | + | n2 | bag"},
		{"5lb+", "5..+Inf 453.5924=lb"},
		{"5lb+3lb", "q5 2267.9619=lb | + | q3 1360.7771=lb"},
		{"1 quart+", "1..+Inf 0.9464=quart"},
		{"1 quart+ 2 pints", "q1 0.9464=quart | + | q2 0.9464=pint"},
		{"2 kg + 3 kg", "q2 2000=kg | + | q3 3000=kg"},
		{"5 lb or more", "5..+Inf 453.5924=lb"},
		{"5 lb or less", "-Inf..5 453.5924=lb"},
		{"3 or more bags", "3..+Inf  | bag"},
		{"2 jars (about 4 cups)", "n2 | jar | ( | about | q4 0.9464=cup | )"},
		{"6 ft 2 inches", "q6.1667 1.8796=ft"},
		{"10 psi/0.7 bar", "q10 68.9476=psi"},
		{"$5/kg", "q5 5=$ | / | kg"},
		{"5 lb bags/2 kg", "q5 2267.9619=lb | bag | / | q2 2000=kg"},
		{"$10 / £8", "q10 10=$ | / | q8 8=GBP"},
		{"3 bags/2 jars", "n3 | bag | / | n2 | jar"},
		{"5 lbs. (2 kg)", "unclear"},
		{"2 lb 8 oz (1.13 kg)", "q2.5 1133.9809=lb"},
		{"2 lb 8 oz+", "2.5..+Inf 453.5924=lb"},
	})
}

// What a word was meant for is taken from how people mistype: letters doubled,
// swapped or left out before others; words spelt right stay.
func TestLexSlips(t *testing.T) {
	holdTokens(t, []struct{ text, want string }{
		{"wensday 10:00", "at(wednesday at 10:00)"},
		{"2 quartr rye", "q2 1.8927=quart | grain:rye"},
		{"undoo", "undo"},
		{"how mush rye", "how | much | grain:rye"},
		{"3 pnits", "q3 1.4195=pint"},
		{"oatts", "grain:oats"},
		{"sead", "sead?dead/head/lead/read/sad/sea/seal/sean/seat/seed/send"},
		{"2morrow at 9", "at(tomorrow at 9:00)"},
		{"dail gage", "dial | gauge"},
		{"weigthed", "weighted"},
		{"agarr", "route:agar"},
		{"sevan bags", "n7 | bag"},
		{"fiv bags", "n5 | bag"},
		{"thre bags", "n3 | bag"},
		{"thre is a pot", "thre?the/there/three | is | a | pot"},
		{"grain too grain", "route:grain to grain"},
		{"bye 14:30", "by | at(at 14:30)"},
		{"bye all", "bye | all"},
		{"coking", "cooking"},
		{"harm done", "harm | done"},
		{"outlive", "outlive"},
	})
}

// What a jar or bag is like is passed over, and so is the sign between a count and
// a size.
func TestLexTrimmings(t *testing.T) {
	holdTokens(t, []struct{ text, want string }{
		{"4 wide mouth quart jars rye", "n4 | jar 946.3529 ml | jar | grain:rye"},
		{"4 wide-mouth quarts", "n4 | jar 946.3529 ml"},
		{"4 mason jars", "n4 | jar"},
		{"3 filter patch bags", "n3 | bag"},
		{"3 filter-patch bags", "n3 | bag"},
		{"3 filter bags", "n3 | bag"},
		{"what filter", "what | filter"},
		{"10 fl oz jars", "q10 0.2957=fl oz | jar"},
		{"4 8 fl oz jars", "n4 | q8 0.2366=fl oz | jar"},
		{"4 2-cup jars", "n4 | q2 0.4732=cup | jar"},
		{"3 1 1/2-pint jars", "n3 | q1.5 0.7098=pint | jar"},
		{"1 2 1/2-pound bag", "n1 | q2.5 1133.9809=lb | bag"},
		{"2 1/2-pint jars", "n2 | q0.5 0.2366=pint | jar"},
		{"1 1/2-pint jar", "n1 | q0.5 0.2366=pint | jar"},
		{"3 x 1 1/2-pint jars", "n3x | q1.5 0.7098=pint | jar"},
		{"2 bags @ 3 lb", "n2 | bag | q3 1360.7771=lb"},
		{"2 bags a 3 lb", "n2 | bag | q3 1360.7771=lb"},
		{"2 bags à 3 lb", "n2 | bag | q3 1360.7771=lb"},
		{"2 a 3 lb", "n2 | q3 1360.7771=lb"},
		{"a 3 lb bag", "n1 | q3 1360.7771=lb | bag"},
		{"bags a 3 lb bag", "bag | q3 1360.7771=lb | bag"},
		{"we meet @ 3", "we | meet | @ | n3"},
		{"glass jars", "jar"},
		{"3 wide mouth mason quart jars", "n3 | jar 946.3529 ml | jar"},
	})
}
