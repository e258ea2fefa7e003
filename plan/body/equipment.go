package body

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// The measures of a camera and its legs, m: typical of cameras on three legs at the height of eyes, common practice, from memory. Legs at half that height
// stand as wide.
const (
	cameraWidth  = 0.17
	cameraHeight = 0.20
	cameraFoot   = 0.9
)

// LegsOfCamera is what a camera on legs stands on, as a mount; nil of one on rails.
func LegsOfCamera(c *plan.Camera) *plan.Mount {
	if c.Track != nil {
		return nil
	}
	return &plan.Mount{Kind: term.Stand, Base: plan.InPlan(c.Frame.Place(r3.Vec{Z: -plan.CameraLength / 2})), Foot: cameraFoot}
}

// OverLens is up to where a camera on its rails takes room over its lens, m: common practice.
const OverLens = 0.10

// CameraAt are the pieces of a camera that is moved.
func CameraAt(c *plan.Camera, by r3.Vec) []Piece {
	f := c.Frame
	f.At = r3.Add(f.At, by)
	body := Box(f, cameraWidth, cameraHeight, 0, -plan.CameraLength)
	middle := f.Place(r3.Vec{Z: -plan.CameraLength / 2})
	bearing := 0.0
	if flat := plan.InPlan(f.Axis); r2.Norm(flat) > 1e-6 { // it does not look straight up or down
		bearing = plane.Bearing(flat)
	}
	return append([]Piece{body}, standOf(plan.InPlan(middle), c.Base, middle.Z, cameraFoot, bearing)...)
}

// RailsOf are the rails of a track, leg by leg.
func RailsOf(c *plan.Camera, by r3.Vec) (all []Piece) {
	for i := 1; i < len(c.Track.Corners); i++ {
		a, b := r2.Add(c.Track.Corners[i-1], plan.InPlan(by)), r2.Add(c.Track.Corners[i], plan.InPlan(by))
		way := r2.Unit(r2.Sub(b, a))
		side := r2.Vec{X: way.Y, Y: -way.X}
		for _, out := range [...]float64{-plan.RailGauge / 2, plan.RailGauge / 2} {
			near, far := r2.Scale(out-plan.RailWidth/2, side), r2.Scale(out+plan.RailWidth/2, side)
			ring := []r2.Vec{r2.Add(a, near), r2.Add(a, far), r2.Add(b, far), r2.Add(b, near)}
			all = append(all, Prism(Rail, ring, c.Base+by.Z, c.Base+plan.RailHeight+by.Z))
		}
	}
	return all
}

// rimWidth is how wide the tubes of an empty frame are, m: common practice.
const rimWidth = 0.025

// SheetsOf are the sheet of a piece of grip, or the sides of a frame that nothing hangs in.
func SheetsOf(g *plan.Grip) []Piece {
	if g.Kind != term.Frame || g.Cloth != "" || g.Round() {
		return []Piece{Flat(Sheet, g.Corners())}
	}
	outer := g.Rectangle()
	inner := *g
	inner.Size = [2]float64{max(0, g.Size[0]-2*rimWidth), max(0, g.Size[1]-2*rimWidth)}
	hole := inner.Rectangle()
	var all []Piece
	for i := range outer {
		k := (i + 1) % len(outer)
		all = append(all, Flat(Sheet, []r3.Vec{outer[i], outer[k], hole[k], hole[i]}))
	}
	return all
}
