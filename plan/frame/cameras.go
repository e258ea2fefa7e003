package frame

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

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
		camera.at = func(by r3.Vec) [][]body.Piece { return [][]body.Piece{body.CameraAt(c, by)} }
		return []thing{camera}
	}
	camera.at = func(by r3.Vec) (all [][]body.Piece) {
		for _, along := range plane.AlongSteps(c.Track.Corners, max(stanceStep, c.Track.Length()/mostStances)) {
			at := c.OnTrack(along)
			all = append(all, body.CameraAt(&at, by))
		}
		return all
	}
	rails := thing{kind: Rails, name: c.Name, path: "cameras." + c.Name + ".track", span: c.Track.Span,
		at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{body.RailsOf(c, by)} }}
	return []thing{camera, rails}
}
