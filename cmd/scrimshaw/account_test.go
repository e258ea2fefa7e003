package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/render/list"
)

// A small file that multiplies is refused before it is computed, with what is large and what would do; a part of it is
// not.
func TestTooMuchForOneRun(t *testing.T) {
	var products, crowd strings.Builder
	products.WriteString("scrimshaw: 1\nlights: {l: {output: {lumens: 100, shape: uniform}, at: [0, 0], height: 2}}\nfurniture:\n")
	for i := range 24 {
		fmt.Fprintf(&products, "  s%d: {stairs: [2, 8, 5], steps: 200, at: [%d, 9]}\n", i, 3*i)
	}
	products.WriteString("setups:\n")
	for i := range 500 {
		fmt.Fprintf(&products, "  u%d: {change: {lights: {l: {height: %.3f}}}}\n", i, 2+float64(i)/1000)
	}
	crowd.WriteString("scrimshaw: 1\nlights:\n")
	for i := range 490 {
		fmt.Fprintf(&crowd, "  l%d: {output: {lumens: 100, shape: uniform}, at: [%d, 0], height: 2}\n", i, i)
	}
	crowd.WriteString("furniture:\n")
	for i := range 24 {
		fmt.Fprintf(&crowd, "  s%d: {stairs: [2, 8, 5], steps: 200, at: [%d, 9]}\n", i, 3*i)
	}
	dir := t.TempDir()
	many, lights := filepath.Join(dir, "many.yaml"), filepath.Join(dir, "lights.yaml")
	for path, text := range map[string]string{many: products.String(), lights: crowd.String()} {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, command := range []string{"draw", "meter", "review"} {
		status, said := called(t, command, many)
		want := "this is too much for one run: the first 49 set-ups alone hold 235200 solids, 49 lights and 0 people; name fewer with --setup"
		if status != exitWrong || !strings.Contains(said, want) {
			t.Errorf("%s: status %d, %s", command, status, said)
		}
	}
	if status, said := called(t, "meter", lights); status != exitWrong || !strings.Contains(said, "it holds 4800 solids, 490 lights and 0 people; leave out") {
		t.Errorf("status %d, %s", status, said)
	}
	if status, said := called(t, "review", "--quality", "draft", "--setup", "u7", "--no-notes", many); status == exitWrong {
		t.Errorf("one set-up: %s", said)
	}
}

// Cameras on tracks look at each other from all of them: many are too much, a few are not.
func TestTracksAreWork(t *testing.T) {
	for cameras, want := range map[int]string{20: "", 120: "it holds 0 solids, 0 lights and 0 people, with 120 cameras on tracks; leave out"} {
		s := &plan.Setup{}
		for range cameras {
			s.Cameras = append(s.Cameras, plan.Camera{Track: &plan.Track{}})
		}
		err := (&account{}).add(s)
		if got := fmt.Sprint(err); (err == nil) != (want == "") || err != nil && !strings.Contains(got, want) {
			t.Errorf("%d cameras: %s", cameras, got)
		}
	}
}

// A day of thirty set-ups with twenty lights each in a furnished room is no work too much; of a few more it is.
func TestALongDayIsWork(t *testing.T) {
	for setups, fits := range map[int]bool{30: true, 32: false} {
		var spent account
		var err error
		for range setups {
			s := &plan.Setup{Lights: make([]plan.Light, 20), People: make([]plan.Person, 2)}
			if err = spent.add(s); err != nil {
				break
			}
		}
		if (err == nil) != fits {
			t.Errorf("%d set-ups: %v", setups, err)
		}
	}
}

// A day compares each of its set-ups with each: a hundred of them with a few hundred things are the most.
func TestTheLongestDay(t *testing.T) {
	for setups, fits := range map[int]bool{99: true, 100: false} {
		var d list.Shooting
		for i := range setups {
			s := &plan.Setup{Name: fmt.Sprint("s", i), Circuits: make([]plan.Circuit, 400)}
			for k := range s.Circuits {
				s.Circuits[k].Name = fmt.Sprint("c", k)
			}
			d.Add(s)
		}
		err := tooLong(&d)
		if (err == nil) != fits || err != nil && !strings.Contains(err.Error(), "too much for one day: 100 set-ups with so many things; name fewer with --setup") {
			t.Errorf("%d set-ups: %v", setups, err)
		}
	}
}
