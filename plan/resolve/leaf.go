package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// leafThickness is the thickness of a door's leaf, m.
const leafThickness = 0.04

// glaze decides what an opening is closed with: glass in a window, glass in a door that names it,
// else a leaf in a door and nothing in a gap.
func (r *wallPass) glaze(o *scene.Opening, to *plan.Opening) {
	switch {
	case o.Kind == term.Gap, o.Kind == term.Door && !o.Glass.Set:
		if o.Kind == term.Door && o.Ajar.Value == 0 {
			to.Transmittance = 0
		}
		return
	case !o.Glass.Set:
		r.assumeOnce("", "glass of windows", scene.DefaultGlass+", one pane")
	}
	if m, ok := r.glass(o.Glass); ok {
		to.Glass, to.Transmittance = m.Name, m.Transmittance
	}
}

// closeOpening hangs the pane or the leaf of an opening.
func (r *wallPass) closeOpening(o *plan.Opening) {
	if o.Kind == term.Door || o.Kind == term.Window && o.Ajar > 0 {
		o.Leaf = leafOf(o)
	}
	switch {
	case o.Kind == term.Gap:
	case o.Glass != "":
		r.hangPane(o)
	case o.Kind == term.Door:
		o.IDs = append(o.IDs, r.prism(o.Name, o.Leaf, o.Sill, o.Head, paint(grey(scene.DefaultLeafReflectance))))
	}
}

// hangPane hangs a sheet of glass: in the middle of the wall, or where it stands ajar.
func (r *wallPass) hangPane(o *plan.Opening) {
	m := r.kit.Material(o.Glass)
	if m == nil {
		return
	}
	half := r2.Scale(o.Depth/2, o.Outward)
	a, b := r2.Add(o.Left, half), r2.Add(o.Right, half)
	if o.Ajar > 0 {
		a, b = o.Leaf[0], o.Leaf[1]
	}
	skin := r.gelled(o, kitSkin(m))
	o.IDs = append(o.IDs, r.sheet(o.Name, upright(a, b, o.Sill, o.Head), skin, skin))
	r.hangBars(o, m.Bars, a, b)
}

// upright is the rectangle over a-b from z0 to z1; its front is to the right of the way from a to b.
func upright(a, b r2.Vec, z0, z1 float64) []r3.Vec {
	return []r3.Vec{
		{X: a.X, Y: a.Y, Z: z0}, {X: b.X, Y: b.Y, Z: z0}, {X: b.X, Y: b.Y, Z: z1}, {X: a.X, Y: a.Y, Z: z1},
	}
}

// leafOf is the plan of an opening's leaf, turned about its hinge: shut, it lies flush with the face
// of the wall that it opens to. Its first two corners are the ends of that face, in the order that
// keeps the ring counter-clockwise.
func leafOf(o *plan.Opening) []r2.Vec {
	hinge, edge := o.Left, o.Right
	if !o.HingeLeft {
		hinge, edge = edge, hinge
	}
	inward := r2.Scale(-1, o.Outward)
	swing, flush := inward, r2.Vec{}
	if !o.SwingIn {
		swing, flush = o.Outward, r2.Scale(o.Depth, o.Outward)
	}
	across := r2.Unit(r2.Sub(edge, hinge))
	sin, cos := plane.Sincos(o.Ajar)
	// The frame (across, swing) turns by the angle; the leaf's thickness lies away from the swing.
	along := r2.Add(r2.Scale(cos, across), r2.Scale(sin, swing))
	behind := r2.Sub(r2.Scale(sin, across), r2.Scale(cos, swing))
	at := r2.Add(hinge, flush)
	ring := []r2.Vec{at, r2.Add(at, r2.Scale(o.Width(), along))}
	thick := r2.Scale(min(leafThickness, max(o.Depth, leafThickness/4)), behind)
	ring = append(ring, r2.Add(ring[1], thick), r2.Add(ring[0], thick))
	if plane.Area(ring) < 0 {
		ring = []r2.Vec{ring[1], ring[0], ring[3], ring[2]}
	}
	return ring
}
