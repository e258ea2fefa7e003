//go:build linux

package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"runtime/debug"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansregular"

	"scrimshaw/samples"
)

// How many inputs are tried, and from which seed on: .ci/long mutated tries twenty thousand.
var (
	mutatedCount = flag.Int("mutated", 40, "how many mutated inputs are run through the program")
	mutatedFrom  = flag.Uint64("mutated-from", 1, "the seed of the first")
)

// What one input may cost.
const (
	mostComputing = 10 * time.Second
	mostWaiting   = 2 * time.Minute // for the machine may have more to do
	mostMemory    = 1 << 20         // KiB
)

// measuredSeed, kitSeed and kitScene are what is mutated beside the samples.
const (
	measuredSeed = "IESNA:LM-63-2002\n[TEST] a\n[TESTLAB] b\n[ISSUEDATE] c\n[MANUFAC] d\nTILT=INCLUDE\n1\n3\n0 45 90\n1 0.9 0.8\n1 1200 1 5 4 1 2 0.3 0.6 0.1\n1 1 100\n0 22.5 45 67.5 90\n0 30 60 90\n900 800 500 200 10\n900 700 500 100 10\n900 600 400 100 10\n900 500 300 50 10\n"
	kitSeed      = "scrimshaw: 1\nunits:\n  own-lamp:\n    doc: A lamp of our own\n    label: own lamp\n    class: bare\n    technology: led\n    power: 90 W\n    kelvin: [3000 K, 5000 K]\n    native: 4000 K\n    lumens: 8000\n    spread: cosine\n    front: bayonet\n    modifier: reflector-wide\n    outputs:\n      reflector-wide: {lux: 1700, distance: 3 m, beam: 55, field: 80}\n    body: [0.12, 0.28, 0.18]\n    mass: 2 kg\n    stand: light-stand\n"
	kitScene     = "scrimshaw: 1\nkit: [own.yaml]\npeople: {ada: {at: [1, 1]}}\ncameras: {A: {at: [3, 2], lens: 32 mm}}\nlights: {l: {unit: own-lamp, at: [2, 1], height: 2}}\n"
	lampScene    = "scrimshaw: 1\npeople: {ada: {at: [1, 1]}}\ncameras: {A: {at: [3, 2], lens: 32 mm}}\nlights: {l: {output: {ies: a.ies}, at: [2, 1], height: 2}}\n"
)

// mutated is an input and how the program is called with it.
type mutated struct {
	files map[string][]byte
	args  []string
}

// TestMutatedInputs runs scenes, photometric files, kit files and typefaces with slips and hostile figures in them
// through the program: it ends, soon and small, with a status of its own and without a figure that is no number.
func TestMutatedInputs(t *testing.T) {
	forgetPeak(t)
	seeds := make(chan uint64)
	var all sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for seed := range seeds {
				runMutated(t, seed)
			}
		})
	}
	for n := range uint64(*mutatedCount) {
		seeds <- *mutatedFrom + n
	}
	close(seeds)
	all.Wait()
}

// forgetPeak lets go of memory and of the most that was in use, which the system hands on to the programs that the tests begin as if it were theirs.
func forgetPeak(t *testing.T) {
	debug.FreeOSMemory()
	const peak = "5" // proc(5), clear_refs
	if err := os.WriteFile("/proc/self/clear_refs", []byte(peak), 0); err != nil {
		t.Logf("the memory of the tests before counts too: %v", err)
	}
}

// runMutated runs one input.
func runMutated(t *testing.T, seed uint64) {
	dir, err := os.MkdirTemp(t.TempDir(), "")
	if err != nil {
		t.Error(err)
		return
	}
	defer os.RemoveAll(dir)
	m := mutatedInput(rand.New(rand.NewPCG(seed, 12)))
	for name, text := range m.files {
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			t.Error(err)
			return
		}
	}
	ctx, stop := context.WithTimeout(t.Context(), mostWaiting)
	defer stop()
	cmd := exec.CommandContext(ctx, "scrimshaw", m.args...)
	var out, said bytes.Buffer
	cmd.Dir, cmd.Stdout, cmd.Stderr = dir, &out, &said
	cmd.Run()
	if bad := whatIsBad(cmd.ProcessState, dir, out.Bytes(), said.Bytes()); bad != "" {
		t.Errorf("seed %d, %q: %s\n%.2000s", seed, m.args, bad, said.String())
		for name, text := range m.files {
			os.WriteFile(filepath.Join(os.TempDir(), fmt.Sprintf("mutated-%d-%s", seed, name)), text, 0o644)
		}
	}
}

// noNumber is a figure that is no number, in what the program makes.
var noNumber = regexp.MustCompile(`\bNaN\b|[-+ "]Inf\b`)

// whatIsBad says what a run did that none may do, "" for nothing.
func whatIsBad(state *os.ProcessState, dir string, out, said []byte) string {
	usage := state.SysUsage().(*syscall.Rusage)
	computing := state.UserTime() + state.SystemTime()
	switch status := state.ExitCode(); {
	case status < exitFine || status > exitWrong:
		return fmt.Sprintf("it ends with %v", state)
	case bytes.Contains(said, []byte("goroutine ")) || bytes.Contains(said, []byte("panic")):
		return "it panics"
	case computing > mostComputing:
		return fmt.Sprintf("it takes %v", computing)
	case usage.Maxrss > mostMemory:
		return fmt.Sprintf("it takes %d MiB", usage.Maxrss>>10)
	case noNumber.Match(out):
		return "what it prints holds a figure that is no number"
	}
	made, _ := filepath.Glob(filepath.Join(dir, "made*"))
	for _, name := range made {
		if text, err := os.ReadFile(name); err == nil && filepath.Ext(name) != ".png" && noNumber.Match(text) {
			return filepath.Base(name) + " holds a figure that is no number"
		}
	}
	return ""
}

// mutatedInput makes an input.
func mutatedInput(r *rand.Rand) mutated {
	draft := []string{"--quality", "draft"}
	ways := [][]string{{"draw", "-o", "made.svg", "-o", "made.txt"}, {"meter", "--json"}, {"review", "--json"}, {"list", "--json"}, {"list", "--csv", "lamps"}, {"day"}, {"day", "--json"}}
	way := append([]string{}, ways[r.IntN(len(ways))]...)
	if way[0] != "list" && way[0] != "day" { // which compute no light
		way = append(way, draft...)
	}
	way = append(way, "a.yaml")
	switch r.IntN(8) {
	case 0:
		return mutated{map[string][]byte{"a.ies": mutate(r, measuredSeed), "a.yaml": []byte(lampScene)}, way}
	case 1:
		shown := []string{"kit", "--show", "a.ies", "-o", "made.svg"}
		return mutated{map[string][]byte{"a.ies": mutate(r, measuredSeed)}, shown}
	case 2:
		return mutated{map[string][]byte{"own.yaml": mutate(r, kitSeed), "a.yaml": []byte(kitScene)}, way}
	case 3:
		lettered := []string{"symbols", "-o", "made.svg"}
		if r.IntN(2) == 0 {
			lettered = append([]string{"draw", "--font", "a.ttf", "-o", "made.svg"}, append(draft, "a.yaml")...)
		}
		return mutated{map[string][]byte{"a.ttf": corrupt(r, liberationsansregular.TTF), "a.yaml": []byte("scrimshaw: 1\nlights: {l: {output: {lumens: 100, shape: uniform}, at: [0, 0], height: 2}}\n")}, lettered}
	}
	names := samples.Names()
	text, err := samples.Text(names[r.IntN(len(names))])
	if err != nil {
		panic(err)
	}
	return mutated{map[string][]byte{"a.yaml": mutate(r, string(text))}, way}
}

// hostileFigures are what a number is replaced by.
var hostileFigures = []string{"0", "-1", "1e300", "-1e300", "1e-300", "1e39", "0.0001", "999999999", "1e9", "100", "360", "1 mm", "100 %", "''", "[]", "{}", "~", "2.5.1", "1,5"}

// figure is a number in a text.
var figure = regexp.MustCompile(`-?[0-9]+(?:\.[0-9]+)?`)

// mutate makes some slips in a text.
func mutate(r *rand.Rand, text string) []byte {
	for range 1 + r.IntN(4) {
		lines := strings.Split(text, "\n")
		n := r.IntN(len(lines))
		switch r.IntN(7) {
		case 0:
			lines = append(lines[:n], lines[n+1:]...)
		case 1:
			lines = append(lines[:n+1], append([]string{lines[n]}, lines[n+1:]...)...)
		case 2, 3, 4:
			places := figure.FindAllStringIndex(lines[n], -1)
			if len(places) > 0 {
				p := places[r.IntN(len(places))]
				lines[n] = lines[n][:p[0]] + hostileFigures[r.IntN(len(hostileFigures))] + lines[n][p[1]:]
			}
		case 5:
			if words := strings.Fields(text); len(words) > 0 {
				if own := strings.Fields(lines[n]); len(own) > 0 {
					lines[n] = strings.Replace(lines[n], own[r.IntN(len(own))], words[r.IntN(len(words))], 1)
				}
			}
		case 6:
			return corrupt(r, []byte(text))
		}
		text = strings.Join(lines, "\n")
		if text == "" {
			break
		}
	}
	return []byte(text)
}

// corrupt changes bytes, or cuts the end off.
func corrupt(r *rand.Rand, data []byte) []byte {
	out := bytes.Clone(data)
	for range 1 + r.IntN(6) {
		if len(out) < 2 {
			break
		}
		switch n := r.IntN(len(out)); r.IntN(4) {
		case 0:
			out = out[:n+1]
		case 1:
			clear(out[n:min(len(out), n+1+r.IntN(8))])
		default:
			out[n] = byte(r.IntN(256))
		}
	}
	return out
}
