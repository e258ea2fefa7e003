package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// The dashes of the 10 % beam and the dash-dot of what a camera sees (ISO 128-2 nos. 02 and 10, at
// proportions that show at arm's length), mm.
var (
	fieldDash = []float64{2.4, 1.4}
	viewDash  = []float64{5, 1.1, 0.5, 1.1}
)

// drawBeams draws the wedges of the lights in their own colours: to half the intensity in full
// lines, to a tenth in dashes.
func (c beams) drawBeams(p Pad, v layout.View) {
	whole, stubs := c.beamed()
	for _, b := range whole {
		l := c.In.Setup.LightNamed(b.Light)
		q := p.On(ink.Beams).of("light:"+l.Name, "")
		colour := c.Pad.beam(section.LampColour(l))
		half, tenth := c.beamLines(l, b, v)
		c.fill(p, v, l, b)
		for _, edge := range half {
			c.band(p.On(ink.Wedges).of("light:"+l.Name, ""), v, l, b.Half, edge)
		}
		for _, edge := range tenth {
			c.within(q, v, p.Look.fieldPen(colour), edge)
			c.usedOf(beamTenth, l)
		}
		for _, edge := range half {
			c.within(q, v, p.Look.beamPen(colour), edge)
			c.usedOf(beamHalf, l)
		}
	}
	for _, l := range stubs {
		c.stub(p.On(ink.Beams).of("light:"+l.Name, ""), v, l)
	}
}

// beamed are the beams that are drawn whole, and the lights that have a stub instead. A light that is off has neither.
func (c beams) beamed() (whole []*section.Beam, stubs []*plan.Light) {
	for i := range c.In.Beams {
		b := &c.In.Beams[i]
		switch l := c.In.Setup.LightNamed(b.Light); {
		case l == nil || l.Level <= 0:
		case c.whole[l.Name]:
			whole = append(whole, b)
		default:
			stubs = append(stubs, l)
		}
	}
	return whole, stubs
}

// beamLines are the lines that are drawn of a beam, in metres: its edges up to what they meet and,
// of a lamp small enough to cast sharp shadows, the sides of the shafts that openings let into a
// room. Where both wedges are cut by the same jamb the line is the inner one's, as it is of an image with a sharp edge.
func (c beams) beamLines(l *plan.Light, b *section.Beam, v layout.View) (half, tenth [][]r2.Vec) {
	half, tenth = beamEdges(l, b.Half, b.Spot), beamEdges(l, b.Tenth, b.Spot)
	tenth = slices.DeleteFunc(tenth, func(t []r2.Vec) bool {
		return slices.ContainsFunc(half, func(h []r2.Vec) bool { return coveredBy(h, t, oneLine/v.Scale) })
	})
	if b.Spot {
		half = allSignificantParts(c.In.Setup, l, half, true)
	}
	tenth = allSignificantParts(c.In.Setup, l, tenth, b.Spot)
	if b.Spot {
		return half, tenth
	}
	if l.Head.Source.Opening.Width > maxSharpWidth {
		return half, tenth
	}
	if len(half) > 0 {
		half = append(half, shafts(c.In.Setup, b.Half, minShaft/v.Scale)...)
	}
	if len(tenth) > 0 {
		for _, s := range shafts(c.In.Setup, b.Tenth, minShaft/v.Scale) {
			if !slices.ContainsFunc(half, func(h []r2.Vec) bool { return alongside(h, s) }) {
				tenth = append(tenth, s)
			}
		}
	}
	return half, tenth
}

const (
	maxSharpWidth = 0.30 // m: a wider source has no shadow edges that a line could show
	minShaft      = 3.0  // mm on paper
	oneLine       = 0.5  // mm on paper: lines that are no further apart are seen as one
)

// coveredBy says whether all of a line is within a distance of another.
func coveredBy(other, line []r2.Vec, within float64) bool {
	return !slices.ContainsFunc(line, func(p r2.Vec) bool {
		for i := 1; i < len(other); i++ {
			if carto.Distance(p, other[i-1], other[i]) <= within {
				return false
			}
		}
		return true
	})
}

// shafts are the parts of a wedge's outline that run away from its source over a floor, from the
// jamb of an opening: where one ray is stopped and its neighbour passes.
func shafts(s *plan.Setup, outline []r2.Vec, least float64) [][]r2.Vec {
	const slant = 0.02 // of a ray that is one by its fan's step only
	if len(outline) < 4 {
		return nil
	}
	source, rest := outline[0], outline[1:]
	var lines [][]r2.Vec
	for i := 1; i < len(rest); i++ {
		a, b := rest[i-1], rest[i]
		if r2.Norm(r2.Sub(a, source)) > r2.Norm(r2.Sub(b, source)) {
			a, b = b, a
		}
		out, way := r2.Sub(a, source), r2.Sub(b, a)
		radial := math.Abs(r2.Cross(out, way)) < slant*r2.Norm(out)*r2.Norm(way)
		if r2.Norm(way) >= least && radial && onFloor(s, box.Middle(a, b)) && atJamb(s, a) {
			lines = append(lines, []r2.Vec{a, b})
		}
	}
	return lines
}

// atJamb says whether a point is on the hole of an opening.
func atJamb(s *plan.Setup, p r2.Vec) bool {
	const close = 0.03 // m
	for i := range s.Openings {
		ring := s.Openings[i].Plan()
		for j := range ring {
			if carto.Distance(p, ring[j], ring[(j+1)%len(ring)]) < close {
				return true
			}
		}
	}
	return false
}

// alongside says whether a line runs along another, which starts where it does.
func alongside(a, b []r2.Vec) bool {
	const apart = 0.03 // m, what two fans may differ by at one jamb
	return r2.Norm(r2.Sub(a[0], b[0])) < apart && math.Abs(r2.Cross(r2.Unit(r2.Sub(a[1], a[0])), r2.Unit(r2.Sub(b[1], b[0])))) < 0.02
}

// widestBeam is half the angle, degrees, from which light goes nearly everywhere, and its edges on
// the plan say nothing.
const widestBeam = 72.0

// beamEdges are the lines that are drawn of a beam; none of one that is nearly all round.
func beamEdges(l *plan.Light, outline []r2.Vec, footprint bool) [][]r2.Vec {
	from, axis := plan.InPlan(l.Frame.At), plan.InPlan(l.Frame.Axis)
	lines := edges(from, outline, footprint)
	for _, line := range lines {
		if footprint && tooWide(l, line) {
			return nil
		}
		d := r2.Sub(line[1], line[0])
		if !footprint && r2.Dot(d, axis) < math.Cos(widestBeam*math.Pi/180)*r2.Norm(d)*r2.Norm(axis) {
			return nil
		}
	}
	return lines
}

// tooWide says whether the rim of a footprint lies further off than a cone of widestBeam reaches
// from the lamp to its floor or ceiling.
func tooWide(l *plan.Light, rim []r2.Vec) bool {
	const room = 3.0 // m, the height that a lamp has above or below it at most
	most := math.Tan(widestBeam*math.Pi/180) * math.Min(math.Max(l.Height, 0.5), room)
	return slices.ContainsFunc(rim, func(p r2.Vec) bool { return r2.Norm(r2.Sub(p, plan.InPlan(l.Frame.At))) > most })
}

// drawViews draws what each camera sees.
func (c beams) drawViews(p Pad, v layout.View) {
	for i := range c.In.Views {
		w := &c.In.Views[i]
		for _, edge := range c.sides(w) {
			c.within(p.On(ink.CameraWedge).of("camera:"+plan.CameraOf(w.Camera), ""), v, p.Look.viewPen(), edge)
			c.used("view")
		}
	}
}

// sides are the lines that are drawn of a view.
func (c beams) sides(w *section.View) [][]r2.Vec {
	if len(w.Outline) == 0 {
		return nil
	}
	return edges(w.Outline[0], w.Outline, false)
}

// edges are the lines that are drawn of a wedge from a source: its two sides, for what it ends on
// is drawn already. Light that leaves all round has none. A footprint is drawn all round.
func edges(source r2.Vec, outline []r2.Vec, footprint bool) [][]r2.Vec {
	n := len(outline)
	switch {
	case n < 3:
		return nil
	case footprint:
		return [][]r2.Vec{append(slices.Clone(outline), outline[0])}
	case near(outline[0], source):
		return [][]r2.Vec{{outline[0], outline[1]}, {outline[0], outline[n-1]}}
	case near(box.Middle(outline[0], outline[n-1]), source): // an emitting edge, by its two ends
		return [][]r2.Vec{{outline[0], outline[1]}, {outline[n-1], outline[n-2]}}
	}
	return nil
}

// near says whether two points of the plan are one, to a tenth of a millimetre.
func near(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < 1e-4 }

// within draws what is seen of a line, given in metres, but not where it runs over somebody.
func (c beams) within(p Pad, v layout.View, pen ink.Pen, points []r2.Vec) {
	for _, seen := range v.Seen(points) {
		for _, piece := range c.besidePeople(v, seen) {
			p.canvas.Polyline(pen, piece...)
		}
	}
}

// rays are the sides of beams and views within the panel.
func (c beams) rays(v layout.View) []carto.Obstacle {
	var lines [][]r2.Vec
	whole, _ := c.beamed()
	for _, b := range whole {
		half, tenth := c.beamLines(c.In.Setup.LightNamed(b.Light), b, v)
		lines = append(append(lines, half...), tenth...)
	}
	for i := range c.In.Views {
		lines = append(lines, c.sides(&c.In.Views[i])...)
	}
	var all []carto.Obstacle
	for _, line := range lines {
		for _, piece := range v.Seen(line) {
			for i := 1; i < len(piece); i++ {
				all = append(all, carto.Obstacle{Outline: piece[i-1 : i+1]})
			}
		}
	}
	return all
}
