package light

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// bundle is neighbouring points of an opening, from up to to in the order of the field, which share one
// evaluation of the lamp's distribution where a point of a lattice sees all of it: across four of 466
// points what they give hardly differs from what their middle does.
type bundle struct {
	from, to int
	middle   r3.Vec
}

// bundled orders the points of an opening, which come in pairs of a point and its mirror image, so
// that neighbours follow each other, and says where a bundle begins. The right half is split in two
// along its longer side until a bundle of a size is left; the left half is its image, so that mirrored scenes
// have mirrored fields.
func bundled(points []r3.Vec, size int) (order []int, begins []bool) {
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

// bundles sums what the points of the lattice that see part of the opening get from it, where no pane
// is before the lamp: from a bundle that is all seen at once, from others point by point.
func (d *desk) bundles(from, to int) {
	f, g := d.f, d.f.g
	rows := d.partly[:(to-from)*g.words]
	for n := range f.bundles {
		b := &f.bundles[n]
		for first := 0; first < len(rows); first += g.words {
			r := first / g.words
			row, start := d.clear[r*g.nu:(r+1)*g.nu], g.lattice.At(0, from+r)
			partly, at := rows[first:first+g.words], from*g.words+first
			if d.seeAll(b, partly, at) {
				s := f.steps.from(f.l, r3.Sub(start, b.middle))
				d.sum(row, &s, float64(b.to-b.from)*f.share)
			}
			copy(d.bundled, d.seen)
			for k := b.from; k < b.to; k++ {
				if d.seeRest(partly, f.mask(k)[at:]) {
					s := f.steps.from(f.l, r3.Sub(start, f.points[k].at))
					d.sum(row, &s, f.share)
				}
			}
		}
	}
}

// seeAll notes which points of a row see every point of a bundle, and says whether any does.
func (d *desk) seeAll(b *bundle, partly []uint64, first int) bool {
	size, any := len(d.f.g.blank), uint64(0)
	for w, word := range partly {
		for k := b.from; k < b.to && word != 0; k++ {
			word &^= d.f.masks[k*size+first+w]
		}
		d.seen[w] = word
		any |= word
	}
	return any != 0
}

// seeRest notes which points of a row see a point of a bundle that they do not see the whole of.
func (d *desk) seeRest(partly, mask []uint64) bool {
	any := uint64(0)
	for w, word := range partly {
		d.seen[w] = word &^ mask[w] &^ d.bundled[w]
		any |= d.seen[w]
	}
	return any != 0
}
