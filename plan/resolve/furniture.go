package resolve

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
)

// Sizes of furniture that a scene does not give, m.
const (
	cylinderSides = 16 // of the regular polygon, equal in area, that stands for a circle
	tableTop      = 0.04
	tableLeg      = 0.06
	sofaBack      = 0.18
	sofaArm       = 0.15
	sofaArmAbove  = 0.18 // the seat
	stairRise     = 0.18
	mostSteps     = 200
)

// footprint is the outline of a thing in plan about the origin.
func footprint(f *scene.Furniture) []r2.Vec {
	a := plane.AxesAt(f.Turn.V)
	if f.Kind == "cylinder" {
		return round(a, r2.Vec{}, f.Size[0])
	}
	return a.Rectangle(r2.Vec{}, -f.Size[0]/2, f.Size[0]/2, -f.Size[1]/2, f.Size[1]/2)
}

// round is a regular polygon with the area of a circle.
func round(a plane.Axes, centre r2.Vec, diameter float64) []r2.Vec {
	const step = 2 * math.Pi / cylinderSides
	radius := diameter / 2 * math.Sqrt(step/math.Sin(step))
	ring := make([]r2.Vec, cylinderSides)
	for i := range ring {
		sin, cos := plane.Sincos((float64(i) + 0.5) * 360 / cylinderSides)
		ring[i] = a.At(centre, radius*cos, radius*sin)
	}
	return ring
}

// mostParts bounds the parts of all furniture.
const mostParts = 5000

// furnish stands every piece of furniture into the set.
func (r *furniturePass) furnish() {
	parts := 0
	for i := range r.s.Furniture {
		written := &r.s.Furniture[i]
		leave := r.About(written.Path)
		if f, ok := r.shape(written.Name); ok {
			if parts += len(f.Parts); parts > mostParts {
				r.Errorf(written.Span, scene.CodeTooMany, "draw a part of it", "this is more than a scene may hold: %d parts of furniture", mostParts)
				leave()
				return
			}
			r.formNotComputed("piece of furniture", f.Kind, "furniture."+f.Name, written.Span)
			f.IDs = r.solids(f.Name, f.Parts, r.woodOf(written))
			r.out.Furniture = append(r.out.Furniture, *f)
		}
		leave()
	}
}

// woodOf is the skin of a piece of furniture.
func (r *furniturePass) woodOf(f *scene.Furniture) solid.Skin {
	if skin, ok := r.material(f.Material); ok {
		return skin
	}
	m := r.kit.Material(defaultMaterial)
	if f.Material.Set || m == nil {
		return paint(grey(wallsReflect))
	}
	r.assumeOnce("", "furniture", defaultMaterial)
	return kitSkin(m)
}

// solids puts the parts of a thing into the set, one prism for each.
func (r *draft) solids(name string, parts []plan.Part, skin solid.Skin) []solid.ID {
	ids := make([]solid.ID, len(parts))
	for i, p := range parts {
		ids[i] = r.prism(name, p.Outline, p.Z0, p.Z1, skin)
	}
	return ids
}

// shape is a piece of furniture in metres, without its identities.
func (r *placer) shape(name string) (*plan.Furniture, bool) {
	if known, done := r.shapes[name]; done {
		return known.v, known.ok
	}
	written := &r.s.Furniture[r.things[name].index]
	s, ok := r.spotOf(name)
	var f *plan.Furniture
	if ok {
		f = built(written, s)
		ok = len(f.Parts) > 0 // else its form or its size has an error of its own
	}
	r.shapes[name] = answer[*plan.Furniture]{f, ok}
	return f, ok
}

// built is a piece of furniture at a spot.
func built(written *scene.Furniture, s plan.Spot) *plan.Furniture {
	f := &plan.Furniture{
		Name: written.Name, Kind: written.Kind, At: s.At, Turn: written.Turn.V, Size: written.Size,
		Base: s.Base, Z0: s.Base + written.Lift.V, Span: written.Span,
	}
	f.Z1 = f.Z0 + f.Size[2]
	a, b := plane.AxesAt(f.Turn), builder{f}
	switch f.Kind {
	case "cylinder":
		b.add("body", round(a, f.At, f.Size[0]), f.Z0, f.Z1)
	case "table":
		b.table(a)
	case "sofa":
		b.sofa(a, written.Seat.Or(f.Size[2]/2))
	case "stairs":
		b.stairs(a, written.Steps.Or(int(math.Round(f.Size[2]/stairRise))))
	default:
		b.add("body", a.Rectangle(f.At, -f.Size[0]/2, f.Size[0]/2, -f.Size[1]/2, f.Size[1]/2), f.Z0, f.Z1)
	}
	return f
}

// builder puts the parts of a piece of furniture together.
type builder struct{ *plan.Furniture }

func (f builder) add(kind string, outline []r2.Vec, z0, z1 float64) {
	if !plane.Thin(outline) && z1-z0 > plane.Grain {
		f.Parts = append(f.Parts, plan.Part{Kind: kind, Outline: outline, Z0: z0, Z1: z1})
	}
}

// table is a top on four legs at its corners.
func (f builder) table(a plane.Axes) {
	w, d := f.Size[0]/2, f.Size[1]/2
	under := f.Z1 - min(tableTop, f.Size[2]/2)
	f.add("top", a.Rectangle(f.At, -w, w, -d, d), under, f.Z1)
	x, y := min(tableLeg, w), min(tableLeg, d)
	f.add("leg", a.Rectangle(f.At, -w, x-w, -d, y-d), f.Z0, under)
	f.add("leg", a.Rectangle(f.At, w-x, w, -d, y-d), f.Z0, under)
	f.add("leg", a.Rectangle(f.At, w-x, w, d-y, d), f.Z0, under)
	f.add("leg", a.Rectangle(f.At, -w, x-w, d-y, d), f.Z0, under)
}

// sofa is a seat with a back behind it and arms at its sides.
func (f builder) sofa(a plane.Axes, seat float64) {
	w, d := f.Size[0]/2, f.Size[1]/2
	back, arm := min(sofaBack, d), min(sofaArm, w/2)
	z := f.Z0 + min(seat, f.Size[2])
	f.add("seat", a.Rectangle(f.At, arm-w, w-arm, -d, d-back), f.Z0, z)
	f.add("back", a.Rectangle(f.At, -w, w, d-back, d), f.Z0, f.Z1)
	top := min(z+sofaArmAbove, f.Z1)
	f.add("arm", a.Rectangle(f.At, -w, arm-w, -d, d-back), f.Z0, top)
	f.add("arm", a.Rectangle(f.At, w-arm, w, -d, d-back), f.Z0, top)
}

// stairs rise to the back, the last step at their full height.
func (f builder) stairs(a plane.Axes, steps int) {
	steps = min(max(steps, 1), mostSteps)
	w, d := f.Size[0]/2, f.Size[1]/2
	for i := range steps {
		near, far := float64(i)/float64(steps), float64(i+1)/float64(steps)
		f.add("step", a.Rectangle(f.At, -w, w, (2*near-1)*d, (2*far-1)*d), f.Z0, f.Z0+far*f.Size[2])
	}
}
