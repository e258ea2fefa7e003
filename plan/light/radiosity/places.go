package radiosity

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/receptor"
)

// raysPerRun is how many rays are followed in one go.
const raysPerRun = 1024

// group sorts receptors into places.
func (t *Transport) group() {
	for i := range t.receptors {
		r := &t.receptors[i]
		n := slices.IndexFunc(t.places, func(p place) bool {
			first := &t.receptors[p.receptors[0]]
			aimed := r.Response == receptor.Radiance || first.Response == receptor.Radiance
			return !aimed && first.At == r.At && slices.Equal(first.Skip, r.Skip)
		})
		if n < 0 {
			n = len(t.places)
			t.places = append(t.places, place{})
		}
		t.places[n].receptors = append(t.places[n].receptors, i)
	}
	t.quality = t.quality.among(len(t.places))
	t.placeOf = make([]int32, len(t.receptors))
	for n := range t.places {
		for _, i := range t.places[n].receptors {
			t.placeOf[i] = int32(n)
		}
		rays := t.quality.Point
		if t.receptors[t.places[n].receptors[0]].Response == receptor.Radiance {
			rays = runs // all along the axis: they tell no spread
		}
		t.places[n].makeRoom(rays)
	}
}

// SharesRays says whether receptors stand at so many places that they share the rays of fewer.
func (s *Solution) SharesRays() bool { return s.Places() > placesFullyRead }

// Places is at how many places receptors stand.
func (s *Solution) Places() int { return len(s.t.places) }

// PlaceOf is the place of a receptor.
func (s *Solution) PlaceOf(receptor int) int { return int(s.t.placeOf[receptor]) }

// traceFromPlaces follows the rays of single receptors.
func (t *Transport) traceFromPlaces(ctx context.Context) error {
	tasks := tasksOf(t.places)
	landings := make([][]landing, len(tasks))
	tracers := t.mesh.tracers(t.workers, len(tasks))
	err := parallel.For(ctx, t.workers, len(tasks), func(worker, i int) {
		landings[i] = t.traceRun(&tracers[worker], &t.places[tasks[i].place], tasks[i].from)
	})
	if err != nil {
		return err
	}
	known := map[cellKey]int32{}
	for i, some := range landings {
		t.sortIntoCells(known, &t.places[tasks[i].place], some)
	}
	for i, some := range landings {
		t.placeCells(&t.places[tasks[i].place], some)
	}
	return t.traceFromCells(ctx)
}

// tasksOf are the runs of rays of all places.
func tasksOf(places []place) (all []task) {
	for n := range places {
		for from := 0; from < len(places[n].hits); from += raysPerRun {
			all = append(all, task{n, from})
		}
	}
	return all
}

// task is a run of rays of a place.
type task struct{ place, from int }

// traceRun follows a run of rays of a place, and gives what they have met close by.
func (t *Transport) traceRun(e *tracer, p *place, from int) (some []landing) {
	r := &t.receptors[p.receptors[0]]
	e.own = e.m.boxOf(r.Skip)
	frame := basisOf(r.Axis)
	for k := from; k < min(from+raysPerRun, len(p.hits)); k++ {
		x, y := receptorSample(k)
		var d r3.Vec
		if p.directions != nil {
			d = uniformDirection(x, y)
			p.directions[k] = d
		} else {
			d = frame.direction(r.Response, x, y)
		}
		e.number = k
		p.hits[k], _ = e.trace(r.At, d, r.Skip)
		p.at[k] = e.at
		if p.hits[k] != black && t.isNear(r.At, e.element) && !t.mesh.faceOf(e.element).isBlack() {
			some = append(some, landing{int32(k), p.hits[k], e.at})
		}
	}
	return some
}

// rayWeights sets what a receptor gets by each ray of its place for each lm/m² that is returned there, lx.
func (t *Transport) rayWeights(i int, weights []float64) []float64 {
	p, r := &t.places[t.placeOf[i]], &t.receptors[i]
	weights = slices.Grow(weights[:0], len(p.hits))[:len(p.hits)]
	if p.directions == nil {
		for k := range weights {
			weights[k] = r.Response.Integral() / float64(len(weights))
		}
		return weights
	}
	all := 0.0
	for k, d := range p.directions {
		weights[k] = r.Response.To(r3.Dot(d, r.Axis))
		all += weights[k]
	}
	for k := range weights {
		weights[k] *= r.Response.Integral() / all
	}
	return weights
}

// isNear says whether the middle of an element lies close to a place.
func (t *Transport) isNear(at r3.Vec, element uint32) bool {
	f := t.mesh.faceOf(element)
	cell := int(element/4 - f.first)
	x, y := f.du*(float64(cell%f.nu)+0.25+0.5*float64(element&1)), f.dv*(float64(cell/f.nu)+0.25+0.5*float64(element>>1&1))
	return r3.Norm2(r3.Sub(f.at(x, y), at)) < t.quality.Near*t.quality.Near
}
