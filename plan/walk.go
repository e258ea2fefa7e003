package plan

import (
	"math"
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

// What a body takes (common practice, m): so wide across the shoulders and, as it walks, from what it steps over up.
const (
	BodyWidth = 0.46
	StepOver  = 0.3
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
	Beside  []Beside  // what a body comes into beside the line
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

// Beside is what a body that walks comes into beside the line of its face, on one side of it.
type Beside struct {
	Name     string  // of the solid
	Left     bool    // of who walks
	Near     float64 // how far from the line it begins, m
	From, To float64 // m along the walk
	Other    string  // what stands on the other side, so near that no body passes; "" one passes
	Apart    float64 // how far the two are apart, m
}

// WalkLeg is a straight part of a walk on one level.
type WalkLeg struct {
	A, B     r2.Vec  // its ends, m
	From, To float64 // m along the walk
	Base     float64 // z of what the feet are on, m
}

// Legs are the straight parts of a walk in their order.
func (w *Walk) Legs() (all []WalkLeg) {
	from := 0.0
	for i := 1; i < len(w.Corners); i++ {
		a, b := w.Corners[i-1], w.Corners[i]
		long, way := r2.Norm(r2.Sub(b, a)), r2.Unit(r2.Sub(b, a))
		for k, t := range w.Treads {
			near, far := max(0, t.From-from), long
			if k+1 < len(w.Treads) {
				far = min(long, w.Treads[k+1].From-from)
			}
			if far-near > plane.Grain {
				all = append(all, WalkLeg{r2.Add(a, r2.Scale(near, way)), r2.Add(a, r2.Scale(far, way)), from + near, from + far, t.Base})
			}
		}
		from += long
	}
	return all
}

// Turn is where a walk turns.
type Turn struct {
	At    r2.Vec   // m
	Along float64  // m along the walk
	Left  bool     // the shoulder that swings round outside is the left one
	Ring  []r2.Vec // what it swings over, m: convex and counter-clockwise
}

// turnStep is the widest straight side of what a shoulder swings over, degrees: over half a body it leaves 2 mm of the arc out.
const turnStep = 15.0

// Turns are the corners of a walk, and what the outer shoulder swings over there beside what the stretches before and after it take.
func (w *Walk) Turns() (all []Turn) {
	along := 0.0
	for i := 1; i+1 < len(w.Corners); i++ {
		in, out := r2.Sub(w.Corners[i], w.Corners[i-1]), r2.Sub(w.Corners[i+1], w.Corners[i])
		along += r2.Norm(in)
		by := math.Remainder(plane.Bearing(out)-plane.Bearing(in), 360) // clockwise
		if math.Abs(by) < 1e-6 {
			continue
		}
		t := Turn{At: w.Corners[i], Along: along, Left: by > 0, Ring: []r2.Vec{w.Corners[i]}}
		outer := plane.Clockwise(r2.Unit(in), math.Copysign(90, -by))
		steps := math.Ceil(math.Abs(by) / turnStep)
		for k := range int(steps) + 1 {
			t.Ring = append(t.Ring, r2.Add(t.At, r2.Scale(BodyWidth/2, plane.Clockwise(outer, by*float64(k)/steps))))
		}
		t.Ring = plane.CounterClockwise(t.Ring)
		all = append(all, t)
	}
	return all
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
