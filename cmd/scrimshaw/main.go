// Command scrimshaw lays out a scene written as text, computes its light and draws the
// lighting diagram.
package main

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() {
	os.Exit(realMain())
}

// realMain runs one command and returns its exit status; tests call it as a program.
func realMain() int {
	ctx := untilStopped()
	status := run(ctx, os.Args[1:], streams{in: interruptible{ctx, os.Stdin}, out: os.Stdout, err: os.Stderr})
	var s stopped
	if status != exitFine && errors.As(context.Cause(ctx), &s) {
		s.end()
	}
	return status
}

// stopped is the cause of a context that a signal has ended.
type stopped struct{ by os.Signal }

func (s stopped) Error() string { return "stopped by " + s.by.String() }

// untilStopped is a context that ends with the first interrupt or request to terminate. A second one ends the
// program at once.
func untilStopped() context.Context {
	ctx, cancel := context.WithCancelCause(context.Background())
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	go func() {
		by := <-signals
		signal.Stop(signals)
		cancel(stopped{by})
	}()
	return ctx
}

// end ends the program by the signal that stopped it, now that all is tidied away: a shell that runs it in a
// loop sees why it ended, and stops too. It returns where that signal ends no program.
func (s stopped) end() {
	if signal.Ignored(s.by) {
		return
	}
	self, err := os.FindProcess(os.Getpid())
	if err == nil && self.Signal(s.by) == nil {
		time.Sleep(time.Second) // the signal comes before this is over
	}
}
