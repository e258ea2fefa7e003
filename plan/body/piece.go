// Package body is what equipment is made of in space: each lamp, stand, arm, sheet, camera and rail as convex pieces, m. What a camera sees
// of it and what it meets are read from the same pieces.
package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/solid"
)

// Part is what a piece is of the thing that it belongs to.
type Part string

// The parts.
const (
	Head   Part = "head" // of a lamp, with its modifier, doors and cloth; of a camera its body
	Sheet  Part = "sheet"
	Stand  Part = "stand"
	Legs   Part = "legs"
	Ground Part = "ground" // that legs take, however they are turned
	Boom   Part = "boom"
	Weight Part = "counterweight"
	Pole   Part = "pole"
	Rail   Part = "rails"
	Lead   Part = "cable"
	Whole  Part = "whole" // of somebody
)

// Holds says whether the part only holds the thing up.
func (p Part) Holds() bool {
	return p != Head && p != Sheet && p != Rail && p != Lead && p != Whole && p != Ground
}

// Piece is one convex body of a thing. Its faces run counter-clockwise as seen from outside; a sheet has one, and shows it from
// both sides. A ball has none, and a radius.
type Piece struct {
	Part   Part
	Faces  [][]r3.Vec // m
	Sheet  bool
	Middle r3.Vec  // m
	Radius float64 // of a ball, m; 0 of all else
}

// TurnedSides is how many sides a round box or a shade has.
const TurnedSides = 12

// Flat is a sheet.
func Flat(part Part, corners []r3.Vec) Piece {
	return Piece{Part: part, Faces: [][]r3.Vec{corners}, Sheet: true, Middle: solid.Centre(corners)}
}

// Loft is what lies between two rings that run the same way, with as many corners, each side flat.
func Loft(part Part, near, far []r3.Vec) Piece {
	p := Piece{Part: part, Middle: r3.Scale(0.5, r3.Add(solid.Centre(near), solid.Centre(far)))}
	n := len(near)
	p.add(near)
	p.add(far)
	for i := range near {
		k := (i + 1) % n
		p.add([]r3.Vec{near[i], near[k], far[k], far[i]})
	}
	return p
}

// Prism is what stands over a convex outline.
func Prism(part Part, outline []r2.Vec, z0, z1 float64) Piece {
	var below, above []r3.Vec
	for _, c := range outline {
		below, above = append(below, plan.AtHeight(c, z0)), append(above, plan.AtHeight(c, z1))
	}
	return Loft(part, below, above)
}

// add puts a face on, turned so that it looks away from the middle. One without area is left out.
func (p *Piece) add(corners []r3.Vec) {
	n := normalOf(corners)
	if r3.Norm(n) < 1e-12 {
		return
	}
	if r3.Dot(n, r3.Sub(corners[0], p.Middle)) < 0 {
		corners = backward(corners)
	}
	p.Faces = append(p.Faces, corners)
}

// normalOf is the area vector of a polygon: it looks to where the corners run counter-clockwise.
func normalOf(corners []r3.Vec) (n r3.Vec) {
	for i := 1; i+1 < len(corners); i++ {
		n = r3.Add(n, r3.Cross(r3.Sub(corners[i], corners[0]), r3.Sub(corners[i+1], corners[0])))
	}
	return n
}

// backward are corners the other way round.
func backward(corners []r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(corners))
	for i, c := range corners {
		out[len(corners)-1-i] = c
	}
	return out
}

// Circle is a ring of sides about a place, square to two directions, that lies just outside of the circle of a radius.
func Circle(at, across, up r3.Vec, radius float64, sides int) []r3.Vec {
	ring := make([]r3.Vec, sides)
	out := radius / math.Cos(math.Pi/float64(sides))
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(sides))
		ring[i] = r3.Add(at, r3.Add(r3.Scale(out*cos, across), r3.Scale(out*sin, up)))
	}
	return ring
}

// rodSides is how many sides a tube has.
const rodSides = 6

// Rod is a tube from one place to another.
func Rod(part Part, from, to r3.Vec, radius float64) Piece {
	axis := r3.Unit(r3.Sub(to, from))
	across, up := squareTo(axis)
	return Loft(part, Circle(from, across, up, radius, rodSides), Circle(to, across, up, radius, rodSides))
}

// squareTo are two directions square to an axis and to each other.
func squareTo(axis r3.Vec) (across, up r3.Vec) {
	across = r3.Cross(axis, r3.Vec{Z: 1})
	if r3.Norm(across) < 1e-9 {
		across = r3.Vec{X: 1}
	}
	across = r3.Unit(across)
	return across, r3.Cross(across, axis)
}

// Figures calls show with each flat figure that the piece shows to a place, those of one piece side by side, until it
// returns false. A lens within it sees nothing else than its inside.
func (p *Piece) Figures(from r3.Vec, show func(figure []r3.Vec) bool) bool {
	if p.Radius > 0 {
		if figure := p.outline(from); figure != nil {
			return show(figure)
		}
		around := cube(p.Middle, p.Radius)
		return around.Figures(from, show)
	}
	within := !p.Sheet && p.Holds(from)
	for _, f := range p.Faces {
		if (p.Sheet || within || over(f, from)) && !show(f) {
			return false
		}
	}
	return true
}

// over says whether a place lies before a face.
func over(face []r3.Vec, at r3.Vec) bool { return r3.Dot(normalOf(face), r3.Sub(at, face[0])) > 0 }

// Holds says whether a place lies behind all faces.
func (p *Piece) Holds(at r3.Vec) bool {
	for _, f := range p.Faces {
		if over(f, at) {
			return false
		}
	}
	return true
}

// Corners are the places between which the piece lies.
func (p *Piece) Corners() (all []r3.Vec) {
	for _, f := range p.Faces {
		all = append(all, f...)
	}
	if p.Radius > 0 {
		for _, d := range []r3.Vec{{X: p.Radius}, {Y: p.Radius}, {Z: p.Radius}} {
			all = append(all, r3.Add(p.Middle, d), r3.Sub(p.Middle, d))
		}
	}
	return all
}

// thinnest is how far behind a mirror something lies that it cuts, m.
const thinnest = 1e-6

// Image is what of a piece lies before a mirror, as it is seen in that. Of a ball that the mirror cuts all is; of what else it cuts
// one sees the inside.
func (p *Piece) Image(m *solid.Mirror) (image Piece, ok bool) {
	image = Piece{Part: p.Part, Sheet: p.Sheet, Middle: m.Image(p.Middle), Radius: p.Radius}
	if p.Radius > 0 {
		return image, m.Plane.Over(p.Middle) > 0
	}
	for _, f := range p.Faces {
		if part := m.Before(f); part != nil {
			image.Faces = append(image.Faces, m.Images(part))
		}
		for _, c := range f {
			image.Sheet = image.Sheet || m.Plane.Over(c) < -thinnest
		}
	}
	return image, len(image.Faces) > 0
}
