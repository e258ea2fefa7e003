package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// headroom is how high a way out is clear at least, m: Approved Document B of England, volume 2, has 2 m on all escape routes, with nothing but door
// frames below (from memory). Other places have other rules.
const headroom = 2.0

// hangsHalf is half of how thick a sheet counts for who walks by, m: as sheets do that something has to go round.
const hangsHalf = 0.01

// hanging adds what equipment and furniture have of themselves over the floor and under the height that a way is clear to: heads, arms, poles, sheets. What is
// held by hand goes away with whoever holds it.
func (o *obstacles) hanging() {
	for i := range o.setup.Lights {
		l := &o.setup.Lights[i]
		o.of = l.Numbered()
		o.held(&l.Mount, body.HeadOf(l), r2.Vec{})
		o.held(&l.Mount, body.HoldersOf(&l.Mount, l.Frame, l.Base), r2.Vec{})
	}
	for i := range o.setup.Grip {
		g := &o.setup.Grip[i]
		o.of = g.Numbered()
		o.held(&g.Mount, body.SheetsOf(g), r2.Scale(hangsHalf, plan.InPlan(g.Frame.Axis)))
		o.held(&g.Mount, body.HoldersOf(&g.Mount, g.Frame, g.Base), r2.Vec{})
	}
	for i := range o.setup.Furniture {
		f := &o.setup.Furniture[i]
		o.of = f.Name
		if f.Z0 >= f.Base+body.LegClearance && f.Kind != term.Stairs && f.Kind != term.Deck {
			for _, part := range f.Parts {
				o.under(body.Prism(body.Whole, part.Outline, part.Z0, part.Z1), r2.Vec{})
			}
		}
	}
}

// ceilings adds where a ceiling that slopes comes down lower than a way is clear to.
func (o *obstacles) ceilings() {
	for i := range o.setup.Rooms {
		room := &o.setup.Rooms[i]
		steep := r2.Norm(room.CeilingRise)
		if steep <= plane.Grain {
			continue
		}
		up := r2.Scale(1/steep, room.CeilingRise)
		on := r2.Scale((room.Base+headroom-room.CeilingLow)/steep, up) // where it is that high
		low := plane.Line{At: on, Normal: r2.Scale(-1, up)}
		for _, part := range plane.ConvexParts(plane.CounterClockwise(room.Inside)) {
			if ring := plane.Clip(plane.CounterClockwise(part), low); len(ring) > 2 && plane.Width(ring) > plane.Grain {
				o.all = append(o.all, obstacle{outline: ring, low: room.Base, high: room.Base + headroom, hangs: true, ceiling: true})
			}
		}
	}
}

// held adds the pieces of a thing but its legs, so much thicker to either side.
func (o *obstacles) held(m *plan.Mount, pieces []body.Piece, thick r2.Vec) {
	for _, p := range pieces {
		if m.Kind != term.Hand && p.Part != body.Legs {
			o.under(p, thick)
		}
	}
}

// under adds what of a piece a head would meet.
func (o *obstacles) under(p body.Piece, thick r2.Vec) {
	if q, ok := underHead(o.setup, &p, thick); ok {
		q.of = o.of
		o.all = append(o.all, q)
	}
}

// underHead is the outline of what of a piece lies under the height that a way over the floor below it is clear to, so much thicker to either side; not ok of what
// hangs higher, and of what lies on the floor.
func underHead(s *plan.Setup, p *body.Piece, thick r2.Vec) (o obstacle, ok bool) {
	floor := floorBelow(s, p.Middle)
	o.low, o.high = math.Inf(1), math.Inf(-1)
	var ring []r2.Vec
	for _, c := range cutAt(p, floor+headroom) {
		ring = append(ring, r2.Add(plan.InPlan(c), thick), r2.Sub(plan.InPlan(c), thick))
		o.low, o.high = min(o.low, c.Z), max(o.high, c.Z)
	}
	o.high = max(o.high, o.low+2*hangsHalf) // a level sheet
	o.hangs = o.low >= floor+body.LegClearance
	o.outline = plane.Hull(ring)
	return o, len(o.outline) > 2 && o.high > floor+body.LegStep && o.low < floor+headroom-plane.Grain
}

// floorBelow is the highest floor under a place, m; the ground where no room is.
func floorBelow(s *plan.Setup, p r3.Vec) float64 {
	floor := math.Inf(-1)
	for i := range s.Rooms {
		if room := &s.Rooms[i]; room.Base <= p.Z+plane.Grain && room.Holds(plan.InPlan(p)) {
			floor = max(floor, room.Base)
		}
	}
	if math.IsInf(floor, -1) {
		return s.Ground
	}
	return floor
}

// cutAt are the corners of what of a piece lies under a height. Of a ball they are those of its widest ring.
func cutAt(p *body.Piece, z float64) (corners []r3.Vec) {
	if p.Radius > 0 {
		if p.Middle.Z-p.Radius > z {
			return nil
		}
		return body.Circle(p.Middle, r3.Vec{X: 1}, r3.Vec{Y: 1}, p.Radius, body.TurnedSides)
	}
	for _, f := range p.Faces {
		for i, a := range f {
			b := f[(i+1)%len(f)]
			if a.Z <= z {
				corners = append(corners, a)
			}
			if (a.Z < z) != (b.Z < z) && a.Z != b.Z {
				corners = append(corners, r3.Add(a, r3.Scale((z-a.Z)/(b.Z-a.Z), r3.Sub(b, a))))
			}
		}
	}
	return corners
}
