package light

// Evaluator returns a function that gives the light at a receptor, lx, by the same rays that
// Basis takes for single points. It is for the few places where a lattice is too coarse: the
// edge of a shadow. The function keeps its memory between calls, so one goroutine may use it;
// ask for another to use it in two.
func (w *World) Evaluator(lights []Emitter, d Levels) func(Receptor) float64 {
	return w.evaluator(lights, d, false)
}

// QuickEvaluator is Evaluator by the short rules that fields are summed by: what is seen of a lamp is as exact, and the
// light of it to a fifth of a percent.
func (w *World) QuickEvaluator(lights []Emitter, d Levels) func(Receptor) float64 {
	return w.evaluator(lights, d, true)
}

func (w *World) evaluator(lights []Emitter, d Levels, quick bool) func(Receptor) float64 {
	t := &tracer{visibleSums: newVisibleSums(w.bvh), quick: quick}
	lamps := make([]*lamp, len(lights))
	for i := range lights {
		lamps[i] = w.newLamp(&lights[i])
	}
	return func(r Receptor) float64 {
		total := 0.0
		for i, l := range lamps {
			level := d[lights[i].Name]
			for _, s := range t.all(l, &r) {
				total += level.Times(s.filter).Y() * s.value
			}
		}
		return total
	}
}
