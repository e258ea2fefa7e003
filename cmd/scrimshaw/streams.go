package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// streams are the standard streams. Results go to out, everything else to err.
type streams struct {
	in       io.Reader
	out, err io.Writer
	staged   *staging // the files that the run has written and not yet put in place
}

// runInterruptibly does work that nothing can stop, and leaves it behind where ctx ends first: then the program ends too.
func runInterruptibly[T any](ctx context.Context, work func() (T, error)) (T, error) {
	type result struct {
		value T
		err   error
	}
	done := make(chan result, 1)
	go func() {
		value, err := work()
		done <- result{value, err}
	}()
	select {
	case <-ctx.Done():
		var none T
		return none, ctx.Err()
	case r := <-done:
		return r.value, r.err
	}
}

// inBackground is runInterruptibly for work without a result.
func inBackground(ctx context.Context, work func() error) error {
	_, err := runInterruptibly(ctx, func() (struct{}, error) { return struct{}{}, work() })
	return err
}

// errInterrupted is what a stream says that somebody stopped waiting for.
var errInterrupted = errors.New("interrupted")

// interruptible is a reader that stops waiting when its context ends: a person who forgot the
// scene behind a dash sits before a terminal that waits.
type interruptible struct {
	ctx context.Context
	r   io.Reader
}

func (i interruptible) Read(p []byte) (int, error) {
	// A buffer of its own: the read may end when p has long been used for something else.
	buffer := make([]byte, len(p))
	n, err := runInterruptibly(i.ctx, func() (int, error) { return i.r.Read(buffer) })
	if errors.Is(err, context.Canceled) {
		err = errInterrupted
	}
	return copy(p, buffer[:n]), err
}

// outputWriter is standard output. It stops waiting when its context ends, and keeps its first fault, so that one that
// is overlooked is reported all the same.
type outputWriter struct {
	ctx   context.Context
	w     io.Writer
	fault error
}

func (s *outputWriter) Write(p []byte) (int, error) {
	if s.fault != nil {
		return 0, s.fault
	}
	data := bytes.Clone(p) // as for reading
	n, err := runInterruptibly(s.ctx, func() (int, error) { return s.w.Write(data) })
	if errors.Is(err, context.Canceled) {
		err = errInterrupted
	}
	if err != nil {
		s.fault = fmt.Errorf("cannot write to standard output: %w", withoutPath(err))
	}
	return n, s.fault
}

// unlitSheets is what went wrong with a file, without its name, which the message has in the user's own words.
func withoutPath(err error) error {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}

// writeJSON prints a value as indented JSON.
func writeJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}
