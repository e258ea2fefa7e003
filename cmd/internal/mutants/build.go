package main

import (
	"encoding/json"
	"fmt"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"
)

// build is a package with a sample of its changes in it. The first change has the number 1: nought is the package as it is.
type build struct {
	pkg    string
	only   string   // the names of tests that run, a regular expression
	all    []change // those that do not compile are blank
	folder string   // for what is built
}

// round is tests of a program that run together.
type round struct {
	program, folder string
	tests           string        // which, as a regular expression
	longest         time.Duration // of the processors, all cores together
}

// waits is how many times as long as its time of the processors a round may take by the clock: on a busy machine it takes long, and that is no
// fault of a change. A test that waits for ever, and computes nothing, ends by this.
const waits = 10

// inCopy is how the compiler begins what it says of a copy.
var inCopy = regexp.MustCompile(`mutant(\d+):\d+`)

// compile builds the tests of a folder with the changes that compile.
func (b *build) compile(tests, program string) error {
	for {
		overlay, err := b.overlay()
		if err != nil {
			return err
		}
		out, err := exec.Command("go", "test", "-c", "-vet=off", "-gcflags=-e", "-overlay", overlay, "-o", program, "./"+tests).CombinedOutput()
		if err == nil {
			return nil
		}
		bad := inCopy.FindAllSubmatch(out, -1)
		if bad == nil {
			return fmt.Errorf("%s: its tests do not compile: %w\n%s", tests, err, out)
		}
		for _, m := range bad {
			i, err := strconv.Atoi(string(m[1]))
			if err != nil {
				return err
			}
			b.all[i-1] = change{}
		}
	}
}

// overlay writes the changed files into the folder, and the list that lays them over those of the package, which stay as
// they are. It returns the list's name.
func (b *build) overlay() (name string, err error) {
	replace := map[string]string{}
	add := func(name, text string) error {
		whole, err := filepath.Abs(name)
		if err != nil {
			return err
		}
		replace[whole] = filepath.Join(b.folder, filepath.Base(name))
		return os.WriteFile(replace[whole], []byte(text), 0o600)
	}
	for _, c := range b.all {
		if c.file == "" || replace[c.file] != "" {
			continue
		}
		text, err := os.ReadFile(c.file)
		if err != nil {
			return "", err
		}
		more, err := copied(c.file, text, b.all)
		if err != nil {
			return "", err
		}
		if err := add(c.file, more); err != nil {
			return "", err
		}
	}
	files, err := filepath.Glob(filepath.Join(b.pkg, "*.go"))
	if err != nil {
		return "", err
	}
	file, err := parser.ParseFile(token.NewFileSet(), files[0], nil, parser.PackageClauseOnly)
	if err != nil {
		return "", err
	}
	if err := add(filepath.Join(b.pkg, chosen+".go"), fmt.Sprintf(choosing, strings.TrimSuffix(file.Name.Name, "_test"))); err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	name = filepath.Join(b.folder, "overlay.json")
	return name, os.WriteFile(name, list, 0o600)
}

// passed is how a test says that it passed, and in how many seconds.
var passed = regexp.MustCompile(`(?m)^--- PASS: (\S+) \(([0-9.]+)s\)`)

// rounds builds the tests of a folder, runs them without a change, and shares them out: the quickest first, those that take
// longest last.
func (b *build) rounds(tests string) ([]round, error) {
	program := filepath.Join(b.folder, filepath.Base(tests)+".test")
	if err := b.compile(tests, program); err != nil {
		return nil, err
	}
	whole := round{program: program, folder: tests, tests: b.only, longest: time.Hour}
	out, ok := whole.run(0, "-test.v")
	if !ok {
		return nil, fmt.Errorf("%s: its tests fail as it is, without any change: mend that first\n%s", tests, out)
	}
	type timed struct {
		name    string
		seconds float64
	}
	var all []timed
	sum := 0.0
	for _, m := range passed.FindAllStringSubmatch(out, -1) {
		s, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			return nil, err
		}
		all, sum = append(all, timed{m[1], s}), sum+s
	}
	slices.SortFunc(all, func(a, b timed) int { return int(1e3 * (a.seconds - b.seconds)) })
	var rounds []round
	for _, share := range []float64{1. / 16, 1. / 4, 1} {
		var names []string
		took := 0.0
		for len(all) > 0 && (share == 1 || took+all[0].seconds <= share*sum) {
			names, took, all = append(names, all[0].name), took+all[0].seconds, all[1:]
		}
		if names != nil {
			whole.tests = "^(" + strings.Join(names, "|") + ")$"
			whole.longest = time.Duration((10 + 6*took*float64(runtime.NumCPU())) * float64(time.Second))
			rounds = append(rounds, whole)
		}
	}
	return rounds, nil
}

// notices says whether a round notices a change.
func (b *build) notices(rounds []round, change int) bool {
	return slices.ContainsFunc(rounds, func(r round) bool {
		_, ok := r.run(change, "-test.failfast")
		return !ok
	})
}

// run runs a round with a change, and says whether its tests pass. A test that runs for ever has noticed, and so has one
// that takes all the memory: it gets no more than 6 GB.
func (r round) run(change int, flag string) (out string, ok bool) {
	seconds := strconv.Itoa(int(r.longest.Seconds()) + 1)
	c := exec.Command("sh", "-c", `ulimit -v 6000000; ulimit -t "$0"; exec "$@"`, seconds, r.program, "-test.short", "-test.run", r.tests,
		"-test.timeout", (waits * r.longest).String(), flag)
	c.Dir = r.folder
	c.Env = append(os.Environ(), fmt.Sprintf("%s=%d", chosen, change))
	found, err := c.CombinedOutput()
	return string(found), err == nil
}
