package wording

import "ryebell/internal/chat"

// TimesRecord says how often the times that were forecast held in this kitchen.
func TimesRecord() chat.Post {
	return lines("**No run has been measured to its end yet**, so nobody knows.", "Say what a thermometer shows while one cools, like `46C`, until it is cool.")
}
