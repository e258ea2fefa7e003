package passing

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// seen is what the light itself comes from: by the way by which most comes.
func (p *passer) seen() seenLight {
	straight := p.straight(p.light.Name)
	every, _ := p.given(func(t *light.Term) bool { return t.Light == p.light.Name })
	switch {
	case !(every.Y() > 0):
		return p.seenLamp(p.light)
	case straight.Y() < bounceShare*every.Y():
		return p.bounced()
	}
	path, by := p.mostStraight()
	switch sheet := p.lit.sheet(by); {
	case path == light.Diffused && sheet != nil:
		return p.seenCloth(sheet)
	case path == light.Mirrored && sheet != nil:
		return p.seenIn(sheet)
	}
	return p.seenLamp(p.light)
}

// mostStraight is the way by which most of the light comes that no surface scatters.
func (p *passer) mostStraight() (path light.Path, by solid.ID) {
	most := 0.0
	for i := range p.lit.Basis.Terms {
		t := &p.lit.Basis.Terms[i]
		if t.Light != p.light.Name || t.Path == light.Reflected {
			continue
		}
		sum, _ := p.given(func(o *light.Term) bool { return o == t })
		if y := sum.Y(); y > most {
			most, path, by = y, t.Path, t.From
		}
	}
	return path, by
}

// sheet is the sheet of an identity, or nil.
func (s *Lit) sheet(id solid.ID) *solid.Sheet {
	for i := range s.Setup.Set.Sheets {
		if s.Setup.Set.Sheets[i].ID == id {
			return &s.Setup.Set.Sheets[i]
		}
	}
	return nil
}

// seenIn is the lamp as a mirror shows it: its image behind the mirror.
func (p *passer) seenIn(mirror *solid.Sheet) seenLight {
	c := mirror.Corners
	normal := r3.Unit(r3.Cross(r3.Sub(c[1], c[0]), r3.Sub(c[2], c[0])))
	image := func(at r3.Vec) r3.Vec { return r3.Sub(at, r3.Scale(2*r3.Dot(r3.Sub(at, c[0]), normal), normal)) }
	l := *p.light
	f := l.Frame
	l.Frame = plan.Frame{At: image(f.At), Axis: r3.Sub(image(r3.Add(f.At, f.Axis)), image(f.At)), Right: r3.Sub(image(r3.Add(f.At, f.Right)), image(f.At))}
	return p.seenLamp(&l)
}

// discSides is how many sides the polygon has that stands for a round opening.
const discSides = 48

// seenLamp is a lamp by the opening that its light leaves by, with nothing in the way: of one that counts as a point its lens or mouth; a tube and
// a shade as the rectangles that they look like from the face.
func (p *passer) seenLamp(l *plan.Light) seenLight {
	o, f, face := l.Head.Source.Opening, l.Frame, p.post.Face.At
	toward := p.toward(f.At)
	switch o.Form {
	case photometry.Sphere:
		return seenLight{toward, photometry.SphereSolidAngle(o.Width/2, r3.Norm(r3.Sub(f.At, face)))}
	case photometry.Rectangle:
		return seenLight{toward, photometry.SolidAngle(face, rectangleAbout(f.At, f.Right, f.Up(), o.Width, o.Height))}
	case photometry.Tube:
		return seenLight{toward, photometry.SolidAngle(face, p.standing(f.At, f.Right, o.Width, o.Height))}
	case photometry.Lampshade:
		return seenLight{toward, photometry.SolidAngle(face, p.standing(f.At, f.Axis, o.Height, o.Width))}
	}
	width := max(o.Width, l.Head.Aperture)
	if l.Head.AllRound() {
		return seenLight{toward, photometry.SphereSolidAngle(width/2, r3.Norm(r3.Sub(f.At, face)))}
	}
	return seenLight{toward, photometry.SolidAngle(face, discAbout(f, width))}
}

// seenCloth is a lit cloth: of the diffusion before a head what it hangs before, of that about a head all sides of it together.
func (p *passer) seenCloth(cloth *solid.Sheet) seenLight {
	own := p.light.Name + "."
	if !strings.HasPrefix(cloth.Name, own) {
		return p.seenFigure(cloth.Corners)
	}
	sum, sides := 0.0, 0
	for i := range p.lit.Setup.Set.Sheets {
		if s := &p.lit.Setup.Set.Sheets[i]; strings.HasPrefix(s.Name, own) {
			sum += photometry.SolidAngle(p.post.Face.At, s.Corners)
			sides++
		}
	}
	if sides > 1 { // a closed box, of which each way meets two sides
		sum /= 2
	}
	return seenLight{p.toward(p.light.Frame.At), sum}
}

// rectangleAbout is a rectangle about a place.
func rectangleAbout(at, across, up r3.Vec, width, height float64) []r3.Vec {
	x, y := r3.Scale(width/2, across), r3.Scale(height/2, up)
	return []r3.Vec{r3.Sub(r3.Sub(at, x), y), r3.Sub(r3.Add(at, x), y), r3.Add(r3.Add(at, x), y), r3.Add(r3.Sub(at, x), y)}
}

// discAbout is a disc about the place of a frame, square to its axis, by a polygon of the same area.
func discAbout(f plan.Frame, width float64) (corners []r3.Vec) {
	radius := width / 2 * math.Sqrt(2*math.Pi/discSides/math.Sin(2*math.Pi/discSides))
	for i := range discSides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / discSides)
		corners = append(corners, f.Place(r3.Vec{X: radius * cos, Y: radius * sin}))
	}
	return corners
}

// standing is a rectangle of a length along a direction that is as wide as it can be seen from the face.
func (p *passer) standing(at, along r3.Vec, length, width float64) []r3.Vec {
	across := r3.Cross(along, p.toward(at))
	if n := r3.Norm(across); n > 0 {
		across = r3.Scale(1/n, across)
	}
	return rectangleAbout(at, across, along, width, length)
}

// bounceRays is how many ways of a lamp's light are followed to find what it lights.
const bounceRays = 8192

// bounced is what of the surfaces that the lamp lights is seen from the face: toward its middle by the light that comes from there,
// under the solid angle of an even light that is as bright by the mean over its own light. Ways start at the middle of the lamp, denser
// about its axis.
func (p *passer) bounced() seenLight {
	l := p.light
	var sum r3.Vec
	flux, bright := 0.0, 0.0
	for k := range bounceRays {
		d, around := way(l, k)
		candela := l.Head.Source.Intensity(l.Frame.Local(d))
		if !(candela > 0) {
			continue
		}
		if toward, given, luminance, ok := p.sentOn(d, candela, around); ok {
			sum = r3.Add(sum, r3.Scale(given, toward))
			flux, bright = flux+given, bright+given*luminance
		}
	}
	if r3.Norm(sum) == 0 {
		return p.seenLamp(l)
	}
	return seenLight{r3.Unit(sum), flux * flux / bright}
}

// way is one of the ways of a lamp's light, and the solid angle, sr, that it counts for: on a spiral about the axis, at even steps of
// the root of the angle from it.
func way(l *plan.Light, k int) (d r3.Vec, around float64) {
	angle := func(t float64) float64 { return math.Pi * t * t }
	const golden = 2.399963229728653 // radians, pi (3 - root of 5)
	sin, cos := math.Sincos(angle((float64(k) + 0.5) / bounceRays))
	y, x := math.Sincos(golden * float64(k))
	d = r3.Add(r3.Scale(cos, l.Frame.Axis), r3.Add(r3.Scale(sin*x, l.Frame.Right), r3.Scale(sin*y, l.Frame.Up())))
	return d, 2 * math.Pi * (math.Cos(angle(float64(k)/bounceRays)) - math.Cos(angle(float64(k+1)/bounceRays)))
}

// sentOn is what a way of light gives to the face off the surface that it meets: whence, how much, and how bright the place is there, in
// the same measure.
func (p *passer) sentOn(d r3.Vec, candela, around float64) (toward r3.Vec, given, luminance float64, ok bool) {
	bvh, from, face := p.lit.BVH, p.light.Frame.At, p.post.Face.At
	h, met := bvh.FirstOpaque(from, d, p.lit.Setup.Bars())
	if !met || h.T <= 0 {
		return r3.Vec{}, 0, 0, false
	}
	at := r3.Add(from, r3.Add(r3.Scale(h.T, d), r3.Scale(2*bvh.Epsilon(), h.Normal)))
	out := r3.Sub(face, at)
	distance := r3.Norm(out)
	leaves := r3.Dot(out, h.Normal) / distance
	if !(leaves > 0) || bvh.Blocked(at, face, p.post.Own) {
		return r3.Vec{}, 0, 0, false
	}
	returned := candela * h.Skin.Matt().Y()
	given = returned * around * leaves / (distance * distance)
	luminance = returned * -r3.Dot(d, h.Normal) / (h.T * h.T)
	return r3.Scale(-1/distance, out), given, luminance, given > 0
}
