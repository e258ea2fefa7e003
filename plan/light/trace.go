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
		t.point(l, l.at, 1, r)
		return t.shares
	}
	var count [3]int
	lost, share := 0.0, 1/float64(len(l.points))
	for _, p := range l.points {
		sight := t.point(l, p, share, r)
		count[sight]++
		if sight == hidden {
			lost += share * l.from(p, r)
		}
	}
	// The closed forms clip an opening that the receptor's plane cuts, the rules do not.
	if len(t.shares) > 0 && (count[behind] == 0 || l.lambertian) {
		t.fit(l.full(r, exactly()), lost, count[hidden] <= count[seen])
	}
	return t.shares
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

// point adds the light of one point of the opening, a part of it.
func (t *tracer) point(l *lamp, p r3.Vec, part float64, r *Receptor) sighting {
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
	t.add(part * l.from(p, r))
	return seen
}

// add puts light that has passed t.panes to its share.
func (t *tracer) add(value float64) {
	t.ids = t.ids[:0]
	filter := colour.RGB{1, 1, 1}
	for i := range t.panes {
		t.ids = append(t.ids, t.panes[i].ID)
		filter = filter.Times(t.panes[i].Factor)
	}
	for i := range t.shares {
		if s := &t.shares[i]; slices.Equal(s.via, t.ids) {
			s.value += value
			return
		}
	}
	t.shares = append(t.shares, share{append([]solid.ID(nil), t.ids...), filter, value})
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
