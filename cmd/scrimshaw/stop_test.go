//go:build unix

package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// soon is how long a program may take to stop after a signal: ten times what it takes on a machine that is not loaded.
const soon = 5 * time.Second

// command is the program itself with arguments, in a folder.
func command(dir string, args ...string) (cmd *exec.Cmd, stderr *bytes.Buffer) {
	cmd, stderr = exec.Command("scrimshaw", args...), &bytes.Buffer{}
	cmd.Dir, cmd.Stderr = dir, stderr
	return cmd, stderr
}

// stopAfter starts a program, signals it after a while, and returns whether it ended by that signal. It must end
// soon after.
func stopAfter(t *testing.T, cmd *exec.Cmd, by syscall.Signal, while time.Duration) (signalled bool) {
	t.Helper()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	time.Sleep(while)
	cmd.Process.Signal(by)
	select {
	case <-ended:
	case <-time.After(soon):
		cmd.Process.Kill()
		<-ended
		t.Errorf("%v after %v: it does not end", by, while)
	}
	status := cmd.ProcessState.Sys().(syscall.WaitStatus)
	return status.Signaled() && status.Signal() == by
}

func namesIn(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// Whenever a run is stopped, either all of its files are there or none, and it ends by the signal that stopped it.
func TestStopsAtAnyMoment(t *testing.T) {
	t.Parallel()
	for _, by := range []syscall.Signal{syscall.SIGTERM, syscall.SIGINT} {
		stops := 0
		for _, while := range []time.Duration{30, 100, 200, 300, 400, 500, 650, 800} {
			dir := t.TempDir()
			cmd, stderr := command(dir, "draw", "--quality", "draft", "-o", "a.pdf", "-o", "a.png", "-o", "a.txt")
			signalled := stopAfter(t, cmd, by, while*time.Millisecond)
			switch names := strings.Join(namesIn(t, dir), " "); {
			case names == "" && strings.HasSuffix(stderr.String(), "scrimshaw: stopped; nothing is written\n"):
				if stops++; !signalled && by == syscall.SIGTERM { // an interrupt may be ignored from the start
					t.Errorf("%v after %d ms: it ends with %v", by, while, cmd.ProcessState)
				}
			case names == "" && signalled: // before it could say anything
			case strings.HasPrefix(names, "a") && !strings.Contains(names, ".scrimshaw") && strings.Contains(names, "a.pdf a.png a.txt"):
			default:
				t.Errorf("%v after %d ms leaves %q and says %q", by, while, names, stderr)
			}
		}
		if stops == 0 {
			t.Errorf("%v stopped no run: they are over too soon to be tested", by)
		}
	}
}

// A program that waits for another stops waiting: for a scene, a typeface, a photometric file, or for
// somebody who reads its output.
func TestStopsWhileItWaits(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ name, args string }{
		{"the scene behind a dash", "review -"},
		{"a scene that a pipe holds back", "meter pipe"},
		{"a typeface", "draw --font pipe"},
		{"a photometric file", "kit --show pipe"},
		{"a photometric file behind a dash", "kit --convert - x.ldt"},
		{"a reader of the drawing", "symbols -o - --format png --dpi 300"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			silent := fifo(t, filepath.Join(dir, "pipe"))
			defer silent.Close()
			cmd, stderr := command(dir, strings.Fields(c.args)...)
			in, _ := cmd.StdinPipe()
			out, _ := cmd.StdoutPipe() // that nobody reads
			defer in.Close()
			defer out.Close()
			if !stopAfter(t, cmd, syscall.SIGTERM, 600*time.Millisecond) || stderr.Len() == 0 {
				t.Errorf("it ends with %v and says %q", cmd.ProcessState, stderr)
			}
			if names := namesIn(t, dir); len(names) != 1 {
				t.Errorf("it leaves %q", names)
			}
		})
	}
}

// fifo is a pipe that is open for writing, and into which nothing is written.
func fifo(t *testing.T, path string) *os.File {
	t.Helper()
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// A stop that comes while files are written leaves those that were there as they were.
func TestStopWhileWriting(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	first, second := filepath.Join(dir, "a.svg"), filepath.Join(dir, "b.svg")
	if err := os.WriteFile(first, []byte("before"), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	err := writeAndReport(ctx, streams{out: io.Discard, err: io.Discard, staged: &staging{}}, func(put func(output) error) error {
		return errors.Join(put(output{path: first, data: []byte("after")}), put(output{path: second, data: []byte("after")}))
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("a stop gives %v", err)
	}
	if text, err := os.ReadFile(first); err != nil || string(text) != "before" {
		t.Errorf("the file that was there holds %q, %v", text, err)
	}
	if names := namesIn(t, dir); len(names) != 1 {
		t.Errorf("left are %q", names)
	}
}

// An interrupt that was ignored from the start, as of a command behind a shell's &, stops a run all the same, at once: nothing waits for a signal that
// ends no program.
func TestStopsByAnIgnoredInterrupt(t *testing.T) {
	t.Parallel()
	const tries, enough = 5, 700 * time.Millisecond // a loaded machine may need more once
	least := time.Hour
	for n := 0; n < tries && least > enough; n++ {
		cmd := exec.Command("sh", "-c", `trap "" INT; exec scrimshaw review -`)
		cmd.Dir = t.TempDir()
		in, _ := cmd.StdinPipe()
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(400 * time.Millisecond)
		cmd.Process.Signal(syscall.SIGINT)
		began := time.Now()
		cmd.Wait()
		least = min(least, time.Since(began))
		in.Close()
		if status := cmd.ProcessState.ExitCode(); status != exitWrong && status != -1 {
			t.Errorf("it ends with %v", cmd.ProcessState)
		}
	}
	if least > enough {
		t.Errorf("it takes %v at least", least)
	}
}
