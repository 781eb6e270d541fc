package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// Ask puts the one short question that settles a text.
func Ask(q phrase.Question) chat.Post {
	post := theirs(question(q.Gap, q.About))
	for _, o := range q.Options {
		post.Buttons = append(post.Buttons, tap(o.Label, o.Say))
	}
	return post
}

func question(gap phrase.Gap, about string) chat.Para {
	switch gap {
	case phrase.WhichSize:
		return say("{}: **of which size?**", about)
	case phrase.WhichVessel:
		return say("{}: **of what**, bags or jars?", about)
	case phrase.MoistureOrRatio:
		return say("{}: **moisture** of the wetted grain, or **water** per dry grain? They are far apart.", about)
	case phrase.WhichRoute:
		return say("**One way at a time**: which one is it for?")
	case phrase.WhichGrain:
		return say("{}: **which grain** is meant?", about)
	case phrase.PotOrJars:
		return say("{}: is that **the pot's size**, or that many **quart jars** in it?", about)
	case phrase.JarWeightOrVolume:
		return say("{}: **the jar's size**, or the **weight** of wetted grain in it?", about)
	case phrase.EachOrTogether:
		return say("{}: **each**, or all **together**?", about)
	case phrase.WhichScale:
		return say("{}: **°C or °F**?", about)
	case phrase.WhichLength:
		return say("{}: **metres or feet**?", about)
	case phrase.WhichHalf:
		return say("{}: **morning or evening**?", about)
	case phrase.WhichWord:
		return say("{}: **which** do you mean?", about)
	}
	panic("gap without a question")
}

// Near says what was understood, what not, and what would have worked.
func Near(n phrase.Near) chat.Post {
	post := theirs(trouble(n.Trouble, n.Got, n.Missed))
	if n.Example != "" {
		post.Blocks = append(post.Blocks, append(say("Like: "), chat.Code(n.Example)))
	}
	return post
}

func trouble(t phrase.Trouble, got, missed string) chat.Para {
	switch t {
	case phrase.LeftOver:
		if got == "" {
			return say("I don't get \"{}\".", missed)
		}
		return say("I got \"{}\", but not \"{}\".", got, missed)
	case phrase.WrongUnit:
		return say("\"{}\" is no size for that.", either(missed, got))
	case phrase.NotWhole:
		return say("\"{}\": only whole jars and bags.", missed)
	case phrase.NotSuited:
		return say("{} won't do for spawn: whole grain only.", missed)
	case phrase.Incomplete:
		return say("\"{}\" needs a little more.", either(missed, got))
	case phrase.Numberless:
		return say("**Which number?** \"{}\" has none, and no name.", missed)
	case phrase.TooLong:
		return say("That is more than I read at once, 4,096 characters. Nothing was written.")
	case phrase.Bound:
		return say("\"{}\" is a range: I need one number.", missed)
	case phrase.TooMany:
		return say("That is more than I plan at once, 20 kinds of jars and bags. Nothing was written.")
	}
	panic("trouble without words")
}

func either(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// NotUnderstood is for a text that was meant for the bot and is not understood
// at all.
func NotUnderstood() chat.Post {
	return with(lines("I didn't get that. These work:", "`3 bags 5lb agar`", "`4 quart jars rye LC`", "`we're at 1600 m`"), tap("Help", "help"))
}

// NotUnderstoodOf is for such a text from who has a run on: how it stands, and its next
// step to tap.
func NotUnderstoodOf(r kitchen.Run, now time.Time) chat.Post {
	v := RunView{Run: r, Now: now}
	var s sheet
	s.add(must, say("**I didn't get that.** Nothing was written."))
	s.add(must, v.state())
	var next []chat.Button
	for _, c := range r.Next() {
		b, ok := v.choice(c)
		if !ok && c.Kind != kitchen.KindCalledOff && kindSaid(c.Kind) == kindWord(c.Kind) {
			b, ok = v.button(capital(kindWord(c.Kind)), kindSaid(c.Kind)), true
		}
		if ok && len(next) < 2 {
			next = append(next, b)
		}
	}
	s.then(say("Next: tap what you saw, or ask `what now`"), append(next, tap("Help", "help cook"))...)
	return s.post(chat.Answer)
}

// Deaf tells somebody in private, or in a room without a book, what to do.
func Deaf() chat.Post {
	return lines("I keep a book only for rooms that were claimed.", "The operator has a code: `claim CODE`. A steward of another room gets one with `code for another room`.")
}

// Broken says that something went wrong inside and nothing was written.
func Broken() chat.Post {
	return lines("Something went wrong in me. **Nothing was written.**", "Say it once more; if it stays so, tell whoever runs me.")
}

// Lost says that a message could not be written, though it was tried several times.
func Lost() chat.Post {
	return lines("**Not written.** Say it once more.")
}

// CannotWrite says that the book can't be written right now.
func CannotWrite() chat.Post {
	return lines("**I can't write the book right now**, so nothing counts yet. Whoever runs me must look at the disk.")
}
