package resolve

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// turn is the turn of a place, degrees clockwise as seen from above. What left means depends on
// whose left it is:
//
//	the one that stands at `by` and looks along: left is counter-clockwise
//	the one that stands at `toward` and looks back: left is clockwise
//
// so camera-left goes one way where the camera is walked from and the other way where it is looked
// at, and so does own-left of a person. Where both ends could be meant, `by` is. Where no camera stands at an end, the one camera
// of the set-up is meant: the place turns to that side of its picture.
func (r *placer) turn(p *scene.Place, by, look r2.Vec) (float64, bool) {
	t := p.Turn
	leftward := -t.Degrees // as seen by the one at by
	switch t.Side {
	case scene.Clockwise:
		return t.Degrees, true
	case scene.CameraLeft, scene.CameraRight:
		if !r.atEnd(p, cameraKind) {
			return r.turnInPicture(p, by, look)
		}
		return mirrored(leftward, !r.isKind(p.Thing, cameraKind), t.Side == scene.CameraRight), true
	case scene.OwnLeft, scene.OwnRight:
		return r.ownTurn(p, leftward)
	}
	if r.isKind(p.Thing, cameraKind) || p.Form == scene.ByToward && r.isKind(p.Toward, cameraKind) {
		r.Errorf(t.Span, scene.CodeWrongSide, "write camera-left or camera-right, or own-left or own-right of a person",
			"left and right are unclear, because a camera stands at one end of this place")
		return 0, false
	}
	return mirrored(leftward, false, t.Side == scene.Right), true
}

// ownTurn is a turn to a person's own side, who stands at one end of the place.
func (r *placer) ownTurn(p *scene.Place, leftward float64) (float64, bool) {
	if !r.atEnd(p, personKind) {
		r.Errorf(p.Turn.Span, scene.CodeWrongSide, "write camera-left, or left if no camera is meant", "own-left and own-right need a person at one end of this place")
		return 0, false
	}
	return mirrored(leftward, !r.isKind(p.Thing, personKind), p.Turn.Side == scene.OwnRight), true
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

// atEnd says whether a thing of a kind stands at an end of a place.
func (r *placer) atEnd(p *scene.Place, k thingKind) bool {
	return r.isKind(p.Thing, k) || p.Form == scene.ByToward && r.isKind(p.Toward, k)
}

// ofCamera says whether a turn goes to a side of a picture.
func ofCamera(t scene.Turn) bool { return t.Side == scene.CameraLeft || t.Side == scene.CameraRight }

// turnInPicture is the turn to a side of the picture of the one camera of the set-up, which stands at no end of the place: of the two ways
// to turn the one that ends farther to that side.
func (r *placer) turnInPicture(p *scene.Place, by, look r2.Vec) (float64, bool) {
	t := p.Turn
	camera, ok := r.oneCamera(p)
	if !ok {
		return 0, false
	}
	from, ok := r.spotOf(camera)
	if !ok {
		return 0, false
	}
	seen := r2.Sub(by, from.At)
	right := r2.Vec{X: seen.Y, Y: -seen.X}
	if t.Side == scene.CameraLeft {
		right = r2.Scale(-1, right)
	}
	gain := r2.Dot(right, r2.Sub(plane.Clockwise(look, t.Degrees), plane.Clockwise(look, -t.Degrees)))
	turns := math.Mod(t.Degrees, 180) != 0
	if turns && math.Abs(gain) <= plane.Grain*r2.Norm(seen) {
		r.Errorf(t.Span, scene.CodeWrongSide, "write toward: "+camera, "both ways to turn end as far to the side in the picture of %s: this place looks straight across it", camera)
		return 0, false
	}
	return math.Copysign(t.Degrees, gain), true
}

// oneCamera is the camera that camera-left is of where none stands at an end of a place: the only one of the set-up.
func (r *placer) oneCamera(p *scene.Place) (string, bool) {
	var all []string
	for i := range r.s.Cameras {
		if name := r.s.Cameras[i].Name; r.shown(name) {
			all = append(all, name)
		}
	}
	switch len(all) {
	case 0:
		r.Errorf(p.Turn.Span, scene.CodeWrongSide, "write own-left or own-right, or start at the camera or go toward it", "camera-left and camera-right need a camera, and there is none")
		return "", false
	case 1:
		return all[0], true
	}
	r.Errorf(p.Turn.Span, scene.CodeWrongSide, "write which is meant: toward: "+strings.Join(all, ", or toward: "), "camera-left and camera-right are of one camera, and here there are %s", strings.Join(all, " and "))
	return "", false
}
