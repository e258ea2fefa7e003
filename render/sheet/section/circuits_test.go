package section_test

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// The sheet says of each circuit what is on it, what it carries as set and at full, and what it may: figures as in TestLoadsByHand of package supply.
func TestCircuitsAreListed(t *testing.T) {
	const day = `scrimshaw: 1
circuits: {ring: {breaker: 16, rule: 80 %, already: 460 W, at: [0, 2]}, spur: {breaker: 2}, cells: {breaker: 20, kind: battery}}
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: 50 %, circuit: ring}
  b: {unit: fresnel-tungsten-650, at: [1, 0], height: 2, aim: down, circuit: spur}
  c: {unit: fresnel-tungsten-300, at: [2, 0], height: 2, aim: down}
  d: {output: {candela: 100, shape: uniform}, at: [3, 0], height: 2, aim: down, circuit: cells}
`
	want := []string{"On no circuit: 3.",
		"ring: 1: 4.6 A: 4.9 A: 12.8 A: mains of 230 V, 80 % of a breaker of 16 A; 460 W on it already: cable: 1: 4.20 m; of 1.5 mm², loses up to 0.2 %",
		"spur: 2: 2.9 A: 2.9 A: 2 A: mains of 230 V: too much",
		"cells: 4: –: –: 20 A: battery; without 4, whose power nothing says"}
	setups, log := fixture.SetupsOf(t, day)
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	var got []string
	for _, list := range reportOf(section.Input{Setup: setups[0]}).Sections() {
		if list.Title != "Circuits" {
			continue
		}
		got = append(got, list.Words...)
		for _, e := range list.Tables[0].Entries {
			row := strings.Join(append(slices.Clone(e.Cells), e.Notes...), ": ")
			if e.Alarm {
				row += ": too much"
			}
			got = append(got, row)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("the circuits are\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestALossIsNeverNothing: what a cable loses is less than the last figure, and not none.
func TestALossIsNeverNothing(t *testing.T) {
	for share, want := range map[float64]string{0: "0.0 %", 1e-7: "less than 0.1 %", 0.000499: "less than 0.1 %", 0.0005: "0.1 %", 0.0314: "3.1 %"} {
		if got := section.LossWords(share); got != want {
			t.Errorf("%g is %q, want %q", share, got, want)
		}
	}
}
