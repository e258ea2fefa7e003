package explain

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/formfactor"
)

// lambertian is the light of an opening that has the same luminance from everywhere: what leaves a square metre of it, times
// a form factor.
func (x *explainer) lambertian(l *plan.Light, w *working, lux float64) {
	o := l.Head.Source.Opening
	x.incidence(w)
	switch o.Form {
	case photometry.Rectangle:
		x.rectangle(l, w)
	case photometry.Disc:
		x.disc(l, w)
	case photometry.Sphere:
		x.sphere(w, o)
	default:
		x.tube(l, w)
		w.worked("with nothing in the way, at full", "E0", "J × f", lux, "lx", "")
		return
	}
	w.worked("with nothing in the way, at full", "E0", "M × f", lux, "lx", "Lambert's law")
}

// exitance is what leaves a square metre of the opening.
func exitance(w *working, area string, value, flux float64) {
	w.worked("area of its opening", "A", area, value, "m²", "")
	w.worked("what leaves a square metre of it", "M", "F / A", flux/value, "lm/m²", "")
}

// rectangle is the form factor of a face by Lambert's contour sum: what each edge subtends, in degrees, by the cosine of the
// facing with the normal of the plane through the edge and the reading.
func (x *explainer) rectangle(l *plan.Light, w *working) {
	o := l.Head.Source.Opening
	w.given("width of its face", "W", o.Width, "m", "catalogue or scene")
	w.given("height of its face", "H", o.Height, "m", "catalogue or scene")
	exitance(w, "W × H", o.Surface(), l.Head.Source.Flux)
	corners := faceCorners(l)
	if x.receptor.Response == light.Dome {
		cornerSteps(w, corners, x.receptor.At)
		w.given("form factor for the dome, of the face with these corners", "f", formfactor.PolygonDome(corners, x.receptor.At, x.receptor.Axis)/math.Pi, "", closedForm)
		return
	}
	formula, sum := "", 0.0
	for i, e := range edgesBefore(corners, x.receptor.At, x.receptor.Axis) {
		angle, tilt := "a"+strconv.Itoa(i+1), "g"+strconv.Itoa(i+1)
		w.given("an edge of what lies before the reading subtends", angle, e.degrees, "°", "")
		w.given("cosine of the facing with the normal of its plane", tilt, e.cosine, "", "")
		if formula != "" {
			formula += " + "
		}
		formula += angle + " × " + tilt
		sum += e.degrees * e.cosine
	}
	w.worked("form factor", "f", "("+formula+") / 360", sum/360, "", contour)
}

// faceCorners are the corners of a face, counter-clockwise as seen from before it.
func faceCorners(l *plan.Light) []r3.Vec {
	w, h := l.Head.Source.Opening.Width/2, l.Head.Source.Opening.Height/2
	place := func(right, up float64) r3.Vec { return l.Frame.Place(r3.Vec{X: right, Y: up}) }
	return []r3.Vec{place(-w, -h), place(-w, h), place(w, h), place(w, -h)}
}

// cornerSteps note corners as they lie from the reading.
func cornerSteps(w *working, corners []r3.Vec, at r3.Vec) {
	for i, p := range corners {
		from := r3.Sub(p, at)
		number := strconv.Itoa(i + 1)
		w.given("a corner from the reading, across the sheet", "x"+number, from.X, "m", "")
		w.given("up the sheet", "y"+number, from.Y, "m", "")
		w.given("upward", "z"+number, from.Z, "m", "")
	}
}

// edge is an edge of a figure as a reading sees it.
type edge struct{ degrees, cosine float64 }

// edgesBefore are the edges of the part of a figure that lies before the plane of a reading.
func edgesBefore(corners []r3.Vec, at, axis r3.Vec) (edges []edge) {
	seen := before(corners, at, axis)
	for i := range seen {
		a, b := seen[(i+1)%len(seen)], seen[i]
		n := r3.Cross(a, b)
		sin := r3.Norm(n)
		if sin == 0 {
			continue
		}
		edges = append(edges, edge{math.Atan2(sin, r3.Dot(a, b)) * 180 / math.Pi, r3.Dot(n, axis) / sin})
	}
	return edges
}

// before is the part of a figure before the plane of a reading, as it lies from there.
func before(corners []r3.Vec, at, axis r3.Vec) (part []r3.Vec) {
	for i := range corners {
		a, b := r3.Sub(corners[i], at), r3.Sub(corners[(i+1)%len(corners)], at)
		ha, hb := r3.Dot(a, axis), r3.Dot(b, axis)
		if ha > 0 {
			part = append(part, a)
		}
		if (ha > 0) != (hb > 0) {
			part = append(part, r3.Add(a, r3.Scale(ha/(ha-hb), r3.Sub(b, a))))
		}
	}
	return part
}

// disc is the form factor of a disc, by its middle, its axis and its diameter.
func (x *explainer) disc(l *plan.Light, w *working) {
	o := l.Head.Source.Opening
	w.given("diameter of its disc", "D", o.Width, "m", "catalogue or scene")
	exitance(w, "π × D² / 4", o.Surface(), l.Head.Source.Flux)
	axisSteps(w, "its axis", l.Frame.Axis)
	c := formfactor.Circle{Centre: l.Frame.At, Normal: l.Frame.Axis, Radius: o.Width / 2}
	if x.receptor.Response == light.Dome {
		w.given("form factor for the dome, of the disc about that axis", "f", formfactor.DiscDome(c, x.receptor.At, x.receptor.Axis)/math.Pi, "", closedForm)
		return
	}
	w.given("form factor of the disc about that axis", "f", formfactor.Disc(c, x.receptor.At, x.receptor.Axis)/math.Pi, "", contour)
}

// axisSteps note a direction.
func axisSteps(w *working, words string, a r3.Vec) {
	w.given(words+", across the sheet", "m", a.X, "", "")
	w.given("up the sheet", "n", a.Y, "", "")
	w.given("upward", "o", a.Z, "", "")
}

// sphere is the form factor of a sphere, by its distance and its diameter.
func (x *explainer) sphere(w *working, o photometry.Opening) {
	w.given("diameter of its sphere", "D", o.Width, "m", "catalogue or scene")
	exitance(w, "π × D²", o.Surface(), w.known["F"])
	d, c, dome := w.known["d"], w.known["c"], x.receptor.Response == light.Dome
	share := o.Width / 2 / d
	lamp := r3.Add(x.receptor.At, r3.Vec{X: w.known["x"], Y: w.known["y"], Z: w.known["z"]})
	switch {
	case dome:
		f := formfactor.SphereDome(lamp, o.Width/2, x.receptor.At, x.receptor.Axis) / math.Pi
		w.worked("form factor for the dome", "f", "1 - sqrt(1 - (D / 2 / d)²) + c × (D / 2 / d)² / 2", f, "", closedForm)
	case c >= share:
		w.worked("form factor", "f", "c × (D / 2 / d)²", c*share*share, "", closedForm)
	default:
		f := formfactor.Sphere(lamp, o.Width/2, x.receptor.At, x.receptor.Axis) / math.Pi
		w.given("form factor of what rises over the plane of the reading", "f", f, "", closedForm)
	}
}

// tube is the light of a tube as a line, by its ends.
func (x *explainer) tube(l *plan.Light, w *working) {
	o := l.Head.Source.Opening
	w.given("length of its tube", "W", o.Width, "m", "catalogue or scene")
	w.worked("intensity of a metre of it, square to it", "J", "F / (π² × W)", l.Head.Source.Flux/(math.Pi*math.Pi*o.Width), "cd/m", "Lambert's law about a line")
	axisSteps(w, "which way it lies", l.Frame.Right)
	half := r3.Scale(o.Width/2, l.Frame.Right)
	a, b := r3.Sub(l.Frame.At, half), r3.Add(l.Frame.At, half)
	if x.receptor.Response == light.Dome {
		w.given("what the dome takes of a tube of 1 cd/m", "f", formfactor.LineDome(a, b, x.receptor.At, x.receptor.Axis), "1/m", closedForm)
		return
	}
	w.given("what the plane takes of a tube of 1 cd/m", "f", formfactor.Line(a, b, x.receptor.At, x.receptor.Axis), "1/m", closedForm)
}
