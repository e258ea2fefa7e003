package radiosity

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// What is small and far off slips between rays: a cloth on a lamp ten metres away fills a hundred thousandth of what a receptor
// sees, and is all of its light. So the patches that no ray has met are looked for by name: those that a place sees, and all of a cloth
// that a place or a followed patch sees. Else what is read would hang on what the rays of others happen to meet.

// sureToMeet is how many rays of those that would meet a face, were nothing in the way, make it sure that one does: where none has, the
// face is hidden.
const sureToMeet = 64

// mostLooks bounds how many times a place looks at a face. Where there would be more, as for a picture, places look at cloths alone: so
// many places meet by their rays whatever else one of them sees.
const mostLooks = 1 << 14

// search looks for what rays have missed.
type search struct {
	t    *Transport
	open [][]uint32 // by face: its patches that nobody follows
}

// newSearch makes a search of all faces ready.
func newSearch(t *Transport) *search {
	s := &search{t, make([][]uint32, len(t.mesh.faces))}
	for k := range s.open {
		s.open[k] = unfollowed(t, &t.mesh.faces[k])
	}
	return s
}

// fromPlaces takes up the patches that places see and nobody follows.
func (s *search) fromPlaces(ctx context.Context) error {
	t := s.t
	missed := make([][]uint32, len(t.places))
	tracers := t.mesh.tracers(t.workers, len(t.places))
	err := parallel.For(ctx, t.workers, len(t.places), func(worker, n int) { missed[n] = s.missedFrom(&tracers[worker], &t.places[n]) })
	for _, elements := range missed {
		t.enqueue(elements)
	}
	return err
}

// missedFrom finds the faces that a place sees and none of its rays has met, and gives the elements of those patches that it sees and
// nobody follows.
func (s *search) missedFrom(e *tracer, p *place) (elements []uint32) {
	t := s.t
	r := &t.receptors[p.receptors[0]]
	if r.Response == receptor.Radiance {
		return nil
	}
	met, all := facesMet(t, p), len(t.places)*len(t.mesh.faces) <= mostLooks
	for k := range t.mesh.faces {
		f := &t.mesh.faces[k]
		if met[k] {
			p.seen = append(p.seen, int32(k))
		}
		if len(s.open[k]) == 0 && met[k] || !all && f.otherSide == 0 || !s.mayMiss(p, f, met[k]) || !e.sees(r, f.corners) {
			continue
		}
		if !met[k] {
			p.seen = append(p.seen, int32(k))
		}
		for _, number := range s.open[k] {
			if corners := f.cell(number); e.sees(r, corners[:]) {
				elements = append(elements, 4*number)
			}
		}
	}
	return elements
}

// facesMet says of each face whether a ray of a place has met it.
func facesMet(t *Transport, p *place) []bool {
	met := make([]bool, len(t.mesh.faces))
	last := uint32(black)
	for _, h := range p.hits {
		if n := t.mesh.patchOf(h); n != last && n != 0 {
			met[t.mesh.face(n)] = true
			last = n
		}
	}
	return met
}

// unfollowed are the patches of a face that nobody follows.
func unfollowed(t *Transport, f *face) (numbers []uint32) {
	for n := range uint32(f.nu * f.nv) {
		if t.slots[f.first+n] == 0 {
			numbers = append(numbers, f.first+n)
		}
	}
	return numbers
}

// cell is the rectangle of a patch of the face.
func (f *face) cell(number uint32) [4]r3.Vec {
	n := int(number - f.first)
	return f.rectangle(float64(n%f.nu)*f.du, float64(n/f.nu)*f.dv, f.du, f.dv)
}

// mayMiss says whether the rays of a place may miss what it sees of a face. Of one that none has met, though many would with
// nothing in the way, it sees nothing; a cloth counts for more than it takes up.
func (s *search) mayMiss(p *place, f *face, met bool) bool {
	t := s.t
	first := &t.receptors[p.receptors[0]]
	if slices.Contains(first.Skip, f.id) || !(r3.Dot(r3.Sub(first.At, f.corners[0]), f.n) > clearance) {
		return false
	}
	before := func(i int) bool { return reaches(&t.receptors[i], f.corners) }
	if !slices.ContainsFunc(p.receptors, before) {
		return false
	}
	if met || f.otherSide != 0 {
		return true
	}
	middle := solid.Centre(f.corners)
	way := r3.Sub(middle, first.At)
	share := f.gain(middle, way) / 4 // of all directions
	if p.directions == nil {
		share = f.gain(middle, way) * first.Response.To(r3.Dot(way, first.Axis)/r3.Norm(way)) / first.Response.Integral()
	}
	return share*float64(len(p.hits)) < sureToMeet
}

// reaches says whether some of a figure lies before the plane of a receptor; before a dome all does.
func reaches(r *receptor.Receptor, figure []r3.Vec) bool {
	return r.Response == receptor.Dome || slices.ContainsFunc(figure, func(c r3.Vec) bool { return r3.Dot(r3.Sub(c, r.At), r.Axis) > 0 })
}

// gain is about the solid angle by pi that a face fills from a place, by the way to its middle.
func (f *face) gain(middle, way r3.Vec) float64 {
	square, size := r3.Norm2(way), r3.Norm(area(f.corners))
	return -r3.Dot(way, f.n) / math.Sqrt(square) * size / (math.Pi*square + size)
}

// sees says whether a receptor sees anything of a figure.
func (e *tracer) sees(r *receptor.Receptor, figure []r3.Vec) bool {
	shaft := solid.NewShaft([]r3.Vec{r.At}, figure)
	e.near = e.m.bvh.Between(&shaft, r.Skip, e.near[:0])
	return len(e.view.Visible(r.At, figure, e.near, true)) > 0
}

// forCloth takes up all of each cloth of which a patch is followed, or that a followed patch sees.
func (s *search) forCloth(e *tracer) {
	t := s.t
	for k := range t.mesh.faces {
		f := &t.mesh.faces[k]
		if f.otherSide == 0 {
			continue
		}
		open := unfollowed(t, f)
		if n := len(open); n == 0 || n == f.nu*f.nv && !s.isSeen(e, f) {
			continue
		}
		for _, number := range open {
			t.enqueue([]uint32{4 * number})
		}
	}
}

// isSeen says whether the middle of some followed patch sees that of a face that no ray has met; not where so many rays would have met it
// with nothing in the way that it is hidden.
func (s *search) isSeen(e *tracer, f *face) bool {
	t := s.t
	middle := solid.Centre(f.corners)
	gains, rays := make([]float64, len(t.patches)), 0.0
	for slot := 1; slot < len(t.patches); slot++ {
		p := &t.patches[slot]
		of := &t.mesh.faces[p.face]
		way := r3.Sub(middle, of.at(p.x+of.du/2, p.y+of.dv/2))
		if cos := r3.Dot(way, of.n); cos > 0 {
			gains[slot] = max(0, f.gain(middle, way)*cos/r3.Norm(way))
			rays += gains[slot] * float64(p.to-p.from)
		}
	}
	if rays >= sureToMeet {
		return false
	}
	for slot, gain := range gains {
		if gain == 0 {
			continue
		}
		p := &t.patches[slot]
		of := &t.mesh.faces[p.face]
		var blocked bool
		if e.panes, blocked = e.m.bvh.SegmentAgain(&e.stopper, middle, of.at(p.x+of.du/2, p.y+of.dv/2), nil, e.panes[:0]); !blocked {
			return true
		}
	}
	return false
}
