package resolve

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// A set for places: a room, a window in its left wall, a person who faces right, a camera who
// looks up the sheet at her from below.
const stage = `
rooms:     {den: {at: [0, 0], size: [6, 4], wall: 0.2, base: 0.1}}
site:      {ground: -0.4}
openings:  {bay: {window: den.left, along: 1, width: 2}}
furniture: {desk: {table: [1.6, 0.8, 0.75], at: [4, 3], turn: 90}, box: {box: [1, 0.5, 0.4], at: [1, 3.5], turn: 30}}
people:
  ruth: {at: [3, 2], faces: 90}
  carl: {at: [5, 2], faces: ruth}
cameras:   {A: {at: [3, 0.5], looks: ruth, lens: 35 mm}}
`

// lamp is where a light stands that is placed by a place, over its floor.
func lamp(t *testing.T, at string) *plan.Light {
	t.Helper()
	s := resolved(t, stage+"lights: {lamp: {output: {candela: 100, shape: uniform}, at: "+at+", height: 1.6, aim: [2, 2, 1.5]}}")
	return &s.Lights[0]
}

func TestPlaces(t *testing.T) {
	r := math.Sqrt(0.5)
	for _, c := range []struct {
		at    string
		x, y  float64
		floor float64 // that heights are counted from
		base  float64 // that the stand stands on
	}{
		{"[1, 2.5]", 1, 2.5, 0.1, 0.1},
		{"[-3, 2.5]", -3, 2.5, -0.4, -0.4},
		{"{from: ruth, shift: [0.5, -0.25]}", 3.5, 1.75, 0.1, 0.1},
		{"{from: bay}", 0, 2, 0.1, 0.1},

		// Walking from ruth toward the camera, which is down the sheet.
		{"{by: ruth, toward: A, distance: 1}", 3, 1, 0.1, 0.1},
		{"{by: ruth, toward: A, turn: 90, distance: 1}", 2, 2, 0.1, 0.1},              // clockwise from down is left
		{"{by: ruth, toward: A, turn: 90 camera-left, distance: 1}", 2, 2, 0.1, 0.1},  // left in the picture
		{"{by: ruth, toward: A, turn: 90 camera-right, distance: 1}", 4, 2, 0.1, 0.1}, // right in the picture
		{"{by: ruth, toward: A, turn: 45 camera-left, distance: 1}", 3 - r, 2 - r, 0.1, 0.1},
		{"{by: ruth, toward: A, turn: 90 own-left, distance: 1}", 4, 2, 0.1, 0.1}, // of one who looks at the camera
		{"{by: ruth, toward: A, turn: 90 own-right, distance: 1}", 2, 2, 0.1, 0.1},

		// Walking from the camera toward ruth, which is up the sheet.
		{"{by: A, toward: ruth, turn: 90 camera-left, distance: 1}", 2, 0.5, 0.1, 0.1},
		{"{by: A, toward: ruth, turn: 90 camera-right, distance: 1}", 4, 0.5, 0.1, 0.1},
		{"{by: A, toward: ruth, turn: 90 own-left, distance: 1}", 4, 0.5, 0.1, 0.1}, // ruth's left as she looks back
		{"{by: A, turn: 90 camera-left, distance: 1}", 2, 0.5, 0.1, 0.1},            // along its look

		// Walking between two people: the walker's hands.
		{"{by: ruth, toward: carl, turn: 90 left, distance: 1}", 3, 3, 0.1, 0.1},
		{"{by: ruth, toward: carl, turn: 90 right, distance: 1}", 3, 1, 0.1, 0.1},
		{"{by: ruth, toward: carl, turn: -90, distance: 1}", 3, 3, 0.1, 0.1},

		// From a nose: ruth faces right, carl faces her.
		{"{by: ruth, distance: 1}", 4, 2, 0.1, 0.1},
		{"{by: ruth, turn: 90 own-left, distance: 1}", 3, 3, 0.1, 0.1},
		{"{by: ruth, turn: 90 own-right, distance: 1}", 3, 1, 0.1, 0.1},
		{"{by: carl, turn: 90 own-left, distance: 1}", 5, 1, 0.1, 0.1},

		// At walls: left ends as seen from inside.
		{"{wall: den.left, along: 1, in: 0.3}", 0.3, 1, 0.1, 0.1},
		{"{wall: den.top, along: 1, in: 0.3}", 1, 3.7, 0.1, 0.1},
		{"{wall: den.right, along: 1, in: 0.3}", 5.7, 3, 0.1, 0.1},
		{"{wall: den.bottom, along: 1, in: 0.3}", 5, 0.3, 0.1, 0.1},
		{"{wall: den.bottom, in: 0.3}", 3, 0.3, 0.1, 0.1},

		// Beside the window: its middle is at y = 2, right as seen from inside is up the sheet.
		{"{opening: bay, out: 2.5}", -2.7, 2, 0.1, -0.4},
		{"{opening: bay, out: 2.5, along: -0.3}", -2.7, 1.7, 0.1, -0.4},
		{"{opening: bay, in: 0.5, along: 0.3}", 0.5, 2.3, 0.1, 0.1},

		// On the desk, whose top is 0.75 over the floor.
		{"{top: desk, shift: [0.1, 0.2]}", 4.1, 3.2, 0.1, 0.85},
	} {
		l := lamp(t, c.at)
		near2(t, c.at, plan.InPlan(l.Frame.At), r2.Vec{X: c.x, Y: c.y}, 1e-9)
		near(t, "height of "+c.at, l.Frame.At.Z, c.floor+1.6, 1e-12)
		near(t, "base of "+c.at, l.Base, c.base, 1e-12)
	}
}

// Things reach the wall with their near side, however they are turned.
func TestNearSidesAtWalls(t *testing.T) {
	for _, c := range []struct {
		thing string
		x     float64
	}{
		{"box: [1, 0.5, 1]", 0.3 + 0.5},
		{"box: [1, 0.5, 1], turn: 90", 0.3 + 0.25},
		{"box: [1, 0.5, 1], turn: 45", 0.3 + (1+0.5)/2*math.Sqrt(0.5)},
		{"box: [1, 0.5, 1], turn: 180", 0.3 + 0.5},
	} {
		s := resolved(t, "rooms: {den: {size: [4, 3]}}\nfurniture: {f: {"+c.thing+", at: {wall: den.left, along: 1.5, in: 0.3}}}")
		near2(t, c.thing, s.Furniture[0].At, r2.Vec{X: c.x, Y: 1.5}, 1e-12)
		least := math.Inf(1)
		for _, p := range s.Furniture[0].Parts[0].Outline {
			least = min(least, p.X)
		}
		near(t, "near side of "+c.thing, least, 0.3, 1e-12)
	}
}

func TestStandingOnThings(t *testing.T) {
	s := resolved(t, `
furniture:
  riser: {deck: [2, 1, 0.3], at: [0, 0]}
  chair: {box: [0.5, 0.5, 0.45], at: {top: riser, shift: [0.4, 0]}}
  flight: {stairs: [1, 2, 1], steps: 4, at: [5, 0]}
people:
  ada: {at: {top: riser, shift: [-0.5, 0]}, faces: 0}
  bea: {at: {top: flight, shift: [0, 0.3]}, faces: 0}
cameras: {A: {at: {top: riser}, height: 1.2, looks: ada, lens: 35 mm}}
`)
	near(t, "chair", s.Furniture[1].Z0, 0.3, 1e-12)
	near(t, "eyes on the riser", s.People[0].Eyes, 0.3+1.59, 1e-12)
	near(t, "eyes on the third step", s.People[1].Eyes, 0.75+1.59, 1e-12)
	near(t, "camera, above the floor", s.Cameras[0].Frame.At.Z, 1.2, 1e-12)
	near(t, "camera's base", s.Cameras[0].Base, 0.3, 1e-12)
}

// Heights count from the floor of the room that a place belongs to.
func TestHeightsByLevel(t *testing.T) {
	s := resolved(t, `
site: {ground: -0.6}
rooms:
  hall: {size: [3, 3]}
  loft: {at: [3.2, 0], size: [3, 3], base: 1.2}
openings: {hatch: {gap: loft.left, width: 1, head: 1.2}}
lights:
  a: {output: {candela: 9, shape: uniform}, at: [1, 1], height: 2, aim: down}
  b: {output: {candela: 9, shape: uniform}, at: [5, 1], height: 2, aim: down}
  c: {output: {candela: 9, shape: uniform}, at: {opening: hatch, out: 0.5}, height: 0.5, aim: {pan: 90, tilt: 0}}
  d: {output: {candela: 9, shape: uniform}, at: [-5, 1], height: 2, aim: down}
`)
	for i, want := range []struct{ z, base, height float64 }{{2, 0, 2}, {3.2, 1.2, 2}, {1.7, 0, 0.5}, {1.4, -0.6, 2}} {
		l := s.Lights[i]
		near(t, l.Name+" z", l.Frame.At.Z, want.z, 1e-12)
		near(t, l.Name+" base", l.Base, want.base, 1e-12)
		near(t, l.Name+" height", l.Height, want.height, 1e-12)
	}
}

func TestAims(t *testing.T) {
	face := r3.Vec{X: 3.1, Y: 2, Z: 0.1 + 1.59}
	for _, c := range []struct {
		aim   string
		point r3.Vec
		dir   r3.Vec
	}{
		{aim: "ruth", point: face},
		{aim: "carl", point: r3.Vec{X: 4.9, Y: 2, Z: 1.69}},
		{aim: "A", point: r3.Vec{X: 3, Y: 0.5, Z: 1.69}},
		{aim: "desk", point: r3.Vec{X: 4, Y: 3, Z: 0.1 + 0.375}},
		{aim: "desk.top", point: r3.Vec{X: 4, Y: 3, Z: 0.85}},
		{aim: "bay", point: r3.Vec{X: 0, Y: 2, Z: 0.1 + 1.5}},
		{aim: "den.left", point: r3.Vec{X: 0, Y: 2, Z: 0.1 + 1.25}},
		{aim: "den.floor", point: r3.Vec{X: 3, Y: 2, Z: 0.1}},
		{aim: "{ceiling: den, at: [2, 3]}", point: r3.Vec{X: 2, Y: 3, Z: 2.6}},
		{aim: "{from: ruth, height: 1}", point: r3.Vec{X: 3, Y: 2, Z: 1.1}},
		{aim: "{from: ruth, shift: [0.5, 0]}", point: r3.Vec{X: 3.5, Y: 2, Z: 1.69}},
		{aim: "[2, 3, 0.5]", point: r3.Vec{X: 2, Y: 3, Z: 0.5}},
		{aim: "90", dir: r3.Vec{X: 1}},
		{aim: "225", dir: r3.Vec{X: -math.Sqrt(0.5), Y: -math.Sqrt(0.5)}},
		{aim: "up", dir: r3.Vec{Z: 1}},
		{aim: "down", dir: r3.Vec{Z: -1}},
		{aim: "{pan: 30, tilt: -20}", dir: r3.Vec{
			X: math.Sin(math.Pi/6) * math.Cos(math.Pi/9), Y: math.Cos(math.Pi/6) * math.Cos(math.Pi/9), Z: -math.Sin(math.Pi / 9)}},
	} {
		s := resolved(t, stage+"lights: {lamp: {output: {candela: 100, shape: uniform}, at: [1.5, 1], height: 2, aim: "+c.aim+"}}")
		l := &s.Lights[0]
		if c.dir != (r3.Vec{}) {
			near3(t, "axis to "+c.aim, l.Frame.Axis, c.dir, 1e-12)
			near(t, "throw to "+c.aim, l.Throw, 0, 0)
			continue
		}
		near3(t, c.aim, l.AimPoint, c.point, 1e-9)
		near(t, "throw to "+c.aim, l.Throw, r3.Norm(r3.Sub(c.point, l.Frame.At)), 1e-12)
		near3(t, "axis to "+c.aim, l.Frame.Axis, r3.Unit(r3.Sub(c.point, l.Frame.At)), 1e-12)
	}
}

// The lamp frame: right = axis x z, or bearing pan + 90 where the axis is vertical; up = right x
// axis; roll clockwise as seen from behind.
func TestLampFrames(t *testing.T) {
	for _, c := range []struct {
		axis      r3.Vec
		pan, roll float64
		right, up r3.Vec
	}{
		{r3.Vec{Y: 1}, 0, 0, r3.Vec{X: 1}, r3.Vec{Z: 1}},
		{r3.Vec{X: 1}, 0, 0, r3.Vec{Y: -1}, r3.Vec{Z: 1}},
		{r3.Vec{Y: 1}, 0, 90, r3.Vec{Z: -1}, r3.Vec{X: 1}}, // clockwise: up goes to the right
		{r3.Vec{Z: -1}, 0, 0, r3.Vec{X: 1}, r3.Vec{Y: 1}},
		{r3.Vec{Z: -1}, 90, 0, r3.Vec{Y: -1}, r3.Vec{X: 1}},
		{r3.Vec{Z: 1}, 0, 0, r3.Vec{X: 1}, r3.Vec{Y: -1}},
	} {
		f := plan.FrameAlong(r3.Vec{}, c.axis, c.pan, c.roll)
		near3(t, "right", f.Right, c.right, 1e-12)
		near3(t, "up", f.Up(), c.up, 1e-12)
	}
}

func TestBearingsAreExactAtQuarterTurns(t *testing.T) {
	for turn, want := range map[float64]r2.Vec{0: {Y: 1}, 90: {X: 1}, 180: {Y: -1}, 270: {X: -1}, -90: {X: -1}, 450: {X: 1}} {
		if got := plane.Direction(turn); got != want {
			t.Errorf("bearing %v is %v, want %v", turn, got, want)
		}
		near(t, "bearing", math.Mod(plane.Bearing(want)-turn+720, 360), 0, 1e-12)
	}
}
