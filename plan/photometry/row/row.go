// Package row sums the light of a point of a lamp over rows of receptors: the receptors of a row stand in one line, evenly
// spaced, so that every length and angle of it is a polynomial in the index of the receptor. A kernel is one short loop
// for one kind of distribution, without calls where that can be. The package knows no distribution: each brings its kernel
// (photometry.RowKernel).
package row

// Word is how many receptors of a row a kernel takes together: those of one word of a mask.
const Word = 64

// Kernel adds the light of a lamp.
type Kernel interface {
	// Add adds what the receptors of word number w of a row get, lx: those whose bit is set in mask. scale is the share of
	// the lamp's light that the point in View sends out.
	Add(row *[Word]float64, mask uint64, w int, v *View, scale float64)
}

// View is how a row of receptors is seen from a point of a lamp. Each figure is a polynomial in the index of the receptor;
// all are in metres, or square metres.
type View struct {
	Ahead, Right, Up [2]float64 // along the lamp's axis, its right and its up
	Fall             [3]float64 // against the receptors' axis, before Lean
	Square           [3]float64 // of the distance
	Even             float64    // share of the response that does not depend on the angle: 0 or 1/2
	Cos              float64    // share that follows the cosine: 1 or 1/2
	// Lean is by what the fall is multiplied, receptor by receptor, where each has an axis of its own; of one word, it
	// serves for all words. Domes alone have axes of their own: where Even is 0, Lean is 1 and the last of Fall is 0.
	Lean []float64
}

// falls are the terms of the fall of word w, and what that is multiplied by, receptor by receptor.
func (v *View) falls(w int) (f0, f1, f2 float64, lean *[Word]float64) {
	if len(v.Lean) > Word {
		return v.Fall[0], v.Fall[1], v.Fall[2], (*[Word]float64)(v.Lean[w*Word:])
	}
	return v.Fall[0], v.Fall[1], v.Fall[2], (*[Word]float64)(v.Lean)
}
