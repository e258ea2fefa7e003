package resolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// cableEnd is a place that a cable leads from or to, by the z of its floor, m.
type cableEnd struct {
	at    r2.Vec
	floor float64
}

// lead is the cable from one end to the other: on one storey, or over stairs where that is shorter, and straight up where neither can be; nil where there is no way.
func (r *cablePass) lead(from, to cableEnd) (run *plan.Run) {
	flights := r.out.Flights()
	one, stairs := r.oneStorey(from, to), !plan.SameFloor(from.floor, to.floor) && plan.Joined(flights, from.floor, to.floor)
	if one {
		run = r.way(from, to)
	}
	if stairs {
		run = shorter(run, r.overStairs(from, to, flights))
	}
	if !one && !stairs {
		run = r.straightUp(from, to)
	}
	return run
}

// oneStorey says whether the room of the lower end does not end under the floor of the higher. Outdoors none does: a cable hangs out of a window.
func (r *cablePass) oneStorey(a, b cableEnd) bool {
	if a.floor > b.floor {
		a, b = b, a
	}
	room := r.roomOn(a.at, a.floor)
	return room == nil || room.Top > b.floor+plane.Grain
}

// straightUp is a cable from one storey to another of which nobody knows where it goes through the floor: on the higher of them, and up to that.
func (r *cablePass) straightUp(from, to cableEnd) *plan.Run {
	run := r.way(from, to)
	if run == nil {
		return nil
	}
	low := from
	if to.floor < from.floor {
		low = to
	}
	run.Climb = math.Abs(to.floor - from.floor)
	run.Length += math.Max(0, r.floorAt(low.at, low.floor+run.Climb)-low.floor)
	if foot := plan.AtHeight(low.at, low.floor); low == from {
		run.Way = append([]r3.Vec{foot}, run.Way...)
	} else {
		run.Way = append(run.Way, foot)
	}
	return run
}

// landing is the head of a flight, and the shortest cable up or down to there; nil where none is known.
type landing struct {
	run  *plan.Run
	gone bool // all that leads on from it is looked at
}

// overStairs is the shortest cable over stairs: each time it goes on from the landing to which that is the shortest. nil where none gets through.
func (r *cablePass) overStairs(from, to cableEnd, flights []plan.Flight) (best *plan.Run) {
	landings := make([]landing, len(flights))
	at, so := from, &plan.Run{}
	for {
		if plan.SameFloor(at.floor, to.floor) {
			best = shorter(best, joined(so, r.way(at, to)))
		}
		for i := range flights {
			if f := &flights[i]; plan.SameFloor(f.Low, at.floor) && !landings[i].gone {
				landings[i].run = shorter(landings[i].run, joined(so, r.way(at, cableEnd{f.Foot, f.Low}), onFlight(f)))
			}
		}
		next := nearestOf(landings)
		if next < 0 || best != nil && best.Length <= landings[next].run.Length {
			return best
		}
		landings[next].gone = true
		at, so = cableEnd{flights[next].Head, flights[next].High}, landings[next].run
	}
}

// nearestOf is the landing to go on from; -1 where there is none.
func nearestOf(landings []landing) int {
	next := -1
	for i := range landings {
		if l := &landings[i]; l.run != nil && !l.gone && (next < 0 || l.run.Length < landings[next].run.Length) {
			next = i
		}
	}
	return next
}

// shorter is the shorter of two cables; nil where there is neither.
func shorter(a, b *plan.Run) *plan.Run {
	if a == nil || b != nil && b.Length < a.Length {
		return b
	}
	return a
}

// onFlight is a cable that lies on stairs: up each riser and along each tread.
func onFlight(f *plan.Flight) *plan.Run {
	run := &plan.Run{Path: []r2.Vec{f.Foot, f.Head}, Stairs: []string{f.Name}, Length: (1+cableSlack)*r2.Norm(r2.Sub(f.Head, f.Foot)) + math.Abs(f.High-f.Low)}
	low, high, from, to := f.Foot, f.Head, f.Low, f.High
	if f.High < f.Low {
		low, high, from, to = high, low, to, from
	}
	for k := range f.Steps {
		at := r2.Add(low, r2.Scale(float64(k)/float64(f.Steps), r2.Sub(high, low)))
		run.Way = append(run.Way, plan.AtHeight(at, from+(to-from)*float64(k)/float64(f.Steps)), plan.AtHeight(at, from+(to-from)*float64(k+1)/float64(f.Steps)))
	}
	run.Way = append(run.Way, plan.AtHeight(high, to))
	if f.High < f.Low {
		slices.Reverse(run.Way)
	}
	return run
}

// joined is one cable of several that lead on from each other; nil where one of them lacks.
func joined(runs ...*plan.Run) *plan.Run {
	all := &plan.Run{}
	for _, run := range runs {
		if run == nil {
			return nil
		}
		if len(all.Path) > 0 && len(run.Path) > 0 {
			all.Path = slices.Clip(all.Path[:len(all.Path)-1]) // the end of the one is the beginning of the next
		}
		all.Path, all.Way = slices.Concat(all.Path, run.Path), slices.Concat(all.Way, run.Way)
		all.Through, all.Over, all.Stairs = slices.Concat(all.Through, run.Through), slices.Concat(all.Over, run.Over), slices.Concat(all.Stairs, run.Stairs)
		all.Length += run.Length
	}
	return all
}
