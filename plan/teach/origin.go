package teach

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
)

// origin is where the light of a lamp comes from, as a face sees it.
type origin struct {
	by      string   // what it comes off, through or by; "" the lamp itself
	path    string   // and how
	part    float64  // share of what the lamp gives the reading that comes so
	at      *r3.Vec  // m; nil where it has no one place
	outline []r3.Vec // what is seen of it, m; none of a point
	round   float64  // the diameter of a sphere, m; 0 of all else
}

// originOf is where most of the light that a lamp gives to a reading comes from: the lamp, or the last surface.
func (t *teacher) originOf(l *plan.Light, r *meter.Reading) origin {
	type way struct{ path, from string }
	by := map[way]float64{}
	var most way
	for _, s := range r.Shares {
		if s.Light != l.Name {
			continue
		}
		w := way{s.Path, s.From}
		if by[w] += s.Lux; by[w] > by[most] {
			most = w
		}
	}
	part := by[most] / given(r, l.Name)
	if most.path == light.Direct.String() || most.from == "" {
		at := l.Frame.At
		outline, round := outlineOf(l)
		return origin{at: &at, outline: outline, round: round}
	}
	o := t.surface(most.from)
	if len(t.carriedBy(l, most.from)) > 0 {
		o.by = "" // its own diffusion is its front
		return o
	}
	if most.path == light.Mirrored.String() {
		t.mirror(&o, l)
	}
	o.path, o.part = most.path, part
	return o
}

// surface is a sheet of the set by its name, as of a card, a cloth or a mirror, or the top of a piece of furniture; walls and
// floors have no one place.
func (t *teacher) surface(name string) origin {
	o := origin{by: name}
	for i := range t.study.Setup.Set.Sheets {
		if s := &t.study.Setup.Set.Sheets[i]; s.Name == name {
			o.outline = append(o.outline, s.Corners...)
		}
	}
	if f := t.study.Setup.PieceNamed(name); f != nil && len(o.outline) == 0 {
		for i := range f.Parts {
			if part := &f.Parts[i]; part.Z1 >= f.Z1 {
				for _, q := range part.Outline {
					o.outline = append(o.outline, plan.AtHeight(q, f.Z1))
				}
			}
		}
	}
	if len(o.outline) > 0 {
		middle := r3.Vec{}
		for _, p := range o.outline {
			middle = r3.Add(middle, r3.Scale(1/float64(len(o.outline)), p))
		}
		o.at = &middle
	}
	return o
}

// mirror puts the image of a lamp in a flat mirror in place of the mirror: that is what a face sees in it. What shines on in a
// lobe, as off a silver board, is as large as the board.
func (t *teacher) mirror(o *origin, l *plan.Light) {
	for i := range t.study.Setup.Set.Sheets {
		s := &t.study.Setup.Set.Sheets[i]
		if s.Name != o.by || len(s.Corners) < 3 || max(s.Front.Mirror, s.Back.Mirror) == 0 || max(s.Front.Lobe, s.Back.Lobe) > 0 {
			continue
		}
		normal := r3.Unit(r3.Cross(r3.Sub(s.Corners[1], s.Corners[0]), r3.Sub(s.Corners[2], s.Corners[0])))
		across := func(p r3.Vec) r3.Vec {
			return r3.Sub(p, r3.Scale(2*r3.Dot(r3.Sub(p, s.Corners[0]), normal), normal))
		}
		at := across(l.Frame.At)
		o.at = &at
		o.outline, o.round = outlineOf(l)
		for k, p := range o.outline {
			o.outline[k] = across(p)
		}
		return
	}
}

// roundSides is how many corners stand for the rim of a disc.
const roundSides = 48

// outlineOf are the corners of the opening of a light, m; none of a point. Of a sphere it gives the diameter alone.
func outlineOf(l *plan.Light) (corners []r3.Vec, round float64) {
	o := l.Head.Source.Opening
	w, h := o.Width/2, o.Height/2
	var flat []r3.Vec // in the frame of the light
	switch o.Form {
	case photometry.Sphere:
		return nil, o.Width
	case photometry.Disc:
		for i := range roundSides {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / roundSides)
			flat = append(flat, r3.Vec{X: w * cos, Y: w * sin})
		}
	case photometry.Rectangle, photometry.Tube:
		flat = []r3.Vec{{X: -w, Y: -h}, {X: w, Y: -h}, {X: w, Y: h}, {X: -w, Y: h}}
	case photometry.Lampshade: // about the axis
		for _, z := range [...]float64{-h, h} {
			flat = append(flat, r3.Vec{X: -w, Z: z}, r3.Vec{X: w, Z: z}, r3.Vec{Y: -w, Z: z}, r3.Vec{Y: w, Z: z})
		}
	}
	for _, p := range flat {
		corners = append(corners, l.Frame.Place(p))
	}
	return corners, 0
}

// place fills in where the light of a lesson comes from.
func (t *teacher) place(l *meter.LessonLight, o origin) {
	l.By, l.Path, l.Part, l.At = o.by, o.path, o.part, o.at
	if o.at == nil {
		return
	}
	way := r3.Sub(*o.at, t.person.Face.At)
	l.Distance = r3.Norm(way)
	if l.Distance == 0 {
		l.At = nil // it stands in the face, and no angle says where
		return
	}
	flat := plan.InPlan(way)
	l.Height = degrees(math.Atan2(way.Z, r2.Norm(flat)))
	if r2.Norm(flat) > overhead {
		l.Turn = degrees(math.Atan2(r2.Dot(flat, t.right), r2.Dot(flat, t.ahead)))
	}
	l.FromNose = t.fromNose(way)
	l.Wide, l.High = extent(o, t.person.Face.At, r3.Unit(way), l.Distance)
}

// fromNose is how far a way from the face lies off the nose about the axis of the head, degrees, plus to own right: somebody
// lying has the axis of the head level.
func (t *teacher) fromNose(way r3.Vec) float64 {
	right, ahead := r3.Dot(way, t.person.Face.Right), r3.Dot(way, t.person.Face.Axis)
	if math.Hypot(right, ahead) < overhead {
		return 0
	}
	return degrees(math.Atan2(right, ahead))
}

func degrees(radians float64) float64 { return radians * 180 / math.Pi }

// extent is how wide and high an outline looks from a place, degrees, about the way to its middle.
func extent(o origin, from, way r3.Vec, distance float64) (wide, high float64) {
	if o.round > 0 {
		across := 2 * degrees(math.Asin(math.Min(1, o.round/2/distance))) // of the cone that touches it
		return across, across
	}
	level := r3.Cross(way, r3.Vec{Z: 1})
	if r3.Norm(level) < 1e-9 {
		level = r3.Vec{X: 1}
	}
	level = r3.Unit(level)
	return span(o.outline, from, way, level), span(o.outline, from, way, r3.Cross(level, way))
}

// span is how far an outline reaches along one direction as seen from a place, degrees.
func span(outline []r3.Vec, from, way, along r3.Vec) float64 {
	if len(outline) == 0 {
		return 0
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		d := r3.Sub(p, from)
		angle := math.Atan2(r3.Dot(d, along), r3.Dot(d, way))
		least, most = math.Min(least, angle), math.Max(most, angle)
	}
	return degrees(most - least)
}
