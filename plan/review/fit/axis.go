package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// A lamp that was placed outside of an opening is meant to shine through it: its axis must pass
// the hole in the inside and in the outside face of the wall. Where it does not, and the beam misses it too, that is an error; a beam that rakes
// past a jamb is a warning with how much of it passes. The fault says by how much the axis misses, and the move of the lamp that takes it through the middle while it goes on aiming where it
// aims, for an axis on a jamb is mended on paper only.

// interval is an interval; empty where least is over most.
type interval struct{ least, most float64 }

// and is what two intervals share.
func (s interval) and(t interval) interval {
	return interval{max(s.least, t.least), min(s.most, t.most)}
}

// middle is the middle of the interval; ok is false where it is empty or has none.
func (s interval) middle() (v float64, ok bool) {
	return (s.least + s.most) / 2, s.least <= s.most && !math.IsInf(s.least, 0) && !math.IsInf(s.most, 0)
}

// passage is how an axis meets the two faces of an opening.
type passage struct {
	side, height       float64 // the worst miss, right as seen from inside, and up; 0 where it passes
	moveSide, moveUp   float64 // the move of the lamp that takes it through the middle
	mendSide, mendRise bool    // whether there is one
}

// throughOpening refuses an axis that misses the opening that its lamp was placed by.
func (r *checker) throughOpening(l *plan.Light) bool {
	s := r.out.Spots[l.Name]
	o := r.out.OpeningNamed(s.Opening)
	if o == nil || !s.Outside {
		return true
	}
	written := r.light(l.Name)
	span := report.Either(written.Aim.Set, written.Aim.Span, written.At.Span)
	if r3.Dot(l.Frame.Axis, plan.AtHeight(o.Outward, 0)) >= -1e-6 {
		r.Errorf(span, CodeAxisMisses, "aim it at something in "+o.Room, "the axis of %s points away from %s", l.Name, o.Name)
		return true
	}
	p := pass(l, o)
	if p.side == 0 && p.height == 0 {
		return true
	}
	r.Log.Add(r.missed(l, o, p, span))
	return true
}

// missed words the fault.
func (r *checker) missed(l *plan.Light, o *plan.Opening, p passage, span source.Span) source.Diagnostic {
	var where, moves string
	if p.height != 0 {
		where = r.Length(math.Abs(p.height)) + report.Either(p.height > 0, " over its head", " under its sill")
		if p.mendRise {
			up := r.Round(p.moveUp)
			moves = report.Either(up > 0, "raise ", "lower ") + l.Name + " by " + r.Length(math.Abs(up)) + ", to height: " + r.Coordinate(l.Height+up)
		}
	}
	if p.side != 0 {
		where = joinAnd(where, r.Length(math.Abs(p.side))+" beyond its "+report.Either(p.side > 0, "right", "left")+" jamb as seen from inside")
		if p.mendSide {
			right := r.Round(p.moveSide)
			moves = joinAnd(moves, "shift "+l.Name+" "+r.Length(math.Abs(right))+report.Either(right > 0, " to the right", " to the left")+
				" as seen from inside, to along: "+r.Coordinate(r.alongOf(l, o)+right))
		}
	}
	if share := beamThrough(l, o); share >= leastRaking {
		return r.Diagnostic(source.Warning, span, CodeAxisMisses, orAim(moves, l, o), "the axis of %s misses %s: it passes %s; %.0f %% of its beam goes through", l.Name, o.Name, where, 100*share)
	}
	return r.Diagnostic(source.Error, span, CodeAxisMisses, orAim(moves, l, o), "the axis of %s misses %s: it passes %s, and its beam with it", l.Name, o.Name, where)
}

// orAim adds to the moves that put a light before an opening, "" for none, that it may be aimed there instead, where
// an aim at its middle goes through.
func orAim(moves string, l *plan.Light, o *plan.Opening) string {
	aimed := *l
	aimed.Frame.Axis = r3.Unit(r3.Sub(plan.AtHeight(o.Middle(), (o.Sill+o.Head)/2), l.Frame.At))
	switch through := pass(&aimed, o); {
	case through.side != 0 || through.height != 0:
		return report.Either(moves == "", "aim it through "+o.Name, moves+", so that it goes through the middle")
	case moves == "":
		return "write aim: " + o.Name
	}
	return moves + ", so that it goes through the middle; or write aim: " + o.Name
}

func joinAnd(a, b string) string {
	if a == "" {
		return b
	}
	return a + ", and " + b
}

// alongOf is how far right of an opening's middle a lamp stands, as seen from inside.
func (r *checker) alongOf(l *plan.Light, o *plan.Opening) float64 {
	return r2.Dot(r2.Sub(plan.InPlan(l.Frame.At), o.Middle()), o.Rightward())
}

// pass follows the axis of a lamp through an opening.
func pass(l *plan.Light, o *plan.Opening) passage {
	var p passage
	sides, rises := interval{math.Inf(-1), math.Inf(1)}, interval{math.Inf(-1), math.Inf(1)}
	half := o.Width() / 2
	for _, depth := range []float64{o.Depth, 0} {
		x, z, lever := crossingOf(l, o, depth)
		p.side = largerMiss(p.side, distanceOutside(x, -half, half))
		p.height = largerMiss(p.height, distanceOutside(z, o.Sill, o.Head))
		if lever > 1e-6 { // moving the lamp moves the crossing by lever
			sides = sides.and(interval{(-half - x) / lever, (half - x) / lever})
			rises = rises.and(interval{(o.Sill - z) / lever, (o.Head - z) / lever})
		}
	}
	p.moveSide, p.mendSide = sides.middle()
	p.moveUp, p.mendRise = rises.middle()
	return p
}

// crossingOf is where a lamp's axis crosses the face of an opening's wall at a depth: how far right
// of the opening's middle, as seen from inside, and at what z; and by how much the crossing moves
// with the lamp, whose aim point stays.
func crossingOf(l *plan.Light, o *plan.Opening, depth float64) (x, z, lever float64) {
	toLamp := r2.Sub(plan.InPlan(l.Frame.At), o.Middle())
	out := r2.Dot(toLamp, o.Outward) - depth
	speed := -r2.Dot(plan.InPlan(l.Frame.Axis), o.Outward)
	t := out / speed
	hit := r3.Add(l.Frame.At, r3.Scale(t, l.Frame.Axis))
	lever = 1
	if l.Throw > 0 {
		lever = 1 - t/l.Throw
	}
	return r2.Dot(r2.Sub(plan.InPlan(hit), o.Middle()), o.Rightward()), hit.Z, lever
}

// distanceOutside is how far v lies beyond an interval, signed; 0 within it.
func distanceOutside(v, least, most float64) float64 {
	switch {
	case v > most+plane.Grain:
		return v - most
	case v < least-plane.Grain:
		return v - least
	}
	return 0
}

// largerMiss is the larger of two misses.
func largerMiss(a, b float64) float64 {
	if math.Abs(b) > math.Abs(a) {
		return b
	}
	return a
}
