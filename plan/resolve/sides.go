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

// turn is the turn of a place, degrees clockwise as seen from above. What left means depends on
// whose left it is:
//
//	the one that stands at `by` and looks along: left is counter-clockwise
//	the one that stands at `toward` and looks back: left is clockwise
//
// so camera-left goes one way where the camera is walked from and the other way where it is looked
// at, and so does own-left of a person. Where both ends could be meant, `by` is.
func (r *placer) turn(p *scene.Place) (float64, bool) {
	t := p.Turn
	leftward := -t.Degrees // as seen by the one at by
	switch t.Side {
	case scene.Clockwise:
		return t.Degrees, true
	case scene.CameraLeft, scene.CameraRight:
		back, ok := r.end(p, cameraKind, "camera-left and camera-right need a camera at one end of this place")
		return mirrored(leftward, back, t.Side == scene.CameraRight), ok
	case scene.OwnLeft, scene.OwnRight:
		back, ok := r.end(p, personKind, "own-left and own-right need a person at one end of this place")
		return mirrored(leftward, back, t.Side == scene.OwnRight), ok
	}
	if r.isKind(p.Thing, cameraKind) || p.Form == scene.ByToward && r.isKind(p.Toward, cameraKind) {
		r.Errorf(t.Span, scene.CodeWrongSide, "write camera-left or camera-right, or own-left or own-right of a person",
			"left and right are unclear, because a camera stands at one end of this place")
		return 0, false
	}
	return mirrored(leftward, false, t.Side == scene.Right), true
}

// mirrored turns a leftward turn over, once for each reason to.
func mirrored(leftward float64, reasons ...bool) float64 {
	for _, yes := range reasons {
		if yes {
			leftward = -leftward
		}
	}
	return leftward
}

// end finds which end of a place a thing of a kind stands at: back is true for `toward`, from
// where one looks back.
func (r *placer) end(p *scene.Place, k thingKind, fault string) (back, ok bool) {
	switch {
	case r.isKind(p.Thing, k):
		return false, true
	case p.Form == scene.ByToward && r.isKind(p.Toward, k):
		return true, true
	}
	hint := "write own-left or own-right, or start at the camera or go toward it"
	if k == personKind {
		hint = "write camera-left, or left if no camera is meant"
	}
	r.Errorf(p.Turn.Span, scene.CodeWrongSide, hint, "%s", fault)
	return false, false
}
