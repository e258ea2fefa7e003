package meter

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// walker is somebody who walks along some places of the plan, 1.6 m at the eyes.
func walker(name string, corners ...r2.Vec) plan.Person {
	p := person(name, r2.Vec{X: -9, Y: -9}, r2.Vec{Y: 1})
	p.Walk = &plan.Walk{Corners: corners, Treads: []plan.Tread{{}}, Eyes: 1.6}
	p.Walk.FindPoints()
	return p
}

// walked reads the walks of a set-up after its other readings.
func walked(t *testing.T, s *plan.Setup) Set {
	t.Helper()
	w, err := light.Build(context.Background(), &s.Set, light.Options{Bodies: &s.Bodies})
	if err != nil {
		t.Fatal(err)
	}
	requests, along := Requests(s), WalkRequests(s)
	points := append(Receptors(requests), Receptors(along)...)
	b, err := w.Basis(context.Background(), light.Emitters(s), light.Targets{Points: points})
	if err != nil {
		t.Fatal(err)
	}
	levels := light.LevelsOf(s.Lights)
	set := Read(s, requests, b, levels)
	set.Walks = ReadWalks(s, along, len(requests), b, levels)
	return set
}

// walking is two who walk and one who stands, before a still camera and one on a track, by one point of light.
func walking() (s *plan.Setup, candela float64, lamp, still r3.Vec, ends []r2.Vec) {
	candela, lamp, still = 700, r3.Vec{X: 1.2, Y: 1.5, Z: 2.1}, r3.Vec{X: 6, Y: -2, Z: 1.4}
	ends = []r2.Vec{{X: 3, Y: -4}, {X: 5, Y: -4}}
	fast := exposure
	fast.ISO, fast.Stop.N = 1600, 4
	s = &plan.Setup{Exposure: exposure, Feet: true, Lights: []plan.Light{bulb("p", lamp, candela, white)},
		People: []plan.Person{walker("ada", r2.Vec{}, r2.Vec{X: 1.2}), person("bo", r2.Vec{X: 9}, r2.Vec{Y: 1}), walker("cy", r2.Vec{X: 3, Y: 3}, r2.Vec{X: 3, Y: 2.2})},
		Cameras: []plan.Camera{{Name: "A", Frame: plan.FrameAlong(still, r3.Vec{X: -1}, 0, 0), Exposure: exposure},
			{Name: "B", Frame: plan.FrameAlong(plan.AtHeight(ends[0], 1.5), r3.Vec{Y: 1}, 0, 0), Track: &plan.Track{Corners: ends}, Exposure: fast}}}
	s.Set.Prisms = []solid.Prism{{ID: 1, Z1: 1.9, Base: []r2.Vec{{X: 0.4, Y: 0.3}, {X: 0.8, Y: 0.3}, {X: 0.8, Y: 0.5}, {X: 0.4, Y: 0.5}}}}
	s.People[0].Own = []solid.ID{1}
	return s, candela, lamp, still, ends
}

// Of two who walk, and one who stands, before a still camera and one on a track, each reading is I cos t/d² on the sides of the way and
// I (1 + cos t)/2d² under a dome, by the exposure of its camera; the body of who walks throws no shadow on it.
func TestWalksByFormula(t *testing.T) {
	s, candela, lamp, still, ends := walking()
	set := walked(t, s)
	if len(set.Walks) != 2 || set.WalkOf("bo") != nil || set.WalkOf("cy").Person != "cy" || !set.WalkOf("ada").Feet {
		t.Fatalf("walks %+v", set.Walks)
	}
	half := math.Sqrt(0.5)
	for name, c := range map[string]struct {
		from, way, left, right r3.Vec
		along                  []float64
	}{
		"ada": {r3.Vec{Z: 1.6}, r3.Vec{X: 1}, r3.Vec{X: half, Y: half}, r3.Vec{X: half, Y: -half}, []float64{0, 0.5, 1, 1.2}},
		"cy":  {r3.Vec{X: 3, Y: 3, Z: 1.6}, r3.Vec{Y: -1}, r3.Vec{X: half, Y: -half}, r3.Vec{X: -half, Y: -half}, []float64{0, 0.5, 0.8}},
	} {
		w := set.WalkOf(name)
		near(t, "length", &w.Length, c.along[len(c.along)-1])
		if len(w.Points) != len(c.along) || len(w.Courses) != 3 {
			t.Fatalf("%d places, %d courses", len(w.Points), len(w.Courses))
		}
		for i, along := range c.along {
			at := r3.Add(c.from, r3.Scale(along, c.way))
			d := r3.Sub(lamp, at)
			far := r3.Norm(d)
			flat := func(axis r3.Vec) float64 { return candela * math.Max(0, r3.Dot(axis, d)/far) / (far * far) }
			left, right := flat(c.left), flat(c.right)
			prefix := fmt.Sprintf("%s.walk.%.2f.", name, along)
			near(t, prefix+"left", set.Named(prefix+"left").Lux, left)
			near(t, prefix+"right", set.Named(prefix+"right").Lux, right)
			if key := w.Points[i].Key(); (w.Points[i].Side == "right") != (right > left) || *key.Lux < max(left, right)*(1-1e-9) {
				t.Errorf("%s has its key on the %s", prefix, w.Points[i].Side)
			}
			if k := w.Points[i].Contrast; k != nil {
				near(t, prefix+"contrast", &k.Ratio, max(left, right)/min(left, right))
			} else if min(left, right) > 0 {
				t.Errorf("%s has no contrast", prefix)
			}
			for k, camera := range []struct {
				name string
				at   r3.Vec
				full float64 // the illuminance at the working stop, lx
			}{{"A", still, 125}, {"B", plan.AtHeight(ends[0], 1.5), 125}, {"B.end", plan.AtHeight(ends[1], 1.5), 125}} {
				dome := candela * (1 + r3.Dot(r3.Unit(r3.Sub(camera.at, at)), d)/far) / 2 / (far * far)
				near(t, prefix+"dome."+camera.name, set.Named(prefix+"dome."+camera.name).Lux, dome)
				near(t, prefix+"over for "+camera.name, w.Courses[k].Over[i], math.Log2(dome/camera.full))
				if w.Courses[k].Camera != camera.name {
					t.Errorf("course %d is of %s, want %s", k, w.Courses[k].Camera, camera.name)
				}
			}
		}
	}
	if names := WalkNames(s); len(names) != 7*5 || names[4] != "ada.walk.0.00.dome.B.end" || set.Named("ada.walk.9.00.left") != nil {
		t.Errorf("names %q", names)
	}
}

// Where a camera is in the way of a face, a dome looks on along the walk.
func TestADomeInTheLens(t *testing.T) {
	s := &plan.Setup{People: []plan.Person{walker("ada", r2.Vec{}, r2.Vec{Y: 1})}, Cameras: []plan.Camera{
		{Name: "A", Frame: plan.Frame{At: r3.Vec{Y: 0.5, Z: 1.6}}}, {Name: "B", Frame: plan.Frame{At: r3.Vec{X: 2, Y: 0.5, Z: 1.6}}}}}
	for _, o := range WalkRequests(s) {
		want, is := map[string]r3.Vec{"ada.walk.0.50.dome.A": {Y: 1}, "ada.walk.0.50.dome.B": {X: 1}, "ada.walk.0.00.dome.A": {Y: 1}, "ada.walk.1.00.dome.A": {Y: -1}}[o.Name]
		if is && (r3.Norm(r3.Sub(o.Receptor.Axis, want)) > 1e-12 || o.Kind != term.DomeMeter || o.Camera != o.Name[len(o.Name)-1:]) {
			t.Errorf("%+v, want it to look along %v", o, want)
		}
	}
}

// along is a walk of places half a metre apart, whose key sides, and the dome of a camera, lie so many stops over the working stop; of what
// is in the way of a body it is "in".
func along(over ...any) *Walk {
	w := &Walk{Person: "ada"}
	for i, v := range over {
		p := WalkPoint{Along: 0.5 * float64(i), Side: "left"}
		switch v := v.(type) {
		case float64:
			p.Left.Over = &v
		case string:
			p.In, p.Left.Over = v, stops(9)
		}
		p.Domes = []Reading{{Over: p.Left.Over}}
		w.Points = append(w.Points, p)
	}
	w.Length = 0.5 * float64(len(over)-1)
	return w
}

// A walk is nearest to the working stop and farthest from it where it is free, the first of two alike; it has left it in stretches of one
// side that are more than a stop off, which what is in the way of a body ends. In the dark it is farther off than anywhere.
func TestCoursesOfAWalk(t *testing.T) {
	alone, camera := &plan.Setup{Exposure: exposure}, &plan.Setup{Exposure: exposure, Cameras: []plan.Camera{{Name: "A", Exposure: exposure}}}
	for _, c := range []struct {
		over []any
		want string
	}{
		{[]any{0.5, -0.5, 0.2, -0.2}, "nearest at 1.00 m: 0.2 stops over; farthest from T2.8 at 0.00 m: 0.5 stops over"},
		{[]any{1.0, -1.0}, "nearest at 0.00 m: 1.0 stops over; farthest from T2.8 at 0.00 m: 1.0 stops over"},
		{[]any{1.2, 1.5, 1.1, -1.3, -1.2, 0.04}, "nearest at 2.50 m: on it; farthest from T2.8 at 0.50 m: 1.5 stops over; from 0.00 m to 1.00 m: 1.5 stops over; from 1.50 m to 2.00 m: 1.3 stops under"},
		{[]any{-1.3, nil, nil, 0.05, 2.0}, "nearest at 1.50 m: 0.1 stops over; farthest from T2.8 at 0.50 m: no light; from 0.00 m to 1.00 m: no light; at 2.00 m: 2.0 stops over"},
		{[]any{2.0, "desk", 2.5, 0.9, 1.7}, "nearest at 1.50 m: 0.9 stops over; farthest from T2.8 at 1.00 m: 2.5 stops over; at 0.00 m: 2.0 stops over; at 1.00 m: 2.5 stops over; at 2.00 m: 1.7 stops over"},
		{[]any{"desk", -0.3, "desk"}, "nearest at 0.50 m: 0.3 stops under; farthest from T2.8 at 0.50 m: 0.3 stops under"},
		{[]any{nil, nil}, "no light reaches it"},
		{[]any{"desk", "wall"}, "no place of it is free"},
	} {
		for prefix, s := range map[string]*plan.Setup{"": alone, "for A: ": camera} {
			w := along(c.over...)
			w.judge(s)
			said := []string{w.SpanWords(&w.Courses[0])}
			for _, line := range w.OffWords(&w.Courses[0]) {
				said = append(said, strings.TrimPrefix(line, prefix))
			}
			if got, want := strings.Join(said, "; "), prefix+c.want; got != want || len(w.Courses) != 1 {
				t.Errorf("%v:\n%s, want\n%s", c.over, got, want)
			}
		}
	}
}

// The farthest of all courses is the first of two alike; what is not free is in none.
func TestFarthestOfAWalk(t *testing.T) {
	two := func(a, b []any) *Walk {
		w, other := along(a...), along(b...)
		w.Courses = []Course{w.course("A", 4, func(p *WalkPoint) *Reading { return &p.Left }), other.course("B", 4, func(p *WalkPoint) *Reading { return &p.Left })}
		return w
	}
	for _, c := range []struct {
		a, b          []any
		course, point int
		ok            bool
	}{
		{[]any{1.0, -2.0}, []any{0.5, 2.0}, 0, 1, true}, {[]any{1.0, -2.0}, []any{2.1, 2.0}, 1, 0, true}, {[]any{"desk", "desk"}, []any{0.0, -0.1}, 1, 1, true},
		{[]any{"desk"}, []any{"desk"}, 0, 0, false}, {[]any{3.0}, []any{nil}, 1, 0, true}, {[]any{nil}, []any{3.0}, 0, 0, true},
	} {
		if course, point, ok := two(c.a, c.b).Farthest(); course != c.course || point != c.point || ok != c.ok {
			t.Errorf("%v and %v: course %d at %d, %v", c.a, c.b, course, point, ok)
		}
	}
}

// The side of a place is that of its brighter plane, a tie goes left, and in the dark there is none; a dark fill side has no contrast.
func TestSidesOfAWalk(t *testing.T) {
	for _, c := range []struct {
		left, right float64
		side, words string
		key         float64
	}{
		{200, 100, "left", "1.0 stops", 200}, {100, 283, "right", "1.5 stops", 283}, {100, 100, "left", "equal", 100}, {0, 30, "right", "", 30}, {30, 0, "left", "", 30}, {0, 0, "", "", 0},
	} {
		at := plan.WalkPoint{Along: 2, In: "desk", Face: plan.Frame{At: r3.Vec{X: 1}, Axis: r3.Vec{Y: 1}}}
		p := pointOf(&at, []Reading{{Lux: &c.left}, {Lux: &c.right}, {Name: "dome"}})
		if p.Side != c.side || p.contrastInWords() != c.words || *p.Key().Lux != c.key || p.In != "desk" || p.At.X != 1 || p.Facing.Y != 1 || len(p.Domes) != 1 {
			t.Errorf("%v and %v: %+v", c.left, c.right, p)
		}
	}
}

// A walk prints a row a place and what its cameras make of it; what a key could change is marked, on the sides where it changes the light
// alone, and the legend names the walk.
func TestWalksAsATable(t *testing.T) {
	lux, dim := 125.0, 50.0
	scrims := uncomputed(scene.Later{Waits: "accessories", Changes: scene.OwnLight}, "lights.k.scrims", "scrims of 1 k")
	filter := uncomputed(scene.Later{Waits: "filters", Changes: scene.OwnStops}, "cameras.A.filter", "filter of A")
	w := Walk{Person: "ada", Length: 0.5, Points: []WalkPoint{
		{At: r3.Vec{X: 1, Y: 2}, Left: Reading{Lux: &lux, Footcandles: &lux, Uncomputed: []plan.Uncomputed{scrims}}, Right: Reading{Lux: &dim, Footcandles: &dim}, Side: "left", Contrast: contrastOf(lux, dim),
			Domes: []Reading{{Lux: &lux, Footcandles: &lux, Stop: stops(2.8284), Over: stops(0), Uncomputed: []plan.Uncomputed{filter}}}},
		{Along: 0.5, In: "desk", Domes: []Reading{{}}}}}
	w.judge(&plan.Setup{Cameras: []plan.Camera{{Name: "A", Exposure: exposure}}})
	set := Set{Readings: []Reading{{Name: "m", Lux: &lux, Footcandles: &lux}}, Walks: []Walk{w}}
	var b strings.Builder
	if err := WriteTable(&b, []Set{set}); err != nil {
		t.Fatal(err)
	}
	const want = `reading   light  ±   fc  T-stop  over  CCT  Duv  from
m        125 lx     125

walk of ada, 0.50 m, without the body
along            place  dome toward A: light  T-stop   over  key side  key + fill : fill
0.00 m  1.00 m, 2.00 m                125 lx  ✗ T2.8  ✗ 0.0    ✗ left        ✗ 1.3 stops
0.50 m  0.00 m, 0.00 m                                                                    in desk, not judged
✗ for A: nearest at 0.00 m: on it; farthest from T2.8 at 0.00 m: on it
✗ without scrims of 1 k (accessories, not computed yet): the walk of ada
✗ without filter of A (filters, not computed yet): the walk of ada
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &b, want)
	}
	if keys := w.Uncomputed(); len(keys) != 2 || len(w.uncomputedOf(0)) != 1 {
		t.Errorf("keys %+v", keys)
	}
	set.Readings[0].Uncomputed, w.Points[1].Right.Uncomputed = []plan.Uncomputed{scrims}, []plan.Uncomputed{scrims}
	set.Walks[0] = w
	b.Reset()
	set.legend(&b)
	if got := b.String(); !strings.HasPrefix(got, "✗ without scrims of 1 k (accessories, not computed yet)\n") || strings.Count(got, "\n") != 2 {
		t.Errorf("what all figures are without is named with\n%s", got)
	}
	bare := along(0.5, 0.5)
	bare.judge(&plan.Setup{Exposure: exposure})
	b.Reset()
	if bare.table(&b); strings.Contains(b.String(), UncomputedMark) {
		t.Errorf("nothing could change it:\n%s", &b)
	}
	if head := (&Course{}).by(); head != "key side" || (&Course{}).whom() != "" {
		t.Errorf("without a camera a course is judged by %q", head)
	}
}

// What a legend is about comes in the order in which the scene writes it.
func TestLegendsGoByTheScene(t *testing.T) {
	key := func(path string, start int) plan.Uncomputed {
		u := uncomputed(scene.Later{Waits: "w", Changes: scene.OwnLight}, path, path)
		u.Span.Start = start
		return u
	}
	set := Set{Readings: []Reading{{Name: "m", Uncomputed: []plan.Uncomputed{key("c", 30), key("a", 10), key("d", 40), key("b", 20)}}}}
	var b strings.Builder
	set.legend(&b)
	var order []string
	for _, line := range strings.Split(strings.TrimSpace(b.String()), "\n") {
		order = append(order, strings.Fields(line)[2])
	}
	if !slices.Equal(order, []string{"a", "b", "c", "d"}) {
		t.Errorf("got %q", order)
	}
}
