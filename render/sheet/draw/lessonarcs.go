package draw

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// arc is the angle of a light from the line to the camera, as it is drawn.
type arc struct {
	turn   float64 // degrees, plus is camera right
	radius float64 // mm
}

// figureAir is clear beside the figure of an angle, mm: another right behind it would be read on from it.
const figureAir = 2.0

// drawArcs draws the angles of the lights, the smallest innermost, each with its figure where nothing else is, and returns the
// paper that they take. rays are what their figures keep off.
func (l *Lesson) drawArcs(p Pad, rays []carto.Obstacle) []carto.Obstacle {
	taken := slices.Clone(rays)
	var arcs []arc
	for _, t := range l.byTurn() {
		a := arc{t.Turn, lessonArcFrom + lessonArc*float64(len(arcs))}
		arcs = append(arcs, a)
		taken = append(taken, l.strokes(a)...)
	}
	for i, a := range arcs {
		l.drawArc(p, a)
		own := l.strokes(a)
		others := slices.DeleteFunc(slices.Clone(taken), func(o carto.Obstacle) bool {
			return slices.ContainsFunc(own, func(q carto.Obstacle) bool { return slices.Equal(o.Outline, q.Outline) })
		})
		if b, ok := l.letterArc(p, arcs[i], others); ok {
			taken = append(taken, b)
		}
	}
	return taken[len(rays):]
}

// byTurn are the lights that stand to a side of the line to the camera, by their angles.
func (l *Lesson) byTurn() (all []*meter.LessonLight) {
	const least = 3 // degrees: what is less is no angle
	for i := range l.Lights {
		if t := &l.Lights[i]; t.At != nil && math.Abs(t.Turn) >= least {
			all = append(all, t)
		}
	}
	slices.SortStableFunc(all, func(a, b *meter.LessonLight) int { return cmp.Compare(math.Abs(a.Turn), math.Abs(b.Turn)) })
	return all
}

// on is a place on an arc, by the share of its angle.
func (l *Lesson) on(a arc, share float64) r2.Vec {
	return r2.Add(l.centre, r2.Scale(a.radius, toward(share*a.turn)))
}

// strokes are an arc as short lines.
func (l *Lesson) strokes(a arc) (all []carto.Obstacle) {
	n := max(2, int(math.Abs(a.turn)/8))
	for i := range n {
		all = append(all, line(l.on(a, float64(i)/float64(n)), l.on(a, float64(i+1)/float64(n))))
	}
	return all
}

// drawArc draws an arc with a head at the light's end.
func (l *Lesson) drawArc(p Pad, a arc) {
	p = p.On(ink.Throws)
	p.canvas.Arc(ink.Pen{Colour: p.Look.Ink, Width: Thin}, l.centre, a.radius, 180, 180-a.turn)
	along := 90.0 - a.turn // of the way it turns at its end
	if a.turn < 0 {
		along += 180
	}
	p.canvas.Draw(ink.Solid(p.Look.Ink), ink.ArrowHead(l.on(a, 1), along, 2))
}

// letterArc letters the figure of an angle on its arc, or close outside it, where nothing else is.
func (l *Lesson) letterArc(p Pad, a arc, taken []carto.Obstacle) (carto.Obstacle, bool) {
	st := p.plan().Strong()
	words := unit.FormatWhole(math.Abs(a.turn)) + "°"
	size := st.boxOf(words)
	beyond := (size.X/2 + 1) / (a.radius * math.Abs(a.turn) * math.Pi / 180) // past either end of it, as a share of it
	for _, share := range [...]float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.88, 0.12, 1 + beyond, -beyond} {
		for _, off := range [...]float64{0, 2.2, -2.2} {
			at := l.on(arc{a.turn, a.radius + off}, share)
			o := carto.Obstacle{Outline: ink.TurnedBox(at, size, 0), Leaders: true}
			if meets(o, taken) {
				continue
			}
			p.On(ink.Readings).turned(r2.Vec{X: at.X, Y: at.Y - st.Cap/2}, words, st, ink.Centre, 0, &p.Look.Paper)
			return carto.Obstacle{Outline: ink.TurnedBox(at, r2.Add(size, r2.Vec{X: 2 * figureAir}), 0), Leaders: true}, true
		}
	}
	return carto.Obstacle{}, false
}
