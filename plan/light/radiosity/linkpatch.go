package radiosity

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
)

// linked is a patch with what it sees.
type linked struct {
	patch
	links []uint32
}

// addRay notes the end of a ray.
func (l *linked) addRay(m *mesh, hit uint32) {
	l.links = append(l.links, hit)
	l.kept = l.kept.Add(m.keeps(hit))
}

// rays is how many a patch gets: fewer where it is small.
func (q *Quality) rays(area float64) int {
	n, whole := q.Links, q.Patch*q.Patch
	for n > 16 && area < whole/4 {
		n, whole = n/2, whole/4
	}
	return n
}

// patch is one of face k before it is linked.
func (m *mesh) patch(k int, number uint32) patch {
	f := &m.faces[k]
	cell := int(number - f.first)
	return patch{number: number, face: int32(k), x: float64(cell%f.nu) * f.du, y: float64(cell/f.nu) * f.dv}
}

// cast follows rays from up to to of a patch.
func (t *Transport) cast(e *tracer, f *face, l *linked, from, to int) {
	shift := sobol.Shift(l.number)
	for r := from; r < to; r++ {
		x, y, way := t.samples[r].Shifted(&shift)
		if !f.contains(l.x+x*f.du, l.y+y*f.dv) {
			continue
		}
		e.number = r
		hit, ok := e.trace(f.at(l.x+x*f.du, l.y+y*f.dv), f.direction(receptor.Cosine, way[0], way[1]), nil)
		if ok {
			l.addRay(t.mesh, hit)
		}
	}
}

// finish looks for more places of a patch where none of n was in the air, and sets what follows from all.
func (t *Transport) finish(e *tracer, f *face, l *linked, n int) {
	for tried := n; len(l.links) == 0 && tried < mostTried; tried *= 2 {
		t.cast(e, f, l, tried, min(2*tried, mostTried))
	}
	e.findExposed(f, &l.patch)
	if len(l.links) > 0 {
		l.kept = l.kept.Scale(1 / float64(len(l.links)))
	}
}

// linkOne follows the rays of one patch, each from its own place.
func (t *Transport) linkOne(e *tracer, number uint32) linked {
	k := t.mesh.face(number)
	f := &t.mesh.faces[k]
	n := t.quality.rays(f.du * f.dv)
	l := linked{t.mesh.patch(k, number), make([]uint32, 0, n)}
	t.cast(e, f, &l, 0, n)
	t.finish(e, f, &l, n)
	return l
}

// mostTried is how many places of a patch are tried, at most, where all before lie in a solid or off its
// face.
const mostTried = 4096

// enqueue takes up the patches of elements that have been seen for the first time.
func (t *Transport) enqueue(elements []uint32) {
	for _, e := range elements {
		p := t.mesh.patchOf(e)
		if p == 0 {
			continue
		}
		switch t.slots[p] {
		case blackSlot:
			t.slots[p] = seenBlackSlot
		case 0:
			t.slots[p] = 1
			t.queue = append(t.queue, p)
			t.enqueueBehind(p)
		}
	}
}

// enqueueBehind takes up the patch on the other face of a cloth.
func (t *Transport) enqueueBehind(patch uint32) {
	if len(t.mesh.veils) == 0 {
		return
	}
	if p := t.mesh.behind(patch); p != 0 && t.slots[p] == 0 {
		t.slots[p] = 1
		t.queue = append(t.queue, p)
	}
}

// inAir says whether a place of a face is in the air.
func (m *mesh) inAir(f *face, at r3.Vec) bool {
	_, inside := m.bvh.Inside(r3.Add(at, r3.Scale(clearance, f.n)))
	return !inside
}

// tracers makes one for each goroutine that works on n tasks.
func (m *mesh) tracers(workers, n int) []tracer {
	all := make([]tracer, parallel.Workers(workers, n))
	for i := range all {
		all[i] = *newTracer(m)
	}
	return all
}
