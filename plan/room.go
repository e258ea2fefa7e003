package plan

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// Room is one room. Inside runs counter-clockwise; Walls[i] stands between Inside[i] and the
// corner after it.
type Room struct {
	Name   string
	Inside []r2.Vec   // corners of the inside faces, m
	Parts  [][]r2.Vec // Inside, cut into convex rings, m
	Walls  []Wall
	Base   float64 // z of the floor, m
	Top    float64 // z of the ceiling at its highest, m
	Span   source.Span

	CeilingLow  float64 // z of the ceiling at the origin of the plan, m
	CeilingRise r2.Vec  // how the ceiling rises, m per m along each axis
}

// Wall is one wall by its inside face, left to right as seen from inside.
type Wall struct {
	Name        string  // "left", "a-b", "w1"
	Left, Right r2.Vec  // its ends in plan, m
	Outward     r2.Vec  // unit vector
	Thickness   float64 // m
}

// WallPiece is a convex piece of wall as the plan's cut shows it, from Z0 up to Z1, in metres. Opening is "" for solid wall,
// else the opening below or above which it lies.
type WallPiece struct {
	Outline []r2.Vec
	Z0, Z1  float64
	Room    string
	Wall    string
	Opening string
}

// CeilingAt is the z of the ceiling over a point of the room's plan.
func (room *Room) CeilingAt(p r2.Vec) float64 {
	if room.CeilingRise == (r2.Vec{}) {
		return room.Top
	}
	return room.CeilingLow + r2.Dot(room.CeilingRise, p)
}

// Holds reports whether a point of the plan lies in the room or on its inside face.
func (room *Room) Holds(p r2.Vec) bool {
	return slices.ContainsFunc(room.Parts, func(part []r2.Vec) bool { return plane.Contains(p, part, -plane.Grain) })
}

// Middle is a point of the floor near the room's middle: the centre of its largest convex part.
func (room *Room) Middle() r2.Vec {
	var best []r2.Vec
	for _, part := range room.Parts {
		if best == nil || plane.Area(part) > plane.Area(best)+plane.Grain {
			best = part
		}
	}
	return plane.Centroid(best)
}

// RoomsTouch says whether two rooms touch, so that no wall stands between them.
func RoomsTouch(a, b *Room) bool {
	_, long := LongestSharedFace(a, b)
	return long > plane.Grain && plane.Overlap(a.Base, a.Top, b.Base, b.Top)
}

// LongestSharedFace finds the longest stretch where inside faces of two rooms lie in one plane, back to back.
func LongestSharedFace(a, b *Room) (at r2.Vec, long float64) {
	for i := range a.Walls {
		for k := range b.Walls {
			f, ok := BackToBack(&a.Walls[i], &b.Walls[k])
			if ok && f.Gap <= plane.Grain && f.To-f.From > long {
				long = f.To - f.From
				at = a.Walls[i].On((f.From + f.To) / 2)
			}
		}
	}
	return at, long
}

// Length is the clear length of a wall's inside face, m.
func (w *Wall) Length() float64 { return r2.Norm(r2.Sub(w.Right, w.Left)) }

// Rightward is the unit vector along the wall, from left to right as seen from inside.
func (w *Wall) Rightward() r2.Vec { return r2.Unit(r2.Sub(w.Right, w.Left)) }

// On is the point of the inside face at a distance from the wall's left end.
func (w *Wall) On(along float64) r2.Vec { return r2.Add(w.Left, r2.Scale(along, w.Rightward())) }

// Slab is the rectangle of a wall from one distance along it to another, between two distances
// outward from its inside face.
func (w *Wall) Slab(from, to, near, far float64) []r2.Vec {
	return plane.Slab(w.On(from), w.On(to), w.Outward, near, far)
}

// maxParallelAngle is the angle between two walls that are taken for parallel, radians: 5 mm in 5 m.
const maxParallelAngle = 1e-3

// Stretch is how two walls stand back to back: the gap between their inside faces, and from where to
// where along the first wall, from its left end, in metres.
type Stretch struct{ Gap, From, To float64 }

// BackToBack reports whether two walls stand back to back across some stretch.
func BackToBack(a, b *Wall) (Stretch, bool) {
	if math.Abs(r2.Cross(a.Outward, b.Outward)) > maxParallelAngle || r2.Dot(a.Outward, b.Outward) > 0 {
		return Stretch{}, false
	}
	d := a.Rightward()
	p, q := r2.Dot(r2.Sub(b.Left, a.Left), d), r2.Dot(r2.Sub(b.Right, a.Left), d)
	f := Stretch{
		Gap:  r2.Dot(r2.Sub(r2.Scale(0.5, r2.Add(b.Left, b.Right)), a.Left), a.Outward),
		From: max(0, min(p, q)), To: min(a.Length(), max(p, q)),
	}
	return f, f.Gap > -plane.Grain && f.To-f.From > plane.Grain
}
