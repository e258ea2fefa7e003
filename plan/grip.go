package plan

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Corners are the corners of the sheet, counter-clockwise as seen from its front.
func (g *Grip) Corners() []r3.Vec {
	// Right is the sheet's right as seen from behind, so from its front it is left.
	right, up := r3.Scale(g.Size[0]/2, g.Frame.Right), r3.Scale(g.Size[1]/2, g.Frame.Up())
	at := g.Frame.At
	return []r3.Vec{
		r3.Sub(r3.Add(at, right), up), r3.Sub(r3.Sub(at, right), up),
		r3.Add(r3.Sub(at, right), up), r3.Add(r3.Add(at, right), up),
	}
}

// Grip is a flag, card, frame, net or silver, resolved.
type Grip struct {
	Name, Tag            string
	Kind                 term.Grip
	Size                 [2]float64 // width and height, m
	Item                 *kit.Grip  // of the catalogue, where the scene names it; else nil
	Frame                Frame      // At the centre, Axis the face's normal
	Base                 float64    // z of what it stands on, m
	Height               float64    // of the centre above the floor of the room it belongs to, m
	Mount                Mount
	Cloth, Surface, Note string
	Reflects             float64 // share of the light that its front throws back, luminous, 0 to 1
	IDs                  []solid.ID
	Placing              []Dimension
	Span                 source.Span
}
