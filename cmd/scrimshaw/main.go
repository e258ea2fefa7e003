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
	ctx := contextUntilSignal()
	status := run(ctx, os.Args[1:], streams{in: interruptible{ctx, os.Stdin}, out: os.Stdout, err: os.Stderr})
	var s signalError
	if status != exitFine && errors.As(context.Cause(ctx), &s) {
		s.raise()
	}
	return status
}

// signalError is the cause of a context that a signal has ended.
type signalError struct{ by os.Signal }

func (s signalError) Error() string { return "stopped by " + s.by.String() }

// contextUntilSignal is a context that ends with the first interrupt or request to terminate. A second one ends the
// program at once.
func contextUntilSignal() context.Context {
	ctx, cancel := context.WithCancelCause(context.Background())
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	go func() {
		by := <-signals
		signal.Stop(signals)
		cancel(signalError{by})
	}()
	return ctx
}

// raise ends the program by the signal that stopped it, now that all is tidied away: a shell that runs it in a
// loop sees why it ended, and stops too. It returns where that signal ends no program.
func (s signalError) raise() {
	if signal.Ignored(s.by) {
		return
	}
	self, err := os.FindProcess(os.Getpid())
	if err == nil && self.Signal(s.by) == nil {
		time.Sleep(time.Second) // the signal comes before this is over
	}
}
