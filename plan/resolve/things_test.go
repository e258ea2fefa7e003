package resolve

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/testdata/published"
)

// Each word for how someone holds the body stands for a body of its own.
func TestNoTwoPosesAreOneBody(t *testing.T) {
	bodies := map[string]term.Pose{}
	for _, pose := range term.Poses {
		s := resolved(t, fmt.Sprintf("people: {ada: {at: [1, 2], faces: 30, pose: %s}}", pose))
		var says strings.Builder
		for _, part := range s.People[0].Parts {
			fmt.Fprintf(&says, "%s %.6f to %.6f %.6f; ", part.Kind, part.Z0, part.Z1, part.Outline)
		}
		if other, ok := bodies[says.String()]; ok {
			t.Errorf("%s has the body of %s", pose, other)
		}
		bodies[says.String()] = pose
	}
}

func TestPosesAndEyes(t *testing.T) {
	for _, c := range []struct {
		keys        string
		eyes, crown float64
		assumed     bool
	}{
		{"", 1.59, 1.70, true},
		{"height: 1.84", 1.73, 1.84, false},
		{"pose: seated", 1.20, 1.31, true},
		{"pose: propped", 1.05, 1.16, true},
		{"pose: crouching", 0.85, 0.96, true},
		{"pose: lying", 0.20, 0.20, true},
		{"pose: seated, eyes: 1.12", 1.12, 1.23, false},
	} {
		s := resolved(t, "people: {ada: {at: [1, 2], faces: 30, "+c.keys+"}}")
		p := &s.People[0]
		near(t, c.keys+": eyes", p.Eyes, c.eyes, 1e-12)
		near(t, c.keys+": crown", p.Crown, c.crown, 1e-12)
		near(t, c.keys+": face height of the set-up", s.FaceHeight, c.eyes, 1e-12)
		listed := false
		for _, a := range s.Assumed {
			listed = listed || a.Thing == "people.ada" && a.What == "eyes"
		}
		if listed != c.assumed {
			t.Errorf("%s: eyes assumed %v, want %v", c.keys, listed, c.assumed)
		}
		top, kinds := 0.0, map[plan.PartKind]bool{}
		for _, part := range p.Parts {
			top = max(top, part.Z1)
			kinds[part.Kind] = true
			if plane.Area(part.Outline) <= 0 || part.Z1 <= part.Z0 {
				t.Errorf("%s: %s is broken", c.keys, part.Kind)
			}
		}
		near(t, c.keys+": top of the body", top, p.Crown, 1e-12)
		if !kinds["head"] || !kinds["torso"] || !kinds["legs"] || len(p.Own) != len(p.Parts) {
			t.Errorf("%s: parts %v, %d solids", c.keys, kinds, len(p.Own))
		}
	}
}

// Someone seated or propped on a thing sits on it, with the feet on the floor before it: the eyes go by the
// height of its seat. A deck is a floor. Eyes that are given are counted from the floor.
func TestEyesOfSomeoneOnAThing(t *testing.T) {
	for _, c := range []struct {
		furniture, keys  string
		base, seat, eyes float64
	}{
		{"box: [0.5, 0.5, 0.45]", "pose: seated", 0, 0.45, 1.20},
		{"box: [0.4, 0.4, 0.75]", "pose: seated", 0, 0.75, 1.50},
		{"cylinder: [0.4, 0.6]", "pose: seated", 0, 0.6, 1.35},
		{"table: [1.6, 0.8, 0.75]", "pose: seated", 0, 0.75, 1.50},
		{"sofa: [2, 0.9, 0.8], seat: 0.42", "pose: seated", 0, 0.42, 1.17},
		{"box: [0.5, 0.5, 0.45]", "pose: seated, eyes: 1.12", 0, 0.45, 1.12},
		{"box: [2, 1.6, 0.5]", "pose: propped", 0, 0.5, 1.05},
		{"deck: [2, 2, 0.4]", "pose: seated", 0.4, 0.85, 1.60},
		{"box: [2, 1.6, 0.5]", "pose: standing", 0.5, 0, 2.09},
	} {
		s := resolved(t, "furniture: {it: {"+c.furniture+", at: [1, 2]}}\n"+
			"people: {ada: {at: {top: it}, faces: 30, "+c.keys+"}}\n"+
			"cameras: {A: {at: [3, 2], lens: 35 mm, looks: ada}}")
		p := &s.People[0]
		what := c.keys + " on " + c.furniture
		near(t, what+": feet", p.Base, c.base, 1e-12)
		near(t, what+": eyes", p.Eyes, c.eyes, 1e-12)
		near(t, what+": face", p.Face.At.Z, c.eyes, 1e-12)
		near(t, what+": the lens, at the eyes", s.Cameras[0].Frame.At.Z, c.eyes, 1e-12)
		for _, part := range p.Parts {
			if part.Kind == "torso" && c.seat > 0 {
				near(t, what+": hips", part.Z0, c.seat, 1e-12)
			}
		}
	}
}

// A mark on a chair has the eyes where they are for a person there.
func TestEyesAtAMarkOnAThing(t *testing.T) {
	s := resolved(t, `
furniture: {chair: {box: [0.5, 0.5, 0.45], at: [1, 2]}}
people: {ada: {at: [4, 4], faces: 0, marks: {sit: {at: {top: chair}, pose: seated}}}}
cameras: {A: {at: [3, 2], lens: 35 mm, looks: ada.sit, height: 1}}`)
	near3(t, "the look to the face", s.Cameras[0].Frame.Axis, r3.Unit(r3.Vec{X: -2, Y: faceBefore, Z: 1.2 - 1}), 1e-12)
}

// The heights of eyes that nobody gave lie where published bodies have them: the eyes under the crown to
// 20 mm, and over a seat between men who sit up and women who slump. A seat is as high as shod legs have it.
func TestEyesAsPublished(t *testing.T) {
	const slump, shoes = 40, 25
	of := func(label string) map[string]published.Row {
		rows := map[string]published.Row{}
		for _, row := range published.Read(t, "people.txt") {
			if name, whose, _ := strings.Cut(row.Label, " "); name == label {
				rows[whose] = row
			}
		}
		return rows
	}
	stature, eyes := of("stature"), of("eye-height")
	for whose, row := range stature {
		for i, height := range row.Out {
			near(t, whose+": eyes under the crown", 1000*scene.EyesToCrown, height-eyes[whose].Out[i], 20)
		}
	}
	for whose, row := range of("sitting-height") {
		upright := func(i int) float64 { return row.Out[i] - (stature[whose].Out[i] - eyes[whose].Out[i]) }
		if over := 1000 * scene.EyesOverSeat; over > upright(0) || over < upright(1)-slump {
			t.Errorf("%s: eyes %.0f mm over the seat, and published from %.0f, with a slump, to %.0f", whose, over, upright(1)-slump, upright(0))
		}
	}
	for whose, row := range of("popliteal-height") {
		near(t, whose+": a seat", 1000*scene.SeatHeight, (row.Out[0]+row.Out[1])/2+shoes, 40)
	}
}

func TestFaceStandsBeforeTheHead(t *testing.T) {
	s := resolved(t, "people: {ada: {at: [1, 2], faces: 90}, bea: {at: [3, 2], faces: {pan: 0, tilt: -30}}, cyd: {at: [5, 2], faces: 0, pose: lying}}")
	near3(t, "face", s.People[0].Face.At, r3.Vec{X: 1.1, Y: 2, Z: 1.59}, 1e-12)
	near3(t, "nose", s.People[0].Face.Axis, r3.Vec{X: 1}, 1e-12)
	near3(t, "own right", s.People[0].Face.Right, r3.Vec{Y: -1}, 1e-12)
	near3(t, "lowered nose", s.People[1].Face.Axis, r3.Vec{Y: math.Cos(math.Pi / 6), Z: -0.5}, 1e-12)
	near3(t, "face up", s.People[2].Face.Axis, r3.Vec{Z: 1}, 1e-12)
	near3(t, "own right, lying with the feet up the sheet", s.People[2].Face.Right, r3.Vec{X: 1}, 1e-12)
	for _, p := range s.People {
		for _, part := range p.Parts {
			if part.Kind == "head" && p.Face.Axis.Z == 0 && plane.Contains(plan.InPlan(p.Face.At), part.Outline, 0) {
				t.Errorf("the face of %s is inside the head", p.Name)
			}
		}
	}
}

func TestPeopleFaceTheFirstCameraOfTheSetup(t *testing.T) {
	s := resolved(t, "people: {ada: {at: [0, 0]}}\ncameras: {A: {at: [2, 0], lens: 35 mm}, B: {at: [0, 3], lens: 35 mm}}")
	near(t, "bearing", s.People[0].Faces, 90, 1e-12)
	s = resolved(t, "people: {ada: {at: [0, 0]}}")
	near(t, "bearing without a camera", s.People[0].Faces, 180, 1e-12)
}

// A mirror hangs along the wall that it is placed by, its back against it and its glass to the room, unless it is turned.
func TestMirrorsHangAlongTheirWall(t *testing.T) {
	const den = "rooms: {den: {size: [4, 3]}, bay: {corners: [{a: [10, 0]}, {b: [13, 0]}, {c: [10, 3]}]}}\n"
	for at, want := range map[string]struct {
		turn float64
		at   r2.Vec
	}{
		"{wall: den.top, along: centre}": {0, r2.Vec{X: 2, Y: 2.985}}, "{wall: den.right, along: centre}": {90, r2.Vec{X: 3.985, Y: 1.5}},
		"{wall: den.bottom, along: centre}": {180, r2.Vec{X: 2, Y: 0.015}}, "{wall: den.left, along: centre}": {270, r2.Vec{X: 0.015, Y: 1.5}},
		"{wall: bay.b-c, along: centre}":             {45, r2.Vec{X: 11.5 - 0.015*math.Sqrt2/2, Y: 1.5 - 0.015*math.Sqrt2/2}},
		"{wall: den.left, along: centre}, turn: 180": {180, r2.Vec{X: 0.4, Y: 1.5}},
		"[2, 1]": {0, r2.Vec{X: 2, Y: 1}},
	} {
		s := resolved(t, den+"furniture: {glass: {mirror: [0.8, 1.2], at: "+at+"}}")
		f := s.Furniture[0]
		if !(math.Abs(f.Turn-want.turn) <= 1e-9) || r2.Norm(r2.Sub(f.At, want.at)) > 1e-9 {
			t.Errorf("at %s it is turned by %g at %v, want %g at %v", at, f.Turn, f.At, want.turn, want.at)
		}
	}
}

// What a mirror and a silver board are made of where the scene does not say is the catalogue's, polish and all, though the scene
// has another material of that name.
func TestPolishOfDefaults(t *testing.T) {
	const things = "furniture: {glass: {mirror: [0.8, 1.2], at: [2, 1]}}\ngrip: {board: {silver: [1, 1], at: [3, 2], height: 1.4, faces: 90}}\n"
	const own = "materials: {mirror: {reflectance: 0.1}, silver: {reflectance: 0.1}}\n"
	usual, named := resolved(t, things).Set.Mirrors(), resolved(t, own+things).Set.Mirrors()
	if len(usual) != 3 || len(named) != 3 {
		t.Fatalf("%d sides mirror, and %d beside materials of the same names, want 3: the glass, and the board from both ends", len(usual), len(named))
	}
	for i := range usual {
		if usual[i].Factor != named[i].Factor || usual[i].Power != named[i].Power {
			t.Errorf("mirrors %v in a lobe of %g, and %v of %g beside a material of that name", usual[i].Factor, usual[i].Power, named[i].Factor, named[i].Power)
		}
	}
}

func TestFurnitureParts(t *testing.T) {
	s := resolved(t, `
furniture:
  desk:  {table: [1.6, 0.8, 0.75], at: [0, 0]}
  couch: {sofa: [2, 0.9, 0.8], seat: 0.42, at: [5, 0], turn: 90}
  flight: {stairs: [1, 2, 1.08], at: [10, 0]}
  post:  {cylinder: [0.4, 2], at: [15, 0]}
  shelf: {box: [1, 0.3, 0.04], at: [20, 0], lift: 1.5}
`)
	desk, couch, flight, post, shelf := &s.Furniture[0], &s.Furniture[1], &s.Furniture[2], &s.Furniture[3], &s.Furniture[4]
	if len(desk.Parts) != 5 || len(desk.IDs) != 5 {
		t.Errorf("a table has %d parts", len(desk.Parts))
	}
	near(t, "top of the desk", plane.Area(desk.Parts[0].Outline), 1.28, 1e-12)
	for _, p := range desk.Parts {
		for _, q := range desk.Parts {
			if p.Kind != q.Kind && plane.Intersection(p.Outline, q.Outline) != nil && plane.Overlap(p.Z0, p.Z1, q.Z0, q.Z1) {
				t.Error("top and legs overlap")
			}
		}
	}
	// Turned by 90 clockwise, a sofa's back is to the right.
	for _, p := range couch.Parts {
		if p.Kind == "back" {
			near(t, "back of the couch", plane.Centroid(p.Outline).X, 5+0.45-sofaBack/2, 1e-12)
			near(t, "top of its back", p.Z1, 0.8, 1e-12)
		}
		if p.Kind == "seat" {
			near(t, "seat", p.Z1, 0.42, 1e-12)
		}
	}
	if len(flight.Parts) != 6 {
		t.Errorf("%d steps, want 6 of 0.18 m", len(flight.Parts))
	}
	near(t, "first step", flight.Parts[0].Z1, 0.18, 1e-12)
	near(t, "its place", plane.Centroid(flight.Parts[0].Outline).Y, -1+1.0/6, 1e-12)
	near(t, "area of the post", plane.Area(post.Parts[0].Outline), math.Pi*0.04, 1e-12)
	near(t, "underside of the shelf", shelf.Parts[0].Z0, 1.5, 1e-12)
	near(t, "its top", shelf.Z1, 1.54, 1e-12)
}

func TestCameraGates(t *testing.T) {
	for _, c := range []struct {
		keys  string
		w, h  float64
		times float64 // that the frame is as wide as its picture in the gate
	}{
		{"", 24.89, 24.89 * 9 / 16, 1},
		{"aspect: 2.39", 24.89, 24.89 / 2.39, 1},
		{"aspect: 1.2", 18.66 * 1.2, 18.66, 1},
		{"sensor: full-frame", 36, 20.25, 1},
		{"squeeze: 2", 24.89, 18.66, 2},
		{"sensor: full-frame, squeeze: 1.5", 36, 24, 1.5},
		{"squeeze: 2, aspect: 2.39", 18.66 * 2.39 / 2, 18.66, 2},
		{"sensor: super-35-3perf, squeeze: 1.33, aspect: 2.39", 24.89, 24.89 * 1.33 / 2.39, 1.33},
		{"squeeze: 1.33, aspect: 2.39", 24.89, 24.89 * 1.33 / 2.39, 1.33},
	} {
		s := resolved(t, "cameras: {A: {at: [0, 0], looks: 90, height: 1.5, lens: 50 mm, "+c.keys+"}}")
		a := &s.Cameras[0]
		near(t, c.keys+": width", a.Gate[0], c.w, 1e-9)
		near(t, c.keys+": height", a.Gate[1], c.h, 1e-9)
		near(t, c.keys+": angle", a.HAOV, lens.AngleOfView(c.w*c.times, 50), 1e-12)
		near(t, c.keys+": aspect", a.Aspect, c.w*c.times/c.h, 1e-12)
		near(t, c.keys+": angle", a.VAOV, lens.AngleOfView(c.h, 50), 1e-12)
		near3(t, c.keys+": axis", a.Frame.Axis, r3.Vec{X: 1}, 1e-12)
	}
}

func TestCameraHeightIsThatOfTheEyes(t *testing.T) {
	s := resolved(t, `
people: {ada: {at: [0, 0]}, bea: {at: [3, 0], pose: seated}}
cameras: {A: {at: [0, 4], looks: bea, lens: 35 mm}, B: {at: [0, 5], lens: 35 mm}, C: {at: [0, 6], looks: bea, height: 2, lens: 35 mm}}
`)
	for i, z := range []float64{1.20, 1.59, 2} {
		near(t, s.Cameras[i].Name, s.Cameras[i].Frame.At.Z, z, 1e-12)
	}
}

func TestExposure(t *testing.T) {
	s := resolved(t, `
exposure: {iso: 400, shutter: 1/50, stop: T4, meter: flat}
cameras:
  A: {at: [0, 0], looks: 90, lens: 35 mm}
  B: {at: [0, 1], looks: 90, lens: 35 mm, exposure: {iso: 1600, fps: 50, shutter: 90}}
lights:
  a: {output: {candela: 100, shape: uniform}, at: [3, 3], height: 2, colour: 3200 K}
  k: {output: {candela: 100, shape: uniform}, at: [3, 4], height: 2, colour: 4300 K, role: key}
`)
	x, a, b := s.Exposure, s.Cameras[0].Exposure, s.Cameras[1].Exposure
	if x != a {
		t.Errorf("camera A has %+v, the scene %+v", a, x)
	}
	near(t, "ISO", x.ISO, 400, 0)
	near(t, "fps", x.FPS, 25, 0)
	near(t, "time", x.Seconds, 0.02, 1e-15)
	near(t, "angle", x.Degrees, 180, 1e-9)
	near(t, "stop", x.Stop.N, 4, 1e-12)
	near(t, "constant", x.Constant, 250, 0)
	near(t, "white", x.White.Kelvin, 4300, 0)
	near(t, "ISO of B", b.ISO, 1600, 0)
	near(t, "time of B", b.Seconds, 0.25/50, 1e-15)
	near(t, "stop of B", b.Stop.N, 4, 1e-12)
	near(t, "constant of B", b.Constant, 250, 0)
}

func TestFrameRateFollowsTheMains(t *testing.T) {
	for text, want := range map[string]float64{
		"units: m": 25, "units: ft": 24,
		"circuits: {c: {breaker: 20, hertz: 60}}":                                24,
		"circuits: {c: {breaker: 20, hertz: 6e1}}":                               24,
		"circuits: {c: {breaker: 20, hertz: 59.5}}":                              24,
		"circuits: {c: {breaker: 20, hertz: 600}}":                               25,
		"circuits: {c: {breaker: 20, hertz: 60.5}}":                              24,
		"units: ft\ncircuits: {c: {breaker: 20, hertz: 50}}":                     25,
		"units: ft\ncircuits: {c: {breaker: 20, hertz: 0}}":                      24,
		"circuits: {bank: {breaker: 20, hertz: 0}, c: {breaker: 20, hertz: 60}}": 24,
	} {
		if got := resolved(t, text+"\nrooms: {den: {size: [4, 3]}}").Exposure.FPS; got != want {
			t.Errorf("%s: %v fps, want %v", text, got, want)
		}
	}
}

func TestDefaultExposureIsAsTheLanguageSays(t *testing.T) {
	x := resolved(t, "rooms: {den: {size: [4, 3]}}").Exposure
	near(t, "ISO", x.ISO, 800, 0)
	near(t, "angle", x.Degrees, 180, 0)
	near(t, "stop", x.Stop.N, 2*math.Sqrt2, 1e-15)
	near(t, "constant of the dome", x.Constant, 340, 0)
}

func TestLightsShine(t *testing.T) {
	s := resolved(t, `
lights:
  one:  {output: {candela: 100, shape: uniform}, at: [0, 0], height: 2, level: 50 %}
  pair: {output: {candela: 100, shape: uniform}, at: [0, 1], height: 2, count: 2, level: 50 %}
`)
	near(t, "output", s.Lights[0].RelativeOutput.Y(), 0.5, 1e-12)
	near(t, "output of two", s.Lights[1].RelativeOutput.Y(), 1, 1e-12)
	near3(t, "axis where there is nobody", s.Lights[0].Frame.Axis, r3.Vec{Z: -1}, 0)
}

func TestPracticalStandsOnWhatIsUnderIt(t *testing.T) {
	s := resolved(t, "furniture: {desk: {table: [1.6, 0.8, 0.75], at: [2, 2]}}\nlights: {lamp: {unit: practical-table, at: [2, 2]}}")
	l := &s.Lights[0]
	near(t, "base", l.Base, 0.75, 1e-12)
	if l.Mount.Kind != "floor" || l.Mount.On != "desk" {
		t.Errorf("mount %+v", l.Mount)
	}
	if z := l.Frame.At.Z; z < 0.9 || z > 1.3 {
		t.Errorf("the lamp shines at %v", z)
	}
}

func TestMounts(t *testing.T) {
	base := `
rooms: {den: {size: [4, 3]}}
furniture: {desk: {box: [1, 1, 0.7], at: [1, 1]}, riser: {deck: [1, 1, 0.3], at: [3, 2]}}
lights: {a: {output: {candela: 100, shape: uniform}, at: %s, height: 2, aim: down, mount: %s}}
`
	for _, c := range []struct {
		at, mount string
		kind      string
		base      r2.Vec
		z         float64
	}{
		{"[2, 2.5]", "stand", "stand", r2.Vec{X: 2, Y: 2.5}, 0},
		{"[2, 2.5]", "hand", "hand", r2.Vec{X: 2, Y: 2.5}, 0},
		{"[3, 2]", "{stand: riser}", "stand", r2.Vec{X: 3, Y: 2}, 0.3},
		{"[2, 2]", "{boom: 1.2, base: [2.5, 2.5]}", "boom", r2.Vec{X: 2.5, Y: 2.5}, 0},
		{"[2, 1]", "{clamp: desk}", "clamp", r2.Vec{X: 1.5, Y: 1}, 0},
		{"[2, 2.5]", "{wall: den.top}", "wall", r2.Vec{X: 2, Y: 3}, 0},
		{"[2, 2.5]", "{pole: [den.left, den.right]}", "pole", r2.Vec{Y: 2.5}, 0},
		{"[2, 2.5]", "{lift: 4}", "lift", r2.Vec{X: 2, Y: 2.5}, 0},
	} {
		l := &resolved(t, fmt.Sprintf(base, c.at, c.mount)).Lights[0]
		if string(l.Mount.Kind) != c.kind {
			t.Errorf("%s is a %s", c.mount, l.Mount.Kind)
		}
		near2(t, c.mount, l.Mount.Base, c.base, 1e-12)
		near(t, "level of "+c.mount, l.Base, c.z, 1e-12)
	}
}

func TestPlacingByTape(t *testing.T) {
	s := resolved(t, `
rooms: {den: {size: [5, 4], wall: 0.2}}
openings: {bay: {window: den.left, along: 1, width: 2}}
lights:
  in:  {output: {candela: 100, shape: uniform}, at: [4.2, 3.1], height: 2, aim: down}
  out: {output: {candela: 100, shape: uniform}, at: {opening: bay, out: 2.5, along: 0.4}, height: 1.5, aim: [2, 2, 1.5]}
  yard: {output: {candela: 100, shape: uniform}, at: [-2, -1], height: 1.5, aim: [1, 2.5, 1.5]}
`)
	for i, want := range []string{
		"den.right 0.800; den.top 0.900",
		// The middle of the window is at y = 2; the lamp stands at 2.4, 0.6 short of the upper jamb,
		// which is right as seen from inside and left as seen from outside.
		"den.left, outside face 2.500; bay, left jamb from outside 0.600",
		"den.left, outside face 1.800; bay, right jamb from outside 2.000",
	} {
		var got []string
		for _, d := range s.Lights[i].Placing {
			got = append(got, fmt.Sprintf("%s %.3f", d.From, d.Metres))
			near(t, "length of the dimension", r2.Norm(r2.Sub(d.B, d.A)), d.Metres, 1e-9)
		}
		if strings.Join(got, "; ") != want {
			t.Errorf("%s is placed by %s, want %s", s.Lights[i].Name, strings.Join(got, "; "), want)
		}
	}
}

func TestGripSheets(t *testing.T) {
	s := resolved(t, `
people: {ada: {at: [0, 0], faces: 90}}
grip:
  f: {flag: [1.2, 0.8], at: {by: ada, distance: 1}}
  c: {card: [1, 1], at: [0, 2], height: 1, faces: up}
  n: {net: [1, 1], at: [5, 2], height: 1}
`)
	f := &s.Grip[0]
	near(t, "height of the flag", f.Frame.At.Z, 1.59, 1e-12)
	near3(t, "it faces ada", f.Frame.Axis, r3.Vec{X: -1}, 1e-9)
	if f.Tag != "G1" || s.Grip[2].Tag != "G3" {
		t.Errorf("tags %s, %s", f.Tag, s.Grip[2].Tag)
	}
	if len(s.Set.Sheets) != 3 || len(s.Bodies.Sheets) != 0 {
		t.Errorf("%d sheets shade, %d do not", len(s.Set.Sheets), len(s.Bodies.Sheets))
	}
	for i, want := range []struct{ normal r3.Vec }{{r3.Vec{X: -1}}, {r3.Vec{Z: 1}}} {
		h := s.Set.Sheets[i]
		n := r3.Cross(r3.Sub(h.Corners[1], h.Corners[0]), r3.Sub(h.Corners[3], h.Corners[0]))
		near3(t, "front of "+h.Name, r3.Unit(n), want.normal, 1e-9)
	}
	near(t, "area of the flag", r3.Norm(r3.Cross(r3.Sub(s.Set.Sheets[0].Corners[1], s.Set.Sheets[0].Corners[0]), r3.Sub(s.Set.Sheets[0].Corners[3], s.Set.Sheets[0].Corners[0]))), 0.96, 1e-9)
}

func TestMeters(t *testing.T) {
	s := resolved(t, `
rooms: {den: {size: [5, 4]}}
openings: {bay: {window: den.left, width: 1}}
people: {ada: {at: [2, 2]}}
cameras: {A: {at: [4, 2], height: 1.5, lens: 35 mm}}
meters:
  flat: {flat: [1, 1, 0.8]}
  dome: {dome: [3, 2, 1.5]}
  spot: {spot: [2, 2, 1.5], from: A}
  pane: {spot: bay, from: A}
`)
	near3(t, "a flat meter looks up", s.Meters[0].Facing, r3.Vec{Z: 1}, 0)
	near3(t, "a dome looks at the camera", s.Meters[1].Facing, r3.Vec{X: 1}, 1e-12)
	near3(t, "a spot meter looks from the lens", s.Meters[2].Facing, r3.Vec{X: -1}, 1e-12)
	near3(t, "from where the lens is", s.Meters[2].Lens, r3.Vec{X: 4, Y: 2, Z: 1.5}, 1e-12)
	near3(t, "at its point", s.Meters[2].At, r3.Vec{X: 2, Y: 2, Z: 1.5}, 1e-12)
	near3(t, "middle of the window", s.Meters[3].At, r3.Vec{Y: 2, Z: 1.5}, 1e-12)
}

// TestALampOfTheSetStandsUpright: what shines all round is pointed at nobody, so it has no throw and
// nothing was assumed; a lamp with a metal shade, or one that names its aim, has both.
func TestALampOfTheSetStandsUpright(t *testing.T) {
	for _, c := range []struct {
		lamp   string
		throws bool
	}{
		{"unit: practical-table", false},
		{"unit: practical-floor", false},
		{"unit: practical-ceiling, mount: ceiling", false},
		{"unit: practical-bulb", false},
		{"unit: paper-lantern-60", false},
		{"unit: practical-table, aim: ruth", true},
		{"unit: practical-desk", true},
		{"unit: lantern-100", false},
		{"unit: led-point-150-bicolour, modifier: lantern-60", true},
	} {
		s := resolved(t, "people: {ruth: {at: [1, 1]}}\nlights: {lamp: {"+c.lamp+", at: [2, 2], height: 1.4}}")
		l := &s.Lights[0]
		if throws := l.Throw > 0; throws != c.throws {
			t.Errorf("%s throws: %v", c.lamp, throws)
		}
		if upright := l.Frame.Axis == (r3.Vec{Z: 1}); upright == c.throws {
			t.Errorf("%s points along %v", c.lamp, l.Frame.Axis)
		}
		assumed := slices.ContainsFunc(s.Assumed, func(a plan.Assumption) bool { return a.Thing == "lights.lamp" && a.What == "aim" })
		if want := c.throws && !strings.Contains(c.lamp, "aim"); assumed != want {
			t.Errorf("%s: an aim was assumed: %v", c.lamp, assumed)
		}
	}
}

// What people wear and their skin return light as they are written, by figure or by name; the head as the clothes
// where no skin is.
func TestClothesAndSkin(t *testing.T) {
	log := &source.Log{}
	doc := opened(t, `
materials: {limewash: {reflectance: 0.7}}
people:
  ada: {at: [0, 0]}
  ben: {at: [2, 0], wears: 0.6}
  eva: {at: [4, 0], wears: limewash, skin: 0.35}
`, log)
	out := Resolve(doc, doc.Base(log), log)
	want := map[string][2]float64{"ada": {0.2, 0.2}, "ben": {0.6, 0.6}, "eva": {0.35, 0.7}}
	for i := range out.People {
		p := &out.People[i]
		for k, id := range p.Own {
			for _, prism := range out.Set.Prisms {
				if prism.ID != id {
					continue
				}
				y := want[p.Name][1]
				if p.Parts[k].Kind == "head" {
					y = want[p.Name][0]
				}
				if prism.Skin != paint(grey(y)) {
					t.Errorf("the %s of %s is %v, want %v", p.Parts[k].Kind, p.Name, prism.Skin, y)
				}
			}
		}
	}
}

// A globe in a skirt shines down unless it is aimed, whoever is there, and the sheet says that it was assumed.
func TestASkirtShinesDown(t *testing.T) {
	s := resolved(t, "people: {ruth: {at: [1, 1]}}\nlights: {a: {unit: lantern-100, modifier: skirt, at: [2, 2], height: 2}, b: {unit: lantern-100, modifier: skirt, at: [2, 1], height: 2, aim: ruth}}")
	if down := s.Lights[0].Frame.Axis; down != (r3.Vec{Z: -1}) {
		t.Errorf("it points along %v", down)
	}
	if s.Lights[1].Throw == 0 {
		t.Error("one that is aimed has no throw")
	}
	said := ""
	for _, a := range s.Assumed {
		if a.What == "aim" {
			said += a.Thing + " " + a.Value + ";"
		}
	}
	if said != "lights.a down;" {
		t.Errorf("assumed: %q", said)
	}
}
