package fit

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// wayOut warns of a way out that is narrower than that, or to which somebody has no way as wide past what stands on the floor. Doors on
// the way are taken to open.
func wayOut(r *checker, o *plan.Opening) bool {
	if !o.Escape {
		return true
	}
	if wide := clearWidth(o); wide < escapeWide-plane.Grain {
		r.Warnf(o.Span, CodeEscape, "open its leaf farther, or name another way out", "the way out %s is %s wide as it stands, and %s is usual at least", o.Name, r.Length(wide), r.Length(escapeWide))
		return true
	}
	all := onFloors(r, o)
	for _, p := range r.out.Posts() {
		if r.out.RoomUnder(p.At, "") != nil { // else outside already
			wayOutOf(r, all, &p, o)
		}
	}
	return true
}

// mostCleared is how many things are looked at for the one that is in the way, so that no scene takes long.
const mostCleared = 40

// clearing says what to do about a way that is too narrow, by the one thing whose going makes it wide, where one alone does.
func clearing(r *checker, all []obstacle, p *plan.Person, o *plan.Opening) string {
	var tried []string
	for i := len(all) - 1; i >= 0; i-- { // equipment before furniture
		of := all[i].of
		if of == "" || slices.Contains(tried, of) || len(tried) == mostCleared {
			continue
		}
		tried = append(tried, of)
		rest := slices.DeleteFunc(slices.Clone(all), func(q obstacle) bool { return q.of == of })
		if wide, _ := widest(r, rest, p, o); wide >= escapeWide {
			return "move " + of + " out of that way, or name another way out"
		}
	}
	return "clear a way, or name another way out"
}

// wayOutOf warns of somebody whose way to a way out is too narrow.
func wayOutOf(r *checker, all []obstacle, p *plan.Person, o *plan.Opening) {
	wide, joined := widest(r, all, p, o)
	past := pastWhat(r, all, wide, p, o)
	switch {
	case !joined:
		r.Infof(o.Span, CodeEscape, "put the stairs between the two floors into furniture:", "the way of %s to the way out %s is not checked: it leads to another floor, and no stairs of the scene lead there", p.Name, o.Name)
	case wide <= 0:
		r.Warnf(o.Span, CodeEscape, clearing(r, all, p, o), "%s has no way to the way out %s past %s", p.Name, o.Name, past)
	case wide < escapeWide:
		r.Warnf(o.Span, CodeEscape, clearing(r, all, p, o), "%s has a way of %s to the way out %s past %s, and %s is usual at least",
			p.Name, r.Length(wide), o.Name, past, r.Length(escapeWide))
	}
}

// pastWhat says what makes a way as narrow as it is: what stands there, or what hangs there too low.
func pastWhat(r *checker, all []obstacle, wide float64, p *plan.Person, o *plan.Opening) string {
	if wide >= escapeWide {
		return ""
	}
	standing := slices.DeleteFunc(slices.Clone(all), func(o obstacle) bool { return o.hangs })
	if without, _ := widest(r, standing, p, o); without <= wide {
		return "what stands there"
	}
	flat := slices.DeleteFunc(slices.Clone(all), func(o obstacle) bool { return o.ceiling })
	if without, _ := widest(r, flat, p, o); without > wide {
		return "a ceiling lower than " + r.Length(headroom) + " and what stands there"
	}
	return "what stands there and hangs lower than " + r.Length(headroom)
}

// way looks for ways to an opening over floors and flights.
type way struct {
	to        *plan.Opening
	floor     float64 // z of the floor that the way out is on, m
	obstacles []obstacle
	flights   []plan.Flight
}

// widest is how wide a way somebody has to a way out, m, up to the usual width; not joined where that is on another floor, and no stairs
// lead there.
func widest(r *checker, all []obstacle, p *plan.Person, o *plan.Opening) (wide float64, joined bool) {
	floor := p.Base
	if room := r.out.RoomUnder(p.At, ""); room != nil {
		floor = room.Base // who sits on a deck steps down from it
	}
	w := way{o, o.Sill, all, r.out.Flights()}
	if room := r.out.RoomNamed(o.Room); room != nil {
		w.floor = room.Base // who leaves by a window climbs over its sill
	}
	if plan.SameFloor(floor, w.floor) {
		return widestWay(p.At, w.end(), w.between(p.Base, w.floor)), true
	}
	return w.from(p.At, floor)
}

// end is the middle of the way out, in the outside face of its wall.
func (w *way) end() r2.Vec {
	return r2.Add(w.to.Middle(), r2.Scale(w.to.Depth/2, w.to.Outward))
}

// between is what stands between two floors, or on them, as high as a way is clear to: what is on another floor is in nobody's way.
func (w *way) between(a, b float64) (rings [][]r2.Vec) {
	low, high := min(a, b), max(a, b)+headroom
	for i := range w.obstacles {
		if o := &w.obstacles[i]; plane.Overlap(o.low, o.high, low, high) {
			rings = append(rings, o.outline)
		}
	}
	return rings
}

// place is where somebody comes to, on a floor.
type place struct {
	at    r2.Vec
	floor float64 // z, m
	wide  float64 // of the way there, m
	gone  bool    // all that leads on from it is looked at
}

// from is the widest way from a place on a floor: each time from that place on to which the way is widest.
func (w *way) from(at r2.Vec, floor float64) (wide float64, joined bool) {
	if joined = plan.Joined(w.flights, floor, w.floor); !joined {
		return 0, false
	}
	places := []place{{at, floor, escapeWide, false}}
	for _, f := range w.flights {
		places = append(places, place{at: f.Head, floor: f.High})
	}
	for {
		here := widestOf(places, wide)
		if here < 0 {
			return wide, true
		}
		p := &places[here]
		p.gone = true
		if plan.SameFloor(p.floor, w.floor) {
			wide = max(wide, min(p.wide, widestWay(p.at, w.end(), w.between(p.floor, w.floor))))
		}
		for i, f := range w.flights {
			if to := &places[i+1]; !to.gone && plan.SameFloor(f.Low, p.floor) && min(p.wide, f.Wide) > max(to.wide, wide) {
				to.wide = max(to.wide, min(p.wide, f.Wide, widestWay(p.at, f.Foot, w.between(p.floor, f.Low))))
			}
		}
	}
}

// widestOf is the place to go on from: of those not gone that to which the way is widest, and wider than one that is known; -1 none.
func widestOf(places []place, known float64) int {
	here := -1
	for i := range places {
		if !places[i].gone && places[i].wide > known && (here < 0 || places[i].wide > places[here].wide) {
			here = i
		}
	}
	return here
}
