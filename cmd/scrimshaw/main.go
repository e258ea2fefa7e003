// Command scrimshaw lays out a scene written as text, computes its light and draws the
// lighting diagram.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	os.Exit(realMain())
}

// realMain runs one command and returns its exit status; tests call it as a program.
func realMain() int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	context.AfterFunc(ctx, stop) // so that a second interrupt ends the program at once
	return run(ctx, os.Args[1:], streams{in: interruptible{ctx, os.Stdin}, out: os.Stdout, err: os.Stderr})
}
