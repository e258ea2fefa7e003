package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// throw is the dimension line from a lamp to its aim, lettered with the true length in space.
type throw struct {
	light    *plan.Light
	from, to r2.Vec // mm
	words    string
	at       float64 // the middle of the lettering, as a share of the way
	beside   *r2.Vec // the middle of lettering beside the line, mm; nil: in it
}

const (
	throwHead = 1.9 // room for a head of the line, mm
	throwGap  = 1.0 // before and after the lettering
)

// throws are the dimension lines of the lights, and of their bounces, whose length finds room on its line, clear of what
// stands and of the other lengths. The rest stand in the list of lights only: a dimension line
// without its figure says nothing.
func (c *Drawing) throws(v layout.View, bodies, rays []carto.Obstacle) []throw {
	var all []throw
	if c.Second {
		return nil
	}
	taken := slices.Clone(bodies)
	for i := range c.In.Setup.Lights {
		l := &c.In.Setup.Lights[i]
		if !c.whole[l.Name] {
			continue
		}
		for leg, t := range c.legs(v, l) {
			onward := leg > 0
			seen := ink.ClipPolyline([]r2.Vec{t.from, t.to}, box.Corners(v.Panel))
			if r2.Norm(r2.Sub(t.to, t.from)) < shortestThrow || len(seen) == 0 {
				continue
			}
			o, ok := t.letter(c.Pad.plan(), seen[0], slices.Concat(taken, rays))
			if !ok {
				o, ok = t.letter(c.Pad.plan(), seen[0], taken)
			}
			if !ok && onward {
				o, ok = t.letterBeside(c.Pad.plan(), seen[0], taken)
			}
			if ok {
				taken = append(taken, o)
				all = append(all, t)
				c.used("throw")
			}
		}
	}
	return all
}

// shortestThrow is the shortest line that is drawn, mm.
const shortestThrow = 4

// legs are the throws of a light: from it to its aim, and of one that is sent to a surface from there on to the face.
func (c *Drawing) legs(v layout.View, l *plan.Light) (all []throw) {
	b := c.In.BounceOf(l.Name)
	switch {
	case l.Throw > 0:
		all = append(all, throw{light: l, from: v.Flat(l.Frame.At), to: v.Flat(l.AimPoint), words: c.Length(l.Throw)})
	case b != nil:
		all = append(all, throw{light: l, from: v.Flat(l.Frame.At), to: v.Flat(b.At), words: c.Length(r3.Norm(r3.Sub(b.At, l.Frame.At)))})
	}
	if b != nil {
		all = append(all, throw{light: l, from: v.Flat(b.At), to: v.Flat(b.Face), words: c.Length(b.On)})
	}
	return all
}

// letter finds a clear place for the lettering on the part of the line that is seen, rather near the
// lamp than near the face.
func (t *throw) letter(st style, seen []r2.Vec, taken []carto.Obstacle) (carto.Obstacle, bool) {
	along := r2.Sub(t.to, t.from)
	length := r2.Norm(along)
	size := st.boxOf(t.words)
	half := (t.gap(st)/2 + throwHead) / length
	first, last := r2.Norm(r2.Sub(seen[0], t.from))/length, r2.Norm(r2.Sub(seen[len(seen)-1], t.from))/length
	for _, part := range []float64{0.42, 0.34, 0.5, 0.26, 0.58, 0.66, 0.74} {
		share := first + part*(last-first)
		if share-half < first || share+half > last {
			continue
		}
		o := carto.Obstacle{Outline: ink.TurnedBox(box.Interpolate(t.from, t.to, share), size, 0), Leaders: true}
		if !meets(o, taken) {
			t.at = share
			return o, true
		}
	}
	return carto.Obstacle{}, false
}

// letterBeside finds a clear place for the lettering beside the line: the way from a surface to a face is often too short for it.
func (t *throw) letterBeside(st style, seen []r2.Vec, taken []carto.Obstacle) (carto.Obstacle, bool) {
	size := st.boxOf(t.words)
	for _, off := range [...]float64{0, 6, 12, 18, 24, 30} { // mm farther from the line
		air := box.At(size.X+off, size.Y+off)
		if at, ok := besideLine(seen[0], seen[len(seen)-1], air, func(o carto.Obstacle) bool {
			return !meets(carto.Obstacle{Outline: ink.TurnedBox(box.Middle(o.Outline[0], o.Outline[2]), size, 0)}, taken)
		}); ok {
			t.beside = &at
			return t.taken(st), true
		}
	}
	return carto.Obstacle{}, false
}

// taken is the paper that the lettering takes.
func (t *throw) taken(st style) carto.Obstacle {
	at := box.Interpolate(t.from, t.to, t.at)
	if t.beside != nil {
		at = *t.beside
	}
	return carto.Obstacle{Outline: ink.TurnedBox(at, st.boxOf(t.words), 0), Leaders: true}
}

// gap is how much of the line its lettering takes, mm. It stands level, whichever way the line runs: a figure along
// its own line is read as a part of it.
func (t *throw) gap(st style) float64 {
	d := r2.Unit(r2.Sub(t.to, t.from))
	wide, high := st.Width(t.words)+2*throwGap, st.Cap+2*throwGap
	return math.Min(wide/math.Max(math.Abs(d.X), 1e-9), high/math.Max(math.Abs(d.Y), 1e-9))
}

// draw draws the line with a head at each end, broken for its lettering. A leg of the stand runs along it: the lettering
// lies over that, or it is read as struck through.
func (t *throw) draw(p Pad) {
	p = p.On(ink.Throws).of("light:"+t.light.Name, "")
	st := p.plan()
	gap := t.gap(st) / 2 / r2.Norm(r2.Sub(t.to, t.from))
	pen := p.Look.throwPen()
	if t.beside != nil {
		p.canvas.DoubleArrow(pen, throwHead, t.from, t.to)
		p.On(ink.Tags).turned(underMiddle(*t.beside, st.Cap, 0), t.words, st, ink.Centre, 0, &p.Look.Paper)
		return
	}
	p.canvas.Arrow(pen, throwHead, box.Interpolate(t.from, t.to, t.at-gap), t.from)
	p.canvas.Arrow(pen, throwHead, box.Interpolate(t.from, t.to, t.at+gap), t.to)
	p.On(ink.Tags).turned(underMiddle(box.Interpolate(t.from, t.to, t.at), st.Cap, 0), t.words, st, ink.Centre, 0, &p.Look.Paper)
}

// throwObstacles keep labels off the lettering of the throws.
func throwObstacles(p Pad, throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	st := p.plan()
	for i := range throws {
		all = append(all, throws[i].taken(st))
	}
	return all
}

// throwLines keep names off the dimension lines.
func throwLines(throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range throws {
		all = append(all, carto.Obstacle{Outline: []r2.Vec{throws[i].from, throws[i].to}})
	}
	return all
}
