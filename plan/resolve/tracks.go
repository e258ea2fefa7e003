package resolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// trackOf is the track of a camera that stands where it starts; nil where there is none. It is not ok after a fault, which has then been
// reported.
func (r *cameraPass) trackOf(written *scene.Camera, c *plan.Camera, aim target) (t *plan.Track, ok bool) {
	if len(written.TrackPlaces) == 0 {
		return nil, written.Track == nil
	}
	t = &plan.Track{Span: written.Track.Span}
	before := &plan.Track{} // of a camera that stays
	kept := r.keptCamera(c.Name)
	if kept != nil && kept.Track != nil {
		before = kept.Track
	}
	switch stays := kept != nil && !r.writtenHere(written.Node, "looks"); {
	case stays:
		t.Aim = before.Aim
	case aim.dir == (r3.Vec{}):
		t.Aim = &aim.point
	}
	if t.Corners = before.Corners; t.Corners == nil || r.writtenHere(written.Node, "track") {
		if t.Corners, ok = r.trackCorners(written, plan.InPlan(c.Frame.At)); !ok {
			return nil, false
		}
	}
	return t, r.checkTrack(t, c)
}

// trackCorners are the places of a track from where its camera stands, without those that are where the one before is.
func (r *cameraPass) trackCorners(written *scene.Camera, start r2.Vec) (corners []r2.Vec, ok bool) {
	ok = true
	for i := range written.TrackPlaces {
		s, found := r.place(&written.TrackPlaces[i], func(r2.Vec) float64 { return plan.RailGauge / 2 })
		ok = ok && found
		if n := len(corners); found && (n == 0 || !plane.SamePoint(corners[n-1], s.At)) {
			corners = append(corners, s.At)
		}
	}
	if len(corners) > 0 && r2.Norm(r2.Sub(corners[0], start)) <= startSlack {
		corners[0] = start
		for len(corners) > 1 && plane.SamePoint(corners[1], start) {
			corners = slices.Delete(corners, 1, 2)
		}
	}
	return corners, ok
}

// checkTrack refuses a track that a camera cannot follow.
func (r *cameraPass) checkTrack(t *plan.Track, c *plan.Camera) bool {
	start := plan.InPlan(c.Frame.At)
	switch length := t.Length(); {
	case r2.Norm(r2.Sub(t.Corners[0], start)) > startSlack:
		r.Errorf(t.Span, CodeTrackStart, "start the track at "+r.XY(start)+", or leave at out", "the track of %s starts at %s, and %s stands at %s",
			c.Name, r.XY(t.Corners[0]), c.Name, r.XY(start))
	case len(t.Corners) < 2:
		r.Errorf(t.Span, CodeNoTrack, "write two places that differ, or leave the track out", "the track of %s goes nowhere", c.Name)
	case length > plan.LongestTrack:
		r.Errorf(t.Span, CodeTrackLong, "leave out what is not in the shot, or make set-ups of its parts", "the track of %s is %s long, and a track may be %s",
			c.Name, r.Length(length), r.Length(plan.LongestTrack))
	case t.Aim != nil && lensTo(t, c.Frame.At.Z, *t.Aim) < nearestAim:
		r.Errorf(t.Span, CodeNoAim, "lead the track round it, or look at something else", "the track of %s leads through the point that it looks at", c.Name)
	default:
		return true
	}
	return false
}

// startSlack is how far from its camera a track may start, m: a tape is no truer. nearestAim is how near to the lens the point may come
// that it looks at, m.
const (
	startSlack = 0.01
	nearestAim = 0.01
)

// lensTo is how near a lens on a track, at a height, comes to a point, m.
func lensTo(t *plan.Track, z float64, p r3.Vec) float64 {
	away, _ := t.Nearest(plan.InPlan(p))
	return math.Hypot(away, p.Z-z)
}
