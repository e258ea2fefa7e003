package fit

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// walkFree warns of stretches of a walk that lead through something, and notes them: light that is read there is nobody's.
func (r *checker) walkFree(p *plan.Person) bool {
	w := p.Walk
	if w == nil {
		return true
	}
	w.Through = r.through(w, p.Own)
	on := r.walked(p)
	w.Through = append(w.Through, on.sheetsAcross()...)
	slices.SortStableFunc(w.Through, func(a, b plan.Through) int { return cmp.Compare(a.From, b.From) })
	for _, t := range w.Through {
		r.Warnf(w.Span, CodeWalkThrough, r.roundabout(t.Name), "the walk of %s leads through %s, %s",
			p.Name, t.Name, on.stretchWords(t.From, t.To))
	}
	for i := range w.Points {
		at := &w.Points[i]
		at.In = r.solidAlong(plan.InPlan(at.Face.At), at.Base+plan.StepOver, at.Base+w.Crown, p.Own)
	}
	return true
}

// roundabout says how a walk gets past a thing.
func (r *checker) roundabout(name string) string {
	switch o := r.out.OpeningNamed(name); {
	case r.things[name].movable():
		return "lead it round " + name
	case r.out.RoomNamed(beforeDot(name)) != nil && r.out.WallNamed(name) == nil:
		return "lead it where the ceiling is higher"
	case o != nil && o.Leaf != nil && o.Ajar >= openWide:
		return "lead it past the leaf of " + name
	case o != nil && o.Leaf != nil:
		return "lead it past the leaf of " + name + ", or open it: ajar: 90"
	}
	return "lead it through a door or a gap"
}

// through are the stretches of a walk in the middle of which a body would be in something.
func (r *checker) through(w *plan.Walk, own []solid.ID) (all []plan.Through) {
	from := 0.0
	for i := 1; i < len(w.Corners); i++ {
		a, b := w.Corners[i-1], w.Corners[i]
		long := r2.Norm(r2.Sub(b, a))
		edges := r.edgesAlong(w, from, a, b)
		for k := 1; k < len(edges); k++ {
			near, far := edges[k-1], edges[k]
			base := w.BaseAt(from + (near+far)/2)
			at := r2.Add(a, r2.Scale((near+far)/2/long, r2.Sub(b, a)))
			name := r.solidAlong(at, base+plan.StepOver, base+w.Crown, own)
			if name != "" {
				all = r.goingOn(all, plan.Through{Name: name, From: from + near, To: from + far})
			}
		}
		from += long
	}
	return slices.DeleteFunc(all, func(t plan.Through) bool { return t.To-t.From <= contactTolerance })
}

// edgesAlong are the distances along the leg of a walk from a to b where a body comes to a solid, leaves one or changes its
// level, with both ends of the leg. from is how far along the walk the leg begins.
func (r *checker) edgesAlong(w *plan.Walk, from float64, a, b r2.Vec) []float64 {
	long, way := r2.Norm(r2.Sub(b, a)), r2.Unit(r2.Sub(b, a))
	edges := []float64{0, long}
	add := func(d float64) {
		if d > plane.Grain && d < long-plane.Grain {
			edges = append(edges, d)
		}
	}
	for i := range r.out.Set.Prisms {
		if near, far, ok := plane.Chord(a, way, r.out.Set.Prisms[i].Base); ok {
			add(near)
			add(far)
		}
	}
	for _, t := range w.Treads {
		add(t.From - from)
	}
	slices.Sort(edges)
	return edges
}
