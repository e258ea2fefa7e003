package frame

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// The head of a lamp of which only its light is known, m: as the plan draws it, common practice.
var plainBody = [3]float64{0.25, 0.30, 0.25}

// lampAt are the pieces of a light that is moved by a vector, and turned so that it still aims where it does.
func (v *viewing) lampAt(l *plan.Light, by r3.Vec) []piece {
	m := *l
	m.Frame = v.lampFrame(l, by)
	m.Mount = movedMount(&l.Mount, by)
	var all []piece
	all = append(all, headOf(&m)...)
	for _, leaf := range m.Leaves() {
		all = append(all, flat(Head, leaf))
	}
	all = append(all, v.clothOn(l, m.Frame)...)
	return append(all, holdersOf(&m.Mount, m.Frame, m.Base)...)
}

// lampFrame is the frame of a light that is moved: what is frozen, or laid on a wall, keeps its direction.
func (v *viewing) lampFrame(l *plan.Light, by r3.Vec) plan.Frame {
	laid := l.Mount.Kind == term.Wall && l.Head.Class == term.Linear
	if l.Throw == 0 || laid || v.setup.Spots[l.Name].Stays {
		return plan.Frame{At: r3.Add(l.Frame.At, by), Axis: l.Frame.Axis, Right: l.Frame.Right}
	}
	return turned(l.Frame, by, l.AimPoint)
}

// turned is a frame that is moved and turned to a point as it was before, with its roll, and with its tilt where that was
// not the point's.
func turned(f plan.Frame, by, target r3.Vec) plan.Frame {
	out := plan.Frame{At: r3.Add(f.At, by), Axis: f.Axis, Right: f.Right}
	if by == (r3.Vec{}) {
		return out
	}
	was, is := r3.Sub(target, f.At), r3.Sub(target, out.At)
	if math.Hypot(was.X, was.Y) < upright || math.Hypot(is.X, is.Y) < upright || math.Hypot(f.Axis.X, f.Axis.Y) < upright {
		return out
	}
	axis := r3.Unit(is)
	if r3.Norm(r3.Sub(r3.Unit(was), f.Axis)) > upright { // its tilt is its own
		flat := math.Hypot(f.Axis.X, f.Axis.Y) / math.Hypot(is.X, is.Y)
		axis = r3.Vec{X: is.X * flat, Y: is.Y * flat, Z: f.Axis.Z}
	}
	level := plan.FrameAlong(f.At, f.Axis, 0, 0)
	roll := math.Atan2(-r3.Dot(f.Right, level.Up()), r3.Dot(f.Right, level.Right)) * 180 / math.Pi
	return plan.FrameAlong(out.At, axis, 0, roll)
}

// upright is how little of a direction lies in the plan of what points straight up or down.
const upright = 1e-6

// headOf are the pieces of a light's head: the form that its light leaves by, with the body behind it.
func headOf(l *plan.Light) []piece {
	o, f, body := l.Head.Source.Opening, l.Frame, l.Head.Body
	if body == ([3]float64{}) {
		body = plainBody
	}
	switch {
	case o.Form == photometry.Sphere:
		return append(practicalBody(l, body), ball(Head, f.At, o.Width/2))
	case o.Form == photometry.Lampshade:
		return append(practicalBody(l, body), shadeOf(l))
	case o.Form == photometry.Tube:
		deep := max(o.Height, body[1])
		return []piece{box(f, max(o.Width, body[0]), max(o.Height, body[2]), deep/2, -deep/2)}
	case l.Head.Class == term.Practical:
		return practicalBody(l, body)
	case o.Form == photometry.Disc && o.Width > max(body[0], body[2]):
		back := f.Place(r3.Vec{Z: -body[1]})
		return []piece{loft(Head, circle(f.At, f.Right, f.Up(), o.Width/2, turnedSides), circle(back, f.Right, f.Up(), max(body[0], body[2])/2, turnedSides))}
	case o.Form == photometry.Rectangle:
		return []piece{loft(Head, rectangle(f, max(o.Width, body[0]), max(o.Height, body[2]), 0), rectangle(f, body[0], body[2], -body[1]))}
	}
	return []piece{box(f, body[0], body[2], 0, -body[1])}
}

// rectangle is a rectangle square to an axis, so far ahead on it.
func rectangle(f plan.Frame, width, height, ahead float64) []r3.Vec {
	x, y := width/2, height/2
	return []r3.Vec{f.Place(r3.Vec{X: -x, Y: -y, Z: ahead}), f.Place(r3.Vec{X: x, Y: -y, Z: ahead}), f.Place(r3.Vec{X: x, Y: y, Z: ahead}), f.Place(r3.Vec{X: -x, Y: y, Z: ahead})}
}

// box is a box along an axis, from one distance on it to another.
func box(f plan.Frame, width, height, front, back float64) piece {
	return loft(Head, rectangle(f, width, height, front), rectangle(f, width, height, back))
}

// shineHeight is how high in its body a practical shines, as a share of the body's height; one that hangs shines from its
// middle.
const shineHeight = 0.75

// practicalBody is the upright body of a lamp of the set; none of another.
func practicalBody(l *plan.Light, body [3]float64) []piece {
	if l.Head.Class != term.Practical {
		return nil
	}
	below := shineHeight * body[2]
	if l.Mount.Kind != term.Floor && l.Mount.Kind != term.Stand {
		below = body[2] / 2
	}
	at := l.Frame.At
	level := plan.Frame{At: r3.Vec{X: at.X, Y: at.Y, Z: at.Z - below}, Axis: r3.Vec{Z: 1}, Right: r3.Vec{X: 1}}
	return []piece{box(level, body[0], body[1], body[2], 0)}
}

// shadeOf is the shade about a bulb.
func shadeOf(l *plan.Light) piece {
	o, f := l.Head.Source.Opening, l.Frame
	top, bottom := o.Width, o.Width
	if form, ok := l.Head.ShadeForm(); ok {
		top, bottom = form.Top, form.Bottom
	}
	ring := func(ahead, width float64) []r3.Vec {
		return circle(f.Place(r3.Vec{Z: ahead}), f.Right, f.Up(), width/2, turnedSides)
	}
	return loft(Head, ring(-o.Height/2, bottom), ring(o.Height/2, top))
}

// clothOn is the diffusion before a head, or about it, where it hangs once the head has another frame.
func (v *viewing) clothOn(l *plan.Light, f plan.Frame) (all []piece) {
	if len(l.Diffusion) == 0 {
		return nil
	}
	for i := range v.setup.Set.Sheets {
		s := &v.setup.Set.Sheets[i]
		if !strings.HasPrefix(s.Name, l.Name+".") {
			continue
		}
		corners := make([]r3.Vec, len(s.Corners))
		for k, c := range s.Corners {
			d := l.Frame.Local(r3.Sub(c, l.Frame.At))
			corners[k] = f.Place(r3.Vec{X: d.X, Y: d.Y, Z: -d.Z})
		}
		all = append(all, flat(Head, corners))
	}
	return all
}
