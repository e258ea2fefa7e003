package frame

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// The measures of a camera and its legs, m: common practice.
const (
	cameraWidth  = 0.17
	cameraHeight = 0.20
	cameraFoot   = 0.9
)

// cameraAt are the pieces of a camera that is moved.
func cameraAt(c *plan.Camera, by r3.Vec) []piece {
	f := c.Frame
	f.At = r3.Add(f.At, by)
	body := box(f, cameraWidth, cameraHeight, 0, -plan.CameraLength)
	middle := f.Place(r3.Vec{Z: -plan.CameraLength / 2})
	bearing := 0.0
	if flat := plan.InPlan(f.Axis); r2.Norm(flat) > upright {
		bearing = plane.Bearing(flat)
	}
	return append([]piece{body}, standOf(plan.InPlan(middle), c.Base, middle.Z, cameraFoot, bearing)...)
}

// stanceStep is how far apart the places of a track are at most that a camera is looked for at by another, m; on one that is too long for
// mostStances, as far as that takes.
const (
	stanceStep  = 0.25
	mostStances = 20
)

// camerasOf are a camera, all along its track, and the rails of that.
func camerasOf(c *plan.Camera) []thing {
	camera := thing{kind: Camera, name: c.Name, path: "cameras." + c.Name, span: c.Span, foot: plan.InPlan(c.Frame.At), base: c.Base,
		ownHeight: c.Frame.At.Z, standsOnIt: true}
	if c.Track == nil {
		camera.at = func(by r3.Vec) [][]piece { return [][]piece{cameraAt(c, by)} }
		return []thing{camera}
	}
	camera.at = func(by r3.Vec) (all [][]piece) {
		for _, along := range plane.AlongSteps(c.Track.Corners, max(stanceStep, c.Track.Length()/mostStances)) {
			at := c.OnTrack(along)
			all = append(all, cameraAt(&at, by))
		}
		return all
	}
	rails := thing{kind: Rails, name: c.Name, path: "cameras." + c.Name + ".track", span: c.Track.Span,
		at: func(by r3.Vec) [][]piece { return [][]piece{railsOf(c, by)} }}
	return []thing{camera, rails}
}

// railsOf are the rails of a track, leg by leg.
func railsOf(c *plan.Camera, by r3.Vec) (all []piece) {
	for i := 1; i < len(c.Track.Corners); i++ {
		a, b := r2.Add(c.Track.Corners[i-1], plan.InPlan(by)), r2.Add(c.Track.Corners[i], plan.InPlan(by))
		way := r2.Unit(r2.Sub(b, a))
		side := r2.Vec{X: way.Y, Y: -way.X}
		for _, out := range [...]float64{-plan.RailGauge / 2, plan.RailGauge / 2} {
			near, far := r2.Scale(out-plan.RailWidth/2, side), r2.Scale(out+plan.RailWidth/2, side)
			ring := []r2.Vec{r2.Add(a, near), r2.Add(a, far), r2.Add(b, far), r2.Add(b, near)}
			all = append(all, prism(Rail, ring, c.Base+by.Z, c.Base+plan.RailHeight+by.Z))
		}
	}
	return all
}
