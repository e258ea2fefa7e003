package plan

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// block is a convex vertical prism while the walls are being cut. mark is the opening that it
// lies below or above.
type block struct {
	ring   []r2.Vec // counter-clockwise
	z0, z1 float64
	mark   string
}

// meets reports whether two spans of height share more than the grain.
func meets(a0, a1, b0, b1 float64) bool { return min(a1, b1)-max(a0, b0) > grain }

// cut takes the prism over ring, from z0 to z1, out of every block. Of a block that it meets
// there remain the parts beside it, whole in height, and what is below and above it; those are
// marked, unless mark is "".
func cut(blocks []block, ring []r2.Vec, z0, z1 float64, mark string) []block {
	if !slices.ContainsFunc(blocks, func(b block) bool { return meets(b.z0, b.z1, z0, z1) && boxesMeet(b.ring, ring) }) {
		return blocks
	}
	left := make([]block, 0, len(blocks)+2)
	for _, b := range blocks {
		if !meets(b.z0, b.z1, z0, z1) {
			left = append(left, b)
			continue
		}
		rest, shared := minus(b.ring, ring)
		for _, r := range rest {
			left = append(left, block{r, b.z0, b.z1, b.mark})
		}
		if shared == nil {
			continue
		}
		m := mark
		if m == "" {
			m = b.mark
		}
		if z0-b.z0 > grain {
			left = append(left, block{shared, b.z0, z0, m})
		}
		if b.z1-z1 > grain {
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
