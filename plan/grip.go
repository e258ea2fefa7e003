package plan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// roundCorners is how many corners a round sheet has.
const roundCorners = 12

// Round says whether the sheet is a disc.
func (g *Grip) Round() bool { return g.Item != nil && g.Item.Round }

// Corners are the corners of the sheet, counter-clockwise as seen from its front. A disc has as many as stop the light that
// it does.
func (g *Grip) Corners() []r3.Vec {
	if !g.Round() {
		box := g.Rectangle()
		return box[:]
	}
	const turn = 2 * math.Pi / roundCorners
	wide := math.Sqrt(turn / math.Sin(turn)) // the polygon has the area of the disc
	var all []r3.Vec
	for i := range roundCorners {
		sin, cos := math.Sincos(turn * float64(i))
		all = append(all, r3.Add(g.Frame.At, r3.Add(r3.Scale(-cos*wide*g.Size[0]/2, g.Frame.Right), r3.Scale(sin*wide*g.Size[1]/2, g.Frame.Up()))))
	}
	return all
}

// Rectangle are the corners of the rectangle that the sheet lies in, counter-clockwise as seen from its front.
func (g *Grip) Rectangle() [4]r3.Vec {
	// Right is the sheet's right as seen from behind, so from its front it is left.
	right, up := r3.Scale(g.Size[0]/2, g.Frame.Right), r3.Scale(g.Size[1]/2, g.Frame.Up())
	at := g.Frame.At
	return [4]r3.Vec{
		r3.Sub(r3.Add(at, right), up), r3.Sub(r3.Sub(at, right), up),
		r3.Add(r3.Sub(at, right), up), r3.Add(r3.Add(at, right), up),
	}
}

// sheetThick is how thick a sheet counts that something has to go round, m.
const sheetThick = 0.02

// Shadow is what the sheet takes of the plan, as a convex ring; one that stands upright is as thick as a tube.
func (g *Grip) Shadow() []r2.Vec {
	var points []r2.Vec
	for _, c := range g.Corners() {
		for _, side := range [2]float64{-sheetThick / 2, sheetThick / 2} {
			points = append(points, InPlan(r3.Add(c, r3.Scale(side, g.Frame.Axis))))
		}
	}
	return plane.Hull(points)
}

// Reach is the least and the most z of the sheet, m.
func (g *Grip) Reach() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range g.Corners() {
		low, high = math.Min(low, c.Z), math.Max(high, c.Z)
	}
	return low, high
}

// Grip is a flag, card, frame, net or silver, resolved.
type Grip struct {
	Name, Tag            string
	Kind                 term.Grip
	Size                 [2]float64 // width and height, m
	Item                 *kit.Grip  // of the catalogue, where the scene names it; else nil
	Frame                Frame      // At the centre, Axis the face's normal
	Target               *r3.Vec    // the point that it faces and turns with, m; nil: it keeps its direction
	Base                 float64    // z of what it stands on, m
	Height               float64    // of the centre above the floor of the room it belongs to, m
	Mount                Mount
	Cloth, Surface, Note string
	Reflects             float64 // share of the light that its front throws back, luminous, 0 to 1
	IDs                  []solid.ID
	TakeDown             float64 // the wind at which it comes down outdoors, m/s; 0: none is known
	Placing              []Dimension
	Span                 source.Span
}
