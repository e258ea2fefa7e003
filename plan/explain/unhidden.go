package explain

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
)

// unhidden is the light of a lamp with nothing in its way.
type unhidden struct {
	*working
	why string // there is none
}

// The sources of the lines.
const (
	inverseSquare = "inverse square and cosine law"
	pythagoras    = "Pythagoras"
	scalarProduct = "scalar product"
	domeLaw       = "an incident dome weighs by (1 + cosine) / 2"
	integrated    = "summed over the opening by the engine"
	distribution  = "its distribution"
	contour       = "Lambert's contour sum, closed form"
	closedForm    = "closed form"
)

// unhidden finds what a lamp would give if nothing stood in the way, not even its own barn doors.
func (x *explainer) unhidden(l *plan.Light, e *light.Emitter, w *working) unhidden {
	alone := *e
	alone.Screens = nil
	one := light.Levels{e.Name: colour.RGB{1, 1, 1}}
	lux := x.empty.Evaluator([]light.Emitter{alone}, one)(x.receptor)
	u := unhidden{working: w}
	x.toMiddle(l, w)
	switch {
	case !(lux > 0):
		u.why = x.whyDark(l)
		w.given("with nothing in the way, at full", "E0", 0, "lx", "")
	case lambertian(&l.Head.Source):
		x.lambertian(l, w, lux)
	default:
		x.fromMiddle(l, w, lux)
	}
	return u
}

// lambertian says whether an opening has a closed form: the same luminance from everywhere.
func lambertian(s *photometry.Source) bool {
	o := s.Opening
	if o.Form == photometry.Point || o.Form == photometry.Lampshade || !(o.Width > 0) || o.Form == photometry.Rectangle && !(o.Height > 0) {
		return false
	}
	return s.Distribution == photometry.Lambertian(o.Form)
}

// whyDark says why a lamp gives a reading nothing although nothing hides it.
func (x *explainer) whyDark(l *plan.Light) string {
	way := r3.Sub(x.receptor.At, l.Frame.At)
	switch {
	case x.receptor.Response == light.Radiance:
		return "the spot looks at no surface"
	case x.receptor.Response == light.Cosine && r3.Dot(way, x.receptor.Axis) >= 0:
		return "it shines on the back of what is read"
	case r3.Dot(way, l.Frame.Axis) <= 0:
		return "the reading lies behind it"
	}
	return "no light of its beam goes there"
}

// toMiddle is the way from the reading to the middle of a lamp.
func (x *explainer) toMiddle(l *plan.Light, w *working) {
	way := r3.Sub(l.Frame.At, x.receptor.At)
	w.known["u"], w.known["v"], w.known["w"] = x.receptor.Axis.X, x.receptor.Axis.Y, x.receptor.Axis.Z
	w.given("from the reading to its middle, across the sheet", "x", way.X, "m", "")
	w.given("up the sheet", "y", way.Y, "m", "")
	w.given("upward", "z", way.Z, "m", "")
	d := r3.Norm(way)
	w.worked("distance", "d", "sqrt(x² + y² + z²)", d, "m", pythagoras)
}

// incidence is the cosine of the way with what the reading faces, and its weight there.
func (x *explainer) incidence(w *working) (weight string) {
	d := w.known["d"]
	if !(d > 0) {
		return ""
	}
	c := (w.known["x"]*w.known["u"] + w.known["y"]*w.known["v"] + w.known["z"]*w.known["w"]) / d
	w.worked("incidence: cosine of the way with the facing", "c", "(x × u + y × v + z × w) / d", c, "", scalarProduct)
	w.worked("angle of incidence", "", "acos(c)", math.Acos(max(-1, min(1, c)))*180/math.Pi, "°", "")
	if x.receptor.Response != light.Dome {
		return "c"
	}
	w.worked("weight of the dome", "h", "(1 + c) / 2", (1+c)/2, "", domeLaw)
	return "h"
}

// fromMiddle is the light as from the middle of the opening, and what its extent makes of that.
func (x *explainer) fromMiddle(l *plan.Light, w *working, lux float64) {
	weight := x.incidence(w)
	if weight == "" || !(w.known[weight] > 0) {
		w.given("with nothing in the way, at full", "E0", lux, "lx", integrated)
		return
	}
	intensity := toward(l, w)
	d := w.known["d"]
	point := intensity * w.known[weight] / (d * d)
	if l.Head.Source.Opening.Form == photometry.Point || !(point > 0) {
		x.pointOrSum(w, weight, point, lux)
		return
	}
	w.worked("as from a point in its middle", "P", "I × "+weight+" / d²", point, "lx", inverseSquare)
	w.given("what the size of its opening makes of that", "s", lux/point, "", integrated)
	w.worked("with nothing in the way, at full", "E0", "P × s", lux, "lx", "")
}

// pointOrSum is the light of a point, or of an opening of which the middle sends nothing here.
func (x *explainer) pointOrSum(w *working, weight string, point, lux float64) {
	if point > 0 {
		w.worked("with nothing in the way, at full", "E0", "I × "+weight+" / d²", lux, "lx", inverseSquare)
		return
	}
	w.given("with nothing in the way, at full", "E0", lux, "lx", integrated)
}

// toward is the intensity toward the reading, cd.
func toward(l *plan.Light, w *working) float64 {
	s := &l.Head.Source
	d := w.known["d"]
	way := r3.Scale(-1/d, r3.Vec{X: w.known["x"], Y: w.known["y"], Z: w.known["z"]})
	share := s.Distribution.Candela(l.Frame.Local(way))
	switch f := s.Distribution.(type) {
	case photometry.Uniform:
		w.worked("intensity of a lumen, the same all round", "i", "1 / (4 × π)", share, "cd/lm", "closed form")
	case *photometry.Lobe:
		lobeSteps(l, f, w, way, share)
	case photometry.Cosine:
		angleOff(l, w, way)
		w.worked("intensity of a lumen toward the reading", "i", "cos(t) / π", share, "cd/lm", "Lambert's law")
	default:
		angleOff(l, w, way)
		w.given("intensity of a lumen toward the reading", "i", share, "cd/lm", distribution)
	}
	w.worked("intensity toward the reading", "I", "F × i", s.Flux*share, "cd", "")
	return s.Flux * share
}

// angleOff is the angle between the axis of a lamp and the way to the reading.
func angleOff(l *plan.Light, w *working, way r3.Vec) {
	a := l.Frame.Axis
	w.given("its axis, across the sheet", "m", a.X, "", "where it is aimed")
	w.given("up the sheet", "n", a.Y, "", "")
	w.given("upward", "o", a.Z, "", "")
	cos := max(-1, min(1, r3.Dot(way, a)))
	w.worked("angle off its axis", "t", "acos((-x × m - y × n - z × o) / d)", math.Acos(cos)*180/math.Pi, "°", scalarProduct)
}

// lobeSteps are the intensity of a lobe.
func lobeSteps(l *plan.Light, f *photometry.Lobe, w *working, way r3.Vec, share float64) {
	angleOff(l, w, way)
	peak, half, power := f.Figures()
	w.given("intensity of a lumen on the axis", "p", peak, "cd/lm", "so that the lobe holds one lumen")
	w.given("half the beam angle", "b", half, "°", "catalogue or scene")
	w.given("how steeply it falls, by the field angle", "e", power, "", "10 % at half the field angle")
	if share == 0 {
		w.given("intensity of a lumen toward the reading", "i", 0, "cd/lm", "past the edge of its face")
		return
	}
	w.worked("intensity of a lumen toward the reading", "i", "p × 2^-((t / b)^e)", share, "cd/lm", "the lobe through its 50 % and 10 % angles")
}
