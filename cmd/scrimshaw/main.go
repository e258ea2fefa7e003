// Command scrimshaw lays out a scene written as text, computes its light and draws the
// lighting diagram.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		limitMemory()
	}
	os.Exit(realMain())
}

// patience is how long a command may tidy up after a signal to stop. What has not ended by then is left behind.
const patience = 200 * time.Millisecond

// realMain runs one command and returns its exit status; tests call it as a program.
func realMain() int {
	ctx := contextUntilSignal()
	std := streams{in: interruptible{ctx, os.Stdin}, out: os.Stdout, err: os.Stderr, staged: &staging{}}
	ended := make(chan int, 1)
	go func() { ended <- run(ctx, os.Args[1:], std) }()
	status := exitWrong
	select {
	case status = <-ended:
	case <-ctx.Done():
		select {
		case status = <-ended:
		case <-time.After(patience):
			status = std.staged.abandon(os.Stderr)
		}
	}
	var s signalError
	if status != exitFine && errors.As(context.Cause(ctx), &s) {
		s.raise()
	}
	return status
}

// abandon ends a run that does not end by itself: it takes back the files that are not in place yet, or, where the
// last moment for that is over, waits until all of them are, and says which of the two it was.
func (s *staging) abandon(said io.Writer) int {
	if inPlace := s.close(); !inPlace {
		fmt.Fprintf(said, "scrimshaw: %s\n", stoppedMessage)
	}
	return exitWrong
}

// signalError is the cause of a context that a signal has ended.
type signalError struct {
	by      os.Signal
	ignored bool // from the start: it ends no program by itself
}

func (s signalError) Error() string { return "stopped by " + s.by.String() }

// contextUntilSignal is a context that ends with the first signal that asks the program to end. A second one ends the
// program at once. A hangup that was ignored from the start, as nohup has it, stays so.
func contextUntilSignal() context.Context {
	ctx, cancel := context.WithCancelCause(context.Background())
	ignored := signal.Ignored(os.Interrupt) // as of a command behind a shell's &: asked now, for who listens to it has it ignored no more
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM, syscall.SIGPIPE)
	if !signal.Ignored(syscall.SIGHUP) {
		signal.Notify(signals, syscall.SIGHUP)
	}
	go func() {
		by := <-signals
		signal.Stop(signals)
		cancel(signalError{by, by == os.Interrupt && ignored})
	}()
	return ctx
}

// raise ends the program by the signal that stopped it, now that all is tidied away: a shell that runs it in a
// loop sees why it ended, and stops too. It returns where that signal ends no program.
func (s signalError) raise() {
	if s.by == syscall.SIGPIPE { // which ends no program that runs on this runtime, where another sends it
		os.Exit(brokenPipe)
	}
	if s.ignored {
		return
	}
	self, err := os.FindProcess(os.Getpid())
	if err == nil && self.Signal(s.by) == nil {
		time.Sleep(time.Second) // the signal comes before this is over
	}
}
