package resolve

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
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
	maxSteps      = 200
)

// turnOf is how far a thing is turned, degrees clockwise. A mirror of which nothing is said hangs along its wall, with its
// glass to the room.
func (r *placer) turnOf(f *scene.Furniture) float64 {
	if f.Kind != term.Mirror || f.Turn.Set || f.At.Value.Form != scene.AtWall {
		return f.Turn.Value
	}
	w := r.out.WallNamed(f.At.Value.Thing.Name)
	if w == nil {
		return 0 // which has an error of its own
	}
	return math.Mod(plane.Bearing(w.Rightward())+270, 360) // at 0 its width runs to the right of the sheet, toward 90
}

// footprint is the outline of a thing in plan about the origin.
func footprint(f *scene.Furniture, turn float64) []r2.Vec {
	a := plane.AxesAt(turn)
	if f.Kind == term.Cylinder {
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

// built is a piece of furniture at a spot.
func built(written *scene.Furniture, s plan.Spot, turn float64) *plan.Furniture {
	f := &plan.Furniture{
		Name: written.Name, Kind: written.Kind, At: s.At, Turn: turn, Size: written.Size,
		Base: s.Base, Z0: s.Base + written.Lift.Value, Material: written.Material.Value, Span: written.Span,
	}
	f.Z1 = f.Z0 + f.Size[2]
	a, b := plane.AxesAt(f.Turn), builder{f}
	switch f.Kind {
	case term.Cylinder:
		b.add(plan.BodyPart, round(a, f.At, f.Size[0]), f.Z0, f.Z1)
	case term.Table:
		b.table(a)
	case term.Sofa:
		b.sofa(a, written.Seat.Or(f.Size[2]/2))
	case term.Stairs:
		b.stairs(a, written.Steps.Or(int(math.Round(f.Size[2]/stairRise))))
	default:
		b.add(plan.BodyPart, a.Rectangle(f.At, -f.Size[0]/2, f.Size[0]/2, -f.Size[1]/2, f.Size[1]/2), f.Z0, f.Z1)
	}
	return f
}

// builder puts the parts of a piece of furniture together.
type builder struct{ *plan.Furniture }

func (f builder) add(kind plan.PartKind, outline []r2.Vec, z0, z1 float64) {
	if !plane.Thin(outline) && z1-z0 > plane.Grain {
		f.Parts = append(f.Parts, plan.Part{Kind: kind, Outline: outline, Z0: z0, Z1: z1})
	}
}

// table is a top on four legs at its corners.
func (f builder) table(a plane.Axes) {
	w, d := f.Size[0]/2, f.Size[1]/2
	under := f.Z1 - min(tableTop, f.Size[2]/2)
	f.add(plan.TopPart, a.Rectangle(f.At, -w, w, -d, d), under, f.Z1)
	x, y := min(tableLeg, w), min(tableLeg, d)
	f.add(plan.LegPart, a.Rectangle(f.At, -w, x-w, -d, y-d), f.Z0, under)
	f.add(plan.LegPart, a.Rectangle(f.At, w-x, w, -d, y-d), f.Z0, under)
	f.add(plan.LegPart, a.Rectangle(f.At, w-x, w, d-y, d), f.Z0, under)
	f.add(plan.LegPart, a.Rectangle(f.At, -w, x-w, d-y, d), f.Z0, under)
}

// sofa is a seat with a back behind it and arms at its sides.
func (f builder) sofa(a plane.Axes, seat float64) {
	w, d := f.Size[0]/2, f.Size[1]/2
	back, arm := min(sofaBack, d), min(sofaArm, w/2)
	z := f.Z0 + min(seat, f.Size[2])
	f.add(plan.SeatPart, a.Rectangle(f.At, arm-w, w-arm, -d, d-back), f.Z0, z)
	f.add(plan.BackPart, a.Rectangle(f.At, -w, w, d-back, d), f.Z0, f.Z1)
	top := min(z+sofaArmAbove, f.Z1)
	f.add(plan.ArmPart, a.Rectangle(f.At, -w, arm-w, -d, d-back), f.Z0, top)
	f.add(plan.ArmPart, a.Rectangle(f.At, w-arm, w, -d, d-back), f.Z0, top)
}

// stairs rise to the back, the last step at their full height.
func (f builder) stairs(a plane.Axes, steps int) {
	steps = min(max(steps, 1), maxSteps)
	w, d := f.Size[0]/2, f.Size[1]/2
	for i := range steps {
		near, far := float64(i)/float64(steps), float64(i+1)/float64(steps)
		f.add(plan.StepPart, a.Rectangle(f.At, -w, w, (2*near-1)*d, (2*far-1)*d), f.Z0, f.Z0+far*f.Size[2])
	}
}

// topAt is the z of what a thing offers to stand on at a point of the plan, and whether it has
// anything there; else its highest.
func topAt(f *plan.Furniture, p r2.Vec) (z float64, over bool) {
	z = math.Inf(-1)
	for _, part := range f.Parts {
		if plane.Contains(p, part.Outline, -plane.Grain) {
			z, over = max(z, part.Z1), true
		}
	}
	if !over {
		return f.Z1, false
	}
	return z, true
}
