package phrase
import ("testing";"fmt")
func TestZZ(t *testing.T) {
	for _, s := range []string{"4 quarts rye oyster on the shelf since 3 oct","we have 6 pints of shiitake spawn from Mira","bought 3 bags 5lb oyster spawn, grown through","got 2 quarts reishi from the market yesterday, half grown","there are 5 cooked quarts rye from last week","already on the shelf: 3 quarts oyster, 2 bags 5lb king since 1 nov","how many ready bags do we have","any oyster spawn left??","what's growing","cooked bags","how many jars of cooked rye","wheres bag a","where did 12.3 go","where is 12.3","where is 12.1-4","3 weeks old", "since last month", "since early november", "since november", "a month old","2 weeks ago", "grown since two weeks", "30% grown","lion's mane"} {
		out := ""
		for _, k := range Lex(s, tryNames) { out += fmt.Sprintf(" %T%+v", k, k) }
		fmt.Println(s, "=>", out)
		fmt.Println("   ", understood(Parse(s, tryNames)))
	}
}
