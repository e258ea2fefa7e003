package study_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/study"
)

// Projection spots, held to the path tracer: flat fields in and out of focus, cuts by their depth and up to a thing, broken
// patterns; straight, and off the floor, a card and what stands on it.
func TestTracedProjectionSpots(t *testing.T) {
	const room = "scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}}"
	for name, text := range map[string]string{
		"a flat field, cut": `lights: {s: {output: {lumens: 3000, beam: 26, field: 30}, at: [0.6, 1.6], height: 1.6, aim: {pan: 95, tilt: -8}, focus: 40 %,
				cuts: [{angle: 10, depth: 35 %}, {angle: 265, depth: 20 %}]}}, meters: {in: {flat: [3.4, 1.5, 1.1], facing: 275}, edge: {flat: [3.4, 1.5, 1.36], facing: 275},
				out: {flat: [3.4, 1.5, 1.8], facing: 275}, fill: {flat: [2, 1.7, 1.2], facing: 60}, floor: {flat: [3, 2.2, 0.02], facing: up}}`,
		"a soft pattern": `lights: {s: {output: {lumens: 3000, beam: 34, field: 37}, at: [0.6, 1.6], height: 1.6, aim: {pan: 85, tilt: 0}, focus: 15 %,
				breakup: {open: 40 %, grain: 12 %, seed: 5}}}, meters: {a: {flat: [3.9, 1.9, 1.5], facing: 270}, b: {flat: [3.9, 2.1, 1.7], facing: 270}, c: {flat: [3.9, 1.7, 1.3], facing: 270},
				fill: {flat: [2, 1.7, 1.2], facing: 60}, back: {dome: [1.6, 2.6, 1.4], facing: 90}}`,
		"cut up to a card": `grip: {c: {card: [0.6, 0.4], at: [3, 1.8], height: 1, faces: 265}},
			lights: {s: {output: {lumens: 2500, beam: 30, field: 34}, at: [1, 1.6], height: 1.7, aim: c, focus: sharp,
				cuts: [{angle: 0, to: c}, {angle: 90, to: c}, {angle: 180, to: c}, {angle: 270, to: c}]}},
			meters: {face: {flat: [2.4, 1.6, 1.2], facing: 100}, on: {flat: [2.98, 1.8, 1], facing: 265}, wall: {flat: [3.95, 1.8, 0.9], facing: 270}, above: {flat: [3, 1.8, 1.4], facing: down}}`,
	} {
		heldToTruth(t, name, "{"+room+", "+text+"}", 0.01)
	}
}

// onFloor are the places of a floor and what comes straight to each, lx, of a lamp 3 m over the middle that looks down with its
// top to the sheet's up.
func onFloor(t *testing.T, gate string) (places []r2.Vec, lux []float64, area float64) {
	t.Helper()
	lit := run(t, laidOut(t, `scrimshaw: 1
rooms: {k: {size: [3, 3], height: 4}}
lights: {s: {output: {lumens: 3000, beam: 30, field: 34}, at: [1.5, 1.5], height: 3, aim: down`+gate+`}}
`), study.Options{Step: 0.01})
	lattice := lit.Floor().Lattice
	for j := range lattice.NV {
		for i := range lattice.NU {
			at := lattice.At(i, j)
			places = append(places, r2.Vec{X: at.X - 1.5, Y: at.Y - 1.5})
			lux = append(lux, float64(lit.Basis.Fields[0][0][j*lattice.NU+i]))
		}
	}
	return places, lux, r3.Norm(lattice.U) * r3.Norm(lattice.V)
}

// A spot's flux on a floor after its cuts is that of what they leave of its image, to half a percent: what the uncut
// lamp gives to all places that the straight edges do not take.
func TestFluxAfterCuts(t *testing.T) {
	radius := 3 * math.Tan(15*math.Pi/180)
	for _, c := range []struct{ top, right, bottom, left float64 }{{top: 0.3}, {right: 0.6}, {0.2, 0.35, 0.25, 0.4}} {
		places, all, area := onFloor(t, ", focus: sharp")
		_, some, _ := onFloor(t, fmt.Sprintf(", focus: sharp, cuts: [{angle: 0, depth: %g %%}, {angle: 90, depth: %g %%}, {angle: 180, depth: %g %%}, {angle: 270, depth: %g %%}]",
			100*c.top, 100*c.right, 100*c.bottom, 100*c.left))
		// What of the cell about a place lies within an edge so far from the axis.
		within := func(at, depth float64) float64 {
			return min(max((radius*(1-2*depth)-at)/math.Sqrt(area)+0.5, 0), 1)
		}
		got, want := 0.0, 0.0
		for n, p := range places {
			got += some[n] * area
			want += all[n] * area * within(p.Y, c.top) * within(p.X, c.right) * within(-p.Y, c.bottom) * within(-p.X, c.left)
		}
		if !(math.Abs(got/want-1) <= 0.005) {
			t.Errorf("%v: %.1f lm are left, and the rest of the image has %.1f", c, got, want)
		}
	}
}

// The edge of a cut lies within 5 mm of where the straight edge falls at 3 m, in focus and out of it: there the light is halved.
func TestCutsLieWhereTheyAreSet(t *testing.T) {
	radius := 3 * math.Tan(15*math.Pi/180)
	for _, focus := range []string{"sharp", "60 %"} {
		for _, depth := range []float64{0.2, 0.45, 0.6} {
			places, all, _ := onFloor(t, ", focus: "+focus)
			_, some, _ := onFloor(t, fmt.Sprintf(", focus: %s, cuts: [{angle: 90, depth: %g %%}]", focus, 100*depth))
			// Along the row through the middle, from the axis outward, where the uncut image has light.
			edge, last := math.NaN(), 1.0
			for n, p := range places {
				if math.Abs(p.Y) > 0.006 || all[n] < 0.9*all[len(all)/2] {
					continue
				}
				share := some[n] / all[n]
				if last > 0.5 && share <= 0.5 {
					edge = p.X - 0.01*(0.5-share)/(last-share)
				}
				last = share
			}
			if want := radius * (1 - 2*depth); !(math.Abs(edge-want) < 0.005) {
				t.Errorf("%s, %g %%: the edge lies at %.4f m, not at %.4f", focus, 100*depth, edge, want)
			}
		}
	}
}
