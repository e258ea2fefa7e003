package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// surfaceLamp is a lamp as the surfaces of the set see it.
type surfaceLamp struct {
	w             *World
	l             *lamp
	points        []r3.Vec      // of the opening, in an order of which every part is spread over all of it
	coarse        []node        // the rule that the light of the whole opening is summed by
	distant       []node        // and that from farther off than three times its size
	close         []node        // the points that stand for a tube where the edge of a shadow is looked at closely
	grainPerMetre float64       // metres of light that changes little, per metre from the lamp
	widest        float64       // the angle from the axis, radians, beyond which nothing is followed
	ends          []solid.Plane // over which the opening sends no light
	patches       []patchLight  // by worker
}

// patchLight is how a lamp lights the patch that a worker looks at.
type patchLight struct {
	tracer
	normal    r3.Vec
	occluders []int32 // what may stand between
	filtered  bool    // whether any of that is clear
	from      r3.Vec  // the point that all of the lamp is at
	sums      surfaceSum
	places    placeLights
}

// The share of the distance that a surface is looked at in, and the share of the peak intensity
// that is still followed.
const (
	wideGrain = 0.3
	faintest  = 1e-6
)

// detailGrains is how many grains the finest detail of a light has.
const detailGrains = 4

func (w *World) newSurfaceLamp(l *lamp) *surfaceLamp {
	b := &surfaceLamp{w: w, l: l, patches: make([]patchLight, parallel.Workers(w.workers, math.MaxInt))}
	for i := range b.patches {
		b.patches[i].BVH, b.patches[i].quick = l.past(w.bvh), true
		b.patches[i].places = b.placeLights(&b.patches[i])
	}
	b.points = shuffled(l.points)
	if b.points == nil {
		b.points = []r3.Vec{l.at}
	}
	b.coarse = l.rule(l.opening.Largest(), coarsely())
	b.distant = l.shortestRule()
	if l.opening.Form == photometry.Tube {
		b.close = l.productRule(tubePoints, 1)
	}
	peak := photometry.Peak(l.shape)
	if l.before == nil {
		b.ends = unlitBeyond(l)
	}
	b.widest = l.widestAngle(faintest * l.flux * peak)
	half := min(l.cutoffAngle(l.right, 0.5*l.flux*peak), l.cutoffAngle(l.up, 0.5*l.flux*peak))
	b.grainPerMetre = min(wideGrain, math.Tan(min(half, 45)*radian)/2, photometry.Detail(l.shape)/detailGrains)
	return b
}

// shuffled orders the points of a lattice so that any run of them is spread over the opening: in steps
// near the golden section of their number that meet each one once.
func shuffled(points []r3.Vec) []r3.Vec {
	n := len(points)
	if n == 0 {
		return nil
	}
	step := max(1, int(golden*float64(n)))
	for greatestCommonDivisor(step, n) != 1 {
		step++
	}
	out := make([]r3.Vec, n)
	for i := range out {
		out[i] = points[i*step%n]
	}
	return out
}

func greatestCommonDivisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// SetPatch implements radiosity.Lamp. A shaft between patch and lamp tells what may come between: where nothing does, all
// of the patch sees all of the lamp, and where one solid hides every corner of the one from every corner of the
// other, none sees any.
func (b *surfaceLamp) SetPatch(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Visibility {
	l, a := b.l, &b.patches[worker]
	opening, round := b.opening(corners)
	before, emitting := facing(corners[0], normal), facing(l.at, l.axis)
	if b.isHidden(corners, opening, &before, &emitting) {
		return radiosity.Hidden
	}
	var s solid.Shaft
	if round {
		s = solid.NewBoxShaft(corners, opening)
	} else {
		s = solid.NewShaft(corners, opening)
	}
	s.Bound(before)
	if l.onesided {
		s.Bound(emitting)
	}
	a.normal, a.filtered = normal, false
	a.occluders = a.BVH.Between(&s, nil, a.occluders[:0])
	for _, number := range a.occluders {
		if !a.BVH.Opaque(number, l.at, false) {
			a.filtered = true
		} else if !round && a.Hides(number, corners, opening) {
			return radiosity.Hidden
		}
	}
	if len(a.occluders) == 0 {
		return radiosity.Unoccluded
	}
	return radiosity.PartlyOccluded
}

// SetOpenPatch implements radiosity.OpenLamp.
func (b *surfaceLamp) SetOpenPatch(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Visibility {
	opening, _ := b.opening(corners)
	before, emitting := facing(corners[0], normal), facing(b.l.at, b.l.axis)
	if b.isHidden(corners, opening, &before, &emitting) {
		return radiosity.Hidden
	}
	a := &b.patches[worker]
	a.normal, a.filtered, a.occluders = normal, false, a.occluders[:0]
	return radiosity.Unoccluded
}

// hides says whether one solid, or the back of the lamp, hides all of the opening from a convex figure, whichever way that faces.
func (b *surfaceLamp) hides(worker int, figure []r3.Vec) bool {
	l, a := b.l, &b.patches[worker]
	emitting := facing(l.at, l.axis)
	if l.onesided && outside(&emitting, figure) {
		return true
	}
	opening, round := b.opening(figure)
	if round {
		return false
	}
	s := solid.NewShaft(figure, opening)
	a.occluders = a.BVH.Between(&s, nil, a.occluders[:0])
	return slices.ContainsFunc(a.occluders, func(number int32) bool {
		return a.BVH.Opaque(number, l.at, false) && a.Hides(number, figure, opening)
	})
}

// isHidden says whether no light goes from the opening to a patch, whatever stands between: one lies behind the other, or the
// patch out of the beam.
func (b *surfaceLamp) isHidden(patch, opening []r3.Vec, before, emitting *solid.Plane) bool {
	l := b.l
	if l.flux == 0 || outside(before, opening) || l.onesided && outside(emitting, patch) || b.misses(patch) {
		return true
	}
	return slices.ContainsFunc(b.ends, func(h solid.Plane) bool { return outside(&h, patch) })
}

// opening is a few corners that hold the lamp's opening. A sphere close by is round: no flat figure holds what is
// seen of it from all of the patch.
func (b *surfaceLamp) opening(patch []r3.Vec) (corners []r3.Vec, round bool) {
	l := b.l
	switch l.opening.Form {
	case photometry.Point:
		return []r3.Vec{l.at}, false
	case photometry.Sphere, photometry.Lampshade:
		middle, radius := solid.Centre(patch), l.roundRadius()
		rim, ok := l.rim(middle)
		if size := r3.Norm(r3.Sub(patch[0], middle)); ok && r3.Norm(r3.Sub(middle, l.at))-size > nearSphere*radius {
			rim.centre, rim.radius = l.at, wideRim*radius
			return rim.square(), false
		}
		box := boxAbout(l.at, radius)
		return box[:], true
	}
	return l.bound(l.at), false
}

// boxAbout are the corners of the upright box about a sphere.
func boxAbout(at r3.Vec, radius float64) (corners [8]r3.Vec) {
	for i := range corners {
		side := func(bit int) float64 { return radius * float64(2*(i>>bit&1)-1) }
		corners[i] = r3.Add(at, r3.Vec{X: side(0), Y: side(1), Z: side(2)})
	}
	return corners
}

// From nearSphere radii on, the square about a sphere of wideRim times its radius holds what is seen of it from all
// of a patch: its rim lies within a radius of the middle, and the patch is seen under less than a right angle.
const (
	nearSphere = 4
	wideRim    = 1.3
)

// misses says whether a patch lies wholly beyond the angle from the axis of a point that anything is followed to.
func (b *surfaceLamp) misses(patch []r3.Vec) bool {
	l := b.l
	if l.opening.Form != photometry.Point || b.widest >= math.Pi {
		return false
	}
	way := r3.Sub(solid.Centre(patch), l.at)
	distance, size := r3.Norm(way), 0.0
	for _, p := range patch {
		size = max(size, r3.Norm(r3.Sub(p, r3.Add(l.at, way))))
	}
	if size >= distance {
		return false
	}
	angle := math.Acos(max(-1, min(1, r3.Dot(way, l.axis)/distance)))
	return angle-math.Asin(size/distance) > b.widest
}

// outside says whether all points lie out of a half-space.
func outside(h *solid.Plane, points []r3.Vec) bool {
	for _, p := range points {
		if h.Over(p) < 0 {
			return false
		}
	}
	return true
}
