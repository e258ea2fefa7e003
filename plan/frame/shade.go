package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The least and the most distance of a shade before a lens, m, and the most of the way to the lamp: nearer it is an eyebrow on the
// matte box, farther the lamp is flagged off where it stands. Its least side, and what sides are rounded up to, m. Common practice.
const (
	leastAhead = 0.15
	mostAhead  = 2.0
	mostOfWay  = 0.8
	leastSide  = 0.10
	shadeStep  = 0.05
)

// lampPoint is a place of a lamp as a side of the picture has it: how far out it lies to that side, how far along that, and how
// far before the lens, m.
type lampPoint struct{ out, along, ahead float64 }

// shade is what keeps the places of a lamp off an entrance of a radius, m, beside the side of the picture where it can stand
// nearest; nil where it can stand beside none.
//
// Seen from the side, the edge of what the picture takes is the ray from the near rim of the entrance along the edge of the
// frame; what shades all of the entrance from a place reaches in to the ray from there to its far rim. The two part at a
// distance before the lens: there and beyond a shade has room between them.
func (p picture) shade(places []r3.Vec, radius float64) (best *Shade) {
	up := p.Up()
	for _, to := range [...]struct {
		side       Side
		out, along r3.Vec
		edge       float64
	}{{LeftSide, r3.Scale(-1, p.Right), up, p.wide}, {RightSide, p.Right, up, p.wide}, {Top, up, p.Right, p.high}, {Bottom, r3.Scale(-1, up), p.Right, p.high}} {
		var all []lampPoint
		for _, c := range places {
			d := r3.Sub(c, p.At)
			all = append(all, lampPoint{r3.Dot(d, to.out), r3.Dot(d, to.along), r3.Dot(d, p.Axis)})
		}
		ahead, ok := partsAt(all, radius, to.edge)
		if !ok || best != nil && ahead >= best.Ahead {
			continue
		}
		inner, outer, low, high := spanAt(all, radius, to.edge, ahead)
		middle := r3.Add(p.At, r3.Add(r3.Scale(ahead, p.Axis), r3.Add(r3.Scale((inner+outer)/2, to.out), r3.Scale((low+high)/2, to.along))))
		best = &Shade{Side: to.side, Ahead: ahead, Width: outer - inner, Height: high - low, Middle: middle}
		if to.side == Top || to.side == Bottom {
			best.Width, best.Height = best.Height, best.Width
		}
	}
	return best
}

// partsAt is the least distance ahead of the lens, rounded up, at which what shades the entrance clears the picture; not ok where
// there is none before the lamp.
func partsAt(all []lampPoint, radius, edge float64) (ahead float64, ok bool) {
	slope, nearest := math.Inf(1), math.Inf(1)
	for _, c := range all {
		if c.ahead <= 0 {
			return 0, false
		}
		slope, nearest = min(slope, (c.out+radius)/c.ahead), min(nearest, c.ahead)
	}
	if slope <= edge {
		return 0, false
	}
	ahead = max(leastAhead, roundedUp(2*radius/(slope-edge)))
	return ahead, ahead <= min(mostAhead, mostOfWay*nearest)
}

// spanAt is the rectangle at a distance ahead that shades the entrance: from the edge of the picture outward, and along it.
func spanAt(all []lampPoint, radius, edge, ahead float64) (inner, outer, low, high float64) {
	inner = radius + ahead*edge
	outer, low, high = inner, math.Inf(1), math.Inf(-1)
	for _, c := range all {
		share := ahead / c.ahead
		outer = max(outer, radius+(c.out-radius)*share)
		low, high = min(low, -radius+(c.along+radius)*share), max(high, radius+(c.along-radius)*share)
	}
	deep, wide := max(leastSide, roundedUp(outer-inner)), max(leastSide, roundedUp(high-low))
	middle := (low + high) / 2
	return inner, inner + deep, middle - wide/2, middle + wide/2
}

// roundedUp is a length to the next step of what a flag comes in.
func roundedUp(metres float64) float64 {
	return math.Ceil(metres/shadeStep-1e-9) * shadeStep
}
