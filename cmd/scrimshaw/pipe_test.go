//go:build unix

package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// A pipe that nothing writes to must not hang, and one that is written to late is read whole.
func TestPipes(t *testing.T) {
	t.Parallel()
	pipe := filepath.Join(t.TempDir(), "pipe.yaml")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := readNamed(t.Context(), pipe, "scene"); err == nil || !strings.Contains(err.Error(), "a pipe that nothing writes to") {
		t.Errorf("a pipe without a writer: %v", err)
	}
	go func() {
		f, err := os.OpenFile(pipe, os.O_WRONLY, 0)
		if err != nil {
			return
		}
		defer f.Close()
		for _, part := range []string{"scrimshaw: 1\n", "title: late\n"} {
			time.Sleep(3 * pipePollInterval)
			io.WriteString(f, part)
		}
	}()
	text, err := readNamed(t.Context(), pipe, "scene")
	if err != nil || string(text) != "scrimshaw: 1\ntitle: late\n" {
		t.Errorf("a pipe written to late reads %q, %v", text, err)
	}
}

// An interrupt ends the wait for standard input.
func TestInterruptWhileReading(t *testing.T) {
	t.Parallel()
	silent, w := io.Pipe()
	defer w.Close()
	ctx, interrupt := context.WithCancel(t.Context())
	time.AfterFunc(20*time.Millisecond, interrupt)
	var out, err bytes.Buffer
	status := run(ctx, []string{"review", "-"}, streams{in: interruptible{ctx, silent}, out: &out, err: &err})
	if status != exitWrong || err.String() != "scrimshaw: cannot read standard input: interrupted\n" {
		t.Errorf("status %d, %q", status, err.String())
	}
}
