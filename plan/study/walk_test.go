package study_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// walkOf is the only walk of a scene.
func walkOf(t *testing.T, text string) (*meter.Walk, *study.Study) {
	t.Helper()
	lit := run(t, laidOut(t, text), study.Options{ReadingsOnly: true})
	if len(lit.Readings.Walks) != 1 {
		t.Fatalf("%d walks", len(lit.Readings.Walks))
	}
	return &lit.Readings.Walks[0], lit
}

// Past one point of light in the open each reading along a straight walk is I cos t/d² on the sides and I (1 + cos t)/2d² under
// the dome, and the stops are its logarithm.
func TestAWalkPastAPointOfLight(t *testing.T) {
	const candela = 900.0
	lamp, camera := r3.Vec{X: 1.5, Y: 2, Z: 2.2}, r3.Vec{X: 6, Y: 3, Z: 1.4}
	w, lit := walkOf(t, `{scrimshaw: 1, people: {ada: {at: [-9, -9], faces: 0, height: 1.7, walk: [[-1, 0.2], [3.3, 0.2]]}},
		cameras: {A: {at: [6, 3], height: 1.4, lens: 35 mm, looks: 270}},
		lights: {p: {output: {candela: 900, shape: uniform}, at: [1.5, 2], height: 2.2, mount: {lift: 2}}}}`)
	if len(w.Points) != 10 {
		t.Fatalf("%d places", len(w.Points))
	}
	exposure := lit.Setup.Exposure
	for i := range w.Points {
		p := &w.Points[i]
		at := r3.Vec{X: math.Min(-1+0.5*float64(i), 3.3), Y: 0.2, Z: 1.59}
		d := r3.Sub(lamp, at)
		far := r3.Norm(d)
		plane := func(axis r3.Vec) float64 { return candela * math.Max(0, r3.Dot(axis, d)/far) / (far * far) }
		dome := candela * (1 + r3.Dot(r3.Unit(r3.Sub(camera, at)), d)/far) / 2 / (far * far)
		half := math.Sqrt(0.5)
		for name, c := range map[string]struct {
			got  *float64
			want float64
		}{
			"left":  {p.Left.Lux, plane(r3.Vec{X: half, Y: half})},
			"right": {p.Right.Lux, plane(r3.Vec{X: half, Y: -half})},
			"dome":  {p.Domes[0].Lux, dome},
			"over":  {w.Courses[0].Over[i], math.Log2(dome * float64(exposure.ISO) * exposure.Seconds / exposure.Constant / (exposure.Stop.N * exposure.Stop.N))},
		} {
			if !(math.Abs(*c.got-c.want) <= 1e-9*math.Max(1, math.Abs(c.want))) {
				t.Errorf("%s at %.1f m: %v, want %v", name, p.Along, *c.got, c.want)
			}
		}
	}
}

// From a camera that rolls a walk is read toward both ends of its track: what it is toward a camera that stands there.
func TestAWalkReadsTowardBothEndsOfATrack(t *testing.T) {
	const scene = `{scrimshaw: 1, people: {ada: {at: [-9, -9], faces: 0, walk: [[-1, 0.2], [3.3, 0.2]]}}, cameras: {A: {%s, height: 1.4, lens: 35 mm, looks: 270}},
		lights: {p: {output: {candela: 900, shape: uniform}, at: [1.5, 2], height: 2.2, mount: {lift: 2}}}}`
	rolling, _ := walkOf(t, fmt.Sprintf(scene, "track: [[6, 3], [5, -3]]"))
	for i, at := range []string{"at: [6, 3]", "at: [5, -3]"} {
		standing, _ := walkOf(t, fmt.Sprintf(scene, at))
		if c := rolling.Courses[i]; c.Camera != []string{"A", "A.end"}[i] || *c.Worst != *standing.Courses[0].Worst {
			t.Errorf("%+v, standing %+v", c, standing.Courses[0])
		}
		for k := range rolling.Points {
			if got, want := *rolling.Points[k].Domes[i].Lux, *standing.Points[k].Domes[0].Lux; !(math.Abs(got-want) <= 1e-9*want) {
				t.Errorf("%s at %.1f m: %v, standing %v", at, rolling.Points[k].Along, got, want)
			}
		}
	}
}

// Along a walk through a furnished room each reading is that of a single meter held there: what comes straight to the last
// figures, all of it to the errors that both state.
func TestAWalkReadsAsMetersDo(t *testing.T) {
	const room = `{scrimshaw: 1, rooms: {den: {size: [5, 4]}}, openings: {w: {window: den.left, along: 1, width: 1.4}},
		furniture: {desk: {table: [1.4, 0.7, 0.75], at: [2.5, 3]}, shelf: {box: [0.4, 1.2, 1.9], at: [3.4, 1.2]}},
		people: {ada: {at: [9, 9], faces: 0, walk: [[0.8, 1], [2.6, 1.6], [2.9, 2.2], [4.4, 2.2]]}},
		cameras: {A: {at: [4.5, 0.5], height: 1.4, lens: 35 mm, looks: 300}, B: {at: [0.5, 3.5], height: 1.4, lens: 35 mm, looks: 120}},
		lights: {day: {unit: led-point-600-bicolour, at: {opening: w, out: 2}, height: 2.2, aim: [2.6, 1.6, 1]},
			soft: {unit: led-point-300-bicolour, modifier: softbox-90, at: [4.4, 3.4], height: 2, aim: [2.5, 1.5, 1.4]}}, meters: {`
	w, _ := walkOf(t, room+"}}")
	var meters strings.Builder
	each := func(i int) map[string]*meter.Reading {
		p := &w.Points[i]
		return map[string]*meter.Reading{fmt.Sprint("l", i): &p.Left, fmt.Sprint("r", i): &p.Right, fmt.Sprint("a", i): &p.Domes[0], fmt.Sprint("b", i): &p.Domes[1]}
	}
	for i := range w.Points {
		for name, r := range each(i) {
			to := r3.Add(r.At, r3.Scale(10, r.Facing))
			fmt.Fprintf(&meters, "%s: {%s: [%.12f, %.12f, %.12f], facing: [%.12f, %.12f, %.12f]}, ", name, r.Kind, r.At.X, r.At.Y, r.At.Z, to.X, to.Y, to.Z)
		}
	}
	lit := run(t, laidOut(t, room+meters.String()+"}}"), study.Options{ReadingsOnly: true})
	for i := range w.Points {
		for name, r := range each(i) {
			m := lit.Readings.Named(name)
			if straight, want := part(r, "direct"), part(m, "direct"); !(math.Abs(straight-want) <= 1e-9*math.Max(want, *m.Lux)) {
				t.Errorf("%s: %v lx come straight, and to a meter %v", name, straight, want)
			}
			if off := math.Abs(*r.Lux - *m.Lux); off > 3*math.Hypot(statedError(r), statedError(m)) {
				t.Errorf("%s: %v lx ±%v, and a meter has %v ±%v", name, *r.Lux, *r.Error, *m.Lux, *m.Error)
			}
		}
	}
}

// Somebody who stands at the place of a mark reads there what the mark does, where no wall shows the body of another place.
func TestAMarkReadsAsItsPlace(t *testing.T) {
	const head = "scrimshaw: 1\ncameras: {A: {at: [4, 0], lens: 35 mm, height: 1}, B: {at: [-3, 2], lens: 35 mm, height: 1.6, looks: 60}}\n" +
		"lights:\n  a: {output: {candela: 1000, shape: uniform}, at: [3, 3], height: 2.4, colour: 3200 K}\n" +
		"  b: {unit: led-point-300-bicolour, modifier: softbox-90, at: [-1, 4], height: 2, aim: [1, 1, 1.3], level: 10 %}\npeople: {ada: {at: "
	for own, mark := range map[string]string{
		"[1, 1], faces: A":                         "{at: [1, 1]}",
		"[1, 2], faces: 30, pose: seated":          "{at: [1, 2], faces: 30, pose: seated}",
		"[1.2, 1], faces: A, pose: lying":          "{at: [1.2, 1], pose: lying}",
		"[1, 1], faces: {pan: 20, tilt: -30}":      "{at: [1, 1], faces: {pan: 20, tilt: -30}}",
		"[0.5, 1], faces: [3, 3, 1.5], eyes: 1.25": "{at: [0.5, 1], faces: [3, 3, 1.5], eyes: 1.25}",
	} {
		there := run(t, laidOut(t, head+own+"}}\n"), study.Options{ReadingsOnly: true})
		marked := run(t, laidOut(t, head+"[-40, -40], faces: A, marks: {m: "+mark+"}}}\n"), study.Options{ReadingsOnly: true})
		n := 0
		for i := range marked.Readings.Readings {
			r := &marked.Readings.Readings[i]
			plane, ok := strings.CutPrefix(r.Name, "ada.m.")
			if !ok {
				continue
			}
			n++
			want := there.Readings.Named("ada." + plane)
			if !(math.Abs(*r.Lux-*want.Lux) <= 1e-9*math.Max(1, *want.Lux)) || r.At != want.At || r.Facing != want.Facing {
				t.Errorf("%s, %s: %v lx, and there %v", own, plane, *r.Lux, *want.Lux)
			}
		}
		a, b := there.Readings.FaceOf("ada"), marked.Readings.FaceOf("ada.m")
		if n != 11 || a == nil || b == nil || a.Side != b.Side || (a.Contrast == nil) != (b.Contrast == nil) || fmt.Sprint(catchlights(a)) != fmt.Sprint(catchlights(b)) {
			t.Errorf("%s: %d readings at the mark, and the face is %+v, there %+v", own, n, b, a)
		}
	}
}

// statedError is the error that a reading states, lx.
func statedError(r *meter.Reading) float64 {
	if r.Error == nil {
		return 0
	}
	return *r.Error * *r.Lux
}

// catchlights are those of a face by camera.
func catchlights(f *meter.Face) map[string][]meter.Catchlight {
	all := map[string][]meter.Catchlight{}
	for _, v := range f.Views {
		all[v.Camera] = v.Catchlights
	}
	return all
}

// What is mirrored across the sheet reads the same, with the sides of the walker changed.
func TestAMirroredWalk(t *testing.T) {
	scene := func(s float64) string {
		x := func(v float64) string { return fmt.Sprintf("%.6f", s*v) }
		return "{scrimshaw: 1, people: {ada: {at: [" + x(9) + ", 9], faces: 0, walk: [[" + x(-1) + ", 0], [" + x(1.2) + ", 0.3], [" + x(1.5) + ", 1.9]]}}, " +
			"cameras: {A: {at: [" + x(3) + ", 3], lens: 35 mm, height: 1.5, looks: 0}}, grip: {f: {flag: [0.6, 0.9], at: [" + x(1) + ", 1.4], height: 1.6, faces: [0, 0, 1.6]}}, " +
			"lights: {p: {output: {luminance: 4000, disc: 0.8}, at: [" + x(1.4) + ", 3], height: 2, aim: [" + x(0.5) + ", 0, 1.5]}}}"
	}
	w, _ := walkOf(t, scene(1))
	m, _ := walkOf(t, scene(-1))
	if len(w.Points) < 7 || len(w.Points) != len(m.Points) {
		t.Fatalf("%d places, mirrored %d", len(w.Points), len(m.Points))
	}
	for i := range w.Points {
		p, q := &w.Points[i], &m.Points[i]
		for name, both := range map[string][2]*meter.Reading{"left": {&p.Left, &q.Right}, "right": {&p.Right, &q.Left}, "dome": {&p.Domes[0], &q.Domes[0]}} {
			if a, b := *both[0].Lux, *both[1].Lux; !(math.Abs(a-b) <= 1e-9+statedError(both[0])+statedError(both[1])) {
				t.Errorf("%s at %.1f m: %v lx, mirrored %v", name, p.Along, a, b)
			}
		}
		if p.Side == q.Side && p.Contrast != nil && p.Contrast.Stops > 0.01 {
			t.Errorf("at %.1f m the key stays %s", p.Along, p.Side)
		}
	}
}

// Somebody who walks across a sofa is not told to stop in it, though the light is best there.
func TestNobodyIsToldToStandInASofa(t *testing.T) {
	const scene = "{scrimshaw: 1, exposure: {stop: T4}, furniture: {couch: {sofa: [2, 0.9, 0.8], at: [0, 2]}}, people: {ada: {at: [9, 9], faces: 0, walk: [[0, 0], [0, 4]]}}, " +
		"cameras: {A: {at: [0, 8], lens: 35 mm, looks: 180, height: 1.59}}, lights: {p: {output: {candela: %v, shape: uniform}, at: [0, 6], height: 1.59, mount: {lift: 2}}}}"
	_, lit := walkOf(t, fmt.Sprintf(scene, 1))
	x := lit.Setup.Exposure
	needed := x.Stop.N * x.Stop.N * x.Constant / float64(x.ISO) / x.Seconds
	w, _ := walkOf(t, fmt.Sprintf(scene, needed*4*4)) // 4 m from the lamp, in the sofa, the light is right but for what that sends back
	c := &w.Courses[0]
	if w.Points[4].In != "couch" || !(math.Abs(*c.Over[4]) <= 0.05) {
		t.Fatalf("the middle of the walk is in %q, %v stops over", w.Points[4].In, *c.Over[4])
	}
	if best := w.Points[*c.Best]; best.In != "" || best.Along != 2.5 && best.Along != 1.5 {
		t.Errorf("the best place is %.1f m along, in %q", best.Along, best.In)
	}
	if len(c.Off) != 2 || c.Off[0] != (meter.OffStop{From: 0, To: 0, Over: c.Over[0]}) || c.Off[1].From != 3.5 || c.Off[1].To != 4 || *c.Off[1].Over != *c.Over[8] {
		t.Errorf("it leaves the working stop in %+v", c.Off)
	}
}

// A walk that leads through a lamp, a lens and a wall, and all but ends twice, has figures that are numbers.
func TestAWalkThroughALamp(t *testing.T) {
	const text = `{scrimshaw: 1, rooms: {a: {size: [4, 3]}}, people: {ada: {at: [1, 1], marks: {on: {at: [2, 1.9], faces: 0}}, walk: [[1, 2], [3, 2], [3, 2.0001], [9, 2]]}},
		cameras: {A: {at: [3, 2], lens: 32 mm, height: 1.59}}, lights: {l: {output: {candela: 100, shape: uniform}, at: [2, 2], height: 1.59}}}`
	w, lit := walkOf(t, text)
	holdFinite(t, text, lit)
	if n := len(w.Points); n != 17 || w.Points[n-1].Along-w.Points[n-2].Along < 0.49 {
		t.Errorf("%d places, the last %.4f m along", n, w.Points[n-1].Along)
	}
}
