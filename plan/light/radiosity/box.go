package radiosity

import "gonum.org/v1/gonum/spatial/r3"

// box is the box round a prism.
type box struct{ low, high r3.Vec }

func boxRound(corners []r3.Vec) box {
	b := box{corners[0], corners[0]}
	for _, c := range corners[1:] {
		b.low = r3.Vec{X: min(b.low.X, c.X), Y: min(b.low.Y, c.Y), Z: min(b.low.Z, c.Z)}
		b.high = r3.Vec{X: max(b.high.X, c.X), Y: max(b.high.Y, c.Y), Z: max(b.high.Z, c.Z)}
	}
	return b
}

// meets says whether two boxes are less than twice the clearance apart.
func (b *box) meets(c *box) bool {
	const apart = 2 * clearance
	return b.low.X <= c.high.X+apart && c.low.X <= b.high.X+apart &&
		b.low.Y <= c.high.Y+apart && c.low.Y <= b.high.Y+apart &&
		b.low.Z <= c.high.Z+apart && c.low.Z <= b.high.Z+apart
}

// clearance is how far before a face it is asked, m, whether a place lies inside a solid.
const clearance = 1e-5
