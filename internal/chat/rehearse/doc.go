// Package rehearse plays scripted conversations against the bot: a script, a
// clock that stands still until told, and a door that prints every post as a
// block. A whole run, hours of waiting included, plays in a moment, and the
// same script always prints the same.
//
// A script is read line by line. Empty lines and those that start with // are
// ignored; any other is one of
//
//	3 bags 5lb agar            said in the room by Robin
//	<ana> who's cooking        said there by Ana, who is made up as she first speaks
//	<ana private> what now     said by her to the bot alone
//	<ana reply> 46C            in reply to the newest post of the bot there
//	<ana edit> no, 4 bags      her newest message there, changed to this
//	<ana 14:05> heat off       arrives now, was sent at 14:05 (the latest 14:05 there was)
//	<ana photo> 12.3 green     with a photo, a grey dot; the text may be missing
//	<ana room2> shelf          in a second room of the collective
//	<ana other> shelf          in a room of another collective
//	[Cook it]                  taps that button of the newest post there that has it
//	<jo> [Cook it]             the same as Jo
//	+90m                       the clock moves on, pings fire at their time: also +45s +2h30m +3d
//	+40m down                  the same with the bot switched off, pings fire at the end
//	@18:30                     the clock moves on to the next 18:30
//
// What stands between < and > combines: <ana room2 reply 14:05>. Inside a
// message \n is a line break. In a room a message is meant for the bot if it
// starts with @bot, "bot," or "bot:" (which is taken off), with a slash, or if
// it is a reply or a tap; every other is merely overheard. A tap without a
// place looks in the room first and then in the speaker's talk with the bot.
//
// A line that begins like one of these and is none is an [Error]; a line that
// merely begins with the same character, such as "<3" or "+2 bags", is said.
//
// A conversation that is kept as a file, as package rehearsetest describes, can be
// played too: [Open] takes what is said out of it.
//
// Each post prints as a line "15:04 bot → room" and below it, indented by two
// spaces, what [chat.Plain] makes of it in 40 columns. A private post names
// the person, one that replaces an earlier post adds "(edits 14:05)", and from
// the second day on the date stands before the time.
//
// The package knows nothing of the trade: the bot is handed in as a [World].
package rehearse
