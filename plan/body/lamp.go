package body

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// The head of a lamp of which only its light is known, m: as the plan draws it, common practice.
var plainBody = [3]float64{0.25, 0.30, 0.25}

// HeadOf are the pieces of a light's head: the form that its light leaves by, with the body behind it.
func HeadOf(l *plan.Light) []Piece {
	o, f, body := l.Head.Source.Opening, l.Frame, l.Head.Body
	if body == ([3]float64{}) {
		body = plainBody
	}
	switch {
	case o.Form == photometry.Sphere:
		return append(practicalBody(l, body), Ball(Head, f.At, o.Width/2))
	case o.Form == photometry.Lampshade:
		return append(practicalBody(l, body), ShadeOf(l))
	case o.Form == photometry.Tube:
		deep := max(o.Height, body[1])
		return []Piece{Box(f, max(o.Width, body[0]), max(o.Height, body[2]), deep/2, -deep/2)}
	case l.Head.Class == term.Practical:
		return practicalBody(l, body)
	case o.Form == photometry.Disc && o.Width > max(body[0], body[2]):
		back := f.Place(r3.Vec{Z: -body[1]})
		return []Piece{Loft(Head, Circle(f.At, f.Right, f.Up(), o.Width/2, TurnedSides), Circle(back, f.Right, f.Up(), max(body[0], body[2])/2, TurnedSides))}
	case o.Form == photometry.Rectangle:
		return []Piece{Loft(Head, Rectangle(f, max(o.Width, body[0]), max(o.Height, body[2]), 0), Rectangle(f, body[0], body[2], -body[1]))}
	}
	return []Piece{Box(f, body[0], body[2], 0, -body[1])}
}

// Rectangle is a rectangle square to an axis, so far ahead on it.
func Rectangle(f plan.Frame, width, height, ahead float64) []r3.Vec {
	x, y := width/2, height/2
	return []r3.Vec{f.Place(r3.Vec{X: -x, Y: -y, Z: ahead}), f.Place(r3.Vec{X: x, Y: -y, Z: ahead}), f.Place(r3.Vec{X: x, Y: y, Z: ahead}), f.Place(r3.Vec{X: -x, Y: y, Z: ahead})}
}

// Box is a box along an axis, from one distance on it to another.
func Box(f plan.Frame, width, height, front, back float64) Piece {
	return Loft(Head, Rectangle(f, width, height, front), Rectangle(f, width, height, back))
}

// shineHeight is how high in its body a practical shines, as a share of the body's height; one that hangs shines from its
// middle.
const shineHeight = 0.75

// practicalBody is the upright body of a lamp of the set; none of another.
func practicalBody(l *plan.Light, body [3]float64) []Piece {
	if l.Head.Class != term.Practical {
		return nil
	}
	below := shineHeight * body[2]
	if l.Mount.Kind != term.Floor && l.Mount.Kind != term.Stand {
		below = body[2] / 2
	}
	at := l.Frame.At
	level := plan.Frame{At: r3.Vec{X: at.X, Y: at.Y, Z: at.Z - below}, Axis: r3.Vec{Z: 1}, Right: r3.Vec{X: 1}}
	return []Piece{Box(level, body[0], body[1], body[2], 0)}
}

// ShadeOf is the shade about a bulb.
func ShadeOf(l *plan.Light) Piece {
	o, f := l.Head.Source.Opening, l.Frame
	top, bottom := o.Width, o.Width
	if form, ok := l.Head.ShadeForm(); ok {
		top, bottom = form.Top, form.Bottom
	}
	ring := func(ahead, width float64) []r3.Vec {
		return Circle(f.Place(r3.Vec{Z: ahead}), f.Right, f.Up(), width/2, TurnedSides)
	}
	return Loft(Head, ring(-o.Height/2, bottom), ring(o.Height/2, top))
}
