package draw

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
)

// TestRimsSayWhereLightLands: of a footprint that a wall and a leaf cut, what runs along them is not
// drawn, nor the steps from a table to the floor.
func TestRimsSayWhereLightLands(t *testing.T) {
	in := fixture.Example()
	c := kitchenDrawing(t, in)
	at := r2.Vec{X: 2.7, Y: 2.9}
	hinge, tip, ok := leafOf(&in.Setup.Openings[1])
	if !ok {
		t.Fatal("the door has no leaf")
	}
	for _, k := range []struct {
		name string
		line []r2.Vec
		rim  bool
		want int
	}{
		{"along a wall", []r2.Vec{{X: 0.3, Y: 3.59}, {X: 1.8, Y: 3.6}}, false, 0},
		{"along the far face of a wall", []r2.Vec{{X: 0.3, Y: 3.79}, {X: 1.8, Y: 3.8}}, false, 0},
		{"along a dresser", []r2.Vec{{X: 1.3, Y: 0.51}, {X: 2.5, Y: 0.5}}, false, 0},
		{"along a leaf", []r2.Vec{box.Interpolate(hinge, tip, 0.1), box.Interpolate(hinge, tip, 0.9)}, false, 0},
		{"across a room", []r2.Vec{{X: 0, Y: 1}, {X: 4.2, Y: 2}}, false, 1},
		{"over the edge of a table", []r2.Vec{{X: 2.7, Y: 2.3}, {X: 2.7, Y: 1.5}}, true, 0},
		{"a side, which runs that way", []r2.Vec{{X: 2.7, Y: 2.3}, {X: 2.7, Y: 1.5}}, false, 1},
		{"round the lamp", []r2.Vec{{X: 2.4, Y: 2.0}, {X: 2.7, Y: 1.9}, {X: 3.0, Y: 2.0}}, true, 1},
		{"round the lamp, with a step between", []r2.Vec{{X: 2.4, Y: 2.2}, {X: 2.7, Y: 2.1}, {X: 2.72, Y: 1.4}, {X: 3.0, Y: 1.5}}, true, 2},
	} {
		if got := significantParts(c.In.Setup, at, k.line, k.rim); len(got) != k.want {
			t.Errorf("%s: %v, want %d lines", k.name, got, k.want)
		}
	}
}
