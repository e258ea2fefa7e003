package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// Glare is a lamp before a camera that may shine onto its lens: where it lies, and what would shade the lens from it.
type Glare struct {
	Camera, Light string
	Along         float64 // m from the start of the camera's track to where that is so; 0 of one that stands
	OffAxis       float64 // from the axis of the lens to the middle of the lamp, degrees
	OffFrame      float64 // from the edge of the frame to it, degrees; 0 within the frame
	InFrame       bool    // something of its light lies in the frame
	From          string  // where it comes from, as the camera sees it: "the upper left"
	Shade         *Shade  // nil where none can stand between the frame and the lamp
}

// Shade is a rectangle before a lens that keeps a lamp off all of it, and out of the frame.
type Shade struct {
	Side   Side    // of the frame that it stands beside
	Ahead  float64 // from the entrance of the lens, along its axis, m
	Width  float64 // m
	Height float64 // m
	Middle r3.Vec  // m
}

// Side is a side of a frame.
type Side string

// The sides.
const (
	LeftSide  Side = "left"
	RightSide Side = "right"
	Top       Side = "top"
	Bottom    Side = "bottom"
)

// widestGlare is how far off the axis of a lens a lamp still reaches its front element past the hood of the lens, degrees: common
// practice.
const widestGlare = 60

// Glares are the lamps before the cameras of a set-up, in the order of the scene: within 60° of the axis of the lens, up at some
// time, and with light toward it. What stands between them is not looked at. A camera that moves has those of all places along its track that are
// glareStep apart.
func Glares(s *plan.Setup) (all []Glare) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		places := []float64{0}
		if c.Track != nil {
			places = plane.AlongSteps(c.Track.Corners, glareStep)
		}
		for k := range s.Lights {
			for _, along := range places {
				at := c.OnTrack(along)
				if g, ok := glareOf(&at, &s.Lights[k]); ok && s.EverUp(&s.Lights[k]) {
					g.Along = along
					all = append(all, g)
				}
			}
		}
	}
	return all
}

// glareStep is how far apart the places of a track are at most at which lamps are looked for, m.
const glareStep = 0.25

// glareOf is a lamp before a camera where it is; false where its light does not go toward the lens.
func glareOf(c *plan.Camera, l *plan.Light) (g Glare, ok bool) {
	p := pictureOf(c)
	way := r3.Sub(l.Frame.At, p.At)
	if r3.Norm(way) < nearLens || len(l.Diffusion) > 0 || !shinesTo(l, p.At) {
		return g, false
	}
	off := math.Acos(min(1, r3.Dot(r3.Unit(way), p.Axis))) * 180 / math.Pi
	if off > widestGlare {
		return g, false
	}
	g = Glare{Camera: c.Name, Light: l.Name, OffAxis: off, OffFrame: p.offFrame(way), InFrame: inFrame(openingOf(l), p), From: p.from(way)}
	if !g.Within() {
		g.Shade = p.shade(cornersOf(l), pupilOf(c))
	}
	return g, true
}

// Within says whether the lamp lies in the frame, or some of it does.
func (g *Glare) Within() bool { return g.InFrame || g.OffFrame == 0 }

// pupilOf is the radius of the entrance of a lens at its working stop, m.
func pupilOf(c *plan.Camera) float64 {
	if !(c.Exposure.Stop.N > 0) {
		return 0
	}
	return c.Lens / (2 * c.Exposure.Stop.N) / 1000
}

// cornersOf are the places between which a lamp's light leaves it.
func cornersOf(l *plan.Light) (all []r3.Vec) {
	for _, p := range openingOf(l) {
		all = append(all, p.Corners()...)
	}
	if len(all) == 0 {
		all = []r3.Vec{l.Frame.At}
	}
	return all
}

// offFrame is the least angle between a direction and those that the picture shows, degrees.
func (p picture) offFrame(way r3.Vec) float64 {
	way = r3.Unit(way)
	sides := p.sides()
	out := false
	least := math.Inf(1)
	nearer := func(to r3.Vec) { least = min(least, math.Acos(max(-1, min(1, r3.Dot(way, r3.Unit(to)))))) }
	for i := 1; i < len(sides); i++ {
		over := r3.Dot(sides[i].N, way)
		if over <= 0 {
			continue
		}
		out = true
		if foot := r3.Sub(way, r3.Scale(over, sides[i].N)); r3.Norm(foot) > upright && p.showsWay(foot) {
			nearer(foot)
		}
	}
	if !out {
		return 0
	}
	for _, x := range [...]float64{-1, 1} {
		for _, y := range [...]float64{-1, 1} {
			nearer(r3.Add(p.Axis, r3.Add(r3.Scale(x*p.wide, p.Right), r3.Scale(y*p.high, p.Up()))))
		}
	}
	return least * 180 / math.Pi
}

// showsWay says whether the picture shows a direction, or has it at its edge.
func (p picture) showsWay(way r3.Vec) bool {
	sides := p.sides()
	for i := 1; i < len(sides); i++ {
		if r3.Dot(sides[i].N, way) > upright {
			return false
		}
	}
	return r3.Dot(way, p.Axis) > 0
}

// from says where a direction lies about the axis of the picture.
func (p picture) from(way r3.Vec) string {
	const apart = 2.4142 // the tangent of 67.5°: beyond it one word does
	x, y := r3.Dot(way, p.Right), r3.Dot(way, p.Up())
	across, up := "right", "upper"
	if x < 0 {
		across = "left"
	}
	if y < 0 {
		up = "lower"
	}
	switch {
	case math.Abs(x) > apart*math.Abs(y):
		return "the " + across
	case math.Abs(y) > apart*math.Abs(x):
		return map[string]string{"upper": "above", "lower": "below"}[up]
	}
	return "the " + up + " " + across
}
