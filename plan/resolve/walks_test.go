package resolve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// A mark takes what it does not say from the person: what they face they face from there.
func TestMarksTakeAfterThePerson(t *testing.T) {
	const head = "cameras: {A: {at: [4, 0], lens: 35 mm, height: 1}}\nfurniture: {chair: {box: [0.5, 0.5, 0.45], at: [1, 2]}}\npeople: {ada: {at: "
	for own, mark := range map[string]string{
		"[1, 1], faces: A, height: 1.6":                        "{at: [1, 1]}",
		"[1, 3], faces: 90, pose: seated, height: 1.6":         "{at: [1, 3], faces: 90, pose: seated}",
		"{top: chair}, pose: seated, eyes: 1.1, height: 1.6":   "{at: {top: chair}, pose: seated, eyes: 1.1}",
		"[2, 2], faces: {pan: 20, tilt: -30}, height: 1.6":     "{at: [2, 2], faces: {pan: 20, tilt: -30}}",
		"[2, 2], faces: [2, 5, 1], pose: lying, height: 1.6":   "{at: [2, 2], faces: [2, 5, 1], pose: lying}",
		"{from: chair, shift: [1, 0]}, faces: up, height: 1.6": "{at: {from: chair, shift: [1, 0]}, faces: up}",
	} {
		there := resolved(t, head+own+"}}").People[0]
		marked := resolved(t, head+"[0, 0], faces: A, height: 1.6, marks: {m: "+mark+"}}}").People[0]
		m := marked.AtMark(&marked.Marks[0])
		if m.Name != "ada.m" || m.Pose != there.Pose || m.At != there.At || m.Base != there.Base || m.Eyes != there.Eyes || m.Crown != there.Crown || m.Faces != there.Faces ||
			m.Face != there.Face || fmt.Sprint(m.Parts) != fmt.Sprint(there.Parts) {
			t.Errorf("%s: there\n%+v, at the mark\n%+v", own, there, m)
		}
		if m.Own[0] != marked.Own[0] {
			t.Error("somebody at a mark has a second body")
		}
	}
}

// A walk is read every half metre of the tape and at its end, by a face that looks along it, round corners.
func TestPlacesOfAWalk(t *testing.T) {
	w := resolved(t, "people: {ada: {at: [9, 9], faces: 0, height: 1.7, pose: seated, eyes: 1.1, walk: [[0, 0], [0, 0.7], [0, 0.7], [3, 0.7]]}}").People[0].Walk
	places := []r3.Vec{{}, {Y: 0.5}, {X: 0.3, Y: 0.7}, {X: 0.8, Y: 0.7}, {X: 1.3, Y: 0.7}, {X: 1.8, Y: 0.7}, {X: 2.3, Y: 0.7}, {X: 2.8, Y: 0.7}, {X: 3, Y: 0.7}}
	if len(w.Points) != len(places) {
		t.Fatalf("%d places, want %d", len(w.Points), len(places))
	}
	for i, p := range w.Points {
		at, way := places[i], r3.Vec{X: 1}
		at.Z = 1.59 // of one who stands, whatever the eyes are in the chair
		if i < 2 {
			way = r3.Vec{Y: 1}
		}
		near3(t, fmt.Sprint("place ", i), p.Face.At, at, 1e-9)
		near3(t, fmt.Sprint("way on from ", i), p.Face.Axis, way, 1e-9)
		near(t, "along", p.Along, math.Min(0.5*float64(i), 3.7), 1e-9)
	}
}

// The feet are on the floor of the room, on stairs, and on what a place of the walk stands on.
func TestFloorsUnderAWalk(t *testing.T) {
	s := resolved(t, `
rooms: {low: {size: [4, 4]}, high: {at: [4.2, 0], size: [4, 4], base: 0.6}}
openings: {arch: {gap: low.right, along: 1, width: 2, sill: 0.6, head: 2.45}}
furniture: {flight: {stairs: [1, 1.5, 0.6], at: [3.25, 2], turn: 90, steps: 3}, podium: {deck: [1, 1, 0.3], at: [7, 2]}, rug: {deck: [1, 1, 0.3], at: [1, 2]}}
people: {ada: {at: [3, 3.5], height: 1.7, walk: [[0.2, 3], [2, 2], [5, 2], {top: podium}, [8, 2]]}}
cameras: {A: {at: [0.3, 0.5], lens: 35 mm}}`)
	w := s.People[0].Walk
	start := math.Hypot(1.8, 1) - 2 // of x along the second leg and what follows
	for x, base := range map[float64]float64{2.2: 0, 2.6: 0.2, 3.2: 0.4, 3.7: 0.6, 4.1: 0.6, 6: 0.6, 6.6: 0.9, 7.3: 0.9, 7.8: 0.6} {
		near(t, fmt.Sprint("the feet at x = ", x), w.BaseAt(start+x), base, 1e-9)
	}
	if len(w.Through) != 0 {
		t.Errorf("a walk up the stairs goes through %+v", w.Through)
	}
}

// A walk up to a floor over it comes into no ceiling; one on a riser under a low ceiling does, and one under it does not.
func TestAWalkUnderACeiling(t *testing.T) {
	const rooms = "rooms: {den: {size: [6, 5], height: 2.7}, loft: {size: [6, 5], base: 3, height: 2.4}}\ncameras: {A: {at: [0.3, 0.3], lens: 35 mm}}\n"
	for _, c := range [...][2]string{
		{"", rooms + "furniture: {flight: {stairs: [1, 4, 3], at: [4, 2.3]}}\npeople: {ada: {at: [1, 4], walk: [[4, 0.1], [4, 4.8]]}}"},
		{"", rooms + "furniture: {flight: {stairs: [3, 4, 3], at: [4, 2.3]}}\npeople: {ada: {at: [1, 4], walk: [[2.7, 0.31], [5.3, 4.65]]}}"},
		{"den.ceiling", rooms + "furniture: {riser: {deck: [2, 2, 1.2], at: [3, 2.5]}}\npeople: {ada: {at: [1, 4], walk: [{top: riser}, [3, 3.2]]}}"},
	} {
		want, scene, got := c[0], c[1], ""
		w := resolved(t, scene).People[0].Walk
		for _, h := range w.Through {
			got += h.Name
		}
		for _, b := range w.Beside {
			got += " beside " + b.Name
		}
		if got != want {
			t.Errorf("a body comes into %q, want %q\n%s", got, want, scene)
		}
	}
}

// A walk behind a sofa is free; one across it is not, from edge to edge.
func TestAWalkBehindASofaIsFree(t *testing.T) {
	const scene = "rooms: {den: {size: [6, 5]}}\nfurniture: {couch: {sofa: [2, 0.9, 0.8], at: [3, 2.5], turn: 180}}\ncameras: {A: {at: [0.3, 0.3], lens: 35 mm}}\npeople: {ada: {at: [0.5, 4.5], walk: "
	behind := resolved(t, scene+"[[1, 1.9], [5, 1.9]]}}").People[0].Walk
	if len(behind.Through) != 0 || behind.Points[3].In != "" {
		t.Errorf("behind the sofa somebody stands in %+v", behind.Through)
	}
	across := resolved(t, scene+"[[3, 1], [3, 4]]}}").People[0].Walk
	if len(across.Through) != 1 || across.Through[0].Name != "couch" {
		t.Fatalf("a walk across a sofa goes through %+v", across.Through)
	}
	near(t, "from", across.Through[0].From, 1.05, 1e-9)
	near(t, "to", across.Through[0].To, 1.95, 1e-9)
	for _, p := range across.Points {
		if in := p.Along > 1.05 && p.Along < 1.95; (p.In == "couch") != in {
			t.Errorf("at %.1f m somebody is in %q", p.Along, p.In)
		}
	}
}

// Walks all about a furnished set: what they lead through is what a body meets that is stood at close intervals along them.
func TestRandomWalks(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 5))
	met := 0
	for n := range 40 {
		var places []string
		for range 2 + r.IntN(4) {
			places = append(places, fmt.Sprintf("[%.3f, %.3f]", -1+9.5*r.Float64(), -1+6*r.Float64()))
		}
		scene := furnished(rand.New(rand.NewPCG(3, uint64(n))), motion{})
		scene = strings.Replace(scene, "people:\n", "people:\n  eve: {at: [-3, -3], faces: 0, walk: ["+strings.Join(places, ", ")+"]}\n", 1)
		log := &source.Log{}
		doc := opened(t, scene, log)
		s := Resolve(doc, doc.Scene("", log), log)
		sane(t, fmt.Sprint("walk ", n), s)
		met += stoodAlong(t, s, s.People[0].Walk)
	}
	if met < 200 {
		t.Errorf("only %d places were in something", met)
	}
}

// stoodAlong stands a body at close intervals along a walk, and returns how many of them are in something.
func stoodAlong(t *testing.T, s *plan.Setup, w *plan.Walk) (met int) {
	t.Helper()
	from := 0.0
	for i := 1; i < len(w.Corners); i++ {
		leg := r2.Sub(w.Corners[i], w.Corners[i-1])
		for along := 0.0137; along < r2.Norm(leg); along += 0.0371 {
			in, edge := bodyAt(s, w, r2.Add(w.Corners[i-1], r2.Scale(along/r2.Norm(leg), leg)), w.BaseAt(from+along))
			told := slices.ContainsFunc(w.Through, func(h plan.Through) bool { return from+along > h.From && from+along < h.To })
			if in {
				met++
			}
			if in != told && !edge {
				t.Errorf("%.3f m along %v: in something %v, told %v", from+along, w.Corners, in, told)
			}
		}
		from += r2.Norm(leg)
	}
	return met
}

// bodyAt says whether a body at a place is in something, and whether that has an edge right there.
func bodyAt(s *plan.Setup, w *plan.Walk, at r2.Vec, base float64) (in, edge bool) {
	for _, p := range s.Set.Prisms {
		if p.Name == "eve" || p.Z1 < base+0.3+1e-4 || p.Z0 > base+w.Crown-1e-4 {
			continue
		}
		inside := true
		for i, a := range p.Base { // a corner lies to the left of each side of a convex ring
			side := r2.Sub(p.Base[(i+1)%len(p.Base)], a)
			off := r2.Cross(side, r2.Sub(at, a)) / r2.Norm(side)
			inside = inside && off > 0
			edge = edge || math.Abs(off) < 2e-3
		}
		in = in || inside
	}
	return in, edge
}
