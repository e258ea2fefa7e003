package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// spotOf is where a thing stands; ok is false after a fault, which has then been reported.
func (r *placer) spotOf(name string) (plan.Spot, bool) {
	t := r.things[name]
	return evaluate(r, r.spots, dependency{"place", name}, func() (plan.Spot, bool) {
		if s, frozen := r.keptSpot(name); frozen {
			s.Stays = true
			return s, true
		}
		return r.findSpot(name, t)
	})
}

// halfBody is how far a person reaches from the head's axis, m.
func halfBody(r2.Vec) float64 { return bodyDepth / 2 }

// findSpot reads the place of a thing.
func (r *placer) findSpot(name string, t thing) (plan.Spot, bool) {
	switch t.kind {
	case furnitureKind:
		f := &r.s.Furniture[t.index]
		return r.placed(f.Span, f.At, func(d r2.Vec) float64 { return plane.Support(footprint(f, r.turnOf(f)), d) })
	case personKind:
		p := &r.s.People[t.index]
		return r.placed(p.Span, p.At, halfBody)
	case markKind:
		_, m, _ := r.markOf(scene.Ref{Name: name})
		return r.placed(m.Span, m.At, halfBody)
	case cameraKind:
		c := &r.s.Cameras[t.index]
		return r.placed(c.Span, c.At, nil)
	case lightKind:
		l := &r.s.Lights[t.index]
		return r.placed(l.Span, l.At, nil)
	case gripKind:
		g := &r.s.Grip[t.index]
		return r.placed(g.Span, g.At, nil)
	case openingKind:
		return r.openingSpot(r.s.Openings[t.index].Name)
	case meterKind:
		return r.meterSpot(&r.s.Meters[t.index])
	}
	return plan.Spot{}, false
}

// placed reads the place of a thing at span. extent is how far the thing reaches from its centre
// in a direction; nil is a point.
func (r *placer) placed(span source.Span, p scene.Given[scene.Place], extent func(d r2.Vec) float64) (plan.Spot, bool) {
	if !p.Set {
		r.reportMissing(span, "add at: [1.2, 2.0]", "it has no place")
		return plan.Spot{}, false
	}
	if extent == nil {
		extent = func(r2.Vec) float64 { return 0 }
	}
	return r.place(&p.Value, extent)
}

// place reads a place in any of its forms.
func (r *placer) place(p *scene.Place, extent func(d r2.Vec) float64) (plan.Spot, bool) {
	switch p.Form {
	case scene.AtPoint:
		return r.standing(plane.Vec(p.Point), ""), true
	case scene.FromThing:
		return r.fromThing(p)
	case scene.ByToward, scene.ByNose:
		return r.byThing(p)
	case scene.AtWall:
		return r.atWall(p, extent)
	case scene.AtOpening:
		return r.atOpening(p, extent)
	}
	return r.onTop(p)
}

// standing is a spot on the floor of the room that holds p, or on the ground. Where rooms lie
// over each other, the one called near is meant if it holds p.
func (r *placer) standing(p r2.Vec, near string) plan.Spot {
	s := plan.Spot{At: p, Floor: r.out.Ground}
	if room := r.out.RoomUnder(p, near); room != nil {
		s.Room, s.Floor = room.Name, room.Base
	}
	s.Base = s.Floor
	return s
}

// anything that has a place of its own.
var anything = []thingKind{furnitureKind, personKind, cameraKind, lightKind, gripKind, openingKind, meterKind}

// refSpot is where a named thing, or a person at a mark, stands.
func (r *placer) refSpot(ref scene.Ref) (plan.Spot, bool) {
	if _, _, mark := r.markOf(ref); !mark {
		if _, ok := r.named(ref, anything...); !ok {
			return plan.Spot{}, false
		}
	}
	return r.spotOf(ref.Name)
}

func (r *placer) fromThing(p *scene.Place) (plan.Spot, bool) {
	from, ok := r.refSpot(p.Thing)
	if !ok {
		return plan.Spot{}, false
	}
	return r.standing(r2.Add(from.At, plane.Vec(p.Shift)), from.Room), true
}

// byThing looks from one thing toward another, or along a nose, turns and walks.
func (r *placer) byThing(p *scene.Place) (plan.Spot, bool) {
	by, ok := r.refSpot(p.Thing)
	look, known := r.firstLook(p, by, ok)
	if !ok || !known {
		return plan.Spot{}, false
	}
	turn, ok := r.turn(p, by.At, look)
	if !ok {
		return plan.Spot{}, false
	}
	step := r2.Scale(p.Distance.Value, plane.Clockwise(look, turn))
	return r.standing(r2.Add(by.At, step), by.Room), true
}

// firstLook is the unit vector of the first look of a place: toward what it says; without that toward the camera that its turn is of, or along a
// nose.
func (r *placer) firstLook(p *scene.Place, by plan.Spot, found bool) (r2.Vec, bool) {
	toward := p.Toward
	if p.Form == scene.ByNose {
		if !ofCamera(p.Turn) || r.isKind(p.Thing, cameraKind) {
			return r.facing(p, found)
		}
		camera, ok := r.oneCamera(p)
		if !ok {
			return r2.Vec{}, false
		}
		toward = scene.Ref{Name: camera, Span: p.Turn.Span}
	}
	to, ok := r.refSpot(toward)
	if !ok || !found {
		return r2.Vec{}, false
	}
	d := r2.Sub(to.At, by.At)
	if r2.Norm(d) <= plane.Grain {
		r.Errorf(toward.Span, CodeSamePlace, "move one of them, or look toward another", "%s and %s stand in one place: there is no direction between them", p.Thing.Name, toward.Name)
		return r2.Vec{}, false
	}
	return r2.Unit(d), true
}

// facing is where a person's nose points, or a camera's lens.
func (r *placer) facing(p *scene.Place, found bool) (r2.Vec, bool) {
	if !found {
		return r2.Vec{}, false
	}
	if t := r.things[p.Thing.Name]; t.kind != personKind && t.kind != markKind && t.kind != cameraKind {
		r.Errorf(p.Thing.Span, scene.CodeWrongThing, "add toward: and what to look at",
			"%s is %s: only a person or a camera looks somewhere by itself", p.Thing.Name, t.kind.article())
		return r2.Vec{}, false
	}
	bearing, ok := r.facingOf(p.Thing.Name)
	return plane.Direction(bearing), ok
}

func (r *placer) atWall(p *scene.Place, extent func(d r2.Vec) float64) (plan.Spot, bool) {
	room, wall, ok := r.wall(p.Thing)
	if !ok {
		return plan.Spot{}, false
	}
	along := wall.Length() / 2
	if p.Along.Set && !p.Along.Centre {
		along = p.Along.Metres
	}
	if over := max(along-wall.Length(), -along); over > plane.Grain {
		r.Errorf(p.Along.Span, CodeAlongBeyond, "along may be at most "+r.Length(wall.Length()), "%s is %s beyond the end of %s, which is %s long",
			r.Length(along), r.Length(over), p.Thing.Name, r.Length(wall.Length()))
		return plan.Spot{}, false
	}
	at := wall.On(along)
	if p.Out.Set {
		at = r2.Add(at, r2.Scale(wall.Thickness+p.Out.Value+extent(r2.Scale(-1, wall.Outward)), wall.Outward))
		s := r.standing(at, "")
		s.Floor = room.Base
		return s, true
	}
	at = r2.Sub(at, r2.Scale(p.In.Value+extent(wall.Outward), wall.Outward))
	return plan.Spot{At: at, Room: room.Name, Floor: room.Base, Base: room.Base}, true
}

func (r *placer) atOpening(p *scene.Place, extent func(d r2.Vec) float64) (plan.Spot, bool) {
	if _, ok := r.named(p.Thing, openingKind); !ok {
		return plan.Spot{}, false
	}
	o := r.out.OpeningNamed(p.Thing.Name)
	if o == nil {
		return plan.Spot{}, false // it has an error of its own
	}
	if p.Out.Set == p.In.Set {
		r.reportMissing(p.Span, "add out: 2 for outside, or in: 1 for inside the room", "a place beside an opening needs out or in, and not both")
		return plan.Spot{}, false
	}
	at := r2.Add(o.Middle(), r2.Scale(p.Along.Metres, o.Rightward()))
	if p.In.Set {
		at = r2.Sub(at, r2.Scale(p.In.Value+extent(o.Outward), o.Outward))
	} else {
		at = r2.Add(at, r2.Scale(o.Depth+p.Out.Value+extent(r2.Scale(-1, o.Outward)), o.Outward))
	}
	s := r.standing(at, report.Either(p.In.Set, o.Room, o.FarRoom))
	s.Floor, s.Opening, s.Outside = r.out.RoomNamed(o.Room).Base, o.Name, p.Out.Set
	return s, true
}

// inOpening is a place within an opening, on its inside face: its middle, or so far to the right of it.
func (r *placer) inOpening(p *scene.Place) (r2.Vec, bool) {
	if _, ok := r.named(p.Thing, openingKind); !ok {
		return r2.Vec{}, false
	}
	o := r.out.OpeningNamed(p.Thing.Name)
	if o == nil {
		return r2.Vec{}, false // it has an error of its own
	}
	return r2.Add(o.Middle(), r2.Scale(p.Along.Metres, o.Rightward())), true
}

// openingSpot is the middle of an opening on its inside face.
func (r *placer) openingSpot(name string) (plan.Spot, bool) {
	o := r.out.OpeningNamed(name)
	if o == nil {
		return plan.Spot{}, false
	}
	base := r.out.RoomNamed(o.Room).Base
	return plan.Spot{At: o.Middle(), Room: o.Room, Floor: base, Base: base}, true
}

func (r *placer) onTop(p *scene.Place) (plan.Spot, bool) {
	if _, ok := r.named(p.Thing, furnitureKind); !ok {
		return plan.Spot{}, false
	}
	under, ok := r.spotOf(p.Thing.Name)
	f, built := r.shape(p.Thing.Name)
	if !ok || !built {
		return plan.Spot{}, false
	}
	s := under
	s.Stays = false
	s.At, s.On = r2.Add(under.At, plane.Vec(p.Shift)), p.Thing.Name
	top, over := topAt(f, s.At)
	if !over {
		r.Warnf(p.Span, CodeNotOnTop, "count shift from the centre of it", "%s is not over %s, which the scene puts it on", r.XY(s.At), f.Name)
	}
	s.Base = top
	return s, true
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
		f = built(written, s, r.turnOf(written))
		ok = len(f.Parts) > 0 // else its form or its size has an error of its own
	}
	r.shapes[name] = result[*plan.Furniture]{f, ok}
	return f, ok
}

// meterPoint is the point that a meter stands at, or that a spot meter is pointed at.
func (r *placer) meterPoint(m *scene.Meter) (r3.Vec, bool) {
	if m.Opening.Name != "" {
		if _, ok := r.named(m.Opening, openingKind); !ok {
			return r3.Vec{}, false
		}
		s, ok := r.spotOf(m.Opening.Name)
		if !ok {
			return r3.Vec{}, false
		}
		o := r.out.OpeningNamed(m.Opening.Name)
		return plan.AtHeight(s.At, (o.Sill+o.Head)/2), true
	}
	if !m.At.Set {
		r.reportMissing(m.Span, "write it like {flat: [1.2, 2.0, 1.5]}", "the meter has no place")
		return r3.Vec{}, false
	}
	v := m.At.Value
	return r3.Vec{X: v[0], Y: v[1], Z: v[2]}, true
}

// meterSpot is where a meter stands in plan.
func (r *placer) meterSpot(m *scene.Meter) (plan.Spot, bool) {
	at, ok := r.meterPoint(m)
	return r.standing(plan.InPlan(at), ""), ok
}
