package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Pose is how someone is.
type Pose string

// The poses.
const (
	Standing  Pose = "standing"
	Seated    Pose = "seated"
	Propped   Pose = "propped"
	Lying     Pose = "lying"
	Crouching Pose = "crouching"
)

// Poses lists them in the order of a legend.
func Poses() []Pose { return []Pose{Standing, Seated, Propped, Lying, Crouching} }

// Person is someone as they are drawn, seen from above.
type Person struct {
	Pose   Pose
	At     r2.Vec  // the head's axis, mm
	Faces  float64 // bearing of the nose, degrees clockwise from up the paper; of someone lying, of the feet
	Scale  float64 // mm of paper for a metre
	Height float64 // standing, m; 0: 1.7
}

// minScale is the scale in mm for a metre under which people are not drawn smaller.
const minScale = 10

// reach is how far a body lies before and behind the head's axis, m.
func (p Pose) reach() (front, back float64) {
	switch p {
	case Seated:
		return 0.56, 0.16
	case Propped:
		return 1.02, 0.26
	case Crouching:
		return 0.32, 0.18
	}
	return 0.20, 0.16
}

// shoulders is the width of a body, m.
const shoulders = 0.46

// DrawPerson draws a person: shoulders, legs where they reach out, the head with its nose. The nose is
// what a reader looks for, and the darkest part.
func DrawPerson(c ink.Canvas, k Look, p Person) Drawn {
	f := figure{brush{c, k}.on(ink.People).at(p.At, p.Faces), max(p.Scale, minScale)}
	switch p.Pose {
	case Seated:
		f.legs(0.06, 0.54)
		f.shoulders(shoulders, 0.25)
	case Propped:
		f.backrest()
		f.legs(0.06, 1.0)
		f.shoulders(shoulders, 0.27)
	case Lying:
		return f.lying(p.Height)
	case Crouching:
		f.knees()
		f.shoulders(shoulders-0.02, 0.30)
	default:
		f.shoulders(shoulders, 0.25)
	}
	f.head(true)
	front, back := p.Pose.reach()
	return Drawn{Body: f.outline(-halfBodyWidth*f.s, -back*f.s, halfBodyWidth*f.s, front*f.s)}
}

// halfBodyWidth is half the width of a body with the arms, m.
const halfBodyWidth = 0.24

// Trunk is what a person covers of paper without the legs: head and shoulders, which stay in sight
// where the legs are under a table.
func (p Person) Trunk() []r2.Vec {
	const wide, deep = shoulders / 2, 0.16
	s := max(p.Scale, minScale)
	return p.oval(wide*s, max(deep*s, headRadius(s)))
}

// Head is what the head covers of paper.
func (p Person) Head() []r2.Vec {
	r := headRadius(max(p.Scale, minScale))
	return p.oval(r, r)
}

// oval is an ellipse about the head's axis as a polygon, by its half widths across the nose and along it.
func (p Person) oval(across, along float64) []r2.Vec {
	const corners = 16
	frame := ink.Paper().At(p.At, p.Faces, 1)
	out := make([]r2.Vec, corners)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		out[i] = frame.Place(vec(across*cos, along*sin))
	}
	return out
}

// figure draws a body in metres about the head's axis, y toward the nose; s is mm for a metre.
type figure struct {
	brush
	s float64
}

// shoulders is the body from above.
func (f figure) shoulders(w, d float64) {
	f.Draw(f.open(Line), ellipse(vec(0, 0), w/2*f.s, d/2*f.s))
}

// legs are two, from y0 to y1.
func (f figure) legs(y0, y1 float64) {
	const apart, thick = 0.10, 0.08
	for _, side := range []float64{-1, 1} {
		f.Draw(f.open(Fine), ink.Capsule(vec(side*apart*f.s, y0*f.s), vec(side*apart*f.s, (y1-thick)*f.s), thick*f.s))
	}
}

// backrest is what someone propped leans on.
func (f figure) backrest() {
	f.Polyline(f.pen(Bold), vec(-0.25*f.s, -0.22*f.s), vec(0.25*f.s, -0.22*f.s))
}

// knees are drawn up before the body of someone crouching, heels under it.
func (f figure) knees() {
	for _, side := range []float64{-1, 1} {
		f.Draw(f.open(Fine), ink.Capsule(vec(side*0.09*f.s, 0), vec(side*0.17*f.s, 0.21*f.s), 0.075*f.s))
	}
}

// headRadius is that of a head from above, mm, at a scale in mm for a metre.
func headRadius(s float64) float64 { return max(0.09*s, 0.9) }

// head is a circle with a solid nose before it; a face that looks up has it in its middle.
func (f figure) head(level bool) {
	r := headRadius(f.s)
	if level {
		tip := r + 0.05*f.s + 0.8
		f.Polygon(f.solid(), vec(-0.62*r, 0.72*r), vec(0.62*r, 0.72*r), vec(0, tip))
	}
	f.Circle(f.open(Line), vec(0, 0), r)
	if !level {
		f.Circle(f.solid(), vec(0, 0), max(0.3*r, 0.35))
	}
}

// lying is someone on their back, from the crown to the feet along the bearing.
func (f figure) lying(height float64) Drawn {
	if height <= 0 {
		height = 1.7
	}
	feet := height - 0.12
	for _, side := range []float64{-1, 1} {
		f.Draw(f.open(Fine), ink.Capsule(vec(side*0.085*f.s, 0.7*f.s), vec(side*0.085*f.s, (feet-0.07)*f.s), 0.07*f.s))
	}
	f.Draw(f.open(Line), ink.RoundRect(vec(-0.22*f.s, 0.06*f.s), vec(0.22*f.s, 0.78*f.s), 0.12*f.s))
	f.head(false)
	return Drawn{Body: f.outline(-0.22*f.s, -0.12*f.s, 0.22*f.s, feet*f.s)}
}

// ellipse is a full one about a centre, counter-clockwise, in four cubics.
func ellipse(c r2.Vec, rx, ry float64) ink.Path {
	const k = 0.5522847498 // 4/3 tan(22.5°): within 0.03 % of a quarter circle
	at := func(x, y float64) r2.Vec { return vec(c.X+x*rx, c.Y+y*ry) }
	return ink.Path{}.MoveTo(at(1, 0)).
		CurveTo(at(1, k), at(k, 1), at(0, 1)).CurveTo(at(-k, 1), at(-1, k), at(-1, 0)).
		CurveTo(at(-1, -k), at(-k, -1), at(0, -1)).CurveTo(at(k, -1), at(1, -k), at(1, 0)).Close()
}
