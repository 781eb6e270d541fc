package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Person is a member as the others see them.
type Person struct {
	Name string
	Role kitchen.Role
}

// Members lists who is in the collective.
func Members(people []Person) chat.Post {
	post := lines("**" + plural(len(people), "member") + "**")
	var list chat.List
	for _, p := range people {
		if p.Role == kitchen.Steward {
			list = append(list, say("{}, steward", p.Name))
		} else {
			list = append(list, say("{}", p.Name))
		}
	}
	post.Blocks = append(post.Blocks, list, say("Stewards change the kitchen: `make Ana a steward`"))
	return post
}

// RoleGiven says that somebody has a role now.
func RoleGiven(name string, role kitchen.Role) chat.Post {
	if role == kitchen.Steward {
		return with(theirs(say("{} is a steward now: may change the kitchen.", name)), tap("Undo", "undo"))
	}
	return with(theirs(say("{} is no longer a steward.", name)), tap("Undo", "undo"))
}

// SameRole says that nothing was to be done.
func SameRole(name string, role kitchen.Role) chat.Post {
	return theirs(say("{} is a "+role.String()+" already. Nothing changed.", name))
}

// Renamed says what the speaker is called from now on.
func Renamed(name string) chat.Post { return theirs(say("You are {} from now on.", name)) }

// AskForget asks for the name that confirms being forgotten.
func AskForget(name string) chat.Post {
	return theirs(
		say("This can't be undone: your name, the link to your account, what you typed and your photos go. Entries stay, under a number."),
		say("To do it, type: forget {}", name))
}

// WrongName says that the name typed to confirm isn't the speaker's.
func WrongName(name string) chat.Post {
	return theirs(say("You can have only yourself forgotten. Nothing was written."), say("Your name here is {}: type `forget me` first.", name))
}

// Forgotten says that it is done.
func Forgotten() chat.Post {
	return lines("Done: your name, account, typed words and photos are gone from the book.", "If you speak here again you count as somebody new.")
}

// Claimed says that a room has its collective now.
func Claimed() chat.Post {
	return with(lines(
		"**This room has a book now**, and you are its steward. Everybody here is a member.",
		"Try: `3 bags 5lb agar`",
		"Next: say how high you are and what your cooker takes: `help kitchen`"), tap("Help", "help"))
}

// RoomAdded says that a room joined a collective.
func RoomAdded() chat.Post {
	return with(lines("**This room shares the book now.** What is said in either counts in both; nothing is mirrored.", "Try: `kitchen`"), tap("Kitchen", "kitchen"))
}

// AlreadyClaimed says that the room has a collective.
func AlreadyClaimed() chat.Post { return lines("This room has a book already. Nothing changed.") }

// Code gives a code with which one more room can join.
func Code(code string) chat.Post {
	return lines("In the other room say: `join "+code+"`", "Works once, for 24 hours. Whoever is in that room becomes a member.")
}
