package plan

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Middle is the middle of an opening on its inside face.
func (o *Opening) Middle() r2.Vec { return r2.Scale(0.5, r2.Add(o.Left, o.Right)) }

// Rightward is the unit vector along an opening, to the right as seen from inside.
func (o *Opening) Rightward() r2.Vec { return r2.Unit(r2.Sub(o.Right, o.Left)) }

// Width is the clear width of an opening, m.
func (o *Opening) Width() float64 { return r2.Norm(r2.Sub(o.Right, o.Left)) }

// Plan is the hole in plan, counter-clockwise, from the inside face outward through everything
// it cuts.
func (o *Opening) Plan() []r2.Vec { return o.Slab(0, o.Depth) }

// Slab is the hole between two distances outward from its inside face.
func (o *Opening) Slab(near, far float64) []r2.Vec {
	return plane.Slab(o.Left, o.Right, o.Outward, near, far)
}

// Opening is a hole in a wall. Left and Right are its ends on the inside face, as seen from
// inside; Depth is how far the hole goes outward through everything it cuts.
type Opening struct {
	Name          string
	Kind          term.Opening
	Room, Wall    string
	FarRoom       string  // the room on the far side, "" for outside
	Left, Right   r2.Vec  // m
	Outward       r2.Vec  // unit vector
	Depth         float64 // m
	Sill, Head    float64 // z of its lower and upper edge, m
	Panes         [2]int
	HingeLeft     bool // as seen from inside
	SwingIn       bool
	Ajar          float64  // degrees; a door at 0 is shut and stops light
	Leaf          []r2.Vec // the plan of its leaf where that stands, m; nil: it has none
	Glass         string
	Transmittance float64 // share of the light that its glass lets through, luminous, 0 to 1
	Escape        bool
	Dressing      []Dressing // from the room outward
	Gels          []string   // on the glass, from the source
	IDs           []solid.ID // its pane, its leaf
	Bars          []solid.ID // between its panes
	Span          source.Span
}

// Bars are the bars between the panes of all openings.
func (s *Setup) Bars() (all []solid.ID) {
	for i := range s.Openings {
		all = append(all, s.Openings[i].Bars...)
	}
	return all
}

// Dressing is one part of a curtain, or a blind, of an opening.
type Dressing struct {
	Cloth string     // of a curtain
	A, B  r2.Vec     // its ends in plan, from left to right as seen from inside, m
	Foot  float64    // z of its lower edge, m
	Top   float64    // z of its upper edge, m
	Slat  float64    // the width of the slats of a blind, m; 0 of a curtain
	Tilt  float64    // of the slats, degrees: above 0 the room's edge is the lower one
	IDs   []solid.ID // its cloth, its slats
}
