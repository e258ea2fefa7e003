package radiosity

import (
	"context"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// From far a face fills its area by the square of the distance, as it is turned; from next to it half of all.
func TestGainOfAFace(t *testing.T) {
	f := boardFace(t, r3.Vec{X: -0.5, Y: -0.5}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5)
	for _, c := range []struct{ at r3.Vec }{{r3.Vec{Z: 20}}, {r3.Vec{X: 30, Z: 40}}, {r3.Vec{Z: -20}}} {
		square := r3.Norm2(c.at)
		want := c.at.Z / math.Sqrt(square) / square / math.Pi
		if got := f.gain(r3.Vec{}, r3.Scale(-1, c.at)); !(math.Abs(got-want) <= 0.01*math.Abs(want)) {
			t.Errorf("from %v a face gains %g, want %g", c.at, got, want)
		}
	}
	if got := f.gain(r3.Vec{}, r3.Vec{Z: -1e-9}); !(math.Abs(got-1) <= 1e-6) {
		t.Errorf("from next to it a face gains %g", got)
	}
}

// A place may miss what it sees of a face by which fewer than sixty-four of its rays would go with nothing in the way, and never what lies
// behind it or is not there for it. Faces met in part and cloth may always be missed.
func TestWhatRaysMayMiss(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: -0.05, Y: -0.05}, r3.Vec{X: 0.1}, r3.Vec{Y: 0.1}, 1, 1, 0.5))
	s := &search{t: tr}
	down, up := r3.Vec{Z: -1}, r3.Vec{Z: 1}
	facing := 20177 // rays of a receptor that looks at it from 1 m, of which 64 fall on it: its form factor is 0.003172
	around := 4 * facing
	for _, c := range []struct {
		name       string
		at, axis   r3.Vec
		rays       int
		all        bool
		met, cloth bool
		skip       []solid.ID
		want       bool
	}{
		{"few", r3.Vec{Z: 1}, down, facing - 100, false, false, false, nil, true},
		{"many", r3.Vec{Z: 1}, down, facing + 100, false, false, false, nil, false},
		{"few all round", r3.Vec{Z: 1}, down, around - 100, true, false, false, nil, true},
		{"many all round", r3.Vec{Z: 1}, down, around + 100, true, false, false, nil, false},
		{"met", r3.Vec{Z: 1}, down, 1 << 20, false, true, false, nil, true},
		{"cloth", r3.Vec{Z: 1}, down, 1 << 20, false, false, true, nil, true},
		{"behind the face", r3.Vec{Z: -1}, up, 10, false, true, false, nil, false},
		{"looking away", r3.Vec{Z: 1}, up, 10, false, true, false, nil, false},
		{"not there", r3.Vec{Z: 1}, down, 10, false, true, false, []solid.ID{1}, false},
		{"another is not there", r3.Vec{Z: 1}, down, 10, false, true, false, []solid.ID{2}, true},
	} {
		tr.receptors = []receptor.Receptor{{At: c.at, Axis: c.axis, Skip: c.skip}}
		p := &place{receptors: []int{0}, hits: make([]uint32, c.rays)}
		if c.all {
			p.directions = make([]r3.Vec, c.rays)
		}
		f := tr.mesh.faces[0]
		if c.cloth {
			f.otherSide = 1
		}
		if got := s.mayMiss(p, &f, c.met); got != c.want {
			t.Errorf("%s: may miss it: %v", c.name, got)
		}
	}
	for _, c := range []struct {
		r    receptor.Receptor
		want bool
	}{{receptor.Receptor{Axis: r3.Vec{X: 1}}, true}, {receptor.Receptor{At: r3.Vec{X: 0.05}, Axis: r3.Vec{X: 1}}, false}, {receptor.Receptor{At: r3.Vec{X: 1}, Axis: r3.Vec{X: 1}, Response: receptor.Dome}, true}} {
		if got := reaches(&c.r, tr.mesh.faces[0].corners); got != c.want {
			t.Errorf("the face lies before %+v: %v", c.r, got)
		}
	}
}

// A cloth is seen from a patch that looks at it with nothing between; not where so many rays would have met it that it is hidden.
func TestWhoSeesACloth(t *testing.T) {
	sheet := func(id solid.ID, x0, x1, y0, y1 float64) solid.Sheet { // 1 m up
		return solid.Sheet{ID: id, Corners: []r3.Vec{{X: x0, Y: y0, Z: 1}, {X: x1, Y: y0, Z: 1}, {X: x1, Y: y1, Z: 1}, {X: x0, Y: y1, Z: 1}}}
	}
	board := []solid.Sheet{sheet(5, -1, 1, -1, 1)}
	hole := []solid.Sheet{sheet(5, -4, -0.2, -4, 4), sheet(6, 0.2, 4, -4, 4), sheet(7, -4, 4, -4, -0.2), sheet(8, -4, 4, 0.2, 4)}
	const few = 80491 // rays of a patch, of which 64 fall on the cloth: by its 0.01 m² in 4 pi and that
	for _, c := range []struct {
		name  string
		z     float64 // of the cloth, 0.1 m by 0.1 m
		links int
		way   []solid.Sheet
		want  bool
	}{
		{"before the floor", 2, 64, nil, true}, {"below the floor", -2, 64, nil, false}, {"behind a board", 2, 64, board, false}, {"before a hole", 2, 64, hole, true},
		{"as many rays as may miss it", 2, few - 20, nil, true}, {"rays are many", 2, few + 20, nil, false},
	} {
		floor := boardFace(t, r3.Vec{X: -0.5, Y: -0.5}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5)
		cloth := boardFace(t, r3.Vec{X: -0.05, Y: -0.05, Z: c.z}, r3.Vec{Y: 0.1}, r3.Vec{X: 0.1}, 1, 1, 0.5)
		tr := handmade(1, floor, cloth)
		tr.mesh.bvh = solid.NewBVH(&solid.Set{Sheets: c.way})
		tr.sees(1, make([]uint32, c.links)...)
		if got := newSearch(tr).isSeen(newTracer(tr.mesh), &tr.mesh.faces[1]); got != c.want {
			t.Errorf("%s: the cloth is seen: %v", c.name, got)
		}
	}
}

// What rays have met is counted by face, and what nobody follows by patch; a cell is the rectangle of its patch.
func TestFollowedPatches(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 6}, r3.Vec{Y: 2}, 3, 2, 0.5), boardFace(t, r3.Vec{Z: 1}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5), boardFace(t, r3.Vec{Z: 2}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5))
	if got := facesMet(tr, &place{hits: []uint32{black, 4*8 + 1, 4*8 + 2, black}}); !slices.Equal(got, []bool{false, false, true}) {
		t.Errorf("met are %v", got)
	}
	tr.slots[2], tr.slots[5] = 0, 0
	if got := unfollowed(tr, &tr.mesh.faces[0]); !slices.Equal(got, []uint32{2, 5}) {
		t.Errorf("nobody follows %v, want 2 and 5", got)
	}
	f := &tr.mesh.faces[0]
	if got, want := f.cell(5), f.rectangle(2, 1, 2, 1); got != want {
		t.Errorf("patch 5 is %v, want %v", got, want)
	}
}

// A place looks for patches that nobody follows on faces that it sees, and notes those that it sees or has met.
func TestAPlaceLooksForWhatItMissed(t *testing.T) {
	square := func(z, size float64) []r3.Vec {
		return []r3.Vec{{X: -size, Y: -size, Z: z}, {X: size, Y: -size, Z: z}, {X: size, Y: size, Z: z}, {X: -size, Y: size, Z: z}}
	}
	skin := solid.Skin{Reflect: grey(0.5)}
	set := &solid.Set{Sheets: []solid.Sheet{{ID: 1, Corners: square(0, 0.01), Front: skin}, {ID: 2, Corners: square(-1, 0.004), Front: skin}}}
	tr, err := Trace(context.Background(), set, solid.NewBVH(set), Quality{Patch: 1, Links: 16, Point: 16}, 1, []receptor.Receptor{{At: r3.Vec{Z: 9}, Axis: r3.Vec{Z: -1}}, {At: r3.Vec{Z: 9}, Axis: r3.Vec{Z: 1}}, {At: r3.Vec{X: 3, Z: 9}, Axis: r3.Vec{Z: -1}, Response: receptor.Radiance}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	// The upper one hides the lower one from the first two, which share a place; the last looks along its axis alone.
	if got := tr.places[0].seen; !slices.Equal(got, []int32{0}) || len(tr.patches) != 2 || len(tr.places[1].seen) != 0 {
		t.Errorf("places see faces %v and %v, %d patches are followed", got, tr.places[1].seen, len(tr.patches)-1)
	}
}

// A place notes the faces that it sees or has met, and takes up of them the patches that nobody follows; where places and faces are very many, of
// cloth alone.
func TestManyPlacesLookForCloth(t *testing.T) {
	var faces []face
	for k := range 8 {
		up := r3.Vec{Y: 1}
		if k == 4 || k >= 6 {
			up.Y = -1 // these look down, and away
		}
		faces = append(faces, boardFace(t, r3.Vec{X: 3 * float64(k)}, r3.Vec{X: 2}, up, 2, 1, 0.5))
	}
	tr := handmade(1, faces...)
	tr.receptors = []receptor.Receptor{{At: r3.Vec{X: 12, Z: 9}, Axis: r3.Vec{Z: -1}}}
	tr.mesh.faces[5].otherSide, tr.mesh.faces[6].otherSide = 7, 6
	first := func(k int) uint32 { return tr.mesh.faces[k].first }
	for _, n := range []uint32{first(2), first(2) + 1, first(3) + 1, first(4), first(5), first(6)} {
		tr.slots[n] = 0 // nobody follows these; face 0 was met, 1 was not, and both are followed
	}
	met := []uint32{4 * first(0), 4*first(3) + 2, black}
	for _, c := range []struct {
		places   int
		seen     []int32
		elements []uint32
	}{
		{1, []int32{0, 1, 2, 3, 5}, []uint32{4 * first(2), 4 * (first(2) + 1), 4 * (first(3) + 1), 4 * first(5)}},
		{mostLooks / 8, []int32{0, 1, 2, 3, 5}, []uint32{4 * first(2), 4 * (first(2) + 1), 4 * (first(3) + 1), 4 * first(5)}},
		{mostLooks/8 + 1, []int32{0, 3, 5}, []uint32{4 * first(5)}},
	} {
		tr.places = make([]place, c.places)
		p := &tr.places[0]
		p.receptors, p.hits = []int{0}, met
		if got := newSearch(tr).missedFrom(newTracer(tr.mesh), p); !slices.Equal(got, c.elements) || !slices.Equal(p.seen, c.seen) {
			t.Errorf("one of %d places sees faces %v, want %v, and takes up %v, want %v", c.places, p.seen, c.seen, got, c.elements)
		}
	}
}
