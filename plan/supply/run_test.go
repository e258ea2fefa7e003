package supply_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"scrimshaw/plan/supply"
)

// A cable by hand: from an outlet in the corner of one room through the middle of a door 0.8 m wide to a lamp in the next. The jambs keep it 0.15 m
// off, and the wall is 0.15 m thick: its way bends at the corners of the grown jamb, and a tenth more of it is laid, and 2 m up the stand.
func TestCableThroughADoor(t *testing.T) {
	s := resolved(t, `rooms: {den: {size: [4, 3]}, hall: {at: [4.15, 0], size: [2, 3]}}
openings: {d: {door: den.right, along: 1.1, ajar: 90}}
circuits: {ring: {breaker: 16, at: [1, 1.5]}}
lights: {k: {unit: fresnel-tungsten-650, at: [5.5, 1.5], height: 2, aim: down, mount: floor, circuit: ring}}
`)
	run := supply.Of(s).Loads[0].Draws[0].Run
	if run == nil {
		t.Fatal("no cable")
	}
	if want := 1.1*4.5 + 2; !(math.Abs(run.Length-want) <= 1e-6) {
		t.Errorf("straight through the door it is %g m long, want %g", run.Length, want)
	}
	if !slices.Equal(run.Through, []string{"d"}) || run.Section != 1.5 {
		t.Errorf("it leads through %v, of %g mm²", run.Through, run.Section)
	}
	if want := 2 * run.Length * 13.3e-3 * 304.5 / 254.5 * 650 / 230 / 230; !(math.Abs(run.Drop-want) <= 1e-9) {
		t.Errorf("it loses %g of its volts, want %g", run.Drop, want)
	}
}

// A cable goes round what stands on the floor and under what does not; past a person it bends; from an outlet in the wall it comes
// straight out, and in a closed room there is none.
func TestCableRoundThings(t *testing.T) {
	const den = "rooms: {den: {size: [4, 3]}}\n"
	scene := func(more, at string) float64 {
		run := supply.Of(resolved(t, den+more+"circuits: {ring: {breaker: 16, at: "+at+"}}\n"+
			"lights: {k: {unit: fresnel-tungsten-650, at: [3.5, 1.5], height: 0.3, aim: up, mount: floor, circuit: ring}}\n")).Loads[0].Draws[0].Run
		if run == nil {
			return math.Inf(1)
		}
		return (run.Length - 0.3) / 1.1
	}
	const outlet = "{wall: den.left, along: 1.5}"
	// Past a box of 1 x 1 m, 1.5 m on, over the two ends of its far edge, 0.15 m off: corners are cut, so the edge is as much longer at both.
	cut := 0.15 * (math.Sqrt2 - 1)
	round := math.Hypot(1.5-cut, 0.65) + 1 + 2*cut + math.Hypot(1-cut, 0.65)
	for _, c := range []struct {
		what, more, at string
		want, within   float64
	}{
		{"an empty room", "", outlet, 3.5, 1e-6},
		{"a table", "furniture: {t: {table: [1, 1, 0.7], at: [2, 1.5]}}\n", outlet, 3.5, 1e-6},
		{"a frame that reaches down to the floor", "grip: {f: {frame: [1, 2], cloth: silk, at: [2, 1.5], height: 1, faces: 90, mount: hand}}\n", outlet,
			math.Hypot(1.99-cut, 0.65) + 0.02 + 2*cut + math.Hypot(1.49-cut, 0.65), 1e-6},
		{"a frame that does not", "grip: {f: {frame: [1, 2], cloth: silk, at: [2, 1.5], height: 1.2, faces: 90, mount: hand}}\n", outlet, 3.5, 1e-6},
		{"a box that hangs", "furniture: {t: {box: [1, 1, 0.7], at: [2, 1.5], lift: 0.5}}\n", outlet, 3.5, 1e-6},
		{"a box", "furniture: {t: {box: [1, 1, 0.7], at: [2, 1.5]}}\n", outlet, round, 1e-6},
		{"from outside a closed room", "", "[-1, 1.5]", math.Inf(1), 0},
		{"from outside through a window", "openings: {w: {window: den.left, along: centre, width: 1}}\n", "[-1, 1.5]", 4.5 + 2*0.9/1.1, 1e-6}, // up and down at a sill of 0.9 m
	} {
		got := scene(c.more, c.at)
		if got != c.want && !(math.Abs(got-c.want) <= c.within) {
			t.Errorf("%s: %g m of way, want %g", c.what, got, c.want)
		}
	}
	if got := scene("people: {ada: {at: [2, 1.5]}}\n", outlet); got < 3.51 || got > 4 {
		t.Errorf("past a person: %g m of way", got)
	}
}

// A gap between rooms of other heights, or with a step, lets a cable through, and up or down the step: what of a wall is over the gap is in
// nobody's way.
func TestCableUnderAHigherWall(t *testing.T) {
	for hall, step := range map[string]float64{"height: 3": 0, "height: 2.2": 0, "base: 0.2": 0.2, "base: -0.2": 0.2, "base: 1, height: 4": 1} {
		s := resolved(t, "rooms: {den: {size: [5, 4]}, hall: {at: [5.15, 0], size: [5, 4], "+hall+"}}\n"+`openings: {g: {gap: den.right, width: 2, head: 2}}
circuits: {ring: {breaker: 16, at: [1, 2]}, back: {breaker: 16, at: [8, 2]}}
lights: {k: {unit: fresnel-tungsten-650, at: [8, 2], height: 0.3, aim: up, mount: floor, circuit: ring}, l: {unit: fresnel-tungsten-650, at: [1, 2], height: 0.3, aim: up, mount: floor, circuit: back}}
`)
		for _, load := range supply.Of(s).Loads {
			if run := load.Draws[0].Run; run == nil || !(math.Abs(run.Length-1.1*7-step-0.3) <= 1e-6) || !slices.Equal(run.Through, []string{"g"}) {
				t.Errorf("with %s the cable of %s is %+v, want 7 m of way through the gap and a step of %g m", hall, load.Circuit.Name, run, step)
			}
		}
	}
}

// In a house of two floors, half a metre over the street, a cable leads out by the door, down the step and up to the lamp, and not by the window
// of the floor above, which lies over the door. A lamp on a table has its cable from the floor.
func TestCableOnItsOwnFloor(t *testing.T) {
	const house = `site: {ground: -0.5}
rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 2.8}}
openings: {d: {door: low.bottom, along: 2.5, width: 1}, w: {window: high.bottom, along: 2.5, width: 1, sill: 0.9}}
furniture: {desk: {table: [1, 1, 0.75], at: [3, 3]}}
circuits: {ring: {breaker: 16, at: [3, 2]}}
lights: {k: {unit: fresnel-tungsten-650, aim: down, circuit: ring, %s}}
`
	for _, c := range []struct {
		where   string
		want    float64
		through []string
	}{
		{"at: [3, -3], height: 2, mount: floor", 1.1*5 + 0.5 + 2, []string{"d"}},
		{"at: {top: desk}, height: 1.15", 1.1*1 + 1.15, nil},
	} {
		run := supply.Of(resolved(t, fmt.Sprintf(house, c.where))).Loads[0].Draws[0].Run
		if run == nil || !(math.Abs(run.Length-c.want) <= 1e-6) || !slices.Equal(run.Through, c.through) || run.Over != nil {
			t.Errorf("%s: %+v, want %g m through %v", c.where, run, c.want, c.through)
		}
	}
}

// A breaker that no cable of the kit stands has none.
func TestNoCableOfTheKit(t *testing.T) {
	s := resolved(t, `circuits: {big: {breaker: 900, at: [0, 0]}}
lights: {k: {unit: fresnel-tungsten-650, at: [3, 0], height: 2, aim: down, circuit: big}}
`)
	if run := supply.Of(s).Loads[0].Draws[0].Run; run.Section != 0 || run.Drop != 0 {
		t.Errorf("a cable of %g mm² that loses %g", run.Section, run.Drop)
	}
}
