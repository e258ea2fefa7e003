package resolve

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// block is a convex vertical prism while the walls are being cut. mark is the opening that it
// lies below or above.
type block struct {
	ring   []r2.Vec // counter-clockwise
	z0, z1 float64
	mark   string
}

// cut takes the prism over ring, from z0 to z1, out of every block. Of a block that it meets
// there remain the parts beside it, whole in height, and what is below and above it; those are
// marked, unless mark is "".
func cut(blocks []block, ring []r2.Vec, z0, z1 float64, mark string) []block {
	if !slices.ContainsFunc(blocks, func(b block) bool { return plane.Overlap(b.z0, b.z1, z0, z1) && plane.BoxesOverlap(b.ring, ring) }) {
		return blocks
	}
	left := make([]block, 0, len(blocks)+2)
	for _, b := range blocks {
		if !plane.Overlap(b.z0, b.z1, z0, z1) {
			left = append(left, b)
			continue
		}
		rest, shared := plane.Difference(b.ring, ring)
		for _, r := range rest {
			left = append(left, block{r, b.z0, b.z1, b.mark})
		}
		if shared == nil {
			continue
		}
		m := cmp.Or(mark, b.mark)
		if z0-b.z0 > plane.Grain {
			left = append(left, block{shared, b.z0, z0, m})
		}
		if b.z1-z1 > plane.Grain {
			left = append(left, block{shared, z1, b.z1, m})
		}
	}
	return left
}

// cutAll takes every prism of others out of blocks.
func cutAll(blocks, others []block) []block {
	for _, o := range others {
		blocks = cut(blocks, o.ring, o.z0, o.z1, "")
	}
	return blocks
}
