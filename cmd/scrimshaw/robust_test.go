//go:build linux

package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// Whatever asks the program to end ends it, and leaves nothing.
func TestEverySignalEndsARun(t *testing.T) {
	t.Parallel()
	scene := longRun(t)
	for _, by := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGPIPE} {
		dir := t.TempDir()
		cmd, stderr := command(dir, "draw", scene, "-o", "a.pdf", "-o", "a.png")
		signalled := stopAfter(t, cmd, by, 400*time.Millisecond)
		if names := namesIn(t, dir); len(names) > 0 || !signalled && cmd.ProcessState.ExitCode() < exitWrong {
			t.Errorf("%v: it leaves %q and ends with %v: %s", by, names, cmd.ProcessState, stderr)
		}
	}
}

// longRun writes a scene that takes seconds to draw on any machine.
func longRun(t *testing.T) (path string) {
	text := strings.Builder{}
	text.WriteString("scrimshaw: 1\nrooms: {hall: {size: [20, 15], height: 4}}\npeople:\n")
	for i := range 60 {
		fmt.Fprintf(&text, "  p%d: {at: [%.2f, %.2f]}\n", i, 1+float64(i%20)*0.9, 1+float64(i/20)*2)
	}
	text.WriteString("cameras: {A: {at: [19, 13], lens: 32 mm}}\nlights:\n")
	for i := range 16 {
		fmt.Fprintf(&text, "  l%d: {output: {lumens: 10000, face: [0.6, 0.6]}, at: [%d, 9], height: 2.6, aim: p0}\n", i, 2+i)
	}
	path = filepath.Join(t.TempDir(), "long.yaml")
	if err := os.WriteFile(path, []byte(text.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// A command that cannot be stopped is left behind, and what it goes on to write goes nowhere.
func TestRunThatDoesNotEndIsAbandoned(t *testing.T) {
	dir := t.TempDir()
	s := &staging{}
	if err := s.add(output{path: filepath.Join(dir, "a.pdf"), data: []byte("a")}); err != nil || len(namesIn(t, dir)) != 1 {
		t.Fatal(err, namesIn(t, dir))
	}
	var said bytes.Buffer
	if status := s.abandon(&said); status != exitWrong || said.String() != "scrimshaw: stopped; nothing is written\n" {
		t.Errorf("status %d, %q", status, said.String())
	}
	if err := s.add(output{path: filepath.Join(dir, "b.pdf"), data: []byte("b")}); err == nil {
		t.Error("a file is taken after the end")
	}
	if err := s.putInPlace(); err == nil || len(namesIn(t, dir)) != 0 {
		t.Errorf("%v; left are %q", err, namesIn(t, dir))
	}
}

// What a run leaves that was killed is swept by the next one; what another still writes is not.
func TestLeftoversAreSwept(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a[b]*")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{".scrimshaw-left", ".scrimshaw-written", ".scrimshaw-new", "own"} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte("x"), 0o600); err != nil {
			t.Fatal(err)
		}
		if long := time.Now().Add(-time.Hour); name != ".scrimshaw-new" {
			if err := os.Chtimes(path, long, long); err != nil {
				t.Fatal(err)
			}
		}
	}
	held, err := os.Open(filepath.Join(dir, ".scrimshaw-written"))
	if err != nil {
		t.Fatal(err)
	}
	defer held.Close()
	lock(held)
	if status, said := called(t, "new", filepath.Join(dir, "scene.yaml")); status != exitFine {
		t.Fatal(said)
	}
	if names := strings.Join(namesIn(t, dir), " "); names != ".scrimshaw-new .scrimshaw-written own scene.yaml" {
		t.Errorf("there are %q", names)
	}
}

// called runs a command and returns its status and what it says beside its result.
func called(t *testing.T, args ...string) (status int, said string) {
	t.Helper()
	var out, err bytes.Buffer
	status = run(context.Background(), args, streams{in: &bytes.Buffer{}, out: &out, err: &err})
	return status, err.String()
}

// A link to a file that is not there yet is followed, not replaced.
func TestLinkToNothingIsFollowed(t *testing.T) {
	dir := t.TempDir()
	for _, folder := range []string{"here", "there"} {
		if err := os.Mkdir(filepath.Join(dir, folder), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	link := filepath.Join(dir, "here", "a.pdf")
	for from, to := range map[string]string{link: "../between.pdf", filepath.Join(dir, "between.pdf"): filepath.Join(dir, "there", "b.pdf")} {
		if err := os.Symlink(to, from); err != nil {
			t.Fatal(err)
		}
	}
	if status, said := called(t, "symbols", "-o", link); status != exitFine {
		t.Fatal(said)
	}
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info.Mode(), err)
	}
	if _, err := os.Stat(filepath.Join(dir, "there", "b.pdf")); err != nil {
		t.Error(err)
	}
}

// A folder that may be entered and not listed refuses the files that a scene names there, and no more: the scene itself
// has been read.
func TestFolderThatCannotBeListed(t *testing.T) {
	dir := t.TempDir()
	files := make(chan fs.FS)
	go func() {
		runtime.LockOSThread() // and never unlocked: the thread, which may do less than others, ends with this
		const nobody = 65534
		if err := syscall.Setfsuid(nobody); err != nil { // the folder of a test may be listed by its owner alone
			t.Error(err)
		}
		_, of := filesOf(dir)
		files <- of
	}()
	_, err := fs.Stat(<-files, "a.ies")
	if !errors.Is(err, fs.ErrPermission) {
		t.Errorf("a file in it: %v", err)
	}
	if _, of := filesOf(dir); of == nil {
		t.Error("the folder of a scene has no files")
	}
}

// A file name cannot drive the terminal that it is printed on.
func TestFileNamesDoNotReachTheTerminal(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "a\x1b[31mb.")
	for _, args := range [][]string{
		{"symbols", "-o", name + "svg"}, {"symbols", "-o", name + "xyz"}, {"new", name + "yaml"}, {"draw", name + "missing"}, {"kit", "--show", name + "ies"},
	} {
		_, said := called(t, args...)
		if strings.Contains(said, "\x1b") || !strings.Contains(said, `[31mb.`) {
			t.Errorf("%q says %q", args, said)
		}
	}
}

// A file beyond any size is refused for what it is.
func TestFileLargerThanIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "large.yaml")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := f.Truncate(100 << 20); err != nil {
		t.Fatal(err)
	}
	if status, said := called(t, "review", path); status != exitWrong || !strings.Contains(said, "large.yaml is larger than 64 MB; check that it is the file you mean") {
		t.Errorf("status %d: %s", status, said)
	}
}

// A long name of a luminaire, and tens of thousands of unknown keys, cost no more than their reading.
func TestLongTextsCostLittle(t *testing.T) {
	const patience = 5 * time.Second // far more than it takes; what is compared with all before takes minutes
	dir := t.TempDir()
	lamp, scene := filepath.Join(dir, "a.ies"), filepath.Join(dir, "a.yaml")
	luminaire := "IESNA91\n[LUMINAIRE] " + strings.Repeat("abcdefghi ", 10000) + "\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 100\n0 45 90\n0\n100 50 0\n"
	var keys strings.Builder
	keys.WriteString("scrimshaw: 1\ncameras:\n  A:\n")
	for i := range 70000 {
		keys.WriteString("    q" + strings.Repeat("x", i%7) + string(rune('a'+i%26)) + time.Duration(i).String() + ": 1\n")
	}
	for path, text := range map[string]string{lamp: luminaire, scene: keys.String()} {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, args := range [][]string{{"kit", "--show", lamp, "-o", filepath.Join(dir, "a.svg")}, {"review", scene}} {
		start := time.Now()
		called(t, args...)
		if took := time.Since(start); took > patience {
			t.Errorf("%s takes %v", args[0], took)
		}
	}
}
