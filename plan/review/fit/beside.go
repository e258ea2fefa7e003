package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
)

// besideFree tells what the shoulders of somebody who walks come into where the line of the face is free: a warning where two things leave no way for
// a body, else a note, for a step aside is enough.
func besideFree(c *checker, p *plan.Person) bool {
	w := p.Walk
	if w == nil {
		return true
	}
	r := c.walked(p)
	w.Beside = r.beside()
	for _, b := range w.Beside {
		where := r.stretchWords(b.From, b.To)
		if b.Other != "" {
			two := report.Either(b.Other == b.Name, "parts of "+b.Name, b.Name+" and "+b.Other)
			r.Warnf(w.Span, CodeWalkTight, "move one of them, or lead the walk round them", "the walk of %s leads between %s, %s apart, %s: a body %s wide does not pass",
				p.Name, two, r.Length(b.Apart), where, r.Length(plan.BodyWidth))
			continue
		}
		r.Infof(w.Span, CodeWalkTight, "lead it "+r.Length(r.RoundUp(plan.BodyWidth/2-b.Near))+" farther to the "+report.Either(b.Left, "right", "left")+", as one walks",
			"the walk of %s comes within %s of %s, on its %s, %s: a body is %s wide", p.Name, r.Length(b.Near), b.Name, report.Either(b.Left, "left", "right"), where, r.Length(plan.BodyWidth))
	}
	return true
}

// stretchWords says where along a walk something is.
func (r walked) stretchWords(from, to float64) string {
	return report.Either(to-from > clash.Slack, "from "+r.Length(from)+" to "+r.Length(to), r.Length(from)) + " along it"
}

// beside is what a body comes into on either side of a walk: of each thing and side the nearest, and of two that leave no way the narrowest.
func (r walked) beside() []plan.Beside {
	var all besides
	for _, s := range r.walk.Legs() {
		near := besideLeg(&s, r.upright(r.stepBeside(s.From, s.To), s.Base+r.walk.Crown))
		for _, b := range near {
			if plan.BodyWidth/2-b.Near > clash.Slack && b.To-b.From > clash.Slack && !r.throughThere(&b) {
				all.add(between(b, near))
			}
		}
	}
	for _, t := range r.walk.Turns() {
		for _, o := range r.upright(r.stepBeside(t.Along, t.Along), r.walk.BaseAt(t.Along)+r.walk.Crown) {
			b := plan.Beside{Name: o.name, Left: t.Left, Near: nearTurn(&t, o.ring), From: t.Along, To: t.Along}
			if plan.BodyWidth/2-b.Near > clash.Slack && !r.throughThere(&b) {
				all.add(b)
			}
		}
	}
	return slices.DeleteFunc(all, func(b plan.Beside) bool {
		return b.Other == "" && slices.ContainsFunc(all, func(o plan.Beside) bool { return o.Other != "" && (o.Name == b.Name || o.Other == b.Name) })
	})
}

// besides are findings along a walk, in the making.
type besides []plan.Beside

// add adds a finding to what is known of the same things on the same side.
func (all *besides) add(b plan.Beside) {
	for i := range *all {
		if o := &(*all)[i]; o.Name == b.Name && o.Left == b.Left && o.Other == b.Other {
			o.Near, o.Apart, o.From, o.To = min(o.Near, b.Near), min(o.Apart, b.Apart), min(o.From, b.From), max(o.To, b.To)
			return
		}
	}
	*all = append(*all, b)
}

// throughThere says whether the line of a walk leads through a thing about where that is beside it, which is said of the line. Walls that meet are one.
func (r walked) throughThere(b *plan.Beside) bool {
	return slices.ContainsFunc(r.walk.Through, func(t plan.Through) bool {
		walls := b.Near <= plane.Grain && r.out.WallNamed(t.Name) != nil && r.out.WallNamed(b.Name) != nil
		return (t.Name == b.Name || walls) && t.From <= b.To+plan.BodyWidth && b.From <= t.To+plan.BodyWidth
	})
}

// stepBeside is the z from which up a body is stopped between two places of a walk, m: where it goes up a step, its shoulders are over that sooner
// than its face.
func (r walked) stepBeside(from, to float64) float64 {
	base := r.walk.BaseAt(from)
	for i, t := range r.walk.Treads {
		ends := i+1 < len(r.walk.Treads) && r.walk.Treads[i+1].From < from-plan.BodyWidth/2
		if t.From < to+plan.BodyWidth/2 && !ends {
			base = max(base, t.Base)
		}
	}
	return base + plan.StepOver
}

// between makes of a finding one of two things where another on the other side leaves no way for a body; the one on the left is named first.
func between(b plan.Beside, near []plan.Beside) plan.Beside {
	narrowest := b
	for _, o := range near {
		from, to := max(b.From, o.From), min(b.To, o.To)
		apart := b.Near + o.Near
		if o.Left == b.Left || to-from <= clash.Slack || apart <= plane.Grain || plan.BodyWidth-apart <= clash.Slack || narrowest.Other != "" && narrowest.Apart <= apart {
			continue
		}
		narrowest = plan.Beside{Name: b.Name, Other: o.Name, Left: true, Near: b.Near, From: from, To: to, Apart: apart}
		if o.Left {
			narrowest.Name, narrowest.Other, narrowest.Near = o.Name, b.Name, o.Near
		}
	}
	return narrowest
}

// besideLeg is what stands on either side of a straight part of a walk within the breadth of a body.
func besideLeg(s *plan.WalkLeg, all []outlined) (near []plan.Beside) {
	way := r2.Unit(r2.Sub(s.B, s.A))
	for _, o := range all {
		for _, left := range [2]bool{true, false} {
			aside := r2.Vec{X: way.Y, Y: -way.X}
			if left {
				aside = r2.Scale(-1, aside)
			}
			out := r2.Scale(plan.BodyWidth, aside)
			part := clipped(o.ring, []r2.Vec{s.A, s.B, r2.Add(s.B, out), r2.Add(s.A, out)})
			if part == nil {
				continue
			}
			b := plan.Beside{Name: o.name, Left: left, Near: math.Inf(1), From: math.Inf(1), To: math.Inf(-1)}
			for _, p := range part {
				d := r2.Sub(p, s.A)
				along := s.From + r2.Dot(d, way)
				b.Near, b.From, b.To = min(b.Near, max(0, r2.Dot(d, aside))), min(b.From, along), max(b.To, along)
			}
			near = append(near, b)
		}
	}
	return near
}

// nearTurn is how near to a turn something is that a shoulder swings into there, m; far off where it does not.
func nearTurn(t *plan.Turn, ring []r2.Vec) float64 {
	part := clipped(ring, t.Ring)
	switch {
	case part == nil:
		return math.Inf(1)
	case plane.Contains(t.At, plane.CounterClockwise(slices.Clone(part)), -plane.Grain):
		return 0
	}
	return r2.Norm(r2.Sub(plane.Nearest(t.At, part), t.At))
}

// clipped is what of a convex ring, or of a line there and back, lies in another ring; nil where nothing does.
func clipped(ring, in []r2.Vec) []r2.Vec {
	if !plane.BoxesOverlap(ring, in) {
		return nil
	}
	plane.Edges(plane.CounterClockwise(in), func(l plane.Line) bool {
		ring = plane.Clip(ring, l)
		return ring != nil
	})
	return ring
}

// sheetsAcross are sheets that the line of a walk leads through, but for those in what it leads through anyway, as a pane over its sill.
func (r walked) sheetsAcross() (all []plan.Through) {
	for _, s := range r.walk.Legs() {
		for _, o := range r.uprightSheets(s.Base+plan.StepOver, s.Base+r.walk.Crown) {
			from, to, crosses := acrossLeg(&s, o.ring)
			if crosses && !slices.ContainsFunc(r.walk.Through, func(t plan.Through) bool { return t.From <= from && from <= t.To }) {
				all = r.goingOn(all, plan.Through{Name: o.name, From: from, To: to})
			}
		}
	}
	return all
}

// acrossLeg is where a straight part of a walk leads over an outline, or across the line of an upright sheet, m along the walk.
func acrossLeg(s *plan.WalkLeg, ring []r2.Vec) (from, to float64, crosses bool) {
	if len(ring) < 3 {
		on, _, meets := plane.PathsCross([]r2.Vec{s.A, s.B}, ring)
		return s.From + on, s.From + on, meets
	}
	near, far, ok := plane.Chord(s.A, r2.Unit(r2.Sub(s.B, s.A)), ring)
	near, far = max(0, near), min(s.To-s.From, far)
	return s.From + near, s.From + far, ok && far-near > clash.Slack
}

// goingOn adds a stretch to those before it, of which the last goes on in it where it is of the same thing: the halves of a
// wall between two rooms are one.
func (r *contactFinder) goingOn(all []plan.Through, t plan.Through) []plan.Through {
	if n := len(all); n > 0 && t.From-all[n-1].To <= contactTolerance {
		last := &all[n-1]
		if last.Name == t.Name || r.out.WallNamed(last.Name) != nil && r.out.WallNamed(t.Name) != nil {
			last.To = t.To
			return all
		}
	}
	return append(all, t)
}
