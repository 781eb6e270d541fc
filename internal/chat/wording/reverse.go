package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Reverse says what grain at hand makes: how many containers, what is left. Ask
// is the sentence that asks for the plan of the first.
func Reverse(have kitchen.Supply, makes []kitchen.Makes, ask string) chat.Post {
	post := chat.Post{Loudness: chat.Answer}
	for _, m := range makes {
		l := m.Plan.Lines[0]
		most := ""
		if m.Fills > l.Item.Count {
			most = ", the most in one order (it fills " + whole(float64(m.Fills)) + ")"
		}
		post.Blocks = append(post.Blocks, say("**"+many(l.Item.Count, l.Item.Container)+"**"+most+", "+kilos(m.Left)+" "+l.Grain.String()+" left over."))
	}
	first := makes[0].Plan
	l := first.Lines[0]
	post.Blocks = append(post.Blocks, say("From "+massAsSaid(have.Dry)+" dry "+l.Grain.String()+grainAside(l)+routeAside(l)+"."))
	if len(makes) > 1 {
		return post
	}
	post.Blocks = append(post.Blocks,
		say("Each "+l.Item.Container.Vessel.String()+": "+amounts(l)+"."),
		say("All "+whole(float64(l.Item.Count))+": "+allAmounts(l)+"."),
		say(result(l)),
		say("Next: ask for the plan: hold, water, loads."))
	return with(post, tap("Plan it", ask))
}

func allAmounts(l kitchen.Line) string {
	l.Each = l.All
	return amounts(l)
}

func grainAside(l kitchen.Line) string {
	if l.GrainOrigin == kitchen.Said {
		return ""
	}
	return " (no grain was said)"
}

func routeAside(l kitchen.Line) string {
	if l.Route != 0 {
		return ", for " + routeWord(l.Route)
	}
	if l.Method == kitchen.Soaked {
		return ", soaked"
	}
	return "; no route said: " + ratio(l.Ratio) + " water per grain"
}
