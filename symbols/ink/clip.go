package ink

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// ClipPolygon cuts a ring to the inside of a convex polygon, of either direction (Sutherland and
// Hodgman 1974, "Reentrant polygon clipping", Comm. ACM 17, p. 32). The parts of a ring that is
// not convex stay joined by lines along the edge, which a fill does not show. Nothing is left of a
// ring outside, or where the clip has no area.
func ClipPolygon(ring, convex []r2.Vec) []r2.Vec {
	turn := signedArea(convex)
	if turn == 0 {
		return nil
	}
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		if turn < 0 {
			a, b = b, a
		}
		ring = leftOf(ring, a, b)
	}
	if len(ring) < 3 {
		return nil
	}
	return ring
}

// leftOf is the part of a ring on the left of the line from a to b.
func leftOf(ring []r2.Vec, a, b r2.Vec) []r2.Vec {
	var kept []r2.Vec
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sp, sq := side(a, b, p), side(a, b, q)
		if sp >= 0 {
			kept = append(kept, p)
		}
		if sp > 0 && sq < 0 || sp < 0 && sq > 0 {
			kept = append(kept, between(p, q, sp/(sp-sq)))
		}
	}
	return kept
}

// ClipPolyline cuts an open line to the inside of a convex polygon and returns the parts, in
// order.
func ClipPolyline(points, convex []r2.Vec) [][]r2.Vec {
	turn := signedArea(convex)
	if turn == 0 {
		return nil
	}
	var parts [][]r2.Vec
	var part []r2.Vec
	for i := range len(points) - 1 {
		p, q := points[i], points[i+1]
		from, to, ok := inside(p, q, convex, turn)
		if !ok {
			continue
		}
		if from > 0 || len(part) == 0 {
			part = []r2.Vec{between(p, q, from)}
		}
		part = append(part, between(p, q, to))
		if to < 1 || i == len(points)-2 {
			parts, part = append(parts, part), nil
		}
	}
	if part != nil {
		parts = append(parts, part)
	}
	return parts
}

// inside returns the shares of the way from p to q between which it lies inside (Cyrus and Beck
// 1978, "Generalized two- and three-dimensional clipping", Computers & Graphics 3, p. 23).
func inside(p, q r2.Vec, convex []r2.Vec, turn float64) (from, to float64, ok bool) {
	to = 1
	for i, a := range convex {
		b := convex[(i+1)%len(convex)]
		if turn < 0 {
			a, b = b, a
		}
		sp, sq := side(a, b, p), side(a, b, q)
		switch {
		case sp < 0 && sq <= 0 || sp <= 0 && sq < 0:
			return 0, 0, false
		case sp < 0:
			from = max(from, sp/(sp-sq))
		case sq < 0:
			to = min(to, sp/(sp-sq))
		}
	}
	return from, to, from < to
}

// side is positive where p lies on the left of the line from a to b.
func side(a, b, p r2.Vec) float64 { return r2.Cross(r2.Sub(b, a), r2.Sub(p, a)) }

// between is the point at a share of the way from p to q; at 0 and 1 it is p and q themselves.
func between(p, q r2.Vec, share float64) r2.Vec {
	switch share {
	case 0:
		return p
	case 1:
		return q
	}
	return r2.Add(p, r2.Scale(share, r2.Sub(q, p)))
}

// signedArea is positive for a ring that runs counter-clockwise.
func signedArea(ring []r2.Vec) float64 {
	sum := 0.0
	for i, p := range ring {
		sum += r2.Cross(p, ring[(i+1)%len(ring)])
	}
	return sum / 2
}
