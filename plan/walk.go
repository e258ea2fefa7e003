package plan

import (
	"sort"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// WalkStep is how far apart the places are that are read along a walk, m; MostWalkPoints is how many they may be.
const (
	WalkStep       = 0.5
	MostWalkPoints = 200
)

// LeastLastStep is the least distance from the place before it to the end of a walk, m: what is nearer is the end.
const LeastLastStep = 0.01

// LongestWalk is the longest walk that is read, m.
const LongestWalk = (MostWalkPoints - 1) * WalkStep

// Walk is the way of somebody's face, who stands upright on what is under it. Distances along it are those of a tape on the
// plan, m: on stairs they do not count the rise.
type Walk struct {
	Corners []r2.Vec // its places, m; no two in a row are one
	Treads  []Tread  // what the feet are on, from the first place on
	Eyes    float64  // over the feet, m
	Crown   float64  // likewise, m
	Points  []WalkPoint
	Through []Through // what stands in the way of a body
	Span    source.Span
}

// Tread is a stretch of a walk on one level.
type Tread struct {
	From float64 // m along the walk; it ends where the next begins
	Base float64 // z, m
}

// Through is a stretch of a walk that leads through a thing.
type Through struct {
	Name     string  // of the solid
	From, To float64 // m along the walk
}

// WalkPoint is a place of a walk that is read: the face there looks along the walk.
type WalkPoint struct {
	Along float64 // m from the start
	Base  float64 // z of what the feet are on, m
	Face  Frame
	In    string // the solid that a body would be in there; "" it is free
}

// Length is how long a walk is, m.
func (w *Walk) Length() float64 { return plane.PathLength(w.Corners) }

// BaseAt is the z of what the feet are on so far along; on an edge, of what comes after it.
func (w *Walk) BaseAt(along float64) float64 {
	after := sort.Search(len(w.Treads), func(i int) bool { return w.Treads[i].From > along+plane.Grain })
	return w.Treads[max(after-1, 0)].Base
}

// FindPoints finds the places that are read: every WalkStep from the start, and the end.
func (w *Walk) FindPoints() {
	length := w.Length()
	w.Points = nil
	for i := 0; i == 0 || float64(i)*WalkStep < length-LeastLastStep; i++ {
		w.Points = append(w.Points, w.point(float64(i)*WalkStep))
	}
	w.Points = append(w.Points, w.point(length))
}

func (w *Walk) point(along float64) WalkPoint {
	place, way := plane.OnPath(w.Corners, along)
	base := w.BaseAt(along)
	bearing := plane.Bearing(way)
	return WalkPoint{Along: along, Base: base, Face: FrameAlong(AtHeight(place, base+w.Eyes), AtHeight(way, 0), bearing, 0)}
}
