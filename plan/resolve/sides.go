package resolve

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// partPoint is the point that a part of a thing means: the top of furniture, the middle of a wall
// or a floor. isPart is false where the name is no such part.
func (r *placer) partPoint(ref scene.Ref) (p r3.Vec, isPart, ok bool) {
	name, part, dotted := strings.Cut(ref.Name, ".")
	t, known := r.things[name]
	if !dotted || !known {
		return r3.Vec{}, false, false
	}
	switch {
	case t.kind == furnitureKind && part == "top":
		s, ok := r.spotOf(name)
		f, built := r.shape(name)
		if !ok || !built {
			return r3.Vec{}, true, false
		}
		return plan.AtHeight(s.At, f.Z1), true, true
	case t.kind == roomKind:
		p, ok := r.partOfRoom(ref, name, part)
		return p, true, ok
	}
	return r3.Vec{}, false, false
}

func (r *placer) partOfRoom(ref scene.Ref, name, part string) (r3.Vec, bool) {
	room := r.out.RoomNamed(name)
	if room == nil {
		return r3.Vec{}, false
	}
	switch roomPart(part) {
	case floorPart:
		return plan.AtHeight(room.Middle(), room.Base), true
	case ceilingPart:
		return plan.AtHeight(room.Middle(), room.CeilingAt(room.Middle())), true
	}
	_, wall, ok := r.wall(ref)
	if !ok {
		return r3.Vec{}, false
	}
	middle := wall.On(wall.Length() / 2)
	return plan.AtHeight(middle, (room.Base+room.CeilingAt(middle))/2), true
}
