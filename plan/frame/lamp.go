package frame

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/term"
)

// lampAt are the pieces of a light that is moved by a vector, and turned so that it still aims where it does.
func (v *viewing) lampAt(l *plan.Light, by r3.Vec) []body.Piece {
	m := *l
	m.Frame = v.lampFrame(l, by)
	m.Mount = body.MovedMount(&l.Mount, by)
	var all []body.Piece
	all = append(all, body.HeadOf(&m)...)
	for _, leaf := range m.Leaves() {
		all = append(all, body.Flat(body.Head, leaf))
	}
	all = append(all, v.clothOn(l, m.Frame)...)
	return append(all, body.HoldersOf(&m.Mount, m.Frame, m.Base)...)
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

// clothOn is the diffusion before a head, or about it, where it hangs once the head has another frame.
func (v *viewing) clothOn(l *plan.Light, f plan.Frame) (all []body.Piece) {
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
		all = append(all, body.Flat(body.Head, corners))
	}
	return all
}
