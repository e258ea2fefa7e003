package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/meter"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// strongestLast are the lights with a place, the strongest last: what it reaches is drawn over what others do.
func (h *headView) strongestLast() (all []*meter.LessonLight) {
	for i := range h.Lights {
		if _, ok := h.light(&h.Lights[i]); ok {
			all = append(all, &h.Lights[i])
		}
	}
	slices.SortStableFunc(all, func(a, b *meter.LessonLight) int {
		switch x, y := strength(a), strength(b); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return all
}

// strength is the most that a light gives a plane of the head, lx.
func strength(t *meter.LessonLight) float64 { return max(t.Key, t.Fill, t.Back) }

// draw draws the head, what each light reaches, and the lights' numbers around it.
func (h *headView) draw(p Pad) {
	p = p.of("head:"+h.Person, h.Person+" as the lens sees the head, with what each light reaches.").On(ink.People)
	all := h.strongestLast()
	h.fill(p, math.Inf(-1), h.rim())
	for _, t := range all {
		d, _ := h.light(t)
		_, reached := h.terminator(d)
		h.fill(p, math.Log2(strength(t)/strength(all[len(all)-1])), reached)
	}
	for _, t := range all {
		d, _ := h.light(t)
		edge, _ := h.terminator(d)
		p.Line(Thin, p.Look.Ink, edge...)
	}
	h.features(p)
	p.outline(Medium, p.Look.Ink, nil, h.rim()...)
	h.parts(p, all)
	h.numbers(p, all)
}

// fill gives a part of the head the tone of so many stops under the strongest light; a copier gets lines, the closer the darker.
func (h *headView) fill(p Pad, stops float64, part []r2.Vec) {
	const darkest = 5 // stops under which all is drawn alike
	share := math.Min(1, -stops/darkest)
	if !p.Look.Plain {
		tone := mixed(h.lit, h.shadow, share)
		p.outline(0, p.Look.Ink, &tone, part...)
		return
	}
	p.outline(0, p.Look.Ink, &p.Look.Paper, part...)
	if share > 0.1 {
		p.canvas.Hatch(ink.Pen{Colour: p.Look.Ink, Width: Hair}, 0.8/share, 45, part)
	}
}

// features draws the nose and the eyes, where the lens sees them.
func (h *headView) features(p Pad) {
	for _, side := range [...]float64{-1, 1} {
		if q, seen := h.feature(side*eyeAt[0], eyeAt[1], eyeAt[2]); seen {
			p.canvas.Circle(ink.Solid(p.Look.Ink), q, 0.8)
		}
	}
	var nose []r2.Vec
	for _, at := range noseAt {
		if q, seen := h.feature(at[0], at[1], at[2]); seen {
			nose = append(nose, q)
		}
	}
	if len(nose) == len(noseAt) {
		p.outline(Hair, p.Look.Ink, &p.Look.Ink, nose...)
	}
}

// numberTurns are by how much a number stands aside, degrees, where it would meet another.
var numberTurns = [...]float64{0, 15, -15, 30, -30, 45, -45, 60, -60}

// numbers letters the number of each light around the head, the strongest first, with an arrow the way its light comes; that of
// one from behind is dashed.
func (h *headView) numbers(p Pad, all []*meter.LessonLight) {
	st := p.Style(CapTitle, p.Look.Ink).Strong()
	var taken []carto.Obstacle
	for i := len(all) - 1; i >= 0; i-- {
		d, _ := h.light(all[i])
		way := r2.Vec{Y: 1}
		if flat := (r2.Vec{X: d.X, Y: d.Y}); r2.Norm(flat) > 1e-6 {
			way = r2.Unit(flat)
		}
		tip := h.onPaper(r2.Vec{X: way.X * (h.wide - eggLightIn), Y: way.Y * (h.high - eggLightIn)})
		for _, turn := range numberTurns {
			sin, cos := math.Sincos(turn * math.Pi / 180)
			aside := r2.Vec{X: way.X*cos - way.Y*sin, Y: way.X*sin + way.Y*cos}
			at := h.onPaper(r2.Vec{X: aside.X * (h.wide + eggAround), Y: aside.Y * (h.high + eggAround)})
			from := box.Interpolate(at, tip, st.Cap*0.9/r2.Norm(r2.Sub(at, tip)))
			number := carto.Obstacle{Outline: ink.TurnedBox(at, r2.Add(st.boxOf(all[i].Tag), r2.Vec{X: 1}), 0)}
			if meets(number, taken) || meets(line(from, tip), taken) {
				continue
			}
			h.arrow(p, from, tip, d.Z < 0)
			p.Text(r2.Vec{X: at.X, Y: at.Y - st.Cap/2}, all[i].Tag, st, ink.Centre)
			taken = append(taken, number, line(from, tip))
			break
		}
	}
}

// arrow is the way of light to the head.
func (h *headView) arrow(p Pad, from, tip r2.Vec, behind bool) {
	pen := ink.Pen{Colour: p.Look.Ink, Width: Medium}
	if behind {
		pen = pen.Dashed(1, 0.7)
	}
	way := r2.Unit(r2.Sub(tip, from))
	p.canvas.Polyline(pen, from, r2.Sub(tip, r2.Scale(2, way)))
	p.canvas.Draw(ink.Solid(p.Look.Ink), ink.ArrowHead(tip, box.Bearing(way), 2.4))
}
