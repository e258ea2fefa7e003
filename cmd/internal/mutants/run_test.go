package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// module makes a module of one package whose test passes or fails, and goes there.
func module(t *testing.T, want string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"go.mod":        "module m\n",
		"p/p.go":        "package p\n\nfunc sum(a, b int) int { return a + b }\n",
		"p/p_test.go":   "package p\n\nimport \"testing\"\n\nfunc TestSum(t *testing.T) {\n\tif sum(2, 1) != " + want + " {\n\t\tt.Fatal(\"the sum is wrong\")\n\t}\n}\n",
		"bare/notes.md": "no code\n",
	} {
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// ran is the status of a call, and what it printed and said.
func ran(args ...string) (status int, printed, said string) {
	var out, err bytes.Buffer
	status = run(args, &out, &err)
	return status, out.String(), err.String()
}

// Tests that fail without a change notice nothing, though they fail with every one.
func TestFailingTestsNoticeNothing(t *testing.T) {
	module(t, "4")
	status, printed, said := ran("p")
	if status != 2 || printed != "" || !strings.HasPrefix(said, "p: its tests fail as it is, without any change") || !strings.Contains(said, "the sum is wrong") {
		t.Errorf("status %d, prints %q, says %q", status, printed, said)
	}
}

func TestPassingTestsNotice(t *testing.T) {
	module(t, "3")
	if status, printed, said := ran("p"); status != 0 || printed != "p: 1 of 1 changes noticed\n" || said != "" {
		t.Errorf("status %d, prints %q, says %q", status, printed, said)
	}
}

// The command tells who names no package, or a folder without code, what to write.
func TestCallsThatNameNothing(t *testing.T) {
	module(t, "3")
	for _, c := range []struct{ args, want string }{
		{"", "usage: mutants [flags] FOLDER..."}, {"-n 3", "usage: mutants [flags] FOLDER..."}, {"-m p", "usage: mutants [flags] FOLDER..."},
		{"bare", "bare: nothing to change"},
	} {
		status, printed, said := ran(strings.Fields(c.args)...)
		if status != 2 || printed != "" || !strings.Contains(said, c.want) {
			t.Errorf("%q: status %d, prints %q, says %q", c.args, status, printed, said)
		}
	}
}

// A round ends by the time of the processors that it takes, not by the clock: one that computes for ever has noticed, and one that only waits longer has not.
func TestRoundsEndByTheProcessorsTime(t *testing.T) {
	for name, c := range map[string]struct {
		runs string
		ok   bool
	}{"computes": {"while :; do :; done", false}, "waits": {"sleep 2", true}} {
		program := filepath.Join(t.TempDir(), "p")
		if err := os.WriteFile(program, []byte("#!/bin/sh\n"+c.runs+"\n"), 0o700); err != nil {
			t.Fatal(err)
		}
		r := round{program: program, folder: t.TempDir(), longest: time.Second / 2}
		if _, ok := r.run(0, "-test.v"); ok != c.ok {
			t.Errorf("one that %s passes: %v", name, ok)
		}
	}
}
