package supply_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/supply"
)

// A house of three floors by hand: a cable goes to the foot of the stairs, up all of their treads and risers, and on from their head; a tenth of what lies is slack. Where no
// stairs lead to the floor it goes straight, and up the height between the floors. What stands on one floor is in nobody's way on another.
func TestCableBetweenFloors(t *testing.T) {
	const (
		house = `rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 2.8}, top: {size: [6, 5], height: 2.5, base: 5.6}}
`
		boxes  = "  chest: {box: [0.6, 3, 1], at: [2, 1.8]}\n" // on the lowest floor, in the way of a straight line on the others
		stairs = "  flight: {stairs: [1, 4, 2.8], at: [4.4, 2.8]}\n"
		lamp   = "lights: {k: {unit: fresnel-tungsten-650, aim: down, mount: floor, height: 2, circuit: c, at: "
		down   = "{wall: low.left, along: 4.2, in: 0.5}"
		up     = "{wall: high.left, along: 4.2, in: 0.5}"
		above  = "{wall: top.left, along: 4.2, in: 0.5}"
	)
	for _, c := range []struct {
		what, furniture, from, to string
		corners                   []r2.Vec // of its way between its ends
		climb, rise               float64
		stairs                    string
	}{
		{"on one floor", boxes + stairs, "{wall: low.left, along: 2}", "{wall: low.left, along: 4.2, in: 0.5}", nil, 0, 0, ""},
		{"up the stairs", stairs, "{wall: low.bottom, along: 2}", up, []r2.Vec{{X: 4.4, Y: 0.8}, {X: 4.4, Y: 4.8}}, 0, 2.8, "flight"},
		{"down them", stairs, "{wall: high.left, along: 0.5}", down, []r2.Vec{{X: 4.4, Y: 4.8}, {X: 4.4, Y: 0.8}, {X: 3.9, Y: 0.8}}, 0, 2.8, "flight"},
		{"no stairs", boxes, "{wall: low.bottom, along: 5}", up, nil, 2.8, 2.8, ""},
		{"no stairs to the third floor", stairs, "{wall: low.bottom, along: 2}", above, nil, 5.6, 5.6, ""},
		{"no stairs down", boxes, "{wall: top.left, along: 0.5}", down, nil, 5.6, 5.6, ""},
	} {
		scene := house + "furniture:\n" + c.furniture + "circuits: {c: {breaker: 16, at: " + c.from + "}}\n" + lamp + c.to + "}}\n"
		s := resolved(t, scene)
		run := supply.Of(s).Loads[0].Draws[0].Run
		if run == nil {
			t.Errorf("%s: no cable", c.what)
			continue
		}
		sameElsewhere(t, c.what, scene, run)
		path := slices.Concat([]r2.Vec{*s.Circuits[0].Outlet}, c.corners, []r2.Vec{{X: s.Lights[0].Frame.At.X, Y: s.Lights[0].Frame.At.Y}})
		long := 0.0
		for i := 1; i < len(path); i++ {
			long += r2.Norm(r2.Sub(path[i], path[i-1]))
		}
		want := 1.1*long + c.rise + s.Lights[0].Height
		if !(math.Abs(run.Length-want) <= 1e-6) || run.Climb != c.climb || strings.Join(run.Stairs, " ") != c.stairs {
			t.Errorf("%s: %g m over %v with %g m between floors, want %g m\n%v", c.what, run.Length, run.Stairs, run.Climb, want, run.Way)
		}
		if n := len(run.Way); !(math.Abs(run.Way[0].Z-s.Circuits[0].Floor) <= 1e-9) || !(math.Abs(run.Way[n-1].Z-s.Lights[0].Base) <= 1e-9) {
			t.Errorf("%s: in space it goes from %v to %v", c.what, run.Way[0], run.Way[n-1])
		}
	}
}

// sameElsewhere fails where the cable of a scene is another in feet, or across the sheet, or as the feeder of a box where the light stands on its floor.
func sameElsewhere(t *testing.T, what, scene string, want *supply.Run) {
	t.Helper()
	box := regexp.MustCompile(`lights: .* at: (\{.*\})\}\}\n`).ReplaceAllString(scene, "")
	at := regexp.MustCompile(`circuit: c, at: (\{.*\})\}\}\n`).FindStringSubmatch(scene)[1]
	box = regexp.MustCompile(`(circuits: .*)\}\n`).ReplaceAllString(box, "${1}, box: {from: c, item: splitter-3, at: "+at+"}}\n")
	for how, other := range map[string]string{"in feet": inFeet(scene), "across the sheet": acrossSheet(scene), "to a box": box, "to a box, in feet": inFeet(box)} {
		s := resolved(t, other)
		run, long := (*supply.Run)(nil), want.Length
		if all := supply.Of(s); strings.HasPrefix(how, "to a box") {
			run, long = all.Of("box").Feeder, want.Length-2 // it does not go up to a lamp
		} else {
			run = all.Loads[0].Draws[0].Run
		}
		switch {
		case run == nil:
			t.Errorf("%s, %s: no cable\n%s", what, how, other)
		case math.Abs(run.Length-long) > 1e-6 || math.Abs(run.Climb-want.Climb) > 1e-6 || !slices.Equal(run.Stairs, want.Stairs):
			t.Errorf("%s, %s: %g m over %v with %g m between floors, want %g m over %v with %g m", what, how, run.Length, run.Stairs, run.Climb, long, want.Stairs, want.Climb)
		}
	}
}

// figure is a number of a scene, with what says that it is no length.
var figure = regexp.MustCompile(`(breaker: |tungsten-|splitter-)?\d+(\.\d+)?`)

// inFeet is a scene with its lengths in feet.
func inFeet(scene string) string {
	return "units: ft\n" + figure.ReplaceAllStringFunc(scene, func(said string) string {
		metres, err := strconv.ParseFloat(said, 64)
		if err != nil {
			return said
		}
		return strconv.FormatFloat(metres/0.3048, 'f', 12, 64)
	})
}

// acrossSheet is the house of a scene with right and left exchanged, 6 m wide.
func acrossSheet(scene string) string {
	at := regexp.MustCompile(`at: \[([0-9.]+), `)
	scene = at.ReplaceAllStringFunc(scene, func(said string) string {
		x, _ := strconv.ParseFloat(at.FindStringSubmatch(said)[1], 64)
		return fmt.Sprintf("at: [%g, ", 6-x)
	})
	along := regexp.MustCompile(`(low|high|top)\.(left|bottom), along: ([0-9.]+)`)
	return along.ReplaceAllStringFunc(scene, func(said string) string {
		parts := along.FindStringSubmatch(said)
		metres, _ := strconv.ParseFloat(parts[3], 64)
		if parts[2] == "left" {
			return fmt.Sprintf("%s.right, along: %g", parts[1], 5-metres)
		}
		return fmt.Sprintf("%s.bottom, along: %g", parts[1], 6-metres)
	})
}
