package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/symbols/ink"
)

// headView is a head as the lens sees it, with what of it each light reaches: an egg with a nose and eyes, by the rule of the
// symbols that people are outlines and the nose is their darkest part.
type headView struct {
	*Lesson
	centre      r2.Vec     // mm
	picture     plan.Frame // of the camera, or of who stands before the face
	face        plan.Frame
	upright     r2.Vec // the head's own up, in the picture
	wide, high  float64
	lit, shadow ink.Colour
}

// Sizes of the head, mm, and how far its lights are lettered off it.
const (
	eggWide    = 14.0
	eggHigh    = 18.0
	eggAround  = 6.0
	eggLightIn = 2.2
)

// newHeadView is the view of the head about a place.
func (l *Lesson) newHeadView(p Pad, centre r2.Vec) headView {
	who := l.In.Setup.Post(l.Person)
	h := headView{Lesson: l, centre: centre, face: who.Face, wide: eggWide, high: eggHigh}
	if c := l.In.Setup.CameraPost(l.Camera); c != nil {
		h.picture = plan.FrameAlong(c.Frame.At, r3.Sub(who.Face.At, c.Frame.At), 0, 0)
	} else {
		h.picture = plan.Frame{At: who.Face.At, Axis: r3.Scale(-1, who.Face.Axis), Right: r3.Scale(-1, who.Face.Right)}
	}
	h.upright = r2.Vec{Y: 1}
	if up := h.inPicture(who.Face.Up()); math.Hypot(up.X, up.Y) > 0.2 {
		h.upright = r2.Unit(r2.Vec{X: up.X, Y: up.Y})
	}
	h.lit, h.shadow = p.Look.Paper, mixed(p.Look.Paper, p.Look.Ink, 0.55)
	if luma(p.Look.Paper) < luma(p.Look.Ink) {
		h.lit, h.shadow = mixed(p.Look.Paper, p.Look.Ink, 0.7), p.Look.Paper
	}
	return h
}

// inPicture is a direction in the picture: right, up and toward the lens.
func (h *headView) inPicture(d r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(d, h.picture.Right), Y: r3.Dot(d, h.picture.Up()), Z: -r3.Dot(d, h.picture.Axis)}
}

// inHead turns a direction of the picture so that up is the head's own; onPaper turns a place about the middle of the head back.
func (h *headView) inHead(d r3.Vec) r3.Vec {
	return r3.Vec{X: d.X*h.upright.Y - d.Y*h.upright.X, Y: d.X*h.upright.X + d.Y*h.upright.Y, Z: d.Z}
}

func (h *headView) onPaper(q r2.Vec) r2.Vec {
	return r2.Add(h.centre, r2.Vec{X: q.X*h.upright.Y + q.Y*h.upright.X, Y: -q.X*h.upright.X + q.Y*h.upright.Y})
}

// light is the direction to a light in the head, on the sphere that the egg is a stretched picture of; ok is false for one
// without a place.
func (h *headView) light(t *meter.LessonLight) (d r3.Vec, ok bool) {
	if t.At == nil {
		return d, false
	}
	way := r3.Unit(r3.Sub(*t.At, h.face.At))
	d = h.inHead(h.inPicture(way))
	return r3.Unit(r3.Vec{X: d.X / h.wide, Y: d.Y / h.high, Z: d.Z / h.wide}), true
}

// outlineSteps is in how many parts the rim of the head and an edge of light are drawn.
const outlineSteps = 36

// rim is the outline of the head.
func (h *headView) rim() (all []r2.Vec) {
	for i := range 2 * outlineSteps {
		sin, cos := math.Sincos(math.Pi * float64(i) / outlineSteps)
		all = append(all, h.onPaper(r2.Vec{X: h.wide * cos, Y: h.high * sin}))
	}
	return all
}

// terminator is the edge of what a light reaches, across the head, and reached the outline of that.
func (h *headView) terminator(d r3.Vec) (edge, reached []r2.Vec) {
	flat := r2.Vec{X: d.X, Y: d.Y}
	if r2.Norm(flat) < 1e-9 {
		flat = r2.Vec{X: 1e-9}
	}
	way := r2.Unit(flat)
	side := r2.Vec{X: -way.Y, Y: way.X}
	at := func(q r2.Vec) r2.Vec { return h.onPaper(r2.Vec{X: q.X * h.wide, Y: q.Y * h.high}) }
	for i := 0; i <= outlineSteps; i++ {
		sin, cos := math.Sincos(math.Pi * float64(i) / outlineSteps)
		edge = append(edge, at(r2.Add(r2.Scale(cos, side), r2.Scale(-sin*d.Z, way))))
		reached = append(reached, at(r2.Add(r2.Scale(-cos, side), r2.Scale(sin, way))))
	}
	return edge, append(reached, edge...)
}

// feature is a place of the face on paper, by how far it lies to own right, up and ahead of the middle of the head; seen says
// whether the lens sees it.
func (h *headView) feature(right, up, ahead float64) (q r2.Vec, seen bool) {
	d := r3.Add(r3.Scale(ahead, h.face.Axis), r3.Add(r3.Scale(right, h.face.Right), r3.Scale(up, h.face.Up())))
	v := h.inHead(h.inPicture(r3.Unit(d)))
	return h.onPaper(r2.Vec{X: v.X * h.wide, Y: v.Y * h.high}), v.Z > 0.1
}

// The features of a face about the middle of the head: to own right, up, and ahead.
var (
	eyeAt  = [3]float64{0.36, 0.02, 0.93}
	noseAt = [...][3]float64{{0, 0, 1}, {-0.12, -0.34, 0.93}, {0.12, -0.34, 0.93}}
)

// featurePlaces are places on the nose and the eyes that lettering keeps off.
func (h *headView) featurePlaces() (all []r2.Vec) {
	for _, side := range [...]float64{-1, 1} {
		if q, seen := h.feature(side*eyeAt[0], eyeAt[1], eyeAt[2]); seen {
			all = append(all, q)
		}
	}
	for i := range noseAt {
		a, b := noseAt[i], noseAt[(i+1)%len(noseAt)]
		for _, share := range [...]float64{0, 0.33, 0.67} {
			at := func(k int) float64 { return a[k] + share*(b[k]-a[k]) }
			if q, seen := h.feature(at(0), at(1), at(2)); seen {
				all = append(all, q)
			}
		}
	}
	return all
}

// mixed is a colour between two, by share of the second.
func mixed(a, b ink.Colour, share float64) ink.Colour {
	mix := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + share*(float64(y)-float64(x)))) }
	return ink.Colour{R: mix(a.R, b.R), G: mix(a.G, b.G), B: mix(a.B, b.B)}
}

// luma is about how light a colour is.
func luma(c ink.Colour) int { return int(c.R) + int(c.G) + int(c.B) }
