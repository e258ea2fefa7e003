package resolve

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// target is what an aim comes to: a point, or a bare direction.
type target struct {
	point r3.Vec
	dir   r3.Vec // unit; zero where there is a point
	pan   float64
	level bool // the point has no height: it is looked at level
}

// from is the axis from a place to the target; ok is false where they are one.
func (t target) from(at r3.Vec) (axis r3.Vec, ok bool) {
	if t.dir != (r3.Vec{}) {
		return t.dir, true
	}
	d := r3.Sub(t.point, at)
	if t.level {
		d.Z = 0
	}
	if r3.Norm(d) <= plane.Grain {
		return r3.Vec{}, false
	}
	return r3.Unit(d), true
}

// aimed reads an aim in any of its forms.
func (r *aimer) aimed(a *scene.Aim) (target, bool) {
	switch a.Form {
	case scene.AtXYZ:
		return target{point: r3.Vec{X: a.Point[0], Y: a.Point[1], Z: a.Point[2]}}, true
	case scene.AtBearing:
		return target{dir: plan.Pointing(a.Pan, 0), pan: a.Pan}, true
	case scene.AimPanTilt:
		return target{dir: plan.Pointing(a.Pan, a.Tilt), pan: a.Pan}, true
	case scene.AimUp:
		return target{dir: r3.Vec{Z: 1}}, true
	case scene.AimDown:
		return target{dir: r3.Vec{Z: -1}}, true
	case scene.AtPlace:
		return r.aimedPlace(a)
	case scene.AtCeiling:
		return r.aimedCeiling(a)
	case scene.AtXY:
		return target{point: r3.Vec{X: a.Point[0], Y: a.Point[1]}, level: true}, true
	case scene.AimCeiling, scene.AimFloor:
		if r.refused(a) {
			return target{}, false
		}
	}
	p, ok := r.pointOf(a.Thing)
	return target{point: p}, ok
}

// aimedPlace is a place with a height. Beside a person or over a thing the height may be left out:
// it is that of the face, or of the thing's middle.
func (r *aimer) aimedPlace(a *scene.Aim) (target, bool) {
	if a.MeansOpening() {
		return r.aimedOpening(a)
	}
	s, ok := r.place(&a.Place, func(r2.Vec) float64 { return 0 })
	if !ok {
		return target{}, false
	}
	if a.Place.Height.Set {
		return target{point: plan.AtHeight(s.At, s.Floor+a.Place.Height.Value)}, true
	}
	if a.Place.Form == scene.FromThing {
		p, ok := r.pointOf(a.Place.Thing)
		return target{point: plan.AtHeight(s.At, p.Z)}, ok
	}
	r.Errorf(a.Span, CodeNeedsHeight, "add height: 1.5", "a place to aim at needs a height")
	return target{}, false
}

// aimedOpening is the middle of an opening on its inside face, so far to its right as the scene says, and at the height that it says.
func (r *aimer) aimedOpening(a *scene.Aim) (target, bool) {
	at, ok := r.inOpening(&a.Place)
	if !ok {
		return target{}, false
	}
	o := r.out.OpeningNamed(a.Place.Thing.Name)
	z := (o.Sill + o.Head) / 2
	if a.Place.Height.Set {
		z = r.out.RoomNamed(o.Room).Base + a.Place.Height.Value
	}
	return target{point: plan.AtHeight(at, z)}, true
}

// bounces says whether an aim is the word ceiling or floor, and no thing of that name.
func (r *register) bounces(a *scene.Aim) bool {
	_, named := r.things[a.Thing.Name]
	return (a.Form == scene.AimCeiling || a.Form == scene.AimFloor) && !named
}

// refused refuses the words ceiling and floor of what is no light.
func (r *register) refused(a *scene.Aim) bool {
	if !r.bounces(a) {
		return false
	}
	r.Errorf(a.Span, CodeNoAim, "write "+report.Either(a.Form == scene.AimCeiling, "up", "down")+", or a room's: ROOM."+a.Thing.Name,
		"only a light aims at the %s between it and somebody", a.Thing.Name)
	return true
}

// aimedCeiling is the point of a ceiling over a place.
func (r *aimer) aimedCeiling(a *scene.Aim) (target, bool) {
	s, ok := r.place(&a.Place, func(r2.Vec) float64 { return 0 })
	ref := scene.Ref{Name: strings.TrimSuffix(a.Thing.Name, ceilingPart.of("")), Span: a.Thing.Span}
	if _, known := r.named(ref, roomKind); !known || !ok {
		return target{}, false
	}
	room := r.out.RoomNamed(ref.Name)
	if room == nil {
		return target{}, false
	}
	return target{point: plan.AtHeight(s.At, room.CeilingAt(s.At))}, true
}

// pointOf is the point that a name means when it is aimed at: the face of a person, the lens of a
// camera, the emitting face of a light, the middle of anything else.
func (r *aimer) pointOf(ref scene.Ref) (r3.Vec, bool) {
	if p, isPart, ok := r.partPoint(ref); isPart {
		return p, ok
	}
	if _, _, ok := r.markOf(ref); ok {
		f, ok := r.markFace(ref.Name)
		return f.At, ok
	}
	if r.things[ref.Name].kind == roomKind {
		r.whichPart(ref)
		return r3.Vec{}, false
	}
	t, ok := r.named(ref, anything...)
	if !ok {
		return r3.Vec{}, false
	}
	s, ok := r.spotOf(ref.Name)
	if !ok {
		return r3.Vec{}, false
	}
	return r.middleOf(ref.Name, t, s)
}

// whichPart asks for the part of a room that is meant; a room that is not there has an error of its own.
func (r *aimer) whichPart(ref scene.Ref) {
	if room := r.out.RoomNamed(ref.Name); room != nil {
		r.Errorf(ref.Span, scene.CodeWrongThing, "write "+floorPart.of(ref.Name)+", "+ceilingPart.of(ref.Name)+" or a wall, such as "+ref.Name+"."+room.Walls[0].Name,
			"%s is a room: which part of it?", ref.Name)
	}
}

// middleOf is the point that a thing at a spot is aimed at by.
func (r *aimer) middleOf(name string, t thing, s plan.Spot) (r3.Vec, bool) {
	switch t.kind {
	case personKind:
		f, ok := r.faceOf(name)
		return f.At, ok
	case cameraKind:
		z, ok := r.lensHeight(&r.s.Cameras[t.index], s)
		return plan.AtHeight(s.At, z), ok
	case lightKind:
		return plan.AtHeight(s.At, r.lampHeight(&r.s.Lights[t.index], s)), true
	case gripKind:
		z, ok := r.gripHeight(&r.s.Grip[t.index], s)
		return plan.AtHeight(s.At, z), ok
	case furnitureKind:
		f, ok := r.shape(name)
		if !ok {
			return r3.Vec{}, false
		}
		return plan.AtHeight(s.At, (f.Z0+f.Z1)/2), true
	case openingKind:
		o := r.out.OpeningNamed(name)
		return plan.AtHeight(s.At, (o.Sill+o.Head)/2), true
	}
	return r.meterPoint(&r.s.Meters[t.index])
}
