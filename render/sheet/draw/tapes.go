package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// tapes draws the two distances that put a light or a piece of grip in its place, as fine dimension lines.
type tapes struct{ *Drawing }

// Of a distance along a wall the line stands off the wall, mm; one is drawn from so long on.
const (
	tapeOff   = 4.5
	tapeLeast = 9.0
)

// tape is the pair of lines of one thing.
type tape struct {
	object string
	lines  []dimension
}

// drawTapes draws the distances of the things for which both find room, none along a throw, and returns the paper that
// they take.
func (c tapes) drawTapes(p Pad, v layout.View, taken, throws, soft []carto.Obstacle) []carto.Obstacle {
	var own []carto.Obstacle
	if c.Second {
		return nil
	}
	for _, t := range c.tapes(v) {
		around := slices.Concat(taken, own)
		if t.runsAlong(throws) || !c.fit(v, t.lines, slices.Concat(around, throws, soft)) && !c.fit(v, t.lines, around) {
			continue
		}
		q := p.On(ink.Tapes).of(t.object, "")
		for i := range t.lines {
			t.lines[i].draw(q)
			own = append(own, t.lines[i].paper(p)...)
		}
		c.used("tape")
	}
	return own
}

// runsAlong says whether one of the lines runs along a throw.
func (t *tape) runsAlong(throws []carto.Obstacle) bool {
	return slices.ContainsFunc(t.lines, func(d dimension) bool { return slices.ContainsFunc(throws, d.runsAlong) })
}

// tapes are the distances of all lights and grip.
func (c tapes) tapes(v layout.View) []tape {
	var all []tape
	add := func(object string, ds []plan.Dimension) {
		if t := c.tape(v, ds); len(t) > 0 {
			all = append(all, tape{object, t})
		}
	}
	for i := range c.In.Setup.Lights {
		add("light:"+c.In.Setup.Lights[i].Name, c.In.Setup.Lights[i].Placing)
	}
	for i := range c.In.Setup.Grip {
		add("grip:"+c.In.Setup.Grip[i].Name, c.In.Setup.Grip[i].Placing)
	}
	return all
}

// tape is the lines of distances; none where one of them is too short to be drawn.
func (c tapes) tape(v layout.View, ds []plan.Dimension) []dimension {
	var lines []dimension
	for i, d := range ds {
		from, to := v.Paper(d.A), v.Paper(d.B)
		if i > 0 && r2.Norm(r2.Sub(d.B, ds[0].A)) < samePlace { // it runs along the wall to the foot of the first
			out := r2.Sub(v.Paper(ds[0].B), v.Paper(ds[0].A))
			if n := r2.Norm(out); n > 0 {
				off := r2.Scale(math.Min(tapeOff, n/2)/n, out)
				from, to = r2.Add(from, off), r2.Add(to, off)
			}
		}
		if r2.Norm(r2.Sub(to, from)) < tapeLeast {
			return nil
		}
		lines = append(lines, dimension{from: from, to: to, words: c.Length(d.Metres), angle: carto.Upright(r2.Sub(to, from)), fine: true})
	}
	return lines
}

// samePlace is how far apart two points may be that are one, m.
const samePlace = 0.002

// fit finds places for the figures of all lines; ok is false where one has none, or runs over a label or somebody.
func (c tapes) fit(v layout.View, lines []dimension, taken []carto.Obstacle) (ok bool) {
	panel := box.Inset(v.Panel, 1, 1)
	for i := range lines {
		d := &lines[i]
		line := carto.Obstacle{Outline: []r2.Vec{d.from, d.to}}
		others := beside(taken, d.from, d.to)
		figures := slices.Concat(others, c.standObstacles(), c.furnitureObstacles()) // its own thing by its outline, not by the box round it
		over := func(b r2.Box) bool { return meets(line, []carto.Obstacle{hard(b)}) }
		if !box.Contains(panel, d.from) || !box.Contains(panel, d.to) || slices.ContainsFunc(v.Covered, over) || meets(line, c.peopleObstacles(v)) ||
			!d.clear(others) || !d.letter(c.Pad, figures) && !d.level().letter(c.Pad, figures) {
			return false
		}
		taken = append(slices.Clone(taken), d.figure(c.Pad))
	}
	return true
}

// beside are the obstacles that no end of a line lies in: what a thing's own distance leads to is not in its way.
func beside(taken []carto.Obstacle, ends ...r2.Vec) []carto.Obstacle {
	return slices.DeleteFunc(slices.Clone(taken), func(o carto.Obstacle) bool {
		return len(o.Outline) > 2 && slices.ContainsFunc(ends, func(p r2.Vec) bool { return box.InRing(o.Outline, p) })
	})
}

// level stands the figure of a line level.
func (d *dimension) level() *dimension { d.angle = 0; return d }
