package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// share is what comes from one lamp through the same panes.
type share struct {
	via    []solid.ID // in order from the lamp
	filter colour.RGB
	value  float64 // lx at a drive of {1, 1, 1}, before the filter
	count  int     // points of the opening that are yet to be added
}

// tracer follows light from lamps to receptors. It keeps its memory from one to the next.
type tracer struct {
	bvh    *solid.BVH
	panes  []solid.Pane
	ids    []solid.ID
	shares []share
}

// sighting says how a point of an opening is seen from a receptor.
type sighting uint8

const (
	seen sighting = iota
	hidden
	behind // the receptor's plane
)

// light returns what a lamp gives to a receptor, in shares that hold until the next call.
func (t *tracer) light(l *lamp, r *Receptor) []share {
	t.shares = t.shares[:0]
	if l.onesided && r3.Dot(r3.Sub(r.At, l.at), l.axis) <= 0 {
		return nil
	}
	if l.opening.Form == photometry.Point {
		if t.point(l.at, r) == seen {
			t.settle(l.from(l.at, r))
		}
		return t.shares
	}
	var all [3]int
	lost := 0.0
	for n := 0; n < len(l.order); {
		var middle r3.Vec
		var count [3]int
		for first := n; n < len(l.order) && (n == first || !l.begins[n]); n++ {
			p := l.points[l.order[n]]
			s := t.point(p, r)
			count[s]++
			if s != behind {
				middle = r3.Add(middle, p)
			}
		}
		if there := count[seen] + count[hidden]; there > 0 {
			each := l.from(r3.Scale(1/float64(there), middle), r) / float64(len(l.points))
			t.settle(each)
			lost += each * float64(count[hidden])
		}
		for s := range all {
			all[s] += count[s]
		}
	}
	// The closed forms clip an opening that the receptor's plane cuts, the rules do not.
	if len(t.shares) > 0 && (all[behind] == 0 || l.lambertian) {
		t.fit(l.full(r, exactly()), lost, all[hidden] <= all[seen])
	}
	return t.shares
}

// settle adds the light of a point of the opening to the shares, as often as they have counted one.
func (t *tracer) settle(each float64) {
	for i := range t.shares {
		s := &t.shares[i]
		s.value += each * float64(s.count)
		s.count = 0
	}
}

// fit makes the light of the whole opening less what is hidden of it where most of it is seen, and scales the
// shares down to the whole where their sum is more: what hides a part can then never add light.
func (t *tracer) fit(full, lost float64, most bool) {
	if most && len(t.shares) == 1 {
		t.shares[0].value = max(0, full-lost)
		return
	}
	sum := 0.0
	for i := range t.shares {
		sum += t.shares[i].value
	}
	for i := range t.shares {
		if sum > full {
			t.shares[i].value *= full / sum
		}
	}
}

// point counts one point of the opening in its share.
func (t *tracer) point(p r3.Vec, r *Receptor) sighting {
	way := r3.Sub(r.At, p)
	distance := r3.Norm(way)
	if distance == 0 || weigh(r, r3.Scale(1/distance, way)) == 0 {
		return behind
	}
	panes, blocked := t.bvh.Segment(p, r.At, r.Skip, t.panes[:0])
	t.panes = panes
	if blocked {
		return hidden
	}
	t.count()
	return seen
}

// count counts a point whose light has passed t.panes.
func (t *tracer) count() {
	t.ids = t.ids[:0]
	filter := colour.RGB{1, 1, 1}
	for i := range t.panes {
		t.ids = append(t.ids, t.panes[i].ID)
		filter = filter.Times(t.panes[i].Factor)
	}
	for i := range t.shares {
		if s := &t.shares[i]; slices.Equal(s.via, t.ids) {
			s.count++
			return
		}
	}
	t.shares = append(t.shares, share{append([]solid.ID(nil), t.ids...), filter, 0, 1})
}

// surface finds what a spot meter looks at: a flat receptor on the first surface along the axis,
// behind clear sheets, and the factor from its illuminance to the luminance seen, Reflect/pi times
// what the sheets pass. Where there is no surface the factor is nought.
func (w *World) surface(r *Receptor) (Receptor, colour.RGB) {
	hit, ok := w.bvh.FirstOpaque(r.At, r.Axis, r.Skip)
	if body, seen := w.bodies.FirstOpaque(r.At, r.Axis, r.Skip); seen && (!ok || body.T < hit.T) {
		hit, ok = body, true
	}
	if !ok {
		return Receptor{At: r.At, Axis: r.Axis, Skip: r.Skip}, colour.RGB{}
	}
	at := r3.Add(r.At, r3.Scale(hit.T, r.Axis))
	gain := hit.Skin.Reflect.Scale(1 / math.Pi)
	panes, _ := w.bvh.Segment(r.At, at, append(slices.Clone(r.Skip), hit.ID), nil)
	for _, p := range panes {
		gain = gain.Times(p.Factor)
	}
	return Receptor{At: at, Axis: hit.Normal, Skip: r.Skip}, gain
}
