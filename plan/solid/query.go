package solid

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// Hit is where a ray meets a solid.
type Hit struct {
	ID     ID
	T      float64 // distance along the ray, m; 0 where it starts inside the solid
	Normal r3.Vec  // of the face, a unit vector toward the side that the ray comes from
	Front  bool    // of a sheet: whether its front was met; true for a prism
	Skin   *Skin   // of that side; it belongs to the Set
}

// Pane is a clear sheet that a ray passes.
type Pane struct {
	ID    ID
	T     float64    // distance along the ray, m
	Ahead colour.RGB // what passes straight on of light from straight ahead
	Ratio float64    // the ratio of what passes to that: less than 1 from aside
}

// opaque says whether nothing passes.
func (p *Pane) opaque() bool { return p.Ratio == 0 || p.Ahead == colour.RGB{} }

// Factor is what passes straight on.
func (p *Pane) Factor() colour.RGB { return p.Ahead.Scale(p.Ratio) }

// First returns the first solid or sheet, clear or not, that a ray from o in the unit direction d
// meets. Solids in skip are not there. A ray that starts inside a solid meets it at once.
func (b *BVH) First(o, d r3.Vec, skip []ID) (Hit, bool) { return b.first(o, d, skip, false) }

// FirstOpaque is First for a ray that passes clear sheets.
func (b *BVH) FirstOpaque(o, d r3.Vec, skip []ID) (Hit, bool) { return b.first(o, d, skip, true) }

func (b *BVH) first(o, d r3.Vec, skip []ID, opaque bool) (best Hit, found bool) {
	r := newRay(o, d)
	best.T = math.Inf(1)
	rank := 0
	w := b.walk()
	for {
		leaf := w.next(&r, best.T)
		if leaf == nil {
			return best, found
		}
		for i := range leaf {
			p := &leaf[i]
			h, ok := p.hit(&r, b.epsilon, opaque)
			// Of two at the very same place the earlier in the set counts.
			if ok && (h.T < best.T || h.T == best.T && p.index < rank) && !slices.Contains(skip, p.id) {
				best, rank, found = h, p.index, true
			}
		}
	}
}

// hit is where the ray meets p.
func (p *part) hit(r *ray, eps float64, opaque bool) (Hit, bool) {
	if p.sheet {
		t, front, ok := p.cross(r, math.Inf(1), eps)
		if !ok {
			return Hit{}, false
		}
		h := Hit{ID: p.id, T: t, Normal: p.n, Front: front, Skin: p.skin(front)}
		if !front {
			h.Normal = r3.Scale(-1, p.n)
		}
		return h, !(opaque && h.Skin.Clear())
	}
	t, _, normal, ok := p.clip(r, math.Inf(1), eps)
	if ok && normal == (r3.Vec{}) {
		normal = r3.Scale(-1, r.d)
	}
	return Hit{ID: p.id, T: t, Normal: normal, Front: true, Skin: p.skins[0]}, ok
}

// skin is the skin of a side.
func (p *part) skin(front bool) *Skin {
	if front {
		return p.skins[0]
	}
	return p.skins[1]
}

// Blocked says whether something stops light on its straight way between two points. Clear
// sheets do not; solids in skip are not there.
func (b *BVH) Blocked(from, to r3.Vec, skip []ID) bool {
	_, _, blocked := b.segment(from, to, skip, nil, false)
	return blocked
}

// Segment follows light from one point to another. It appends the clear sheets that it passes to
// panes, in order from the first point, and says whether something opaque stops it, in which case
// panes comes back as it was. Solids in skip are not there.
func (b *BVH) Segment(from, to r3.Vec, skip []ID, panes []Pane) (passed []Pane, blocked bool) {
	passed, _, blocked = b.segment(from, to, skip, panes, true)
	return passed, blocked
}

// Stopper is what has stopped light last, for SegmentAgain. The zero value knows of none.
type Stopper struct{ number int32 } // of the part, from 1

// SegmentAgain is Segment for one of many ways that run side by side: what stopped the last is looked at first, for most often it stops the
// next.
func (b *BVH) SegmentAgain(last *Stopper, from, to r3.Vec, skip []ID, panes []Pane) (passed []Pane, blocked bool) {
	if last.number > 0 {
		p := &b.parts[last.number-1]
		way := r3.Sub(to, from)
		if length := math.Sqrt(r3.Norm2(way)); length > 2*b.epsilon && !slices.Contains(skip, p.id) {
			r := ray{o: from, d: r3.Scale(1/length, way)}
			if pane, meets := p.stops(&r, length, b.epsilon); meets && pane.opaque() {
				return panes, true
			}
		}
	}
	passed, stopper, blocked := b.segment(from, to, skip, panes, true)
	if blocked {
		last.number = stopper
	}
	return passed, blocked
}

// segment also gives the number, from 1, of the part that stops the light.
func (b *BVH) segment(from, to r3.Vec, skip []ID, panes []Pane, keep bool) (passed []Pane, stopper int32, blocked bool) {
	way := r3.Sub(to, from)
	length := math.Sqrt(r3.Norm2(way))
	if length <= 2*b.epsilon {
		return panes, 0, false
	}
	r := newRay(from, r3.Scale(1/length, way))
	passed = panes
	w := b.walk()
	for leaf := w.next(&r, length); leaf != nil; leaf = w.next(&r, length) {
		for i := range leaf {
			p := &leaf[i]
			pane, meets := p.stops(&r, length, b.epsilon)
			switch {
			case !meets || slices.Contains(skip, p.id):
			case pane.opaque():
				return panes, w.leaf + int32(i) + 1, true
			case keep:
				passed = append(passed, pane)
			}
		}
	}
	sortPanes(passed[len(panes):])
	return passed, 0, false
}

func sortPanes(panes []Pane) {
	if len(panes) > 1 {
		slices.SortFunc(panes, byPlace)
	}
}

// byPlace orders panes along a ray; those at one place by name, so that any tree gives one order.
func byPlace(a, b Pane) int {
	if c := cmp.Compare(a.T, b.T); c != 0 {
		return c
	}
	return cmp.Compare(a.ID, b.ID)
}

// stops says whether the ray meets p before length, as a pane; what is opaque has no factor.
func (p *part) stops(r *ray, length, eps float64) (Pane, bool) {
	if !p.sheet {
		_, _, _, ok := p.clip(r, length, eps)
		return Pane{}, ok
	}
	t, front, ok := p.cross(r, length, eps)
	if !ok {
		return Pane{}, false
	}
	skin := p.skin(front)
	if skin.Glass == nil {
		return Pane{ID: p.id, T: t, Ahead: skin.Direct, Ratio: 1}, true
	}
	return Pane{ID: p.id, T: t, Ahead: skin.Direct, Ratio: skin.Glass.Ratio(r3.Dot(p.n, r.d))}, true
}
