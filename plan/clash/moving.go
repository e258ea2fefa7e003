package clash

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// moving is the room that walks, doors and cameras on tracks take.
func moving(s *plan.Setup) (all []*thing) {
	for i := range s.People {
		if p := &s.People[i]; p.Walk != nil {
			all = append(all, thingOf(Side{Walk, p.Name}, plan.Mount{}, walkPieces(p.Walk)))
		}
	}
	for i := range s.Openings {
		if o := &s.Openings[i]; o.Leaf != nil {
			all = append(all, thingOf(Side{Swing, o.Name}, plan.Mount{}, swingPieces(o, 0, widestSwing)))
		}
	}
	for i := range s.Cameras {
		if c := &s.Cameras[i]; c.Track != nil {
			all = append(all, thingOf(Side{Way, c.Name}, plan.Mount{}, wayPieces(c)))
		}
	}
	return all
}

// walkPieces are the room that somebody walks through: stretch by stretch on one level, and what a shoulder swings over at each turn.
func walkPieces(w *plan.Walk) (all []body.Piece) {
	for _, s := range w.Legs() {
		all = append(all, body.Prism(body.Whole, plane.Strip(s.A, s.B, plan.BodyWidth), s.Base+plan.StepOver, s.Base+w.Crown))
	}
	for _, t := range w.Turns() {
		base := w.BaseAt(t.Along)
		all = append(all, body.Prism(body.Whole, t.Ring, base+plan.StepOver, base+w.Crown))
	}
	return all
}

// widestSwing is how far a leaf swings, degrees (common practice), and swingSteps how many straight sides its way has: over a leaf of 1 m
// they leave 3 mm of the arc out.
const (
	widestSwing = 90.0
	swingSteps  = 10
)

// swingPieces are the room that a leaf sweeps between two angles at which it stands, degrees.
func swingPieces(o *plan.Opening, from, to float64) []body.Piece {
	hinge, edge := o.Left, o.Right
	if !o.HingeLeft {
		hinge, edge = edge, hinge
	}
	swing, flush := r2.Scale(-1, o.Outward), r2.Vec{}
	if !o.SwingIn {
		swing, flush = o.Outward, r2.Scale(o.Depth, o.Outward)
	}
	across, at := r2.Unit(r2.Sub(edge, hinge)), r2.Add(hinge, flush)
	ring := []r2.Vec{at}
	for i := range swingSteps + 1 {
		sin, cos := plane.Sincos(from + (to-from)*float64(i)/swingSteps)
		ring = append(ring, r2.Add(at, r2.Scale(o.Width(), r2.Add(r2.Scale(cos, across), r2.Scale(sin, swing)))))
	}
	return []body.Piece{body.Prism(body.Whole, plane.CounterClockwise(ring), o.Sill, o.Head)}
}

// wayPieces are the room that a camera takes over its rails: as wide as they are (common practice).
func wayPieces(c *plan.Camera) (all []body.Piece) {
	for i := range len(c.Track.Corners) - 1 {
		all = append(all, body.Prism(body.Whole, c.Track.Bed(i), c.Base, c.Frame.At.Z+body.OverLens))
	}
	return all
}

// Stop is how far a leaf shuts and opens with something in its way, degrees, rounded to whole ones on the side of less room.
type Stop struct{ Shuts, Opens float64 }

// StopAt is how far the leaf of an opening swings with a piece of equipment in its way. It is asked of what Find says is in its way.
func StopAt(s *plan.Setup, of Side, o *plan.Opening) (at Stop) {
	for _, t := range equipment(s) {
		if t.Side == of {
			at = t.stop(o)
		}
	}
	return at
}

// StopOnTrack is how far the leaf of an opening swings with the rails of a camera, or the camera over them, in its way, and whether they are.
func StopOnTrack(c *plan.Camera, o *plan.Opening) (at Stop, stopped bool) {
	way := thingOf(Side{Way, c.Name}, plan.Mount{}, wayPieces(c))
	if way.free(o, 0, widestSwing) {
		return Stop{}, false
	}
	return way.stop(o), true
}

// free says whether a leaf passes a thing between two angles at which it stands, degrees.
func (t *thing) free(o *plan.Opening, from, to float64) bool {
	return t.meets(thingOf(Side{Swing, o.Name}, plan.Mount{}, swingPieces(o, from, to))) == nil
}

// stop is where a leaf that stands as it is written meets a thing.
func (t *thing) stop(o *plan.Opening) Stop {
	at := min(o.Ajar, widestSwing)
	shuts, opens := at, at
	for ; shuts > 0 && t.free(o, shuts-1, shuts); shuts-- {
	}
	for ; opens < widestSwing && t.free(o, opens, opens+1); opens++ {
	}
	return Stop{math.Ceil(max(0, shuts)), math.Floor(opens)}
}
