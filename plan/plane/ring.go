package plane

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Grain is how exact geometry in plan is, m: it is exact to a millionth of a metre: points closer than that are one point,
// and a piece thinner than that does not count.
const Grain = 1e-6

// Snap puts a coordinate on the grain, so that pieces cut one by one share their corners. The
// result is the decimal as it would be written, which a product with the grain is not.
func Snap(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// SnapRing puts every corner on the grain and drops those that then stand on the line between
// their neighbours. It returns nil for a ring without area.
func SnapRing(ring []r2.Vec) []r2.Vec {
	on := make([]r2.Vec, len(ring))
	for i, p := range ring {
		on[i] = r2.Vec{X: Snap(p.X), Y: Snap(p.Y)}
	}
	return Tidy(on)
}

// Tidy drops corners that repeat or stand on the line between their neighbours, to the grain.
// It returns nil for a ring without area.
func Tidy(ring []r2.Vec) []r2.Vec {
	kept := append([]r2.Vec(nil), ring...)
	for i := 0; i < len(kept) && len(kept) >= 3; {
		n := len(kept)
		if Collinear(kept[(i+n-1)%n], kept[i], kept[(i+1)%n]) {
			kept = append(kept[:i], kept[i+1:]...)
			i = max(i-1, 0) // its neighbour may have become flat
			continue
		}
		i++
	}
	if len(kept) < 3 {
		return nil
	}
	return kept
}

// Collinear reports whether b adds nothing between a and c.
func Collinear(a, b, c r2.Vec) bool {
	chord := r2.Sub(c, a)
	length := r2.Norm(chord)
	if length <= Grain {
		return true
	}
	return math.Abs(r2.Cross(chord, r2.Sub(b, a))) <= Grain*length
}

// Area is the area of a ring, positive where it runs counter-clockwise.
func Area(ring []r2.Vec) float64 {
	if len(ring) == 0 {
		return 0
	}
	var twice float64
	o := ring[0] // far from the origin products would cancel
	for i := range ring {
		twice += r2.Cross(r2.Sub(ring[i], o), r2.Sub(ring[(i+1)%len(ring)], o))
	}
	return twice / 2
}

// CounterClockwise turns a ring round where it runs clockwise.
func CounterClockwise(ring []r2.Vec) []r2.Vec {
	if Area(ring) >= 0 {
		return ring
	}
	turned := slices.Clone(ring)
	slices.Reverse(turned)
	return turned
}

// Perimeter is the length round a ring.
func Perimeter(ring []r2.Vec) float64 {
	var sum float64
	for i := range ring {
		sum += r2.Norm(r2.Sub(ring[(i+1)%len(ring)], ring[i]))
	}
	return sum
}

// Thin reports whether a ring is too thin to be a piece of anything.
func Thin(ring []r2.Vec) bool {
	return len(ring) < 3 || math.Abs(Area(ring)) <= Grain*Perimeter(ring)
}

// Centroid is the centre of area of a ring.
func Centroid(ring []r2.Vec) r2.Vec {
	var sum r2.Vec
	var weight float64
	for i := 1; i+1 < len(ring); i++ {
		a, b := r2.Sub(ring[i], ring[0]), r2.Sub(ring[i+1], ring[0])
		w := r2.Cross(a, b)
		sum = r2.Add(sum, r2.Scale(w/3, r2.Add(a, b)))
		weight += w
	}
	if weight == 0 {
		return ring[0]
	}
	return r2.Add(ring[0], r2.Scale(1/weight, sum))
}

// BoxesOverlap reports whether the bounding boxes of two rings share some area.
func BoxesOverlap(a, b []r2.Vec) bool {
	p, q := Bounds(a), Bounds(b)
	return p.Min.X < q.Max.X && q.Min.X < p.Max.X && p.Min.Y < q.Max.Y && q.Min.Y < p.Max.Y
}

// Bounds is the bounding box of some points; its Min is over its Max where there are none.
func Bounds(points []r2.Vec) r2.Box {
	inf := math.Inf(1)
	box := r2.Box{Min: r2.Vec{X: inf, Y: inf}, Max: r2.Vec{X: -inf, Y: -inf}}
	for _, p := range points {
		box = Include(box, p)
	}
	return box
}

func Include(box r2.Box, p r2.Vec) r2.Box {
	box.Min = r2.Vec{X: min(box.Min.X, p.X), Y: min(box.Min.Y, p.Y)}
	box.Max = r2.Vec{X: max(box.Max.X, p.X), Y: max(box.Max.Y, p.Y)}
	return box
}

// Support is how far a set of points lies along direction d from the origin.
func Support(points []r2.Vec, d r2.Vec) float64 {
	far := math.Inf(-1)
	for _, p := range points {
		far = math.Max(far, r2.Dot(p, d))
	}
	return far
}

// Width is the least distance between two parallels that hold a convex ring between them.
func Width(ring []r2.Vec) float64 {
	least := math.Inf(1)
	Edges(ring, func(l Line) bool {
		least = min(least, Support(ring, l.Normal)-r2.Dot(l.At, l.Normal))
		return true
	})
	return least
}
