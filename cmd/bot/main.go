// Command bot is Ryebell: a chat bot for a small growers' collective that makes
// grain spawn together. Started with nothing configured, it opens the chat in the
// terminal on a book in the user's state folder.
//
// The package holds flags, configuration and wiring, and no logic. [run] is the
// whole program with everything of the outside handed in, so that a test can
// drive it from end to end.
package main

import (
	"context"
	"os"
	_ "time/tzdata" // zones of collectives, on machines that have none
)

func main() {
	os.Exit(run(context.Background(), os.Args[1:], environ(os.Environ()), os.Stdin, os.Stdout, os.Stderr))
}
