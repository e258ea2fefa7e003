package light

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// bundle is neighbouring points of an opening, from up to to in the order of the field, which share one
// evaluation of the lamp's distribution: across four of 600 points what they give hardly differs from
// what their middle does, and far less than the sum over them errs.
type bundle struct {
	from, to int
	middle   r3.Vec
}

// inBundles orders the points of an opening, which come in pairs of a point and its mirror image, so
// that neighbours follow each other, and says where a bundle begins. The right half is split in two
// along its longer side until a bundle of a size is left; the left half is its image, so that mirrored scenes
// have mirrored fields.
func inBundles(points []r3.Vec, size int) (order []int, begins []bool) {
	right := make([]int, 0, len(points)/2)
	for i := 0; i < len(points); i += 2 {
		right = append(right, i)
	}
	begins = make([]bool, 0, len(points))
	var split func(part []int)
	split = func(part []int) {
		if len(part) <= size {
			for k := range part {
				begins = append(begins, k == 0)
			}
			return
		}
		sortAlong(points, part)
		half := (len(part)/2 + size - 1) / size * size
		split(part[:half])
		split(part[half:])
	}
	split(right)
	order = slices.Clone(right)
	if len(points) > 1 {
		for _, i := range right {
			order = append(order, i+1)
		}
		begins = append(begins, begins...)
	}
	return order, begins
}

// sortAlong sorts points along the axis of space in which they reach furthest.
func sortAlong(points []r3.Vec, part []int) {
	low, high := points[part[0]], points[part[0]]
	for _, i := range part {
		p := points[i]
		low = r3.Vec{X: math.Min(low.X, p.X), Y: math.Min(low.Y, p.Y), Z: math.Min(low.Z, p.Z)}
		high = r3.Vec{X: math.Max(high.X, p.X), Y: math.Max(high.Y, p.Y), Z: math.Max(high.Z, p.Z)}
	}
	size := r3.Sub(high, low)
	along := func(p r3.Vec) float64 { return p.X }
	switch {
	case size.Y > size.X && size.Y >= size.Z:
		along = func(p r3.Vec) float64 { return p.Y }
	case size.Z > size.X:
		along = func(p r3.Vec) float64 { return p.Z }
	}
	slices.SortStableFunc(part, func(a, b int) int { return cmp.Compare(along(points[a]), along(points[b])) })
}
