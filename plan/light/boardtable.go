package light

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Fields and surfaces ask for the light of a board at very many places. For them it is worked out once how a few places of the
// board are lit, and what stands between them and who asks is found by rays.

// tableOrders are the points along a side of a board by which it is known how it is lit.
var tableOrders = [...]int{4, 8, 16, 32}

// fewestHidden is the number of the least order where something hides a part of the board: its edge falls between the places.
const fewestHidden = 2

// tablesOf are the tables of how a lamp lights the board, by order.
func (b litBoard) tablesOf(l *lamp) (all []func() []litPlace) {
	for _, order := range tableOrders {
		all = append(all, sync.OnceValue(func() []litPlace { return b.table(l, order) }))
	}
	return all
}

// table finds how the board is lit. Of a lamp that touches the board the points lie no closer than those of the finest table: how
// many there are does not grow without end.
func (b *litBoard) table(l *lamp, order int) []litPlace {
	finest := b.side() / float64(tableOrders[len(tableOrders)-1])
	points := l.boardRule(max(quickLobe*b.halfWidth()*b.near, finest))
	if len(b.between) == 0 {
		return b.litAlike(l, points, b.placesOf(order))
	}
	return b.litInParts(l, points, b.side()/float64(order))
}

// placesOf are the places of a board by which it is known how it is lit.
func (b *board) placesOf(order int) []node {
	if isParallelogram(b.Corners) {
		return parallelogramOf(b.Corners, order)
	}
	return rule(b.Corners, b.side()/float64(order))
}

// litAlike is a table of a board that sees all of the lamp.
func (b *litBoard) litAlike(l *lamp, points, places []node) (all []litPlace) {
	for _, n := range places {
		p := litPlace{at: n.at, area: n.weight, filter: colour.RGB{1, 1, 1}}
		for i := range points {
			p.addRay(l, b, &points[i])
		}
		all = append(all, p)
	}
	return all
}

// litInParts is a table of a board that sees a part of the lamp: of what each point of that lights of it.
func (b *litBoard) litInParts(l *lamp, points []node, apart float64) (all []litPlace) {
	v := solid.Viewer{BVH: b.past}
	var panes []solid.Pane
	for i := range points {
		for _, g := range v.Visible(points[i].at, b.Corners, b.between, false) {
			panes = panes[:0]
			if g.Filtered {
				panes, _ = b.past.Segment(points[i].at, solid.Centre(g.Corners), nil, panes)
			}
			for _, n := range rule(g.Corners, apart) {
				p := litPlace{at: n.at, area: n.weight, filter: passed(panes)}
				p.addRay(l, b, &points[i])
				all = append(all, p)
			}
		}
	}
	return all
}

// addRay adds the light of a point of a lamp, where it comes to the front of the board.
func (p *litPlace) addRay(l *lamp, b *litBoard, from *node) {
	if e := from.weight * l.fromPoint(from.at, &Receptor{At: p.at, Axis: b.Plane.N}); e > 0 {
		on := b.Turned(r3.Unit(r3.Sub(p.at, from.at)))
		p.rays = append(p.rays, litRay{on, e, r3.Dot(on, b.Plane.N)})
	}
}

// quickly is what comes by a board, by the table that suits the distance, past what stands between.
func (t *tracer) quickly(b *litBoard, r *Receptor, hidden bool) (sum colour.RGB) {
	apart := b.apart(r.At, quickLobe)
	k := 0
	if hidden {
		k = fewestHidden
	}
	for k < len(b.tables)-1 && b.side()/apart > float64(tableOrders[k]-1) {
		k++
	}
	places := b.tables[k]()
	for i := range places {
		p := &places[i]
		e := b.sends(p, r)
		if e == 0 {
			continue
		}
		filter := p.filter
		if hidden {
			var blocked bool
			if t.panes, blocked = t.BVH.Segment(p.at, r.At, r.Skip, t.panes[:0]); blocked {
				continue
			}
			filter = filter.Times(passed(t.panes))
		}
		sum = sum.Add(filter.Scale(e))
	}
	return sum
}

// sends is what a place of the board sends to a receptor, lx, where nothing is in the way.
func (b *litBoard) sends(p *litPlace, r *Receptor) (sum float64) {
	way := r3.Sub(r.At, p.at)
	square := r3.Norm2(way)
	out := r3.Scale(1/math.Sqrt(square), way)
	rise := r3.Dot(out, b.Plane.N)
	weight := response(r, out) * rise / square * p.area * b.gain()
	if !(weight > 0) {
		return 0
	}
	for i := range p.rays {
		if cos := r3.Dot(p.rays[i].on, out); cos > b.faint {
			sum += math.Exp(b.Power*math.Log(cos)) * p.rays[i].e / max(rise, p.rays[i].fall)
		}
	}
	return sum * weight
}
