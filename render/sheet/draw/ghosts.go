package draw

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// ghosts draws where things stood in the set-up before, in a faint outline, and an arrow from there to where they are.
type ghosts struct{ *Drawing }

// How a ghost is drawn, mm.
const (
	ghostHead  = 1.5 // of the arrow
	ghostLeast = 3.0 // of the arrow: what went less far lies under its own symbol
	ghostAir   = 0.6 // between the arrow and what it leads from and to
	ghostHalf  = 1.1 // half of the outline in the legend
	mostGhosts = 8   // on one plan, those that went farthest: more of them are read by nobody
	ghostSteps = 200 // in which an arrow is followed out of an outline
)

// ghost is a thing where it stood.
type ghost struct {
	object   string
	alt      string
	from, to r2.Vec // m
	body     func(v layout.View) []r2.Vec
}

// moved are the things that stand elsewhere than in the set-up before, those that went farthest first.
func (c ghosts) moved() []ghost {
	before := c.In.Setup.Before
	if before == nil {
		return nil
	}
	return c.stood(before, change.Between(change.Of(before), change.Of(c.In.Setup)).Lines, "in the set-up before")
}

// stood are the things that stand elsewhere than before by some lines, those that went farthest first; when says when they stood there.
func (c ghosts) stood(before *plan.Setup, lines []change.Line, when string) (all []ghost) {
	if c.Second || c.Terse {
		return nil
	}
	for i := range lines {
		l := &lines[i]
		m, moves := l.Move()
		if !moves || m.Plan < change.Unmoved {
			continue
		}
		if body := c.bodyBefore(before, l); body != nil {
			all = append(all, ghost{object: string(l.Sort) + ":" + l.Name, alt: c.In.Setup.Numbered(l.Name) + " stood here " + when + ", " + c.Length(m.Plan) + " away.",
				from: plan.InPlan(m.From), to: plan.InPlan(m.To), body: body})
		}
	}
	slices.SortStableFunc(all, func(a, b ghost) int {
		return cmp.Compare(r2.Norm(r2.Sub(b.to, b.from)), r2.Norm(r2.Sub(a.to, a.from)))
	})
	return all
}

// bodyBefore is the outline of the symbol of a thing where it stood, in mm; nil of what leaves no ghost: marks are tape.
func (c ghosts) bodyBefore(before *plan.Setup, l *change.Line) func(v layout.View) []r2.Vec {
	var page ink.Page
	to, name := ink.NewCanvas(&page, ink.Moves), l.Name
	switch l.Sort {
	case change.Light:
		was := before.LightNamed(name)
		return func(v layout.View) []r2.Vec {
			lamp := lampOf(before, was, v.Scale)
			lamp.At, lamp.Bearing = v.Flat(was.Frame.At), frameBearing(was.Frame)
			return symbols.DrawLight(to, symbols.Look{}, lamp).Body
		}
	case change.Grip:
		was := before.GripNamed(name)
		return func(v layout.View) []r2.Vec {
			return symbols.DrawGrip(to, symbols.Look{}, symbols.Grip{Kind: symbols.GripKind(was.Kind), At: v.Flat(was.Frame.At), Bearing: frameBearing(was.Frame),
				Size: r2.Scale(v.Scale, r2.Vec{X: was.Size[0], Y: was.Size[1]})}).Body
		}
	case change.Camera:
		was := before.CameraNamed(name)
		return func(v layout.View) []r2.Vec {
			return symbols.DrawCamera(to, symbols.Look{}, symbols.Camera{At: v.Flat(was.Frame.At), Bearing: frameBearing(was.Frame), Scale: v.Scale}).Body
		}
	case change.Furniture:
		was := before.PieceNamed(name)
		return func(v layout.View) []r2.Vec {
			return drawPiece(to, symbols.Look{}, v, was, v.Paper(was.At), was.Turn).Body
		}
	case change.Person:
		was := before.Post(name)
		return func(v layout.View) []r2.Vec { return personOf(v, was).Trunk() }
	}
	return nil
}

// soft are the ghosts that labels avoid where they can.
func (c ghosts) soft(v layout.View) (all []carto.Obstacle) {
	moved := c.moved()
	for i := range moved[:min(len(moved), mostGhosts)] {
		g := &moved[i]
		if body := g.body(v); len(body) > 2 {
			a, b, _ := c.arrow(v, g, body)
			all = append(all, carto.Obstacle{Outline: body, Cost: costGhost}, soft(costGhost, a, b))
		}
	}
	return all
}

// draw draws the ghosts of the set-up before. It returns the paper that they take.
func (c ghosts) draw(p Pad, v layout.View, taken, throws []carto.Obstacle) []carto.Obstacle {
	all := c.moved()
	own, drawn := c.drawAll(p.On(ink.Moves), v, all, taken, throws, p.Look.ghostArrow())
	c.ghosts = [2]int{drawn, len(all)}
	if len(all) > 0 {
		c.used("ghost") // where none has room, too: the legend says so
	}
	return own
}

// drawAll draws the ghosts that find room: none over a label, a symbol or somebody else, none whose arrow crosses one, and
// none whose arrow runs along a throw. It returns the paper that they take, and how many there are.
func (c ghosts) drawAll(p Pad, v layout.View, all []ghost, taken, throws []carto.Obstacle, pen ink.Pen) (own []carto.Obstacle, drawn int) {
	for i := range all {
		if drawn == mostGhosts {
			break
		}
		paper := c.drawOne(p, v, &all[i], slices.Concat(taken, own), throws, pen)
		if len(paper) > 0 {
			drawn++
		}
		own = append(own, paper...)
	}
	return own, drawn
}

// drawOne draws a ghost in the pen of its arrow where it finds room, and returns the paper that it takes; none where it does not.
func (c ghosts) drawOne(p Pad, v layout.View, g *ghost, taken, throws []carto.Obstacle, pen ink.Pen) []carto.Obstacle {
	body := g.body(v)
	a, b, long := c.arrow(v, g, body)
	around := c.others(v, g, taken)
	line := dimension{from: a, to: b}
	if len(body) < 3 || !long || !c.fits(v, body, around) || !c.fits(v, []r2.Vec{a, b}, around) || slices.ContainsFunc(throws, line.runsAlong) {
		return nil
	}
	q := p.of("ghost:"+g.object, g.alt)
	q.canvas.Draw(ghostDashed(pen), ink.Polygon(body...))
	q.canvas.Arrow(pen, ghostHead, a, b)
	way := r2.Unit(r2.Sub(b, a))
	return []carto.Obstacle{{Outline: body, Leaders: true}, {Outline: plane.Slab(a, b, r2.Vec{X: -way.Y, Y: way.X}, -ghostAir, ghostAir), Leaders: true}}
}

// ghostDashed draws the outline of what stood, ghostArrow the arrow from there; among the dots of the look for a copier they are wider.
func ghostDashed(pen ink.Pen) ink.Pen { return pen.Dashed(0.8, 0.6) }

func (t *Theme) ghostArrow() ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: t.Ink, Width: Thin}
	}
	return ink.Pen{Colour: t.Ink, Width: Hair}
}

// ghostSign is a ghost in the legend, along a line.
func ghostSign(p Pad, a, b r2.Vec) {
	stood := box.Of(a.X, a.Y-ghostHalf, a.X+2*ghostHalf, a.Y+ghostHalf)
	p.canvas.Draw(ghostDashed(p.Look.ghostArrow()), ink.Polygon(box.Corners(stood)...))
	p.canvas.Arrow(p.Look.ghostArrow(), ghostHead, box.At(stood.Max.X, a.Y), b)
}

// others are what a ghost keeps off: labels, symbols and people, but not the thing itself where it stands now.
func (c ghosts) others(v layout.View, g *ghost, taken []carto.Obstacle) (all []carto.Obstacle) {
	for _, o := range slices.Concat(taken, c.standObstacles()) {
		if len(o.Outline) > 2 && o.Cost == 0 && !box.InRing(o.Outline, v.Paper(g.to)) {
			all = append(all, o)
		}
	}
	return all
}

// fits says whether an outline or a line lies on the panel and meets nothing. Walls may be crossed by a line, as by a leader.
func (c ghosts) fits(v layout.View, outline []r2.Vec, around []carto.Obstacle) bool {
	for _, q := range outline {
		if !box.Contains(box.Inset(v.Panel, 1, 1), q) {
			return false
		}
	}
	for _, o := range around {
		if (o.Leaders || len(outline) > 2) && carto.Overlap(outline, o.Outline) {
			return false
		}
	}
	return true
}

// arrow leads from the edge of the outline to near the edge of the symbol that the thing has now; long is false where hardly any of it is left.
func (c ghosts) arrow(v layout.View, g *ghost, body []r2.Vec) (a, b r2.Vec, long bool) {
	a, b = v.Paper(g.from), v.Paper(g.to)
	far := r2.Norm(r2.Sub(b, a))
	if far == 0 {
		return a, b, false
	}
	air := ghostAir / far
	from, to := c.leaves(a, b, [][]r2.Vec{body})+air, 1-c.leaves(b, a, c.bodiesAt(b))-air
	a, b = box.Interpolate(a, b, from), box.Interpolate(a, b, to)
	return a, b, (to-from)*far >= ghostLeast
}

// leaves is the share of the way from one point to another at which it is out of all outlines.
func (c ghosts) leaves(a, b r2.Vec, outlines [][]r2.Vec) float64 {
	last := 0.0
	for i := 0; i <= ghostSteps; i++ {
		share := float64(i) / ghostSteps
		if slices.ContainsFunc(outlines, func(o []r2.Vec) bool { return box.InRing(o, box.Interpolate(a, b, share)) }) {
			last = share
		}
	}
	return last
}

// bodiesAt are the symbols at a point of the paper.
func (c ghosts) bodiesAt(at r2.Vec) (all [][]r2.Vec) {
	for _, d := range slices.Concat(c.Stands, c.furniture) {
		if len(d.Body) > 2 && box.InRing(d.Body, at) {
			all = append(all, d.Body)
		}
	}
	return all
}
