package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// walks draws where people go: their marks and their walks.
type walks struct{ *Drawing }

// draw draws all marks and walks, and returns the labels that go beside them.
func (c walks) draw(p Pad, v layout.View) (labels []placeable) {
	for i := range c.In.Setup.People {
		who := &c.In.Setup.People[i]
		if who.Walk != nil {
			c.walk(p, v, who)
		}
		for k := range who.Marks {
			labels = append(labels, c.mark(p, v, &who.Marks[k]))
		}
	}
	for i := range c.In.Walks {
		if at := c.farthest(p, v, &c.In.Walks[i]); at != nil {
			labels = append(labels, at)
		}
	}
	return labels
}

// mark draws a mark with its name.
func (c walks) mark(p Pad, v layout.View, m *plan.Mark) placeable {
	at := v.Paper(m.At)
	c.used("mark")
	alt := "Mark " + m.Name + ", " + string(m.Pose) + ", eyes " + c.Length(m.Eyes-m.Base) + " high."
	d := symbols.DrawMark(p.of("mark:"+m.Name, alt).canvas, p.symbols(), at, m.Faces)
	return &note{object: "mark:" + m.Name, layer: ink.People, style: c.Pad.plan(), forms: noteForms(m.Name), anchor: at, body: d.Box(),
		priority: 1.5, leader: 24}
}

// walk draws the way of somebody.
func (c walks) walk(p Pad, v layout.View, who *plan.Person) {
	w := who.Walk
	c.used("walk")
	q := p.of("walk:"+who.Name, "Walk of "+who.Name+", "+c.Length(w.Length())+".")
	var ticks []symbols.WalkTick
	for i := range w.Points[:len(w.Points)-1] { // the head marks the last
		f := &w.Points[i].Face
		if at := v.Flat(f.At); box.Contains(v.Panel, at) {
			ticks = append(ticks, symbols.WalkTick{At: at, Way: plan.InPlan(f.Axis)})
		}
	}
	last := v.Paper(w.Corners[len(w.Corners)-1])
	for _, piece := range seenWalk(v, w) {
		symbols.DrawWalk(q.canvas, q.symbols(), piece, ticks, r2.Norm(r2.Sub(piece[len(piece)-1], last)) < 1e-6)
		ticks = nil
	}
}

// seenWalk are the pieces of a walk that are drawn.
func seenWalk(v layout.View, w *plan.Walk) [][]r2.Vec {
	return ink.ClipPolyline(v.All(w.Corners), box.Corners(v.Panel))
}

// walkObstacles are the lines of all walks, which lettering avoids.
func (c *Drawing) walkObstacles(v layout.View) (all []carto.Obstacle) {
	for i := range c.In.Setup.People {
		w := c.In.Setup.People[i].Walk
		if w == nil {
			continue
		}
		for _, piece := range seenWalk(v, w) {
			for k := 1; k < len(piece); k++ {
				all = append(all, carto.Obstacle{Outline: piece[k-1 : k+1]})
			}
		}
	}
	return all
}

// farthest marks the place of a walk that is farthest from the working stop, for whichever camera; nil where none is judged.
func (c walks) farthest(p Pad, v layout.View, w *meter.Walk) placeable {
	n, point, ok := w.Farthest()
	if !ok {
		return nil
	}
	course := &w.Courses[n]
	at := v.Flat(w.Points[point].At)
	if !box.Contains(v.Panel, at) {
		return nil
	}
	words := meter.OverWords(course.Over[point])
	toward := ""
	if len(w.Courses) > 1 {
		toward = " for " + plan.CameraWords(course.Camera)
	}
	c.used("walk:farthest")
	q := p.On(ink.Readings).of("walk:"+w.Person+":farthest", "Farthest from the working stop on the walk of "+w.Person+": "+words+toward+".")
	diamond(q, at)
	if c.Second {
		return nil // the first map says how far
	}
	struck := section.When(w.Judged(n)[point].StopsStruck(), words)
	return &note{object: "walk:" + w.Person + ":farthest", layer: ink.Readings, style: c.Pad.plan(), forms: noteForms(w.Person+" "+words+toward, words+toward, words),
		struck: struck, anchor: at, body: box.Inset(box.Of(at.X, at.Y, at.X, at.Y), -diamondArm, -diamondArm), priority: 1.5, linePenalty: 2, leader: 30, led: true}
}

// diamondArm is half of the mark of the place of a walk that is farthest off, mm.
const diamondArm = 1.3

// diamond marks a place that wants attention.
func diamond(p Pad, at r2.Vec) {
	p.outline(Medium, p.Look.Alarm, &p.Look.Paper, box.At(at.X, at.Y-diamondArm), box.At(at.X+diamondArm, at.Y), box.At(at.X, at.Y+diamondArm), box.At(at.X-diamondArm, at.Y))
}
