package draw

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// maps draws fields of light: tints, contours and their keys.
type maps struct{ *Drawing }

// relief is a field traced for one scale: its levels, the regions above them, and in mm on paper
// its lines and cliffs.
type relief struct {
	levels []carto.Level
	marks  []mark     // by level: how its line is drawn and lettered
	grid   carto.Grid // as it was traced
	steps  []carto.Band
	lines  []carto.Line
	cliffs []carto.Cliff
	atLens []carto.Line // rings close about a camera
}

// mark is how the line of a level is drawn and lettered.
type mark struct {
	words string
	heavy bool
	dash  []float64
}

// marksOf are the lines of levels of light.
func (c maps) marksOf(levels []carto.Level) []mark {
	var all []mark
	for _, l := range levels {
		all = append(all, mark{words: c.Label(l), heavy: l.Working})
	}
	return all
}

// reliefs are the maps of a sheet.
func (c maps) reliefs(v layout.View) []relief {
	var all []relief
	for _, f := range c.In.Maps() {
		all = append(all, c.trace(f, v))
	}
	return all
}

// contourLines are the pieces of all contours and cliffs.
func contourLines(reliefs []relief) []carto.Obstacle {
	var all []carto.Obstacle
	add := func(l *carto.Line) {
		for i := 1; i < len(l.Points); i++ {
			all = append(all, carto.Obstacle{Outline: l.Points[i-1 : i+1]})
		}
	}
	for i := range reliefs {
		for j := range reliefs[i].lines {
			add(&reliefs[i].lines[j])
		}
		for j := range reliefs[i].cliffs {
			add(&reliefs[i].cliffs[j].Line)
		}
	}
	return all
}

// noiseShare is how far smoothing may move a contour, as a share of a stop (2 %); shadowEdge is how true
// hard edges of shadow are found, m.
const (
	noiseShare = 0.03
	shadowEdge = 0.005
)

// trace finds the contours of a field as a map at the view's scale shows them.
func (c maps) trace(f *section.Field, v layout.View) relief {
	o := carto.Paper(v.Scale)
	o.Probe, o.Edge = remembered(f.Probe, v.Scale), shadowEdge
	return c.traced(f, v, o)
}

// lensReach is how far from a camera, m, nobody is filmed, unless the camera looks at somebody who is as near.
const lensReach = 1.25

// reachOf is how far from a camera at a point of the plan nobody is filmed, m: of one that looks at somebody as near, half the way.
func (c maps) reachOf(lens r2.Vec) float64 {
	reach, s := lensReach, c.In.Setup
	for i := range s.Cameras {
		p := s.Post(s.Cameras[i].Looks)
		if p == nil || plan.InPlan(s.Cameras[i].Frame.At) != lens {
			continue
		}
		if away := r2.Norm(r2.Sub(p.At, lens)); away < lensReach {
			reach = math.Min(reach, away/2)
		}
	}
	return reach
}

// aroundLens are the rings close about a camera, unless a light is in them. Receptors that are turned to it look all ways
// there, and what they find within arm's length of one another says nothing of any face: they are dashes without a figure, for rings would be read
// as those of a lamp, and a tint without an edge as a fault of the print.
func (c maps) aroundLens(lens r2.Vec) func(carto.Line) bool {
	reach := c.reachOf(lens)
	around := box.Of(lens.X-reach, lens.Y-reach, lens.X+reach, lens.Y+reach)
	return func(ring carto.Line) bool {
		if !ring.Closed || !box.AllIn(ring.Points, around) {
			return false
		}
		b := plane.Bounds(ring.Points)
		return !slices.ContainsFunc(c.In.Setup.Lights, func(l plan.Light) bool { return box.Contains(b, plan.InPlan(l.Frame.At)) })
	}
}

func (c maps) traced(f *section.Field, v layout.View, o carto.Options) relief {
	r := relief{levels: section.LevelsOf(c.In)}
	r.marks = c.marksOf(r.levels)
	// One point of growth lets the tints reach under the walls that are drawn over them.
	r.grid = carto.Extrapolate(rimmed(carto.Denoise(f.Grid, noiseShare)), 1)
	traced := carto.Trace(r.grid, carto.Values(r.levels), o)
	r.steps = traced.Steps()
	lines := traced.Lines
	if f.Toward != nil {
		around := c.aroundLens(*f.Toward)
		lines = slices.DeleteFunc(slices.Clone(lines), around)
		r.atLens = carto.OnPaper(slices.DeleteFunc(slices.Clone(traced.Lines), func(l carto.Line) bool { return !around(l) }), v.Paper)
	}
	r.lines, r.cliffs = carto.Cliffs(carto.OnPaper(lines, v.Paper), carto.CliffOptions{})
	return r
}

// rimmed is the grid with one point without data all round, for Grow to grow into.
func rimmed(g carto.Grid) carto.Grid {
	if len(g.Value) < g.NX*g.NY || g.NX < 1 || g.NY < 1 {
		return g
	}
	nx, ny := g.NX+2, g.NY+2
	out := carto.Grid{Origin: g.At(-1, -1), Step: g.Step, NX: nx, NY: ny, Value: make([]float32, nx*ny), Mask: make([]uint64, (nx*ny+63)/64)}
	for n := range out.Value {
		i, j := n%nx-1, n/nx-1
		if g.Masked(i, j) {
			out.Mask[n>>6] |= 1 << (n & 63)
		} else {
			out.Value[n] = g.Value[j*g.NX+i]
		}
	}
	return out
}

// drawBands paints the bands, each over the darker ones below it.
func (r *relief) drawBands(p Pad, v layout.View) {
	if p.Look.Plain {
		r.drawScreen(p, v)
		return
	}
	tints := p.Look.Ramp.Bands(r.levels)
	for i := range r.steps {
		if rings := r.seenRings(i, v); len(rings) > 0 {
			p.canvas.Draw(ink.Solid(tints[i]), ink.Polygons(rings...))
		}
	}
}

// drawAllLines draws the contours of maps, the figures of each clear of those before.
func (c maps) drawAllLines(p Pad, v layout.View, all []relief, clear []carto.Obstacle) {
	for i := range all {
		others := slices.Concat(contourLines(all[:i]), contourLines(all[i+1:]))
		for j := range others {
			others[j].Cost = costContour
		}
		for _, l := range c.drawLines(p, v, &all[i], slices.Concat(clear, others)) {
			clear = append(clear, carto.Obstacle{Outline: l.Outline()})
		}
	}
}

// costContour is what it costs a figure to cover the contour of another map.
const costContour = 8.0

// drawLines draws the contours, with their figures in gaps that keep clear of what stands in the
// way, and the cliffs. It returns the figures.
func (c maps) drawLines(p Pad, v layout.View, r *relief, clear []carto.Obstacle) []carto.Lettering {
	area := box.Inset(v.Panel, 1, 1)
	letters := carto.Letter(r.lines, carto.LetterOptions{
		Size:      func(l carto.Line) r2.Vec { return figureBox(c.figure(r, l)) },
		Obstacles: slices.Concat(clear, r.cliffObstacles(), leafObstacles(c.In.Setup, v)),
		Area:      &area,
	})
	for _, l := range letters {
		s, st := c.figure(r, r.lines[l.Line])
		p.turned(underMiddle(l.At, st.Cap, l.Angle), s, st, ink.Centre, l.Angle, p.Look.rim())
	}
	for _, l := range carto.Cut(r.lines, letters) {
		p.strokeLine(p.contourPen(r.marks[l.Index]), l, v)
	}
	for _, l := range r.atLens {
		p.strokeLine(ink.Pen{Colour: p.Look.Contour, Width: math.Max(Thin, p.Look.Least), Dash: []float64{0.9, 0.7}}, l, v)
	}
	if p.Look.Plain {
		c.tickShadows(p, v, r)
	}
	for _, k := range r.cliffs {
		c.used("cliff")
		p.strokeLine(ink.Pen{Colour: p.Look.Contour, Width: Medium}, k.Line, v)
		for _, t := range k.Ticks {
			for _, piece := range ink.ClipPolyline(t[:], box.Corners(v.Panel)) {
				p.Line(math.Max(Hair, p.Look.Least), p.Look.Contour, piece...)
			}
		}
	}
	return letters
}

// figureBox is the room of a figure in its line. A minus sign has clear paper before it, or it is read as the line.
func figureBox(s string, st style) r2.Vec {
	size := st.boxOf(s)
	if strings.HasPrefix(s, "−") {
		size.X += 2 * minusAir
	}
	return size
}

// minusAir is how much wider the gap is on either side of a figure with a sign, mm.
const minusAir = 1.4

// cliffObstacles keep figures off the cliffs and their ticks.
func (r *relief) cliffObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for i := range r.cliffs {
		points := r.cliffs[i].Points
		for j := 1; j < len(points); j++ {
			all = append(all, carto.Obstacle{Outline: points[j-1 : j+1]})
		}
		for _, t := range r.cliffs[i].Ticks {
			all = append(all, carto.Obstacle{Outline: t[:]})
		}
	}
	return all
}

// leafObstacles keep figures off the leaves that stand open.
func leafObstacles(s *plan.Setup, v layout.View) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range s.Openings {
		if hinge, tip, ok := leafOf(&s.Openings[i]); ok {
			all = append(all, carto.Obstacle{Outline: []r2.Vec{v.Paper(hinge), v.Paper(tip)}})
		}
	}
	return all
}

// figure is what a contour is lettered with, and how.
func (c maps) figure(r *relief, l carto.Line) (string, style) {
	m := r.marks[l.Index]
	st := c.Pad.plan().inked(c.Pad.Look.Contour)
	st.bold = st.bold || m.heavy
	return m.words, st
}

// strokeLine draws a contour within the panel.
func (p Pad) strokeLine(pen ink.Pen, l carto.Line, v layout.View) {
	points := l.Points
	if l.Closed && len(points) > 0 {
		points = append(append([]r2.Vec(nil), points...), points[0])
	}
	for _, piece := range ink.ClipPolyline(points, box.Corners(v.Panel)) {
		p.canvas.Polyline(pen, piece...)
	}
}

// underMiddle is the baseline point of lettering whose capitals have their middle at centre.
func underMiddle(centre r2.Vec, cap, angle float64) r2.Vec {
	return r2.Sub(centre, r2.Scale(cap/2, ink.Direction(-angle)))
}

// contourPen draws a contour.
func (p Pad) contourPen(m mark) ink.Pen {
	pen := ink.Pen{Colour: p.Look.Contour, Width: math.Max(Hair, p.Look.Least), Dash: m.dash}
	switch {
	case m.heavy && p.Look.Plain:
		pen.Width = FrameLine
	case m.heavy:
		pen.Width = Thick
	}
	return pen
}

// The ticks into a shadow, mm.
const (
	shadowEvery = 4.0
	shadowTick  = 1.1
)

// tickShadows puts ticks on the inside of the contours that close about less light: without tints nothing else says that
// the way in leads down. The light is on the left of a contour, so that one that runs clockwise has it outside.
func (c maps) tickShadows(p Pad, v layout.View, r *relief) {
	for i := range r.lines {
		l := &r.lines[i]
		if !l.Closed || plane.Area(l.Points) >= 0 {
			continue
		}
		for _, t := range ink.Ticks(append(slices.Clone(l.Points), l.Points[0]), shadowEvery, shadowTick) {
			if box.AllIn(t[:], v.Panel) {
				p.Line(p.Look.Least, p.Look.Contour, t[:]...)
			}
		}
	}
}

// Light is probed on a lattice of points so fine that it does not show: no coarser than this on
// paper, mm, and on the set, m. Contours of several levels crowd along one edge of shadow and probe
// nearly the same points, each of which costs a fan of rays.
const (
	probePaper = 0.05
	probeSet   = 0.002
)

// remembered is a probe that reads every point of its lattice once.
func remembered(probe func(r2.Vec) float64, scale float64) func(r2.Vec) float64 {
	if probe == nil {
		return nil
	}
	step := math.Min(probeSet, probePaper/scale)
	known := map[[2]int32]float64{}
	return func(p r2.Vec) float64 {
		i, j := math.Round(p.X/step), math.Round(p.Y/step)
		key := [2]int32{int32(i), int32(j)}
		v, ok := known[key]
		if !ok {
			v = probe(r2.Vec{X: i * step, Y: j * step})
			known[key] = v
		}
		return v
	}
}
