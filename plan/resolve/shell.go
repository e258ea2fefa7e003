package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// shell builds the rooms around their air: floors, ceilings, walls, and what closes the openings.
func (r *wallPass) shell() {
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		floor, ceiling := r.surface(room, floorPart), r.surface(room, ceilingPart)
		for _, part := range room.Parts {
			r.sheet(floorPart.of(room.Name), liftRing(part, func(r2.Vec) float64 { return room.Base }), floor, solid.Skin{})
			r.sheet(ceilingPart.of(room.Name), facingDown(liftRing(part, room.CeilingAt)), ceiling, solid.Skin{})
		}
	}
	r.raise()
	for i := range r.out.Openings {
		o := &r.out.Openings[i]
		r.threshold(o)
		r.closeOpening(o)
		r.dress(o)
	}
}

// liftRing lifts a ring of the plan to a height.
func liftRing(ring []r2.Vec, z func(r2.Vec) float64) []r3.Vec {
	corners := make([]r3.Vec, len(ring))
	for i, p := range ring {
		corners[i] = r3.Vec{X: p.X, Y: p.Y, Z: z(p)}
	}
	return corners
}

// facingDown turns a sheet over: its front looks down into the room.
func facingDown(corners []r3.Vec) []r3.Vec {
	for i, k := 0, len(corners)-1; i < k; i, k = i+1, k-1 {
		corners[i], corners[k] = corners[k], corners[i]
	}
	return corners
}

// treadThickness is how thick, m, a floor is that lies on the foot of a wall: in one plane with its top, both would take
// the same light and return it.
const treadThickness = 1e-3

// threshold carries the floor through an opening that reaches down to it.
func (r *wallPass) threshold(o *plan.Opening) {
	room := r.out.RoomNamed(o.Room)
	if o.Sill-room.Base > plane.Grain || o.Depth <= plane.Grain {
		return
	}
	z := o.Sill
	if far := r.out.RoomNamed(o.FarRoom); far != nil && o.Sill-far.Base > plane.Grain {
		z += treadThickness
	}
	flat := liftRing(o.Plan(), func(r2.Vec) float64 { return z })
	r.sheet(floorPart.of(o.Room), flat, r.surface(room, floorPart), solid.Skin{})
}
