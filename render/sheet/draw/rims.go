package draw

import (
	"slices"

	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// A projection spot throws an image with an edge. On the plan that shows where it lies on floors and tops, in elevation on
// the wall, in the line of a beam to half its light: it is one.

// drawRims draws the rims that lie on floors and on things. Where the beam is a footprint already that is the rim.
func (c beams) drawRims(p Pad, v layout.View) {
	for _, r := range c.levelRims() {
		l := c.In.Setup.LightNamed(r.Light)
		pen := p.Look.beamPen(c.Pad.beam(section.LampColour(l)))
		c.within(p.On(ink.Beams).of("light:"+l.Name, ""), v, pen, planLine(r))
		c.usedOf(beamHalf, l)
	}
}

// levelRims are the rims that the plan shows, of lights whose beams it draws whole.
func (c beams) levelRims() (rims []*section.Rim) {
	whole, _ := c.beamed()
	for _, b := range whole {
		for i := range c.In.Rims {
			if r := &c.In.Rims[i]; r.Light == b.Light && r.Level && !b.Spot {
				rims = append(rims, r)
			}
		}
	}
	return rims
}

// raysAndRims are the sides of beams and views, the rims of images and the ways of people, within the panel.
func (c beams) raysAndRims(v layout.View) []carto.Obstacle {
	all := slices.Concat(c.rays(v), c.walkObstacles(v), c.trackObstacles(v))
	for _, r := range c.levelRims() {
		for _, piece := range v.Seen(planLine(r)) {
			for i := 1; i < len(piece); i++ {
				all = append(all, carto.Obstacle{Outline: piece[i-1 : i+1]})
			}
		}
	}
	return all
}

func planLine(r *section.Rim) []r2.Vec {
	line := make([]r2.Vec, len(r.Line))
	for i, p := range r.Line {
		line[i] = plan.InPlan(p)
	}
	return line
}

// rimsOn are the rims that lie on a wall, in its own measures.
func (c Wall) rimsOn(f WallFace) (lines [][]r2.Vec, of []*section.Rim) {
	for i := range c.In.Rims {
		r := &c.In.Rims[i]
		var line []r2.Vec
		for _, p := range r.Line {
			if math.Abs(f.off(plan.InPlan(p))) < onFace {
				line = append(line, f.at(p))
			}
		}
		if l := c.In.Setup.LightNamed(r.Light); l != nil && l.Level > 0 && len(line) == len(r.Line) && len(line) > 1 {
			lines, of = append(lines, line), append(of, r)
		}
	}
	return lines, of
}

// drawRims draws the rims that lie on the wall.
func (c Wall) drawRims(p Pad, v layout.View, f WallFace) (clear []carto.Obstacle) {
	lines, of := c.rimsOn(f)
	for i, line := range lines {
		l := c.In.Setup.LightNamed(of[i].Light)
		pen := p.Look.beamPen(c.Pad.beam(section.LampColour(l)))
		for _, seen := range v.Seen(line) {
			p.On(ink.Beams).of("light:"+of[i].Light, "").canvas.Polyline(pen, seen...)
			for k := 1; k < len(seen); k++ {
				clear = append(clear, carto.Obstacle{Outline: seen[k-1 : k+1]})
			}
		}
		c.usedOf(beamHalf, l)
	}
	return clear
}
