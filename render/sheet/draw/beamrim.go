package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
)

// allSignificantParts are the significant parts of every line of a light's beam.
func allSignificantParts(s *plan.Setup, l *plan.Light, lines [][]r2.Vec, rim bool) [][]r2.Vec {
	var all [][]r2.Vec
	for _, line := range lines {
		all = append(all, significantParts(s, plan.InPlan(l.Frame.At), line, rim)...)
	}
	return all
}

// significantParts leaves of a beam's line what says something: not what runs along a wall, a piece of furniture
// or a leaf, which only says that light ends there, and not the steps of a footprint to and from the
// lamp, where one ray lands on a table and the next beside it.
func significantParts(s *plan.Setup, from r2.Vec, line []r2.Vec, rim bool) [][]r2.Vec {
	var kept runs
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		if alongSolid(s, a, b) || rim && isStep(from, a, b) {
			kept.end()
			continue
		}
		kept.add(a, b)
	}
	return kept.all()
}

// runs are the pieces of a line of which parts are left out.
type runs struct {
	lines [][]r2.Vec
	run   []r2.Vec
}

// add goes on from a to b, where the run is at a or has not begun.
func (r *runs) add(a, b r2.Vec) {
	if r.run == nil {
		r.run = []r2.Vec{a}
	}
	r.run = append(r.run, b)
}

// end ends a run.
func (r *runs) end() {
	if len(r.run) > 1 {
		r.lines = append(r.lines, r.run)
	}
	r.run = nil
}

// all are the runs, the last one ended.
func (r *runs) all() [][]r2.Vec {
	r.end()
	return r.lines
}

// isStep says whether a piece of a footprint's rim runs rather away from the lamp than round it.
func isStep(from, a, b r2.Vec) bool {
	const least = 0.02 // m
	out, way := r2.Sub(box.Middle(a, b), from), r2.Sub(b, a)
	return r2.Norm(way) > least && math.Abs(r2.Dot(out, way)) > 0.8*r2.Norm(out)*r2.Norm(way)
}

// alongSolid says whether a line runs along something solid.
func alongSolid(s *plan.Setup, a, b r2.Vec) bool {
	const close = 0.05 // m
	along := func(p, q r2.Vec) bool {
		return carto.Distance(a, p, q) < close && carto.Distance(b, p, q) < close
	}
	ring := func(points []r2.Vec) bool {
		for i, p := range points {
			if along(p, points[(i+1)%len(points)]) {
				return true
			}
		}
		return false
	}
	for i := range s.Rooms {
		if ring(s.Rooms[i].Inside) {
			return true
		}
	}
	for i := range s.Walls {
		if ring(s.Walls[i].Outline) {
			return true
		}
	}
	for i := range s.Furniture {
		for _, q := range s.Furniture[i].Parts {
			if ring(q.Outline) {
				return true
			}
		}
	}
	for i := range s.Openings {
		if p, q, ok := leafOf(&s.Openings[i]); ok && along(p, q) {
			return true
		}
	}
	return false
}

// leafOf is the leaf of an opening that stands open, from its hinge.
func leafOf(o *plan.Opening) (hinge, tip r2.Vec, ok bool) {
	if o.Ajar <= 0 {
		return hinge, tip, false
	}
	hinge, other := o.Right, o.Left
	if o.HingeLeft {
		hinge, other = o.Left, o.Right
	}
	side := r2.Scale(-1, o.Outward)
	if !o.SwingIn {
		side = o.Outward
		hinge, other = r2.Add(hinge, r2.Scale(o.Depth, side)), r2.Add(other, r2.Scale(o.Depth, side))
	}
	sin, cos := math.Sincos(o.Ajar * math.Pi / 180)
	shut := r2.Sub(other, hinge)
	return hinge, r2.Add(hinge, r2.Add(r2.Scale(cos, shut), r2.Scale(sin*r2.Norm(shut), side))), true
}
