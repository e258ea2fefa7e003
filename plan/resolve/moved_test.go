package resolve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// motion turns a scene about the origin, clockwise, and then moves it.
type motion struct {
	turn float64
	by   r2.Vec
}

func (m motion) point(p r2.Vec) r2.Vec { return r2.Add(plane.Clockwise(p, m.turn), m.by) }

func (m motion) lift(p r3.Vec) r3.Vec { return plan.AtHeight(m.point(plan.InPlan(p)), p.Z) }

func (m motion) dir(d r3.Vec) r3.Vec {
	return plan.AtHeight(plane.Clockwise(plan.InPlan(d), m.turn), d.Z)
}

// furnished is a scene that uses every form of place, with its sizes from rnd, moved by m.
func furnished(rnd *rand.Rand, m motion) string {
	xy := func(x, y float64) string {
		p := m.point(r2.Vec{X: x, Y: y})
		return fmt.Sprintf("[%.9f, %.9f]", p.X, p.Y)
	}
	shift := func(x, y float64) string {
		p := plane.Clockwise(r2.Vec{X: x, Y: y}, m.turn)
		return fmt.Sprintf("[%.9f, %.9f]", p.X, p.Y)
	}
	xyz := func(x, y, z float64) string {
		p := m.point(r2.Vec{X: x, Y: y})
		return fmt.Sprintf("[%.9f, %.9f, %.9f]", p.X, p.Y, z)
	}
	u := rnd.Float64
	return fmt.Sprintf(`
rooms:
  den:  {corners: [{a: %s}, {b: %s}, {c: %s}, {d: %s}, {e: %s}, {f: %s}], wall: 0.2}
  hall: {corners: [{a: %s}, {b: %s}, {c: %s}, {d: %s}], base: 0.2}
openings:
  bay:  {window: den.f-a, along: %.4f, width: 1.3}
  arch: {gap: den.b-c, along: 0.4, width: 0.9, head: 2}
  door: {door: den.a-b, along: 0.4, ajar: 50}
furniture:
  desk:  {table: [1.4, 0.7, 0.75], at: %s, turn: %.6f}
  couch: {sofa: [1.8, 0.9, 0.8], at: {wall: den.e-f, along: centre, in: 0.1}, turn: %.6f}
  stool: {cylinder: [0.4, 0.45], at: {from: desk, shift: %s}, turn: %.6f}
  flight: {stairs: [0.8, 1, 0.6], at: %s, turn: %.6f}
people:
  ada:  {at: %s, faces: A, marks: {desk: {at: {by: desk, toward: noor, distance: 0.9}, faces: noor, pose: seated}}, walk: [{from: ada, shift: %s}, {from: ada.desk}, {by: noor, turn: 40 own-right, distance: 0.7}, %s]}
  noor: {at: {by: ada, turn: 30 own-left, distance: %.4f}, faces: ada, pose: seated}
cameras:
  A: {at: %s, height: 1.3, looks: ada, lens: 40 mm}
lights:
  sun:  {unit: led-point-600-bicolour, at: {opening: bay, out: 2, along: 0.2}, height: 1.6, aim: {opening: bay, in: 1, height: 1.2}}
  soft: {unit: led-point-300-bicolour, modifier: softbox-90, at: {by: ada, toward: A, turn: 35 camera-left, distance: 1.1}, height: 1.8}
  lamp: {unit: practical-desk, at: {top: desk, shift: %s}}
  back: {output: {candela: 100, shape: cosine}, at: {wall: den.b-c, along: 0.3, in: 0.4}, height: 2, aim: %s, roll: 20}
grip:
  black: {flag: [0.8, 0.6], at: {by: ada, turn: 80 own-right, distance: 0.8}, height: 1.5, faces: ada}
meters:
  m: {flat: %s, facing: A}
`,
		xy(0, 0), xy(5, 0), xy(5, 2.2), xy(3, 2.2), xy(3, 4), xy(0, 4),
		xy(5.3, 0), xy(7.5, 0), xy(7.5, 3), xy(5.3, 3),
		1+1.2*u(), xy(1.2, 1.6), 40*u()+m.turn, m.turn, shift(0.9, 0.3), m.turn, xy(6.5, 1), m.turn,
		xy(2.2, 0.9), shift(0.2, 0.1), xy(6, 2), 0.7+0.2*u(), xy(4.2, 1.7), shift(0.3, 0.1), xyz(1, 1, 1), xyz(2.5, 1.8, 0.8))
}

// Moving and turning a scene moves and turns everything in it alike.
func TestMovedSceneMovesAlike(t *testing.T) {
	motions := []motion{
		{0, r2.Vec{X: 3.25, Y: -1.5}}, {90, r2.Vec{}}, {180, r2.Vec{X: 1}}, {270, r2.Vec{Y: -7}},
		{37.5, r2.Vec{X: -2, Y: 5}}, {211, r2.Vec{X: 0.123456, Y: 0.654321}},
	}
	for i, m := range motions {
		seed := func() *rand.Rand { return rand.New(rand.NewPCG(6, uint64(i))) }
		still, moved := resolved(t, furnished(seed(), motion{})), resolved(t, furnished(seed(), m))
		sameSetup(t, fmt.Sprintf("motion %v", m), still, moved, m)
	}
}

func sameSetup(t *testing.T, what string, a, b *plan.Setup, m motion) {
	t.Helper()
	const slack = 1e-5
	sameSet(t, what, &a.Set, &b.Set, m)
	if len(a.Lights) != len(b.Lights) || len(a.People) != len(b.People) || len(a.Openings) != len(b.Openings) {
		t.Fatalf("%s: something is missing", what)
	}
	for i := range a.Lights {
		p, q := &a.Lights[i], &b.Lights[i]
		sameFrame(t, what+": "+p.Name, p.Frame, q.Frame, m)
		near(t, what+": throw of "+p.Name, q.Throw, p.Throw, slack)
		near2(t, what+": mount of "+p.Name, q.Mount.Base, m.point(p.Mount.Base), slack)
		for k := range p.Placing {
			near(t, what+": placing of "+p.Name, q.Placing[k].Metres, p.Placing[k].Metres, slack)
			if p.Placing[k].From != q.Placing[k].From {
				t.Errorf("%s: %s is placed from %s, not %s", what, p.Name, q.Placing[k].From, p.Placing[k].From)
			}
		}
	}
	for i := range a.People {
		sameFrame(t, what+": "+a.People[i].Name, a.People[i].Face, b.People[i].Face, m)
		sameMarks(t, what, &a.People[i], &b.People[i], m)
	}
	for i := range a.Cameras {
		sameFrame(t, what+": "+a.Cameras[i].Name, a.Cameras[i].Frame, b.Cameras[i].Frame, m)
	}
	for i := range a.Grip {
		sameFrame(t, what+": "+a.Grip[i].Name, a.Grip[i].Frame, b.Grip[i].Frame, m)
	}
	for i := range a.Openings {
		near2(t, what+": "+a.Openings[i].Name, b.Openings[i].Left, m.point(a.Openings[i].Left), slack)
		near(t, what+": depth of "+a.Openings[i].Name, b.Openings[i].Depth, a.Openings[i].Depth, slack)
	}
}

func sameMarks(t *testing.T, what string, a, b *plan.Person, m motion) {
	t.Helper()
	for i := range a.Marks {
		sameFrame(t, what+": "+a.Marks[i].Name, a.Marks[i].Face, b.Marks[i].Face, m)
	}
	if a.Walk == nil {
		return
	}
	if len(a.Walk.Points) < 8 || len(a.Walk.Points) != len(b.Walk.Points) {
		t.Fatalf("%s: the walk has %d places, and %d", what, len(a.Walk.Points), len(b.Walk.Points))
	}
	for i := range a.Walk.Points {
		p, q := &a.Walk.Points[i], &b.Walk.Points[i]
		sameFrame(t, fmt.Sprintf("%s: the walk at %.1f m", what, p.Along), p.Face, q.Face, m)
		if p.In != q.In {
			t.Errorf("%s: the walk at %.1f m is in %q, and in %q", what, p.Along, p.In, q.In)
		}
	}
}

func sameFrame(t *testing.T, what string, a, b plan.Frame, m motion) {
	t.Helper()
	near3(t, what+" at", b.At, m.lift(a.At), 1e-6)
	near3(t, what+" axis", b.Axis, m.dir(a.Axis), 1e-6)
	near3(t, what+" right", b.Right, m.dir(a.Right), 1e-6)
}

// sameSet compares solids by name: their volumes and areas, and the middles weighed by them.
func sameSet(t *testing.T, what string, a, b *solid.Set, m motion) {
	t.Helper()
	p, q := weigh(a), weigh(b)
	if len(p) != len(q) {
		t.Fatalf("%s: %d names, not %d", what, len(q), len(p))
	}
	for name, w := range p {
		near(t, what+": size of "+name, q[name].size, w.size, 2e-5)
		near2(t, what+": middle of "+name, q[name].middle(), m.point(w.middle()), 1e-4)
	}
}

// weight is the volume of a thing's prisms with the area of its sheets, and their moment.
type weight struct {
	size   float64
	moment r2.Vec
}

func (w weight) middle() r2.Vec { return r2.Scale(1/w.size, w.moment) }

func (w *weight) add(size float64, at r2.Vec) {
	w.size += size
	w.moment = r2.Add(w.moment, r2.Scale(size, at))
}

func weigh(s *solid.Set) map[string]weight {
	all := map[string]weight{}
	for _, p := range s.Prisms {
		w := all[p.Name]
		w.add(plane.Area(p.Base)*(p.Z1-p.Z0), plane.Centroid(p.Base))
		all[p.Name] = w
	}
	for _, h := range s.Sheets {
		w := all[h.Name]
		for i := 1; i+1 < len(h.Corners); i++ {
			a, b := r3.Sub(h.Corners[i], h.Corners[0]), r3.Sub(h.Corners[i+1], h.Corners[0])
			c := r3.Add(h.Corners[0], r3.Scale(1.0/3, r3.Add(a, b)))
			w.add(r3.Norm(r3.Cross(a, b))/2, plan.InPlan(c))
		}
		all[h.Name] = w
	}
	return all
}

// The same text always gives the same set-up, to the bit.
func TestResolveIsDeterministic(t *testing.T) {
	text := furnished(rand.New(rand.NewPCG(7, 7)), motion{turn: 23})
	a, b := resolved(t, text), resolved(t, text)
	for i := range a.Set.Prisms {
		p, q := a.Set.Prisms[i], b.Set.Prisms[i]
		if p.ID != q.ID || p.Name != q.Name || p.Z0 != q.Z0 || math.Abs(plane.Area(p.Base)-plane.Area(q.Base)) != 0 {
			t.Fatalf("prism %d differs: %v, %v", i, p, q)
		}
	}
	if fmt.Sprint(a.Assumed) != fmt.Sprint(b.Assumed) || fmt.Sprint(a.Names) != fmt.Sprint(b.Names) {
		t.Error("names or assumptions differ")
	}
}

// Mirroring a scene across the sheet's up mirrors it: left walls become right walls.
func TestMirroredRoomIsMirrored(t *testing.T) {
	s := resolved(t, "rooms: {den: {size: [4, 3]}}\nopenings: {w: {window: den.left, along: 0.5, width: 1}}")
	m := resolved(t, "rooms: {den: {at: [-4, 0], size: [4, 3]}}\nopenings: {w: {window: den.right, along: 1.5, width: 1}}")
	a, b := weigh(&s.Set), weigh(&m.Set)
	swap := map[string]string{"den.left": "den.right", "den.right": "den.left"}
	for name, w := range a {
		other := name
		if swap[name] != "" {
			other = swap[name]
		}
		near(t, "size of "+name, b[other].size, w.size, 1e-9)
		at := w.middle()
		near2(t, "middle of "+name, b[other].middle(), r2.Vec{X: -at.X, Y: at.Y}, 1e-9)
	}
}
