package draw

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/internal/fixture"
)

// TestRingsBesideAFaceStayFromCloseBy: of a camera 1 m from the face that it looks at, the rings half way and nearer to the lens are left out; the shadow
// on the face's own side stays. From further off those within 1.25 m go, and so they do where nobody is looked at.
func TestRingsBesideAFaceStayFromCloseBy(t *testing.T) {
	in := fixture.Example()
	at, camera := in.Setup.People[0].At, &in.Setup.Cameras[0]
	ring := func(lens r2.Vec, toFace float64) carto.Line {
		c := r2.Add(lens, r2.Vec{Y: toFace})
		const r = 0.05
		return carto.Line{Closed: true, Points: []r2.Vec{{X: c.X - r, Y: c.Y - r}, {X: c.X + r, Y: c.Y - r}, {X: c.X, Y: c.Y + r}}}
	}
	for _, k := range []struct {
		away   float64 // of the lens from the face, m
		looks  string
		toFace float64 // of the ring from the lens, m
		left   bool    // whether it is left out
	}{
		{1, in.Setup.People[0].Name, 0.3, true}, {1, in.Setup.People[0].Name, 0.7, false},
		{1, "", 0.7, true}, {1.3, in.Setup.People[0].Name, 0.7, true}, {1.3, in.Setup.People[0].Name, 1.25, false},
	} {
		lens := r2.Sub(at, r2.Vec{Y: k.away})
		camera.Frame.At, camera.Looks = r3.Vec{X: lens.X, Y: lens.Y, Z: 1.2}, k.looks
		if left := (maps{kitchenDrawing(t, in)}).aroundLens(lens)(ring(lens, k.toFace)); left != k.left {
			t.Errorf("%.1f m from %q, a ring %.2f m before the lens: left out %v, want %v", k.away, k.looks, k.toFace, left, k.left)
		}
	}
}
